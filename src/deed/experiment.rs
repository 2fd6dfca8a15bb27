//! What an experiment asks for and what is said of it.

use serde::{Deserialize, Serialize};

/// What is measured in a counting window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// Heart rate, beats/min.
    Rate,
    /// Mean height of a beat from foot to peak, mV.
    Amplitude,
    /// How far the beat intervals swing, ms.
    Swing,
}

/// All measures.
pub const MEASURES: [Measure; 3] = [Measure::Rate, Measure::Amplitude, Measure::Swing];

impl Measure {
    /// Its name in logs, files and views.
    pub fn name(self) -> &'static str {
        match self {
            Self::Rate => "rate",
            Self::Amplitude => "amplitude",
            Self::Swing => "swing",
        }
    }
}

/// What becomes of a measure from the first condition to the last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// It rises.
    Up,
    /// It falls.
    Down,
    /// Expected: it stays. Concluded: there is no difference that these data can show.
    Same,
}
