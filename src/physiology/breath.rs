//! The breathing movement.
//!
//! A breath is an inspiration of two fifths of its period and an expiration of three fifths, each a half cosine.
//! Period and depth are drawn anew for every breath. Depth reaches its new value smoothly, so the movement never
//! jumps.

use super::TICK_S;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Share of the breath spent breathing in.
const INSPIRATION: f64 = 0.4;

/// How the subject is breathing at the moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pattern {
    /// Breaths a minute.
    pub per_min: f64,
    /// Depth, in units of the depth at quiet rest; 0 holds the breath.
    pub depth: f64,
    /// Relative standard deviation of period and depth from breath to breath.
    pub irregularity: f64,
}

/// The state of the breathing movement.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Breathing {
    phase: f64,
    depth: f64,
    period_factor: f64,
    depth_factor: f64,
    stream: Stream,
}

/// The movement at one tick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    /// Chest excursion around its mean: -0.5 breathed out to +0.5 breathed in, times the depth.
    pub chest: f64,
    /// Breaths a minute of the breath under way.
    pub per_min: f64,
}

impl Breathing {
    /// Breathing quietly, somewhere in a breath.
    pub fn new(seed: u64) -> Self {
        let mut stream = Stream::new(seed, "physiology.breath");
        Self { phase: stream.uniform(), depth: 1.0, period_factor: 1.0, depth_factor: 1.0, stream }
    }

    /// Goes on by one tick under `pattern`.
    pub fn tick(&mut self, pattern: Pattern) -> Movement {
        let per_min = pattern.per_min / self.period_factor;
        self.phase += per_min / 60.0 * TICK_S;
        if self.phase >= 1.0 {
            self.phase -= 1.0;
            let (a, b) = (self.stream.normal(), self.stream.normal());
            self.period_factor = (1.0 + pattern.irregularity * a).clamp(0.5, 2.0);
            self.depth_factor = (1.0 + 1.5 * pattern.irregularity * b).clamp(0.3, 2.5);
        }
        // Depth follows within about a second: a breath can be stopped or deepened, but not at once.
        self.depth += (pattern.depth * self.depth_factor - self.depth) * (TICK_S / 0.8);
        let half = if self.phase < INSPIRATION {
            -math::cos(math::PI * self.phase / INSPIRATION)
        } else {
            math::cos(math::PI * (self.phase - INSPIRATION) / (1.0 - INSPIRATION))
        };
        Movement { chest: 0.5 * half * self.depth, per_min }
    }

    /// Makes the next breath begin now (a deep breath on command starts with breathing in).
    pub fn begin_breath(&mut self) {
        // Breathing in and breathing out pass through the same excursions, so change over at an equal one.
        if self.phase >= INSPIRATION {
            let out = (self.phase - INSPIRATION) / (1.0 - INSPIRATION);
            self.phase = INSPIRATION * (1.0 - out);
        }
        self.period_factor = 1.0;
        self.depth_factor = 1.0;
    }
}

/// Gain of the respiratory arrhythmia at a breathing rate, relative to very slow breathing.
///
/// Hirsch & Bishop 1981 (Am J Physiol 241:H620): flat below a corner at 7.2 breaths/min, then a roll-off of
/// 21 dB/decade; a first-order roll-off raised to 21/20.
pub fn arrhythmia_gain(per_min: f64) -> f64 {
    let x = per_min / 7.2;
    math::pow(1.0 + x * x, -0.5 * 21.0 / 20.0)
}
