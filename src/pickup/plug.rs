//! A plug that is not pushed home: the signal comes and goes as in a random telegraph.

use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// The plug's contact as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Plug {
    rate_hz: f64,
    stream: Stream,
    /// How badly it sits, 0 (home) to 1 (about to fall out).
    looseness: f64,
    open: bool,
    left_s: f64,
    /// What the sensor's charge adds since the contact closed last, in units of the pulse.
    charge: f64,
}

impl Plug {
    /// A contact with the given looseness, 0 to 1; `name` keys its stream of random numbers.
    pub fn new(rate_hz: f64, looseness: f64, name: &str, seed: u64) -> Self {
        let mut made = Self {
            rate_hz,
            stream: Stream::new(seed, name),
            looseness: 0.0,
            open: false,
            left_s: 0.0,
            charge: 0.0,
        };
        made.set_looseness(looseness);
        made
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// The contact closes: what a piezo sensor has gathered while nothing drew from it stands on the input at once, to the one
    /// side or the other, half a pulse to two (design default), and runs off through the sensor's resistance. The amplifier of a
    /// light sensor, without power meanwhile, starts anew and settles likewise.
    fn close(&mut self) {
        let sign = if self.stream.uniform() < 0.5 { -1.0 } else { 1.0 };
        self.charge = sign * self.stream.range(0.5, 2.0);
    }

    /// It is pushed home.
    pub fn push_home(&mut self) {
        self.set_looseness(0.0);
        self.close();
    }

    /// What the charge adds to the next sample, in units of the pulse; `corner_hz` is that of the sensor's own high-pass.
    pub fn next_charge(&mut self, corner_hz: f64) -> f64 {
        // Cut off before it becomes a number too small for fast arithmetic.
        self.charge = if self.charge.abs() > 1e-9 {
            self.charge * (1.0 - math::TAU * corner_hz / self.rate_hz)
        } else {
            0.0
        };
        self.charge
    }

    /// Whether it does anything to the signal.
    pub fn is_at_work(&self) -> bool {
        self.looseness > 0.0 || self.charge != 0.0
    }

    /// Takes over another looseness; 0 when the plug has been pushed home.
    pub fn set_looseness(&mut self, looseness: f64) {
        self.looseness = looseness;
        self.open = false;
        self.left_s = self.stream.waiting_s(0.5 * looseness);
    }

    /// How badly it sits, 0 to 1.
    pub fn looseness(&self) -> f64 {
        self.looseness
    }

    /// Someone wiggles it: a loose plug opens at once.
    pub fn wiggle(&mut self) {
        if self.looseness > 0.0 {
            self.open = true;
            self.left_s = self.stream.range(0.2, 0.6);
        }
    }

    /// For each sample, whether the contact is open; dwell times average 2 s closed and 0.2 s open at full
    /// looseness (design default).
    pub fn next_open(&mut self) -> bool {
        self.left_s -= 1.0 / self.rate_hz;
        if self.left_s <= 0.0 {
            self.open = !self.open;
            if !self.open {
                self.close();
            }
            let rate = if self.open { 5.0 / (0.3 + 0.7 * self.looseness) } else { 0.5 * self.looseness };
            self.left_s = self.stream.waiting_s(rate);
        }
        self.open
    }
}
