//! Why no rate is shown.

use core::fmt;
use serde::{Deserialize, Serialize};

/// Why no rate is shown for a stretch. Where several are true the first of this order that can be acted on is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Refusal {
    /// Frames are missing for longer than a beat may last, or come too rarely to draw a pulse.
    Gap,
    /// Hardly any light comes through.
    TooDark,
    /// Every color stands at the top of its range.
    TooBright,
    /// What the camera sees is no finger, or the finger left it.
    NoFinger,
    /// The light changes by more than a pulse can: the finger slides, presses or lifts, or the camera adjusts itself.
    Moving,
    /// What repeats is too small in what does not.
    Weak,
    /// The intervals between beats do not hold together.
    Unsteady,
    /// Beats and spectrum tell different rates.
    Disagree,
}

/// All reasons, in the order in which they are told.
pub const REFUSALS: [Refusal; 8] = [
    Refusal::Gap,
    Refusal::TooDark,
    Refusal::TooBright,
    Refusal::NoFinger,
    Refusal::Moving,
    Refusal::Weak,
    Refusal::Unsteady,
    Refusal::Disagree,
];

impl Refusal {
    /// The word that stands in tables for it; words for people live in the page.
    pub fn code(self) -> &'static str {
        match self {
            Self::Gap => "gap",
            Self::TooDark => "too_dark",
            Self::TooBright => "too_bright",
            Self::NoFinger => "no_finger",
            Self::Moving => "moving",
            Self::Weak => "weak",
            Self::Unsteady => "unsteady",
            Self::Disagree => "disagree",
        }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}
