//! The steps of a measurement in their order, each judged by itself, each with a code and its arguments.

use super::Criteria;
use super::trace::Trace;
use super::window::{Allowed, Peak, allowed, interval_rate};
use crate::measure::movement::Kind;
use crate::plain::json;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A step of the measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// Naming what was wrong.
    Name,
    /// The stretch of trace that was measured.
    Trace,
    /// The first of two windows.
    #[serde(rename = "window_1")]
    Window1,
    /// Counting in the first of two windows.
    #[serde(rename = "count_1")]
    Count1,
    /// Reading the length of the first of two windows.
    #[serde(rename = "seconds_1")]
    Seconds1,
    /// Working out the rate of the first of two windows.
    #[serde(rename = "rate_1")]
    Rate1,
    /// The window between the cursors.
    Window,
    /// Counting.
    Count,
    /// Reading the window's length.
    Seconds,
    /// Choosing the multiplier.
    Multiplier,
    /// Working out the rate.
    Rate,
    /// The time of the window's middle.
    Middle,
    /// Reading the full-scale range.
    Range,
    /// Reading the height of a beat.
    Amplitude,
    /// Saying how sure the rate is.
    Uncertainty,
    /// The result against the whole record.
    Plausible,
}

/// How a step went.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// As it should be.
    Right,
    /// Right, with a beat on a cursor.
    Edge,
    /// Not as it should be.
    Wrong,
    /// A remark that decides nothing.
    Note,
    /// Nothing there to judge.
    Missing,
}

/// One judged step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// The step.
    pub step: Step,
    /// How it went.
    pub verdict: Verdict,
    /// What was found, for the page to put into words.
    pub code: &'static str,
    /// Numbers for those words. Never the true count or rate.
    pub args: Value,
}

/// What the student typed, where it can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Typed {
    /// Beats counted.
    pub count: Option<f64>,
    /// Length of the window, s.
    pub seconds: Option<f64>,
    /// Multiplier, 1/min.
    pub multiplier: Option<f64>,
    /// Rate, beats/min.
    pub rate: Option<f64>,
}

/// What the measurement is judged against.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference<'a> {
    /// All beats of the recording.
    pub peaks: &'a [Peak],
    /// How late the recorder shows a peak, s.
    pub delay_s: f64,
    /// Length of the recording, s.
    pub duration_s: f64,
}

impl Reference<'_> {
    /// Mean rate over the whole recording, beats/min.
    pub fn record_rate(&self) -> Option<f64> {
        interval_rate(self.peaks, 0.0, self.duration_s)
    }
}

/// The judged attempt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// All steps in their order.
    pub steps: Vec<Finding>,
    /// The first step that went wrong or is missing.
    pub first_wrong: Option<Step>,
    /// Whether every step is right, give or take an edge.
    pub passed: bool,
    /// The counts that the window allows, if there is one.
    pub allowed: Option<Allowed>,
}

impl Report {
    /// A report of steps in their order.
    pub fn of(steps: Vec<Finding>, allowed: Option<Allowed>) -> Self {
        let first_wrong = steps.iter().find(|f| f.is_wrong()).map(|f| f.step);
        Self { passed: first_wrong.is_none(), first_wrong, allowed, steps }
    }

    /// The first finding that is wrong or missing.
    pub fn first_finding(&self) -> Option<&Finding> {
        self.steps.iter().find(|f| f.is_wrong())
    }

    /// Puts a finding before the others.
    pub fn prepend(&mut self, finding: Finding) {
        self.steps.insert(0, finding);
        self.first_wrong = self.first_finding().map(|f| f.step);
        self.passed = self.first_wrong.is_none();
    }
}

/// The take belongs to somebody else.
pub fn foreign() -> Finding {
    finding(Step::Trace, Verdict::Wrong, "trace_foreign", json!({}))
}

/// Whether the named faults are those that are there. How many there are is told, which ones is not.
pub fn names(there: &[&str], named: &[String]) -> Finding {
    let hits = named.iter().filter(|n| there.contains(&n.as_str())).count();
    let args = json!({"hits": hits, "named": named.len(), "there": there.len()});
    if named.is_empty() {
        finding(Step::Name, Verdict::Missing, "name_missing", args)
    } else if hits == there.len() && named.len() == there.len() {
        finding(Step::Name, Verdict::Right, "name_right", args)
    } else if hits > 0 {
        finding(Step::Name, Verdict::Wrong, "name_partly", args)
    } else {
        finding(Step::Name, Verdict::Wrong, "name_wrong", args)
    }
}

/// Judges a measurement. `trace` is the measured stretch, `cursors` its ends in seconds.
pub fn judge(
    criteria: &Criteria,
    trace: Option<&Trace>,
    cursors: Option<(f64, f64)>,
    typed: &Typed,
    reference: &Reference,
) -> Report {
    let window = cursors.map(|(a, b)| (a.min(b), a.max(b)));
    let found = window.map(|(a, b)| allowed(reference.peaks, a, b, criteria.edge_s, reference.delay_s));
    let mut steps = Vec::new();
    if let Some(trace) = trace {
        steps.extend(judge_trace(criteria, trace, reference.duration_s));
    }
    steps.push(judge_window(criteria, window));
    steps.push(judge_count(typed.count, found));
    let length = window.map(|(a, b)| b - a);
    steps.push(judge_seconds(typed.seconds, length));
    steps.push(judge_multiplier(typed.multiplier, typed.seconds));
    steps.push(judge_rate(typed));
    steps.push(judge_plausible(typed, length, reference));
    Report::of(steps, found)
}

impl Finding {
    /// Whether it is wrong or missing.
    pub fn is_wrong(&self) -> bool {
        matches!(self.verdict, Verdict::Wrong | Verdict::Missing)
    }

    /// The same finding about another step.
    pub(super) fn about(self, step: Step) -> Self {
        Self { step, ..self }
    }
}

pub(super) fn finding(step: Step, verdict: Verdict, code: &'static str, args: Value) -> Finding {
    Finding { step, verdict, code, args }
}

/// Three places behind the point are plenty for a page.
pub(super) fn short(x: f64) -> f64 {
    (x * 1000.0).round() / 1000.0
}

pub(super) fn judge_trace(criteria: &Criteria, trace: &Trace, duration_s: f64) -> Vec<Finding> {
    let wrong = |code, args| finding(Step::Trace, Verdict::Wrong, code, args);
    let mut found = Vec::new();
    if duration_s + 1e-9 < criteria.record_s {
        found.push(wrong("trace_short", json!({"seconds": short(duration_s), "need": criteria.record_s})));
    }
    if let Some(worst) = trace.disturbed() {
        let code = match worst.kind {
            Kind::Unrest => "trace_restless",
            Kind::Spike => "trace_spike",
            Kind::Step => "trace_step",
        };
        let height = (10.0 * worst.height).round() / 10.0;
        let args = json!({"height": height, "from_s": short(worst.from_s), "to_s": short(worst.to_s)});
        found.push(wrong(code, args));
    } else if trace.quality < criteria.quality_min {
        found.push(wrong("trace_unlike", json!({"quality": short(trace.quality)})));
    }
    if trace.hum_ratio > criteria.hum_ratio {
        found.push(wrong("trace_hum", json!({"ratio": short(trace.hum_ratio), "limit": criteria.hum_ratio})));
    }
    // The ranges come in steps of 2 and 2.5, and the line wanders: a small pulse is held against nobody who could not
    // have taken a smaller range without cutting something off.
    if trace.clip_share > criteria.clip_share {
        found.push(wrong("trace_clipped", json!({"share": short(trace.clip_share)})));
    }
    if trace.fill < criteria.fill_min && trace.smaller_range_fits {
        found.push(wrong("trace_small", json!({"fill": short(trace.fill)})));
    } else if trace.fill > criteria.fill_max {
        found.push(wrong("trace_tall", json!({"fill": short(trace.fill)})));
    }
    if found.is_empty() {
        let args = json!({"ratio": short(trace.hum_ratio), "fill": short(trace.fill)});
        found.push(finding(Step::Trace, Verdict::Right, "trace_good", args));
    }
    found
}

pub(super) fn judge_window(criteria: &Criteria, window: Option<(f64, f64)>) -> Finding {
    match window {
        Some((a, b)) if b > a => {
            let seconds = b - a;
            // A window put at 15 s by hand may be a few hundredths short of it.
            if seconds + 0.05 >= criteria.window_s {
                finding(Step::Window, Verdict::Right, "window_good", json!({"seconds": short(seconds)}))
            } else {
                let args = json!({"seconds": short(seconds), "need": criteria.window_s});
                finding(Step::Window, Verdict::Wrong, "window_short", args)
            }
        }
        _ => finding(Step::Window, Verdict::Missing, "window_missing", json!({})),
    }
}

pub(super) fn judge_count(count: Option<f64>, found: Option<Allowed>) -> Finding {
    let (Some(count), Some(found)) = (count, found) else {
        let code = if count.is_none() { "count_missing" } else { "count_unplaced" };
        return finding(Step::Count, Verdict::Missing, code, json!({}));
    };
    let of = |verdict, code, args| finding(Step::Count, verdict, code, args);
    if count == found.exact as f64 {
        return of(Verdict::Right, "count_right", json!({}));
    }
    if count >= found.least as f64 && count <= found.most as f64 && count == count.floor() {
        return of(Verdict::Edge, "count_edge", json!({}));
    }
    let (least, most) = (found.least as f64, found.most as f64);
    let by = if count > most { count - most } else { count - least };
    if by.abs() <= 1.0 {
        return of(Verdict::Wrong, "count_off_by", json!({"by": if by > 0.0 { 1 } else { -1 }}));
    }
    // Bumps counted as beats, or every other beat: within a tenth, since few count all of the bumps.
    if count >= 1.8 * least && count <= 2.0 * most + 1.0 {
        return of(Verdict::Wrong, "count_double", json!({"typed": count}));
    }
    if count >= 0.5 * least - 1.0 && count <= 0.5 * most + 1.0 {
        return of(Verdict::Wrong, "count_half", json!({"typed": count}));
    }
    of(Verdict::Wrong, "count_other", json!({"typed": count, "more": by > 0.0}))
}

pub(super) fn judge_seconds(seconds: Option<f64>, length: Option<f64>) -> Finding {
    let (Some(seconds), Some(length)) = (seconds, length) else {
        let code = if seconds.is_none() { "seconds_missing" } else { "seconds_unplaced" };
        return finding(Step::Seconds, Verdict::Missing, code, json!({}));
    };
    // Three figures are asked for; half a per cent, and never less than 0.05 s.
    if (seconds - length).abs() <= (0.005 * length).max(0.05) + 1e-9 {
        finding(Step::Seconds, Verdict::Right, "seconds_right", json!({}))
    } else {
        let args = json!({"typed": seconds, "window": short(length)});
        finding(Step::Seconds, Verdict::Wrong, "seconds_wrong", args)
    }
}

pub(super) fn judge_multiplier(multiplier: Option<f64>, seconds: Option<f64>) -> Finding {
    let (Some(multiplier), Some(seconds)) = (multiplier, seconds) else {
        let code = if multiplier.is_none() { "multiplier_missing" } else { "multiplier_unplaced" };
        return finding(Step::Multiplier, Verdict::Missing, code, json!({}));
    };
    // 60/T with two significant figures is within 1.3 %: 60/14.7 = 4.08, typed 4.1 or 4.08.
    let right = seconds > 0.0 && (multiplier * seconds / 60.0 - 1.0).abs() <= 0.015;
    if right {
        finding(Step::Multiplier, Verdict::Right, "multiplier_right", json!({}))
    } else {
        let args = json!({"typed": short(multiplier), "seconds": seconds});
        finding(Step::Multiplier, Verdict::Wrong, "multiplier_wrong", args)
    }
}

pub(super) fn judge_rate(typed: &Typed) -> Finding {
    let of = |verdict, code, args| finding(Step::Rate, verdict, code, args);
    let (Some(rate), Some(count)) = (typed.rate, typed.count) else {
        let code = if typed.rate.is_none() { "rate_missing" } else { "rate_unplaced" };
        return of(Verdict::Missing, code, json!({}));
    };
    // The arithmetic is checked on the student's own numbers, by either way of working it out; half a beat for
    // rounding to whole beats per minute.
    let by_multiplier = typed.multiplier.map(|k| count * k);
    let by_seconds = typed.seconds.filter(|t| *t > 0.0).map(|t| 60.0 * count / t);
    let fits = |value: Option<f64>| value.is_some_and(|v| (v - rate).abs() <= 0.5 + 0.002 * v + 1e-9);
    if fits(by_multiplier) || fits(by_seconds) {
        return of(Verdict::Right, "rate_right", json!({}));
    }
    if rate == count {
        return of(Verdict::Wrong, "rate_raw_count", json!({"typed": rate}));
    }
    let args =
        json!({"typed": rate, "count": count, "multiplier": typed.multiplier, "seconds": typed.seconds});
    of(Verdict::Wrong, "rate_arithmetic", args)
}

/// A remark: whether the result can be true of this record. It decides nothing, since each step before it has been
/// judged on its own.
pub(super) fn judge_plausible(typed: &Typed, length: Option<f64>, reference: &Reference) -> Finding {
    let (Some(rate), Some(record), Some(length)) = (typed.rate, reference.record_rate(), length) else {
        return finding(Step::Plausible, Verdict::Note, "plausible_unknown", json!({}));
    };
    // One count of the window, and a tenth of the rate for its wandering over the record (common practice).
    let band = 60.0 / length.max(1.0) + 0.1 * record;
    let code = if (rate - record).abs() <= band { "plausible_yes" } else { "plausible_no" };
    finding(Step::Plausible, Verdict::Note, code, json!({"typed": rate}))
}
