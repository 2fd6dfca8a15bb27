//! What is wrong, to be named and left as it is. The names are judged beside every kind of question.

use super::{PLAIN, Question, plainly};

pub(super) const QUESTION: Question = Question {
    owns: &["one_of"],
    needs: |_, _| ["name_test", "name_all", "name_one"].map(plainly).to_vec(),
    ..PLAIN
};
