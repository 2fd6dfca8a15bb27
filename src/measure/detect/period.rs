//! Step 2: how long a beat lasts, from place to place.

use super::condition::Signal;
use super::{FASTEST_BPM, SLOWEST_BPM};
use crate::dsp::resample;
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
/// Steps that an estimate looks back and ahead, besides its own.
const REACH: usize = 2;

/// Estimates the beat length through the record.
pub(super) fn periods(signal: &Signal) -> Periods {
    let by = ((signal.rate_hz / 25.0) as usize).max(1);
    let rate = signal.rate_hz / by as f64;
    // The upstroke alone: where the pulse rises, how fast. Breath and drift rise slowly, so they hardly show in it.
    let mut x: Vec<f64> = signal
        .pulse
        .chunks(by)
        .map(|run| run.windows(2).map(|w| (w[1] - w[0]).max(0.0)).sum::<f64>())
        .collect();
    for i in 0..x.len() {
        x[i] /= signal.size_at(i * by);
    }
    let mut sm = x.clone();
    for i in 1..x.len() - 1 {
        sm[i] = 0.25 * x[i - 1] + 0.5 * x[i] + 0.25 * x[i + 1];
    }
    let w = (2.0 * rate) as usize;
    let mut acc = 0.0;
    let mut cum = vec![0.0];
    for v in &sm {
        acc += v;
        cum.push(acc);
    }
    for i in 0..x.len() {
        let (a, b) = (i.saturating_sub(w), (i + w + 1).min(x.len()));
        x[i] = sm[i] - (cum[b] - cum[a]) / (b - a) as f64;
    }
    let shortest = ((60.0 / FASTEST_BPM * rate) as usize).max(2);
    let longest = (60.0 / SLOWEST_BPM * rate).ceil() as usize;
    let step = ((STEP_S * rate) as usize).max(1);
    // One lag beyond each end, so that the ends can be told from maxima.
    let lags = longest - shortest + 3;
    let count = x.len().div_ceil(step);
    let mut sums = vec![0.0; count * lags];
    let mut energy = vec![0.0; count];
    for b in 0..count {
        let run = &x[b * step..((b + 1) * step).min(x.len())];
        energy[b] = run.iter().map(|v| v * v).sum();
        for l in 0..lags {
            let from = b * step + shortest - 1 + l;
            if from < x.len() {
                sums[b * lags + l] = run.iter().zip(&x[from..]).map(|(a, c)| a * c).sum();
            }
        }
    }
    let corr: Vec<f64> = (0..count)
        .flat_map(|b| {
            let (from, to) = (b.saturating_sub(REACH), (b + REACH + 1).min(count));
            let own: f64 = energy[from..to].iter().sum();
            let sums = &sums;
            let energy = &energy;
            (0..lags).map(move |l| {
                // The lagged copy covers the same stretch moved on by the lag, of whose blocks parts are taken.
                let lag = (shortest - 1 + l) as f64 / step as f64;
                let (whole, part) = (lag as usize, lag - (lag as usize) as f64);
                let at = |i: usize| energy.get(i).copied().unwrap_or(0.0);
                let other: f64 =
                    (from..to).map(|i| (1.0 - part) * at(i + whole) + part * at(i + whole + 1)).sum();
                let product: f64 = (from..to).map(|i| sums[i * lags + l]).sum();
                product / (own * other).sqrt().max(1e-12)
            })
        })
        .collect();
    let path = smoothest(&corr, lags, shortest);
    let at = path
        .iter()
        .enumerate()
        .map(|(b, l)| {
            let r = &corr[b * lags..(b + 1) * lags];
            let (a, c, d) = (r[l - 1], r[*l], r[l + 1]);
            let bend = a - 2.0 * c + d;
            let shift = if bend < 0.0 { (0.5 * (a - d) / bend).clamp(-0.5, 0.5) } else { 0.0 };
            let lag = (shortest - 1 + l) as f64 + shift;
            Period { samples: lag * by as f64, clarity: c.clamp(0.0, 1.0) }
        })
        .collect();
    Periods { step: (step * by) as f64, at }
}

/// The path through the lags, one a step, with the highest sum of correlations less what its jumps cost.
fn smoothest(corr: &[f64], lags: usize, shortest: usize) -> Vec<usize> {
    let count = corr.len() / lags;
    let log: Vec<f64> = (0..lags).map(|l| math::ln((shortest - 1 + l) as f64)).collect();
    let mut best = vec![0.0; lags];
    let mut from = vec![0usize; count * lags];
    for b in 0..count {
        let r = &corr[b * lags..(b + 1) * lags];
        let (top, top_value) =
            (1..lags - 1).fold((1, f64::NEG_INFINITY), |m, l| if best[l] > m.1 { (l, best[l]) } else { m });
        let mut next = vec![f64::NEG_INFINITY; lags];
        for l in 1..lags - 1 {
            // Any jump may be had for 0.7; small ones cost in proportion, 10 % about 0.1.
            let (mut source, mut value) = (top, top_value - 0.7);
            for k in l.saturating_sub(8).max(1)..(l + 9).min(lags - 1) {
                let v = best[k] - (log[k] - log[l]).abs();
                if v > value {
                    (source, value) = (k, v);
                }
            }
            // What repeats after T repeats after 2 T as well: of equals the shorter, at 0.1 an octave.
            let is_peak = r[l] >= r[l - 1] && r[l] >= r[l + 1];
            next[l] = value + r[l] - 0.15 * (log[l] - log[1]) - if is_peak { 0.0 } else { 0.3 };
            from[b * lags + l] = source;
        }
        best = next;
    }
    let mut l = (1..lags - 1).fold(1, |m, l| if best[l] > best[m] { l } else { m });
    let mut path = vec![0; count];
    for b in (0..count).rev() {
        path[b] = l;
        l = from[b * lags + l];
    }
    path
}
