//! Two rates of one person, measured one after the other or in two ways.

use serde::{Deserialize, Serialize};

/// How two rates compare.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Compared {
    /// How far they are apart, in beats a minute.
    pub difference_bpm: f64,
    /// Whether that is no more than both may be off, one upward and the other downward.
    pub within: bool,
}

/// Compares two rates, each with how far it may be off, all in beats a minute.
pub fn compare(one: f64, one_off: f64, other: f64, other_off: f64) -> Compared {
    let difference_bpm = (one - other).abs();
    Compared { difference_bpm, within: difference_bpm <= one_off + other_off }
}
