//! What is worked out of one counting window: the rate from the student's own count, the height of the beats and the swing of
//! their intervals from the samples between the student's own cursors.

use super::contrast::Reading;
use crate::assess::uncertainty::SD_COUNT;
use crate::deed::Measure;
use crate::measure::landmarks;

/// Length of the pieces in each of which the longest and the shortest beat interval are looked for, s: a breath or more at any
/// usual pace.
const PIECE_S: f64 = 10.0;
/// Heights of beats that lie nearer to each other than this go up and down together (breath and slower waves, which have a
/// period of about ten seconds), s.
const ALIKE_S: f64 = 10.0;
/// Uncertainty of a swing that was seen once, as part of it (design default).
const ONCE: f64 = 0.3;

/// A counting window, worked out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measured {
    /// Length, s.
    pub seconds: f64,
    /// Beats counted; 0 where none were, and none needed to be.
    pub count: f64,
    /// Heart rate, beats/min: the uncertainty is one standard deviation of a count put down without looking at the beats.
    pub rate: Option<Reading>,
    /// Mean height of the beats, mV.
    pub amplitude: Option<Reading>,
    /// Swing of the beat intervals, ms: the longest less the shortest in each ten seconds, averaged.
    pub swing: Option<Reading>,
}

impl Measured {
    /// A window of `seconds` in which `count` beats were counted (0: they were not). `values` (V) at `rate_hz` reach some seconds over the window
    /// on both sides, so that beats at its ends are whole; `beats` are the peaks in them and `from_s` is where the window
    /// begins, s from the first value.
    pub fn of(count: f64, seconds: f64, values: &[f64], rate_hz: f64, beats: &[f64], from_s: f64) -> Self {
        let inside = from_s..from_s + seconds;
        let heights: Vec<f64> = landmarks::of_beats(values, rate_hz, beats)
            .iter()
            .filter(|beat| inside.contains(&beat.peak_s))
            .map(|beat| 1000.0 * beat.height)
            .collect();
        let peaks: Vec<f64> = beats.iter().copied().filter(|t| inside.contains(t)).collect();
        Self {
            seconds,
            count,
            rate: (count > 0.0).then(|| rate(count, seconds)),
            amplitude: mean_height(&heights, seconds),
            swing: swing(&peaks, from_s, seconds),
        }
    }

    /// One of the three.
    pub fn get(&self, measure: Measure) -> Option<Reading> {
        match measure {
            Measure::Rate => self.rate,
            Measure::Amplitude => self.amplitude,
            Measure::Swing => self.swing,
        }
    }
}

/// A rate from a count.
pub fn rate(count: f64, seconds: f64) -> Reading {
    let per = 60.0 / seconds;
    Reading { value: count * per, u: SD_COUNT * per }
}

fn mean_height(heights: &[f64], seconds: f64) -> Option<Reading> {
    let n = heights.len() as f64;
    if heights.len() < 3 {
        return None;
    }
    let mean = heights.iter().sum::<f64>() / n;
    let variance = heights.iter().map(|h| (h - mean) * (h - mean)).sum::<f64>() / (n - 1.0);
    let apart = (seconds / ALIKE_S).clamp(1.0, n);
    Some(Reading { value: mean, u: (variance / apart).sqrt() })
}

/// The swing of the intervals between peaks, in pieces of ten seconds; what is left over at the end goes with the last one.
pub fn swing(peaks: &[f64], from_s: f64, seconds: f64) -> Option<Reading> {
    let pieces = ((seconds / PIECE_S).floor() as usize).max(1);
    let mut swings = vec![(f64::INFINITY, f64::NEG_INFINITY, 0_usize); pieces];
    for pair in peaks.windows(2) {
        let k = (((pair[1] - from_s) / PIECE_S) as usize).min(pieces - 1);
        let ms = 1000.0 * (pair[1] - pair[0]);
        let (low, high, n) = swings[k];
        swings[k] = (low.min(ms), high.max(ms), n + 1);
    }
    let seen: Vec<f64> = swings.iter().filter(|s| s.2 >= 3).map(|s| s.1 - s.0).collect();
    let n = seen.len() as f64;
    if seen.is_empty() {
        return None;
    }
    let mean = seen.iter().sum::<f64>() / n;
    let u = if seen.len() == 1 {
        ONCE * mean
    } else {
        let variance = seen.iter().map(|s| (s - mean) * (s - mean)).sum::<f64>() / (n - 1.0);
        (variance / n).sqrt()
    };
    Some(Reading { value: mean, u })
}
