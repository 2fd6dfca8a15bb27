//! What the command line does to files: a written file is whole or the old one, what is read is not written over, and
//! nothing that a system refuses ends in a fault of the program.

#![cfg(unix)]

use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::{Duration, Instant};

use command::{SCENARIO, dicrotic, error_of, no_trace, scratch, shelled, state, told, written};
use dicrotic::exchange::handin::result;
use students::attempt;

mod command;
mod students;

fn at(folder: &Path, name: &str) -> String {
    folder.join(name).to_str().unwrap().to_string()
}

/// A folder with a scenario, a recording and a result, to read from.
fn inputs(name: &str) -> (PathBuf, String, String, String) {
    let folder = scratch(name);
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let (session, about) = attempt(0);
    let result = written(&folder, "one.dicrotic-result.json", result::write(&session, &about).unwrap());
    let recording = at(&folder, "in.edf");
    told(&mut dicrotic(&["render", &scenario, "--seconds", "12", "--rate", "100", "--out", &recording]));
    (folder, scenario, recording, result)
}

/// Arguments, and the files that they write.
type Writer = (Vec<String>, Vec<&'static str>);

/// Every command that writes.
fn commands(name: &str) -> (PathBuf, Vec<Writer>) {
    let (from, scenario, recording, result) = inputs(&format!("{name}-in"));
    let folder = scratch(name);
    drop(from);
    let render = |out: &str, more: &[&str]| {
        let seconds = ["render", &scenario, "--seconds", "12", "--rate", "100", "--out", &at(&folder, out)];
        seconds.iter().chain(more).map(ToString::to_string).collect::<Vec<_>>()
    };
    let plain = |words: &[&str]| words.iter().map(ToString::to_string).collect::<Vec<_>>();
    let truth = at(&folder, "truth.txt");
    let all = vec![
        (render("a.csv", &[]), vec!["a.csv"]),
        (render("a.edf", &[]), vec!["a.edf"]),
        (render("a.hea", &[]), vec!["a.atr", "a.dat", "a.hea"]),
        (render("a.csv", &["--truth", &truth]), vec!["a.csv", "truth.txt"]),
        (render("a.svg", &["--plot", "trace"]), vec!["a.svg"]),
        (plain(&["plot", "trace", &recording, "--out", &at(&folder, "a.png")]), vec!["a.png"]),
        (plain(&["convert", &recording, &at(&folder, "b.csv")]), vec!["b.csv"]),
        (plain(&["convert", &recording, &at(&folder, "b.hea")]), vec!["b.atr", "b.dat", "b.hea"]),
        (plain(&["grade", &result, "--out", &at(&folder, "grades.csv")]), vec!["grades.csv"]),
        (plain(&["class", &result, "--out", &at(&folder, "class.html")]), vec!["class.html"]),
        (plain(&["bank", &scenario, "--count", "1", "--out", &at(&folder, "bank.zip")]), vec!["bank.zip"]),
        (
            plain(&["link", &scenario, "--at", "https://a/", "--qr", &at(&folder, "link.svg")]),
            vec!["link.svg"],
        ),
    ];
    (folder, all)
}

#[test]
fn a_write_that_fails_leaves_the_old_files_whole_and_nothing_else() {
    let (folder, commands) = commands("full");
    for (arguments, outputs) in commands {
        // A record counts as one only with its header.
        told(&mut dicrotic(&arguments));
        let mut names: Vec<String> = state(&folder).into_keys().collect();
        names.sort();
        assert_eq!(names, outputs, "{arguments:?}");
        let before = state(&folder);
        // No file may grow over a block, as on a full disk; the signal that tells of it is not taken.
        let full = "trap '' XFSZ; ulimit -f 0; exec \"$0\" \"$@\"";
        let error = error_of(&mut shelled(full, &arguments));
        assert!(error.contains("writing ") && outputs.iter().any(|name| error.contains(name)), "{error}");
        assert!(state(&folder) == before, "{arguments:?}: {:?}", state(&folder).keys());
        for name in outputs {
            std::fs::remove_file(folder.join(name)).unwrap();
        }
        error_of(&mut shelled(full, &arguments));
        assert!(state(&folder).is_empty(), "{arguments:?}: {:?}", state(&folder).keys());
    }
}

#[test]
fn a_device_that_is_full_is_an_error_and_one_that_takes_all_is_none() {
    let (folder, scenario, ..) = inputs("device");
    let link = folder.join("full.csv");
    std::os::unix::fs::symlink("/dev/full", &link).unwrap();
    let render = |out: &str| dicrotic(&["render", &scenario, "--seconds", "1", "--out", out]);
    assert!(error_of(&mut render(link.to_str().unwrap())).contains("full.csv"));
    let null = folder.join("null.csv");
    std::os::unix::fs::symlink("/dev/null", &null).unwrap();
    told(&mut render(null.to_str().unwrap()));
    assert!(std::fs::symlink_metadata(&null).unwrap().is_symlink());
}

#[test]
fn a_run_that_is_killed_while_it_writes_leaves_the_old_file_or_the_new_one() {
    let folder = scratch("killed");
    let scenario = written(&scratch("killed-in"), "steady.toml", SCENARIO);
    let out = at(&folder, "a.csv");
    let render =
        |seed: &str| dicrotic(&["render", &scenario, "--seed", seed, "--seconds", "300", "--out", &out]);
    told(&mut render("2"));
    let new = std::fs::read(&out).unwrap();
    let old = b"the old one\n".repeat(100_000);
    let mut killed = 0;
    for signal in ["-KILL", "-TERM", "-KILL", "-TERM", "-KILL", "-TERM"] {
        std::fs::write(&out, &old).unwrap();
        let facts = || -> Vec<(std::ffi::OsString, u64)> {
            let entries = std::fs::read_dir(&folder).unwrap().map(Result::unwrap);
            entries.filter_map(|e| Some((e.file_name(), e.metadata().ok()?.len()))).collect()
        };
        let before = facts();
        let mut run = render("2").stderr(Stdio::null()).spawn().unwrap();
        // The moment in which anything changes.
        while facts() == before && run.try_wait().unwrap().is_none() {}
        let kill = std::process::Command::new("kill").arg(signal).arg(run.id().to_string()).status();
        killed += usize::from(kill.unwrap().success() && !run.wait().unwrap().success());
        let now = std::fs::read(&out).unwrap();
        assert!(now == old || now == new, "{signal}: {} bytes", now.len());
    }
    assert!(killed > 0, "no run was still there to be killed");
    told(&mut render("2"));
    assert_eq!(state(&folder).keys().collect::<Vec<_>>(), ["a.csv"], "what killed runs left is swept");
}

#[test]
fn what_is_read_is_not_written_over_under_any_name() {
    let (folder, scenario, recording, result) = inputs("over");
    std::fs::create_dir(folder.join("deep")).unwrap();
    let codes = written(&folder, "codes.txt", "no codes");
    for (file, name) in
        [(&recording, "link.edf"), (&scenario, "link.toml"), (&scenario, "link.csv"), (&scenario, "link.zip")]
    {
        std::os::unix::fs::symlink(file, folder.join(name)).unwrap();
    }
    std::fs::hard_link(&recording, folder.join("hard.edf")).unwrap();
    std::fs::hard_link(&scenario, folder.join("hard.csv")).unwrap();
    std::fs::hard_link(&result, folder.join("hard-result.csv")).unwrap();
    told(&mut dicrotic(&["convert", &recording, &at(&folder, "mine.hea")]));
    let header = std::fs::read_to_string(at(&folder, "mine.hea")).unwrap();
    written(&folder, "alias.hea", header.replacen("mine ", "alias ", 1));
    written(&folder, "stranger.dat", "samples of somebody");
    written(&folder, "other.atr", "notes of somebody");
    let before = state(&folder);
    let name = |name: &str| at(&folder, name);
    let render = ["render", &scenario, "--seconds", "1", "--out"];
    let both: Vec<(Vec<&str>, [&str; 2])> = vec![
        (vec!["grade", &result, "--out", &result], ["one.dicrotic", "one.dicrotic"]),
        (vec!["grade", &codes, "--out", &codes], ["codes.txt", "codes.txt"]),
        (vec!["class", &result, "--out", &result], ["one.dicrotic", "same file"]),
    ];
    for (arguments, parts) in both {
        let error = error_of(&mut dicrotic(&arguments));
        assert!(parts.iter().all(|part| error.contains(part)), "{error}");
        assert!(state(&folder) == before, "{arguments:?}");
    }
    let folder_text = folder.to_str().unwrap();
    let dotted = name("./deep/../in.edf");
    for (arguments, parts) in [
        (vec!["grade", folder_text, "--out", &result], ["one.dicrotic", "same file"]),
        (vec!["grade", &result, "--out", &name("hard-result.csv")], ["hard-result.csv", "one.dicrotic"]),
        (vec!["grade", &result, "--set", &scenario, "--out", &name("link.csv")], ["link.csv", "steady.toml"]),
        (vec!["class", folder_text, "--out", &result], ["one.dicrotic", "same file"]),
        ([&render[..], &[&name("new.csv"), "--truth", &scenario]].concat(), ["steady.toml", "same file"]),
        (
            [&render[..], &[&name("new.csv"), "--truth", &name("deep/../new.csv")]].concat(),
            ["new.csv", "deep/../new.csv"],
        ),
        ([&render[..], &[&name("new.hea"), "--truth", &name("new.dat")]].concat(), ["new.dat", "same file"]),
        ([&render[..], &[&name("hard.csv")]].concat(), ["hard.csv", "steady.toml"]),
        ([&render[..], &[&name("stranger.hea")]].concat(), ["stranger.dat", "stranger.hea"]),
        (vec!["convert", &recording, &dotted], ["in.edf", "same file"]),
        (vec!["convert", &recording, &name("link.edf")], ["link.edf", "in.edf"]),
        (vec!["convert", &recording, &name("hard.edf")], ["hard.edf", "in.edf"]),
        (vec!["convert", &name("link.edf"), &recording], ["in.edf", "link.edf"]),
        (vec!["convert", &recording, &name("stranger.hea")], ["stranger.dat", "stranger.hea"]),
        (vec!["convert", &recording, &name("other.hea")], ["other.atr", "other.hea"]),
        (vec!["convert", &name("alias.hea"), &name("mine.hea")], ["mine.dat", "same file"]),
        (
            vec!["link", &scenario, "--at", "https://a/", "--qr", &name("link.toml")],
            ["link.toml", "steady.toml"],
        ),
        (vec!["pack", &scenario, "--to", &name("link.zip")], ["link.zip", "steady.toml"]),
    ] {
        let error = error_of(&mut dicrotic(&arguments));
        assert!(parts.iter().all(|part| error.contains(part)), "{arguments:?}: {error}");
        assert!(state(&folder) == before, "{arguments:?}: {:?}", state(&folder).keys());
    }
    // A record is written over by its successor, and an earlier table in the folder is no result.
    told(&mut dicrotic(&["convert", &recording, &name("mine.hea")]));
    let class = scratch("over-table");
    std::fs::copy(&result, class.join("one.dicrotic-result.json")).unwrap();
    for _ in 0..2 {
        told(&mut dicrotic(&["grade", class.to_str().unwrap(), "--out", &at(&class, "grades.csv")]));
    }
}

#[test]
fn nothing_of_a_class_is_written_over_a_result_in_its_folder() {
    let (_, _, _, result) = inputs("over-class");
    let class = scratch("over-class-folder");
    let one = at(&class, "one.dicrotic-result.json");
    std::fs::copy(&result, &one).unwrap();
    let before = std::fs::read(&one).unwrap();
    let all = class.to_str().unwrap();
    for written in [&["--save"][..], &["--gradebook"], &["--out"], &["--password", "w", "--answers"]] {
        let arguments = [&["class", all][..], written, &[&one]].concat();
        let error = error_of(&mut dicrotic(&arguments));
        assert!(
            error.contains("would be written over") && error.contains("one.dicrotic"),
            "{arguments:?}: {error}"
        );
        assert!(std::fs::read(&one).unwrap() == before, "{arguments:?}");
    }
}

#[test]
fn a_strip_that_no_memory_holds_is_refused_before_it_is_made() {
    let (folder, scenario, ..) = inputs("long");
    let out = at(&folder, "long.csv");
    let render = ["render", &scenario, "--seconds", "86400", "--rate", "4000", "--out", &out];
    let before = Instant::now();
    let error = error_of(&mut shelled("ulimit -v 2000000; exec \"$0\" \"$@\"", &render));
    assert!(error.contains("--seconds") && error.contains("20000000"), "{error}");
    assert!(before.elapsed() < Duration::from_secs(10) && !Path::new(&out).exists());
}

#[test]
fn where_nobody_listens_nothing_breaks() {
    let (folder, scenario, recording, result) = inputs("deaf");
    let missing = ["detect", "missing.csv"];
    let good = ["detect", recording.as_str()];
    let check = ["check", scenario.as_str()];
    let status = |lines: &str, arguments: &[&str]| {
        let output = shelled(lines, arguments).output().unwrap();
        no_trace(&String::from_utf8_lossy(&output.stderr));
        output.status.code()
    };
    for deaf in ["2>/dev/full", "2>&-"] {
        assert_eq!(status(&format!("exec \"$0\" \"$@\" {deaf}"), &missing), Some(2), "{deaf}");
        assert_eq!(status(&format!("exec \"$0\" \"$@\" {deaf}"), &["frobnicate"]), Some(2), "{deaf}");
        assert_eq!(status(&format!("exec \"$0\" \"$@\" {deaf}"), &good), Some(0), "{deaf}");
    }
    for arguments in [&good[..], &check, &["--help"], &["class", &result]] {
        let closed = "\"$0\" \"$@\" | true; exec \"$0\" \"$@\" >&-";
        assert_eq!(status(closed, arguments), Some(0), "{arguments:?}");
    }
    let full = shelled("exec \"$0\" \"$@\" >/dev/full", &good).output().unwrap();
    assert_eq!(full.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&full.stderr).contains("writing the result"));
    drop(folder);
}

#[test]
fn what_others_wrote_does_nothing_at_a_terminal() {
    let folder = scratch("escape");
    let name = "a\u{1b}[2J\u{202e}b\ndicrotic: all is well.txt";
    let scenario = SCENARIO.replace("title = \"t\"", "title = \"t\"\n\"\\u001b[31mfield\" = 1");
    let wrong = written(&folder, "wrong\u{9b}31m.toml", scenario);
    let list = written(&folder, name, "D3.AAAA\n");
    let out = at(&folder, "grades.csv");
    let evil = "x\u{1b}]0;mine\u{7}";
    for arguments in [
        vec!["grade", folder.to_str().unwrap(), "--out", &out],
        vec!["grade", &list, "--out", &out],
        vec!["check", &wrong],
        vec!["detect", name],
        vec![evil],
        vec!["seed", "--try", evil, "a", "b"],
        vec!["render", &wrong, "--seconds", "1", "--out", evil],
    ] {
        let output = dicrotic(&arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        for text in [output.stdout, output.stderr] {
            let text = String::from_utf8(text).unwrap();
            let acts = |c: char| (c.is_control() && c != '\n') || c == '\u{202e}';
            assert!(!text.contains(acts), "{arguments:?}: {text:?}");
            assert!(!text.lines().any(|line| line.starts_with("dicrotic: all is well")), "{text}");
        }
    }
}
