//! Beats counted soon after exercise, in a short window: the rate falls meanwhile.

use super::windows::{OWN, counted, judge_counted};
use super::{Needs, Question};
use crate::assess::placed::middle;
use crate::assess::rubric::{PointOf, points};
use crate::assess::sheet::Sheet;
use crate::assess::task::Task;
use crate::assess::uncertainty::uncertainty;
use crate::assess::verdict::{Finding, Step};
use crate::deed::Field;
use crate::plain::json;

const MIDDLE_READ: PointOf = PointOf::right("middle_read", &[Step::Middle]);

pub(super) const QUESTION: Question = Question {
    fields: &[
        Field::Count,
        Field::Seconds,
        Field::Multiplier,
        Field::Rate,
        Field::Middle,
        Field::Uncertainty,
    ],
    owns: &["longest_s", "within_s"],
    settle: |spec, _| Task {
        longest_s: Some(spec.longest_s.unwrap_or(15.0)),
        within_s: Some(spec.within_s.unwrap_or(60.0)),
        ..Task::default()
    },
    brief_says_window: false,
    points: &[points::CLEAN_WINDOW, points::EXACT_COUNT, points::UNITS, points::FORMULA, MIDDLE_READ],
    needs: |task, pass| {
        let short = json!({"s": pass.window_s, "longest": task.longest_s});
        let mut lines = counted(Needs { code: "short", args: short });
        lines.insert(1, Needs { code: "within", args: json!({"s": task.within_s}) });
        lines
    },
    judge,
    ..OWN
};

/// The rate of the whole record is no yardstick for a window of it here.
fn judge(sheet: &Sheet, steps: &mut Vec<Finding>) {
    judge_counted(sheet, steps);
    steps.push(middle(sheet, sheet.window()));
    steps.extend(uncertainty(sheet, false));
}
