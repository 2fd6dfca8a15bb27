//! What happens from beat to beat, each stretched to one length, so that a heart that breathes compares with itself.

use super::even::RATE_HZ;
use crate::dsp::resample::linear;

/// Points of a cycle: more than the band of the pulse can fill.
const POINTS: usize = 32;
/// Fewest cycles that can be compared.
pub(super) const FEWEST: usize = 3;

/// What the cycles of a stretch have in common.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Cycles {
    /// Correlation of each with the mean of the others, all together, -1 to 1.
    pub likeness: f64,
    /// How much steeper the mean cycle rises than it falls: third moment of its steps against their spread, 0 of a sine.
    pub steepness: f64,
    /// Median size of a cycle from its lowest to its highest point, in the unit of the samples.
    pub size: f64,
}

/// Compares the cycles between beats, whose times are in seconds after the first sample of `y`.
pub(super) fn cycles(y: &[f64], beats: &[f64]) -> Option<Cycles> {
    if beats.len() <= FEWEST {
        return None;
    }
    let cycles: Vec<[f64; POINTS]> = beats.windows(2).map(|w| cycle(y, w[0], w[1])).collect();
    let mut sum = [0.0; POINTS];
    cycles.iter().for_each(|c| sum.iter_mut().zip(c).for_each(|(s, v)| *s += v));
    let others = (cycles.len() - 1) as f64;
    let (mut both, mut own, mut other) = (0.0, 0.0, 0.0);
    for (s, v) in cycles.iter().flat_map(|c| sum.iter().zip(c)) {
        // Against the mean of the others: with few cycles each would else be compared with itself.
        let mean = (s - v) / others;
        both += mean * v;
        own += v * v;
        other += mean * mean;
    }
    let mut sizes: Vec<f64> = cycles.iter().map(range).collect();
    let middle = sizes.len() / 2;
    let size = *sizes.select_nth_unstable_by(middle, f64::total_cmp).1;
    let likeness = if own > 0.0 && other > 0.0 { both / (own * other).sqrt() } else { 0.0 };
    Some(Cycles { likeness, steepness: steepness(&sum), size })
}

fn cycle(y: &[f64], from_s: f64, to_s: f64) -> [f64; POINTS] {
    let mut c: [f64; POINTS] =
        core::array::from_fn(|k| linear(y, (from_s + (to_s - from_s) * k as f64 / POINTS as f64) * RATE_HZ));
    let mean = c.iter().sum::<f64>() / POINTS as f64;
    c.iter_mut().for_each(|v| *v -= mean);
    c
}

fn range(c: &[f64; POINTS]) -> f64 {
    let (low, high) = c.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
    high - low
}

fn steepness(c: &[f64; POINTS]) -> f64 {
    let (mut square, mut cube) = (0.0, 0.0);
    for k in 0..POINTS {
        let step = c[(k + 1) % POINTS] - c[k];
        square += step * step / POINTS as f64;
        cube += step * step * step / POINTS as f64;
    }
    if square > 0.0 { cube / (square * square.sqrt()) } else { 0.0 }
}
