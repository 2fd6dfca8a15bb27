//! Finds the beats of a finger pulse.
//!
//! Four steps, each linear in the number of samples:
//! 1. [`condition`]: down to about 100 Hz, spikes limited, band-pass 0.5-8 Hz without phase shift, local pulse size.
//! 2. [`period`]: how long a beat lasts from place to place, by autocorrelation and the smoothest good path through it.
//! 3. [`candidates`]: every local maximum with the height of the rise that leads to it.
//! 4. [`path`]: of all sequences of candidates the one whose rises are high and whose intervals fit the local period.
//!
//! The pass band is that of the published detectors (Elgendi 2013, PLoS ONE 8:e76585, 0.5-8 Hz; from memory). Nothing
//! is fitted to single recordings: weights are round numbers, each with its reason beside it.

mod candidates;
mod condition;
mod path;
mod period;

use serde::{Deserialize, Serialize};

/// Which way the pulse points.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Polarity {
    /// More blood is up.
    #[default]
    Up,
    /// More blood is down, as in raw light through a finger.
    Down,
    /// The steeper edge of the pulse is its upstroke: told from the recording.
    Auto,
}

/// What the detector may be told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Options {
    /// Which way the pulse points.
    pub polarity: Polarity,
}

/// Slowest rate that is looked for, in beats a minute.
pub const SLOWEST_BPM: f64 = 28.0;
/// Fastest rate that is looked for, in beats a minute.
pub const FASTEST_BPM: f64 = 230.0;

/// Times of the systolic peaks in seconds from the first sample, of a pulse that points up.
pub fn detect(values: &[f64], rate_hz: f64) -> Vec<f64> {
    detect_with(values, rate_hz, &Options::default())
}

/// Times of the systolic peaks in seconds from the first sample. Empty where there is nothing to find: fewer than two
/// seconds, a flat line, a rate that is not a number above 4 Hz. Samples that are not numbers count as the last one
/// that was.
pub fn detect_with(values: &[f64], rate_hz: f64, options: &Options) -> Vec<f64> {
    if !(rate_hz.is_finite() && rate_hz >= 4.0) || (values.len() as f64) < 2.0 * rate_hz {
        return Vec::new();
    }
    let mut signal = condition::condition(values, rate_hz);
    let flip = match options.polarity {
        Polarity::Up => false,
        Polarity::Down => true,
        Polarity::Auto => condition::points_down(&signal),
    };
    if flip {
        signal.pulse.iter_mut().for_each(|v| *v = -*v);
    }
    let periods = period::periods(&signal);
    let found = candidates::candidates(&signal);
    path::best(&found, &periods).into_iter().map(|i| signal.start_s + found[i].at / signal.rate_hz).collect()
}
