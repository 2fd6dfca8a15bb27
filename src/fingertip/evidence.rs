//! What speaks for a pulse in one mixture of colors, and for which rate.

use super::align;
use super::cycles::{self, Cycles};
use super::even::RATE_HZ;
use super::repeat;
use crate::measure::detect;

/// What was found.
#[derive(Clone, Debug)]
pub(super) struct Evidence {
    /// Beats within the stretch, in seconds on the frames' clock.
    pub beats: Vec<f64>,
    /// Rate from the first beat to the last, in beats a minute.
    pub bpm: f64,
    /// Intervals between the beats, in seconds, the shortest first.
    pub intervals: Vec<f64>,
    /// Standard deviation of the intervals over their mean.
    pub variation: f64,
    /// Time after which the stretch repeats itself, in seconds.
    pub period_s: f64,
    /// Correlation of the stretch with itself a mean interval later, -1 to 1.
    pub repeat: f64,
    /// The same half an interval later: high where every second beat was passed over.
    pub halfway: f64,
    /// What the cycles have in common.
    pub cycles: Cycles,
}

impl Evidence {
    /// How much speaks for it, up to 1.
    pub fn strength(&self) -> f64 {
        0.5 * (self.repeat + self.cycles.likeness)
    }
}

/// Looks at a signal that rises with the blood, whose first sample lies at `start_s`, from `from_s` to `to_s`; what lies
/// around is there for the filter and the detector to settle. `None` where there are too few beats to compare.
pub(super) fn evidence(y: &[f64], start_s: f64, from_s: f64, to_s: f64) -> Option<Evidence> {
    let index = |t: f64| (((t - start_s) * RATE_HZ).round().max(0.0) as usize).min(y.len());
    let stretch = &y[index(from_s)..index(to_s)];
    // Without light that changes there is nothing to find.
    let beats: Vec<f64> = align::aligned(y, &detect::detect(y, RATE_HZ))
        .into_iter()
        .map(|t| start_s + t)
        .filter(|t| (from_s..to_s).contains(t))
        .collect();
    let after: Vec<f64> = beats.iter().map(|t| t - start_s).collect();
    let cycles = cycles::cycles(y, &after)?;
    let mut intervals: Vec<f64> = beats.windows(2).map(|w| w[1] - w[0]).collect();
    intervals.sort_by(f64::total_cmp);
    let count = intervals.len() as f64;
    let mean = intervals.iter().sum::<f64>() / count;
    let spread = intervals.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / count;
    Some(Evidence {
        bpm: 60.0 / mean,
        variation: spread.sqrt() / mean,
        period_s: repeat::repeat(stretch)?.period_s,
        repeat: repeat::alike_after(stretch, (mean * RATE_HZ).round() as usize),
        halfway: repeat::alike_after(stretch, (0.5 * mean * RATE_HZ).round() as usize),
        cycles,
        intervals,
        beats,
    })
}
