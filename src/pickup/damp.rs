//! A damp or dirty plug: a leak across the input. The leak drains the sensor's charge, so that the corner of its high-pass,
//! `1 / (2 pi R C)`, rises with the smaller resistance and the slow part of the pulse is lost; and the wet contact is a small,
//! unsteady battery. Resistances and voltages are design defaults.

use super::sensor::parallel;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Resistance of a little damp, ohm, and by what it falls at the full severity.
const LEAK_OHM: f64 = 4e6;
const WORSE: f64 = 3.0;
/// Spread of the contact's voltage, V: at the least severity, and more at the greatest; and the time over which it wanders, s.
const WANDER_V: (f64, f64) = (0.4e-3, 0.6e-3);
const WANDER_S: f64 = 1.5;

/// The leak as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Damp {
    rate_hz: f64,
    stream: Stream,
    ohm: Option<f64>,
    spread_v: f64,
    level_v: f64,
}

impl Damp {
    /// A plug as damp as `severity` says, 0 (dry) to 1.
    pub fn new(rate_hz: f64, severity: f64, seed: u64) -> Self {
        Self {
            rate_hz,
            stream: Stream::new(seed, "damp"),
            ohm: (severity > 0.0).then(|| LEAK_OHM * math::pow(WORSE, -severity)),
            spread_v: WANDER_V.0 + WANDER_V.1 * severity,
            level_v: 0.0,
        }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// The plug is wiped dry.
    pub fn dry(&mut self) {
        self.ohm = None;
    }

    /// Whether it leaks.
    pub fn leaks(&self) -> bool {
        self.ohm.is_some()
    }

    /// Resistance across a sensor of `ohm` with the leak beside it, ohm.
    pub fn beside(&self, ohm: f64) -> f64 {
        self.ohm.map_or(ohm, |leak| parallel(ohm, leak))
    }

    /// Adds the contact's own voltage to the input in place, V.
    pub fn add(&mut self, signal: &mut [f64]) {
        if self.ohm.is_none() {
            return;
        }
        let dt = 1.0 / self.rate_hz;
        let (back, push) = (dt / WANDER_S, self.spread_v * (2.0 * dt / WANDER_S).sqrt());
        for x in signal {
            self.level_v += push * self.stream.noise() - self.level_v * back;
            *x += self.level_v;
        }
    }
}
