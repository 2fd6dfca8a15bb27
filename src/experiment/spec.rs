//! The `[experiment]` table of a scenario file.

use crate::bench::Change;
use crate::deed::{Action, Measure, Page};
use crate::physiology::Manoeuvre;
use serde::{Deserialize, Serialize};

/// Most conditions of an experiment.
pub const MOST_CONDITIONS: usize = 8;
/// Most rows of its table.
pub const MOST_ROWS: usize = 60;
/// How near a height of the hand must be to count as the one asked for, cm (design default: what one sees at a table).
const SAME_HEIGHT_CM: f64 = 5.0;
/// The same for paced breathing, breaths/min.
const SAME_PACE: f64 = 0.5;

/// An experiment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "ExperimentSpec"))]
#[serde(deny_unknown_fields)]
pub struct Spec {
    /// What is to be found out.
    pub question: String,
    /// What is measured, and predicted, from the first condition to the last.
    pub measures: Vec<Measure>,
    /// Counting windows that are asked for in each condition.
    #[serde(default = "two")]
    pub repeats: u32,
    /// Length of a counting window that is asked for, s.
    #[serde(default = "fifteen")]
    pub window_s: f64,
    /// Reasons to choose from; others may be typed.
    #[serde(default)]
    pub reasons: Vec<String>,
    /// Whether the heart rates of the last condition are fitted as a recovery: one exponential towards the first condition.
    #[serde(default)]
    pub recovery: bool,
    /// What is compared, in order.
    pub condition: Vec<Condition>,
}

/// A condition.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Condition {
    /// Its name in logs: small letters, digits, hyphens.
    pub id: String,
    /// Its name for the student.
    pub label: String,
    /// What begins it: steps as in a scripted attempt, any one of which does.
    #[serde(default)]
    pub begins: Vec<serde_json::Value>,
    /// Whether the bench is found in it.
    #[serde(default)]
    pub at_start: bool,
    /// Where a counting window may begin, s after the condition began; at the start of the bench it may at once.
    #[serde(default)]
    pub from_s: f64,
    /// Where it must end, s after the condition began.
    #[serde(default = "hour")]
    pub to_s: f64,
}

fn two() -> u32 {
    2
}

fn fifteen() -> f64 {
    15.0
}

fn hour() -> f64 {
    3600.0
}

/// What is wrong with a table: field, what stands there, what was expected.
pub type Wrong = (String, String, String);

impl Spec {
    /// Checks the table.
    pub fn check(&self) -> Result<(), Wrong> {
        text("question", &self.question, 300)?;
        let n = self.measures.len();
        let twice = (1..n).any(|k| self.measures[..k].contains(&self.measures[k]));
        if n == 0 || twice {
            let found = self.measures.iter().map(|m| m.name()).collect::<Vec<_>>().join(", ");
            return Err((
                "measures".into(),
                found,
                "one or more of rate, amplitude, swing, each once".into(),
            ));
        }
        if !(1..=6).contains(&self.repeats) {
            return Err(("repeats".into(), self.repeats.to_string(), "1 to 6".into()));
        }
        number("window_s", self.window_s, 5.0, 120.0)?;
        if self.reasons.len() > 8 {
            return Err(("reasons".into(), self.reasons.len().to_string(), "at most 8".into()));
        }
        for (k, reason) in self.reasons.iter().enumerate() {
            text(&format!("reasons[{k}]"), reason, 160)?;
        }
        if !(2..=MOST_CONDITIONS).contains(&self.condition.len()) {
            let expected = format!("2 to {MOST_CONDITIONS} conditions");
            return Err(("condition".into(), self.condition.len().to_string(), expected));
        }
        for (k, condition) in self.condition.iter().enumerate() {
            let ids = &self.condition[..k];
            condition.check(k, self.window_s, ids.iter().any(|other| other.id == condition.id))?;
        }
        if self.condition.iter().filter(|c| c.at_start).count() > 1 {
            return Err(("condition".into(), "several at_start".into(), "at most one at_start".into()));
        }
        Ok(())
    }

    /// The number of a condition.
    pub fn number(&self, id: &str) -> Option<usize> {
        self.condition.iter().position(|c| c.id == id)
    }

    /// The condition that an action begins.
    pub fn begun_by(&self, action: &Action) -> Option<usize> {
        self.condition.iter().position(|c| c.deeds().any(|deed| same(&deed, action)))
    }
}

impl Condition {
    /// The actions that begin it.
    pub fn deeds(&self) -> impl Iterator<Item = Action> + '_ {
        self.begins.iter().filter_map(|step| Action::from_value(step.clone()).ok())
    }

    fn check(&self, k: usize, window_s: f64, twice: bool) -> Result<(), Wrong> {
        let here = |field: &str| format!("condition[{k}].{field}");
        let known = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if !(1..=40).contains(&self.id.len()) || !self.id.bytes().all(known) || twice {
            let expected = "1 to 40 small letters, digits and hyphens, each id once".to_string();
            return Err((here("id"), format!("\"{}\"", self.id), expected));
        }
        text(&here("label"), &self.label, 60)?;
        if self.begins.is_empty() && !self.at_start {
            return Err((here("begins"), "nothing".into(), "at least one step, or at_start = true".into()));
        }
        for (n, step) in self.begins.iter().enumerate() {
            let field = here(&format!("begins[{n}]"));
            let action = Action::from_value(step.clone())
                .map_err(|e| (field.clone(), step.to_string(), format!("a step that can be done: {e}")))?;
            if let Action::Page(Page::Manoeuvre { what }) = &action {
                let wrong = |e: crate::physiology::SpecError| {
                    (field.clone(), step.to_string(), e.expected.to_string())
                };
                what.check().map_err(wrong)?;
            }
        }
        number(&here("from_s"), self.from_s, 0.0, 3600.0)?;
        number(&here("to_s"), self.to_s, self.from_s + window_s, 3600.0)
    }
}

/// Whether two actions begin the same: a hand about as high, a breath about as fast.
fn same(asked: &Action, done: &Action) -> bool {
    match (asked, done) {
        (Action::Page(Page::Manoeuvre { what: a }), Action::Page(Page::Manoeuvre { what: b })) => {
            match (a, b) {
                (Manoeuvre::PacedBreathing { per_min: a }, Manoeuvre::PacedBreathing { per_min: b }) => {
                    (a - b).abs() <= SAME_PACE
                }
                (Manoeuvre::Exercise { .. }, Manoeuvre::Exercise { .. }) => true,
                (a, b) => a == b,
            }
        }
        (Action::Bench(Change::HandHeight { cm: a }), Action::Bench(Change::HandHeight { cm: b })) => {
            (a - b).abs() <= SAME_HEIGHT_CM
        }
        (a, b) => a == b,
    }
}

fn text(field: &str, text: &str, most: usize) -> Result<(), Wrong> {
    let length = text.trim().chars().count();
    if (1..=most).contains(&length) {
        return Ok(());
    }
    Err((field.into(), format!("{length} characters"), format!("1 to {most} characters")))
}

fn number(field: &str, x: f64, low: f64, high: f64) -> Result<(), Wrong> {
    if (low..=high).contains(&x) {
        return Ok(());
    }
    Err((field.into(), x.to_string(), format!("a number from {low} to {high}")))
}
