//! How the finger's pulse reaches the sensor: the tissue, the sensor's head and what it is coupled by.
//!
//! Two things of a device change the form of a pulse whatever its principle. What it does at short times is
//! **smoothing**: skin, paste and strap give way, an optical sensor averages over its frames. Many small delays in a row
//! come to a bell in time (central limit), and a bell smoothed by a bell is a bell, so it is exact and costs nothing in a
//! wave that is made of bells. What it does at long times is **coupling**: strap and cushion creep, an amplifier passes
//! no steady level; both are a first-order high-pass.

use super::subject::SubjectSpec;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// What lies between the finger's volume and the sensor's signal.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Touch {
    /// Standard deviation of the bell that smooths, s; 0 smooths nothing.
    pub smoothing_s: f64,
    /// Corner of the coupling, Hz; 0 passes the steady level too.
    pub coupling_hz: f64,
}

impl Touch {
    /// Width of a bell of `width_s` behind the smoothing, s, and what becomes of its height (its area stays).
    pub fn smoothed(&self, width_s: f64) -> (f64, f64) {
        if self.smoothing_s == 0.0 {
            return (width_s, 1.0);
        }
        let wide = (width_s * width_s + self.smoothing_s * self.smoothing_s).sqrt();
        (wide, width_s / wide)
    }

    /// Angular corner of the coupling, 1/s.
    pub fn coupling_per_s(&self) -> f64 {
        math::TAU * self.coupling_hz
    }

    /// What the coupling leaves of one period of a steady wave, in place; the mean becomes 0. `step_s` apart.
    pub fn couple_period(&self, y: &mut [f64], step_s: f64) {
        let w = self.coupling_per_s();
        if w == 0.0 {
            return;
        }
        let (keep, gain) = (math::exp(-w * step_s), 0.5 * w * step_s);
        let last = y[y.len() - 1];
        let step = |(low, before): (f64, f64), x: f64| (keep * low + gain * (keep * before + x), x);
        // The low-passed level after a period is that of one period from nothing and what is left of its start.
        let (end, _) = y.iter().fold((0.0, last), |s, x| step(s, *x));
        let start = end / (1.0 - math::exp(-w * step_s * y.len() as f64));
        let mut state = (start, last);
        for x in y {
            state = step(state, *x);
            *x -= state.0;
        }
    }
}

/// How the touch of one kind of sensor differs from one to the next: medians, and spreads as standard deviations of the
/// logarithm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Smoothing, s.
    pub smoothing_s: (f64, f64),
    /// Corner of the coupling, Hz.
    pub coupling_hz: (f64, f64),
}

impl Spread {
    /// The touch of the sensor that stands at the bench under `seed`; what is given is taken.
    pub fn draw(&self, given: &SubjectSpec, seed: u64) -> Touch {
        let mut s = Stream::new(seed, "physiology.touch");
        let mut one = |(median, spread): (f64, f64)| median * math::exp(spread * s.normal().clamp(-2.0, 2.0));
        let (smoothing_s, coupling_hz) = (one(self.smoothing_s), one(self.coupling_hz));
        Touch {
            smoothing_s: given.smoothing_ms.map_or(smoothing_s, |ms| 1e-3 * ms),
            coupling_hz: given.coupling_hz.unwrap_or(coupling_hz),
        }
    }
}
