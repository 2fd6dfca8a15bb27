//! Step 3: how long a beat lasts, from place to place.

use super::candidates::Candidates;
use super::condition::Signal;
use super::{FASTEST_BPM, SLOWEST_BPM};
use crate::math;
use core::hint::select_unpredictable;

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
/// Changes of the lag by up to so many samples are small; number of lags that are near one in this sense.
const SMALL: usize = 4;
const NEAR: usize = 2 * SMALL + 1;

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
        // Sample by sample rather than lag by lag: the sums of the lags do not wait for each other.
        let row = &mut sums[b * lags..(b + 1) * lags];
        let (mut i, end) = (b * step, ((b + 1) * step).min(x.len()));
        // Four samples at a time, so that each sum is fetched and put back once; the order of its terms stays.
        while i + 4 <= end && i + first + lags + 3 <= x.len() {
            let lagged = &x[i + first..i + first + lags + 3];
            let [v0, v1, v2, v3] = [x[i], x[i + 1], x[i + 2], x[i + 3]];
            let shifted = lagged.iter().zip(&lagged[1..]).zip(lagged[2..].iter().zip(&lagged[3..]));
            for (s, ((c0, c1), (c2, c3))) in row.iter_mut().zip(shifted) {
                *s = *s + v0 * c0 + v1 * c1 + v2 * c2 + v3 * c3;
            }
            i += 4;
        }
        for i in i..end {
            let lagged = x.get(i + first..).unwrap_or(&[]);
            row.iter_mut().zip(lagged).for_each(|(s, c)| *s += x[i] * c);
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
        // Differences of sums leave rounding errors: what is less than those is nothing.
        let share = |r: f64, other: f64| {
            if other > 1e-9 * own && own > 0.0 { r / (own * other).sqrt() } else { 0.0 }
        };
        let (a, b) = (from * step + first, to * step + first);
        if b + lags <= energy.len() {
            // The same without looking for the record's end each time.
            let others = energy[a..a + lags].iter().zip(&energy[b..b + lags]).map(|(a, b)| b - a);
            row.iter_mut().zip(others).for_each(|(r, other)| *r = share(*r, other));
        } else {
            row.iter_mut().enumerate().for_each(|(l, r)| *r = share(*r, between(a + l, b + l)));
        }
    }
    corr
}

/// The path through the lags, one a step, with the highest sum of correlations less what its jumps cost.
fn smoothest(corr: &[f64], lags: usize, first: usize) -> Vec<usize> {
    let count = corr.len() / lags;
    let log: Vec<f64> = (0..lags).map(|l| math::ln((first + l) as f64)).collect();
    // Small changes cost in proportion: 10 % about 0.1. To lag `l` from the `SMALL` lags on both sides, in their order.
    let change: Vec<[f64; NEAR]> = (0..lags)
        .map(|l| {
            core::array::from_fn(|d| {
                (l + d).checked_sub(SMALL).and_then(|k| log.get(k)).map_or(0.0, |k| (k - log[l]).abs())
            })
        })
        .collect();
    let length: Vec<f64> = log.iter().map(|v| LENGTH_COST * (v - log[1])).collect();
    let inner = 1..lags - 1;
    let highest = |v: &[f64]| inner.clone().fold(1, |m, l| if v[SMALL + l] > v[SMALL + m] { l } else { m });
    // Lag `l` stands at `SMALL + l`; what lies about the inner lags is never the best.
    let mut best = vec![f64::NEG_INFINITY; lags + 2 * SMALL];
    let mut next = best.clone();
    best[SMALL + 1..SMALL + lags - 1].fill(0.0);
    let mut worth = vec![f64::NEG_INFINITY; lags];
    let mut from = vec![0usize; count * lags];
    for b in 0..count {
        let r = &corr[b * lags..(b + 1) * lags];
        for l in inner.clone() {
            worth[l] = r[l] - SLOPE_COST;
            let bend = r[l - 1] - 2.0 * r[l] + r[l + 1];
            if r[l] >= r[l - 1] && r[l] >= r[l + 1] && bend < 0.0 {
                // The top of the parabola through the three.
                worth[l] = r[l] - (r[l - 1] - r[l + 1]) * (r[l - 1] - r[l + 1]) / (8.0 * bend);
            }
        }
        let top = highest(&best);
        let jump = best[SMALL + top] - JUMP_COST;
        for l in inner.clone() {
            let (mut source, mut value) = (SMALL + top, jump);
            // Nearly every comparison comes out as a coin does: both ways are worked out and one is taken.
            for (d, cost) in change[l].iter().enumerate() {
                let v = best[l + d] - cost;
                let better = v > value;
                source = select_unpredictable(better, l + d, source);
                value = if better { v } else { value };
            }
            // Beside a maximum is nearly as good as on it, as the true lag may lie between two samples.
            let beside = worth[l - 1].max(worth[l + 1]) - 0.05;
            next[SMALL + l] = value + worth[l].max(beside) - length[l];
            from[b * lags + l] = source - SMALL;
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
