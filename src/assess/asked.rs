//! The verdict. What is special about each kind of question stands in [`super::kind`]; here is what the kinds have in
//! common. What is judged in every one of them is in [`super::verdict`].

use super::Criteria;
use super::arithmetic::{self, Span, judge_multiplier, judge_rate, judge_seconds};
use super::counting::Counts;
use super::sheet::Sheet;
use super::task::{Field, Task};
use super::trace::Trace;
use super::verdict::{Finding, Report, Step, Typed, Verdict, finding, judge_plausible, judge_trace, short};
use crate::plain::json;

/// Judges what was put down.
pub fn judge(sheet: &Sheet) -> Report {
    let window = sheet.window();
    let found = window.map(|w| count_in(sheet, w));
    let mut steps = Vec::new();
    if let Some(trace) = sheet.trace {
        let all = judge_trace(sheet.criteria, trace, sheet.reference.duration_s);
        steps.extend(fitting(sheet.task.kind.question().spared, all, trace));
    }
    (sheet.task.kind.question().judge)(sheet, &mut steps);
    // A rate that is worked out rightly from a slip is no right rate: it is told apart.
    for (rate, before) in [
        (Step::Rate, &[Step::Count, Step::Seconds, Step::Multiplier][..]),
        (Step::Rate1, &[Step::Count1, Step::Seconds1]),
    ] {
        if all_hold(before, &steps) {
            continue;
        }
        let beside =
            rate == Step::Rate && all_hold(&[Step::Count, Step::Seconds], &steps) && is_beside(&sheet.typed);
        let code = if beside { "rate_beside" } else { "rate_follows" };
        steps.iter_mut().filter(|f| f.step == rate && f.code == "rate_right").for_each(|f| f.code = code);
    }
    Report::of(steps, found.map(|c| c.peaks).filter(|_| sheet.task.counts_beats()))
}

/// The beats in a window.
pub(super) fn count_in(sheet: &Sheet, window: (f64, f64)) -> Counts {
    Counts::of(&sheet.reference, sheet.landmarks, window, sheet.criteria)
}

/// The exact count of the peaks.
pub(super) fn exactly(found: Counts) -> f64 {
    found.peaks.exact as f64
}

/// T, the multiplier where it is asked for, and the rate.
pub(super) fn numbers(
    sheet: &Sheet,
    typed: &Typed,
    window: Option<(f64, f64)>,
    beats: Option<f64>,
) -> Vec<Finding> {
    let length = window.map(|(a, b)| b - a);
    let span = Span { length, beats: beats.or(typed.count).unwrap_or(1.0) };
    let seconds = judge_seconds(typed, span);
    let hold = seconds.verdict == Verdict::Right;
    let multiplier = sheet.task.asks(Field::Multiplier).then(|| judge_multiplier(typed, hold, span));
    let rate = judge_rate(typed, hold, span);
    [Some(seconds), multiplier, Some(rate)].into_iter().flatten().collect()
}

/// How far a rate may be off that was counted in a window of so many seconds, and is still right, beats/min.
pub fn rate_tolerance(length_s: f64) -> f64 {
    arithmetic::rate_tolerance(60.0 / length_s)
}

/// Whether a rate was worked out past the multiplier: a slip in that alone changes none that came from N and T.
fn is_beside(typed: &Typed) -> bool {
    let of_multiplier = typed.count.zip(typed.multiplier).zip(typed.rate);
    !of_multiplier.is_some_and(|((n, k), rate)| (n * k - rate).abs() <= 1.0)
}

/// Whether every finding about these steps holds.
fn all_hold(of: &[Step], steps: &[Finding]) -> bool {
    steps.iter().filter(|f| of.contains(&f.step)).all(|f| f.verdict.holds())
}

/// The rate against the whole record, once every step to it holds.
pub(super) fn plausible(sheet: &Sheet, steps: &[Finding], window: Option<(f64, f64)>) -> Option<Finding> {
    let measured = [Step::Count, Step::Seconds, Step::Multiplier, Step::Rate];
    let ((a, b), rate) = window.zip(sheet.typed.rate).filter(|_| all_hold(&measured, steps))?;
    judge_plausible(rate, b - a, &sheet.reference)
}

/// What of a trace keeps it from being measured in for a task, the worst first; `None` where nothing does.
pub fn fault_of_trace(
    task: &Task,
    criteria: &Criteria,
    trace: &Trace,
    duration_s: f64,
) -> Option<&'static str> {
    let all = judge_trace(criteria, trace, duration_s);
    let found = fitting(task.kind.question().spared, all, trace);
    found.iter().find(|f| !f.verdict.holds()).map(|f| f.code)
}

/// What of the trace is the student's matter.
fn fitting(spared: Option<&[&str]>, mut all: Vec<Finding>, trace: &Trace) -> Vec<Finding> {
    let Some(spared) = spared else { return Vec::new() };
    all.retain(|f| !spared.contains(&f.code));
    if all.is_empty() {
        let args = json!({"ratio": short(trace.hum_ratio), "fill": short(trace.fill)});
        all.push(finding(Step::Trace, Verdict::Right, "trace_good", args));
    }
    all
}
