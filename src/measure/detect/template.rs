//! Step 5: how much each candidate looks like the beats found so far.

use super::candidates::Candidate;
use super::condition::Signal;

/// Seconds of a beat before its peak that are compared: its upstroke and a little of what was before.
const BEFORE_S: f64 = 0.3;
/// Seconds after its peak.
const AFTER_S: f64 = 0.2;
/// Weight of the correlation with the mean beat.
const WEIGHT: f64 = 2.0;
/// Correlation that speaks neither for nor against a beat.
const EVEN: f64 = 0.5;

/// Adds to each candidate's merit what its shape is worth.
pub(super) fn add_likeness(signal: &Signal, found: &[Candidate], chosen: &[usize], merit: &mut [f64]) {
    let before = (BEFORE_S * signal.rate_hz) as usize;
    let count = before + (AFTER_S * signal.rate_hz) as usize + 1;
    // The shapes of the chosen are asked for thrice.
    let mut shapes = vec![0.0; chosen.len() * count];
    let mut template = vec![0.0; count];
    for (i, shape) in chosen.iter().zip(shapes.chunks_exact_mut(count)) {
        cut(signal, &found[*i], before, shape);
        template.iter_mut().zip(&*shape).for_each(|(t, v)| *t += v);
    }
    // Once more with weights: what hardly looks like the first mean has no part in the second.
    normalise(&mut template);
    let mut second = vec![0.0; count];
    for shape in shapes.chunks_exact(count) {
        let weight = (product(shape, &template) - 0.5).max(0.0);
        second.iter_mut().zip(shape).for_each(|(t, v)| *t += weight * v);
    }
    normalise(&mut second);
    let mut other = vec![0.0; count];
    let mut of_chosen = chosen.iter().zip(shapes.chunks_exact(count)).peekable();
    for (k, (c, m)) in found.iter().zip(merit).enumerate() {
        // Both are in order.
        let shape = match of_chosen.next_if(|(i, _)| **i == k) {
            Some((_, shape)) => shape,
            None => {
                cut(signal, c, before, &mut other);
                &other
            }
        };
        *m += WEIGHT * (product(shape, &second) - EVEN).max(-1.0);
    }
}

/// The pulse about a candidate, with mean zero and norm one; the end samples beyond the ends.
fn cut(signal: &Signal, c: &Candidate, before: usize, shape: &mut [f64]) {
    let y = &signal.pulse;
    // Rounded to the nearest sample.
    let at = (c.at + 0.5) as usize;
    match at.checked_sub(before).and_then(|from| y.get(from..from + shape.len())) {
        Some(run) => shape.copy_from_slice(run),
        None => {
            for (k, v) in shape.iter_mut().enumerate() {
                *v = y[(at + k).saturating_sub(before).min(y.len() - 1)];
            }
        }
    }
    let mean = shape.iter().sum::<f64>() / shape.len() as f64;
    shape.iter_mut().for_each(|v| *v -= mean);
    normalise(shape);
}

fn product(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn normalise(x: &mut [f64]) {
    let norm = product(x, x).sqrt().max(f64::MIN_POSITIVE);
    x.iter_mut().for_each(|v| *v /= norm);
}
