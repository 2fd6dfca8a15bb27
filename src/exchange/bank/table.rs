//! A bank as a table of text, one line a question. Which answer is right is its number from 1; the misreading of an answer is its name
//! in the catalogue, so that a reader of the table need not know the language of its words.

use super::{Item, MOST_WRONG, picture_name};
use crate::assess::misreading::Misreading;
use crate::exchange::handin::table::cell;

/// The table's name in the archive.
pub const NAME: &str = "questions.csv";

/// Places for answers in a line.
const ANSWERS: usize = MOST_WRONG + 1;

/// The table's head.
pub fn head() -> String {
    let mut cells: Vec<String> =
        ["id", "title", "scenario", "picture", "alt", "question"].map(Into::into).into();
    cells.extend((1..=ANSWERS).map(|k| format!("answer_{k}")));
    cells.push("right".into());
    cells.extend((1..=ANSWERS).map(|k| format!("feedback_{k}")));
    cells.extend((1..=ANSWERS).map(|k| format!("misreading_{k}")));
    cells.join(",")
}

/// The table.
pub(super) fn write(items: &[Item]) -> String {
    let mut text = format!("{}\n", head());
    for item in items {
        text += &line(item);
        text.push('\n');
    }
    text
}

fn line(item: &Item) -> String {
    let words = &item.words;
    let picture = picture_name(&item.id);
    let mut cells: Vec<String> =
        [&item.id, &words.title, &item.scenario, &picture, &words.alt, &words.question]
            .map(|t| cell(t))
            .into();
    let mut five = |of: &dyn Fn(usize) -> Option<String>| {
        cells.extend((0..ANSWERS).map(|k| of(k).unwrap_or_default()));
    };
    five(&|k| words.answers.get(k).map(|t| cell(t)));
    let mut more: Vec<String> = vec![(item.right + 1).to_string()];
    more.extend((0..ANSWERS).map(|k| words.feedback.get(k).map(|t| cell(t)).unwrap_or_default()));
    more.extend(
        (0..ANSWERS).map(|k| {
            item.slips.get(k).copied().flatten().map(Misreading::name).unwrap_or_default().to_string()
        }),
    );
    cells.extend(more);
    cells.join(",")
}
