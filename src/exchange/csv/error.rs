//! What can be wrong with a table of text: a code and arguments for the page, a sentence for the command line.

use serde::Serialize;
use thiserror::Error;

/// Why a file could not be read. Serialises as `{"code": ..., "args": {...}}`. Lines and columns count from 1.
#[derive(Clone, Debug, Error, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
#[non_exhaustive]
pub enum CsvError {
    /// No line holds a number.
    #[error("{file}: no line with numbers in it")]
    CsvEmpty {
        /// Name of the file.
        file: String,
    },
    /// A cell is not what its column holds.
    #[error("{file}, line {line}, column {column} ({title}): expected {expected}, found \"{found}\"")]
    CsvCell {
        /// Name of the file.
        file: String,
        /// Line.
        line: usize,
        /// Column.
        column: usize,
        /// The column's name in the header; empty where there is none.
        title: String,
        /// What the column holds.
        expected: &'static str,
        /// The start of what stands there.
        found: String,
    },
    /// A line has too few cells.
    #[error("{file}, line {line}: expected at least {expected} columns, found {found}")]
    CsvColumns {
        /// Name of the file.
        file: String,
        /// Line.
        line: usize,
        /// Number of columns that are needed.
        expected: usize,
        /// Number of columns there.
        found: usize,
    },
    /// A line has more cells than the titles, or the lines above it, tell of: a comma may be both decimal and separator.
    #[error("{file}, line {line}: expected {expected} columns, as in the lines above, found {found}")]
    CsvCells {
        /// Name of the file.
        file: String,
        /// Line.
        line: usize,
        /// Number of columns that there should be.
        expected: usize,
        /// Number of columns there.
        found: usize,
    },
    /// Numbers with a comma that may be a decimal or divide thousands.
    #[error(
        "{file}, line {line}: \"{found}\" may be a decimal number or one of thousands, as \"{other}\" stands beside it; \
         write numbers without a mark between the thousands"
    )]
    CsvThousands {
        /// Name of the file.
        file: String,
        /// Line.
        line: usize,
        /// The number.
        found: String,
        /// A number of the same column without a comma.
        other: String,
    },
    /// The column that was asked for is not in the header.
    #[error("{file}: no column \"{found}\"; the columns are {known:?}")]
    CsvColumnUnknown {
        /// Name of the file.
        file: String,
        /// The name that was asked for.
        found: String,
        /// The names that there are.
        known: Vec<String>,
    },
    /// Time runs backwards, or stands still too often.
    #[error("{file}, line {line}, column {column}: time must grow, but {found_s} s follows {previous_s} s")]
    CsvTimeOrder {
        /// Name of the file.
        file: String,
        /// Line.
        line: usize,
        /// Column.
        column: usize,
        /// Time on the line before, in seconds.
        previous_s: f64,
        /// Time on this line, in seconds.
        found_s: f64,
    },
    /// A table without a time column, and no rate came with it.
    #[error("{file}: no time column, so the sampling rate must be given")]
    CsvRateMissing {
        /// Name of the file.
        file: String,
    },
    /// The sampling rate is outside what the measurements are made for.
    #[error("{file}: expected a sampling rate of {low_hz} to {high_hz} Hz, found {found_hz} Hz")]
    CsvRateRange {
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
    CsvLength {
        /// Name of the file.
        file: String,
        /// Fewest that are accepted.
        low: usize,
        /// Most that are accepted.
        high: usize,
        /// Number found; when too many, the number at which reading stopped.
        found: usize,
    },
    /// Most of the stretch has no line: a gap that straight lines would fill with millions of values.
    #[error("{file}: {gap_s} s without a line, where {usual_s} s are usual")]
    CsvGap {
        /// Name of the file.
        file: String,
        /// Longest time between two lines, s.
        gap_s: f64,
        /// Usual time between two lines, s.
        usual_s: f64,
    },
    /// Too many cells of the value column are empty.
    #[error("{file}: {found} of {of} values are missing (at most one in {limit_one_in} may be)")]
    CsvMissing {
        /// Name of the file.
        file: String,
        /// Number of missing values.
        found: usize,
        /// Number of lines.
        of: usize,
        /// One value in this many may be missing.
        limit_one_in: usize,
    },
}
