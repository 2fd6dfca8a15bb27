//! A recording that was made or opened, with the cursors and beat marks that were put on it.

use super::note::{self, Note, Start};
use crate::assess::window::Peak;
use crate::recording::Recording;

/// Distance within which a click takes a mark away rather than putting another, s.
pub const MARK_REACH_S: f64 = 0.15;
/// Most marks on a recording.
pub const MOST_MARKS: usize = 2000;
/// Longest label, characters.
pub const LONGEST_LABEL: usize = 80;

/// A recording.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptRecording {
    /// The samples.
    pub recording: Recording,
    /// Time since the attempt's start of the first sample, s.
    pub start_s: f64,
    /// How late the recorder's filters showed the pulse, s.
    pub delay_s: f64,
    /// Cursor A, s from the recording's start.
    pub a: Option<f64>,
    /// Cursor B.
    pub b: Option<f64>,
    /// Beat marks, s from the recording's start, ascending.
    pub marks: Vec<f64>,
    /// What is written on it.
    pub label: String,
    /// End of the last exercise, s from the recording's start; below zero when it ended before.
    pub exercise_ended_s: Option<f64>,
    /// Time base while it was recorded, s a screen.
    pub view_s: f64,
    /// The beats of a recording that somebody else made, who is not at this bench.
    pub foreign: Option<Vec<Peak>>,
    /// How it began, if it was recorded at this bench.
    pub start: Option<Start>,
    /// Notes that came with its file and that are neither beat marks nor cursors.
    pub notes: Vec<Note>,
}

impl KeptRecording {
    /// The full-scale range under which it was recorded, to one side of zero, V.
    pub fn range_v(&self) -> f64 {
        self.recording.span_at(0).map_or(1.0, |span| span.code_v * 32768.0)
    }

    /// A recording that begins now.
    pub fn new(rate_hz: f64, start_s: f64) -> Self {
        Self::of(Recording::new(rate_hz), start_s)
    }

    /// A recording of a finished recording.
    pub fn of(recording: Recording, start_s: f64) -> Self {
        Self {
            recording,
            start_s,
            delay_s: 0.0,
            a: None,
            b: None,
            marks: Vec::new(),
            label: String::new(),
            exercise_ended_s: None,
            view_s: 10.0,
            foreign: None,
            start: None,
            notes: Vec::new(),
        }
    }

    /// Puts the notes of a file where they belong: beats to the marks, as far as there is room, cursors to the cursors,
    /// the rest to the notes. Notes outside of the recording are left out.
    pub fn annotate(&mut self, notes: &[Note]) {
        let end = self.recording.duration_s();
        for found in notes.iter().filter(|n| (0.0..=end).contains(&n.at_s)) {
            match found.text.as_str() {
                note::BEAT if self.mark(found.at_s) => {}
                note::CURSOR_A if self.a.is_none() => self.a = Some(found.at_s),
                note::CURSOR_B if self.b.is_none() => self.b = Some(found.at_s),
                // It follows from the cursors.
                note::WINDOW => {}
                _ => self.notes.push(found.clone()),
            }
        }
    }

    /// Both cursors in order of time, s.
    pub fn window(&self) -> Option<(f64, f64)> {
        self.a.zip(self.b).map(|(a, b)| (a.min(b), a.max(b)))
    }

    /// Value of the sample nearest to a time, V.
    pub fn value_at(&self, t: f64) -> Option<f64> {
        let last = self.recording.len().checked_sub(1)?;
        self.recording.volts(self.recording.sample_at(t).min(last))
    }

    /// Puts a mark; false when there are too many.
    pub fn mark(&mut self, t: f64) -> bool {
        if self.marks.len() >= MOST_MARKS {
            return false;
        }
        let at = self.marks.partition_point(|m| *m < t);
        self.marks.insert(at, t);
        true
    }

    /// Takes away the mark nearest to `t`, if one is within reach.
    pub fn unmark(&mut self, t: f64) {
        let nearest =
            self.marks.iter().enumerate().map(|(k, m)| (k, (m - t).abs())).min_by(|x, y| x.1.total_cmp(&y.1));
        if let Some((k, distance)) = nearest
            && distance <= MARK_REACH_S
        {
            self.marks.remove(k);
        }
    }

    /// Marks between the cursors.
    pub fn marks_in_window(&self) -> usize {
        self.window().map_or(0, |(a, b)| self.marks.iter().filter(|m| **m >= a && **m < b).count())
    }
}
