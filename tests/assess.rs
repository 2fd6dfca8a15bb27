//! Parsing, counting in a window, and the verdict on each step.

use dicrotic::assess::Criteria;
use dicrotic::assess::parse::{Problem, number};
use dicrotic::assess::trace::Trace;
use dicrotic::assess::verdict::{Reference, Report, Step, Typed, Verdict, judge};
use dicrotic::assess::window::{Peak, allowed, interval_rate};
use dicrotic::measure::movement::{Kind, Movement};

#[test]
fn numbers_are_read_as_people_type_them() {
    for (text, value) in [
        ("72.5", 72.5),
        ("72,5", 72.5),
        (" 72 ", 72.0),
        ("72 bpm", 72.0),
        ("72 beats/min", 72.0),
        ("15s", 15.0),
        ("60/15", 4.0),
        ("60 : 14,8", 60.0 / 14.8),
        ("\u{00d7}4", 4.0),
        ("x 6", 6.0),
        (".5", 0.5),
        ("0", 0.0),
    ] {
        assert_eq!(number(text), Ok(value), "{text}");
    }
    for (text, problem) in [
        ("", Problem::Empty),
        ("   ", Problem::Empty),
        ("abc", Problem::NotANumber),
        ("s", Problem::NotANumber),
        ("1.234,5", Problem::TwoSigns),
        ("1..2", Problem::TwoSigns),
        ("-3", Problem::Negative),
        ("\u{2212}3", Problem::Negative),
        ("60/0", Problem::DividedByZero),
        ("nan", Problem::NotANumber),
        ("inf", Problem::NotANumber),
        ("1e5", Problem::NotANumber),
        (",", Problem::NotANumber),
        ("60/", Problem::Empty),
    ] {
        let found = number(text);
        // An empty half of a quotient is no number either way.
        assert!(found == Err(problem) || (text == "60/" && found.is_err()), "{text}: {found:?}");
    }
    assert_eq!(number(&"9".repeat(50)), Err(Problem::TooLong));
}

fn steady(interval: f64, n: usize) -> Vec<Peak> {
    (0..n).map(|k| Peak { at_s: 0.5 + interval * k as f64, sure: true }).collect()
}

#[test]
fn a_beat_on_a_cursor_may_be_counted_or_left() {
    let peaks = steady(1.0, 30);
    // Clear of all beats.
    let clear = allowed(&peaks, 0.1, 10.1, 0.06, 0.0);
    assert_eq!((clear.exact, clear.least, clear.most), (10, 10, 10));
    // 59 ms inside: a matter of taste; 61 ms: not.
    let near = allowed(&peaks, 0.5 - 0.059, 10.1, 0.06, 0.0);
    assert_eq!((near.exact, near.least, near.most), (10, 9, 10));
    let inside = allowed(&peaks, 0.5 - 0.061, 10.1, 0.06, 0.0);
    assert_eq!((inside.exact, inside.least, inside.most), (10, 10, 10));
    let outside = allowed(&peaks, 0.5 + 0.059, 10.1, 0.06, 0.0);
    assert_eq!((outside.exact, outside.least, outside.most), (9, 9, 10));
    // A filter that shows peaks 80 ms late.
    let late = allowed(&peaks, 0.55, 10.1, 0.06, 0.08);
    assert_eq!((late.exact, late.least, late.most), (10, 9, 10));
}

#[test]
fn a_beat_that_may_not_be_seen_may_be_left_out() {
    let mut peaks = steady(1.0, 30);
    peaks[4].sure = false;
    let found = allowed(&peaks, 0.1, 10.1, 0.06, 0.0);
    assert_eq!((found.exact, found.least, found.most), (9, 9, 10));
}

#[test]
fn the_interval_rate_is_sixty_over_the_mean_interval() {
    assert!((interval_rate(&steady(0.8, 50), 0.0, 30.0).unwrap() - 75.0).abs() < 1e-9);
    assert_eq!(interval_rate(&steady(0.8, 50), 0.0, 1.0), None);
}

fn check(window: Option<(f64, f64)>, count: &str, seconds: &str, multiplier: &str, rate: &str) -> Report {
    let peaks = steady(0.8, 40);
    let typed = Typed {
        count: number(count).ok(),
        seconds: number(seconds).ok(),
        multiplier: number(multiplier).ok(),
        rate: number(rate).ok(),
    };
    let moved = |kind| Some(Movement { height: 0.6, from_s: 3.0, to_s: 4.0, kind });
    let good = Trace {
        hum_ratio: 0.02,
        clip_share: 0.0,
        fill: 0.5,
        pulse_v: 0.04,
        quality: 0.9,
        smaller_range_fits: false,
        movement: None,
    };
    let reference = Reference { peaks: &peaks, delay_s: 0.0, duration_s: 32.0 };
    judge(&Criteria::default(), Some(&good), window, &typed, &reference)
}

fn code(report: &Report, step: Step) -> &'static str {
    report.steps.iter().find(|f| f.step == step).map_or("", |f| f.code)
}

/// 0.1 to 15.1 s: 19 beats of .8 s from .5 s on, none near a cursor.
const WINDOW: Option<(f64, f64)> = Some((0.1, 15.1));

#[test]
fn eleven_beats_in_ten_seconds_are_66_a_minute() {
    // Common practice.
    let peaks = steady(60.0 / 66.0, 40);
    let typed = Typed { count: Some(11.0), seconds: Some(10.0), multiplier: Some(6.0), rate: Some(66.0) };
    let reference = Reference { peaks: &peaks, delay_s: 0.0, duration_s: 30.0 };
    let criteria = Criteria { window_s: 10.0, ..Criteria::default() };
    let report = judge(&criteria, None, Some((0.1, 10.1)), &typed, &reference);
    assert!(report.passed, "{report:?}");
}

#[test]
fn a_right_measurement_passes_every_step() {
    let report = check(WINDOW, "19", "15", "4", "76");
    assert!(report.passed, "{report:?}");
    assert_eq!(report.first_wrong, None);
    // The multiplier as a quotient, a comma, and rounding to whole beats.
    assert!(check(WINDOW, "19", "15,0", "60/15", "76").passed);
}

#[test]
fn each_wrong_step_is_named_and_the_others_are_not_blamed() {
    for (report, step, expected) in [
        (check(WINDOW, "20", "15", "4", "80"), Step::Count, "count_off_by"),
        (check(WINDOW, "18", "15", "4", "72"), Step::Count, "count_off_by"),
        (check(WINDOW, "38", "15", "4", "152"), Step::Count, "count_double"),
        (check(WINDOW, "10", "15", "4", "40"), Step::Count, "count_half"),
        (check(WINDOW, "25", "15", "4", "100"), Step::Count, "count_other"),
        (check(WINDOW, "19", "10", "6", "114"), Step::Seconds, "seconds_wrong"),
        (check(WINDOW, "19", "15", "6", "114"), Step::Multiplier, "multiplier_wrong"),
        (check(WINDOW, "19", "15", "4", "19"), Step::Rate, "rate_raw_count"),
        (check(WINDOW, "19", "15", "4", "90"), Step::Rate, "rate_arithmetic"),
        (check(Some((0.1, 8.1)), "10", "8", "7.5", "75"), Step::Window, "window_short"),
        (check(None, "19", "15", "4", "76"), Step::Window, "window_missing"),
        (check(WINDOW, "abc", "15", "4", "76"), Step::Count, "count_missing"),
    ] {
        assert_eq!(code(&report, step), expected, "{report:?}");
        assert_eq!(report.first_wrong, Some(step), "{report:?}");
        assert!(!report.passed);
    }
}

#[test]
fn what_is_typed_is_never_called_blank() {
    let nowhere = check(None, "19", "15", "4", "76");
    assert_eq!(code(&nowhere, Step::Count), "count_unplaced");
    assert_eq!(code(&nowhere, Step::Seconds), "seconds_unplaced");
    assert_eq!(code(&check(WINDOW, "19", "", "4", "76"), Step::Multiplier), "multiplier_unplaced");
    assert_eq!(code(&check(WINDOW, "", "15", "4", "76"), Step::Rate), "rate_unplaced");
    let empty = check(None, "", "", "", "");
    for (step, expected) in [
        (Step::Count, "count_missing"),
        (Step::Seconds, "seconds_missing"),
        (Step::Multiplier, "multiplier_missing"),
        (Step::Rate, "rate_missing"),
    ] {
        assert_eq!(code(&empty, step), expected);
    }
}

#[test]
fn arithmetic_is_judged_on_the_students_own_numbers() {
    // One beat too many, but worked out right from it.
    let report = check(WINDOW, "20", "15", "4", "80");
    assert_eq!(code(&report, Step::Rate), "rate_right");
    // A wrong multiplier, used rightly.
    assert_eq!(code(&check(WINDOW, "19", "15", "6", "114"), Step::Rate), "rate_right");
}

#[test]
fn just_inside_and_just_outside_the_tolerances() {
    assert_eq!(code(&check(WINDOW, "19", "15.07", "4", "76"), Step::Seconds), "seconds_right");
    assert_eq!(code(&check(WINDOW, "19", "15.08", "4", "76"), Step::Seconds), "seconds_wrong");
    assert_eq!(code(&check(WINDOW, "19", "15", "4.05", "76"), Step::Multiplier), "multiplier_right");
    assert_eq!(code(&check(WINDOW, "19", "15", "4.07", "76"), Step::Multiplier), "multiplier_wrong");
    assert_eq!(code(&check(WINDOW, "19", "15", "4", "76.6"), Step::Rate), "rate_right");
    assert_eq!(code(&check(WINDOW, "19", "15", "4", "76.7"), Step::Rate), "rate_arithmetic");
}

#[test]
fn one_count_in_fifteen_seconds_is_four_a_minute() {
    // +-1 beat in T is +-60/T: 15 s 4 bpm (arithmetic). The result one count off stays plausible, twice the rate not.
    assert_eq!(code(&check(WINDOW, "20", "15", "4", "80"), Step::Plausible), "plausible_yes");
    assert_eq!(code(&check(WINDOW, "38", "15", "4", "152"), Step::Plausible), "plausible_no");
}

#[test]
fn findings_never_tell_the_true_count_or_rate() {
    let report = check(WINDOW, "25", "15", "4", "100");
    for finding in &report.steps {
        let told = finding.args.to_string();
        assert!(!told.contains("19") && !told.contains("75") && !told.contains("76"), "{told}");
    }
}

#[test]
fn the_trace_is_judged_too() {
    let peaks = steady(0.8, 40);
    let typed = Typed { count: Some(19.0), seconds: Some(15.0), multiplier: Some(4.0), rate: Some(76.0) };
    let with = |trace: Trace, duration_s| {
        let reference = Reference { peaks: &peaks, delay_s: 0.0, duration_s };
        judge(&Criteria::default(), Some(&trace), WINDOW, &typed, &reference)
    };
    let good = Trace {
        hum_ratio: 0.02,
        clip_share: 0.0,
        fill: 0.5,
        pulse_v: 0.04,
        quality: 0.9,
        smaller_range_fits: false,
    };
    for (trace, duration_s, expected) in [
        (Trace { hum_ratio: 0.11, ..good }, 32.0, "trace_hum"),
        (Trace { clip_share: 0.001, ..good }, 32.0, "trace_clipped"),
        (Trace { fill: 0.29, smaller_range_fits: true, ..good }, 32.0, "trace_small"),
        (Trace { fill: 0.81, ..good }, 32.0, "trace_tall"),
        (Trace { quality: 0.2, ..good }, 32.0, "trace_unlike"),
        (Trace { movement: moved(Kind::Unrest), ..good }, 32.0, "trace_restless"),
        (Trace { movement: moved(Kind::Spike), ..good }, 32.0, "trace_spike"),
        (Trace { movement: moved(Kind::Step), ..good }, 32.0, "trace_step"),
        (good, 14.0, "trace_short"),
    ] {
        let report = with(trace, duration_s);
        assert_eq!(code(&report, Step::Trace), expected);
        assert_eq!(report.steps[0].verdict, Verdict::Wrong);
    }
    assert!(with(good, 32.0).passed);
    assert!(with(Trace { fill: 0.2, ..good }, 32.0).passed, "no smaller range would have held it");
}

#[test]
fn naming_tells_how_many_are_right_and_not_which() {
    use dicrotic::assess::verdict::names;
    let named = |list: &[&str]| {
        names(&["strap_loose", "moving"], &list.iter().map(|s| s.to_string()).collect::<Vec<_>>())
    };
    assert_eq!(named(&[]).code, "name_missing");
    assert_eq!(named(&["strap_loose"]).code, "name_partly");
    assert_eq!(named(&["strap_loose", "moving"]).code, "name_right");
    assert_eq!(named(&["strap_loose", "moving", "tapping"]).code, "name_partly");
    assert_eq!(named(&["tapping"]).code, "name_wrong");
    assert!(!named(&["strap_loose", "tapping"]).args.to_string().contains("strap"));
}
