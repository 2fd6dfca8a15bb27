//! What an instructor gives as set, and files of every other kind: folders with whatever else lies in them, benches that look like one
//! another, files beyond every size.

#![cfg(unix)]

use std::os::unix::fs::symlink;
use std::process::Command;

use command::{dicrotic, scratch, told, within, written};
use dicrotic::exchange::handin::result;
use students::{ASSIGNMENT, attempt, faultless};

mod command;
mod students;

fn one(k: u32) -> String {
    let (session, about) = attempt(k);
    result::write(&session, &about).unwrap()
}

#[test]
fn a_folder_of_what_was_set_is_walked_with_care_and_what_is_no_scenario_is_named_and_left_out() {
    let folder = scratch("set-walked");
    let hand = scratch("set-walked-in");
    let file = written(&hand, "a.dicrotic-result.json", one(0));
    let out = hand.join("grades.csv");
    let graded = || {
        let _ = std::fs::remove_file(&out);
        let words = ["grade", &file, "--set", folder.to_str().unwrap(), "--out", out.to_str().unwrap()];
        within(20, &mut dicrotic(&words))
    };
    written(&folder, "bench.toml", ASSIGNMENT);
    // The same bench with other criteria, kept by an editor: taken along it would end the run.
    let other = format!("{ASSIGNMENT}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n");
    written(&folder, ".backup.toml", &other);
    std::fs::create_dir(folder.join(".old")).unwrap();
    written(&folder.join(".old"), "bench.toml", &other);
    let (code, told) = graded();
    assert_eq!((code, told.as_str()), (Some(0), ""), "what is hidden is no news");
    written(&folder, "Cargo.toml", "[package]\nname = \"x\"\n");
    written(&folder, "broken.toml", "id = ");
    written(&folder, "large.toml", "#".repeat(70_000));
    written(&folder, "notes.txt", "by the way");
    symlink(".", folder.join("self")).unwrap();
    symlink("loop-b.toml", folder.join("loop-a.toml")).unwrap();
    symlink("loop-a.toml", folder.join("loop-b.toml")).unwrap();
    symlink("/dev/zero", folder.join("zero.toml")).unwrap();
    assert!(Command::new("mkfifo").arg(folder.join("pipe.toml")).status().unwrap().success());
    let (code, told) = graded();
    assert_eq!(code, Some(0), "{told}");
    for (name, why) in [
        ("Cargo.toml", "package"),
        ("broken.toml", "line 1"),
        ("large.toml", "70000 bytes"),
        ("self", "a link to a folder that it lies in"),
        ("loop-a.toml", "a link that leads nowhere"),
        ("zero.toml", "a link that leads out of the folder"),
        ("pipe.toml", "a pipe"),
    ] {
        let line = told.lines().find(|line| line.contains(&format!("/{name}: left out: ")));
        assert!(line.is_some_and(|line| line.contains(why)), "{name}: {told}");
    }
    assert!(!told.contains("notes.txt") && !told.contains("backup"), "{told}");
    assert!(std::fs::read_to_string(&out).unwrap().contains("yes"), "it is compared with the bench");
    // Two criteria for one bench in the open still need a word.
    written(&folder, "other.toml", &other);
    let (code, told) = graded();
    assert!(code == Some(2) && told.contains("the same bench as"), "{told}");
    // With nothing left there is nothing to compare with.
    for name in ["bench.toml", "other.toml"] {
        std::fs::remove_file(folder.join(name)).unwrap();
    }
    let (code, told) = graded();
    assert!(code == Some(2) && told.contains("Cargo.toml") && !out.exists(), "{told}");
}

#[test]
fn the_size_of_a_file_is_asked_before_it_is_read() {
    let folder = scratch("large");
    // A file of a size that only the system knows: to read it takes longer than there is time, and nobody's memory holds it.
    let large = |name: &str| {
        let path = folder.join(name);
        std::fs::File::create(&path).unwrap().set_len(900 << 30).unwrap();
        path.to_str().unwrap().to_string()
    };
    let (toml, csv, json) = (large("a.toml"), large("a.csv"), large("a.json"));
    let file = written(&folder, "a.dicrotic-result.json", one(0));
    let out = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let [scenario, course, list, class] = [
        "966367641600 bytes; a scenario has at most 65536",
        "966367641600 bytes; a course has at most 1376256",
        "966367641600 bytes; a list of students has at most 1048576",
        "966367641600 bytes; a saved class has at most 268435456",
    ];
    for (words, why, name) in [
        (vec!["check", &toml], scenario, &toml),
        (vec!["link", &toml, "--at", "https://example.org/"], scenario, &toml),
        (vec!["course", &toml], course, &toml),
        (vec!["bank", &toml, "--out", &out("bank.zip")], scenario, &toml),
        (vec!["pack", &toml, "--to", &out("a.zip")], scenario, &toml),
        (vec!["grade", &file, "--set", &toml, "--out", &out("g.csv")], "a course has at most", &toml),
        (vec!["class", &file, "--roster", &csv], list, &csv),
        (vec!["class", "--open", &json], class, &json),
        (vec!["replay", &json], "a saved attempt has at most 8388608", &json),
    ] {
        let (code, told) = within(20, &mut dicrotic(&words));
        assert!(code == Some(2) && told.contains(why) && told.contains(name.as_str()), "{words:?}: {told}");
    }
    // A device tells no size; what comes of it counts.
    let (code, told) = within(20, &mut dicrotic(&["check", "/dev/zero"]));
    assert!(code == Some(2) && told.contains("/dev/zero: more than 65536 bytes"), "{told}");
}

/// The assignment without its faults, under another name and a heading that looks like its own.
fn rival() -> String {
    let text = faultless();
    let text = text.replace("id = \"before-the-lab\"", "id = \"another\"");
    text.replace("title = \"Before the lab\"", "title = \" before  the\u{200b} LAB\u{200e}\"")
}

#[test]
fn two_benches_of_one_heading_that_were_set_are_told_by_every_command_that_compares() {
    let folder = scratch("set-rivals");
    let file = written(&folder, "a.dicrotic-result.json", one(0));
    let set = written(&folder, "set.toml", ASSIGNMENT);
    let out = folder.join("grades.csv");
    let told_of = |easy: &str| {
        let easy = written(&folder, "easy.toml", easy);
        let both = ["--set", &set, "--set", &easy];
        let with = |words: &[&str]| dicrotic(&[words, &both].concat());
        let lines = with(&["grade", "--lines"]).stdin(std::process::Stdio::null()).output().unwrap();
        [
            told(&mut with(&["grade", &file, "--out", out.to_str().unwrap()])),
            told(&mut with(&["class", &file])),
            String::from_utf8(lines.stderr).unwrap(),
        ]
    };
    for told in told_of(&rival()) {
        assert!(told.contains("easy.toml are different scenarios, and both are called"), "{told}");
    }
    // Another heading is another one, however near.
    for told in told_of(&rival().replace("LAB", "LABS")) {
        assert!(!told.contains("different scenarios"), "{told}");
    }
}
