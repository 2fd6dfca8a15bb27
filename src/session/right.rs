//! The right answer to a field of the worksheet, read off the shown recording as a student would read it: what scripts stand for
//! with `@count` and its like, and what the last rung of the hints tells. It leaves the core only when the attempt is over.

use super::attempt::Session;
use crate::assess::task::Field;
use crate::assess::window::allowed;

impl Session {
    /// The window that a field is about, in order of time, s.
    pub(super) fn window_of(&self, field: Field) -> Option<(f64, f64)> {
        match field {
            Field::Count1 | Field::Seconds1 | Field::Rate1 => self.first_window(),
            _ => self.recording()?.window(),
        }
    }

    /// The right answer to a field, in its unit, rounded as one would write it; `None` where it cannot be told: no recording, no
    /// cursors, nothing of the kind asked.
    pub(super) fn right(&self, field: Field) -> Option<f64> {
        let kept = self.recording()?;
        let length = self.window_of(field).map(|(a, b)| b - a).filter(|length| *length > 0.0);
        match field {
            Field::Count | Field::Count1 => match self.sheet.task.n {
                Some(n) => Some(f64::from(n)),
                None => self.beats_in(self.window_of(field)?),
            },
            Field::Seconds | Field::Seconds1 => length.map(hundredth),
            Field::Multiplier => length.map(|t| hundredth(60.0 / hundredth(t))),
            Field::Rate => Some((60.0 * self.right(Field::Count)? / hundredth(length?)).round()),
            Field::Rate1 => Some((60.0 * self.right(Field::Count1)? / hundredth(length?)).round()),
            Field::Uncertainty => length.map(|t| (60.0 / t).round()),
            Field::Middle => {
                let (a, b) = kept.window()?;
                Some((0.5 * (a + b) - kept.exercise_ended_s?).round())
            }
            Field::Range => kept.recording.span_at(0).map(|span| (span.code_v * 32768.0 * 1000.0).round()),
            Field::Amplitude => {
                let (a, b) = kept.a.zip(kept.b)?;
                let (low, high) = kept.value_at(a).zip(kept.value_at(b))?;
                Some((10_000.0 * (high - low).abs()).round() / 10.0)
            }
        }
    }

    /// The peaks in a window, counted exactly.
    pub(super) fn beats_in(&self, (a, b): (f64, f64)) -> Option<f64> {
        let kept = self.recording()?;
        let peaks = self.reference_peaks();
        Some(allowed(&peaks, a, b, self.criteria().edge_s, kept.delay_s).exact as f64)
    }
}

/// To the hundredth, as the readout under the trace shows it.
pub(super) fn hundredth(x: f64) -> f64 {
    (x * 100.0).round() / 100.0
}
