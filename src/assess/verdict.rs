//! The steps of a measurement in their order, each judged by itself, each with a code and its arguments.

use super::Criteria;
use super::trace::Trace;
use super::window::{Allowed, Peak, interval_rate};
use crate::measure::movement::Kind;
use crate::plain::{json, names};
use serde_json::Value;

/// A step of the measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Naming what was wrong.
    Name,
    /// The stretch of trace that was measured.
    Trace,
    /// The first of two windows.
    Window1,
    /// Counting in the first of two windows.
    Count1,
    /// Reading the length of the first of two windows.
    Seconds1,
    /// Working out the rate of the first of two windows.
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

names! {
    Step {
        Name => "name",
        Trace => "trace",
        Window1 => "window_1",
        Count1 => "count_1",
        Seconds1 => "seconds_1",
        Rate1 => "rate_1",
        Window => "window",
        Count => "count",
        Seconds => "seconds",
        Multiplier => "multiplier",
        Rate => "rate",
        Middle => "middle",
        Range => "range",
        Amplitude => "amplitude",
        Uncertainty => "uncertainty",
        Plausible => "plausible",
    }
}

/// How a step went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

impl Verdict {
    /// Whether nothing is to be put right: right, give or take an edge.
    pub fn holds(self) -> bool {
        matches!(self, Self::Right | Self::Edge)
    }
}

names! {
    Verdict {
        Right => "right",
        Edge => "edge",
        Wrong => "wrong",
        Note => "note",
        Missing => "missing",
    }
}

/// One judged step.
#[derive(Clone, Debug, PartialEq)]
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
#[derive(Clone, Debug, PartialEq)]
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

/// The recording belongs to somebody else.
pub fn foreign() -> Finding {
    finding(Step::Trace, Verdict::Wrong, "trace_foreign", json!({}))
}

/// Whether the named faults are those that are there. `also` are at work beside them: naming one of those is right and not
/// asked for. Neither how many there are is told nor how many of
/// those named are right.
pub fn names(there: &[&str], also: &[&str], named: &[String]) -> Finding {
    let hits = named.iter().filter(|n| there.contains(&n.as_str())).count();
    let astray = named.iter().filter(|n| !there.contains(&n.as_str()) && !also.contains(&n.as_str())).count();
    let args = json!({});
    if hits == there.len() && astray == 0 && (!named.is_empty() || there.is_empty()) {
        finding(Step::Name, Verdict::Right, "name_right", args)
    } else if named.is_empty() {
        finding(Step::Name, Verdict::Missing, "name_missing", args)
    } else if hits > 0 || astray < named.len() {
        finding(Step::Name, Verdict::Wrong, "name_partly", args)
    } else {
        finding(Step::Name, Verdict::Wrong, "name_wrong", args)
    }
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

pub(super) fn wrong(step: Step, code: &'static str, args: Value) -> Finding {
    finding(step, Verdict::Wrong, code, args)
}

pub(super) fn right(step: Step, code: &'static str) -> Finding {
    finding(step, Verdict::Right, code, json!({}))
}

pub(super) fn missing(step: Step, code: &'static str) -> Finding {
    finding(step, Verdict::Missing, code, json!({}))
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

/// A remark: whether the result can be true of this record. It decides nothing, and is made only of a rate whose every step
/// holds: of any other the step that went wrong has more to tell.
pub(super) fn judge_plausible(rate: f64, length: f64, reference: &Reference) -> Option<Finding> {
    let record = reference.record_rate()?;
    // Who leaves out the beats that may be left out is compared with a record without them.
    let sure: Vec<Peak> = reference.peaks.iter().filter(|p| p.sure).copied().collect();
    let without = interval_rate(&sure, 0.0, reference.duration_s).unwrap_or(record);
    // One count of the window, and a tenth of the rate for its wandering over the record (common practice).
    let near = |record: f64| (rate - record).abs() <= 60.0 / length.max(1.0) + 0.1 * record;
    let code = if near(record) || near(without) { "plausible_yes" } else { "plausible_no" };
    Some(finding(Step::Plausible, Verdict::Note, code, json!({"typed": rate})))
}
