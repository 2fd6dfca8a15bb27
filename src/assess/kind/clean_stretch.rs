//! A stretch that can be measured, found on a take that lies there.

use super::{Needs, Question, Reads, no_window, nothing_drawn, plainly};
use crate::assess::rubric::PointOf;
use crate::assess::verdict::{Step, judge_window};
use crate::plain::json;

const CLEAN_STRETCH: PointOf = PointOf::right("clean_window", &[Step::Window, Step::Trace]);

pub(super) const QUESTION: Question = Question {
    reads: Reads::Stretch,
    windows: 0,
    fields: &[],
    optional: &[],
    owns: &[],
    settle: nothing_drawn,
    holds_s: no_window,
    brief_says_window: false,
    about: &[],
    // Who is only asked for a stretch has chosen neither the range nor the length of the record.
    spared: Some(&["trace_short", "trace_small", "trace_tall"]),
    points: &[CLEAN_STRETCH],
    mends: true,
    window_topic: "window",
    needs: |_, pass| vec![Needs { code: "window", args: json!({"s": pass.window_s}) }, plainly("clean")],
    needs_trace: false,
    judge: |sheet, steps| steps.push(judge_window(sheet.criteria, sheet.window())),
};
