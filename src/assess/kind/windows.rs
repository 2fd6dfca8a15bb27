//! Beats counted in one window: of one's own choice, of a given length, or long enough for an uneven pulse.

use super::{Needs, PLAIN, Pick, Question, Reads, plainly};
use crate::assess::asked::{count_in, exactly, numbers, plausible};
use crate::assess::counting::judge_count;
use crate::assess::placed::window_asked;
use crate::assess::rubric::points;
use crate::assess::sheet::Sheet;
use crate::assess::task::{Task, TaskSpec};
use crate::assess::uncertainty::uncertainty;
use crate::assess::verdict::Finding;
use crate::deed::Field;
use crate::plain::json;

/// Windows to draw from when a scenario names none, s.
const GIVEN_S: [f64; 3] = [10.0, 15.0, 25.0];

/// A window of one's own choice.
pub(super) const OWN: Question = Question {
    reads: Reads::Beats,
    windows: 1,
    fields: &[Field::Count, Field::Seconds, Field::Multiplier, Field::Rate, Field::Uncertainty],
    optional: &[Field::Uncertainty],
    owns: &["longest_s"],
    settle: |spec, _| Task { longest_s: spec.longest_s, ..Task::default() },
    holds_s: |_, pass| Some(pass.window_s),
    brief_says_window: true,
    spared: Some(&[]),
    points: &[points::CLEAN_WINDOW, points::EXACT_COUNT, points::UNITS, points::FORMULA],
    needs: |_, pass| counted(Needs { code: "window", args: json!({"s": pass.window_s}) }),
    judge,
    ..PLAIN
};

/// A window of a given length.
pub(super) const GIVEN: Question = Question {
    owns: &["seconds"],
    settle: given,
    holds_s: |spec, pass| {
        let drawn = spec.seconds.as_deref().unwrap_or(&GIVEN_S);
        Some(drawn.iter().copied().fold(pass.window_s, f64::max))
    },
    brief_says_window: false,
    window_topic: "window_given",
    needs: |task, _| counted(Needs { code: "given", args: json!({"s": task.seconds}) }),
    ..OWN
};

/// A longer window, for an uneven pulse.
pub(super) const IRREGULAR: Question = Question {
    owns: &["at_least_s"],
    settle: |spec, _| Task { at_least_s: Some(at_least(spec)), ..Task::default() },
    holds_s: |spec, pass| Some(at_least(spec).max(pass.window_s)),
    brief_says_window: false,
    about: &["premature"],
    needs: |task, _| counted(Needs { code: "window", args: json!({"s": task.at_least_s}) }),
    ..OWN
};

fn given(spec: &TaskSpec, pick: Pick) -> Task {
    let list = spec.seconds.as_deref().unwrap_or(&GIVEN_S);
    Task { seconds: list.get(pick(list.len())).copied(), ..Task::default() }
}

fn at_least(spec: &TaskSpec) -> f64 {
    spec.at_least_s.unwrap_or(30.0)
}

/// What a count needs beside a window.
pub(super) fn counted(window: Needs) -> Vec<Needs> {
    vec![window, plainly("count"), plainly("work")]
}

/// The window and what was counted in it.
pub(super) fn judge_counted(sheet: &Sheet, steps: &mut Vec<Finding>) {
    let window = sheet.window();
    let found = window.map(|w| count_in(sheet, w));
    steps.push(window_asked(sheet, window));
    steps.push(judge_count(sheet.typed.count, found));
    steps.extend(numbers(sheet, &sheet.typed, window, found.map(exactly)));
}

fn judge(sheet: &Sheet, steps: &mut Vec<Finding>) {
    judge_counted(sheet, steps);
    steps.extend(uncertainty(sheet, false));
    let seen = plausible(sheet, steps, sheet.window());
    steps.extend(seen);
}
