//! Time-stamped annotation lists: `+onset[\x15duration]\x14text\x14\0`. The first of each record keeps the time: it
//! has the record's onset and no text.

use super::END;
use crate::exchange::plain_text;
use crate::session::note::Note;

const TEXT: u8 = 0x14;
const DURATION: u8 = 0x15;

/// Seconds with as many decimals as a microsecond needs, and a sign.
fn seconds(s: f64) -> String {
    let text = format!("{s:.6}");
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

/// The list of one note.
pub(super) fn list(note: &Note) -> Vec<u8> {
    let at = seconds(note.at_s);
    let mut out = if at.starts_with('-') { at.into_bytes() } else { format!("+{at}").into_bytes() };
    if let Some(length) = note.length_s {
        out.push(DURATION);
        out.extend(seconds(length.max(0.0)).bytes());
    }
    out.push(TEXT);
    out.extend(plain_text(&note.text).bytes());
    out.extend([TEXT, 0]);
    out
}

/// The list that keeps a record's time.
pub(super) fn time_keeper(at_s: f64) -> Vec<u8> {
    let mut out = format!("+{}", seconds(at_s)).into_bytes();
    out.extend([TEXT, TEXT, 0]);
    out
}

/// What stands in one record's part of an annotation signal. What is no list is left out, up to the next NUL.
pub(super) fn read(bytes: &[u8], first_of_record: bool, notes: &mut Vec<Note>, most: usize) -> Option<f64> {
    let mut start_s = None;
    for (k, piece) in bytes.split(|b| *b == 0).filter(|p| !p.is_empty()).enumerate() {
        let mut parts = piece.split(|b| *b == TEXT);
        let stamp = parts.next().unwrap_or_default();
        let mut times = stamp.split(|b| *b == DURATION);
        let number = |bytes: &[u8]| {
            std::str::from_utf8(bytes).ok()?.parse::<f64>().ok().filter(|v| v.is_finite() && v.abs() < 1e9)
        };
        let onset = times.next().filter(|t| t.starts_with(b"+") || t.starts_with(b"-"));
        let Some(at_s) = onset.and_then(number) else { continue };
        let length_s = times.next().and_then(number).filter(|s| *s >= 0.0);
        let texts: Vec<&[u8]> = parts.collect();
        if k == 0 && first_of_record && texts.first().is_none_or(|t| t.is_empty()) {
            start_s = Some(at_s);
        }
        for text in texts.into_iter().filter(|t| !t.is_empty()) {
            if notes.len() < most {
                let text = plain_text(&String::from_utf8_lossy(text));
                notes.push(Note { at_s, length_s, text });
            }
        }
    }
    start_s
}

/// Whether a note is our own mark of the end.
pub(super) fn is_end(note: &Note) -> bool {
    note.text == END
}
