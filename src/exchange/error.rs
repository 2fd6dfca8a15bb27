//! What can be wrong with a file: a code and arguments for the page, a sentence for the command line.

use super::csv::CsvError;
use serde::Serialize;
use thiserror::Error;

/// Why a file could not be read or written. Serialises as `{"code": ..., "args": {...}}`.
#[derive(Clone, Debug, Error, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
#[non_exhaustive]
pub enum FileError {
    /// A field of a header is not what it must be.
    #[error("{file}, {place} {at} ({field}): expected {}, found \"{found}\"", expected.words(*low, *high))]
    FileField {
        /// Name of the file.
        file: String,
        /// What `at` counts.
        place: Place,
        /// Where: bytes count from 0, lines from 1.
        at: usize,
        /// The field, as the standard names it.
        field: &'static str,
        /// What must stand there.
        expected: Expected,
        /// Lowest value, where there is one.
        low: f64,
        /// Highest value, where there is one.
        high: f64,
        /// The start of what stands there.
        found: String,
    },
    /// The file ends before what its header tells of.
    #[error("{file}: expected {expected} bytes, as its header tells, found {found}: it is cut short")]
    FileShort {
        /// Name of the file.
        file: String,
        /// Bytes needed.
        expected: u64,
        /// Bytes there.
        found: u64,
    },
    /// A form of file that is not read.
    #[error("{file}: {} ({found})", what.words())]
    FileUnsupported {
        /// Name of the file.
        file: String,
        /// What it is.
        what: Unsupported,
        /// How the file names it.
        found: String,
    },
    /// A header names a file that did not come with it.
    #[error("{file} keeps its samples in {needs}: open both together")]
    FileAlone {
        /// Name of the file.
        file: String,
        /// The file that it needs.
        needs: String,
    },
    /// Samples or annotations came without the header that tells what they mean.
    #[error("{file} is read with its header: open the file with the ending .hea together with it")]
    FileHeadless {
        /// Name of the file.
        file: String,
    },
    /// Files of more than one recording.
    #[error("{file} and {other} are two recordings: open one at a time")]
    FileSeveral {
        /// Name of one.
        file: String,
        /// Name of another.
        other: String,
    },
    /// The channel that was asked for is not in the file.
    #[error("{file}: no channel \"{found}\"; the channels are {known:?}")]
    FileChannel {
        /// Name of the file.
        file: String,
        /// The name that was asked for.
        found: String,
        /// The names that there are.
        known: Vec<String>,
    },
    /// The sampling rate is outside what the measurements are made for.
    #[error("{file}: expected a sampling rate of {low_hz} to {high_hz} Hz, found {found_hz} Hz")]
    FileRate {
        /// Name of the file.
        file: String,
        /// Lowest rate that is accepted.
        low_hz: f64,
        /// Highest rate that is accepted.
        high_hz: f64,
        /// The rate found.
        found_hz: f64,
    },
    /// Too few or too many samples.
    #[error("{file}: expected {low} to {high} samples, found {found}")]
    FileLength {
        /// Name of the file.
        file: String,
        /// Fewest that are accepted.
        low: u64,
        /// Most that are accepted.
        high: u64,
        /// Number found.
        found: u64,
    },
    /// Too many samples are marked as missing.
    #[error("{file}: {found} of {of} values are missing (at most one in {limit_one_in} may be)")]
    FileMissing {
        /// Name of the file.
        file: String,
        /// Number of missing values.
        found: usize,
        /// Number of samples.
        of: usize,
        /// One value in this many may be missing.
        limit_one_in: usize,
    },
    /// The samples do not add up to what the header tells.
    #[error(
        "{file}: the samples of {channel} add up to {found}, the header tells {expected}: a file is damaged"
    )]
    FileChecksum {
        /// Name of the file.
        file: String,
        /// The channel.
        channel: String,
        /// The sum in the header.
        expected: i32,
        /// The sum of the samples.
        found: i32,
    },
    /// An annotation file is not what it must be.
    #[error("{file}, byte {at}: an annotation is cut short or lies before the one that it follows")]
    FileAnnotation {
        /// Name of the file.
        file: String,
        /// Where in the file.
        at: usize,
    },
    /// The values are too large for the header's eight digits.
    #[error("{file}: values from {low} to {high} do not fit into the header's eight characters")]
    FileRange {
        /// Name of the file.
        file: String,
        /// Lowest value.
        low: f64,
        /// Highest value.
        high: f64,
    },
    /// A value that is no size of anything.
    #[error("{file}, sample {sample}: {found} is beyond {most:e}")]
    FileValue {
        /// Name of the file.
        file: String,
        /// Which sample, from 1.
        sample: usize,
        /// The value, as text: it may be no number.
        found: String,
        /// Largest value that is read.
        most: f64,
    },
    /// More notes than a file of this length holds.
    #[error("{file}: {found} notes are more than a recording of this length can hold")]
    FileNotes {
        /// Name of the file.
        file: String,
        /// Their number.
        found: usize,
    },
    /// A table of text.
    #[error(transparent)]
    #[serde(untagged)]
    Csv(#[from] CsvError),
}

/// What a place counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// Bytes from the file's start, from 0.
    Byte,
    /// Lines, from 1.
    Line,
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Byte => "byte",
            Self::Line => "line",
        })
    }
}

/// What must stand in a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Expected {
    /// A whole number from `low` to `high`.
    WholeNumber,
    /// A number.
    Number,
    /// A number above zero.
    AboveZero,
    /// A number that differs from the field's lower end.
    OtherThanLow,
    /// Something.
    Something,
}

impl Expected {
    fn words(self, low: f64, high: f64) -> String {
        match self {
            Self::WholeNumber => format!("a whole number from {low} to {high}"),
            Self::Number => "a number".into(),
            Self::AboveZero => "a number above zero".into(),
            Self::OtherThanLow => "another number than the lower end".into(),
            Self::Something => "something".into(),
        }
    }
}

/// What is not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unsupported {
    /// EDF+ whose records do not follow each other without a gap.
    Discontinuous,
    /// The 24-bit relative of EDF.
    Bdf,
    /// A format of WFDB samples.
    Format,
    /// A WFDB record of several segments.
    Segments,
    /// WFDB signals of several samples a frame.
    Frames,
    /// WFDB signals shifted against each other.
    Skew,
    /// No channel with samples.
    NoChannel,
    /// Neither a table of text, nor EDF, nor a WFDB record.
    Unknown,
}

impl Unsupported {
    fn words(self) -> &'static str {
        match self {
            Self::Discontinuous => {
                "a recording with gaps is not read, only EDF and EDF+C, which are continuous"
            }
            Self::Bdf => "24-bit BDF is not read, only EDF and EDF+",
            Self::Format => "samples are read in the formats 8, 16, 61, 80, 160 and 212, not in this one",
            Self::Segments => "a record of several segments is not read; open one segment",
            Self::Frames => "signals with several samples a frame are not read",
            Self::Skew => "signals that are shifted against each other are not read",
            Self::NoChannel => "no channel with samples",
            Self::Unknown => "neither a table of text, nor EDF, nor a WFDB record",
        }
    }
}
