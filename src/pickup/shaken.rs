//! A table that is shaken: steps beside it and hands that type on it come in runs, each a thump that the table answers with a
//! short swing, and the hand that lies on it swings along. A cushion under the arm keeps nearly all of it away. Sizes are design
//! defaults in units of the best pulse.

use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Swing of a table top: frequency, Hz, and damping ratio (design default; furniture lies between 10 and 20 Hz).
const SWING_HZ: f64 = 14.0;
const DAMPING: f64 = 0.12;
/// Thumps a second in a run, thumps in a run and pauses between runs, s.
const THUMPS: (f64, f64) = (1.7, 3.2);
const RUN: (f64, f64) = (3.0, 9.0);
const PAUSE_S: (f64, f64) = (0.8, 3.0);
/// Height of a thump at full severity.
const HEIGHT: (f64, f64) = (1.5, 4.0);
/// What a cushion lets through.
const CUSHION: f64 = 0.05;

/// The shaken table as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Shaken {
    rate_hz: f64,
    stream: Stream,
    severity: f64,
    cushion: bool,
    /// Seconds until the next thump, seconds between those of this run, and how many are left of it.
    next_s: f64,
    apart_s: f64,
    left: f64,
    /// Place and speed of the swing.
    swing: (f64, f64),
}

impl Shaken {
    /// A table shaken with a severity from 0 to 1.
    pub fn new(rate_hz: f64, severity: f64, seed: u64) -> Self {
        Self {
            rate_hz,
            stream: Stream::new(seed, "shaken"),
            severity,
            cushion: false,
            next_s: 0.0,
            apart_s: 0.5,
            left: 0.0,
            swing: (0.0, 0.0),
        }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// The arm lies on a cushion.
    pub fn lay_on_cushion(&mut self) {
        self.cushion = true;
    }

    /// Whether somebody shakes the table.
    pub fn goes_on(&self) -> bool {
        self.severity > 0.0
    }

    /// Whether the hand feels it.
    pub fn is_felt(&self) -> bool {
        self.goes_on() && !self.cushion
    }

    /// Adds to the sensor's signal in place; `on` tells whether the sensor is on the finger.
    pub fn apply(&mut self, signal: &mut [f64], on: bool) {
        if self.severity == 0.0 {
            return;
        }
        let dt = 1.0 / self.rate_hz;
        let w = math::TAU * SWING_HZ;
        let reach = if !on {
            0.0
        } else if self.cushion {
            CUSHION
        } else {
            1.0
        };
        for x in signal {
            self.next_s -= dt;
            if self.next_s <= 0.0 {
                self.thump(w);
            }
            let force = -w * w * self.swing.0 - 2.0 * DAMPING * w * self.swing.1;
            self.swing.1 += force * dt;
            self.swing.0 += self.swing.1 * dt;
            *x += reach * self.swing.0;
        }
    }

    fn thump(&mut self, w: f64) {
        if self.left < 1.0 {
            self.left = self.stream.range(RUN.0, RUN.1);
            self.apart_s = 1.0 / self.stream.range(THUMPS.0, THUMPS.1);
        }
        self.left -= 1.0;
        let height = self.severity * self.stream.range(HEIGHT.0, HEIGHT.1);
        // A blow gives speed; the first swing is about so tall.
        self.swing.1 += 1.2 * height * w;
        self.next_s = if self.left < 1.0 {
            self.stream.range(PAUSE_S.0, PAUSE_S.1)
        } else {
            self.apart_s * self.stream.range(0.9, 1.1)
        };
    }
}
