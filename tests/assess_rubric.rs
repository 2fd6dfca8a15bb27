//! The rubric on the bench itself: what is asked is what is scored, and it can be reached.

use dicrotic::assess::rubric::Rubric;
use dicrotic::scenario::Scenario;
use dicrotic::session::{Action, Session, guide, readiness, script};
use serde_json::{Value, json};

const PLAIN: &str = include_str!("../scenarios/04-rest-pulse.toml");
const HUM: &str = include_str!("../scenarios/20-thick-trace-a.toml");
const WIRING: &str = include_str!("../scenarios/01-first-wiring.toml");
const TWO: &str = include_str!("../scenarios/60-two-windows.toml");
const NAMING: &str = include_str!("../scenarios/58-what-is-it.toml");

/// The worked example with its steps changed; what the last check finds.
fn with(text: &str, change: impl FnOnce(&mut Vec<Value>)) -> (bool, Rubric) {
    let scenario = Scenario::read(text).unwrap();
    let mut attempt = guide::example(&scenario).unwrap().clone();
    change(&mut attempt.steps);
    let session = script::replay(text, &attempt).unwrap();
    let check = session.check().unwrap();
    let asked: Vec<(&str, Vec<&str>)> = session.asked().into_iter().map(|r| (r.row, r.points)).collect();
    let scored: Vec<(&str, Vec<&str>)> =
        check.rubric.rows.iter().map(|r| (r.row, r.points.iter().map(|p| p.code).collect())).collect();
    assert_eq!(asked, scored);
    (check.report.passed, check.rubric.clone())
}

fn without(name: &'static str) -> impl FnOnce(&mut Vec<Value>) {
    move |steps| steps.retain(|s| s["do"] != name)
}

fn open(rubric: &Rubric) -> Vec<String> {
    readiness::missing(rubric)
}

#[test]
fn every_worked_example_taken_alone_is_ready_with_full_marks() {
    let mut wrong = Vec::new();
    let mut seen = 0;
    for file in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios")).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        let scenario = Scenario::read(&text).unwrap();
        let rubric = readiness::of_example(&scenario, &text).unwrap();
        if !(rubric.ready() && rubric.total == 20 && rubric.got == rubric.possible && rubric.scored) {
            wrong.push(format!("{}: {} of 20, {:?}", scenario.id, rubric.total, open(&rubric)));
        }
        wrong.extend(readiness::contradictions(&scenario, &text).iter().map(ToString::to_string));
        seen += 1;
    }
    assert!(seen >= 61 && wrong.is_empty(), "{seen}\n{}", wrong.join("\n"));
}

#[test]
fn what_nobody_asks_for_costs_nothing() {
    // No label, no tap on a sound bench, no uncertainty where it may be left out; twenty seconds where a brief says twenty.
    let (passed, plain) = with(PLAIN, |_| ());
    assert!(passed && plain.ready() && plain.total == 20, "{plain:?}");
    let (_, unsure) = with(PLAIN, |steps| {
        let check = steps.len() - 1;
        steps.insert(check, json!({"do": "answer", "field": "uncertainty", "text": "0.01"}));
    });
    assert!(unsure.ready() && unsure.total == 20, "an uncertainty that is only a remark: {unsure:?}");
    assert!(plain.rows.iter().any(|r| r.row == "uncertainty" && !r.applies));
}

#[test]
fn what_is_asked_for_is_wanted() {
    for (text, left_out, missing) in [(PLAIN, "agree", "safety: caution"), (HUM, "name", "faults: named")] {
        let (_, rubric) = with(text, without(left_out));
        assert!(!rubric.ready(), "{left_out}");
        assert_eq!(open(&rubric), [missing]);
    }
    let (passed, unsure) = with(TWO, |steps| steps.retain(|s| s["field"] != "uncertainty"));
    assert!(!passed && !unsure.ready() && open(&unsure) == ["uncertainty: uncertainty"], "{unsure:?}");
    let (_, slow) = with(PLAIN, |steps| steps.insert(0, json!({"do": "rate", "hz": 50})));
    assert_eq!(open(&slow), ["signal: view"]);
    let (_, far) = with(PLAIN, |steps| {
        let record = steps.iter().position(|s| s["do"] == "record").unwrap();
        steps.insert(record, json!({"do": "range", "v": 10.0}));
    });
    assert_eq!(open(&far), ["signal: size"]);
    let (_, wrong) = with(PLAIN, |steps| {
        for step in steps.iter_mut().filter(|s| s["field"] == "count") {
            step["text"] = json!("@count*2");
        }
    });
    assert!(!wrong.ready() && open(&wrong).contains(&"measurement: exact_count".into()), "{wrong:?}");
}

#[test]
fn a_caution_agreed_to_after_the_sensor_was_put_on_came_too_late() {
    let agrees = |steps: &mut Vec<Value>, k: usize| {
        steps.retain(|s| s["do"] != "agree");
        let strap = steps.iter().position(|s| s["do"] == "strap_on").expect("the sensor is put on");
        steps.insert(strap + k, json!({"do": "agree"}));
    };
    let wired = |k: Option<usize>| with(WIRING, |steps| k.into_iter().for_each(|k| agrees(steps, k)));
    assert_eq!(open(&wired(None).1), Vec::<String>::new());
    assert_eq!(open(&wired(Some(0)).1), Vec::<String>::new(), "just before it");
    let (passed, late) = wired(Some(1));
    assert!(passed && !late.ready() && open(&late) == ["safety: caution"], "{late:?}");
    // The point leads to where it was agreed to.
    let point = late.rows.iter().flat_map(|r| &r.points).find(|p| p.code == "caution").unwrap();
    assert!(point.log.is_some() && !point.got);
    // A sensor that sits on the finger from the start is taken off and put on again only later.
    let (_, sits) = with(PLAIN, |steps| {
        steps.retain(|s| s["do"] != "agree");
        let check = steps.len() - 1;
        steps.insert(check, json!({"do": "agree"}));
    });
    assert_eq!(open(&sits), Vec::<String>::new());
}

#[test]
fn points_say_what_they_rest_on() {
    let scenario = Scenario::read(HUM).unwrap();
    let session = script::replay(HUM, guide::example(&scenario).unwrap()).unwrap();
    let check = session.check().unwrap();
    let points: Vec<_> = check.rubric.rows.iter().flat_map(|r| &r.points).collect();
    for point in &points {
        if let Some(log) = point.log {
            assert!(log < session.log().len() && point.at_s.is_some(), "{point:?}");
        }
        if let Some(code) = point.evidence {
            let told = check.report.steps.iter().any(|f| f.code == code)
                || check.process.iter().any(|r| r.code == code);
            assert!(told, "{point:?}");
        }
    }
    assert!(points.iter().filter(|p| p.log.is_some()).count() >= 2);
    assert!(points.iter().filter(|p| p.evidence.is_some()).count() >= 8);
}

#[test]
fn who_is_helped_is_asked_for_less_and_is_not_ready() {
    let half = Session::new(PLAIN, 3).map(|mut s| {
        students_help(&mut s, "half");
        s
    });
    let rows: Vec<&str> =
        half.unwrap().asked().into_iter().filter(|r| !r.points.is_empty()).map(|r| r.row).collect();
    // What lies there was recorded by others: nobody puts a sensor on anybody.
    assert_eq!(rows, ["measurement"]);
    // On a bench with a fault the diagnosis is the student's.
    let mut fault = Session::new(HUM, 3).unwrap();
    students_help(&mut fault, "half");
    assert!(fault.asked().iter().any(|r| r.row == "faults" && !r.points.is_empty()));
    assert!(fault.is_at_work(dicrotic::scenario::fault::named("charger_near").unwrap()));
    assert!(fault.recordings().is_empty());
    // Who only watches is not scored.
    let mut shown = Session::worked(PLAIN).unwrap().unwrap();
    while shown.worked_next().is_some() {}
    let rubric = &shown.check().unwrap().rubric;
    assert!(!rubric.scored && !rubric.ready() && rubric.rows.iter().all(|r| !r.applies), "{rubric:?}");
}

fn students_help(session: &mut Session, mode: &str) {
    let action = dicrotic::session::Action::from_value(json!({"do": "help", "mode": mode})).unwrap();
    session.act(&action).unwrap();
}

#[test]
fn naming_is_scored_by_naming_and_testing() {
    let (passed, good) = with(NAMING, |_| ());
    assert!(passed && good.ready() && good.total == 20);
    let (_, hasty) = with(NAMING, |steps| {
        steps.retain(|s| !matches!(s["do"].as_str(), Some("ask_finger" | "press_finger" | "look")));
    });
    assert!(!hasty.ready() || hasty.total < 20, "{hasty:?}");
    assert!(open(&hasty).contains(&"faults: tested".into()), "{hasty:?}");
}

/// Points are for what was done and found: who only checks a bench that is to be named gets none for faults.
#[test]
fn nothing_done_is_nothing_earned() {
    let text = include_str!("../scenarios/58-what-is-it.toml");
    for looks in [false, true] {
        let mut session = Session::new(text, 201).unwrap();
        session.run_long(6000);
        if looks {
            session.act(&Action::from_value(json!({"do": "look", "at": "sensor"})).unwrap()).unwrap();
            session.run_long(3000);
        }
        for _ in 0..2 {
            session.act(&Action::from_value(json!({"do": "check"})).unwrap()).unwrap();
        }
        let rubric = session.check().unwrap().rubric.clone();
        let faults = rubric.rows.iter().find(|r| r.row == "faults").unwrap();
        let got: Vec<&str> = faults.points.iter().filter(|p| p.got).map(|p| p.code).collect();
        assert_eq!(got, if looks { vec!["one_change"] } else { vec![] }, "{rubric:?}");
    }
}
