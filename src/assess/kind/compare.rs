//! Two windows of one recording, and how far a rate can be trusted.

use super::{PLAIN, Question, Reads, plainly};
use crate::assess::asked::{count_in, exactly, numbers};
use crate::assess::counting::judge_count;
use crate::assess::placed::apart;
use crate::assess::rubric::points;
use crate::assess::sheet::Sheet;
use crate::assess::uncertainty::uncertainty;
use crate::assess::verdict::{Finding, Step, judge_window};
use crate::deed::Field::{Count, Count1, Rate, Rate1, Seconds, Seconds1, Uncertainty};

pub(super) const QUESTION: Question = Question {
    reads: Reads::Beats,
    windows: 2,
    fields: &[Count1, Seconds1, Rate1, Count, Seconds, Rate, Uncertainty],
    holds_s: |_, pass| Some(pass.window_s),
    spared: Some(&[]),
    points: &[points::CLEAN_WINDOW, points::EXACT_COUNT, points::UNITS, points::FORMULA],
    needs: |_, _| ["two", "count", "uncertainty"].map(plainly).to_vec(),
    judge,
    ..PLAIN
};

fn judge(sheet: &Sheet, steps: &mut Vec<Finding>) {
    let (first, typed_first) = (sheet.first_window(), &sheet.typed_first);
    let in_first = first.map(|w| count_in(sheet, w));
    steps.push(judge_window(sheet.criteria, first).about(Step::Window1));
    steps.push(judge_count(typed_first.count, in_first).about(Step::Count1));
    let of_first = numbers(sheet, typed_first, first, in_first.map(exactly)).into_iter();
    steps.extend(of_first.map(|f| {
        let step = if f.step == Step::Seconds { Step::Seconds1 } else { Step::Rate1 };
        f.about(step)
    }));
    let window = sheet.window();
    let found = window.map(|w| count_in(sheet, w));
    steps.push(apart(sheet, window));
    steps.push(judge_count(sheet.typed.count, found));
    steps.extend(numbers(sheet, &sheet.typed, window, found.map(exactly)));
    steps.extend(uncertainty(sheet, true));
}
