//! The actions on the trace and the worksheet.

use super::{Direction, Field, Measure};
use crate::physiology::Manoeuvre;
use serde::{Deserialize, Serialize};

/// Actions on the trace and the worksheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Page {
    /// Choose the time base.
    TimeBase {
        /// One of [`crate::trace::frame::TIME_BASES_S`], s a screen.
        s: f64,
    },
    /// Choose what the trace shows.
    Show {
        /// Live or hold.
        mode: Mode,
    },
    /// Start recording.
    Record {},
    /// Stop recording; the new recording is shown.
    Stop {},
    /// Show a recording.
    OpenRecording {
        /// Its number, from 0.
        recording: usize,
    },
    /// Scroll within the recording that is shown.
    Scroll {
        /// Time at the left edge, s.
        start_s: f64,
    },
    /// Put a cursor.
    Cursor {
        /// Which one.
        which: Which,
        /// Where, s from the recording's start; none takes it away.
        t: Option<f64>,
    },
    /// Mark a beat.
    Mark {
        /// Where, s from the recording's start.
        t: f64,
    },
    /// Take the mark nearest to a place away.
    Unmark {
        /// Where, s from the recording's start.
        t: f64,
    },
    /// Take all marks away.
    MarksClear {},
    /// Fill in a field of the worksheet.
    Answer {
        /// Which field.
        field: Field,
        /// As typed.
        text: String,
    },
    /// Keep the cursors and what was typed as the first of two windows.
    KeepWindow {},
    /// Forget the first of two windows.
    KeepClear {},
    /// Show a stretch of the recording over the whole trace.
    Zoom {
        /// Its beginning, s from the recording's start.
        from_s: f64,
        /// Its end.
        to_s: f64,
    },
    /// Back to what was shown before the zoom.
    ZoomOut {},
    /// Have clicks jump to the nearest peak, or not.
    Snap {
        /// Jump.
        on: bool,
    },
    /// Write something on a recording.
    Label {
        /// Its number, from 0.
        recording: usize,
        /// What.
        text: String,
    },
    /// The caution was read and is agreed to.
    Agree {},
    /// Say whether the results may be used in a study; nothing at the bench depends on it.
    Consent {
        /// They may.
        given: bool,
    },
    /// How much help is wanted; only as the first action.
    Help {
        /// How much.
        mode: Aid,
    },
    /// Ask for a hint after a check.
    Hint {},
    /// Name what is wrong with the bench.
    Name {
        /// A fault's name in the catalogue.
        fault: String,
    },
    /// Take a named fault back.
    Unname {
        /// A fault's name in the catalogue.
        fault: String,
    },
    /// Say in a line how one knows what is wrong, before the first check; nothing judges it.
    Explain {
        /// What.
        text: String,
    },
    /// Have the worksheet checked.
    Check {},
    /// After a check of an opened recording: read another window of it. Blanks and marks are emptied, cursors stay.
    AnotherWindow {},
    /// See the true rate; that ends the attempt.
    Reveal {},
    /// Let the subject do something.
    Manoeuvre {
        /// What.
        what: Manoeuvre,
    },
    /// Wait at the bench while nothing is done.
    LetPass {
        /// How long, s: one of [`LET_PASS_S`].
        s: u32,
    },
    /// Say what one expects of an experiment, before anything is recorded.
    Predict {
        /// Of what.
        measure: Measure,
        /// What becomes of it from the first condition to the last.
        direction: Direction,
        /// Why; nothing judges it.
        reason: String,
    },
    /// Write the counting window between the cursors into the experiment's table.
    AddRow {
        /// The condition that it was recorded under.
        condition: String,
    },
    /// Write a note to a row of the table.
    RowNote {
        /// The row, from 0.
        row: usize,
        /// The note.
        text: String,
    },
    /// Take a row out of the table.
    RemoveRow {
        /// The row, from 0.
        row: usize,
    },
    /// Say what the experiment has shown.
    Conclude {
        /// Of what.
        measure: Measure,
        /// What became of it from the first condition to the last.
        direction: Direction,
    },
}

/// How long one can wait at a time, s.
pub const LET_PASS_S: [u32; 2] = [60, 300];

/// What the trace shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mode {
    /// The live signal.
    Live,
    /// The live signal, paused.
    Paused,
    /// A recording.
    Recording,
}

/// A cursor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Which {
    /// Cursor A.
    A,
    /// Cursor B.
    B,
}

/// How much help an attempt has.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Aid {
    /// The bench shows how it is done.
    Shown,
    /// The bench does the set-up.
    Half,
    /// None.
    #[default]
    Alone,
}
