//! Notes in a table: comments under it, which readers of tables leave out. A spreadsheet does not: text that it would take
//! for a formula has an apostrophe before it, which is taken off again here.

use super::write;
use crate::exchange::MOST_NOTES;
use crate::exchange::formula::{as_written, disarmed};
use crate::session::note::{self, Note};
use std::fmt::Write as _;

const MARK: &str = "# note,";

/// Writes a table as [`write()`] does, and under it a line `# note,<s>,<length in s or nothing>,<text>` for each note.
pub fn write_with_notes(rate_hz: f64, values: &[f64], notes: &[Note]) -> String {
    let mut text = write(rate_hz, values);
    for note in notes {
        let length = note.length_s.map_or_else(String::new, |s| s.to_string());
        // Writing to a String cannot fail.
        let _ = writeln!(
            text,
            "{MARK}{},{length},{}",
            note.at_s,
            disarmed(&crate::exchange::plain_text(&note.text))
        );
    }
    text
}

/// The notes of a table, by time; comments of any other form are none.
pub fn read_notes(text: &str) -> Vec<Note> {
    let number = |text: &str| text.parse::<f64>().ok().filter(|v| v.is_finite());
    let read = |line: &str| {
        let mut part = line.trim_end_matches('\r').strip_prefix(MARK)?.splitn(3, ',');
        let (at, length, text) = (part.next()?, part.next()?, part.next()?);
        let length_s = if length.is_empty() { None } else { Some(number(length).filter(|s| *s >= 0.0)?) };
        Some(Note { at_s: number(at)?, length_s, text: as_written(text.trim()) })
    };
    let mut notes: Vec<Note> = text.lines().filter_map(read).take(MOST_NOTES).collect();
    note::in_order(&mut notes);
    notes
}
