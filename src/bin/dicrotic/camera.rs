//! `camera`: the pulse in the colors of a fingertip on a camera.

use std::path::Path;

use dicrotic::exchange::csv::colors;
use dicrotic::fingertip::reading::{LONGEST_S, SHORTEST_S};
use dicrotic::fingertip::{self, Reading};

use crate::failure::Failure;
use crate::{output, terminal, text_file};

/// Prints a line for each window, or the times of the beats.
pub fn run(file: &Path, window_s: f64, beats: bool) -> Result<(), Failure> {
    let name = terminal::name(file);
    if !(SHORTEST_S..=LONGEST_S).contains(&window_s) {
        return Err(Failure::new(format!(
            "--window: expected {SHORTEST_S} to {LONGEST_S} seconds, found {window_s}"
        )));
    }
    let text = text_file::read(file, text_file::COLORS)?;
    let series = colors::read(&name, &text).map_err(|error| Failure::new(error.to_string()))?;
    if series.ignored() > 0 {
        terminal::say(&format!("{name}: {} frames left out, whose time does not rise", series.ignored()));
    }
    if beats {
        let beats = fingertip::beats(&series, window_s);
        return output::print(&beats.iter().map(|t| format!("{t:.4}\n")).collect::<String>());
    }
    let windows = fingertip::windows(&series, window_s);
    if windows.is_empty() {
        let frames = series.frames();
        let length = frames.last().zip(frames.first()).map_or(0.0, |(last, first)| last.t_s - first.t_s);
        return Err(Failure::new(format!(
            "{name}: {length:.3} s of frames are too short for a window of {window_s} s"
        )));
    }
    output::print(&windows.iter().map(line).collect::<String>())
}

fn line(window: &Reading) -> String {
    let Reading { from_s, to_s, rate, .. } = window;
    match rate {
        Ok(bpm) => format!("{from_s:.3},{to_s:.3},{bpm:.1}\n"),
        Err(why) => format!("{from_s:.3},{to_s:.3},refused,{why}\n"),
    }
}
