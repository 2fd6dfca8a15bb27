//! The kinds of question: how a seed settles them, and how each of their steps is judged.

use dicrotic::assess::Criteria;
use dicrotic::assess::asked::judge;
use dicrotic::assess::parse::{is_quotient, millivolts};
use dicrotic::assess::sheet::{Sheet, Written};
use dicrotic::assess::task::{Field, Kind, Task, TaskSpec};
use dicrotic::assess::trace::Trace;
use dicrotic::assess::uncertainty::supported;
use dicrotic::assess::verdict::{Reference, Report, Step, Typed, Verdict};
use dicrotic::assess::window::Peak;
use dicrotic::assess::window::spanned;
use dicrotic::measure::landmarks::Landmarks;
use std::collections::BTreeSet;

/// Beats every .8 s from .5 s on, on a record of a minute.
fn peaks() -> Vec<Peak> {
    (0..74).map(|k| Peak { at_s: 0.5 + 0.8 * f64::from(k), sure: true }).collect()
}

fn typed(count: f64, seconds: f64, multiplier: f64, rate: f64) -> Typed {
    Typed { count: Some(count), seconds: Some(seconds), multiplier: Some(multiplier), rate: Some(rate) }
}

/// Nineteen beats in fifteen seconds, worked out right.
fn right<'a>(kind: Kind, criteria: &'a Criteria, peaks: &'a [Peak]) -> Sheet<'a> {
    Sheet {
        task: TaskSpec { kind, ..TaskSpec::default() }.settle(1),
        criteria,
        trace: None,
        cursors: Some((0.1, 15.1)),
        first: None,
        typed: typed(19.0, 15.0, 4.0, 76.0),
        typed_first: Typed::default(),
        written: Written::default(),
        reference: Reference { peaks, delay_s: 0.0, duration_s: 60.0 },
        landmarks: &[],
        values: None,
        range_v: 0.1,
        exercise_ended_s: None,
    }
}

fn code(report: &Report, step: Step) -> (&'static str, Verdict) {
    let found =
        report.steps.iter().find(|f| f.step == step).unwrap_or_else(|| panic!("no {step:?}: {report:?}"));
    (found.code, found.verdict)
}

#[test]
fn a_seed_settles_the_question_the_same_way_each_time_and_all_of_them_come_up() {
    let spec = TaskSpec { kind: Kind::GivenWindow, ..TaskSpec::default() };
    let lengths: BTreeSet<String> =
        (0..60).map(|seed| spec.settle(seed).seconds.unwrap().to_string()).collect();
    assert_eq!(lengths, BTreeSet::from(["10".to_string(), "15".into(), "25".into()]));
    let spec = TaskSpec { kind: Kind::Intervals, n: Some([4, 6]), ..TaskSpec::default() };
    let numbers: BTreeSet<u32> = (0..60).map(|seed| spec.settle(seed).n.unwrap()).collect();
    assert_eq!(numbers, BTreeSet::from([4, 5, 6]));
    assert_eq!(spec.settle(9), spec.settle(9));
}

#[test]
fn a_question_that_makes_no_sense_is_named() {
    let given = |kind, seconds: Option<Vec<f64>>, n| TaskSpec { kind, seconds, n, ..TaskSpec::default() };
    for (spec, field) in [
        (given(Kind::OwnWindow, Some(vec![10.0]), None), "seconds"),
        (given(Kind::GivenWindow, Some(vec![]), None), "seconds"),
        (given(Kind::GivenWindow, Some(vec![f64::NAN]), None), "seconds"),
        (given(Kind::GivenWindow, None, Some([3, 5])), "n"),
        (given(Kind::Intervals, None, Some([5, 3])), "n"),
        (given(Kind::Intervals, None, Some([0, 3])), "n"),
        (TaskSpec { kind: Kind::AfterExercise, within_s: Some(-1.0), ..TaskSpec::default() }, "within_s"),
        (TaskSpec { kind: Kind::Irregular, at_least_s: Some(1e9), ..TaskSpec::default() }, "at_least_s"),
    ] {
        assert_eq!(spec.check().unwrap_err().0, field, "{spec:?}");
    }
    assert_eq!(TaskSpec::default().check(), Ok(()));
}

/// Common practice: among right, one off, doubled, raw, beats a second and the multipliers of 6 to 30 s, no two give the same rate in
/// windows of 10, 15 and 25 s (closest pair: one count); in 12, 20 and 30 s some do.
#[test]
fn in_the_given_windows_no_two_misreadings_give_the_same_rate() {
    let closest = |seconds: f64, count: f64| {
        let k = 60.0 / seconds;
        let mut answers =
            vec![count * k, (count + 1.0) * k, (count - 1.0) * k, 2.0 * count * k, count, count / seconds];
        answers
            .extend([10.0, 6.0, 4.0, 3.0, 2.0].iter().filter(|m| (*m - k).abs() > 1e-9).map(|m| m * count));
        let mut least = f64::INFINITY;
        for (i, x) in answers.iter().enumerate() {
            for y in &answers[..i] {
                least = least.min((x - y).abs());
            }
        }
        least
    };
    for seconds in [10.0, 15.0, 25.0] {
        let count = (72.0_f64 * seconds / 60.0).round();
        assert!((closest(seconds, count) - 60.0 / seconds).abs() < 1e-9, "{seconds}");
    }
    for seconds in [20.0, 30.0] {
        assert!(closest(seconds, (72.0_f64 * seconds / 60.0).round()) < 1e-9, "{seconds}");
    }
}

#[test]
fn a_given_window_may_be_half_a_second_off() {
    let (criteria, peaks) = (Criteria { window_s: 10.0, ..Criteria::default() }, peaks());
    let mut sheet = right(Kind::GivenWindow, &criteria, &peaks);
    sheet.task.seconds = Some(15.0);
    assert!(judge(&sheet).passed);
    for (asked, expected) in
        [(15.5, "window_good"), (14.5, "window_good"), (15.6, "window_not_given"), (25.0, "window_not_given")]
    {
        sheet.task.seconds = Some(asked);
        assert_eq!(code(&judge(&sheet), Step::Window).0, expected, "{asked}");
    }
}

#[test]
fn intervals_go_from_a_feature_to_the_same_feature() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    // From any feature: the same distance from the peak of each beat.
    for from in [-0.15, 0.0, 0.28] {
        let (n, off) = spanned(&peaks, 0.0, 2.1 + from, 2.1 + 8.0 + from).unwrap();
        assert_eq!(n, 10);
        assert!(off < 1e-9);
    }
    let mut sheet = right(Kind::Intervals, &criteria, &peaks);
    sheet.task.n = Some(10);
    sheet.cursors = Some((10.1, 2.1));
    sheet.typed = Typed { multiplier: None, ..typed(10.0, 8.0, 0.0, 75.0) };
    assert!(judge(&sheet).passed, "{:?}", judge(&sheet));
    for (count, expected) in [
        (11.0, "count_posts"),
        (9.0, "count_gaps_short"),
        (20.0, "count_double"),
        (5.0, "count_half"),
        (15.0, "count_other"),
    ] {
        sheet.typed.count = Some(count);
        assert_eq!(code(&judge(&sheet), Step::Count), (expected, Verdict::Wrong));
    }
    // B stands one beat too far, or too near: that is told, and the number that was asked for waits.
    sheet.typed.count = Some(10.0);
    for b in [10.9, 9.3] {
        sheet.cursors = Some((2.1, b));
        let report = judge(&sheet);
        assert_eq!(code(&report, Step::Window).0, "window_other_n");
        assert_eq!(code(&report, Step::Count), ("count_waits", Verdict::Note));
    }
    sheet.cursors = Some((2.1, 9.95));
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_mixed");
    sheet.cursors = Some((2.1, 10.9));
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_other_n");
    sheet.cursors = None;
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_missing");
}

/// Landmarks of beats whose foot is .15 s before the peak.
fn beats_of(peaks: &[Peak]) -> Vec<Landmarks> {
    let beat = |p: &Peak| Landmarks {
        foot_s: p.at_s - 0.15,
        peak_s: p.at_s,
        notch_s: None,
        second_s: None,
        height: 0.04,
        notch_part: None,
        second_part: None,
        crest_ms: 150.0,
        rise_ms: 80.0,
        notch_after_foot_ms: None,
        width50_ms: 250.0,
    };
    peaks.iter().map(beat).collect()
}

#[test]
fn who_counts_feet_or_begins_with_zero_on_a_beat_is_right_and_told_so() {
    let (criteria, peaks) = (Criteria { window_s: 10.0, ..Criteria::default() }, peaks());
    let beats = beats_of(&peaks);
    let with = |cursors: (f64, f64), count: f64, landmarks: &[Landmarks]| {
        let length = cursors.1 - cursors.0;
        let typed = typed(count, length, 60.0 / length, 60.0 * count / length);
        let sheet =
            Sheet { cursors: Some(cursors), typed, landmarks, ..right(Kind::OwnWindow, &criteria, &peaks) };
        let report = judge(&sheet);
        (code(&report, Step::Count).0, report.passed)
    };
    // Peaks at 2.1 and 17.3 s, feet at 1.95 and 17.15 s. B between a foot and its peak: one foot more than peaks.
    assert_eq!(with((1.7, 17.22), 19.0, &beats), ("count_right", true));
    assert_eq!(with((1.7, 17.22), 20.0, &beats), ("count_feet", true));
    assert_eq!(
        with((1.7, 17.22), 20.0, &[]),
        ("count_off_by", false),
        "without landmarks nobody knows of feet"
    );
    assert_eq!(with((1.7, 17.22), 21.0, &beats), ("count_other", false));
    // A between a foot and its peak: one foot fewer. The beat under A is the one that others call zero.
    assert_eq!(with((2.03, 17.0), 18.0, &beats), ("count_from_zero", true));
    // A on a peak, B between beats, and from beat to beat.
    assert_eq!(with((2.1, 17.0), 19.0, &beats), ("count_right", true));
    assert_eq!(with((2.1, 17.0), 18.0, &[]), ("count_from_zero", true));
    assert_eq!(with((2.1, 17.3), 19.0, &[]), ("count_right", true));
    assert_eq!(with((2.1, 17.0), 17.0, &beats), ("count_off_by", false));
    // A between beats: zero on the first one is a beat too few.
    assert_eq!(with((1.7, 17.0), 18.0, &beats), ("count_off_by", false));
}

#[test]
fn an_irregular_pulse_is_given_thirty_seconds() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    let mut sheet = right(Kind::Irregular, &criteria, &peaks);
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_short");
    sheet.cursors = Some((0.1, 30.1));
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_good");
}

#[test]
fn after_exercise_the_window_is_short_and_early_and_has_a_time() {
    let (criteria, peaks) = (Criteria { window_s: 10.0, ..Criteria::default() }, peaks());
    let mut sheet = right(Kind::AfterExercise, &criteria, &peaks);
    let window = |sheet: &Sheet| code(&judge(sheet), Step::Window).0;
    assert_eq!(window(&sheet), "window_no_exercise");
    sheet.exercise_ended_s = Some(30.0);
    assert_eq!(window(&sheet), "window_no_exercise", "it is not over yet");
    sheet.exercise_ended_s = Some(-20.0);
    assert_eq!(window(&sheet), "window_good");
    sheet.exercise_ended_s = Some(-55.0);
    assert_eq!(window(&sheet), "window_late");
    sheet.exercise_ended_s = Some(-20.0);
    sheet.cursors = Some((0.1, 16.1));
    assert_eq!(window(&sheet), "window_long");
    sheet.cursors = Some((0.1, 15.1));
    // The middle lies 7.6 s into the recording, 27.6 s after the end.
    for (middle, expected) in [
        (Some(27.6), "middle_right"),
        (Some(28.5), "middle_right"),
        (Some(20.1), "middle_start"),
        (Some(7.6), "middle_recording"),
        (Some(40.0), "middle_wrong"),
        (None, "middle_missing"),
    ] {
        sheet.written = sheet.written.with(Field::Middle, middle);
        assert_eq!(code(&judge(&sheet), Step::Middle).0, expected, "{middle:?}");
    }
}

#[test]
fn range_and_height_are_read_in_millivolts() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    let beats = beats_of(&peaks);
    let mut sheet = Sheet {
        cursors: Some((5.15, 5.3)),
        landmarks: &beats,
        values: Some((-0.012, 0.028)),
        written: Written::default().with(Field::Range, 100.0).with(Field::Amplitude, 40.0),
        ..right(Kind::ReadRange, &criteria, &peaks)
    };
    assert!(judge(&sheet).passed, "{:?}", judge(&sheet));
    for (range, expected) in [(200.0, "range_span"), (0.1, "range_unit"), (50.0, "range_wrong")] {
        sheet.written = sheet.written.with(Field::Range, range);
        assert_eq!(code(&judge(&sheet), Step::Range).0, expected);
    }
    for (height, expected) in [(41.0, "amplitude_right"), (0.04, "amplitude_unit"), (28.0, "amplitude_wrong")]
    {
        sheet.written = sheet.written.with(Field::Amplitude, height);
        assert_eq!(code(&judge(&sheet), Step::Amplitude).0, expected);
    }
    for (cursors, values, expected) in [
        ((4.9, 5.3), (-0.01, 0.028), "window_not_foot"),
        ((5.15, 5.6), (-0.012, 0.01), "window_not_peak"),
        // At the right time, but halfway up the climb.
        ((5.2, 5.3), (0.008, 0.028), "window_not_foot"),
    ] {
        sheet.cursors = Some(cursors);
        sheet.values = Some(values);
        assert_eq!(code(&judge(&sheet), Step::Window).0, expected);
    }
}

#[test]
fn a_clean_stretch_is_judged_by_its_trace_and_length_alone() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    // Small on the screen: that was somebody else's choice.
    let clean = Trace {
        hum_ratio: 0.02,
        clip_share: 0.0,
        fill: 0.1,
        pulse_v: 0.02,
        smaller_range_fits: true,
        fitting_v: None,
        quality: 0.9,
        movement: None,
    };
    let mut sheet = Sheet { trace: Some(&clean), ..right(Kind::CleanPart, &criteria, &peaks) };
    let report = judge(&sheet);
    assert!(report.passed && report.steps.len() == 2, "{report:?}");
    let wild = Trace { quality: 0.1, ..clean };
    sheet.trace = Some(&wild);
    assert_eq!(judge(&sheet).first_wrong, Some(Step::Trace));
}

#[test]
fn a_rate_beside_the_multiplier_is_told_only_where_there_is_one() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    // N and T hold, the multiplier is turned over: the rate that was worked out from N and T stays as it is.
    let mut sheet = right(Kind::OwnWindow, &criteria, &peaks);
    let good = sheet.typed;
    assert_eq!(code(&judge(&sheet), Step::Rate).0, "rate_right");
    sheet.typed.multiplier = good.multiplier.map(|k| 1.0 / k);
    assert_eq!(code(&judge(&sheet), Step::Rate).0, "rate_beside");
    // It follows from the wrong multiplier: then it changes with it.
    sheet.typed.rate = good.count.zip(sheet.typed.multiplier).map(|(n, k)| n * k);
    assert_eq!(code(&judge(&sheet), Step::Rate).0, "rate_follows");
    // A slip in the count of the first of two windows, where no multiplier is asked for.
    let mut sheet = Sheet {
        first: Some((20.1, 35.1)),
        typed_first: Typed { multiplier: None, ..typed(24.0, 15.0, 0.0, 96.0) },
        written: Written::default().with(Field::Uncertainty, 4.0),
        ..right(Kind::Compare, &criteria, &peaks)
    };
    sheet.typed.multiplier = None;
    let report = judge(&sheet);
    assert_eq!((code(&report, Step::Rate1).0, code(&report, Step::Rate).0), ("rate_follows", "rate_right"));
}

#[test]
fn two_windows_are_to_be_two() {
    let (criteria, peaks) = (Criteria::default(), peaks());
    let mut sheet = Sheet {
        first: Some((20.1, 35.1)),
        typed_first: Typed { multiplier: None, ..typed(19.0, 15.0, 0.0, 76.0) },
        written: Written::default().with(Field::Uncertainty, 4.0),
        ..right(Kind::Compare, &criteria, &peaks)
    };
    sheet.typed.multiplier = None;
    assert!(judge(&sheet).passed, "{:?}", judge(&sheet));
    sheet.first = Some((5.1, 20.1));
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_overlap");
    sheet.first = Some((9.1, 24.1));
    assert_eq!(code(&judge(&sheet), Step::Window).0, "window_good", "six of fifteen seconds are shared");
    sheet.first = None;
    assert_eq!(code(&judge(&sheet), Step::Window1).0, "window_missing");
}

#[test]
fn an_uncertainty_is_right_between_the_usual_error_and_one_count() {
    // 60/T for one count, .41 x 60/T for the standard deviation of a count (1/sqrt 6 counts, arithmetic), rounded outwards.
    assert_eq!(supported(15.0, None), (1.0, 4.0));
    assert_eq!(supported(10.0, None), (2.0, 6.0));
    assert_eq!(supported(15.0, Some(6.3)), (1.0, 7.0));
    let (low, high) = supported(60.0, None);
    assert!(low > 0.3 && low < 0.41 && high == 1.0);
    let (criteria, peaks) = (Criteria::default(), peaks());
    let mut sheet = right(Kind::OwnWindow, &criteria, &peaks);
    // It may be left out, and one that does not fit decides nothing.
    assert!(judge(&sheet).passed && judge(&sheet).steps.iter().all(|f| f.step != Step::Uncertainty));
    for (u, expected) in [
        (4.0, ("uncertainty_right", Verdict::Right)),
        (1.6, ("uncertainty_right", Verdict::Right)),
        (0.1, ("uncertainty_small", Verdict::Note)),
        (9.0, ("uncertainty_large", Verdict::Note)),
    ] {
        sheet.written = sheet.written.with(Field::Uncertainty, u);
        assert_eq!(code(&judge(&sheet), Step::Uncertainty), expected);
        assert!(judge(&sheet).passed);
    }
    let mut sheet = Sheet { first: Some((20.1, 35.1)), ..right(Kind::Compare, &criteria, &peaks) };
    assert_eq!(code(&judge(&sheet), Step::Uncertainty), ("uncertainty_missing", Verdict::Missing));
    sheet.written = sheet.written.with(Field::Uncertainty, 0.1);
    assert_eq!(code(&judge(&sheet), Step::Uncertainty), ("uncertainty_small", Verdict::Wrong));
}

#[test]
fn fields_belong_to_their_question() {
    let of = |kind| Task { kind, ..Task::default() };
    assert!(of(Kind::NameFault).fields().is_empty() && of(Kind::CleanPart).fields().is_empty());
    assert!(of(Kind::Compare).asks(Field::Count1) && of(Kind::Compare).optional().is_empty());
    assert!(!of(Kind::Intervals).asks(Field::Multiplier));
    assert!(of(Kind::OwnWindow).optional() == [Field::Uncertainty]);
}

#[test]
fn voltages_are_read_with_their_unit_and_quotients_are_known() {
    for (text, value) in [
        ("100", 100.0),
        ("100 mV", 100.0),
        ("0,1 V", 100.0),
        ("\u{00b1}50 mV", 50.0),
        ("+-200mV", 200.0),
        ("+/- 20", 20.0),
    ] {
        assert_eq!(millivolts(text), Ok(value), "{text}");
    }
    assert!(millivolts("mV").is_err() && millivolts("").is_err());
    for (text, quotient) in [
        ("60/15", true),
        ("60 : 14.8", true),
        ("4", false),
        ("4 /min", false),
        ("60/0", false),
        ("a/b", false),
    ] {
        assert_eq!(is_quotient(text), quotient, "{text}");
    }
}
