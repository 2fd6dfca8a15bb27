//! A given number of intervals, timed from one feature to the same feature so many beats later.

use super::{Needs, PLAIN, Question, Reads, plainly};
use crate::assess::asked::{numbers, plausible};
use crate::assess::counting::judge_intervals;
use crate::assess::placed::same_features;
use crate::assess::rubric::{PointOf, points};
use crate::assess::sheet::Sheet;
use crate::assess::task::Task;
use crate::assess::uncertainty::uncertainty;
use crate::assess::verdict::{Finding, Step};
use crate::deed::Field;
use crate::plain::json;

/// Numbers of intervals to draw from when a scenario names none.
const INTERVALS: [u32; 2] = [9, 17];

const COUNTED: PointOf = PointOf::right("intervals_counted", &[Step::Count]);
const WORKED: PointOf = PointOf::right("rate_worked", &[Step::Rate]);

pub(super) const QUESTION: Question = Question {
    reads: Reads::Intervals,
    windows: 1,
    fields: &[Field::Count, Field::Seconds, Field::Rate, Field::Uncertainty],
    optional: &[Field::Uncertainty],
    owns: &["n"],
    settle: |spec, pick| {
        let [low, high] = spec.n.unwrap_or(INTERVALS);
        Task { n: Some(low + pick((high - low + 1) as usize) as u32), ..Task::default() }
    },
    spared: Some(&[]),
    points: &[points::CLEAN_WINDOW, COUNTED, points::UNITS, WORKED],
    window_topic: "window_features",
    needs: |task, _| {
        let from_a_to_b = Needs { code: "intervals", args: json!({"n": task.n}) };
        vec![from_a_to_b, plainly("feature"), plainly("intervals_work")]
    },
    judge,
    ..PLAIN
};

fn judge(sheet: &Sheet, steps: &mut Vec<Finding>) {
    let window = sheet.window();
    let (at, spanned) = same_features(sheet);
    let asked = sheet.task.n.filter(|_| at.code == "window_other_n");
    steps.push(at);
    steps.push(judge_intervals(sheet.typed.count, spanned, asked));
    steps.extend(numbers(sheet, &sheet.typed, window, spanned.map(f64::from)));
    steps.extend(uncertainty(sheet, false));
    let seen = plausible(sheet, steps, window);
    steps.extend(seen);
}
