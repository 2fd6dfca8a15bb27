//! Rates by three methods, and how much the intervals between beats vary.
//!
//! Definitions and limits are those of the Task Force of the ESC and NASPE (1996, Circulation 93:1043). Times come in
//! seconds; intervals go out in milliseconds, as the field has it. For teaching: intervals between finger pulses are
//! not those between R waves of an ECG.

use crate::dsp::{fft, resample};
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Why a figure cannot be given. Serialises as `{"code": ..., "args": {...}}`.
#[derive(Clone, Debug, Error, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
#[non_exhaustive]
pub enum VariabilityError {
    /// Too few intervals.
    #[error("expected at least {needed} intervals between beats, found {found}")]
    TooFewIntervals {
        /// Number needed.
        needed: usize,
        /// Number there.
        found: usize,
    },
    /// Too short a recording.
    #[error("expected beats over at least {needed_s} s, found {found_s} s")]
    TooShort {
        /// Seconds needed.
        needed_s: f64,
        /// Seconds there.
        found_s: f64,
    },
    /// Beat times that do not rise, or are no numbers.
    #[error("beat {beat}: times of beats must rise")]
    NotRising {
        /// The beat's number from 1.
        beat: usize,
    },
}

/// The mean rate of one stretch, three ways, in beats a minute.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeanRates {
    /// `60 N / T`: N beats counted in a window of T seconds. One count more or less is `60 / T`.
    pub count_bpm: f64,
    /// `60 n / dt`: n intervals between the first and the last beat in the window, dt seconds apart.
    pub interval_bpm: f64,
    /// Mean of `60 / RR` over the intervals: above the others by about rate times (SD / mean)^2 of the intervals.
    pub instantaneous_bpm: f64,
}

/// Mean rates of the beats in `[from_s, to_s)`.
pub fn mean_rates(beats_s: &[f64], from_s: f64, to_s: f64) -> Result<MeanRates, VariabilityError> {
    rising(beats_s)?;
    let inside: Vec<f64> = beats_s.iter().copied().filter(|t| (from_s..to_s).contains(t)).collect();
    let found = inside.len().saturating_sub(1);
    if found < 1 {
        return Err(VariabilityError::TooFewIntervals { needed: 1, found });
    }
    let rates = inside.windows(2).map(|w| 60.0 / (w[1] - w[0]));
    Ok(MeanRates {
        count_bpm: 60.0 * inside.len() as f64 / (to_s - from_s),
        interval_bpm: 60.0 * found as f64 / (inside[found] - inside[0]),
        instantaneous_bpm: rates.sum::<f64>() / found as f64,
    })
}

/// One interval between beats.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Interval {
    /// Time of the beat that ends it, in seconds.
    pub end_s: f64,
    /// Its length in milliseconds.
    pub ms: f64,
    /// Its rate, `60 / RR`, in beats a minute.
    pub bpm: f64,
    /// Whether it is within 20 % of the median of the eleven about it: the usual bound between normal intervals and
    /// those of early, missed or extra beats (common practice).
    pub normal: bool,
}

/// The intervals between beats in order: the instantaneous rate as a series.
pub fn intervals(beats_s: &[f64]) -> Result<Vec<Interval>, VariabilityError> {
    rising(beats_s)?;
    let ms: Vec<f64> = beats_s.windows(2).map(|w| 1000.0 * (w[1] - w[0])).collect();
    let normal = |i: usize| {
        let mut near = ms[i.saturating_sub(5)..(i + 6).min(ms.len())].to_vec();
        let middle = near.len() / 2;
        let (_, median, _) = near.select_nth_unstable_by(middle, f64::total_cmp);
        (ms[i] - *median).abs() <= 0.2 * *median
    };
    let interval =
        |i: usize| Interval { end_s: beats_s[i + 1], ms: ms[i], bpm: 60_000.0 / ms[i], normal: normal(i) };
    Ok((0..ms.len()).map(interval).collect())
}

/// Variability in the time domain, over the normal intervals.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TimeDomain {
    /// Number of normal intervals.
    pub count: usize,
    /// Number of intervals left out as not normal.
    pub left_out: usize,
    /// Mean interval in ms.
    pub mean_ms: f64,
    /// Standard deviation of the intervals in ms (divisor n - 1).
    pub sdnn_ms: f64,
    /// Root of the mean square of differences between successive intervals in ms.
    pub rmssd_ms: f64,
    /// Differences of more than 50 ms between successive intervals, in per cent of the number of intervals.
    pub pnn50_percent: f64,
}

/// Time-domain variability. A difference counts only where both of its intervals are normal and follow each other.
pub fn time_domain(intervals: &[Interval]) -> Result<TimeDomain, VariabilityError> {
    let normal: Vec<f64> = intervals.iter().filter(|i| i.normal).map(|i| i.ms).collect();
    let steps: Vec<f64> =
        intervals.windows(2).filter(|w| w[0].normal && w[1].normal).map(|w| w[1].ms - w[0].ms).collect();
    if normal.len() < 3 || steps.len() < 2 {
        return Err(VariabilityError::TooFewIntervals { needed: 3, found: normal.len().min(steps.len()) });
    }
    let n = normal.len() as f64;
    let mean_ms = normal.iter().sum::<f64>() / n;
    let square = normal.iter().map(|v| (v - mean_ms) * (v - mean_ms)).sum::<f64>();
    let step_square = steps.iter().map(|v| v * v).sum::<f64>();
    Ok(TimeDomain {
        count: normal.len(),
        left_out: intervals.len() - normal.len(),
        mean_ms,
        sdnn_ms: (square / (n - 1.0)).sqrt(),
        rmssd_ms: (step_square / steps.len() as f64).sqrt(),
        // Exactly 50 ms is not more than 50 ms, whatever the last bit of a difference of two times says.
        pnn50_percent: 100.0 * steps.iter().filter(|v| v.abs() > 50.0 + 1e-6).count() as f64 / n,
    })
}

/// Variability in the frequency domain.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FrequencyDomain {
    /// Power of the intervals from 0.04 to 0.15 Hz, in ms^2.
    pub lf_ms2: f64,
    /// Power from 0.15 to 0.40 Hz, in ms^2.
    pub hf_ms2: f64,
    /// LF over HF.
    pub lf_hf: f64,
    /// LF in normalised units: per cent of the power from 0.04 to 0.40 Hz.
    pub lf_nu: f64,
}

/// Shortest stretch for the low-frequency band, in seconds: about two minutes (Task Force 1996).
pub const SPECTRUM_NEEDS_S: f64 = 120.0;
/// Rate to which the intervals are resampled, in Hz.
const GRID_HZ: f64 = 4.0;
/// Seconds in a segment of the spectrum.
const SEGMENT_S: f64 = 120.0;

/// Frequency-domain variability: the normal intervals at the times of their ends, on a natural cubic spline at 4 Hz,
/// without mean and linear trend, by Welch's method with Hann segments of two minutes overlapping by half.
pub fn frequency_domain(intervals: &[Interval]) -> Result<FrequencyDomain, VariabilityError> {
    let normal: Vec<&Interval> = intervals.iter().filter(|i| i.normal).collect();
    let found_s = match (normal.first(), normal.last()) {
        (Some(first), Some(last)) => last.end_s - first.end_s,
        _ => 0.0,
    };
    // The ends of the intervals of a two-minute recording span a little less than the recording.
    if found_s < SPECTRUM_NEEDS_S - 5.0 {
        return Err(VariabilityError::TooShort { needed_s: SPECTRUM_NEEDS_S, found_s });
    }
    let t: Vec<f64> = normal.iter().map(|i| i.end_s).collect();
    let y: Vec<f64> = normal.iter().map(|i| i.ms).collect();
    let grid: Vec<f64> = (0..=(found_s * GRID_HZ) as usize).map(|i| t[0] + i as f64 / GRID_HZ).collect();
    let mut x = resample::spline(&t, &y, &grid);
    detrend(&mut x);
    let density = fft::welch(&x, GRID_HZ, ((SEGMENT_S * GRID_HZ) as usize).min(x.len()));
    let (lf_ms2, hf_ms2) = (density.band(0.04, 0.15), density.band(0.15, 0.40));
    let share = |part: f64, of: f64| if of > 0.0 { part / of } else { 0.0 };
    Ok(FrequencyDomain {
        lf_ms2,
        hf_ms2,
        lf_hf: share(lf_ms2, hf_ms2),
        lf_nu: 100.0 * share(lf_ms2, lf_ms2 + hf_ms2),
    })
}

/// Takes off the straight line that fits best.
fn detrend(x: &mut [f64]) {
    let n = x.len() as f64;
    let middle = 0.5 * (n - 1.0);
    let mean = x.iter().sum::<f64>() / n;
    let (up, across) = x.iter().enumerate().fold((0.0, 0.0), |(u, a), (i, v)| {
        let d = i as f64 - middle;
        (u + d * (v - mean), a + d * d)
    });
    let slope = if across > 0.0 { up / across } else { 0.0 };
    x.iter_mut().enumerate().for_each(|(i, v)| *v -= mean + slope * (i as f64 - middle));
}

fn rising(beats_s: &[f64]) -> Result<(), VariabilityError> {
    if let Some(i) = beats_s.iter().position(|t| !t.is_finite()) {
        return Err(VariabilityError::NotRising { beat: i + 1 });
    }
    match beats_s.windows(2).position(|w| w[1] <= w[0]) {
        Some(i) => Err(VariabilityError::NotRising { beat: i + 2 }),
        None => Ok(()),
    }
}
