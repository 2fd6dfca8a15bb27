//! Step 1: the recording at a working rate, without spikes, drift and hum, and how large the pulse is where.

use crate::dsp::{resample, section, section::Section, zero_phase};

/// What the later steps work on.
pub(super) struct Signal {
    /// Working rate in Hz.
    pub rate_hz: f64,
    /// Time of the first working sample.
    pub start_s: f64,
    /// Band-passed pulse.
    pub pulse: Vec<f64>,
    /// Samples in a block.
    pub block: usize,
    /// Typical peak-to-peak size of the pulse around each block.
    pub size: Vec<f64>,
}

impl Signal {
    /// Typical size of the pulse about sample `i`; above zero unless the whole record is flat.
    pub fn size_at(&self, i: usize) -> f64 {
        self.size[(i / self.block).min(self.size.len() - 1)]
    }
}

/// Seconds in a block.
const BLOCK_S: f64 = 0.5;

/// Conditions a recording of at least two seconds.
pub(super) fn condition(values: &[f64], rate_hz: f64) -> Signal {
    // 100 to 200 Hz is plenty for a band that ends at 8 Hz, and what hum there is stays well above that band.
    let by = ((rate_hz / 100.0) as usize).max(1);
    let rate = rate_hz / by as f64;
    let mut x = finite(values);
    if by > 1 {
        x = resample::average_down(&x, by);
    }
    let block = ((BLOCK_S * rate) as usize).max(1);
    limit_spikes(&mut x, block);
    // At 20 Hz sampling the upper corner has to come down with the Nyquist frequency.
    let low = Section::low_pass((8.0f64).min(0.35 * rate), rate, section::BUTTERWORTH_2);
    let high = Section::high_pass(0.5, rate, section::BUTTERWORTH_2);
    zero_phase::filter(&[high, low], &mut x, (2.0 * rate) as usize);
    let stretch = Stretches::new(&x, block);
    let mut size = median_over(&stretch.range, 6);
    // Where the pulse is gone there is no size to measure by: an eighth of the usual is taken to be noise.
    let usual = median(&mut size.clone());
    size.iter_mut().for_each(|s| *s = s.max(usual / 8.0).max(f64::MIN_POSITIVE));
    Signal { rate_hz: rate, start_s: 0.5 * (by - 1) as f64 / rate_hz, pulse: x, block, size }
}

/// Whether the falling edge is the steeper one: the sum of cubed steps is negative.
pub(super) fn points_down(signal: &Signal) -> bool {
    let cubes: f64 = signal
        .pulse
        .windows(2)
        .enumerate()
        .map(|(i, w)| (w[1] - w[0]) / signal.size_at(i))
        .map(|d| d * d * d)
        .sum();
    cubes < 0.0
}

/// A copy in which each sample that is not a number is the last one that was.
fn finite(values: &[f64]) -> Vec<f64> {
    let mut last = values.iter().copied().find(|v| v.is_finite()).unwrap_or(0.0);
    values
        .iter()
        .map(|v| {
            if v.is_finite() {
                last = *v;
            }
            last
        })
        .collect()
}

/// Takes the slow baseline off and holds the rest within 1.5 times the usual peak-to-peak range, so that a knock ten
/// times the pulse does not ring through its neighbours.
fn limit_spikes(x: &mut [f64], block: usize) {
    let stretch = Stretches::new(x, block);
    let range = median_over(&stretch.range, 8);
    let base = median_over(&stretch.mean, 2);
    let centre = |b: usize| (b as f64 + 0.5) * block as f64;
    let mut i = 0;
    for b in 0..=base.len() {
        // From the centre of one block to the centre of the next, both baseline and limit go in a straight line.
        let (left, right) = (b.saturating_sub(1), b.min(base.len() - 1));
        let end = if b == base.len() { x.len() } else { (centre(b).ceil() as usize).min(x.len()) };
        let from = centre(b) - block as f64;
        let slope = |v: &[f64]| (v[right] - v[left]) / block as f64;
        let (base_slope, range_slope) = (slope(&base), slope(&range));
        while i < end {
            let d = i as f64 - from;
            let limit = 1.5 * (range[left] + range_slope * d);
            x[i] = (x[i] - (base[left] + base_slope * d)).max(-limit).min(limit);
            i += 1;
        }
    }
}

/// Range and mean of the two seconds around each block.
struct Stretches {
    range: Vec<f64>,
    mean: Vec<f64>,
}

impl Stretches {
    fn new(x: &[f64], block: usize) -> Self {
        let blocks: Vec<(f64, f64, f64)> = x
            .chunks(block)
            .map(|run| {
                let start = (f64::INFINITY, f64::NEG_INFINITY, 0.0);
                let (low, high, sum) = run.iter().fold(start, |(l, h, s), v| {
                    (if *v < l { *v } else { l }, if *v > h { *v } else { h }, s + v)
                });
                (low, high, sum / run.len() as f64)
            })
            .collect();
        let around = |b: usize| &blocks[b.saturating_sub(2)..(b + 2).min(blocks.len())];
        let range = (0..blocks.len())
            .map(|b| {
                around(b)
                    .iter()
                    .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v.0), h.max(v.1)))
            })
            .map(|(l, h)| h - l)
            .collect();
        let mean = (0..blocks.len())
            .map(|b| around(b).iter().map(|v| v.2).sum::<f64>() / around(b).len() as f64)
            .collect();
        Self { range, mean }
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
