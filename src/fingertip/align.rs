//! When exactly a beat comes: where its rise lies best on the mean rise. A peak is round and a little noise moves it; the
//! rise is steep.

use super::even::RATE_HZ;
use crate::dsp::resample::cubic;

/// Seconds before and after a peak that are compared: foot, rise and crest.
const BEFORE_S: f64 = 0.28;
/// See [`BEFORE_S`].
const AFTER_S: f64 = 0.08;
/// Farthest that a beat is moved, in seconds.
const FARTHEST_S: f64 = 0.08;
/// Steps in which shifts are tried, in seconds; between them a parabola tells.
const STEP_S: f64 = 0.01;
/// Rounds: each makes a sharper mean.
const ROUNDS: usize = 3;

/// Moves beats, given in seconds after the first sample of `y`, to where they are most like their mean. The mean stays
/// where it is, so that only differences between beats change.
pub(super) fn aligned(y: &[f64], beats: &[f64]) -> Vec<f64> {
    let mut at = beats.to_vec();
    if beats.len() < 3 {
        return at;
    }
    for _ in 0..ROUNDS {
        let shapes: Vec<Vec<f64>> = at.iter().map(|t| shape(y, *t)).collect();
        let mut mean = vec![0.0; shapes[0].len()];
        shapes.iter().for_each(|s| mean.iter_mut().zip(s).for_each(|(m, v)| *m += v));
        let moved: Vec<f64> = at.iter().zip(beats).map(|(t, first)| best(y, &mean, *t, *first)).collect();
        let drift = moved.iter().zip(&at).map(|(new, old)| new - old).sum::<f64>() / at.len() as f64;
        at = moved.into_iter().map(|t| t - drift).collect();
    }
    at
}

/// The pulse about a moment, with mean zero and norm one.
fn shape(y: &[f64], t: f64) -> Vec<f64> {
    let count = ((BEFORE_S + AFTER_S) * RATE_HZ) as usize + 1;
    let mut s: Vec<f64> = (0..count).map(|k| cubic(y, (t - BEFORE_S) * RATE_HZ + k as f64)).collect();
    let mean = s.iter().sum::<f64>() / count as f64;
    s.iter_mut().for_each(|v| *v -= mean);
    let norm = s.iter().map(|v| v * v).sum::<f64>().sqrt().max(f64::MIN_POSITIVE);
    s.iter_mut().for_each(|v| *v /= norm);
    s
}

fn best(y: &[f64], mean: &[f64], t: f64, first: f64) -> f64 {
    let alike = |t: f64| shape(y, t).iter().zip(mean).map(|(a, b)| a * b).sum::<f64>();
    let reach = (FARTHEST_S / STEP_S) as i32;
    let tried: Vec<(f64, f64)> =
        (-reach..=reach).map(|k| first + STEP_S * f64::from(k)).map(|t| (t, alike(t))).collect();
    let top = (0..tried.len()).fold(0, |b, k| if tried[k].1 > tried[b].1 { k } else { b });
    if top == 0 || top + 1 == tried.len() {
        // No maximum within reach: this rise is like no other.
        return t;
    }
    let (before, here, after) = (tried[top - 1].1, tried[top].1, tried[top + 1].1);
    let bend = before - 2.0 * here + after;
    tried[top].0 + if bend < 0.0 { STEP_S * 0.5 * (before - after) / bend } else { 0.0 }
}
