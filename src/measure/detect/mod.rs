//! Finds the beats of a finger pulse.
//!
//! Five steps, each linear in the number of samples:
//! 1. `condition`: spikes limited, band-pass 0.5-8 Hz without phase shift, down to about 50 Hz.
//! 2. `candidates`: every local maximum, with the height of the rise that leads to it against what is usual there.
//! 3. `period`: how long a beat lasts from place to place, by autocorrelation and the smoothest good path through it.
//! 4. `path`: of all sequences of candidates the one whose rises are high and whose intervals fit the local period.
//! 5. `template`: how much each candidate looks like the mean of the beats found so; then step 4 once more.
//!
//! The pass band is that of the published detectors (Elgendi 2013, PLoS ONE 8:e76585, 0.5-8 Hz; from memory). Nothing
//! is fitted to single recordings: weights are round numbers, each with its reason beside it, and scores hardly
//! change when they are moved by a quarter.

mod candidates;
mod condition;
mod path;
mod period;
mod template;

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
    /// The steeper edge of the pulse is its upstroke: told from the recording as a whole.
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
/// Lowest sampling rate, in Hz, at which beats are looked for.
pub const LOWEST_RATE_HZ: f64 = 8.0;

/// Times of the systolic peaks, in seconds from the first sample, of a pulse that points up.
pub fn detect(values: &[f64], rate_hz: f64) -> Vec<f64> {
    detect_with(values, rate_hz, &Options::default())
}

/// Times of the systolic peaks in seconds from the first sample. Empty where there is nothing to find: fewer than two
/// seconds, a flat line, a rate below [`LOWEST_RATE_HZ`]. Samples that are not numbers count as the last one that was.
pub fn detect_with(values: &[f64], rate_hz: f64, options: &Options) -> Vec<f64> {
    if !(rate_hz.is_finite() && rate_hz >= LOWEST_RATE_HZ) || (values.len() as f64) < 2.0 * rate_hz {
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
    let found = candidates::candidates(&signal);
    let periods = period::periods(&signal, &found);
    let mut merit: Vec<f64> = found.peaks.iter().map(path::merit).collect();
    let first = path::best(&found.peaks, &merit, &periods);
    template::add_likeness(&signal, &found.peaks, &first, &mut merit);
    let chosen = path::best(&found.peaks, &merit, &periods);
    chosen.into_iter().map(|i| signal.start_s + found.peaks[i].at / signal.rate_hz).collect()
}
