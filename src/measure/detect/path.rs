//! Step 4: the most believable sequence of candidates.
//!
//! The score of a sequence is the sum of its candidates' merits less what its intervals cost; merits may be negative,
//! so that leaving out is always possible. The best sequence is found exactly, by dynamic programming over the
//! candidates (the idea is old: Viterbi 1967).

use super::candidates::Candidate;
use super::period::Periods;
use crate::math;

/// Weight of the logarithm of the rise: a full pulse is worth 2.
const RISE_WEIGHT: f64 = 2.0;
/// A rise of this part of the usual, 1 / e, speaks neither for nor against a beat.
const EVEN_RISE: f64 = 0.37;
/// Standard deviation of the logarithm of an interval about that of the local period: room for breath and for the
/// irregular.
const INTERVAL_SPREAD: f64 = 0.25;
/// Most that an interval can cost for its length. Two such, on both sides of an extra beat, just outweigh the merit
/// of a full pulse: a second wave is not counted, but a row of full pulses is, even where the period was misjudged.
const INTERVAL_COST: f64 = 1.2;
/// Cost of each missing beat, up to one and a half: as much as a full pulse is worth.
const MISSING_COST: f64 = 2.0;
/// Shortest interval as part of the local period.
const SHORTEST: f64 = 0.35;
/// Longest interval that is looked at as part of the local period; beyond it all are alike.
const LONGEST: f64 = 3.0;

/// What a candidate's rise is worth.
pub(super) fn merit(c: &Candidate) -> f64 {
    RISE_WEIGHT * math::ln((c.rise / EVEN_RISE).max(0.05)).min(1.0)
}

/// Indices of the best sequence.
pub(super) fn best(found: &[Candidate], merit: &[f64], periods: &Periods) -> Vec<usize> {
    const NONE: usize = usize::MAX;
    let mut score: Vec<f64> = Vec::with_capacity(found.len());
    let mut from: Vec<usize> = Vec::with_capacity(found.len());
    // Best of all candidates that lie too far back to be looked at one by one.
    let mut far = NONE;
    let mut oldest = 0;
    for (j, c) in found.iter().enumerate() {
        let period = periods.at(c.at);
        let missing = |ratio: f64| MISSING_COST * period.clarity * (ratio - 1.5).clamp(0.0, LONGEST - 1.5);
        while found[oldest].at < c.at - LONGEST * period.samples {
            if far == NONE || score[oldest] > score[far] {
                far = oldest;
            }
            oldest += 1;
        }
        let (mut value, mut source) =
            if far == NONE { (0.0, NONE) } else { (score[far] - INTERVAL_COST - missing(LONGEST), far) };
        for i in (oldest..j).rev() {
            // An interval cannot cost less than nothing.
            if score[i] <= value {
                continue;
            }
            let ratio = (c.at - found[i].at) / period.samples;
            if ratio < SHORTEST {
                continue;
            }
            let z = math::ln(ratio) / INTERVAL_SPREAD;
            let v = score[i] - (0.5 * z * z * period.clarity).min(INTERVAL_COST) - missing(ratio);
            if v > value {
                (value, source) = (v, i);
            }
        }
        score.push(value + merit[j]);
        from.push(source);
    }
    let mut at = (0..found.len()).max_by(|a, b| score[*a].total_cmp(&score[*b])).unwrap_or(NONE);
    let mut path = Vec::new();
    while at != NONE {
        path.push(at);
        at = from[at];
    }
    path.reverse();
    path
}
