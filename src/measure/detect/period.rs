//! Step 3: how long a beat lasts, from place to place.

use super::candidates::Candidates;
use super::condition::Signal;
use super::{FASTEST_BPM, SLOWEST_BPM};
use crate::math;

/// The beat length about one place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Period {
    /// Beat length in working samples.
    pub samples: f64,
    /// Autocorrelation at that lag, 0 to 1: how much the place repeats itself.
    pub clarity: f64,
}

/// Beat lengths at even steps through the record.
pub(super) struct Periods {
    step: f64,
    at: Vec<Period>,
}

impl Periods {
    /// The beat length at a place in working samples.
    pub fn at(&self, sample: f64) -> Period {
        self.at[((sample / self.step) as usize).min(self.at.len() - 1)]
    }
}

/// Seconds between estimates.
const STEP_S: f64 = 1.5;
/// Steps that an estimate looks back and ahead besides its own: 7.5 s in all, three beats of the slowest heart.
const REACH: usize = 2;
/// What any jump of the period may cost: about that of finding no repetition for one step.
const JUMP_COST: f64 = 0.7;
/// What repeats after T repeats after 2 T as well; of equals the shorter is meant. Cost of `ln` of the lag.
const LENGTH_COST: f64 = 0.15;
/// Cost of a lag at which the autocorrelation has no maximum.
const SLOPE_COST: f64 = 0.3;

/// Estimates the beat length through the record.
pub(super) fn periods(signal: &Signal, found: &Candidates) -> Periods {
    let by = ((signal.rate_hz / 25.0) as usize).max(1);
    let rate = signal.rate_hz / by as f64;
    let x = upstrokes(signal, found, by);
    let shortest = ((60.0 / FASTEST_BPM * rate) as usize).max(2);
    let longest = (60.0 / SLOWEST_BPM * rate).ceil() as usize;
    let step = ((STEP_S * rate) as usize).max(1);
    // One lag beyond each end, so that maxima can be told at the ends too.
    let lags = longest - shortest + 3;
    let corr = correlations(&x, step, shortest - 1, lags);
    let at = smoothest(&corr, lags, shortest - 1)
        .iter()
        .enumerate()
        .map(|(b, l)| {
            let r = &corr[b * lags..(b + 1) * lags];
            let (before, here, after) = (r[l - 1], r[*l], r[l + 1]);
            let bend = before - 2.0 * here + after;
            let shift = if bend < 0.0 { (0.5 * (before - after) / bend).clamp(-0.5, 0.5) } else { 0.0 };
            let lag = (shortest - 1 + l) as f64 + shift;
            Period { samples: lag * by as f64, clarity: here.clamp(0.0, 1.0) }
        })
        .collect();
    Periods { step: (step * by) as f64, at }
}

/// The upstrokes alone: by how much the pulse rises in each run of `by` samples, against its local size, without the
/// mean of four seconds. Breath and drift rise slowly, so they hardly show in it, even where they are as large as the
/// pulse and four beats long.
fn upstrokes(signal: &Signal, found: &Candidates, by: usize) -> Vec<f64> {
    let y = &signal.pulse;
    let rises: Vec<f64> = (0..y.len() / by)
        .map(|i| {
            let rise: f64 = (i * by..(i + 1) * by).map(|k| (y[k] - y[k.saturating_sub(1)]).max(0.0)).sum();
            rise / found.size_at((i * by) as f64)
        })
        .collect();
    // Smoothed, so that beats whose distance is not a whole number of samples still lie on each other.
    let last = rises.len() - 1;
    let smooth =
        |i: usize| 0.25 * rises[i.saturating_sub(1)] + 0.5 * rises[i] + 0.25 * rises[(i + 1).min(last)];
    let mut x: Vec<f64> = (0..rises.len()).map(smooth).collect();
    let sums = running_sums(x.iter().copied());
    let wing = (2.0 * signal.rate_hz / by as f64) as usize;
    for (i, v) in x.iter_mut().enumerate() {
        let (from, to) = (i.saturating_sub(wing), (i + wing + 1).min(last + 1));
        *v -= (sums[to] - sums[from]) / (to - from) as f64;
    }
    x
}

/// Sums of the first 0, 1, 2, ... of `x`.
fn running_sums(x: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut sum = 0.0;
    let further = x.map(|v| {
        sum += v;
        sum
    });
    core::iter::once(0.0).chain(further).collect()
}

/// Normalised autocorrelation about each step, at `lags` lags from `first` on. The products are summed once per step
/// and lag; each estimate adds up those of the steps around it.
fn correlations(x: &[f64], step: usize, first: usize, lags: usize) -> Vec<f64> {
    let count = x.len().div_ceil(step);
    let mut sums = vec![0.0; count * lags];
    for b in 0..count {
        let run = &x[b * step..((b + 1) * step).min(x.len())];
        // Sample by sample rather than lag by lag: the sums of the lags do not wait for each other.
        let row = &mut sums[b * lags..(b + 1) * lags];
        for (i, v) in run.iter().enumerate() {
            let lagged = x.get(b * step + i + first..).unwrap_or(&[]);
            row.iter_mut().zip(lagged).for_each(|(s, c)| *s += v * c);
        }
    }
    let energy = running_sums(x.iter().map(|v| v * v));
    let mut corr = vec![0.0; count * lags];
    for b in 0..count {
        let (from, to) = (b.saturating_sub(REACH), (b + REACH + 1).min(count));
        let row = &mut corr[b * lags..(b + 1) * lags];
        for i in from..to {
            row.iter_mut().zip(&sums[i * lags..(i + 1) * lags]).for_each(|(r, s)| *r += s);
        }
        // The lagged copy covers the same stretch, moved on by the lag.
        let between = |a: usize, b: usize| energy[b.min(x.len())] - energy[a.min(x.len())];
        let own = between(from * step, to * step);
        for (l, r) in row.iter_mut().enumerate() {
            let other = between(from * step + first + l, to * step + first + l);
            // Differences of sums leave rounding errors: what is less than those is nothing.
            *r = if other > 1e-9 * own && own > 0.0 { *r / (own * other).sqrt() } else { 0.0 };
        }
    }
    corr
}

/// The path through the lags, one a step, with the highest sum of correlations less what its jumps cost.
fn smoothest(corr: &[f64], lags: usize, first: usize) -> Vec<usize> {
    let count = corr.len() / lags;
    let log: Vec<f64> = (0..lags).map(|l| math::ln((first + l) as f64)).collect();
    let inner = 1..lags - 1;
    let highest = |v: &[f64]| inner.clone().fold(1, |m, l| if v[l] > v[m] { l } else { m });
    let (mut best, mut next) = (vec![0.0; lags], vec![0.0; lags]);
    let mut from = vec![0usize; count * lags];
    for b in 0..count {
        let r = &corr[b * lags..(b + 1) * lags];
        let top = highest(&best);
        for l in inner.clone() {
            let (mut source, mut value) = (top, best[top] - JUMP_COST);
            for k in l.saturating_sub(4).max(1)..(l + 5).min(lags - 1) {
                // Small changes cost in proportion: 10 % about 0.1.
                let v = best[k] - (log[k] - log[l]).abs();
                if v > value {
                    (source, value) = (k, v);
                }
            }
            let is_maximum = r[l] >= r[l - 1] && r[l] >= r[l + 1];
            next[l] =
                value + r[l] - LENGTH_COST * (log[l] - log[1]) - if is_maximum { 0.0 } else { SLOPE_COST };
            from[b * lags + l] = source;
        }
        core::mem::swap(&mut best, &mut next);
    }
    let mut l = highest(&best);
    let mut path = vec![0; count];
    for b in (0..count).rev() {
        path[b] = l;
        l = from[b * lags + l];
    }
    path
}
