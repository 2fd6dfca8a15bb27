//! Folders and lists that students handed in, as they come: with links, pipes, closed doors and letters of any encoding.

#![cfg(unix)]

use std::os::unix::fs::{PermissionsExt, symlink};
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::{Command, Output};
use std::time::{Duration, Instant};

use command::{dicrotic, error_of, scratch, within, written};
use dicrotic::exchange::handin::result;
use dicrotic::session::Session;
use dicrotic::session::compact::Code;
use dicrotic::unseen;
use students::{ASSIGNMENT, Way, attempt, attempt_at};

mod command;
mod students;

fn one(k: u32) -> String {
    let (session, about) = attempt(k);
    result::write(&session, &about).unwrap()
}

/// Whether the one who runs this may pass every door, so that a closed one needs somebody else to stand before it.
fn is_root() -> bool {
    std::fs::read_dir("/proc/self").is_ok_and(|_| {
        use std::os::unix::fs::MetadataExt;
        std::fs::metadata("/proc/self").unwrap().uid() == 0
    })
}

#[test]
fn what_cannot_be_read_in_a_folder_is_told_and_the_rest_is_graded() {
    let outside = scratch("folder-outside");
    written(&outside, "far.dicrotic-result.json", one(1));
    let folder = scratch("folder");
    written(&folder, "good.dicrotic-result.json", one(0));
    let deep = folder.join("deep");
    std::fs::create_dir(&deep).unwrap();
    written(&deep, "also.dicrotic-result.json", one(2));
    symlink(".", folder.join("self")).unwrap();
    symlink("..", deep.join("up")).unwrap();
    symlink("loop-b.json", folder.join("loop-a.json")).unwrap();
    symlink("loop-a.json", folder.join("loop-b.json")).unwrap();
    symlink("gone.json", folder.join("dangling.json")).unwrap();
    symlink(outside.join("far.dicrotic-result.json"), folder.join("out.json")).unwrap();
    symlink(&outside, folder.join("out")).unwrap();
    symlink("/dev/zero", folder.join("zero.txt")).unwrap();
    for pipe in ["pipe.txt", "pipe.json"] {
        assert!(Command::new("mkfifo").arg(folder.join(pipe)).status().unwrap().success());
    }
    let _socket = std::os::unix::net::UnixListener::bind(folder.join("socket.json")).unwrap();
    let mut pit = folder.join("pit");
    for _ in 0..40 {
        pit = pit.join("d");
    }
    std::fs::create_dir_all(&pit).unwrap();
    written(&pit, "lost.json", one(3));
    let closed = folder.join("closed");
    std::fs::create_dir(&closed).unwrap();
    std::fs::set_permissions(&closed, std::fs::Permissions::from_mode(0o0)).unwrap();
    let table = scratch("folder-out");
    std::fs::set_permissions(&table, std::fs::Permissions::from_mode(0o777)).unwrap();
    let out = table.join("grades.csv");
    let mut grade = dicrotic(&["grade", folder.to_str().unwrap(), "--out", out.to_str().unwrap()]);
    if is_root() {
        grade.uid(65534);
    }
    let (code, told) = within(60, &mut grade);
    std::fs::set_permissions(&closed, std::fs::Permissions::from_mode(0o755)).unwrap();
    assert_eq!(code, Some(2), "{told}");
    for part in [
        "self: skipped: a link to a folder that it lies in",
        "deep/up: skipped: a link to a folder that it lies in",
        "loop-a.json: skipped: a link that leads nowhere",
        "dangling.json: skipped: a link to something that is not there",
        "out.json: skipped: a link that leads out of the folder",
        "/out: skipped: a link that leads out of the folder",
        "zero.txt: skipped: a link that leads out",
        "pipe.txt: skipped: a pipe",
        "pipe.json: skipped: a pipe",
        "socket.json: skipped: a socket",
        "closed: skipped: the folder cannot be read",
        "folders deep: not looked into",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
    let graded = std::fs::read_to_string(&out).unwrap();
    assert_eq!(graded.lines().count(), 3, "{graded}");
    assert!(graded.contains("good.dicrotic") && graded.contains("also.dicrotic") && !graded.contains("far."));
}

#[test]
fn a_pipe_or_a_device_that_is_named_is_not_opened() {
    let folder = scratch("named");
    let pipe = folder.join("pipe.txt");
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    symlink("/dev/zero", folder.join("zero.json")).unwrap();
    let out = folder.join("grades.csv");
    for (name, why) in [("pipe.txt", "a pipe"), ("zero.json", "a device")] {
        let file = folder.join(name);
        let mut grade = dicrotic(&["grade".as_ref(), file.as_os_str(), "--out".as_ref(), out.as_os_str()]);
        let (code, told) = within(20, &mut grade);
        assert!(code == Some(2) && told.contains(why), "{told}");
    }
}

#[test]
fn a_course_reads_no_pipe_no_device_and_nothing_outside_its_own_folder() {
    let outside = scratch("course-outside");
    let far = written(&outside, "far.toml", ASSIGNMENT);
    let folder = scratch("course-folder");
    assert!(Command::new("mkfifo").arg(folder.join("pipe.toml")).status().unwrap().success());
    symlink("/dev/zero", folder.join("zero.toml")).unwrap();
    symlink(&far, folder.join("out.toml")).unwrap();
    symlink("near.toml", folder.join("in.toml")).unwrap();
    written(&folder, "near.toml", ASSIGNMENT);
    written(&folder, "large.toml", "#".repeat(70_000));
    std::fs::create_dir(folder.join("week")).unwrap();
    written(&folder.join("week"), "one.toml", ASSIGNMENT);
    let out = folder.join("whole.toml");
    let of = |part: &str, more: &[&str]| {
        let head = "[course]\nid = \"c\"\ntitle = \"t\"\n[[part]]\nfile = ";
        let course = written(&folder, "course.toml", format!("{head}{}\n", serde_json::Value::from(part)));
        let mut arguments = vec!["course", &course];
        arguments.extend(more);
        within(20, &mut dicrotic(&arguments))
    };
    for (part, why) in [
        ("pipe.toml", "a pipe"),
        ("zero.toml", "leads out of the folder"),
        ("out.toml", "leads out of the folder"),
        ("../course-outside/far.toml", "leads out of the folder"),
        (&far, "leads out of the folder"),
        ("/dev/zero", "leads out of the folder"),
        ("week", "not a plain file"),
        ("large.toml", "at most 65536"),
    ] {
        for more in [&[][..], &["--out", out.to_str().unwrap()]] {
            let (code, told) = of(part, more);
            assert_eq!(code, Some(2), "{part}: {told}");
            assert!(
                told.contains("part[0].file") && told.contains(part) && told.contains(why),
                "{part}: {told}"
            );
            assert!(!out.exists(), "{part}");
        }
    }
    for part in ["near.toml", "in.toml", "./near.toml", "week/../near.toml", "week/one.toml"] {
        assert_eq!(of(part, &[]).0, Some(0), "{part}");
    }
    // A pipe in a folder of what was set is not waited for.
    let set = scratch("set-folder");
    assert!(Command::new("mkfifo").arg(set.join("pipe.toml")).status().unwrap().success());
    let set = set.to_str().unwrap();
    let (code, told) = within(20, &mut dicrotic(&["grade", "x.json", "--set", set, "--out", "g.csv"]));
    assert!(code == Some(2) && told.contains("pipe.toml") && told.contains("a pipe"), "{told}");
}

fn list(folder: &Path, text: impl AsRef<[u8]>) -> (Option<i32>, String, usize) {
    let file = written(folder, "codes.txt", text);
    let scenario = written(folder, "assignment.toml", ASSIGNMENT);
    let out = folder.join("grades.csv");
    let out = out.to_str().unwrap();
    let (code, told) = within(60, &mut dicrotic(&["grade", &file, "--set", &scenario, "--out", out]));
    (code, told, std::fs::read_to_string(out).unwrap().lines().count() - 1)
}

fn codes(n: u32) -> Vec<String> {
    (0..n)
        .map(|k| {
            let (session, about) = attempt(k);
            session.code(&about).unwrap().write()
        })
        .collect()
}

#[test]
fn codes_are_graded_however_they_were_passed_on() {
    let folder = scratch("lists");
    let codes = codes(3);
    let [a, b, c] = &codes[..] else { unreachable!() };
    let wrapped = |code: &str, before: &str, after: &str| {
        let pieces = code.as_bytes().chunks(72).map(|p| format!("{before}{}", String::from_utf8_lossy(p)));
        pieces.collect::<Vec<_>>().join(&format!("{after}\r\n"))
    };
    for (shape, text) in [
        ("two on a line", format!("{a} {b}\n{c}\n")),
        ("CR", format!("{a}\r{b}\r{c}\r")),
        ("quotes and bullets", format!("- \"{a}\"\n* '{b}'\n3) “{c}”\n")),
        ("wrapped", format!("Hello,\n\n{}\n\nBye\n{}\n{c}", wrapped(a, "", ""), wrapped(b, "> ", ""))),
        ("soft", format!("{}\r\n{}\r\n{c}", wrapped(a, "", "="), wrapped(b, "> ", "="))),
        ("mark of byte order", format!("\u{feff}{a}\n{b}\n{c}\n")),
    ] {
        let (code, told, graded) = list(&folder, &text);
        assert_eq!((code, graded), (Some(0), 3), "{shape}: {told}");
    }
    let (code, told, graded) = list(&folder, format!("{a}\n{}\n{b}\n", &c[40..]));
    assert_eq!((code, graded), (Some(2), 2), "{told}");
    assert!(told.contains("line 2: skipped: this looks like a part of a result code"), "{told}");
}

#[test]
fn a_list_beyond_reason_and_one_of_another_encoding_are_told_quickly() {
    let folder = scratch("encodings");
    let before = Instant::now();
    let (code, told, graded) = list(&folder, "D3.AgAAAAAAAAAAAAAAAAAA\n".repeat(50_000));
    assert_eq!((code, graded), (Some(2), 0));
    assert!(told.contains("50000 result codes; a list has at most 5000"), "{told}");
    assert!(before.elapsed() < Duration::from_secs(5), "{:?}", before.elapsed());
    let [text] = &codes(1)[..] else { unreachable!() };
    let wide = |order: fn(u16) -> [u8; 2], mark: &str| -> Vec<u8> {
        format!("{mark}{text}").encode_utf16().flat_map(order).collect()
    };
    for (bytes, why) in [
        (wide(u16::to_le_bytes, "\u{feff}"), "saved as UTF-16; save it as UTF-8"),
        (wide(u16::to_be_bytes, "\u{feff}"), "saved as UTF-16; save it as UTF-8"),
        (wide(u16::to_le_bytes, ""), "saved as UTF-16; save it as UTF-8"),
        ([&b"Jos\xe9: "[..], text.as_bytes()].concat(), "Latin-1"),
    ] {
        let (code, told, _) = list(&folder, &bytes);
        assert!(code == Some(2) && told.contains(why), "{told}");
    }
    let marked = written(&folder, "marked.dicrotic-result.json", format!("\u{feff}{}", one(0)));
    let out = folder.join("grades.csv");
    let output = dicrotic(&["grade", &marked, "--out", out.to_str().unwrap()]).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
}

/// A log of nothing but time: at 20 Hz the most samples are twelve days.
#[test]
fn a_log_that_runs_longer_than_a_bench_may_is_refused_quickly() {
    let folder = scratch("bomb");
    let text = ASSIGNMENT.replace("range_v = 0.1", "range_v = 0.1\nrate_hz = 20");
    let scenario = written(&folder, "slow.toml", &text);
    let session = Session::new(&text, 1).unwrap();
    let code = session.code(&Default::default()).unwrap();
    let bomb = Code { samples: 21_600_000, ..code.clone() };
    let late = Code { samples: 20 * 6 * 3600 + 40, ..code };
    let file = written(&folder, "codes.txt", format!("{}\n{}\n", bomb.write(), late.write()));
    let out = folder.join("grades.csv");
    let before = Instant::now();
    let error =
        error_of(&mut dicrotic(&["grade", &file, "--set", &scenario, "--out", out.to_str().unwrap()]));
    assert!(before.elapsed() < Duration::from_secs(5), "{:?}", before.elapsed());
    for part in ["line 1: skipped", "line 2: skipped", "simulated seconds: 1080000, at most 21600"] {
        assert!(error.contains(part), "{error}");
    }
}

#[test]
fn scripts_that_wait_for_days_are_refused_quickly() {
    let folder = scratch("waits");
    let steps = "{wait=600},".repeat(400);
    let attempt =
        |k: usize| format!("[[attempt]]\nname=\"{k}\"\nseed=1\nexpect={{passed=false}}\nsteps=[{steps}]\n");
    let text = format!("{}\n{}", command::SCENARIO, (0..9).map(attempt).collect::<String>());
    let file = written(&folder, "waits.toml", &text);
    let before = Instant::now();
    let error = error_of(&mut dicrotic(&["check", &file]));
    assert!(before.elapsed() < Duration::from_secs(5), "{:?}", before.elapsed());
    assert!(error.contains("attempt[0].steps") && error.contains("7200 s"), "{error}");
}

#[test]
fn nothing_turns_the_direction_of_reading_or_acts_in_tables_reports_and_at_the_terminal() {
    let folder = scratch("unseen");
    let acts: String =
        ["\u{202e}", "\u{2066}", "\u{2069}", "\u{200f}", "\u{61c}", "\u{2028}", "\u{1b}[31m", "\u{9b}2J"]
            .concat();
    let (session, about) = attempt_at(ASSIGNMENT, &format!("Ada {acts}17"), 1, Way::Right);
    let inside = folder.join("in");
    std::fs::create_dir(&inside).unwrap();
    written(&inside, "ada \u{202e}nosj.json", result::write(&session, &about).unwrap());
    written(&inside, "ada.txt", session.code(&about).unwrap().write());
    written(&inside, "bad\u{202e}.json", "{\"format\": \"\u{202e}x\"}");
    let list = written(
        &folder,
        "list.csv",
        format!("code,name\nada[31m2j17,\"Ada {acts} Moss\"\nB,\"Bo\n{acts}\"\n"),
    );
    let set = written(&folder, "set.toml", ASSIGNMENT);
    let path = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let inside = inside.to_str().unwrap();
    let (grades, page, book, key) =
        (path("grades.csv"), path("class.html"), path("book.csv"), path("key.csv"));
    for command in [
        vec!["grade", inside, "--set", &set, "--out", &grades],
        vec!["class", inside, "--set", &set, "--roster", &list, "--names", "--out", &page],
        vec![
            "class",
            inside,
            "--set",
            &set,
            "--roster",
            &list,
            "--names",
            "--gradebook",
            &book,
            "--answers",
            &key,
        ],
    ] {
        let Output { stdout, stderr, status } = dicrotic(&command).output().unwrap();
        // The damaged file is told.
        assert_eq!(status.code(), Some(2));
        let told = [stdout, stderr].map(|bytes| String::from_utf8(bytes).unwrap()).concat();
        let found: Vec<char> = told.chars().filter(|c| unseen::acts(*c) && *c != '\n').collect();
        assert_eq!(found, [], "{told}");
    }
    for file in [&grades, &page, &book, &key] {
        let text = std::fs::read_to_string(file).unwrap();
        let found: Vec<char> = text.chars().filter(|c| unseen::acts(*c) && !"\r\n".contains(*c)).collect();
        assert_eq!(found, [], "{text}");
        assert!(text.contains("Ada"), "{text}");
    }
    // The student is who they are on the list, and their bench is theirs.
    let book = std::fs::read_to_string(&book).unwrap();
    assert_eq!(book.lines().count(), 3, "{book}");
    let grades = std::fs::read_to_string(&grades).unwrap();
    assert!(grades.contains(",yes,,") && !grades.contains("another code"), "{grades}");
}

#[test]
fn a_student_s_code_acts_in_no_cell_whatever_divides_them() {
    let folder = scratch("formula");
    for (k, student) in ["x;=cmd|' /C calc'!A0", "a\t=1+1", "b\n@SUM(A1)", "\"=1", "c, +1"].iter().enumerate()
    {
        let (session, mut about) = attempt(k as u32);
        about.student = student.to_string();
        written(&folder, &format!("{k}.dicrotic-result.json"), result::write(&session, &about).unwrap());
    }
    let out = folder.join("grades.csv");
    let status = dicrotic(&["grade", folder.to_str().unwrap(), "--out", out.to_str().unwrap()]).status();
    // Another code has another seed: that is complained of.
    assert_eq!(status.unwrap().code(), Some(2));
    let table = std::fs::read_to_string(&out).unwrap();
    for line in table.lines() {
        for part in line.split([',', ';', '\t']) {
            let inner = part.trim_start_matches(['"', ' ']);
            assert!(!inner.starts_with(['=', '+', '-', '@']), "{part} in {line}");
        }
    }
    assert_eq!(table.lines().count(), 6, "{table}");
}
