//! All that a camera has seen, as one rate.

use super::camera::Camera;
use super::reading;
use super::refusal::Refusal;
use super::series::usual_step;
use serde::{Deserialize, Serialize};

/// An interval beyond this part of the median has a stretch in it that could not be read.
const BROKEN: f64 = 1.6;

/// What a whole recording comes to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Whole {
    /// Time of the first frame, in seconds.
    pub from_s: f64,
    /// Time of the last one.
    pub to_s: f64,
    /// Beats a minute; nothing where none can be told.
    pub bpm: Option<f64>,
    /// How far that may be off, in beats a minute, by the rule of [`super::taps`]: twice what a beat scatters over the time of all
    /// intervals. A beat is found no better than a frame. Design default.
    pub uncertainty_bpm: Option<f64>,
    /// Why no rate is told.
    pub refused: Option<Refusal>,
    /// Beats found.
    pub beats: usize,
}

impl Camera {
    /// What all frames come to.
    pub fn whole(&self) -> Whole {
        let frames = self.series().frames();
        let (Some(first), Some(last), Some(step)) = (frames.first(), frames.last(), usual_step(frames))
        else {
            return Whole { refused: Some(Refusal::Gap), ..Whole::default() };
        };
        let whole = Whole { from_s: first.t_s, to_s: last.t_s, ..Whole::default() };
        let read = reading::read(self.series(), first.t_s, last.t_s);
        let bpm = match read.rate {
            Ok(bpm) => bpm,
            Err(why) => return Whole { refused: Some(why), ..whole },
        };
        let uncertainty_bpm = scatter(&read.beats, step).map(|share| share * bpm);
        Whole { bpm: Some(bpm), uncertainty_bpm, beats: read.beats.len(), ..whole }
    }
}

/// How far a rate from these beats may be off, as a share of it; nothing for fewer than two intervals.
fn scatter(beats: &[f64], step_s: f64) -> Option<f64> {
    let mut intervals: Vec<f64> = beats.windows(2).map(|w| w[1] - w[0]).collect();
    if intervals.len() < 2 {
        return None;
    }
    let middle = intervals.len() / 2;
    let median = *intervals.select_nth_unstable_by(middle, f64::total_cmp).1;
    intervals.retain(|i| *i <= BROKEN * median);
    let (count, time) = (intervals.len() as f64, intervals.iter().sum::<f64>());
    let mean = time / count;
    let square = intervals.iter().map(|i| (i - mean) * (i - mean)).sum::<f64>() / (count - 1.0).max(1.0);
    Some(2.0 * square.sqrt().max(step_s) / time)
}
