//! An estimate with its uncertainty on the logit scale.

use crate::math;
use serde::Serialize;

/// Where everybody begins: one in three has a skill without having been seen (design default; between the 0.1 and 0.6 of
/// tutors for algebra and programming, Corbett & Anderson 1995).
pub const START: Belief = Belief { mean: -0.4, var: 2.6 };
/// Most that one occasion is taken for, either way, logits.
const FARTHEST: f64 = 5.0;
/// How far the lower and the upper end of a range lie from the mean, standard deviations (a one-sided 90 %).
pub const ENDS: f64 = 1.2816;

/// A normal distribution of a trait.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Belief {
    /// Mean, logits.
    pub mean: f64,
    /// Variance.
    pub var: f64,
}

impl Default for Belief {
    fn default() -> Self {
        START
    }
}

impl Belief {
    /// Probability of a right step for who does not know (`guess`) and who slips (`slip`).
    pub fn foresees(self, guess: f64, slip: f64) -> f64 {
        guess + (1.0 - guess - slip) * self.share()
    }

    /// The same, and how it changes with the mean.
    fn expects(self, guess: f64, slip: f64) -> (f64, f64) {
        let known = self.share();
        (self.foresees(guess, slip), (1.0 - guess - slip) * known * (1.0 - known))
    }

    /// The mean of the logistic function over the distribution (MacKay's approximation, Neural Comput 1992, 4:720).
    pub fn share(self) -> f64 {
        math::logistic(self.mean / (1.0 + core::f64::consts::PI * self.var / 8.0).sqrt())
    }

    /// The lower and the upper end as shares.
    pub fn ends(self) -> [f64; 2] {
        let sd = self.var.sqrt();
        [math::logistic(self.mean - ENDS * sd), math::logistic(self.mean + ENDS * sd)]
    }

    /// What a judged step tells: one step of Newton's method on its likelihood, weighed (`weight` 0 to 1). A right one never
    /// lowers the mean, a wrong one never raises it, and both make surer.
    pub fn seen(self, right: bool, guess: f64, slip: f64, weight: f64) -> Self {
        let (expected, slope) = self.expects(guess, slip);
        let odds = expected * (1.0 - expected);
        let var = 1.0 / (1.0 / self.var + weight * slope * slope / odds);
        let off = if right { 1.0 - expected } else { -expected };
        let mean = self.mean + weight * var * off * slope / odds;
        Self { mean: mean.clamp(-FARTHEST, FARTHEST), var }
    }

    /// How much of the variance one such step would take away, 0 to 1.
    pub fn tells(self, guess: f64, slip: f64) -> f64 {
        let (expected, slope) = self.expects(guess, slip);
        let gained = self.var * slope * slope / (expected * (1.0 - expected));
        gained / (1.0 + gained)
    }

    /// What an attempt teaches: the mean goes up by at most `gain`, the less the more is known, and it is less sure.
    pub fn taught(self, gain: f64, unsure: f64) -> Self {
        Self {
            mean: (self.mean + gain * (1.0 - self.share())).min(FARTHEST),
            var: (self.var + unsure).min(START.var),
        }
    }

    /// After `days` without: half of what is known is gone after `half_days`. Nobody sinks below the start by waiting, and
    /// nobody who is below it gains.
    pub fn after(self, days: f64, half_days: f64) -> Self {
        // How the share changes as it begins to fade: where it would rise, for who knows little and is sure of it, nothing fades.
        let curved = core::f64::consts::PI / 8.0;
        let sinks = (self.mean - START.mean) * (1.0 + curved * self.var)
            + 0.5 * curved * (START.var - self.var) * self.mean;
        if self.mean <= START.mean || sinks <= 0.0 {
            return self;
        }
        let kept = math::pow(0.5, days.max(0.0) / half_days);
        Self {
            mean: START.mean + (self.mean - START.mean) * kept,
            var: START.var - (START.var - self.var) * kept,
        }
    }
}
