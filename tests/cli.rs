//! The command line as a person meets it: what it says and the exit code when it cannot do what was asked.

use std::ffi::OsStr;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn dicrotic(arguments: &[impl AsRef<OsStr>]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_dicrotic"));
    // Asks for a backtrace, so that one would show.
    command.args(arguments).env("RUST_BACKTRACE", "1");
    command
}

/// The error text of a command that must fail in the agreed way.
fn error_of(command: &mut Command) -> String {
    let Output { status, stdout, stderr } = command.output().unwrap();
    let text = String::from_utf8(stderr).unwrap();
    assert_eq!(status.code(), Some(2), "{command:?}: {text}");
    assert!(text.starts_with("dicrotic: "), "{text}");
    for trace in ["panicked", "stack backtrace", "RUST_BACKTRACE"] {
        assert!(!text.contains(trace), "{text}");
    }
    assert!(stdout.is_empty(), "an error wrote to the standard output: {}", String::from_utf8_lossy(&stdout));
    text
}

fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

#[test]
fn a_word_that_is_no_command_is_named() {
    assert!(error_of(&mut dicrotic(&["frobnicate"])).contains("frobnicate"));
    assert!(error_of(&mut dicrotic(&["--frobnicate"])).contains("--frobnicate"));
}

#[test]
fn a_port_that_is_no_port_is_named() {
    for port in ["70000", "-1", "high", ""] {
        let text = error_of(&mut dicrotic(&["serve", &format!("--port={port}")]));
        assert!(text.contains("--port") && text.contains(port), "{text}");
    }
}

#[test]
fn a_taken_port_that_was_asked_for_is_an_error() {
    let taken = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    let text = error_of(&mut dicrotic(&["serve", "--port", &port]));
    assert!(text.contains(&format!("port {port} is taken")), "{text}");
}

#[test]
fn building_needs_a_folder_to_build_to() {
    assert!(error_of(&mut dicrotic(&["build"])).contains("--out"));
}

#[test]
fn nothing_is_written_over_a_strangers_folder() {
    let folder = scratch("strangers");
    std::fs::write(folder.join("thesis.txt"), "mine").unwrap();
    let text = error_of(&mut dicrotic(&[OsStr::new("build"), OsStr::new("--out"), folder.as_os_str()]));
    assert!(text.contains("not empty") && text.contains("strangers"), "{text}");
    assert_eq!(std::fs::read_dir(&folder).unwrap().count(), 1);
}

#[test]
fn nothing_is_written_among_the_sources() {
    let inside = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/page");
    let text = error_of(&mut dicrotic(&[OsStr::new("build"), OsStr::new("--out"), inside.as_os_str()]));
    assert!(text.contains("www/"), "{text}");
    assert!(!inside.exists());
}

/// A compiler that knows of no such target, as a distribution's own does.
#[cfg(unix)]
#[test]
fn a_missing_target_is_named_with_what_to_type() {
    use std::os::unix::fs::PermissionsExt;
    let folder = scratch("no-target");
    let rustc = folder.join("rustc");
    std::fs::write(&rustc, "#!/bin/sh\necho /nowhere/lib\n").unwrap();
    std::fs::set_permissions(&rustc, std::fs::Permissions::from_mode(0o755)).unwrap();
    let mut command = dicrotic(&[OsStr::new("build"), OsStr::new("--out"), folder.join("page").as_os_str()]);
    // A target folder of its own, so that no earlier build is found.
    let text = error_of(command.env("RUSTC", &rustc).env("CARGO_TARGET_DIR", folder.join("target")));
    assert!(text.contains("rustup target add wasm32-unknown-unknown"), "{text}");
}

const SCENARIO: &str = "id = \"steady\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
    [subject]\nrest_rate_bpm = 60\nregular = true\npremature_per_min = 0\npulse_mv = 40\n\
    [recorder]\nrange_v = 0.1\n";

fn written(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().into()
}

#[test]
fn scenario_files_that_are_wrong_are_named_with_the_field() {
    let folder = scratch("check");
    let good = written(&folder, "good.toml", SCENARIO);
    let output = dicrotic(&["check", &good]).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    assert!(String::from_utf8_lossy(&output.stdout).contains("good.toml: valid"));

    let level = written(&folder, "level.toml", &SCENARIO.replace("level = 1", "level = 99"));
    let text = written(&folder, "text.toml", "this is no scenario");
    let mut command = dicrotic(&["check", &level, &text, "missing.toml"]);
    let error = error_of(&mut command);
    for part in ["level.toml", "level: 99", "text.toml", "missing.toml"] {
        assert!(error.contains(part), "{part}: {error}");
    }
    assert!(error_of(&mut dicrotic(&["check"])).contains("FILE"));
}

#[test]
fn a_rendered_strip_has_its_samples_and_its_beats_are_found() {
    let folder = scratch("render");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let (strip, truth) = (folder.join("strip.csv"), folder.join("truth.txt"));
    let (strip, truth) = (strip.to_str().unwrap(), truth.to_str().unwrap());
    let render = ["render", &scenario, "--seconds", "20", "--rate", "200", "--out", strip, "--truth", truth];
    let output = dicrotic(&render).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let table = std::fs::read_to_string(strip).unwrap();
    let mut lines = table.lines();
    assert_eq!(lines.next(), Some("t_s,value"));
    assert_eq!(lines.count(), 4000);

    let numbers = |text: &str| text.lines().map(|line| line.parse::<f64>().unwrap()).collect::<Vec<_>>();
    let output = dicrotic(&["detect", strip]).output().unwrap();
    let beats = numbers(&String::from_utf8(output.stdout).unwrap());
    let truth = numbers(&std::fs::read_to_string(truth).unwrap());
    // A regular heart of 60 beats/min beats 19 to 21 times in 20 s (arithmetic).
    for times in [&beats, &truth] {
        assert!((19..=21).contains(&times.len()), "{times:?}");
    }
    // The same samples, the same numbers: another run writes the same file.
    assert!(dicrotic(&render).output().unwrap().status.success());
    assert_eq!(std::fs::read_to_string(strip).unwrap(), table);
}

#[test]
fn what_cannot_be_rendered_or_read_is_named() {
    let folder = scratch("refused");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let render = |more: &[&str]| {
        let mut arguments = vec!["render", &scenario, "--out", "unused.csv"];
        arguments.extend(more);
        error_of(&mut dicrotic(&arguments))
    };
    assert!(render(&["--seconds", "-1"]).contains("--seconds"));
    assert!(render(&["--seconds", "nan"]).contains("--seconds"));
    assert!(render(&["--seconds", "1", "--rate", "123"]).contains("rate_hz"));
    assert!(render(&["--seconds", "1", "--seed", "-1"]).contains("--seed"));

    let table = written(&folder, "table.csv", "t_s,value\n0,1\n0.01,high\n0.02,1\n");
    let error = error_of(&mut dicrotic(&["detect", &table]));
    assert!(error.contains("table.csv, line 3") && error.contains("high"), "{error}");
    assert!(error_of(&mut dicrotic(&["detect", "missing.csv"])).contains("missing.csv"));
    let folder = folder.to_str().unwrap();
    assert!(error_of(&mut dicrotic(&["detect", folder])).contains("folder"));
}

#[test]
fn a_filter_that_there_is_not_is_named() {
    let response = |hz: &str, order: &str| {
        error_of(&mut dicrotic(&[
            "filter-response",
            "--kind",
            "low_pass",
            "--hz",
            hz,
            "--order",
            order,
            "--rate",
            "100",
        ]))
    };
    assert!(response("50", "1").contains("--hz"));
    assert!(response("0", "1").contains("--hz"));
    assert!(response("5", "3").contains("--order"));
}

#[test]
fn help_and_version_are_no_errors() {
    for flag in ["--help", "--version"] {
        let output = dicrotic(&[flag]).output().unwrap();
        assert!(output.status.success());
        assert!(String::from_utf8(output.stdout).unwrap().contains("dicrotic"));
    }
}
