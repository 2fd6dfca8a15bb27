//! Help by doing: worked examples, half-finished ones, hints, and what a debrief tells and keeps back.

mod shipped;

use dicrotic::scenario::Scenario;
use dicrotic::session::action::Refusal;
use dicrotic::session::{Action, Session, guide};
use serde_json::{Value, json};
use shipped::scenarios;

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

#[test]
fn every_scenario_with_a_passing_attempt_plays_itself_to_a_pass() {
    let mut played = 0;
    for (name, text) in scenarios() {
        let read = Scenario::read(&text).unwrap();
        let Some(mut lab) = Session::worked(&text).unwrap() else {
            assert!(guide::example(&read).is_none(), "{name}");
            continue;
        };
        let mut stages = Vec::new();
        let mut last = f64::INFINITY;
        while let Some(step) = lab.worked_next() {
            let remaining = step["remaining"].as_f64().unwrap();
            assert!(remaining < last, "{name}: {step}");
            last = remaining;
            stages.push(step["code"].as_str().unwrap().to_string());
            // The page lets time pass at a pace of its own; half of the wait, or twice, comes to the same.
            if let Some(wait) = step["wait_s"].as_f64() {
                let pace = if played % 2 == 0 { 0.5 } else { 2.0 };
                for _ in 0..(wait * pace / 0.2) as usize {
                    lab.advance(0.2);
                }
            } else if remaining > 0.0 {
                assert_eq!(
                    act(&mut lab, json!({"do": "tap_sensor"})),
                    Err(Refusal::WorkedExample {}),
                    "{name}"
                );
            }
        }
        assert_eq!(last, 0.0, "{name}: stopped after {stages:?}");
        assert!(lab.check().is_some_and(|c| c.report.passed), "{name}: {stages:?}");
        assert_eq!(lab.view()["help"], "shown");
        let again = Session::restore(&lab.save().unwrap()).unwrap();
        assert_eq!(again.debrief_hash(), lab.debrief_hash(), "{name}");
        played += 1;
    }
    assert!(played >= 60, "{played}");
}

#[test]
fn a_half_finished_bench_leaves_a_take_that_can_be_measured() {
    let (mut tried, mut good, mut poor) = (0, 0, Vec::new());
    for (name, text) in scenarios() {
        let read = Scenario::read(&text).unwrap();
        let records = guide::example(&read).is_some_and(|a| {
            a.steps.iter().any(|s| s["do"] == "stop") && a.steps.iter().any(|s| s["do"] == "cursor")
        });
        if !records {
            continue;
        }
        for seed in [3, 77] {
            let mut lab = Session::new(&text, seed).unwrap();
            let before = lab.recordings().len();
            act(&mut lab, json!({"do": "help", "mode": "half"})).unwrap();
            assert_eq!(lab.log().len(), 1, "{name}: only the wish for help is logged");
            if read.experiment.is_some() {
                // What one expects is said first, and by nobody else.
                assert_eq!(lab.recordings().len(), before, "{name} {seed}");
                continue;
            }
            if read.pool.is_some() {
                // Nor does it tell by how far it goes whether anything is wrong.
                assert_eq!(lab.recordings().len(), before, "{name} {seed}");
                continue;
            }
            if !read.fault.is_empty() {
                // Finding and mending is the student's: the fault is still there, and nothing was recorded over it.
                let there = |f: &dicrotic::scenario::schema::FaultSpec| {
                    lab.is_at_work(dicrotic::scenario::fault::named(&f.name).unwrap())
                };
                assert!(read.fault.iter().any(there), "{name} {seed}");
                assert_eq!(lab.recordings().len(), before, "{name} {seed}");
                continue;
            }
            tried += 1;
            let report = lab.preview();
            let codes: Vec<&str> = report.iter().flat_map(|(r, _)| &r.steps).map(|f| f.code).collect();
            if codes.contains(&"trace_good") {
                good += 1
            } else {
                poor.push(format!("{name} {seed}: {codes:?}"))
            }
            let again = Session::restore(&lab.save().unwrap()).unwrap();
            assert_eq!(again.samples(), lab.samples(), "{name}");
            assert!(
                again.recordings().last().map(|t| &t.recording)
                    == lab.recordings().last().map(|t| &t.recording),
                "{name}"
            );
        }
    }
    println!("{good} of {tried} half-finished benches have a good trace as a whole\n{}", poor.join("\n"));
    // The whole recording is looked at here; the student has still to choose a stretch of it.
    assert!(tried >= 10 && good * 10 >= tried * 8, "{good} of {tried}:\n{}", poor.join("\n"));
}

/// The student is not to be asked about a trace that the bench has set.
#[test]
fn a_half_finished_bench_cuts_nothing_off_whatever_the_heart() {
    let (_, text) = scenarios().into_iter().find(|(name, _)| name.contains("first-wiring")).unwrap();
    for seed in 1..=40 {
        let mut lab = Session::new(&text, seed).unwrap();
        act(&mut lab, json!({"do": "help", "mode": "half"})).unwrap();
        let report = lab.preview().unwrap().0;
        let codes: Vec<&str> = report.steps.iter().map(|f| f.code).collect();
        // A movement somewhere in the recording is for the student to keep out of the window.
        let set = ["trace_clipped", "trace_small", "trace_tall", "trace_hum", "trace_short"];
        assert!(!codes.iter().any(|c| set.contains(c)), "seed {seed}: {codes:?}");
    }
}
