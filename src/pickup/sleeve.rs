//! A sleeve or a watch strap that presses the forearm. The veins are shut first: blood is dammed up in the hand, the fingertip
//! darkens, and less of each beat gets in; the narrowed artery rounds what does. Sizes are design defaults; that a cuff
//! under the diastolic pressure dams up the veins is common practice (venous occlusion, 40 to 60 mmHg).

use crate::math;
use serde::{Deserialize, Serialize};

/// Times over which the hand fills and empties, s.
const FILLS_S: f64 = 40.0;
const EMPTIES_S: f64 = 8.0;
/// Share of the pulse that a full hand loses: under the lightest sleeve that counts, and more under the tightest.
const LOSS: (f64, f64) = (0.55, 0.25);
/// Corner above which the narrowed artery holds the wave back, Hz.
const ROUND_HZ: f64 = 4.0;

/// The pressed forearm as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sleeve {
    rate_hz: f64,
    /// How hard it presses, 0 to 1, until it is pushed up.
    severity: f64,
    tight: bool,
    /// How full the hand is, 0 to 1.
    full: f64,
    smooth: f64,
}

impl Sleeve {
    /// A forearm under a sleeve of the given severity, 0 to 1, worn for a while; 0 is a free one.
    pub fn new(rate_hz: f64, severity: f64) -> Self {
        let tight = severity > 0.0;
        Self { rate_hz, severity, tight, full: if tight { 1.0 } else { 0.0 }, smooth: 0.0 }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// It is pushed up, or the watch is taken off.
    pub fn push_up(&mut self) {
        self.tight = false;
    }

    /// Whether it presses the forearm.
    pub fn is_tight(&self) -> bool {
        self.tight
    }

    /// Whether the fingertip looks dark.
    pub fn dusky(&self) -> bool {
        self.full > 0.5
    }

    /// What is left of the pulse, in place.
    pub fn apply(&mut self, pulse: &mut [f64]) {
        if !self.tight && self.full == 0.0 {
            return;
        }
        let dt = 1.0 / self.rate_hz;
        let (goal, step) = if self.tight { (1.0, dt / FILLS_S) } else { (0.0, dt / EMPTIES_S) };
        let corner = math::TAU * ROUND_HZ * dt;
        let soft = corner / (1.0 + corner);
        let loss = LOSS.0 + LOSS.1 * self.severity;
        for x in pulse {
            self.full += (goal - self.full) * step;
            // Too little to be seen; and numbers smaller still are slow to reckon with.
            if !self.tight && self.full < 1e-6 {
                self.full = 0.0;
            }
            self.smooth += (*x - self.smooth) * soft;
            let round = *x + self.full * (self.smooth - *x);
            *x = round * (1.0 - loss * self.full);
        }
    }
}
