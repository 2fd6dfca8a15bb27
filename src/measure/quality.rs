//! How good a stretch of trace is, and the numbers that say so.
//!
//! The single figures (hum, clipping, flatness, pulse size, drift, likeness of beats) are physical measures. The index
//! made of them is a scale of this crate for teaching; it is not a published one and says nothing about a person.

use super::detect::detect;
use crate::dsp::{resample::held, section, section::Section, zero_phase};
use crate::math::{self, TAU};
use serde::{Deserialize, Serialize};

/// Hum at one power line frequency.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct HumLevel {
    /// Peak to peak of the hum with its harmonics, in the unit of the samples: the median over short windows.
    pub pp: f64,
    /// Peak to peak of the hum over that of the pulse; absent where there is no pulse to compare with.
    pub ratio: Option<f64>,
    /// Frequency at which the power line shows at this sampling rate, in Hz: its own, or the alias it was folded to.
    pub shows_at_hz: f64,
}

/// What was found out about a stretch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Quality {
    /// 0 (nothing to be read) to 1 (a clean pulse): the product of `likeness`, `regular_share`, `quiet`, and what is
    /// left of the stretch after `clipped` and `flat`, each on its own scale from 0 to 1.
    pub index: f64,
    /// Number of beats found.
    pub beats: usize,
    /// Median correlation of the beats with their mean, -1 to 1.
    pub likeness: f64,
    /// Share of beats that correlate with the mean beat by more than 0.8.
    pub regular_share: f64,
    /// Share of the power above 0.5 Hz that lies in the pulse's band, up to 12 Hz: hum and noise take away from it.
    pub quiet: f64,
    /// Share of samples that stand at the highest or lowest value in runs of three or more.
    pub clipped: f64,
    /// Share of samples in stretches of half a second or more in which nothing moves.
    pub flat: f64,
    /// Median foot-to-peak size of the beats, in the unit of the samples; 0 without beats.
    pub pulse_pp: f64,
    /// How far the feet of the beats wander (5th to 95th percentile), in the unit of the samples.
    pub drift_pp: f64,
}

/// Highest frequency that belongs to the pulse, in Hz: 99 % of the power of finger pulses lies below 6.3 Hz (measured
/// on the recordings of Neshitov et al. 2021, Sensors 21:6798), and 30 bpm up to 215 bpm keep three harmonics below.
const PULSE_TOP_HZ: f64 = 12.0;

/// Rates a stretch of at least three seconds; `None` for less, or for a rate below 8 Hz. A sample that is not a number
/// counts as the last one that was, here and in all of this module.
pub fn quality(values: &[f64], rate_hz: f64) -> Option<Quality> {
    if !long_enough(values, rate_hz) {
        return None;
    }
    quality_of(values, rate_hz, &detect(values, rate_hz))
}

/// As [`quality`], for who knows the beats of the stretch already, s from its start.
pub fn quality_of(values: &[f64], rate_hz: f64, beats: &[f64]) -> Option<Quality> {
    if !long_enough(values, rate_hz) {
        return None;
    }
    let values = &held(values)[..];
    let Filtered { smooth, level_smooth, level, in_band } = Filtered::new(values, rate_hz);
    let sizes = BeatSizes::new(&smooth, rate_hz, beats);
    let (likeness, regular_share) = likeness(&level_smooth, rate_hz, beats);
    let quiet = quiet(&level, &in_band);
    let (clipped, flat) = (clip_share(values), flat_share(values, rate_hz));
    // Correlations of 0.5 and less are those of noise: 0.5 to 0.95 becomes 0 to 1. One clipped sample in ten, or half
    // of the stretch flat, leave nothing.
    let scale = |v: f64, from: f64, to: f64| ((v - from) / (to - from)).clamp(0.0, 1.0);
    let index = scale(likeness, 0.5, 0.95)
        * regular_share
        * scale(quiet, 0.3, 0.95)
        * (1.0 - scale(clipped, 0.0, 0.1))
        * (1.0 - scale(flat, 0.0, 0.5));
    Some(Quality {
        index,
        beats: beats.len(),
        likeness,
        regular_share,
        quiet,
        clipped,
        flat,
        pulse_pp: sizes.pulse_pp,
        drift_pp: sizes.drift_pp,
    })
}

fn long_enough(values: &[f64], rate_hz: f64) -> bool {
    rate_hz.is_finite() && rate_hz >= super::detect::LOWEST_RATE_HZ && (values.len() as f64) >= 3.0 * rate_hz
}

/// Hum of `power_line_hz` (50 or 60) and its harmonics up to the sixth. `None` where the power line shows below 15 Hz at this
/// sampling rate, so that it cannot be told from the pulse, and for less than one second.
///
/// Each window of about 0.4 s (a whole number of periods of both power lines) is correlated with sines and cosines under a
/// Hann window; one period is put together from the amplitudes and phases, and its extremes taken. Sines at known
/// frequencies fitted like this are the classical estimate (Goertzel 1958 gives the cheap sum). A power line 1 % off makes
/// the result 3 % too small at the most.
pub fn hum(values: &[f64], rate_hz: f64, power_line_hz: f64) -> Option<HumLevel> {
    let (pp, shows_at_hz) = hum_alone(values, rate_hz, power_line_hz)?;
    let pulse = pulse_pp(values, rate_hz);
    Some(HumLevel { pp, ratio: pulse.map(|p| pp / p), shows_at_hz })
}

/// As [`hum`], for who knows the pulse already: peak to peak, and where the power line shows, in Hz.
pub fn hum_alone(values: &[f64], rate_hz: f64, power_line_hz: f64) -> Option<(f64, f64)> {
    let shows_at = |hz: f64| (hz - (hz / rate_hz).round() * rate_hz).abs();
    let first = shows_at(power_line_hz);
    let width = (0.4 * rate_hz).round() as usize;
    if !(rate_hz > 0.0 && power_line_hz > 0.0 && first >= 15.0)
        || (values.len() as f64) < rate_hz
        || width < 8
    {
        return None;
    }
    let values = &held(values)[..];
    // Harmonics beyond half of the sampling rate are folded too; only those that stay where they are get added, as
    // two folded ones may fall on one place.
    let harmonics: Vec<f64> = (1..=6)
        .map(|k| f64::from(k) * power_line_hz)
        .filter(|hz| *hz < 0.48 * rate_hz || *hz == power_line_hz)
        .collect();
    let window: Vec<f64> =
        (0..width).map(|i| 0.5 - 0.5 * math::cos(TAU * (i as f64 + 0.5) / width as f64)).collect();
    let gain = 2.0 / window.iter().sum::<f64>();
    let waves: Vec<Vec<(f64, f64)>> = harmonics
        .iter()
        .map(|hz| TAU * shows_at(*hz) / rate_hz)
        .map(|w| (0..width).map(|i| (math::cos(w * i as f64), math::sin(w * i as f64))).collect())
        .collect();
    let period = Period::new(harmonics.len());
    let mut levels: Vec<f64> = Vec::new();
    for run in values.chunks_exact(width) {
        let level = run.iter().sum::<f64>() / width as f64;
        let parts: Vec<(f64, f64)> = waves
            .iter()
            .map(|wave| {
                let sum =
                    run.iter().zip(&window).zip(wave).fold((0.0, 0.0), |(c, s), ((v, g), (cos, sin))| {
                        (c + g * (v - level) * cos, s + g * (v - level) * sin)
                    });
                (gain * sum.0, gain * sum.1)
            })
            .collect();
        levels.push(period.peak_to_peak(&parts));
    }
    Some((median(&mut levels)?, first))
}

/// Cosines and sines of each harmonic at even steps through one period.
struct Period(Vec<Vec<(f64, f64)>>);

impl Period {
    const STEPS: usize = 96;

    fn new(harmonics: usize) -> Self {
        let step = |i: usize| {
            let turn = TAU * i as f64 / Self::STEPS as f64;
            (1..=harmonics).map(|k| (math::cos(k as f64 * turn), math::sin(k as f64 * turn))).collect()
        };
        Self((0..Self::STEPS).map(step).collect())
    }

    /// Peak to peak of a sum of harmonics, given the cosine and sine part of each.
    fn peak_to_peak(&self, parts: &[(f64, f64)]) -> f64 {
        if let [(c, s)] = parts {
            return 2.0 * math::hypot(*c, *s);
        }
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for waves in &self.0 {
            let v: f64 = parts.iter().zip(waves).map(|((c, s), (cos, sin))| c * cos + s * sin).sum();
            (low, high) = (low.min(v), high.max(v));
        }
        high - low
    }
}

/// Median foot-to-peak size of the pulse, in the unit of the samples, with hum taken off; `None` without beats.
pub fn pulse_pp(values: &[f64], rate_hz: f64) -> Option<f64> {
    let beats = detect(values, rate_hz);
    let sizes = BeatSizes::new(&without_hum(&held(values), rate_hz), rate_hz, &beats);
    (sizes.pulse_pp > 0.0).then_some(sizes.pulse_pp)
}

/// Share of samples, 0 to 1, that stand at the highest or at the lowest value of the stretch in runs of three or more.
/// A trace that is flat throughout is not clipped.
pub fn clip_share(values: &[f64]) -> f64 {
    let (low, high) = extremes(values);
    if values.is_empty() || high <= low {
        return 0.0;
    }
    let clipped: usize = values
        .chunk_by(|a, b| a == b)
        .filter(|run| run.len() >= 3 && (run[0] == low || run[0] == high))
        .map(<[f64]>::len)
        .sum();
    clipped as f64 / values.len() as f64
}

/// Share of samples, 0 to 1, at or beyond the ends of a known range.
pub fn clip_share_at(values: &[f64], low: f64, high: f64) -> f64 {
    let clipped = values.iter().filter(|v| **v <= low || **v >= high).count();
    clipped as f64 / values.len().max(1) as f64
}

/// Share of samples, 0 to 1, in stretches of half a second or more that stay within a thousandth of the whole range.
pub fn flat_share(values: &[f64], rate_hz: f64) -> f64 {
    let (low, high) = extremes(values);
    let (slack, least) = (1e-3 * (high - low), (0.5 * rate_hz).ceil() as usize);
    let mut flat = 0;
    let mut start = 0;
    while start < values.len() {
        let (mut l, mut h) = (values[start], values[start]);
        let mut end = start + 1;
        while end < values.len() {
            (l, h) = (l.min(values[end]), h.max(values[end]));
            if h - l > slack {
                break;
            }
            end += 1;
        }
        if end - start >= least {
            flat += end - start;
        }
        start = end;
    }
    flat as f64 / values.len().max(1) as f64
}

/// Sizes of the beats.
struct BeatSizes {
    pulse_pp: f64,
    drift_pp: f64,
}

impl BeatSizes {
    fn new(smooth: &[f64], rate_hz: f64, beats: &[f64]) -> Self {
        let (mut sizes, mut feet): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
        let mut before = f64::NEG_INFINITY;
        for t in beats {
            // The foot lies between the last beat and this, at most half a second back.
            let (from, peak) =
                ((before.max(t - 0.5).max(0.0) * rate_hz) as usize, (t * rate_hz).round() as usize);
            if from < peak && peak < smooth.len() {
                let foot = smooth[from..peak].iter().copied().fold(f64::INFINITY, f64::min);
                sizes.push(smooth[peak] - foot);
                feet.push(foot);
            }
            before = *t;
        }
        feet.sort_by(f64::total_cmp);
        let part = |p: f64| feet.get((p * feet.len().saturating_sub(1) as f64).round() as usize).copied();
        let drift_pp = part(0.95).unwrap_or(0.0) - part(0.05).unwrap_or(0.0);
        Self { pulse_pp: median(&mut sizes).unwrap_or(0.0).max(0.0), drift_pp }
    }
}

/// The low-pass that takes off what lies above the pulse, at 15 Hz; `None` where the rate does not allow one.
fn hum_filter(rate_hz: f64) -> Option<[Section; 2]> {
    (rate_hz > 40.0).then(|| section::BUTTERWORTH_4.map(|q| Section::low_pass(15.0, rate_hz, q)))
}

/// The pulse without what lies above it.
fn without_hum(values: &[f64], rate_hz: f64) -> Vec<f64> {
    let mut x = values.to_vec();
    if let Some(low) = hum_filter(rate_hz) {
        zero_phase::filter(&low, &mut x, rate_hz as usize);
    }
    x
}

/// A stretch, filtered in the ways that its quality asks for.
struct Filtered {
    /// Without what lies above the pulse.
    smooth: Vec<f64>,
    /// The same without what lies below 0.5 Hz.
    level_smooth: Vec<f64>,
    /// The stretch as it is without what lies below 0.5 Hz.
    level: Vec<f64>,
    /// Of that, what lies in the pulse's band.
    in_band: Vec<f64>,
}

impl Filtered {
    fn new(values: &[f64], rate_hz: f64) -> Self {
        let (short, long) = (rate_hz as usize, (2.0 * rate_hz) as usize);
        let high = [Section::high_pass(0.5, rate_hz, section::BUTTERWORTH_2)];
        let top = (0.4 * rate_hz).min(PULSE_TOP_HZ);
        let band = section::BUTTERWORTH_4.map(|q| Section::low_pass(top, rate_hz, q));
        let (mut smooth, mut level) = (values.to_vec(), values.to_vec());
        match hum_filter(rate_hz) {
            Some(low) => zero_phase::filter_both((&low, &mut smooth, short), (&high, &mut level, long)),
            None => zero_phase::filter(&high, &mut level, long),
        }
        let (mut level_smooth, mut in_band) = (smooth.clone(), level.clone());
        zero_phase::filter_both((&high, &mut level_smooth, long), (&band, &mut in_band, short));
        Self { smooth, level_smooth, level, in_band }
    }
}

/// Median correlation of the beats with their mean, and the share of beats above 0.8, on a trace without hum and drift.
fn likeness(x: &[f64], rate_hz: f64, beats: &[f64]) -> (f64, f64) {
    let (before, after) = ((0.3 * rate_hz) as usize, (0.3 * rate_hz) as usize);
    let cut = |t: &f64| {
        let at = (t * rate_hz).round() as usize;
        let run = x.get(at.checked_sub(before)?..=at + after)?;
        let mean = run.iter().sum::<f64>() / run.len() as f64;
        let norm = run.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>().sqrt();
        (norm > 0.0).then(|| run.iter().map(|v| (v - mean) / norm).collect::<Vec<f64>>())
    };
    let shapes: Vec<Vec<f64>> = beats.iter().filter_map(cut).collect();
    if shapes.len() < 2 {
        return (0.0, 0.0);
    }
    let mut mean = vec![0.0; before + after + 1];
    shapes.iter().for_each(|s| mean.iter_mut().zip(s).for_each(|(m, v)| *m += v));
    let count = shapes.len() as f64;
    let mut alike: Vec<f64> = shapes
        .iter()
        .map(|s| {
            // Against the mean of the others: with few beats each would else be compared with itself.
            let others = mean.iter().zip(s).map(|(m, v)| (m - v) / (count - 1.0));
            let (product, power) = others.zip(s).fold((0.0, 0.0), |(p, q), (m, v)| (p + m * v, q + m * m));
            product / power.sqrt().max(f64::MIN_POSITIVE)
        })
        .collect();
    let regular = alike.iter().filter(|c| **c > 0.8).count() as f64 / count;
    (median(&mut alike).unwrap_or(0.0), regular)
}

/// Share of the power above 0.5 Hz that lies below 12 Hz; 0 where there is no power.
fn quiet(level: &[f64], in_band: &[f64]) -> f64 {
    let power = |x: &[f64]| x.iter().map(|v| v * v).sum::<f64>();
    let all = power(level);
    if all > 0.0 { (power(in_band) / all).min(1.0) } else { 0.0 }
}

fn extremes(values: &[f64]) -> (f64, f64) {
    values.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)))
}

/// Upper median; `None` of nothing.
fn median(x: &mut [f64]) -> Option<f64> {
    let middle = x.len() / 2;
    (!x.is_empty()).then(|| *x.select_nth_unstable_by(middle, f64::total_cmp).1)
}
