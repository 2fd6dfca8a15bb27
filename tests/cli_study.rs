//! The command line over a study: what it writes, what it refuses, what it makes of what came in.

use command::{dicrotic, error_of, scratch, told};
use dicrotic::exchange::handin::result;
use dicrotic::exchange::study::plan::Study;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::plan::Plan;
use dicrotic::session::compact::About;
use dicrotic::session::{Session, script, seeds};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

mod command;

const WORD: &str = "oak and ash 7";
const PASSWORD: &str = "chalk and slate";

fn path(file: &Path) -> String {
    file.to_str().unwrap().into()
}

fn pool(name: &str) -> String {
    format!("{}/scenarios/{name}.toml", env!("CARGO_MANIFEST_DIR"))
}

/// Plans a study of so many students with one bench a test; its folder.
fn planned(name: &str, students: usize) -> (PathBuf, Vec<String>) {
    let folder = scratch(name);
    let list = folder.join("list.csv");
    let codes: Vec<String> = (1..=students).map(|k| format!("Student-{k:02}")).collect();
    fs::write(&list, format!("student ID\n{}\n", codes.join("\n"))).unwrap();
    let out = folder.join("study");
    let (list, out_text) = (path(&list), path(&out));
    let test = pool("64-find-the-fault-02");
    let rehearsal = pool("68-find-the-fault-06");
    let arguments = [
        "study",
        "plan",
        "--id",
        "pulse-1",
        "--title",
        "Pulse",
        "--roster",
        &list,
        "--word",
        WORD,
        "--test",
        &test,
        "--rehearsal",
        &rehearsal,
        "--out",
        &out_text,
        "--at",
        "https://example.edu/pulse/",
        "--password",
        PASSWORD,
    ];
    let said = told(&mut dicrotic(&arguments));
    assert!(said.contains("9 courses of 1 benches and the course for rehearsal"), "{said}");
    assert!(said.contains("rules of your institution come first"), "{said}");
    // A second plan in the same place would deal anew.
    let error = error_of(&mut dicrotic(&arguments));
    assert!(error.contains("this study is there already") && error.contains("--open"), "{error}");
    (out, codes)
}

fn study_of(folder: &Path) -> (PathBuf, Study) {
    let file = folder.join("pulse-1.dicrotic-study.json");
    let study = Study::read(&fs::read_to_string(&file).unwrap()).unwrap();
    (file, study)
}

#[test]
fn a_plan_is_a_folder_of_courses_and_two_lists_and_takes_students_who_come_late() {
    let (folder, codes) = planned("plan", 10);
    let arms = fs::read_to_string(folder.join("arms.csv")).unwrap();
    assert_eq!(arms.lines().count(), 11);
    let with = arms.lines().filter(|line| line.contains(",with,")).count();
    assert_eq!(with, 5, "{arms}");
    let links = fs::read_to_string(folder.join("links.csv")).unwrap();
    assert_eq!(links.lines().filter(|line| line.contains(",https://example.edu/pulse/#c=")).count(), 10);
    for name in ["first-a", "second-b", "later-c", "rehearsal"] {
        let file = path(&folder.join(format!("{name}.toml")));
        assert!(told(&mut dicrotic(&["course", &file])).contains("valid, 1 parts"));
    }
    for file in fs::read_dir(&folder).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap();
        assert!(!text.contains(WORD), "the word stands in a file");
    }
    // Nothing that students get says who is in which arm.
    let handed = fs::read_to_string(folder.join("first-a.toml")).unwrap();
    assert!(codes.iter().all(|code| !handed.contains(code)));
    let (file, before) = study_of(&folder);
    let more = folder.join("more.csv");
    fs::write(&more, format!("student ID\nLate-1\nLate-2\n{}\n", codes.join("\n"))).unwrap();
    let (more, out, file_text) = (path(&more), path(&folder), path(&file));
    let again = ["study", "plan", "--open", &file_text, "--roster", &more, "--word", WORD, "--out", &out];
    assert!(told(&mut dicrotic(&again)).contains("2 students placed, 12 in all"));
    assert_eq!(study_of(&folder).1.placed[..10], before.placed[..]);
    let error = error_of(&mut dicrotic(&[
        "study",
        "plan",
        "--open",
        &file_text,
        "--roster",
        &more,
        "--word",
        "elm and yew 3",
        "--out",
        &out,
    ]));
    assert!(error.contains("--word: this is not the word"), "{error}");
}

#[test]
fn what_makes_no_study_is_named() {
    let folder = scratch("no-study");
    let list = folder.join("list.csv");
    fs::write(&list, "student ID\nA\nB\n").unwrap();
    let (list, out) = (path(&list), path(&folder.join("out")));
    let (one, two) = (pool("64-find-the-fault-02"), pool("04-rest-pulse"));
    let plan = |id: &str, word: &str, test: &str| {
        error_of(&mut dicrotic(&[
            "study", "plan", "--id", id, "--title", "T", "--roster", &list, "--word", word, "--test", test,
            "--out", &out,
        ]))
    };
    for (error, told) in [
        (plan("pulse-1", WORD, &two), "no [pool]"),
        (plan("pulse-1", "short", &one), "8 to 60 characters"),
        (plan("Pulse 1", WORD, &one), "small letters, digits and hyphens"),
        (plan("pulse-1", WORD, "nowhere.toml"), "nowhere.toml"),
    ] {
        assert!(error.contains(told), "{told}: {error}");
    }
    assert!(!folder.join("out").exists(), "a plan that fails leaves nothing behind");
    let table =
        error_of(&mut dicrotic(&["study", "table", &list, "--plan", &one, "--word", WORD, "--out", &out]));
    assert!(table.contains("not the file of a study"), "{table}");
    let effect = error_of(&mut dicrotic(&["study", "effect", &list]));
    assert!(
        effect.contains("list.csv: line 1") && effect.contains("person,arm,first,second,later"),
        "{effect}"
    );
    let least = error_of(&mut dicrotic(&["study", "effect", &list, "--least", "1"]));
    assert!(least.contains("a whole number from 2 on"), "{least}");
}

/// A result of a student, who names and measures right or names wrong and measures nothing.
fn hand_in(folder: &Path, text: &str, student: &str, well: bool, consent: bool, at_s: u64) {
    let hash = text.split('"').find(|part| part.starts_with("sha256:")).unwrap();
    // As the instructor's own file has it, whose scripts know what is right.
    let text = &text.replace(hash, PASSWORD);
    let scenario = Scenario::read(text).unwrap();
    let seed = seeds::seed(&scenario.assignment.unwrap().key, student, 1);
    let mut session = Session::new(text, seed).unwrap();
    let named = if well { "@faults" } else { "@other" };
    let steps = json!([{"do": "consent", "given": consent}, {"do": "agree"}, {"wait": 8}, {"do": "name", "fault": named},
        {"do": "@mend"}, {"wait": 5}, {"do": "@fit"}, {"do": "record"}, {"wait": if well { 20 } else { 3 }}, {"do": "stop"},
        {"do": "answer", "field": "count", "text": "70"}, {"do": "check"}]);
    script::play(&mut session, steps.as_array().unwrap()).unwrap();
    let about = About { student: student.into(), tries: 1, begun_s: at_s - 600, ended_s: at_s };
    let file = folder.join(format!("{student}-{at_s}{}", result::EXTENSION));
    fs::write(file, result::write(&session, &about).unwrap()).unwrap();
}

#[test]
fn what_came_in_becomes_an_anonymous_table_with_its_effect() {
    let (folder, codes) = planned("table", 8);
    let (file, study) = study_of(&folder);
    let came = folder.join("came");
    fs::create_dir(&came).unwrap();
    for (k, placed) in study.placed.iter().enumerate() {
        for (nth, test) in study.tests.chunks(3).take(2).enumerate() {
            let course = &test[placed.form(nth)].course;
            let text = Plan::read(course).unwrap().part.remove(0).scenario;
            let well = nth == 1 && k % 3 > 0;
            hand_in(&came, &text, &placed.code, well, k != 7, 1_800_000_000 + 86_400 * nth as u64);
        }
    }
    let (came_text, plan, out, items) =
        (path(&came), path(&file), path(&folder.join("table.csv")), path(&folder.join("items.csv")));
    let table = |more: &[&str]| {
        let arguments =
            [&["study", "table", &came_text, "--plan", &plan, "--word", WORD, "--out", &out][..], more]
                .concat();
        dicrotic(&arguments)
    };
    let said = told(&mut table(&["--items", &items, "--least", "2"]));
    let rows = fs::read_to_string(&out).unwrap();
    assert_eq!(rows.lines().count(), 8, "one of eight said no: {rows}");
    assert!(codes.iter().all(|code| !rows.contains(code) && !said.contains(code)), "{said}");
    assert!(
        said.contains("Second test, percent, mean (SD)") && said.contains("Later test: fewer than 2 people"),
        "{said}"
    );
    // The same figures come out of the anonymous table alone.
    let alone = told(&mut dicrotic(&["study", "effect", &out, "--least", "2"]));
    assert!(said.ends_with(&alone), "{said}\n{alone}");
    let figures: Value =
        serde_json::from_str(&told(&mut dicrotic(&["study", "effect", &out, "--least", "2", "--json"])))
            .unwrap();
    assert_eq!(
        figures["second"]["gain"][0]["n"].as_u64().unwrap()
            + figures["second"]["gain"][1]["n"].as_u64().unwrap(),
        7
    );
    let listed = fs::read_to_string(&items).unwrap();
    assert!(
        listed.starts_with("item,answers,share_right,discrimination,misreading,times,median_minutes\n"),
        "{listed}"
    );
    assert!(codes.iter().all(|code| !listed.contains(code)));
    // Four in an arm are too few for the usual bound: nothing of anybody, and it is said.
    let few = told(&mut table(&["--items", &items]));
    assert_eq!(fs::read_to_string(&out).unwrap().lines().count(), 1);
    assert!(
        few.contains("An arm with fewer than 5 people is not in the table") && few.contains("not told"),
        "{few}"
    );
    assert!(fs::read_to_string(&items).unwrap().contains("fewer than 5"));
    // Who takes a yes back is gone; whoever is no student of it is an error.
    let first = &study.placed[0].code;
    told(&mut table(&["--least", "2", "--withdrawn", first]));
    assert_eq!(fs::read_to_string(&out).unwrap().lines().count(), 7);
    let error = error_of(&mut table(&["--withdrawn", "Nobody"]));
    assert!(error.contains("--withdrawn Nobody: no student of this study"), "{error}");
    let other = error_of(&mut dicrotic(&[
        "study",
        "table",
        &came_text,
        "--plan",
        &plan,
        "--word",
        "elm and yew 3",
        "--out",
        &out,
    ]));
    assert!(other.contains("--word: this is not the word"), "{other}");
    // What cannot be used is named; the rest is in the table.
    fs::write(came.join("cut.json"), "{\"format\":").unwrap();
    fs::write(came.join("cake.txt"), "no code").unwrap();
    let foreign = Session::new(&fs::read_to_string(pool("01-first-wiring")).unwrap(), 3).unwrap();
    fs::write(came.join("foreign.json"), result::write(&foreign, &About::default()).unwrap()).unwrap();
    let error = error_of(&mut table(&["--least", "2"]));
    for told in ["cut.json: skipped", "cake.txt: skipped", "foreign.json: left out: not a test of the study"]
    {
        assert!(error.contains(told), "{told}: {error}");
    }
    assert_eq!(fs::read_to_string(&out).unwrap().lines().count(), 8);
}
