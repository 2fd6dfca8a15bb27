//! The pulse as a line to be drawn.

use super::channels::{MIXTURES, Mixture, Signals};
use super::even::{self, RATE_HZ};
use super::reading::LONGEST_GAP_S;
use super::series::Frame;

/// A pulse at [`RATE_HZ`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trace {
    /// Time of the first sample, on the frames' clock, in seconds.
    pub from_s: f64,
    /// More blood is up; about -1 to 1.
    pub values: Vec<f64>,
}

/// The pulse in each run of frames without a gap.
pub(super) fn traces(frames: &[Frame], mixture: Option<Mixture>) -> Vec<Trace> {
    let mut found: Vec<Trace> = frames
        .chunk_by(|a, b| b.t_s - a.t_s <= LONGEST_GAP_S)
        .filter(|run| run[run.len() - 1].t_s - run[0].t_s >= 1.0)
        .filter_map(|run| {
            let signals = Signals::of(&even::even(run));
            let values = mixture
                .and_then(|m| signals.pulse(m))
                .or_else(|| MIXTURES.into_iter().find_map(|m| signals.pulse(m)))?;
            Some(Trace { from_s: signals.from_s, values })
        })
        .collect();
    let mut sizes: Vec<f64> = found.iter().flat_map(|t| t.values.iter().map(|v| v.abs())).collect();
    // Nearly all of it between -1 and 1: a movement may be far larger than the pulse and has no say.
    let nearly = sizes.len() * 9 / 10;
    let size = match sizes.is_empty() {
        true => 1.0,
        false => (1.25 * *sizes.select_nth_unstable_by(nearly, f64::total_cmp).1).max(f64::MIN_POSITIVE),
    };
    found.iter_mut().flat_map(|t| &mut t.values).for_each(|v| *v /= size);
    found
}

impl Trace {
    /// Time of a sample, in seconds.
    pub fn at_s(&self, sample: usize) -> f64 {
        self.from_s + sample as f64 / RATE_HZ
    }
}
