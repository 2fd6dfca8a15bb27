//! A rhythm tapped by hand: taps in time with a pulse that is felt.

use serde::{Deserialize, Serialize};

/// Most taps that are kept.
pub const MOST_TAPS: usize = 10_000;
/// Usual standard deviation of a single tap about the beat that it follows, in seconds. Design default.
const TAP_S: f64 = 0.03;
/// An interval from this part of the median on holds a beat that was not tapped.
const MISSED: f64 = 1.6;
/// An interval below this part of the median ends with a tap too many.
const DOUBLED: f64 = 0.6;

/// Taps in the order in which they came.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taps {
    at_s: Vec<f64>,
}

/// What the taps of a stretch come to.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Sum {
    /// Number of taps.
    pub n: usize,
    /// Intervals a minute from the first tap to the last; nothing for fewer than two taps.
    pub rate_bpm: Option<f64>,
    /// How far the rate may be off, in beats a minute: twice what single taps scatter over the time between first and
    /// last, and a beat for each tap missed or doubled.
    pub uncertainty_bpm: Option<f64>,
    /// Times between taps, in ms.
    pub intervals_ms: Vec<f64>,
    /// Their mean, in ms.
    pub mean_ms: Option<f64>,
    /// Their standard deviation (n - 1), in ms; nothing for fewer than two intervals.
    pub sd_ms: Option<f64>,
    /// Beats that seem not to have been tapped: intervals of about twice the median, or more.
    pub missed: usize,
    /// Taps too many: intervals of about half the median, or less.
    pub doubled: usize,
}

impl Taps {
    /// Adds a tap, at a time in seconds; one that is not later than the last is no tap, `false` then.
    pub fn tap(&mut self, t_s: f64) -> bool {
        let later = t_s.is_finite() && self.at_s.last().is_none_or(|last| t_s > *last);
        let taken = later && self.at_s.len() < MOST_TAPS;
        if taken {
            self.at_s.push(t_s);
        }
        taken
    }

    /// Takes the last tap back.
    pub fn undo(&mut self) {
        self.at_s.pop();
    }

    /// Times of all taps, in seconds.
    pub fn at_s(&self) -> &[f64] {
        &self.at_s
    }

    /// What the taps from `from_s` to `to_s` come to, both ends included.
    pub fn sum(&self, from_s: f64, to_s: f64) -> Sum {
        let at: Vec<f64> = self.at_s.iter().copied().filter(|t| (from_s..=to_s).contains(t)).collect();
        let intervals: Vec<f64> = at.windows(2).map(|w| w[1] - w[0]).collect();
        let count = intervals.len() as f64;
        let mut sum = Sum {
            n: at.len(),
            intervals_ms: intervals.iter().map(|v| 1000.0 * v).collect(),
            ..Sum::default()
        };
        if intervals.is_empty() {
            return sum;
        }
        let mut sorted = intervals.clone();
        let middle = sorted.len() / 2;
        let median = *sorted.select_nth_unstable_by(middle, f64::total_cmp).1;
        for interval in &intervals {
            let beats = interval / median;
            sum.missed += if beats >= MISSED { beats.round() as usize - 1 } else { 0 };
            sum.doubled += usize::from(beats < DOUBLED);
        }
        let time = at[at.len() - 1] - at[0];
        let mean = time / count;
        let scatter = intervals.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>();
        let sd = (count >= 2.0).then(|| (scatter / (count - 1.0)).sqrt());
        let rate = 60.0 / mean;
        // First and last tap each scatter, so the time between them does as one interval does.
        let one = sd.unwrap_or(0.0).max(core::f64::consts::SQRT_2 * TAP_S);
        let wrong = (sum.missed + sum.doubled) as f64;
        sum.rate_bpm = Some(rate);
        sum.uncertainty_bpm = Some(2.0 * one / time * rate + 60.0 * wrong / time);
        sum.mean_ms = Some(1000.0 * mean);
        sum.sd_ms = sd.map(|sd| 1000.0 * sd);
        sum
    }
}

/// A silent count: beats counted in a time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Count {
    /// Beats a minute.
    pub rate_bpm: f64,
    /// What one beat more or less would make, in beats a minute.
    pub step_bpm: f64,
}

/// What a count of `n` beats in `seconds` comes to; `None` where the time is not above zero.
pub fn count(n: u32, seconds: f64) -> Option<Count> {
    (seconds.is_finite() && seconds > 0.0)
        .then(|| Count { rate_bpm: 60.0 * f64::from(n) / seconds, step_bpm: 60.0 / seconds })
}
