//! Parsing, counting in a window, and the verdict on each step.

use dicrotic::assess::Criteria;
use dicrotic::assess::asked;
use dicrotic::assess::parse::{Problem, number};
use dicrotic::assess::sheet::{Sheet, Written};
use dicrotic::assess::task::Task;
use dicrotic::assess::trace::Trace;
use dicrotic::assess::verdict::{Reference, Report, Step, Typed, Verdict};
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

/// A count in a window of one's own, judged as a check judges it.
fn judge(
    criteria: &Criteria,
    trace: Option<&Trace>,
    cursors: Option<(f64, f64)>,
    typed: &Typed,
    reference: &Reference,
) -> Report {
    asked::judge(&Sheet {
        task: Task::default(),
        criteria,
        trace,
        cursors,
        first: None,
        typed: *typed,
        typed_first: Typed::default(),
        written: Written::default(),
        reference: reference.clone(),
        landmarks: &[],
        values: None,
        range_v: 0.1,
        exercise_ended_s: None,
    })
}

fn check(window: Option<(f64, f64)>, count: &str, seconds: &str, multiplier: &str, rate: &str) -> Report {
    let peaks = steady(0.8, 40);
    let typed = Typed {
        count: number(count).ok(),
        seconds: number(seconds).ok(),
        multiplier: number(multiplier).ok(),
        rate: number(rate).ok(),
    };
    let good = Trace {
        hum_ratio: 0.02,
        clip_share: 0.0,
        fill: 0.5,
        pulse_v: 0.04,
        quality: 0.9,
        smaller_range_fits: false,
        fitting_v: None,
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
        (check(WINDOW, "19", "0.25", "4", "76"), Step::Seconds, "seconds_unit"),
        (check(WINDOW, "19", "15000", "4", "76"), Step::Seconds, "seconds_unit"),
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
    assert_eq!(code(&check(WINDOW, "19", "", "", "76"), Step::Rate), "rate_unplaced");
    // Nobody is asked what N and T give where there is no T; a multiplier of one's own may do without it.
    assert_eq!(code(&check(WINDOW, "19", "about 15", "4", "90"), Step::Rate), "rate_unplaced");
    assert_eq!(code(&check(WINDOW, "19", "about 15", "4", "76"), Step::Rate), "rate_follows");
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
    assert_eq!(code(&report, Step::Rate), "rate_follows");
    // A wrong multiplier, used rightly.
    assert_eq!(code(&check(WINDOW, "19", "15", "6", "114"), Step::Rate), "rate_follows");
}

/// One beat in 15 s is 4 beats/min: what changes the rate by a quarter of that, 1 beat/min, is let pass. With 19 beats that is .2 s in T
/// (60 x 19/15.197 = 75.01), 1.3 % in the multiplier and 1 in the rate (arithmetic).
#[test]
fn just_inside_and_just_outside_the_tolerances() {
    for (seconds, expected) in [
        ("15.05", "seconds_right"),
        ("15.19", "seconds_right"),
        ("15.21", "seconds_wrong"),
        ("14.81", "seconds_right"),
        ("14.79", "seconds_wrong"),
    ] {
        assert_eq!(code(&check(WINDOW, "19", seconds, "4", "76"), Step::Seconds), expected, "{seconds}");
    }
    for (multiplier, expected) in [
        ("4.05", "multiplier_right"),
        ("4.07", "multiplier_wrong"),
        ("3.95", "multiplier_right"),
        ("3.94", "multiplier_wrong"),
    ] {
        assert_eq!(
            code(&check(WINDOW, "19", "15", multiplier, "76"), Step::Multiplier),
            expected,
            "{multiplier}"
        );
    }
    for (rate, expected) in
        [("76", "rate_right"), ("77", "rate_right"), ("77.1", "rate_arithmetic"), ("74.9", "rate_arithmetic")]
    {
        assert_eq!(code(&check(WINDOW, "19", "15", "4", rate), Step::Rate), expected, "{rate}");
    }
}

/// The usual roundings are right whatever they do: whole seconds, two significant figures, whole beats a minute.
#[test]
fn the_usual_roundings_are_right_and_whole_seconds_are_told_what_they_cost() {
    // 38 beats of .8 s in 30.4 s; T written as 30 changes the rate by 60 x 38 x (1/30 - 1/30.4) = 1.0, half of one beat's 2.
    let window = Some((0.1, 30.5));
    let report = check(window, "38", "30", "2", "76");
    assert!(report.passed, "{report:?}");
    let told = report.steps.iter().find(|f| f.step == Step::Seconds).unwrap();
    assert_eq!((told.verdict, told.code), (Verdict::Right, "seconds_rounded"));
    assert_eq!(told.args, serde_json::json!({"typed": 30.0, "window": 30.4, "costs": 1.0, "beat": 2.0}));
    // Not a whole number, and as far off: not a rounding.
    assert_eq!(code(&check(window, "38", "30.05", "2", "76"), Step::Seconds), "seconds_wrong");
    // From the written T or from the interval as it reads, 60/30.4 = 1.97; and 75 as well as 76.
    for (multiplier, rate) in [("2", "76"), ("1.97", "75"), ("1.974", "75"), ("2.0", "75")] {
        let report = check(window, "38", "30", multiplier, rate);
        assert!(report.passed, "{multiplier} {rate}: {report:?}");
    }
    // 60/14.3 = 4.196, with two figures 4.2; 4 has one.
    let window = Some((0.1, 14.4));
    let typed = |multiplier: &str| code(&check(window, "18", "14.3", multiplier, "75.6"), Step::Multiplier);
    assert_eq!((typed("4.2"), typed("4")), ("multiplier_right", "multiplier_wrong"));
}

#[test]
fn what_follows_from_a_wrong_time_is_not_wrong_as_well() {
    // From the student's own T.
    let own = check(WINDOW, "19", "10", "6", "114");
    assert_eq!(code(&own, Step::Multiplier), "multiplier_right");
    assert_eq!(code(&own, Step::Rate), "rate_follows");
    // From the window's, while T has the wrong unit: it waits until T holds.
    let unit = check(WINDOW, "19", "15000", "4", "76");
    assert_eq!(code(&unit, Step::Multiplier), "multiplier_waits");
    assert!(unit.steps.iter().filter(|f| f.is_wrong()).count() == 1, "{unit:?}");
    // A multiplier that follows from nothing is another matter.
    assert_eq!(code(&check(WINDOW, "19", "10", "3", "57"), Step::Multiplier), "multiplier_wrong");
}

#[test]
fn the_record_is_spoken_of_only_where_every_step_holds() {
    assert_eq!(code(&check(WINDOW, "19", "15", "4", "76"), Step::Plausible), "plausible_yes");
    for wrong in [
        check(WINDOW, "38", "15", "4", "152"),
        check(WINDOW, "20", "15", "4", "80"),
        check(WINDOW, "19", "10", "6", "114"),
        check(WINDOW, "19", "15", "6", "114"),
        check(WINDOW, "19", "15", "4", "19"),
        check(WINDOW, "19", "15", "", "76"),
        check(None, "19", "15", "4", "76"),
    ] {
        assert_eq!(code(&wrong, Step::Plausible), "", "{wrong:?}");
    }
    // A stretch that is unlike the rest of its record: twenty seconds at 75, the rest at 50.
    let mut peaks = steady(0.8, 25);
    peaks.extend((1..80).map(|k| Peak { at_s: 19.7 + 1.2 * f64::from(k), sure: true }));
    let typed = Typed { count: Some(19.0), seconds: Some(15.0), multiplier: Some(4.0), rate: Some(76.0) };
    let reference = Reference { peaks: &peaks, delay_s: 0.0, duration_s: 115.0 };
    let report = judge(&Criteria::default(), None, WINDOW, &typed, &reference);
    assert!(report.passed);
    assert_eq!(code(&report, Step::Plausible), "plausible_no");
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
        fitting_v: None,
        movement: None,
    };
    let moved = |kind| Some(Movement { kind, height: 0.8, from_s: 3.0, to_s: 4.0 });
    for (trace, duration_s, expected) in [
        (Trace { hum_ratio: 0.11, ..good }, 32.0, "trace_hum"),
        (Trace { clip_share: 0.001, ..good }, 32.0, "trace_clipped"),
        (Trace { fill: 0.29, smaller_range_fits: true, fitting_v: None, ..good }, 32.0, "trace_small"),
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
        names(
            &["strap_loose", "moving"],
            &["finger_cold"],
            &list.iter().map(|s| s.to_string()).collect::<Vec<_>>(),
        )
    };
    assert_eq!(named(&[]).code, "name_missing");
    assert_eq!(named(&["strap_loose"]).code, "name_partly");
    assert_eq!(named(&["strap_loose", "moving"]).code, "name_right");
    // What is at work beside those may be named with them and not for them.
    assert_eq!(named(&["strap_loose", "moving", "finger_cold"]).code, "name_right");
    assert_eq!(named(&["strap_loose", "finger_cold"]).code, "name_partly");
    assert_eq!(named(&["strap_loose", "moving", "tapping"]).code, "name_partly");
    assert_eq!(named(&["tapping"]).code, "name_wrong");
    assert!(!named(&["strap_loose", "tapping"]).args.to_string().contains("strap"));
}
