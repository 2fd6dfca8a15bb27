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

#[test]
fn help_and_version_are_no_errors() {
    for flag in ["--help", "--version"] {
        let output = dicrotic(&[flag]).output().unwrap();
        assert!(output.status.success());
        assert!(String::from_utf8(output.stdout).unwrap().contains("dicrotic"));
    }
}
