//! `detect`: the beats of a recording.

use std::path::Path;

use clap::ValueEnum;
use dicrotic::exchange::Options;
use dicrotic::measure::detect as detector;

use crate::failure::Failure;
use crate::{output, recording_file};

/// Which way the pulse points.
#[derive(Clone, Copy, ValueEnum)]
pub enum Polarity {
    /// More blood is up
    Up,
    /// More blood is down
    Down,
    /// Told from the steeper edge
    Auto,
}

/// Prints the beats' times from the first sample, in seconds, one a line.
pub fn run(
    file: &Path,
    rate_hz: Option<f64>,
    channel: Option<&str>,
    polarity: Polarity,
) -> Result<(), Failure> {
    let recorded = recording_file::read(file, &Options { rate_hz, channel })?.recorded;
    let polarity = match polarity {
        Polarity::Up => detector::Polarity::Up,
        Polarity::Down => detector::Polarity::Down,
        Polarity::Auto => detector::Polarity::Auto,
    };
    let beats = detector::detect_with(&recorded.values, recorded.rate_hz, &detector::Options { polarity });
    output::print(&beats.iter().map(|t| format!("{t:.4}\n")).collect::<String>())
}
