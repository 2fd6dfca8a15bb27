//! How it was measured, judged step by step.
//!
//! - [`asked`]: the verdict; its `judge` is the one that there is
//! - [`kind`]: what is special about each kind of question, one file a kind
//! - `placed`, `heights`, [`uncertainty`]: what a kind asks of the window, of heights, and of how sure a rate is
//! - [`sheet`]: everything that a student has put down
//! - `arithmetic`, `counting`: T, multiplier and rate by what they do to the rate; the count by each right method
//! - [`hint`]: the ladder of hints
//! - [`misreading`]: which well-known misreading explains what was typed
//! - [`own`], [`expression`]: misreadings and hints that the instructor writes, and their formulas
//! - [`parse`]: what was typed, as numbers; parsing is not grading
//! - [`window`]: the beats inside the student's own window, and which counts the window's edges allow
//! - [`process`]: how faults were found and mended
//! - [`rubric`]: twenty points, each with its evidence
//! - [`skill`]: what an attempt says of each skill
//! - [`learner`]: what a row of attempts says of a student, and which bench is next
//! - [`spread`]: how sure a count is, and what other windows would have given
//! - [`task`]: the question, as a scenario lays it down and as a seed settles it
//! - [`trace`]: the stretch that was measured: hum, clipping, size, length
//! - [`verdict`]: the steps in their order, each with a code and its arguments, no prose
//!
//! Three truths are kept apart: the beats in the student's window decide the count, the student's own numbers decide
//! the arithmetic, the whole record decides whether the result is plausible.

mod arithmetic;
pub mod asked;
mod counting;
pub mod expression;
mod heights;
pub mod hint;
pub mod kind;
pub mod learner;
pub mod misreading;
pub mod own;
pub mod parse;
mod placed;
pub mod process;
pub mod range;
pub mod rubric;
pub mod sheet;
pub mod skill;
pub mod spread;
pub mod task;
pub mod trace;
pub mod uncertainty;
pub mod verdict;
pub mod window;

use serde::{Deserialize, Serialize};

/// What a trace and a measurement must reach. Defaults are common practice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Criteria {
    /// Smallest height of the pulse, as a share of the screen.
    pub fill_min: f64,
    /// Largest height of the pulse, as a share of the screen.
    pub fill_max: f64,
    /// Largest hum, peak to peak, as a share of the pulse.
    pub hum_ratio: f64,
    /// Lowest quality of the counting window, 0 to 1 (design default).
    pub quality_min: f64,
    /// Largest share of samples at the ends of the range.
    pub clip_share: f64,
    /// Shortest recording, s.
    pub record_s: f64,
    /// Shortest counting window, s.
    pub window_s: f64,
    /// A beat this near to a cursor may be counted or not, s.
    pub edge_s: f64,
}

impl Default for Criteria {
    fn default() -> Self {
        Self {
            fill_min: 0.3,
            fill_max: 0.8,
            hum_ratio: 0.1,
            quality_min: 0.3,
            clip_share: 0.0,
            record_s: 15.0,
            window_s: 15.0,
            edge_s: 0.06,
        }
    }
}

impl Criteria {
    /// Names the first value that makes no sense, with what was expected.
    pub fn check(&self) -> Result<(), (&'static str, &'static str)> {
        let share = |v: f64| v.is_finite() && (0.0..=1.0).contains(&v);
        for (field, value) in [
            ("fill_min", self.fill_min),
            ("fill_max", self.fill_max),
            ("clip_share", self.clip_share),
            ("quality_min", self.quality_min),
            ("edge_s", self.edge_s),
        ] {
            if !share(value) {
                return Err((field, "a number from 0 to 1"));
            }
        }
        if self.fill_min >= self.fill_max {
            return Err(("fill_max", "a number above fill_min"));
        }
        if !(self.hum_ratio.is_finite() && (0.0..=10.0).contains(&self.hum_ratio)) {
            return Err(("hum_ratio", "a number from 0 to 10"));
        }
        for (field, value) in [("record_s", self.record_s), ("window_s", self.window_s)] {
            if !(value.is_finite() && (1.0..=3600.0).contains(&value)) {
                return Err((field, "a number of seconds from 1 to 3600"));
            }
        }
        Ok(())
    }
}
