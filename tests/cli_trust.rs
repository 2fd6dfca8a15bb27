//! What is graded is what was set: another bench, another's seed, another's log, one try too many, an edited field are told by
//! the command line, whatever the file or the code says of itself; and a way to the truth of an assigned bench is not open.

use dicrotic::exchange::handin::result;
use dicrotic::scenario::assignment::hex;
use dicrotic::session::compact::{About, base64};
use dicrotic::session::{Session, seeds};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use std::ffi::OsStr;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use students::{ASSIGNMENT, KEY, Way, attempt, attempt_at, faultless, student};

mod students;

/// A folder of a test's own with the assignment in it.
struct Desk(PathBuf);

impl Desk {
    fn new(name: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("trust").join(name);
        let _ = std::fs::remove_dir_all(&folder);
        std::fs::create_dir_all(folder.join("in")).unwrap();
        std::fs::write(folder.join("set.toml"), ASSIGNMENT).unwrap();
        Self(folder)
    }

    fn path(&self, name: &str) -> String {
        self.0.join(name).display().to_string()
    }

    fn put(&self, name: &str, text: &str) {
        std::fs::write(self.0.join(name), text).unwrap();
    }

    fn hand_in(&self, name: &str, (session, about): &(Session, About)) -> Value {
        let text = result::write(session, about).unwrap();
        self.put(&format!("in/{name}.json"), &text);
        serde_json::from_str(&text).unwrap()
    }

    fn grade(&self, more: &[&str]) -> Told {
        let (folder, out) = (self.path("in"), self.path("grades.csv"));
        let mut arguments = vec!["grade", &folder, "--out", &out];
        arguments.extend(more);
        let told = dicrotic(&arguments);
        let table = std::fs::read_to_string(&out).unwrap_or_default();
        Told { table, ..told }
    }

    fn class(&self, more: &[&str]) -> Told {
        let folder = self.path("in");
        let mut arguments = vec!["class", &folder, "--names"];
        arguments.extend(more);
        dicrotic(&arguments)
    }
}

#[derive(Debug)]
struct Told {
    code: Option<i32>,
    out: String,
    error: String,
    table: String,
}

impl Told {
    /// A cell of the line that begins with this file's name.
    fn cell(&self, file: &str, head: &str) -> &str {
        let at = self.table.lines().next().unwrap().split(',').position(|h| h == head);
        let at = at.unwrap_or_else(|| panic!("no column {head}: {}", self.table));
        let line = self.table.lines().find(|l| l.contains(file)).unwrap_or_else(|| panic!("{self:?}"));
        // A list of codes has its line in its cell.
        line.split(",").filter(|cell| !cell.starts_with(" line ")).nth(at).unwrap()
    }
}

fn dicrotic<S: AsRef<OsStr>>(arguments: &[S]) -> Told {
    let Output { status, stdout, stderr } =
        Command::new(env!("CARGO_BIN_EXE_dicrotic")).args(arguments).output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    Told { code: status.code(), out: text(stdout), error: text(stderr), table: String::new() }
}

/// The text that a link carries.
fn unpacked(link: &str) -> String {
    let bytes = base64::read(link.trim().split_once("#a=").unwrap().1).unwrap_or_else(|_| panic!("{link}"));
    let mut text = String::new();
    flate2::read::DeflateDecoder::new(&bytes[..]).read_to_string(&mut text).unwrap();
    text
}

fn seal(mut value: Value) -> String {
    value.as_object_mut().unwrap().remove("checksum");
    let sum = hex(&Sha256::digest(value.to_string().as_bytes()));
    value["checksum"] = json!(sum);
    value.to_string()
}

#[test]
fn a_bench_without_its_faults_is_not_the_one_set_as_a_file_or_as_a_code() {
    let desk = Desk::new("faultless");
    let easy = attempt_at(&faultless(), "Mallory", 1, Way::Right);
    assert!(easy.0.check().unwrap().report.passed, "{:?}", easy.0.check().unwrap().report);
    desk.hand_in("easy", &easy);
    let set = desk.path("set.toml");
    let told = desk.grade(&["--set", &set]);
    assert_eq!(told.code, Some(2), "{told:?}");
    assert!(told.error.contains("easy.json: not the scenario that was assigned"), "{told:?}");
    assert_eq!(told.cell("easy.json", "set"), "no", "{told:?}");
    let class = desk.class(&["--set", &set]);
    assert_eq!(class.code, Some(2), "{class:?}");
    assert!(
        class.out.contains("wrong scenario") && class.out.contains("not the scenario that was assigned"),
        "{class:?}"
    );
    std::fs::remove_file(desk.path("in/easy.json")).unwrap();
    // As a code, with its bench at hand and without.
    desk.put("in/codes.txt", &easy.0.code(&easy.1).unwrap().write());
    let told = desk.grade(&["--set", &set]);
    assert_eq!(told.code, Some(2), "{told:?}");
    assert!(told.error.contains("not the scenario that was assigned"), "{told:?}");
    // The honest one beside it is the one set, whether the assignment is given as its file, its folder or its link.
    std::fs::remove_file(desk.path("in/codes.txt")).unwrap();
    desk.hand_in("honest", &attempt(0));
    let link = dicrotic(&["link", &set, "--at", "https://course.example/"]).out;
    desk.put("link.txt", &link);
    std::fs::create_dir(desk.path("all")).unwrap();
    desk.put("all/one.toml", ASSIGNMENT);
    for given in [&set, link.trim(), &desk.path("link.txt"), &desk.path("all")] {
        let told = desk.grade(&["--set", given]);
        assert_eq!(told.code, Some(0), "{given}: {told:?}");
        assert_eq!(told.cell("honest.json", "set"), "yes", "{told:?}");
    }
    assert!(
        desk.class(&["--set", &set]).out.contains("\nGroup A-01  ready"),
        "{:?}",
        desk.class(&["--set", &set])
    );
}

#[test]
fn with_nothing_given_it_says_what_was_not_compared_and_that_two_benches_have_one_heading() {
    let desk = Desk::new("nothing-given");
    desk.hand_in("honest", &attempt(0));
    let told = desk.grade(&[]);
    assert_eq!(told.code, Some(0), "{told:?}");
    assert!(told.out.contains("not compared with an assignment"), "{told:?}");
    desk.hand_in("easy", &attempt_at(&faultless(), "Mallory", 1, Way::Right));
    for told in [desk.grade(&[]), desk.class(&[])] {
        assert!(told.out.contains("2 different scenarios are called before-the-lab"), "{told:?}");
    }
    // The one from outside goes on under a clear name.
    let set = desk.path("set.toml");
    assert!(
        desk.grade(&["--scenario", &set]).error.contains("--set"),
        "{:?}",
        desk.grade(&["--scenario", &set])
    );
}

#[test]
fn anothers_log_or_seed_and_one_try_too_many_are_told_each_in_its_own_words() {
    let desk = Desk::new("whose");
    let set = desk.path("set.toml");
    let (session, mut about) = attempt(0);
    about.student = "Mallory".into();
    desk.hand_in("mallory", &(session, about));
    let told = desk.grade(&["--set", &set]);
    assert_eq!(told.code, Some(2), "{told:?}");
    assert!(told.error.contains("mallory.json: not the scenario of this student ID"), "{told:?}");
    desk.hand_in("first", &attempt(0));
    let told = desk.grade(&["--set", &set]);
    assert!(
        told.error.contains("first.json: the same actions as") && told.error.contains("mallory.json"),
        "{told:?}"
    );
    // Three tries are allowed: the fourth is the student's own bench, and one too many.
    let desk = Desk::new("fourth");
    desk.hand_in("fourth", &attempt_at(ASSIGNMENT, &student(3), 4, Way::Right));
    let told = desk.grade(&["--set", &desk.path("set.toml")]);
    assert_eq!(told.code, Some(2), "{told:?}");
    assert!(told.error.contains("fourth.json: attempt 4 of 3"), "{told:?}");
    assert!(!told.error.contains("of this student ID"), "{told:?}");
    let class = desk.class(&["--set", &desk.path("set.toml")]);
    assert!(class.out.contains("not ready") && class.code == Some(2), "{class:?}");
}

#[test]
fn each_field_of_a_result_is_the_replays_own() {
    let desk = Desk::new("fields");
    let value = desk.hand_in("honest", &attempt(0));
    std::fs::remove_file(desk.path("in/honest.json")).unwrap();
    for (path, to) in [
        ("/answers/count", json!("99")),
        ("/answers/rate", json!("99")),
        ("/named", json!([])),
        ("/scenario_id", json!("another")),
        ("/about/try", json!(99)),
        ("/about/try", json!(2)),
        ("/verdict/tries", json!(2)),
    ] {
        let mut edited = value.clone();
        *edited.pointer_mut(path).unwrap() = to;
        desk.put("in/edited.json", &seal(edited));
        let told = desk.grade(&["--set", &desk.path("set.toml")]);
        assert_eq!(told.code, Some(2), "{path}: {told:?}");
        assert_eq!(told.cell("edited.json", "verified"), "no", "{path}: {told:?}");
        assert!(told.error.contains("a replay gives another result"), "{path}: {told:?}");
    }
}

#[test]
fn what_is_handed_in_twice_counts_once_and_is_told() {
    let desk = Desk::new("twice");
    let honest = attempt(0);
    desk.hand_in("one", &honest);
    desk.hand_in("two", &honest);
    desk.put("in/three.txt", &honest.0.code(&honest.1).unwrap().write());
    let set = desk.path("set.toml");
    let told = desk.grade(&["--set", &set]);
    assert_eq!(told.code, Some(0), "{told:?}");
    assert_eq!(told.table.lines().count(), 2, "{told:?}");
    assert!(told.out.contains("2 submitted more than once"), "{told:?}");
    let class = desk.class(&["--set", &set]);
    assert!(class.out.contains("1 of 1"), "{class:?}");
}

#[test]
fn one_log_with_two_times_counts_by_its_first_end_and_is_remarked() {
    let (session, about) = attempt(0);
    for names in [["a", "b"], ["b", "a"]] {
        let desk = Desk::new("two-times");
        for (name, more_s) in names.into_iter().zip([0, 5000]) {
            let about = About { ended_s: about.ended_s + more_s, ..about.clone() };
            desk.put(&format!("in/{name}.txt"), &session.code(&about).unwrap().write());
        }
        let told = desk.grade(&["--set", &desk.path("set.toml")]);
        assert_eq!((told.code, told.table.lines().count()), (Some(0), 2), "{told:?}");
        let file = format!("{}.txt", names[0]);
        let end = dicrotic::exchange::handin::table::moment(about.ended_s);
        assert_eq!(told.cell(&file, "ended"), end, "{told:?}");
        assert!(told.cell(&file, "beside").contains("the same actions with two times"), "{told:?}");
        assert!(told.out.contains("remark: the same actions with two times"), "{told:?}");
        assert!(told.out.contains(&format!("{}.txt, line 1, ended", names[1])), "{told:?}");
        let class = desk.class(&["--set", &desk.path("set.toml")]);
        assert!(class.out.contains("the same actions with two times"), "{class:?}");
    }
}

#[test]
fn old_results_are_judged_by_the_new_criteria_and_the_changed_verdicts_are_told() {
    let desk = Desk::new("regrade");
    desk.hand_in("right", &attempt(0));
    desk.hand_in("six", &attempt(2));
    let old = desk.grade(&["--set", &desk.path("set.toml")]);
    assert_eq!((old.cell("right.json", "passed"), old.code), ("yes", Some(0)), "{old:?}");
    desk.put(
        "new.toml",
        &ASSIGNMENT.replace("[subject]", "[pass]\nwindow_s = 19.0\nrecord_s = 19.0\n\n[subject]"),
    );
    let new = desk.grade(&["--set", &desk.path("new.toml")]);
    assert_eq!(new.code, Some(0), "{new:?}");
    assert_eq!(new.cell("right.json", "set"), "yes", "{new:?}");
    assert_eq!(new.cell("right.json", "passed"), "no", "{new:?}");
    assert!(new.out.contains("right.json: passed, now not passed"), "{new:?}");
    assert!(!new.out.contains("six.json:"), "{new:?}");
    // That all were done by other criteria is told once.
    let others = "remark: other misreadings, hints or criteria than those assigned: ";
    assert_eq!((old.out.matches(others).count(), new.out.matches(others).count()), (0, 1), "{new:?}");
    // By a code as well.
    let (session, about) = attempt(0);
    std::fs::remove_file(desk.path("in/right.json")).unwrap();
    desk.put("in/codes.txt", &session.code(&about).unwrap().write());
    let new = desk.grade(&["--set", &desk.path("new.toml")]);
    assert_eq!((new.cell("codes.txt", "passed"), new.code), ("no", Some(0)), "{new:?}");
    assert!(new.out.contains("passed, now not passed"), "{new:?}");
}

#[test]
fn no_way_to_the_truth_of_an_assigned_bench_is_open_without_the_word() {
    let desk = Desk::new("truth");
    let (set, out, truth) = (desk.path("set.toml"), desk.path("a.csv"), desk.path("truth.txt"));
    let link = dicrotic(&["link", &set, "--at", "https://course.example/"]).out;
    desk.put("link.txt", &link);
    // What a student has: the text of the link.
    let shipped = desk.path("shipped.toml");
    desk.put("shipped.toml", &dicrotic::scenario::digest::handed_out(ASSIGNMENT));
    let seed = seeds::seed(KEY, &student(0), 1).to_string();
    let render = |file: &str, word: &[&str]| {
        let _ = std::fs::remove_file(&truth);
        let mut all =
            vec!["render", file, "--seed", &seed, "--seconds", "20", "--out", &out, "--truth", &truth];
        all.extend(word);
        (dicrotic(&all), std::fs::read_to_string(&truth).ok())
    };
    let (told, beats) = render(&shipped, &[]);
    assert_eq!((told.code, &beats), (Some(2), &None), "{told:?}");
    assert!(told.error.contains("--password"), "{told:?}");
    assert_eq!(render(&shipped, &["--password", "guess work"]).0.code, Some(2));
    let (told, beats) = render(&shipped, &["--password", students::WORD]);
    assert_eq!(told.code, Some(0), "{told:?}");
    assert_eq!(render(&set, &[]).1, beats, "the instructor's own file has the word in it");
    // Neither the assignment nor its word can be taken off without another heart.
    let text = std::fs::read_to_string(&shipped).unwrap();
    let bare: String = text.split_inclusive('\n').filter(|l| !l.starts_with("password")).collect();
    let own = bare.replace("[assignment]\n", "[assignment]\npassword = \"my own word\"\n");
    desk.put("own.toml", &own);
    let (_, other) = render(&desk.path("own.toml"), &[]);
    assert!(other.is_some() && other != beats);
    let gone =
        bare.split("[assignment]").next().unwrap().to_string() + &bare[bare.find("[subject]").unwrap()..];
    desk.put("gone.toml", &gone);
    let (told, other) = render(&desk.path("gone.toml"), &[]);
    assert!(other.is_some() && other != beats, "{told:?}");
}

#[test]
fn what_leaves_the_desk_has_no_script_and_no_word() {
    let desk = Desk::new("leaves");
    let script = "\n[[attempt]]\nname = \"all right\"\nseed = 5\nexpect = { passed = true }\nsteps = [\n  { do = \"answer\", field = \"count\", text = \"@count\" },\n]\n";
    let full = format!("{ASSIGNMENT}{script}");
    desk.put("full.toml", &full);
    let link = dicrotic(&["link", &desk.path("full.toml"), "--at", "https://course.example/"]).out;
    let text = unpacked(&link);
    assert!(
        !text.contains("attempt]]") && !text.contains("@count") && !text.contains(students::WORD),
        "{text}"
    );
    assert_eq!(link, dicrotic(&["link", &desk.path("set.toml"), "--at", "https://course.example/"]).out);
    let worked = full.replace("[assignment]", "[assignment]\nworked = true");
    desk.put("worked.toml", &worked);
    let link = dicrotic(&["link", &desk.path("worked.toml"), "--at", "https://course.example/"]).out;
    assert!(unpacked(&link).contains("@count"));
    // A check replays no script of an assigned bench for whoever does not have the word.
    desk.put("shipped.toml", &dicrotic::scenario::digest::handed_out(&worked));
    let told = dicrotic(&["check", &desk.path("shipped.toml")]);
    assert_eq!(told.code, Some(2), "{told:?}");
    assert!(told.error.contains("--password"), "{told:?}");
    // With it they are replayed: this one measures nothing.
    let told = dicrotic(&["check", &desk.path("shipped.toml"), "--password", students::WORD]);
    assert!(told.code == Some(2) && !told.error.contains("--password"), "{told:?}");
}

#[test]
fn a_class_without_names_tells_no_code_wherever_it_speaks_of_others() {
    let desk = Desk::new("nameless");
    let honest = attempt(0);
    desk.hand_in("a", &honest);
    let mut copied = honest;
    copied.1.student = "S-009".into();
    desk.hand_in("b", &copied);
    let results: Vec<Value> = [1, 4]
        .iter()
        .map(|k| serde_json::from_str(&result::write(&attempt(*k).0, &attempt(*k).1).unwrap()).unwrap())
        .collect();
    let course = json!({"format": "dicrotic-course-result", "version": 1, "course": "c", "results": results});
    desk.put("in/c.dicrotic-course-result.json", &course.to_string());
    let (folder, out, saved) = (desk.path("in"), desk.path("class.html"), desk.path("saved.json"));
    let codes = ["S-009".to_string(), student(0), student(1), student(4)];
    let nameless = |told: &str| {
        assert!(codes.iter().all(|code| !told.contains(code.as_str())), "{told}");
    };
    let plain = dicrotic(&["class", &folder, "--save", &saved]);
    nameless(&plain.out);
    // The numbers are those that the lines are shown under.
    for (who, other) in
        [("student 1 ", "same actions as student 2"), ("student 2 ", "same actions as student 1")]
    {
        let line = plain.out.lines().find(|line| line.starts_with(who)).unwrap();
        assert!(line.contains(other), "{plain:?}");
    }
    assert!(plain.out.contains("results of several students: student 3, student 4"), "{plain:?}");
    dicrotic(&["class", &folder, "--out", &out]);
    let html = std::fs::read_to_string(&out).unwrap();
    nameless(&html);
    assert!(html.contains("same actions as student 2"), "{html}");
    // Who stands otherwise than before.
    desk.put("strict.toml", &format!("{ASSIGNMENT}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n"));
    let again = dicrotic(&["class", "--open", &saved, "--set", &desk.path("strict.toml")]);
    nameless(&again.out);
    assert!(again.out.contains("changed: student "), "{again:?}");
    // With names they are told.
    let named = desk.class(&[]);
    assert!(named.out.contains("same actions as S-009"), "{named:?}");
    assert!(named.out.contains(&format!("several students: {}, {}", student(1), student(4))), "{named:?}");
}

#[test]
fn a_try_begun_twice_and_misreadings_that_tell_the_truth_are_told() {
    let desk = Desk::new("begun");
    let handed = |scenario: &str, way| {
        let (session, about) = students::attempt_at(scenario, &student(0), 1, way);
        result::write(&session, &about).unwrap()
    };
    desk.put("in/six.json", &handed(ASSIGNMENT, Way::Six));
    desk.put("in/right.json", &handed(ASSIGNMENT, Way::Right));
    let told = desk.grade(&["--set", &desk.path("set.toml")]);
    // They part at their last answers, which a log keeps as they were typed last, and at what came after them.
    assert!(told.out.contains("right.json: remark: the same attempt started twice, also in "), "{told:?}");
    assert_eq!(
        (told.cell("six.json", "beside"), told.code),
        ("the same attempt started twice", Some(0)),
        "{told:?}"
    );
    std::fs::remove_file(desk.path("in/six.json")).unwrap();
    let tells =
        "\n[[misreading]]\nname = \"x\"\nfield = \"count\"\nformula = \"n_true - 3\"\nwords = \"w\"\n";
    desk.put("in/right.json", &handed(&format!("{ASSIGNMENT}{tells}"), Way::Right));
    let told = desk.grade(&["--set", &desk.path("set.toml")]);
    let why = "it had misreadings that were not assigned and that tell the right answer";
    assert!(told.cell("right.json", "against").contains("misreadings that were not assigned"), "{told:?}");
    assert!(told.out.contains(why) || told.error.contains(why), "{told:?}");
}
