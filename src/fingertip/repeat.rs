//! After which time a stretch is most like itself: the rate without looking at single beats.

use super::even::RATE_HZ;
use crate::math;
use crate::measure::detect::{FASTEST_BPM, SLOWEST_BPM};

/// What repeats after T repeats after 2 T as well; of equals the shorter is meant. Cost of `ln` of the lag, that of the
/// detector's periods.
const LENGTH_COST: f64 = 0.15;

/// A stretch's own repetition.
#[derive(Clone, Copy, Debug)]
pub(super) struct Repeat {
    /// The time after which it repeats, in seconds.
    pub period_s: f64,
}

/// Looks for the lag at which the autocorrelation (the spectrum's transform) has its best maximum: one that shows at
/// twice the lag too, because a heart goes on. `None` where nothing has a maximum.
pub(super) fn repeat(x: &[f64]) -> Option<Repeat> {
    let shortest = (60.0 / FASTEST_BPM * RATE_HZ) as usize;
    let longest = (60.0 / SLOWEST_BPM * RATE_HZ).ceil() as usize;
    let r: Vec<f64> = (0..=2 * longest + 2).map(|lag| alike_after(x, lag)).collect();
    let mut best: Option<(f64, usize)> = None;
    for lag in shortest..=longest {
        if r[lag] < r[lag - 1] || r[lag] < r[lag + 1] {
            continue;
        }
        let twice = r[2 * lag - 2..=2 * lag + 2].iter().copied().fold(-1.0, f64::max);
        let score = 0.5 * (r[lag] + twice) - LENGTH_COST * math::ln(lag as f64 / shortest as f64);
        if best.is_none_or(|(most, _)| score > most) {
            best = Some((score, lag));
        }
    }
    let (_, lag) = best?;
    let (before, here, after) = (r[lag - 1], r[lag], r[lag + 1]);
    let bend = before - 2.0 * here + after;
    let shift = if bend < 0.0 { 0.5 * (before - after) / bend } else { 0.0 };
    Some(Repeat { period_s: (lag as f64 + shift) / RATE_HZ })
}

/// Correlation of a stretch with itself a lag later, -1 to 1; 0 where nothing is left to compare.
pub(super) fn alike_after(x: &[f64], lag: usize) -> f64 {
    let (Some(early), Some(late)) = (x.len().checked_sub(lag).and_then(|n| x.get(..n)), x.get(lag..)) else {
        return 0.0;
    };
    let (mut both, mut one, mut other) = (0.0, 0.0, 0.0);
    for (a, b) in early.iter().zip(late) {
        both += a * b;
        one += a * a;
        other += b * b;
    }
    if one > 0.0 && other > 0.0 { both / (one * other).sqrt() } else { 0.0 }
}
