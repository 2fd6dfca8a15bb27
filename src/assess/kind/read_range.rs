//! The full-scale range, and the height of a beat.

use super::{PLAIN, Question, Reads, plainly};
use crate::assess::heights::{amplitude, foot_to_peak, range};
use crate::assess::rubric::{PointOf, points};
use crate::assess::verdict::Step;
use crate::deed::Field;

const RANGE_READ: PointOf = PointOf::right("range_read", &[Step::Range]);
const HEIGHT_READ: PointOf = PointOf::right("height_read", &[Step::Amplitude]);

pub(super) const QUESTION: Question = Question {
    reads: Reads::Heights,
    windows: 1,
    fields: &[Field::Range, Field::Amplitude],
    spared: Some(&["trace_short"]),
    points: &[points::CLEAN_WINDOW, RANGE_READ, HEIGHT_READ],
    window_topic: "window_foot_peak",
    needs: |_, _| ["range", "foot_peak", "amplitude"].map(plainly).to_vec(),
    judge: |sheet, steps| steps.extend([foot_to_peak(sheet), range(sheet), amplitude(sheet)]),
    ..PLAIN
};
