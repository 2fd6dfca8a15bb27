//! The built program for the tests of the command line.

#![allow(dead_code)]

use std::collections::BTreeMap;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

/// A scenario of a regular heart.
pub const SCENARIO: &str = "id = \"steady\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
    [subject]\nrest_rate_bpm = 60\nregular = true\npremature_per_min = 0\npulse_mv = 40\n\
    [recorder]\nrange_v = 0.1\n";

/// The program with arguments. Asks for a backtrace, so that one would show.
pub fn dicrotic(arguments: &[impl AsRef<OsStr>]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_dicrotic"));
    command.args(arguments).env("RUST_BACKTRACE", "1");
    command
}

/// The program started by lines of a shell, in which `"$0" "$@"` stands for it.
pub fn shelled(lines: &str, arguments: &[impl AsRef<OsStr>]) -> Command {
    let mut command = Command::new("sh");
    command.arg("-c").arg(lines).arg(env!("CARGO_BIN_EXE_dicrotic")).args(arguments);
    command.env("RUST_BACKTRACE", "1");
    command
}

/// The error text of a command that must fail in the agreed way.
pub fn error_of(command: &mut Command) -> String {
    let Output { status, stderr, .. } = command.output().unwrap();
    let text = String::from_utf8(stderr).unwrap();
    assert_eq!(status.code(), Some(2), "{command:?}: {text}");
    assert!(text.starts_with("dicrotic: "), "{text}");
    no_trace(&text);
    text
}

/// What a command that must succeed writes to the standard output.
pub fn told(command: &mut Command) -> String {
    let Output { status, stdout, stderr } = command.output().unwrap();
    let text = String::from_utf8_lossy(&stderr).into_owned();
    assert!(status.success(), "{command:?}: {text}");
    no_trace(&text);
    String::from_utf8(stdout).unwrap()
}

/// What a command gives within a time; a hang is a failure.
pub fn within(seconds: u64, command: &mut Command) -> (Option<i32>, String) {
    let mut run = command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let end = Instant::now() + Duration::from_secs(seconds);
    while run.try_wait().unwrap().is_none() {
        if Instant::now() > end {
            run.kill().unwrap();
            panic!("{command:?} goes on for more than {seconds} s");
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    let Output { status, stderr, .. } = run.wait_with_output().unwrap();
    (status.code(), String::from_utf8(stderr).unwrap())
}

/// No fault of the program reached the person.
pub fn no_trace(text: &str) {
    for trace in ["panicked", "stack backtrace", "RUST_BACKTRACE"] {
        assert!(!text.contains(trace), "{text}");
    }
}

/// An empty folder of this test.
pub fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("command").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Writes a file and tells its path as text.
pub fn written(folder: &Path, name: &str, bytes: impl AsRef<[u8]>) -> String {
    let path = folder.join(name);
    std::fs::write(&path, bytes).unwrap();
    path.to_str().unwrap().into()
}

/// All names of a folder with the bytes that are read under them.
pub fn state(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let entry = entry.unwrap();
            let name = entry.file_name().to_string_lossy().into_owned();
            (name, std::fs::read(entry.path()).unwrap_or_default())
        })
        .collect()
}
