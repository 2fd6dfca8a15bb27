//! Everything that a student has put down, and what it is judged against.

use super::Criteria;
use super::task::{FIELDS, Field, Reads, Task};
use super::trace::Trace;
use super::verdict::{Reference, Typed};
use super::window::{allowed, spanned};
use crate::measure::landmarks::Landmarks;

/// The number typed into each field, in its unit; nothing where none was, or none that can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Written([Option<f64>; FIELDS.len()]);

impl Written {
    /// What is told of each field.
    pub fn of(value: impl FnMut(Field) -> Option<f64>) -> Self {
        Self(FIELDS.map(value))
    }

    /// What was typed into a field.
    pub fn get(&self, field: Field) -> Option<f64> {
        FIELDS.iter().zip(self.0).find(|(one, _)| **one == field)?.1
    }

    /// The same with another number in a field.
    pub fn with(mut self, field: Field, value: impl Into<Option<f64>>) -> Self {
        let value = value.into();
        FIELDS.iter().zip(&mut self.0).filter(|(one, _)| **one == field).for_each(|(_, slot)| *slot = value);
        self
    }
}

/// Everything that a student has put down.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// What is asked.
    pub task: Task,
    /// What must be reached.
    pub criteria: &'a Criteria,
    /// The measured stretch, where it is judged at all.
    pub trace: Option<&'a Trace>,
    /// Cursor A and cursor B, s.
    pub cursors: Option<(f64, f64)>,
    /// The first of two windows, s.
    pub first: Option<(f64, f64)>,
    /// What was typed for the window.
    pub typed: Typed,
    /// What was typed for the first of two windows.
    pub typed_first: Typed,
    /// What was typed into any field.
    pub written: Written,
    /// What it is judged against.
    pub reference: Reference<'a>,
    /// The beats' landmarks: for the height of a beat, and for who counts feet. May be empty where neither matters.
    pub landmarks: &'a [Landmarks],
    /// Values at cursor A and cursor B, V.
    pub values: Option<(f64, f64)>,
    /// Full-scale range to one side, V.
    pub range_v: f64,
    /// End of the exercise, s from the recording's start (before it: negative).
    pub exercise_ended_s: Option<f64>,
}

impl Sheet<'_> {
    /// The window between the cursors in order of time, s.
    pub fn window(&self) -> Option<(f64, f64)> {
        self.cursors.map(|(a, b)| (a.min(b), a.max(b)))
    }

    /// The first of two windows in order of time, s.
    pub fn first_window(&self) -> Option<(f64, f64)> {
        self.first.map(|(a, b)| (a.min(b), a.max(b)))
    }

    /// The windows in which feet may explain what the peaks do not: only there landmarks matter to a count or an interval.
    pub fn asks_for_feet(&self) -> Vec<(f64, f64)> {
        let (peaks, delay_s) = (self.reference.peaks, self.reference.delay_s);
        if self.task.reads() == Reads::Intervals {
            let off = |(a, b): &(f64, f64)| {
                spanned(peaks, delay_s, *a, *b).is_some_and(|s| s.1 > self.criteria.edge_s)
            };
            return self.window().filter(off).into_iter().collect();
        }
        let both =
            [(self.window(), self.typed.count), (self.first_window(), self.typed_first.count)].into_iter();
        let asks = |(window, count): (Option<(f64, f64)>, Option<f64>)| {
            let ((a, b), count) = window.zip(count)?;
            let found = allowed(peaks, a, b, self.criteria.edge_s, delay_s);
            let near = count + 2.0 >= found.least as f64 && count <= found.most as f64 + 2.0;
            (near && count != found.exact as f64).then_some((a, b))
        };
        both.filter(|_| self.task.counts()).filter_map(asks).collect()
    }
}
