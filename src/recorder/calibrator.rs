//! The calibrator: a square wave of known height and period at the input, by which range, time base and what a filter does to a
//! step can be read off the screen.

use super::settings::{CALIBRATOR_S, CALIBRATOR_V};
use serde::{Deserialize, Serialize};

/// The running square wave, from zero up to [`CALIBRATOR_V`] and back once in [`CALIBRATOR_S`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Calibrator {
    /// Time since the last rise, s.
    at_s: f64,
}

impl Calibrator {
    /// The next values, V, in place of what the block holds.
    pub fn fill(&mut self, block: &mut [f64], rate_hz: f64) {
        for x in block {
            *x = if self.at_s < 0.5 * CALIBRATOR_S { CALIBRATOR_V } else { 0.0 };
            self.at_s += 1.0 / rate_hz;
            if self.at_s >= CALIBRATOR_S {
                self.at_s -= CALIBRATOR_S;
            }
        }
    }
}
