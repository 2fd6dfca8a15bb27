//! What an instructor writes beside the built-in misreadings and hints: signatures of their own, with their own words, and words in
//! the place of built-in ones. The words go to the page as they are and are nobody else's; in them may stand what the built-in
//! words never tell. `check` refuses what cannot be: whoever sets a bench meets it, in the page and on the command line; the
//! page's first core, which is a student's, goes without it and only [counts](counted).

#[cfg(feature = "desk")]
mod check;

#[cfg(feature = "desk")]
pub use check::{MOST_NAME, MOST_WORDS, check};

use super::expression::{self, Numbers};
use super::hint::Rung;
use super::verdict::Step;
use crate::deed::Field;
use serde::{Deserialize, Serialize};

/// Most misreadings of a scenario's own.
pub const MOST_MISREADINGS: usize = 12;
/// Most hints of a scenario's own.
pub const MOST_HINTS: usize = 40;

/// Where in a scenario something of these cannot be: the field's path, what stands there, what was expected.
pub type Wrong = (String, String, String);

/// Refuses more of them than there may be: every core counts, so that nobody works at a bench whose results no other core reads.
pub fn counted(misreadings: &[OwnMisreading], hints: &[OwnHint]) -> Result<(), Wrong> {
    for (list, n, most) in
        [("misreading", misreadings.len(), MOST_MISREADINGS), ("hint", hints.len(), MOST_HINTS)]
    {
        if n > most {
            return Err((list.into(), format!("{n} of them"), format!("at most {most}")));
        }
    }
    Ok(())
}

/// What stands before the name of an own misreading wherever it stands beside built-in ones.
pub const PREFIX: &str = "own-";

/// A misreading of the instructor's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnMisreading {
    /// A short name, under which it is counted: small letters, digits and `_`.
    pub name: String,
    /// The answer that it shows in: `count`, `seconds`, `multiplier` or `rate`.
    pub field: Field,
    /// The wrong number as a formula of `n`, `t`, `multiplier` and `rate` (as typed), `n_true`, `t_true` and `rate_true` (the true
    /// values in the student's own counting window), numbers, `+ - * /` and brackets.
    pub formula: String,
    /// How far the answer may be from it, in the answer's own unit; 0.5 for count and rate, 0.05 for the others when absent.
    #[serde(default)]
    pub tolerance: Option<f64>,
    /// What the student is told.
    pub words: String,
}

/// A hint of the instructor's own, in the place of the built-in words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnHint {
    /// A step of the result, or a topic of the hints; a topic goes before its step.
    pub about: String,
    /// Which hint: `look`, `locate`, `rule` or `worked`. The answer is the program's.
    pub rung: Rung,
    /// What the student is told.
    pub words: String,
}

/// An answer that an own misreading can show in, with its step.
const SHOWN_IN: [(Field, Step); 4] = [
    (Field::Count, Step::Count),
    (Field::Seconds, Step::Seconds),
    (Field::Multiplier, Step::Multiplier),
    (Field::Rate, Step::Rate),
];

impl OwnMisreading {
    /// The step that it explains.
    pub fn step(&self) -> Option<Step> {
        SHOWN_IN.iter().find(|(field, _)| *field == self.field).map(|(_, step)| *step)
    }

    /// How far the answer may be from the formula.
    pub fn within(&self) -> f64 {
        let whole = matches!(self.field, Field::Count | Field::Rate);
        self.tolerance.unwrap_or(if whole { 0.5 } else { 0.05 })
    }

    /// How far an answer is from the formula; `None` beyond the tolerance, and where the formula tells no number.
    pub fn distance(&self, answer: f64, numbers: &Numbers) -> Option<f64> {
        let off = (expression::value(&self.formula, numbers).ok()? - answer).abs();
        (off <= self.within() + 1e-9).then_some(off)
    }
}

impl OwnHint {
    /// Whether it is about this topic, or this step.
    pub fn is_about(&self, name: &str, rung: Rung) -> bool {
        self.rung == rung && self.about == name
    }
}

/// The own words for a hint: those for its topic, or those for its step.
pub fn hint_words<'a>(hints: &'a [OwnHint], topic: &str, step: Step, rung: Rung) -> Option<&'a str> {
    let of = |name: &str| hints.iter().find(|hint| hint.is_about(name, rung));
    of(topic).or_else(|| of(step.name())).map(|hint| hint.words.as_str())
}
