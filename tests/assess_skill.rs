//! The skill map: mastery, fading help, retests.

use dicrotic::assess::hint::{RUNGS, Rung, next};
use dicrotic::assess::skill::{self, Aid, Attempted, Got, Map, Mended, State};

use dicrotic::assess::verdict::{Finding, Report, Step, Verdict};
use serde_json::{Value, json};

const DAY_MS: f64 = 86_400_000.0;

/// A record of one skill.
fn record(at_days: f64, seed: u32, got: &str) -> Value {
    json!({
        "v": 1, "scenario": "rest-pulse", "seed": seed.to_string(), "mode": "alone", "passed": got == "pass",
        "at_ms": at_days * DAY_MS, "skills": {"counting": {"got": got, "code": "count_right"}},
        "rubric": {"total": 17, "ready": got == "pass"},
    })
}

fn map(history: &[Value], now_days: f64) -> Map {
    skill::map(&skill::read(&Value::from(history).to_string()).unwrap(), now_days * DAY_MS)
}

#[test]
fn a_skill_is_mastered_with_two_passes_in_a_row_on_different_seeds() {
    let state = |history: &[Value]| map(history, 1.0).skills["counting"].state;
    let (pass, fail) = ("pass", "fail");
    assert_eq!(state(&[]), State::New);
    assert_eq!(state(&[record(0.1, 1, fail)]), State::Practising);
    assert_eq!(state(&[record(0.1, 1, pass)]), State::Once);
    assert_eq!(state(&[record(0.1, 1, pass), record(0.2, 2, pass)]), State::Ready);
    assert_eq!(state(&[record(0.1, 1, pass), record(0.2, 1, pass)]), State::Once, "the same seed again");
    assert_eq!(state(&[record(0.1, 1, pass), record(0.2, 2, fail), record(0.3, 3, pass)]), State::Once);
    assert_eq!(state(&[record(0.1, 1, pass), record(0.2, 2, pass), record(0.3, 3, fail)]), State::Practising);
    // In whatever order they were kept.
    assert_eq!(state(&[record(0.3, 3, fail), record(0.1, 1, pass), record(0.2, 2, pass)]), State::Practising);
    // What says nothing of the skill changes nothing.
    assert_eq!(state(&[record(0.1, 1, pass), record(0.2, 2, "none"), record(0.3, 3, pass)]), State::Ready);
}

#[test]
fn a_retest_is_proposed_after_three_to_seven_days() {
    let history = [record(0.0, 1, "pass"), record(1.0, 2, "pass")];
    let standing = |now| map(&history, now).skills["counting"].clone();
    assert_eq!(standing(3.9).state, State::Ready);
    assert_eq!(standing(4.0).state, State::Due);
    assert_eq!(standing(20.0).state, State::Due);
    assert_eq!(standing(2.0).retest_from_ms, Some(4.0 * DAY_MS));
    assert_eq!(standing(2.0).retest_to_ms, Some(8.0 * DAY_MS));
    let again = [&history[..], &[record(5.0, 3, "pass")]].concat();
    assert_eq!(map(&again, 6.0).skills["counting"].state, State::Ready);
    assert_eq!(map(&again[..1], 6.0).skills["counting"].retest_from_ms, None);
}

#[test]
fn help_fades_with_success_and_comes_back_after_two_failures() {
    let mut history = Vec::new();
    let mut helps = Vec::new();
    for (k, got) in
        ["pass", "pass", "fail", "pass", "fail", "fail", "fail", "fail", "pass"].iter().enumerate()
    {
        history.push(record(k as f64, k as u32, got));
        helps.push(map(&history, 100.0).skills["counting"].help);
        assert_eq!(map(&history, 100.0).help, *helps.last().unwrap(), "whole attempts fade by the same rule");
    }
    use Aid::{Alone, Half, Shown};
    assert_eq!(map(&[], 0.0).help, Shown);
    assert_eq!(helps, [Half, Alone, Alone, Alone, Alone, Half, Half, Shown, Half]);
}

#[test]
fn a_shown_example_is_no_pass_but_cables_on() {
    let mut shown = record(0.0, 1, "pass");
    shown["mode"] = json!("shown");
    let found = map(&[shown], 1.0);
    assert_eq!(found.skills["counting"].state, State::New);
    assert_eq!((found.skills["counting"].help, found.help), (Aid::Half, Aid::Half));
}

#[test]
fn readiness_is_the_rubric_twice_on_different_seeds() {
    let ready = |history: &[Value]| map(history, 9.0).readiness;
    assert!(!ready(&[record(0.0, 1, "pass")]).ready);
    assert!(!ready(&[record(0.0, 1, "pass"), record(1.0, 1, "pass")]).ready);
    let twice = ready(&[record(0.0, 1, "pass"), record(1.0, 2, "fail"), record(2.0, 3, "pass")]);
    assert!(twice.ready && twice.times == 2 && twice.need == 2);
}

#[test]
fn what_cannot_be_read_is_left_out() {
    let history = json!([7, {"seed": 1}, {"seed": "1", "passed": true}, record(0.0, 1, "pass")]);
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
