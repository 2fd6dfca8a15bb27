//! Step 4: the most believable sequence of candidates.

use super::candidates::Candidate;
use super::period::Periods;
use crate::math;

/// A rise of this part of the local pulse size speaks neither for nor against a beat.
const EVEN_RISE: f64 = 0.37;
/// Weight of the logarithm of the rise.
const RISE_WEIGHT: f64 = 2.5;
/// Standard deviation of the logarithm of an interval about that of the local period.
const INTERVAL_SPREAD: f64 = 0.2;
/// Most that an interval can cost: beats may come early or be missing.
const INTERVAL_COST: f64 = 1.2;

/// Indices of the chosen candidates.
pub(super) fn best(found: &[Candidate], periods: &Periods) -> Vec<usize> {
    let mut score: Vec<f64> = Vec::with_capacity(found.len());
    let mut from: Vec<usize> = Vec::with_capacity(found.len());
    // Best of all candidates that lie too far back to be looked at one by one.
    let mut far: Option<usize> = None;
    let mut oldest = 0;
    for (j, c) in found.iter().enumerate() {
        let period = periods.at(c.at);
        let weight = period.clarity * period.clarity;
        let own = RISE_WEIGHT * math::ln((c.rise / EVEN_RISE).max(0.05)).min(1.0);
        while found[oldest].at < c.at - 3.0 * period.samples {
            if far.is_none_or(|f| score[oldest] > score[f]) {
                far = Some(oldest);
            }
            oldest += 1;
        }
        let (mut value, mut source) = match far {
            Some(f) => (score[f] - INTERVAL_COST, f),
            None => (0.0, usize::MAX),
        };
        for i in oldest..j {
            let ratio = (c.at - found[i].at) / period.samples;
            if ratio < 0.35 {
                break;
            }
            let z = math::ln(ratio) / INTERVAL_SPREAD;
            let cost = (0.5 * z * z * weight).min(INTERVAL_COST);
            if score[i] - cost > value {
                (value, source) = (score[i] - cost, i);
            }
        }
        score.push(value + own);
        from.push(source);
    }
    let mut at = (0..found.len()).max_by(|a, b| score[*a].total_cmp(&score[*b])).unwrap_or(usize::MAX);
    let mut path = Vec::new();
    while at != usize::MAX {
        path.push(at);
        at = from[at];
    }
    path.reverse();
    path
}
