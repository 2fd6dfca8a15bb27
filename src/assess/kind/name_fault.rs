//! What is wrong, to be named and left as it is. The names are judged beside every kind of question.

use super::{Question, Reads, no_window, nothing_drawn, plainly};

pub(super) const QUESTION: Question = Question {
    reads: Reads::Nothing,
    windows: 0,
    fields: &[],
    optional: &[],
    owns: &["one_of"],
    settle: nothing_drawn,
    holds_s: no_window,
    brief_says_window: false,
    about: &[],
    spared: None,
    points: &[],
    mends: false,
    window_topic: "window",
    needs: |_, _| ["name_test", "name_all", "name_one"].map(plainly).to_vec(),
    needs_trace: false,
    judge: |_, _| {},
};
