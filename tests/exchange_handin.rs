//! What is handed in: the result file comes back, damage and forgery are found by checksum or replay, a class is summed up,
//! a name runs nothing on the instructor's machine.

use dicrotic::assess::misreading::Misreading;
use dicrotic::assess::skill::Got;
use dicrotic::assess::verdict::Step;
use dicrotic::exchange::class::care::Terms;
use dicrotic::exchange::class::course::Source;
use dicrotic::exchange::class::{Class, Line, State, minutes, roster};
use dicrotic::exchange::handin::class::sum_up;
use dicrotic::exchange::handin::{Graded, Handed, HandinError, Set, result, table};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::digest::{bench_digest, digest, hex};
use dicrotic::session::script;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use students::{ASSIGNMENT, Way, attempt, attempt_at, student, way};

mod students;

fn file(k: u32) -> String {
    let (session, about) = attempt(k);
    result::write(&session, &about).unwrap()
}

fn grade(text: &str) -> Result<Graded, HandinError> {
    result::read(text)?.grade()
}

/// The checksum by its definition, with the keys in order as serde_json's maps keep them.
fn seal(mut value: Value) -> String {
    value.as_object_mut().unwrap().remove("checksum");
    let text = value.to_string();
    value["checksum"] = json!(hex(&Sha256::digest(text.as_bytes())));
    value.to_string()
}

#[test]
fn a_result_file_is_verified_and_says_what_came_of_it() {
    let text = file(0);
    let graded = grade(&text).unwrap();
    assert_eq!(graded.doubts, []);
    assert!(
        graded.outcome.passed && graded.score.is_some_and(|s| s > 10) && !graded.rubric_ready,
        "{graded:?}"
    );
    assert!(graded.skills.contains(&("counting", Got::Pass)), "{:?}", graded.skills);
    assert_eq!((graded.about.student.as_str(), graded.own_seed), (student(0).as_str(), Some(true)));
    assert!(graded.faults.iter().all(|f| f.cleared && f.named) && graded.faults.len() == 2);
    assert!((0.6..1.6).contains(&graded.minutes), "{} min", graded.minutes);
    // The file is plain JSON with the checksum of its definition.
    let value: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(seal(value.clone()), value.to_string());
    assert_eq!(value["scenario_sha256"], json!(hex(&digest(ASSIGNMENT))));
    assert_eq!(value["answers"]["count"], json!(value["answers"]["count"].as_str().unwrap()));
}

/// Were one of these read out of the view by a name that the view no longer has, it would be empty and nothing would say so.
#[test]
fn what_is_graded_is_what_the_replayed_check_says() {
    for part in ["02-hum-on-the-trace", "04-rest-pulse", "58-what-is-it"] {
        let path = format!("{}/scenarios/{part}.toml", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).unwrap();
        let attempts = Scenario::read(&text).unwrap().attempt;
        for attempt in &attempts {
            let here = format!("{part}, \"{}\"", attempt.name);
            let session = script::replay(&text, attempt).unwrap();
            let graded = grade(&result::write(&session, &Default::default()).unwrap()).unwrap();
            let check = session.check().unwrap();
            let (report, evidence) = (&check.report, session.evidence().unwrap());
            assert_eq!(graded.doubts, [], "{here}");
            assert_eq!(graded.score, Some(check.rubric.total), "{here}");
            assert_eq!(graded.rubric_ready, check.rubric.ready() && report.passed, "{here}");
            let outcome = &graded.outcome;
            assert_eq!(
                (outcome.tries, outcome.passed, outcome.first_wrong, outcome.misreading),
                (check.tries, report.passed, report.first_wrong, check.misreading.as_ref().map(|m| m.id)),
                "{here}"
            );
            assert_eq!(outcome.codes, report.steps.iter().map(|s| s.code).collect::<Vec<_>>(), "{here}");
            assert!(!graded.steps.is_empty(), "{here}");
            for finding in &report.steps {
                let of_step = report.steps.iter().filter(|f| f.step == finding.step);
                let bad = of_step.clone().find(|f| f.is_wrong());
                let (_, told) = graded.steps.iter().find(|(step, _)| *step == finding.step).unwrap();
                // Of several findings about one step a wrong one is told, if there is any.
                let fits =
                    bad.map_or_else(|| of_step.clone().any(|f| f.verdict == *told), |b| b.verdict == *told);
                assert!(fits, "{here}: {told:?} of {:?}", of_step.collect::<Vec<_>>());
            }
            assert_eq!(graded.process, check.process.iter().map(|r| r.code).collect::<Vec<_>>(), "{here}");
            let skills: Vec<_> = evidence.skills.iter().map(|(skill, said)| (*skill, said.got)).collect();
            assert_eq!(graded.skills, skills, "{here}");
            assert!(
                skills.len() == 12 && skills.iter().any(|(_, got)| *got != Got::None),
                "{here}: {skills:?}"
            );
            assert_eq!((evidence.points, evidence.passed), (check.rubric.total, report.passed), "{here}");
            // In the table too, by the names of its head.
            let line = table::line("a", &graded, "");
            let cell = |name: &str| {
                let at = table::HEAD.split(',').position(|head| head == name).unwrap();
                line.split(',').nth(at).unwrap()
            };
            assert_eq!(cell("score"), check.rubric.total.to_string(), "{here}");
            assert_eq!(cell("first_wrong"), report.first_wrong.map_or("", Step::name), "{here}");
            assert_eq!(cell("passed"), if report.passed { "yes" } else { "no" }, "{here}");
        }
        let faults = Scenario::read(&text).unwrap().fault.len();
        let process = attempts.iter().any(|a| {
            let session = script::replay(&text, a).unwrap();
            !grade(&result::write(&session, &Default::default()).unwrap()).unwrap().process.is_empty()
        });
        assert!(process || faults == 0, "{part}: no remark on any way of working");
    }
}

#[test]
fn a_code_hands_in_the_same_as_a_file() {
    let (session, about) = attempt(2);
    let code = session.code(&about).unwrap().write();
    let from_code =
        Handed::of_code(&code, &Set::default(), |_| Some(ASSIGNMENT.into())).unwrap().grade().unwrap();
    let from_file = grade(&file(2)).unwrap();
    assert_eq!(from_code, from_file);
    let missing = Handed::of_code(&code, &Set::default(), |_| None).unwrap_err();
    assert_eq!(missing, HandinError::ScenarioMissing { digest: hex(&bench_digest(ASSIGNMENT)[..8]) });
}

#[test]
fn each_way_of_going_wrong_is_told_apart() {
    for k in [0, 2, 4, 5, 7] {
        let graded = grade(&file(k)).unwrap();
        assert_eq!(graded.doubts, [], "student {k}");
        let outcome = &graded.outcome;
        let found = (outcome.first_wrong, outcome.misreading);
        match way(k) {
            Way::Right | Way::Learns => assert!(outcome.passed),
            Way::Six => assert_eq!(found, (Some(Step::Multiplier), Some(Misreading::OtherMultiplier))),
            Way::Bumps => assert_eq!(found, (Some(Step::Count), Some(Misreading::BumpsCounted))),
            Way::Fence => assert_eq!(found, (Some(Step::Count), Some(Misreading::OneTooMany))),
            Way::Hum => {
                assert_eq!(outcome.first_wrong, Some(Step::Name));
                let left: Vec<&str> = graded.faults.iter().filter(|f| !f.cleared).map(|f| f.id).collect();
                assert_eq!(left, ["charger_near"]);
            }
        }
    }
}

#[test]
fn changes_are_found_by_the_checksum_and_forgery_by_the_replay() {
    let text = file(2);
    let value: Value = serde_json::from_str(&text).unwrap();
    let change = |path: &str, to: Value| {
        let mut changed = value.clone();
        *changed.pointer_mut(path).unwrap() = to;
        changed
    };
    // Whatever field is changed, the checksum tells.
    for (path, to) in [
        ("/about/student", json!("somebody else")),
        ("/verdict/passed", json!(true)),
        ("/samples", json!(70_000)),
        ("/answers/count", json!("12")),
        ("/about/ended_s", json!(1)),
    ] {
        let graded = grade(&change(path, to).to_string()).unwrap();
        assert!(graded.doubts.contains(&HandinError::Changed {}), "{path}: {:?}", graded.doubts);
    }
    // With the checksum made anew, the replay tells.
    let graded = grade(&seal(change("/verdict/passed", json!(true)))).unwrap();
    let differs = |field: &str, graded: &Graded| matches!(&graded.doubts[..], [HandinError::Differs { field: f, .. }] if *f == field);
    assert!(differs("passed", &graded), "{:?}", graded.doubts);
    let graded = grade(&seal(change("/seed", json!("17")))).unwrap();
    assert!(!graded.verified() || graded.own_seed == Some(false), "{graded:?}");
    assert_eq!(graded.own_seed, Some(false));
    // An answer put right afterwards is another attempt than the one that the verdict tells of.
    let log = value["log"].as_array().unwrap();
    let at = log.iter().position(|l| l["action"]["field"] == "multiplier").unwrap();
    let graded = grade(&seal(change(&format!("/log/{at}/action/text"), json!("3.77")))).unwrap();
    assert!(!graded.verified(), "{graded:?}");
    // A result of another version says so, besides what comes out otherwise.
    let mut other = change("/verdict/passed", json!(true));
    other["program"] = json!("0.0.9");
    let doubts = grade(&seal(other)).unwrap().doubts;
    assert!(
        doubts.iter().any(|d| d.to_string().contains("made by version 0.0.9")) && doubts.len() == 2,
        "{doubts:?}"
    );
    assert!(grade(&seal(change("/program", json!("0.0.9")))).unwrap().verified());
    // A friendlier scenario under the old digest.
    let easier = ASSIGNMENT.replace("severity = 0.8", "severity = 0.0");
    let graded = grade(&seal(change("/scenario", json!(easier)))).unwrap();
    assert!(graded.doubts.contains(&HandinError::OtherScenario {}), "{:?}", graded.doubts);
}

#[test]
fn damaged_truncated_foreign_and_hostile_files_are_refused_with_the_reason() {
    let text = file(0);
    for k in (0..text.len()).step_by(997) {
        let part = text.get(..k).unwrap_or("{");
        assert!(result::read(part).is_err(), "cut at {k}");
    }
    let value: Value = serde_json::from_str(&text).unwrap();
    let with = |path: &str, to: Value| {
        let mut changed = value.clone();
        *changed.pointer_mut(path).unwrap() = to;
        seal(changed)
    };
    for (text, part) in [
        (String::new(), "not a result"),
        ("\u{0}\u{1}".into(), "not a result"),
        ("[]".into(), "format"),
        (json!({"format": "something-else", "version": 1}).to_string(), "something-else"),
        (with("/version", json!(9)), "form 9"),
        (with("/version", json!(1)), "form 1"),
        (with("/seed", json!("-1")), "seed"),
        (with("/seed", json!(5)), "not a result"),
        (with("/log/0/action", json!({"do": "format_disk"})), "format_disk"),
        (with("/log/0/at", json!(-1)), "not a result"),
        ("[".repeat(100_000), "not a result"),
        ("x".repeat(result::MOST_BYTES + 1), "at most"),
    ] {
        let error = result::read(&text).unwrap_err().to_string();
        assert!(error.contains(part), "{error}, not {part}");
    }
    for (text, part) in [
        (with("/scenario", json!("id = 7")), "scenario"),
        (with("/samples", json!(u64::MAX)), "samples"),
        (with("/log/0/at", json!(u64::MAX)), "samples"),
        (with("/log/0/action", json!({"do": "stop"})), "refused"),
        (with("/log/1/at", json!(0)), "before"),
        (
            with("/scenario", json!(format!("before = [{}]\n{ASSIGNMENT}", "{ wait = 600.0 },".repeat(50)))),
            "at most 1800 s",
        ),
    ] {
        let error = grade(&text).unwrap_err().to_string();
        assert!(error.contains(part), "{error}, not {part}");
    }
}

#[test]
fn an_honest_student_with_a_long_code_is_verified_and_found_on_the_list() {
    let long = [
        "Q".repeat(100),
        "Maria del Carmen de los Angeles ".repeat(4),
        "Zoe\u{308} \u{1f9ea} ".repeat(20),
        format!("  {}", "aB-cD_".repeat(20)),
    ];
    for typed in &long {
        let (session, about) = attempt_at(ASSIGNMENT, typed, 1, Way::Right);
        assert_eq!(&about.student, typed);
        let mut set = Set::default();
        set.add("set.toml", ASSIGNMENT).unwrap();
        let file = result::read(&result::write(&session, &about).unwrap()).unwrap();
        let code = Handed::of_code(&session.code(&about).unwrap().write(), &set, |_| None).unwrap();
        for handed in [file, code] {
            let graded = handed.grade_by(&set).unwrap();
            assert!(
                graded.verified() && graded.against.is_empty(),
                "{typed}: {:?} {:?}",
                graded.doubts,
                graded.against
            );
            assert_eq!(graded.own_seed, Some(true), "{typed}");
            let mut class =
                Class { roster: roster::read(&format!("other\n\"{typed}\"\n")).unwrap(), ..Class::default() };
            class.take(Source::default(), graded);
            let lines = class.lines();
            assert_eq!((lines.len(), lines[1].chosen), (2, Some(0)), "{typed}");
        }
    }
    // Two students whose codes part only behind what counts are told when the list is read.
    let two = format!("{}1\n{}2\n", "Q".repeat(60), "Q".repeat(60));
    assert!(roster::read(&two).unwrap_err()[0].to_string().contains("line 2"), "{two}");
}

#[test]
fn a_name_is_no_formula() {
    for (text, expected) in [
        ("=HYPERLINK(\"http://x\")", "\"'=HYPERLINK(\"\"http://x\"\")\""),
        ("+1", "\"'+1\""),
        ("-2+3", "\"'-2+3\""),
        ("@SUM(A1)", "\"'@SUM(A1)\""),
        ("  =1", "\"'  =1\""),
        ("\t=1", "\"' =1\""),
        ("a\r\n=1", "\"a  =1\""),
        ("x;=cmd|' /C calc'!A0", "\"x;'=cmd|' /C calc'!A0\""),
        ("x\t=1, -2", "\"x =1,' -2\""),
        ("a,b", "\"a,b\""),
        ("Ана", "Ана"),
    ] {
        assert_eq!(table::cell(text), expected);
    }
    let mut graded = grade(&file(0)).unwrap();
    graded.about.student = "=cmd|' /C calc'!A0".into();
    let line = table::line("a.json", &graded, "");
    assert!(line.contains("\"'=cmd|' /C calc'!A0\""), "{line}");
    assert!(line.contains("2026-09-21T1"), "{line}");
}

#[test]
fn moments_are_those_of_the_calendar() {
    // From another program: date -u -d @N +%FT%TZ
    for (s, expected) in [
        (951_782_400, "2000-02-29T00:00:00Z"),
        (1_709_251_199, "2024-02-29T23:59:59Z"),
        (1_735_689_599, "2024-12-31T23:59:59Z"),
        (4_107_542_400, "2100-03-01T00:00:00Z"),
        (0, ""),
    ] {
        assert_eq!(table::moment(s), expected);
    }
}

/// The lines of a class that handed in these results, with so many benches to pass.
fn lines(results: &[Graded], benches: usize, rubric: bool) -> Vec<Line> {
    let mut class = Class { terms: Terms { benches, rubric, ..Terms::default() }, ..Class::default() };
    for graded in results {
        class.take(Source::default(), graded.clone());
    }
    class.lines()
}

fn ready(lines: &[Line]) -> usize {
    lines.iter().filter(|line| line.state == State::Ready).count()
}

#[test]
fn a_class_is_summed_up() {
    let mut results: Vec<Graded> = (0..30).map(|k| grade(&file(k)).unwrap()).collect();
    for (k, graded) in (0..30).zip(&results) {
        let right = way(k) == Way::Right;
        assert_eq!(graded.outcome.passed, right, "student {k}, {:?}: {:?}", way(k), graded.outcome);
    }
    let summary = sum_up(&results);
    assert_eq!((summary.results, summary.doubtful), (30, 0));
    let of_all = lines(&results, 1, false);
    assert_eq!((of_all.len(), ready(&of_all)), (30, 18));
    assert!(of_all.iter().all(|line| (line.state == State::Ready) == (line.passes == 1)));
    assert_eq!(
        (summary.faults[0].id, summary.faults[0].left, summary.faults[0].met),
        ("charger_near", 3, 30)
    );
    assert_eq!((summary.faults[1].left, summary.faults[1].met), (0, 30));
    let count =
        |id| summary.misreadings.iter().find(|(m, _)| *m == Misreading::name(id)).map_or(0, |(_, n)| *n);
    let of = [Misreading::OtherMultiplier, Misreading::BumpsCounted, Misreading::OneTooMany];
    assert_eq!(of.map(count), [3, 3, 3]);
    let step = |step| summary.steps.iter().find(|s| s.step == step).unwrap();
    assert_eq!((step(Step::Multiplier).judged, step(Step::Multiplier).right), (30, 27));
    let [q1, q2, q3] = minutes(&of_all).unwrap();
    assert!(q1 <= q2 && q2 <= q3 && q1 > 0.5);
    // Nobody labelled the recording or read the caution: by the rubric nobody is ready yet.
    let by_rubric = lines(&results, 1, true);
    assert!(ready(&by_rubric) == 0 && by_rubric.iter().all(|line| line.points.is_some_and(|s| s < 19)));
    let skill = |name: &str| summary.skills.iter().find(|(s, _)| *s == name).map(|(_, share)| *share);
    assert!(skill("counting").is_some_and(|s| (s - 0.8).abs() < 1e-9), "{:?}", summary.skills);
    // Two passes are asked for: nobody has them; two on the same bench are one.
    assert_eq!(ready(&lines(&results, 2, false)), 0);
    results.push(results[0].clone());
    let twice = lines(&results, 2, false);
    assert_eq!((twice.len(), ready(&twice)), (30, 0));
    assert!(twice.iter().all(|line| line.passes <= 1));
    // The same code typed differently is the same student; another's log under a new name is told.
    results[30].about.student = "group a 01".into();
    assert_eq!(lines(&results, 1, false).len(), 30);
    results[30].about.student = "Mallory".into();
    let copied = lines(&results, 1, false);
    assert_eq!(copied.iter().filter(|line| !line.copied.is_empty()).count(), 2);
    // Who types nothing is counted one by one.
    results[29].about.student = " ".into();
    results[30].about.student = String::new();
    assert_eq!(lines(&results, 1, false).len(), 31);
    assert_eq!(minutes(&lines(&[], 1, false)), None);
}

/// The browser's test of a class takes its files from here: the folder is named by DICROTIC_CLASS, one of the target
/// folder's own without it.
#[test]
fn thirty_results_are_written() {
    let folder = std::env::var_os("DICROTIC_CLASS").map_or_else(
        || std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("class-of-thirty"),
        std::path::PathBuf::from,
    );
    std::fs::create_dir_all(&folder).unwrap();
    for k in 0..30 {
        let text = file(k);
        assert!(result::read(&text).unwrap().doubts.is_empty());
        std::fs::write(folder.join(format!("{k:02}{}", result::EXTENSION)), text).unwrap();
    }
}
