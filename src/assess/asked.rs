//! The verdict for each kind of question. What the kinds have in common is judged in [`super::verdict`]; what a kind
//! asks of the window, of heights and of the uncertainty has files of its own.

use super::arithmetic::{Span, judge_multiplier, judge_rate, judge_seconds};
use super::counting::{Counts, judge_count, judge_intervals};
use super::heights::{amplitude, foot_to_peak, range};
use super::placed::{apart, middle, same_features, window_asked};
use super::sheet::Sheet;
use super::task::{Field, Kind};
use super::trace::Trace;
use super::uncertainty::uncertainty;
use super::verdict::{
    Finding, Report, Step, Typed, Verdict, finding, judge_plausible, judge_trace, judge_window, short,
};
use crate::plain::json;

/// Judges what was put down.
pub fn judge(sheet: &Sheet) -> Report {
    let window = sheet.window();
    let found = window.map(|w| count_in(sheet, w));
    let mut steps = Vec::new();
    if let Some(trace) = sheet.trace {
        let all = judge_trace(sheet.criteria, trace, sheet.reference.duration_s);
        steps.extend(fitting(sheet.task.kind, all, trace));
    }
    let typed = &sheet.typed;
    match sheet.task.kind {
        Kind::NameFault => {}
        Kind::CleanStretch => steps.push(judge_window(sheet.criteria, window)),
        Kind::ReadRange => {
            steps.push(foot_to_peak(sheet));
            steps.push(range(sheet));
            steps.push(amplitude(sheet));
        }
        Kind::Intervals => {
            let (at, spanned) = same_features(sheet);
            let asked = sheet.task.n.filter(|_| at.code == "window_other_n");
            steps.push(at);
            steps.push(judge_intervals(typed.count, spanned, asked));
            steps.extend(numbers(sheet, typed, window, spanned.map(f64::from)));
            steps.extend(uncertainty(sheet, false));
            steps.extend(plausible(sheet, &steps, window));
        }
        Kind::Compare => {
            let (first, typed_first) = (sheet.first_window(), &sheet.typed_first);
            steps.push(judge_window(sheet.criteria, first).about(Step::Window1));
            let in_first = first.map(|w| count_in(sheet, w));
            steps.push(judge_count(typed_first.count, in_first).about(Step::Count1));
            steps.extend(
                numbers(sheet, typed_first, first, in_first.map(|c| c.peaks.exact as f64)).into_iter().map(
                    |f| {
                        let step = if f.step == Step::Seconds { Step::Seconds1 } else { Step::Rate1 };
                        f.about(step)
                    },
                ),
            );
            steps.push(apart(sheet, window));
            steps.push(judge_count(typed.count, found));
            steps.extend(numbers(sheet, typed, window, found.map(|c| c.peaks.exact as f64)));
            steps.extend(uncertainty(sheet, true));
        }
        Kind::OwnWindow | Kind::GivenWindow | Kind::Irregular | Kind::AfterExercise => {
            steps.push(window_asked(sheet, window));
            steps.push(judge_count(typed.count, found));
            steps.extend(numbers(sheet, typed, window, found.map(|c| c.peaks.exact as f64)));
            if sheet.task.kind == Kind::AfterExercise {
                steps.push(middle(sheet, window));
            }
            steps.extend(uncertainty(sheet, false));
            // After exercise the rate of the whole record is no yardstick for a window of it.
            if sheet.task.kind != Kind::AfterExercise {
                steps.extend(plausible(sheet, &steps, window));
            }
        }
    }
    for (rate, before) in [
        (Step::Rate, &[Step::Count, Step::Seconds, Step::Multiplier][..]),
        (Step::Rate1, &[Step::Count1, Step::Seconds1]),
    ] {
        // A rate that is worked out rightly from a slip is no right rate: it is told apart.
        if !all_hold(before, &steps) {
            steps
                .iter_mut()
                .filter(|f| f.step == rate && f.code == "rate_right")
                .for_each(|f| f.code = "rate_follows");
        }
    }
    Report::of(steps, found.map(|c| c.peaks).filter(|_| sheet.task.counts_beats()))
}

fn count_in(sheet: &Sheet, window: (f64, f64)) -> Counts {
    Counts::of(&sheet.reference, sheet.landmarks, window, sheet.criteria)
}

/// T, the multiplier where it is asked for, and the rate.
fn numbers(sheet: &Sheet, typed: &Typed, window: Option<(f64, f64)>, beats: Option<f64>) -> Vec<Finding> {
    let length = window.map(|(a, b)| b - a);
    let span = Span { length, beats: beats.or(typed.count).unwrap_or(1.0) };
    let seconds = judge_seconds(typed, span);
    let hold = seconds.verdict == Verdict::Right;
    let multiplier = sheet.task.asks(Field::Multiplier).then(|| judge_multiplier(typed, hold, span));
    let rate = judge_rate(typed, hold, span);
    [Some(seconds), multiplier, Some(rate)].into_iter().flatten().collect()
}

/// Whether every finding about these steps holds.
fn all_hold(of: &[Step], steps: &[Finding]) -> bool {
    steps.iter().filter(|f| of.contains(&f.step)).all(|f| f.verdict.holds())
}

/// The rate against the whole record, once every step to it holds.
fn plausible(sheet: &Sheet, steps: &[Finding], window: Option<(f64, f64)>) -> Option<Finding> {
    let measured = [Step::Count, Step::Seconds, Step::Multiplier, Step::Rate];
    let ((a, b), rate) = window.zip(sheet.typed.rate).filter(|_| all_hold(&measured, steps))?;
    judge_plausible(rate, b - a, &sheet.reference)
}

/// Who is only asked for a stretch, or for a height, has not chosen the range or the length of the record.
fn fitting(kind: Kind, mut all: Vec<Finding>, trace: &Trace) -> Vec<Finding> {
    let left_out: &[&str] = match kind {
        Kind::CleanStretch => &["trace_short", "trace_small", "trace_tall"],
        Kind::ReadRange => &["trace_short"],
        Kind::NameFault => return Vec::new(),
        _ => return all,
    };
    all.retain(|f| !left_out.contains(&f.code));
    if all.is_empty() {
        let args = json!({"ratio": short(trace.hum_ratio), "fill": short(trace.fill)});
        all.push(finding(Step::Trace, Verdict::Right, "trace_good", args));
    }
    all
}
