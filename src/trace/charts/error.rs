//! Why a chart cannot be drawn.

use serde::Serialize;
use thiserror::Error;

/// The reason. Serialises as `{"code": ..., "args": {...}}`.
#[derive(Clone, Debug, Error, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
#[non_exhaustive]
pub enum ChartError {
    /// There is not one sample in the stretch.
    #[error("there are no samples from {from_s} s to {to_s} s")]
    NoSamples {
        /// Start of the stretch, s.
        from_s: f64,
        /// End of the stretch, s.
        to_s: f64,
    },
    /// The stretch ends before it begins, or an end is no number.
    #[error("a stretch must end after it begins, found {from_s} s to {to_s} s")]
    Backward {
        /// Start, s.
        from_s: f64,
        /// End, s.
        to_s: f64,
    },
    /// The stretch is too short for this chart.
    #[error("expected at least {needed_s} s of samples, found {found_s} s")]
    TooShort {
        /// Seconds needed.
        needed_s: f64,
        /// Seconds there.
        found_s: f64,
    },
    /// Too few beats for this chart.
    #[error("expected at least {needed} beats, found {found}")]
    TooFewBeats {
        /// Number needed.
        needed: usize,
        /// Number found.
        found: usize,
    },
    /// The beats differ so much in length or shape that they have no mean.
    #[error("the {found} beats are too unlike each other to be averaged")]
    Unlike {
        /// Number of beats found.
        found: usize,
    },
    /// The sampling rate is too low for this chart, or no rate.
    #[error("expected a sampling rate of at least {needed_hz} Hz, found {found_hz} Hz")]
    RateTooLow {
        /// Hz needed.
        needed_hz: f64,
        /// Hz found.
        found_hz: f64,
    },
    /// Beat times that do not rise, or are no numbers.
    #[error("beat {beat}: times of beats must rise")]
    NotRising {
        /// The beat's number from 1.
        beat: usize,
    },
    /// Samples that are no numbers, or too large for arithmetic.
    #[error("the samples are no numbers, or beyond all measure")]
    NoNumbers,
    /// Nothing moves in the stretch.
    #[error("the trace is flat: there is nothing to analyse")]
    Flat,
    /// The sheet is too small to draw on.
    #[error("expected a size of at least {needed_width}x{needed_height}, found {width}x{height}")]
    TooSmall {
        /// Least width, CSS pixels.
        needed_width: u32,
        /// Least height, CSS pixels.
        needed_height: u32,
        /// Width found.
        width: u32,
        /// Height found.
        height: u32,
    },
    /// The sheet is larger than can be drawn.
    #[error("expected a size of at most {most}x{most}, found {width}x{height}")]
    TooLarge {
        /// Largest side, CSS pixels.
        most: u32,
        /// Width found.
        width: u32,
        /// Height found.
        height: u32,
    },
    /// The drawing backend failed.
    #[error("drawing: {what}")]
    Drawing {
        /// What it said.
        what: String,
    },
}

impl ChartError {
    /// Refuses a stretch that does not go forward over a finite time.
    pub(super) fn rising(from_s: f64, to_s: f64) -> Result<(), Self> {
        let length_s = to_s - from_s;
        if length_s.is_finite() && length_s > 0.0 { Ok(()) } else { Err(Self::Backward { from_s, to_s }) }
    }
}
