//! What an attempt says of each skill, and the records that are kept of it. What a row of them says: `assess_learner.rs`.

use dicrotic::assess::hint::{RUNGS, Rung, next};
use dicrotic::assess::skill::{self, Aid, Attempted, Got, Mended};

use dicrotic::assess::verdict::{Finding, Report, Step, Verdict};
use serde_json::json;

#[test]
fn what_cannot_be_read_is_left_out() {
    let kept = json!({"seed": "1", "passed": true, "at_ms": 5.0});
    let history = json!([7, {"seed": 1}, {"seed": "1", "passed": true}, kept]);
    assert_eq!(skill::read(&history.to_string()).unwrap().len(), 1);
    assert!(skill::read("{").is_err());
    assert!(skill::read("{}").is_err());
}

fn finding(step: Step, verdict: Verdict, code: &'static str) -> Finding {
    Finding { step, verdict, code, args: json!({}) }
}

fn all_right() -> Report {
    use Step::*;
    let right = |(step, code)| finding(step, Verdict::Right, code);
    let steps = [
        (Trace, "trace_good"),
        (Window, "window_good"),
        (Count, "count_right"),
        (Seconds, "seconds_right"),
        (Multiplier, "multiplier_right"),
        (Rate, "rate_right"),
        (Uncertainty, "uncertainty_right"),
    ];
    Report::of(steps.map(right).to_vec(), None)
}

fn said(a: &Attempted, skill: &str) -> (Got, Option<&'static str>) {
    let found = skill::evidence(a).into_iter().find(|(name, _)| *name == skill).unwrap().1;
    (found.got, found.code)
}

#[test]
fn evidence_rests_on_codes() {
    let last = all_right();
    let faults = [Mended { skill: "hum", gone: true, named: Some(true) }];
    let good = Attempted {
        aid: Aid::Alone,
        wrong: &[],
        last: &last,
        faults: &faults,
        recorded: true,
        apart: false,
        ranged: true,
        readable: Some(true),
    };
    for (skill, expected) in [
        ("counting", (Got::Pass, Some("count_right"))),
        ("window", (Got::Pass, Some("window_good"))),
        ("range", (Got::Pass, Some("trace_good"))),
        ("hum", (Got::Pass, Some("mended"))),
        ("time_base", (Got::Pass, Some("view"))),
        ("uncertainty", (Got::Pass, Some("uncertainty_right"))),
        ("wiring", (Got::None, None)),
        ("motion", (Got::None, None)),
    ] {
        assert_eq!(said(&good, skill), expected, "{skill}");
    }
    // Put right at the second try is still wanting at the first.
    let wrong = [(Step::Count, "count_double"), (Step::Trace, "trace_small")];
    let second = Attempted { wrong: &wrong, ..good.clone() };
    assert_eq!(said(&second, "counting"), (Got::Fail, Some("count_double")));
    assert_eq!(said(&second, "range"), (Got::Fail, Some("trace_small")));
    let left = [Mended { skill: "hum", gone: false, named: Some(true) }];
    assert_eq!(said(&Attempted { faults: &left, ..good.clone() }, "hum").0, Got::Fail);
    let unnamed = [Mended { skill: "hum", gone: true, named: Some(false) }];
    assert_eq!(said(&Attempted { faults: &unnamed, ..good.clone() }, "hum").0, Got::Fail);
    assert_eq!(said(&Attempted { apart: true, ..good.clone() }, "wiring").0, Got::Pass);
    // The bench did the set-up: that says nothing of the student's.
    let half = Attempted { aid: Aid::Half, apart: true, ..good.clone() };
    assert_eq!(said(&half, "wiring").0, Got::None);
    assert_eq!(said(&half, "counting").0, Got::Pass);
    assert!(skill::evidence(&Attempted { aid: Aid::Shown, ..good }).iter().all(|(_, s)| s.got == Got::None));
}

#[test]
fn every_step_is_judged_once_and_what_was_told_is_told() {
    let last = all_right();
    let wrong =
        [(Step::Count, "count_double"), (Step::Count, "count_other"), (Step::Seconds, "seconds_wrong")];
    let attempted = Attempted {
        aid: Aid::Alone,
        wrong: &wrong,
        last: &last,
        faults: &[],
        recorded: true,
        apart: false,
        ranged: true,
        readable: None,
    };
    let found = skill::judged(&attempted, &[Step::Uncertainty], Some(Step::Count));
    let told: Vec<_> =
        found.iter().map(|j| (j.skill.as_str(), j.code.as_str(), j.right, j.told, j.misread)).collect();
    assert_eq!(
        told,
        [
            ("range", "trace_good", true, false, false),
            ("recording", "long", true, false, false),
            ("window", "window_good", true, false, false),
            ("counting", "count_double", false, false, true),
            ("counting", "count_right", true, true, false),
            ("arithmetic", "seconds_wrong", false, false, false),
            ("arithmetic", "seconds_right", true, true, false),
            ("arithmetic", "multiplier_right", true, false, false),
            ("arithmetic", "rate_right", true, false, false),
            ("uncertainty", "uncertainty_right", true, true, false),
        ]
    );
    let half = skill::judged(&Attempted { aid: Aid::Half, ..attempted.clone() }, &[], None);
    assert!(half.iter().all(|j| j.skill != "range" && j.skill != "recording"), "{half:?}");
    assert!(skill::judged(&Attempted { aid: Aid::Shown, ..attempted }, &[], None).is_empty());
}

#[test]
fn the_ladder_goes_up_one_rung_at_a_time_and_ends_before_the_answer() {
    let mut last = None;
    let mut climbed = Vec::new();
    while let Some(rung) = next(last, false) {
        climbed.push(rung);
        last = Some(rung);
    }
    assert_eq!(climbed, RUNGS[..4]);
    assert_eq!(next(Some(Rung::Worked), true), Some(Rung::Answer));
    assert_eq!(next(Some(Rung::Answer), true), None);
}
