//! Step 1: the recording at a working rate, without spikes, drift and hum.

use crate::dsp::{resample, section, section::Section, zero_phase};

/// What the later steps work on.
pub(super) struct Signal {
    /// Working rate in Hz.
    pub rate_hz: f64,
    /// Time of the first working sample.
    pub start_s: f64,
    /// Band-passed pulse.
    pub pulse: Vec<f64>,
}

/// Conditions a recording of at least two seconds.
pub(super) fn condition(values: &[f64], rate_hz: f64) -> Signal {
    let by = ((rate_hz / 100.0) as usize).max(1);
    let (mut x, mut rate) = (finite_means(values, by), rate_hz / by as f64);
    if rate >= 100.0 {
        // 50 to 100 Hz are plenty for a band that ends at 8 Hz.
        x = resample::halve(&x);
        rate *= 0.5;
    }
    limit_spikes(&mut x, rate.ceil() as usize);
    // At 20 Hz sampling the upper corner has to come down with the Nyquist frequency.
    let low = Section::low_pass((8.0f64).min(0.35 * rate), rate, section::BUTTERWORTH_2);
    let high = Section::high_pass(0.5, rate, section::BUTTERWORTH_2);
    zero_phase::filter(&[high, low], &mut x, (2.0 * rate) as usize);
    Signal { rate_hz: rate, start_s: 0.5 * (by - 1) as f64 / rate_hz, pulse: x }
}

/// Whether the falling edge is the steeper one: the sum of cubed steps is negative.
pub(super) fn points_down(signal: &Signal) -> bool {
    let cubes: f64 = signal.pulse.windows(2).map(|w| w[1] - w[0]).map(|d| d * d * d).sum();
    cubes < 0.0
}

/// Means of runs of `by` samples; a sample that is not a number is the last one that was.
fn finite_means(values: &[f64], by: usize) -> Vec<f64> {
    if values.iter().all(|v| v.is_finite()) {
        return resample::average_down(values, by);
    }
    let mut last = values.iter().copied().find(|v| v.is_finite()).unwrap_or(0.0);
    let held = values.iter().map(|v| {
        last = if v.is_finite() { *v } else { last };
        last
    });
    resample::average_down(&held.collect::<Vec<f64>>(), by)
}

/// Takes the slow baseline off and holds the rest within 1.5 times the usual peak-to-peak range, so that a knock ten
/// times the pulse does not ring through its neighbours. `block` is one second.
fn limit_spikes(x: &mut [f64], block: usize) {
    let (mut range, mut mean): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
    let (mut low_was, mut high_was, mut mean_was) = (f64::INFINITY, f64::NEG_INFINITY, f64::NAN);
    for run in x.chunks(block) {
        let (low, high, sum) = run.iter().fold((f64::INFINITY, f64::NEG_INFINITY, 0.0), |(l, h, s), v| {
            (if *v < l { *v } else { l }, if *v > h { *v } else { h }, s + v)
        });
        // Two seconds hold at least a whole beat.
        range.push(high.max(high_was) - low.min(low_was));
        let own = sum / run.len() as f64;
        mean.push(if mean_was.is_nan() { own } else { 0.5 * (own + mean_was) });
        (low_was, high_was, mean_was) = (low, high, own);
    }
    let (range, base) = (median_over(&range, 4), median_over(&mean, 1));
    // Entry `b` stands for the seam before block `b`; between seams both go in straight lines.
    for b in 0..base.len() {
        let next = (b + 1).min(base.len() - 1);
        let (base_step, range_step) =
            ((base[next] - base[b]) / block as f64, 1.5 * (range[next] - range[b]) / block as f64);
        let end = ((b + 1) * block).min(x.len());
        for (i, v) in x[b * block..end].iter_mut().enumerate() {
            let limit = 1.5 * range[b] + range_step * i as f64;
            *v = (*v - base[b] - base_step * i as f64).max(-limit).min(limit);
        }
    }
}

/// Median of each value and its neighbours up to `reach` away.
pub(super) fn median_over(x: &[f64], reach: usize) -> Vec<f64> {
    let mut buffer = Vec::with_capacity(2 * reach + 1);
    (0..x.len())
        .map(|i| {
            buffer.clear();
            buffer.extend_from_slice(&x[i.saturating_sub(reach)..(i + reach + 1).min(x.len())]);
            median(&mut buffer)
        })
        .collect()
}

/// Upper median; reorders `x`, which must not be empty.
pub(super) fn median(x: &mut [f64]) -> f64 {
    let middle = x.len() / 2;
    *x.select_nth_unstable_by(middle, f64::total_cmp).1
}
