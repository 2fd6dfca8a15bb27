//! The beats of a whole series, where they can be believed.

use super::reading::{self, Reading};
use super::series::{Series, usual_step};

/// Windows that a beat lies in.
const OVER: usize = 4;

/// Times of the beats, on the frames' clock, in seconds, wherever some window around has a rate; where several have, the
/// strongest tells. A window begins every quarter of `window_s`, from the first frame on.
pub fn beats(series: &Series, window_s: f64) -> Vec<f64> {
    let window_s = window_s.clamp(reading::SHORTEST_S, reading::LONGEST_S);
    let step_s = window_s / OVER as f64;
    let frames = series.frames();
    let (Some(first), Some(last), Some(step)) = (frames.first(), frames.last(), usual_step(frames)) else {
        return Vec::new();
    };
    let end = last.t_s + 1.5 * step.min(reading::LONGEST_GAP_S);
    let read: Vec<Reading> = (0..)
        .map(|k| first.t_s + step_s * f64::from(k))
        .take_while(|from| from + window_s <= end)
        .map(|from| reading::read(series, from, from + window_s))
        .collect();
    let parts = if read.is_empty() { 0 } else { read.len() + OVER - 1 };
    let mut beats: Vec<f64> = Vec::new();
    for part in 0..parts {
        let (from, to) = (first.t_s + step_s * part as f64, first.t_s + step_s * (part + 1) as f64);
        let over = &read[part.saturating_sub(OVER - 1)..(part + 1).min(read.len())];
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
