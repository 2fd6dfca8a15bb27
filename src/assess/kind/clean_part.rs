//! A stretch that can be measured, found on a recording that lies there.

use super::{Needs, PLAIN, Question, Reads, plainly};
use crate::assess::rubric::PointOf;
use crate::assess::verdict::{Step, judge_window};
use crate::plain::json;

const CLEAN_STRETCH: PointOf = PointOf::right("clean_window", &[Step::Window, Step::Trace]);

pub(super) const QUESTION: Question = Question {
    reads: Reads::Stretch,
    // Who is only asked for a stretch has chosen neither the range nor the length of the record.
    spared: Some(&["trace_short", "trace_small", "trace_tall"]),
    points: &[CLEAN_STRETCH],
    needs: |_, pass| vec![Needs { code: "window", args: json!({"s": pass.window_s}) }, plainly("clean")],
    judge: |sheet, steps| steps.push(judge_window(sheet.criteria, sheet.window())),
    ..PLAIN
};
