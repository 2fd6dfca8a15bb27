//! Why an action is not done. The actions themselves are in [`crate::deed`].

use crate::bench;
pub use crate::deed::{Action, Mode, Page, Which};
use crate::recorder::settings;
use serde::Serialize;

/// Why an action was not done. Nothing has changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
pub enum Refusal {
    /// The computer does not see the recorder.
    NoLink {},
    /// Nothing is plugged into the input that is shown.
    NothingInInput {
        /// The input.
        input: u8,
    },
    /// The calibrator is in the place of the sensor.
    CalibratorOn {},
    /// It cannot be changed while recording.
    Recording {
        /// What.
        what: &'static str,
    },
    /// Nothing is being recorded.
    NotRecording {},
    /// Under a second was recorded; nothing is kept.
    TooShort {},
    /// There is no such recording, or none at all.
    NoRecording {},
    /// The worksheet has not been checked yet.
    NotChecked {},
    /// The attempt has ended.
    AttemptOver {},
    /// A number outside its range.
    OutOfRange {
        /// Its name.
        field: &'static str,
        /// Lowest value.
        min: f64,
        /// Highest value.
        max: f64,
    },
    /// A value that a setting does not take.
    BadValue {
        /// The setting.
        field: &'static str,
        /// What it takes.
        expected: String,
    },
    /// The question does not ask for it.
    NotAsked {},
    /// Both cursors must be there.
    NoWindow {},
    /// There is nothing more to tell, or not yet.
    NoHint {},
    /// It can only be done first of all.
    TooLate {},
    /// The stretch is too short to be shown.
    TooNarrow {
        /// Shortest stretch, s.
        least: f64,
    },
    /// The trace is not zoomed.
    NotZoomed {},
    /// The worked example plays by itself.
    WorkedExample {},
    /// The attempt is as long as it may be.
    LogFull {
        /// Most actions.
        most: usize,
    },
    /// The bench has run as long as it may.
    WorldOver {
        /// Most samples.
        most: u64,
    },
    /// A text is longer than anybody types.
    TextTooLong {
        /// Most characters.
        max: usize,
    },
    /// A filter's corner lies at or above half the sampling rate of an opened recording.
    AboveHalfRate {
        /// The corner, Hz.
        hz: f64,
        /// Half the sampling rate, Hz.
        half_hz: f64,
    },
    /// An experiment is begun by saying what one expects.
    PredictFirst {},
    /// An experiment is concluded before the check.
    ConcludeFirst {},
    /// The window does not lie in the condition.
    OtherCondition {
        /// The condition's name for the student.
        condition: String,
        /// Where a window may begin, s after the condition began.
        from_s: f64,
        /// Where it must end.
        to_s: f64,
    },
    /// Neither is a count written down, nor are there marks in the window.
    NoCount {},
    /// The table has no such row.
    NoRow {},
    /// A row of the table has most of the window already.
    RowThere {
        /// Its number, from 1.
        row: usize,
    },
    /// Nothing was measured in a condition that is compared.
    RowsMissing {
        /// The condition's name for the student.
        condition: String,
    },
    /// There is no bench: a recording is shown.
    NoBench {},
    /// The bench refuses.
    #[serde(untagged)]
    Bench(bench::Refusal),
}

impl From<bench::Refusal> for Refusal {
    fn from(refusal: bench::Refusal) -> Self {
        Refusal::Bench(refusal)
    }
}

impl From<settings::BadValue> for Refusal {
    fn from(bad: settings::BadValue) -> Self {
        Refusal::BadValue { field: bad.field, expected: bad.expected }
    }
}
