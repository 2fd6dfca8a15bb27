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

/// A program of a few lines in a folder that is all of the search path.
#[cfg(unix)]
fn program(folder: &Path, name: &str, lines: &str) -> PathBuf {
    use std::os::unix::fs::PermissionsExt;
    let file = folder.join(name);
    std::fs::write(&file, format!("#!/bin/sh\n{lines}\n")).unwrap();
    std::fs::set_permissions(&file, std::fs::Permissions::from_mode(0o755)).unwrap();
    file
}

/// Building the page with a compiler whose target lies in `library`, and no other programs than those of the folder.
#[cfg(unix)]
fn build_with_library(folder: &Path, library: &Path) -> String {
    let rustc = program(folder, "rustc", &format!("echo {}", library.display()));
    let mut command = dicrotic(&[OsStr::new("build"), OsStr::new("--out"), folder.join("page").as_os_str()]);
    // A target folder of its own, so that no earlier build is found.
    command.env("RUSTC", &rustc).env("CARGO_TARGET_DIR", folder.join("target")).env("PATH", folder);
    error_of(command.env("CARGO", folder.join("cargo")))
}

/// A compiler that knows of no such target, as a distribution's own does.
#[cfg(unix)]
#[test]
fn a_missing_target_is_named_with_what_to_type() {
    let folder = scratch("no-target");
    let text = build_with_library(&folder, Path::new("/nowhere/lib"));
    assert!(text.contains("Run `rustup target add wasm32-unknown-unknown`"), "{text}");
}

/// A tool chain that was there before it was asked for the target, which rustup then does not bring by itself.
#[cfg(unix)]
#[test]
fn a_missing_target_is_asked_of_rustup() {
    let folder = scratch("new-target");
    let library = folder.join("library");
    let asked = folder.join("asked");
    program(
        &folder,
        "rustup",
        &format!("echo \"$@\" > {}; /bin/mkdir {}", asked.display(), library.display()),
    );
    program(&folder, "cargo", "exit 1");
    let text = build_with_library(&folder, &library);
    assert!(text.contains("the page's core could not be built"), "{text}");
    assert_eq!(std::fs::read_to_string(asked).unwrap(), "target add wasm32-unknown-unknown\n");
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
fn charts_are_written_as_the_file_is_named() {
    let folder = scratch("charts");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    for chart in ["trace", "rate", "spectrum", "beat"] {
        let file = |name: &str| folder.join(format!("{chart}{name}")).to_str().unwrap().to_string();
        let run = |arguments: &[&str]| {
            let output = dicrotic(arguments).output().unwrap();
            assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
        };
        let (svg, png) = (file(".svg"), file("-light.PNG"));
        let render = ["render", &scenario, "--seconds", "20", "--plot", chart];
        run(&[&render[..], &["--out", &svg]].concat());
        run(&[&render[..], &["--theme", "light", "--size", "640x360", "--out", &png]].concat());
        let text = std::fs::read_to_string(&svg).unwrap();
        assert!(text.starts_with("<svg width=") && text.contains("t, seed 1"), "{chart}: {}", &text[..200]);
        // Width and height stand at bytes 16 to 24 of a PNG, big-endian (PNG specification, IHDR).
        let bytes = std::fs::read(&png).unwrap();
        assert_eq!(bytes[..8], [0x89, b'P', b'N', b'G', b'\r', b'\n', 0x1a, b'\n']);
        assert_eq!(bytes[16..24], [0, 0, 2, 128, 0, 0, 1, 104]);
    }
    // The mean of a regular 60 beats/min stands on its chart; the scenario's power line is in the spectrum.
    let text = |name: &str| std::fs::read_to_string(folder.join(name)).unwrap();
    let rate = text("rate.svg");
    let mean = rate.lines().find_map(|line| line.strip_prefix("mean ")?.strip_suffix(" beats/min")).unwrap();
    assert!((mean.parse::<f64>().unwrap() - 60.0).abs() < 0.5, "{mean}");
    assert!(text("spectrum.svg").contains("\npower line 50 Hz\n"));
}

#[test]
fn a_recording_is_drawn_from_its_file() {
    let folder = scratch("plot");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let path = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let (table, chart) = (path("mine.csv"), path("mine.svg"));
    let render = ["render", &scenario, "--seconds", "20", "--rate", "49", "--out", &table];
    assert!(dicrotic(&render).output().unwrap().status.success());
    let output =
        dicrotic(&["plot", "spectrum", &table, "--power-line", "50", "--out", &chart]).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = std::fs::read_to_string(&chart).unwrap();
    assert!(text.contains("\npower line 50 Hz, folded to 1 Hz\n") && text.contains("\nmine\n"));
    let output = dicrotic(&["plot", "trace", &table, "--from", "5", "--to", "12", "--out", &chart]).output();
    assert!(output.unwrap().status.success());
    assert!(std::fs::read_to_string(&chart).unwrap().contains("\n12 s\n"));

    let plot = |more: &[&str]| error_of(&mut dicrotic(&[&["plot", "trace", &table], more].concat()));
    assert!(plot(&["--from", "12", "--to", "5", "--out", &chart]).contains("--from"));
    assert!(plot(&["--to", "99", "--out", &chart]).contains("0 to 20 s"));
    assert!(plot(&["--from", "nan", "--out", &chart]).contains("--from"));
    assert!(plot(&["--power-line", "400", "--out", &chart]).contains("--power-line"));
    assert!(plot(&["--out", &table]).contains("mine.csv: a chart is written to"));
    assert!(plot(&[]).contains("--out"));
    assert!(error_of(&mut dicrotic(&["plot", "pie", &table, "--out", &chart])).contains("pie"));
    let missing = error_of(&mut dicrotic(&["plot", "trace", "missing.csv", "--out", &chart]));
    assert!(missing.contains("missing.csv"), "{missing}");
    let short = ["plot", "beat", &table, "--to", "2", "--out", &chart];
    assert!(error_of(&mut dicrotic(&short)).contains("mine: expected at least 4 beats"));
}

#[test]
fn charts_that_cannot_be_drawn_are_refused() {
    let folder = scratch("no-chart");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let path = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let render = |seconds: &str, more: &[&str]| {
        error_of(&mut dicrotic(&[&["render", &scenario, "--seconds", seconds], more].concat()))
    };
    for name in ["chart.csv", "chart.jpeg", "chart", "svg"] {
        let text = render("20", &["--plot", "trace", "--out", &path(name)]);
        assert!(text.contains(name) && text.contains(".svg or .png"), "{text}");
        assert!(!folder.join(name).exists());
    }
    // A table is not written under a picture's name.
    assert!(render("20", &["--out", &path("chart.png")]).contains("--plot"));
    assert!(!folder.join("chart.png").exists());
    let chart = path("chart.svg");
    assert!(render("20", &["--theme", "light", "--out", &path("t.csv")]).contains("--plot"));
    assert!(render("20", &["--plot", "pie", "--out", &chart]).contains("pie"));
    for (old, new) in [("smoked", "dark"), ("paper", "light")] {
        let text = render("20", &["--plot", "trace", "--theme", old, "--out", &chart]);
        assert!(text.contains(old) && text.contains(&format!("\"{new}\"")), "{text}");
    }
    for size in ["640", "0x100", "-5x100", "640x", "640x360x2", "wide"] {
        let text = render("20", &["--plot", "trace", &format!("--size={size}"), "--out", &chart]);
        assert!(text.contains("--size") && text.contains("1200x480"), "{text}");
    }
    assert!(render("20", &["--plot", "trace", "--size", "10x10", "--out", &chart]).contains("at least"));
    assert!(render("20", &["--plot", "trace", "--size", "9000x500", "--out", &chart]).contains("at most"));
    assert!(render("2", &["--plot", "spectrum", "--out", &chart]).contains("expected at least 4 s"));
    assert!(render("1", &["--plot", "rate", "--out", &chart]).contains("expected at least 3 beats"));
    assert!(render("2", &["--plot", "beat", "--out", &chart]).contains("expected at least 4 beats"));
    assert!(!folder.join("chart.svg").exists());
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

#[test]
fn a_saved_attempt_is_done_again_and_its_debrief_hashed() {
    let text = include_str!("../scenarios/57-between-the-same-features.toml");
    let mut lab = dicrotic::session::Session::worked(text).unwrap().unwrap();
    while lab.worked_next().is_some() {}
    let folder = scratch("replay");
    let file = folder.join("attempt.json");
    std::fs::write(&file, lab.save().unwrap()).unwrap();
    let output = dicrotic(&[OsStr::new("replay"), file.as_os_str()]).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    assert_eq!(String::from_utf8(output.stdout).unwrap().trim(), lab.debrief_hash());
    // One that was never checked, and one that is none.
    let fresh = dicrotic::session::Session::new(text, 1).unwrap();
    std::fs::write(&file, fresh.save().unwrap()).unwrap();
    assert!(
        error_of(&mut dicrotic(&[OsStr::new("replay"), file.as_os_str()])).contains("nothing was checked")
    );
    std::fs::write(&file, "{}").unwrap();
    assert!(error_of(&mut dicrotic(&[OsStr::new("replay"), file.as_os_str()])).contains("attempt.json"));
}

#[test]
fn recordings_of_every_form_are_read_alike_and_converted_with_their_notes() {
    let folder = scratch("forms");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let path = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let run = |arguments: &[&str]| {
        let output = dicrotic(arguments).output().unwrap();
        assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    };
    for name in ["strip.csv", "strip.edf", "strip.hea"] {
        run(&["render", &scenario, "--seconds", "12.5", "--rate", "200", "--out", &path(name)]);
    }
    let beats = run(&["detect", &path("strip.csv")]);
    assert!(beats.lines().count() >= 10, "{beats}");
    for name in ["strip.edf", "strip.hea"] {
        assert_eq!(run(&["detect", &path(name)]), beats, "{name}");
    }
    let told = run(&["convert", &path("strip.edf"), &path("again.hea")]);
    assert!(told.contains("again.dat") && told.contains("again.atr"), "{told}");
    assert!(told.contains("2500 samples at 200 Hz, 1 notes"), "{told}");
    run(&["convert", &path("again.hea"), &path("again.csv")]);
    let text = std::fs::read_to_string(path("again.csv")).unwrap();
    assert!(text.contains(",settings ") && text.contains("range_v=0.1"), "{}", &text[text.len() - 300..]);

    let fails = |arguments: &[&str]| error_of(&mut dicrotic(arguments));
    assert!(fails(&["convert", &path("strip.edf"), &path("x.txt")]).contains(".csv, .edf or .hea"));
    assert!(fails(&["convert", &path("strip.edf"), &path("strip.edf")]).contains("itself"));
    assert!(fails(&["convert", &path("strip.edf"), &path("my-strip.hea")]).contains("letters, digits"));
    assert!(fails(&["detect", &path("strip.edf"), "--column", "ECG"]).contains("no channel \"ECG\""));
    std::fs::remove_file(path("strip.dat")).unwrap();
    assert!(fails(&["detect", &path("strip.hea")]).contains("strip.dat"));
    let bytes = std::fs::read(path("strip.edf")).unwrap();
    std::fs::write(path("strip.edf"), &bytes[..3000]).unwrap();
    let text = fails(&["detect", &path("strip.edf")]);
    assert!(
        text.contains("strip.edf") && text.contains("cut short") && text.contains("found 3000"),
        "{text}"
    );
}
