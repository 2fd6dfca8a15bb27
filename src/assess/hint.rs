//! The hint ladder: look, locate, rule, worked step, answer (design default; the order of help is that of process feedback, Shute
//! 2008, Rev Educ Res 78:153). What a hint is about is a topic, so that a page has one set of words for codes that ask for the
//! same thing. No rung before the answer holds a number that gives the step away: the worked step has numbers of its
//! own.

use super::verdict::{Finding, Step};
use crate::deed::Field;
use crate::plain::json;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A rung of the ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Rung {
    /// What to look at.
    Look,
    /// Where to look.
    Locate,
    /// The rule.
    Rule,
    /// The step worked out on other numbers.
    Worked,
    /// The step's answer.
    Answer,
}

/// All rungs in order.
pub const RUNGS: [Rung; 5] = [Rung::Look, Rung::Locate, Rung::Rule, Rung::Worked, Rung::Answer];

/// A hint.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hint {
    /// The rung.
    pub rung: Rung,
    /// The step that it helps with.
    pub step: Step,
    /// What it is about, for the page to put into words.
    pub code: &'static str,
    /// Numbers for those words.
    pub args: Value,
    /// Where to look: a stretch of time, a cursor, a field.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub locate: Option<Value>,
    /// The instructor's words in the place of the built-in ones.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}

/// All topics.
pub const TOPICS: [&str; 26] = [
    "trace_size",
    "trace_hum",
    "trace_clipped",
    "trace_short",
    "trace_restless",
    "trace_foreign",
    "window_given",
    "window_early",
    "window_features",
    "window_foot_peak",
    "window_overlap",
    "bumps",
    "missed",
    "fence",
    "gaps",
    "seconds_unit",
    "name",
    "window",
    "count",
    "seconds",
    "multiplier",
    "rate",
    "middle",
    "range",
    "amplitude",
    "uncertainty",
];

/// What a finding's hints are about.
pub fn topic(finding: &Finding) -> &'static str {
    match finding.code {
        "trace_small" | "trace_tall" => "trace_size",
        "trace_hum" => "trace_hum",
        "trace_clipped" => "trace_clipped",
        "trace_short" | "trace_none" => "trace_short",
        "trace_restless" | "trace_spike" | "trace_step" | "trace_unlike" => "trace_restless",
        "trace_foreign" => "trace_foreign",
        "window_not_given" => "window_given",
        "window_late" | "window_long" | "window_no_exercise" => "window_early",
        "window_mixed" | "window_other_n" => "window_features",
        "window_not_foot" | "window_not_peak" => "window_foot_peak",
        "window_overlap" => "window_overlap",
        "count_double" => "bumps",
        "count_half" => "missed",
        "count_off_by" => "fence",
        "count_posts" | "count_gaps_short" => "gaps",
        "seconds_unit" => "seconds_unit",
        _ => match finding.step {
            Step::Name => "name",
            Step::Trace => "trace_restless",
            Step::Window | Step::Window1 => "window",
            Step::Count | Step::Count1 => "count",
            Step::Seconds | Step::Seconds1 => "seconds",
            Step::Multiplier => "multiplier",
            Step::Rate | Step::Rate1 => "rate",
            Step::Middle => "middle",
            Step::Range => "range",
            Step::Amplitude => "amplitude",
            Step::Uncertainty => "uncertainty",
            Step::Plausible => "rate",
        },
    }
}

/// The field that a step is about, where it is about one.
pub fn field(step: Step) -> Option<Field> {
    Some(match step {
        Step::Count => Field::Count,
        Step::Count1 => Field::Count1,
        Step::Seconds => Field::Seconds,
        Step::Seconds1 => Field::Seconds1,
        Step::Multiplier => Field::Multiplier,
        Step::Rate => Field::Rate,
        Step::Rate1 => Field::Rate1,
        Step::Middle => Field::Middle,
        Step::Range => Field::Range,
        Step::Amplitude => Field::Amplitude,
        Step::Uncertainty => Field::Uncertainty,
        _ => return None,
    })
}

/// Numbers of an example that is not the student's: in a window whose length differs from theirs, `t` s, there are `n` beats.
pub fn example(own_window_s: Option<f64>) -> Value {
    // Two examples, so that the student's own window is never the one worked out.
    let (n, t) = match own_window_s {
        Some(own) if (own - 12.5).abs() < 2.0 => (27.0, 22.5),
        _ => (17.0, 12.5),
    };
    let k: f64 = 60.0 / t;
    json!({"n": n, "t": t, "k": (k * 100.0).round() / 100.0, "r": (n * k).round(), "u": k.round(), "sd": (4.1 * k).round() / 10.0})
}

/// The rung after `last` for the same topic; none when the next one may not be told yet.
pub fn next(last: Option<Rung>, answers: bool) -> Option<Rung> {
    let k = last.map_or(0, |r| RUNGS.iter().position(|x| *x == r).map_or(0, |k| k + 1));
    RUNGS.get(k).copied().filter(|r| *r != Rung::Answer || answers)
}
