//! The beats of a whole series, where they can be believed.

use super::reading::{self, Reading};
use super::series::{Series, usual_step};

/// Length of the windows that are read, in seconds.
const WINDOW_S: f64 = 10.0;
/// Seconds between their beginnings.
const STEP_S: f64 = 2.5;

/// Times of the beats, on the frames' clock, in seconds, wherever some window of ten seconds around has a rate; where
/// several have, the strongest tells. Windows begin every two and a half seconds, from the first frame on.
pub fn beats(series: &Series) -> Vec<f64> {
    let frames = series.frames();
    let (Some(first), Some(last), Some(step)) = (frames.first(), frames.last(), usual_step(frames)) else {
        return Vec::new();
    };
    let end = last.t_s + 1.5 * step.min(reading::LONGEST_GAP_S);
    let read: Vec<Reading> = (0..)
        .map(|k| first.t_s + STEP_S * f64::from(k))
        .take_while(|from| from + WINDOW_S <= end)
        .map(|from| reading::read(series, from, from + WINDOW_S))
        .collect();
    let parts = if read.is_empty() { 0 } else { read.len() + (WINDOW_S / STEP_S) as usize - 1 };
    let mut beats: Vec<f64> = Vec::new();
    for part in 0..parts {
        let (from, to) = (first.t_s + STEP_S * part as f64, first.t_s + STEP_S * (part + 1) as f64);
        let over = &read[part.saturating_sub((WINDOW_S / STEP_S) as usize - 1)..(part + 1).min(read.len())];
        let Some(best) = over.iter().max_by(|a, b| a.strength.total_cmp(&b.strength)) else { continue };
        // One beat may lie on both sides of a seam where two windows time it differently: no heart beats so soon again.
        let soonest = |last: Option<&f64>, t: f64| last.is_none_or(|last| t - last > 0.2);
        for t in best.beats.iter().copied().filter(|t| (from..to).contains(t)) {
            if soonest(beats.last(), t) {
                beats.push(t);
            }
        }
    }
    beats
}
