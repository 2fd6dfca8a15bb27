//! The command line over what students hand in: the table, what is skipped and why, the class, seeds.

use dicrotic::exchange::handin::result;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use students::{ASSIGNMENT, KEY, Way, attempt, attempt_at};

mod students;

fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("handin").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

fn dicrotic<S: AsRef<OsStr>>(arguments: &[S]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_dicrotic")).args(arguments).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A folder of so many results.
fn class(name: &str, students: std::ops::Range<u32>) -> PathBuf {
    let folder = scratch(name);
    for k in students {
        let (session, about) = attempt(k);
        let path = folder.join(format!("{k:02}{}", result::EXTENSION));
        std::fs::write(path, result::write(&session, &about).unwrap()).unwrap();
    }
    folder
}

#[test]
fn a_folder_becomes_a_table_and_what_is_wrong_in_it_is_named_and_skipped() {
    let folder = class("grade", 0..6);
    let out = folder.join("grades.csv");
    let (folder_text, out_text) = (folder.to_str().unwrap(), out.to_str().unwrap());
    let clean = dicrotic(&["grade", folder_text, "--out", out_text]);
    assert!(clean.status.success(), "{}", text(&clean.stderr));
    let table = std::fs::read_to_string(&out).unwrap();
    assert_eq!(table.lines().count(), 7);
    assert!(table.lines().nth(1).unwrap().contains("before-the-lab"), "{table}");
    std::fs::remove_file(&out).unwrap();

    let good = std::fs::read_to_string(folder.join(format!("00{}", result::EXTENSION))).unwrap();
    let nested = folder.join("more");
    std::fs::create_dir(&nested).unwrap();
    for (name, content) in [
        ("truncated.json", &good[..good.len() / 2]),
        ("foreign.json", "{\"format\": \"a cake\"}"),
        ("thesis.pdf", "%PDF"),
        ("empty.txt", "nothing here"),
        ("bomb.json", &"[".repeat(200_000)),
        ("changed.json", &good.replace("\"student\": \"Group A-01\"", "\"student\": \"=1+1\"")),
    ] {
        std::fs::write(nested.join(name), content).unwrap();
    }
    std::fs::write(nested.join("binary.json"), [0xff, 0xfe, 0, 1]).unwrap();
    let mixed = dicrotic(&["grade", folder_text, "/nowhere/lost.json", "--out", out_text]);
    assert_eq!(mixed.status.code(), Some(2));
    let told = text(&mixed.stderr);
    for part in [
        "truncated.json: skipped: the file is cut short",
        "foreign.json: skipped: not a result file: format \"a cake\"",
        "thesis.pdf: skipped: neither",
        "empty.txt: skipped: no line with a result code",
        "bomb.json: skipped",
        "binary.json: skipped: not UTF-8",
        "changed.json: not verified: the checksum",
        "lost.json: skipped",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
    assert!(!told.contains("panicked"), "{told}");
    let table = std::fs::read_to_string(&out).unwrap();
    assert_eq!(table.lines().count(), 8, "{table}");
    let changed = table.lines().find(|l| l.contains("changed.json")).unwrap();
    assert!(changed.contains(",\"'=1+1\",") && changed.contains(",no,"), "{changed}");
}

#[test]
fn codes_are_graded_from_a_list_given_their_scenario() {
    let folder = scratch("codes");
    let scenario = folder.join("assignment.toml");
    std::fs::write(&scenario, ASSIGNMENT).unwrap();
    let codes: Vec<String> = (0..3)
        .map(|k| {
            let (session, about) = attempt(k);
            format!("by mail: {}", session.code(&about).unwrap().write())
        })
        .collect();
    let list = folder.join("codes.txt");
    let cut = &codes[0][..60];
    std::fs::write(&list, format!("# Monday\n{}\n{cut}\n", codes.join("\n"))).unwrap();
    let out = folder.join("grades.csv");
    let (list, out, scenario) = (list.to_str().unwrap(), out.to_str().unwrap(), scenario.to_str().unwrap());
    let told = text(&dicrotic(&["grade", list, "--out", out]).stderr);
    assert!(
        told.contains("line 2: skipped: the result code belongs to a scenario that is not at hand"),
        "{told}"
    );
    let output = dicrotic(&["grade", list, "--out", out, "--set", scenario]);
    assert_eq!(output.status.code(), Some(2));
    assert!(
        text(&output.stderr).contains("line 5: skipped: the result code is damaged"),
        "{}",
        text(&output.stderr)
    );
    let table = std::fs::read_to_string(out).unwrap();
    assert_eq!(table.lines().count(), 4);
    assert!(table.contains("Group A-01") && table.contains("\""), "{table}");
    // The project's own scenarios are known without being named.
    let first =
        std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/01-first-wiring.toml"))
            .unwrap();
    let session = dicrotic::session::Session::new(&first, 3).unwrap();
    std::fs::write(folder.join("own.txt"), session.code(&Default::default()).unwrap().write()).unwrap();
    let own = dicrotic(&["grade", folder.join("own.txt").to_str().unwrap(), "--out", out]);
    assert!(own.status.success(), "{}", text(&own.stderr));
}

#[test]
fn a_class_is_shown_as_a_table_and_as_a_page_without_scripts_and_without_names() {
    let folder = class("class", 0..10);
    let hostile = "<script>alert(1)</script>\u{1b}[31m";
    let (session, about) = attempt_at(ASSIGNMENT, hostile, 1, Way::Right);
    let path = folder.join(format!("hostile{}", result::EXTENSION));
    std::fs::write(path, result::write(&session, &about).unwrap()).unwrap();

    let folder_text = folder.to_str().unwrap();
    let plain = dicrotic(&["class", folder_text]);
    assert!(plain.status.success(), "{}", text(&plain.stderr));
    let table = text(&plain.stdout);
    let lines: Vec<&str> = table.lines().collect();
    assert!(lines[1].contains("not ready") && lines[1].starts_with("student "), "{table}");
    assert!(
        table.contains("charger beside the sensor cable") && table.contains("the multiplier of another T"),
        "{table}"
    );
    assert!(!table.contains("Group"), "{table}");
    let named = text(&dicrotic(&["class", folder_text, "--names"]).stdout);
    assert!(named.contains("Group A-01") && !named.contains('\u{1b}'), "{named}");

    let out = folder.join("class.html");
    let page = dicrotic(&["class", folder_text, "--names", "--out", out.to_str().unwrap()]);
    assert!(page.status.success(), "{}", text(&page.stderr));
    let html = std::fs::read_to_string(&out).unwrap();
    assert!(html.contains("&lt;script&gt;") && !html.contains("<script"), "{html}");
    assert!(!html.contains("http") && html.contains(">not ready<"), "{html}");
    let twice = text(&dicrotic(&["class", folder_text, "--passes", "2"]).stdout);
    assert!(twice.lines().skip(1).take(11).all(|l| l.contains("not ready")), "{twice}");
}

#[test]
fn a_seed_is_printed_as_the_page_derives_it() {
    let output = dicrotic(&["seed", KEY, "group a 01"]);
    assert_eq!(text(&output.stdout).trim(), attempt(0).0.seed().to_string());
    let second = dicrotic(&["seed", KEY, "Group A-01", "--attempt", "2"]);
    assert!(second.status.success() && second.stdout != output.stdout);
}

#[test]
fn a_link_needs_a_valid_scenario_and_an_address() {
    let folder = scratch("link");
    let file = folder.join("a.toml");
    std::fs::write(&file, ASSIGNMENT).unwrap();
    let file = file.to_str().unwrap();
    let output = dicrotic(&["link", file, "--at", "https://course.example/"]);
    assert!(output.status.success(), "{}", text(&output.stderr));
    let link = text(&output.stdout);
    assert!(link.starts_with("https://course.example/#a=") && link.trim().len() < 900, "{link}");
    for bad in ["course.example", "https://a/#s=b", "javascript:alert(1)"] {
        assert!(text(&dicrotic(&["link", file, "--at", bad]).stderr).contains("--at"), "{bad}");
    }
    std::fs::write(file, "id = 3").unwrap();
    assert!(text(&dicrotic(&["link", file, "--at", "https://a/"]).stderr).contains("a.toml"));
}

/// The class of three hundred as a course has it: list, word, gradebook, key, and the file to go on with.
#[test]
fn what_is_no_web_address_is_refused_with_the_option() {
    let folder = class("address", 0..0);
    let (scenario, course) = (folder.join("a.toml"), folder.join("c.toml"));
    std::fs::write(&scenario, ASSIGNMENT).unwrap();
    std::fs::write(&course, "[course]\nid = \"c\"\ntitle = \"t\"\n[[part]]\nfile = \"a.toml\"\n").unwrap();
    let [scenario, course, out] =
        [scenario, course, folder.join("out.toml")].map(|p| p.display().to_string());
    let run = |at: &str| {
        let link = dicrotic(&["link", &scenario, "--at", at]);
        let course = dicrotic(&["course", &course, "--link", "--at", at, "--out", &out]);
        [link, course].map(|told| (told.status.code(), text(&told.stdout), text(&told.stderr)))
    };
    for at in [
        "",
        "http://",
        "https:///path",
        "ftp://a.example",
        "javascript:alert(1)",
        "a.example",
        " https://a.example",
        "https://a.example/ b",
        "https://a.example/\u{1b}[2J",
        "https://a.example/\n",
        "https://a.example/\u{202e}moc",
        "https://a.example/#x",
        "https://a\"b.example",
        "https://good.example@bad.example/",
        "https://a.example/<b>",
        "https://...",
        "HTTP//a.example",
    ] {
        for (code, out, error) in run(at) {
            assert_eq!((code, out.as_str()), (Some(2), ""), "{at:?}: {error}");
            assert!(
                error.starts_with("dicrotic: --at ") && error.contains("expected the page's address"),
                "{error}"
            );
            assert_eq!(error.lines().count(), 1, "{error}");
            assert!(!error.contains(['\u{1b}', '\u{202e}']), "{error}");
        }
        assert!(!std::path::Path::new(&out).exists(), "{at:?}");
    }
    for at in [
        "https://a.example",
        "http://127.0.0.1:8000/",
        "https://a.example/~b/p/?lang=es&x=%20",
        "http://[::1]:80/",
        "https://universit\u{e0}.example/\u{e8}/",
    ] {
        for (code, out, error) in run(at) {
            assert!(code == Some(0) && out.starts_with(at), "{at}: {error}");
        }
    }
}

#[test]
fn a_class_with_its_list_is_saved_opened_and_goes_out_as_gradebook_and_key() {
    let folder = class("roster", 0..4);
    let put = |name: &str, content: &str| {
        let path = folder.parent().unwrap().join(format!("roster-{name}"));
        std::fs::write(&path, content).unwrap();
        path.to_str().unwrap().to_string()
    };
    let set = put("set.toml", ASSIGNMENT);
    let list =
        put("list.csv", "name;code;section\n\"=cmd|'x'\";group a-01;A\nBo;Group A-02;A\nCy;nobody;B\n");
    let [book, saved, key] = ["book.csv", "class.json", "key.csv"].map(|name| put(name, ""));
    let folder_text = folder.to_str().unwrap();
    let arguments = [
        "class",
        folder_text,
        "--set",
        &set,
        "--roster",
        &list,
        "--save",
        &saved,
        "--gradebook",
        &book,
        "--bom",
        "--column",
        "SIS id=code",
        "--column",
        "Who=name",
        "--column",
        "Points=points",
        "--maximum",
        "10",
        "--answers",
        &key,
        "--names",
    ];
    let told = dicrotic(&arguments);
    assert!(told.status.success(), "{}", text(&told.stderr));
    let table = text(&told.stdout);
    assert!(
        table.lines().nth(1).unwrap().starts_with("Cy (nobody)") && table.contains("nothing submitted"),
        "{table}"
    );
    let rows = std::fs::read_to_string(&book).unwrap();
    let rows: Vec<&str> = rows.split("\r\n").collect();
    assert_eq!(rows[0], "\u{feff}SIS id,Who,Points");
    assert!(rows[1].starts_with("group a-01,\"'=cmd|'x'\","), "{}", rows[1]);
    assert_eq!(rows[3], "nobody,Cy,0");
    // The key: for each of the list, and of those who handed in beside it, and each try, on the bench that the student really has.
    let key = std::fs::read_to_string(&key).unwrap();
    assert_eq!(key.lines().count(), 1 + (3 + 2) * 3, "{key}");
    let mine = text(&dicrotic(&["seed", KEY, "Group A-01"]).stdout);
    let first = key.lines().nth(1).unwrap();
    assert!(first.contains(mine.trim()) && first.contains("power_strip_off charger_near"), "{first}");
    assert!(first.contains(",1.00 0.80,"), "{first}");
    let bpm: f64 = first.rsplit(',').next().unwrap().parse().unwrap();
    assert!((55.0..77.0).contains(&bpm), "{first}");
    // Without the word there is none.
    let shipped = put("shipped.toml", &dicrotic::scenario::digest::handed_out(ASSIGNMENT));
    let closed = dicrotic(&["class", "--roster", &list, "--set", &shipped, "--answers", &put("no.csv", "")]);
    assert!(text(&closed.stderr).contains("the password is not the one"), "{}", text(&closed.stderr));
    // What students read in it is in the page's words, without a name of the program's own.
    let plain = put("plain.csv", "");
    dicrotic(&["class", folder_text, "--set", &set, "--gradebook", &plain]);
    let rows = std::fs::read_to_string(&plain).unwrap();
    let feedback: Vec<&str> = rows.lines().skip(1).map(|row| row.splitn(5, ',').last().unwrap()).collect();
    assert!(feedback.iter().all(|told| !told.contains('_') && told.contains("eady.")), "{rows}");
    let step = "Not ready. First step that is not correct: the ";
    assert!(feedback.iter().any(|told| told.contains(step)), "{rows}");
    assert!(rows.contains("Misreading: the multiplier of another T."), "{rows}");
    // Gone on with: nothing has changed; by stricter criteria it has.
    let again = text(&dicrotic(&["class", "--open", &saved, "--names"]).stdout);
    assert!(!again.contains("changed:") && again.contains("Cy (nobody)"), "{again}");
    let strict = put("strict.toml", &format!("{ASSIGNMENT}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n"));
    let again = text(&dicrotic(&["class", "--open", &saved, "--set", &strict, "--save", &saved]).stdout);
    assert!(again.contains("changed: student 1: ready, ") && again.contains("; now not ready, "), "{again}");
    let bad = put("bad.csv", "code\na\na\n");
    let refused = dicrotic(&["class", folder_text, "--roster", &bad]);
    assert!(
        text(&refused.stderr).contains("roster-bad.csv: line 3: the student ID \"a\" is already on line 2")
    );
}
