//! Annotations in the MIT form: words of 16 bits, the code in the upper six, the samples since the annotation before
//! in the lower ten; longer waits and texts in words of their own.

use crate::exchange::error::FileError;
use crate::exchange::{MOST_NOTES, plain_text};
use crate::session::note::{BEAT, Note, in_order};

/// A normal beat.
const NORMAL: u16 = 1;
/// A comment.
const NOTE: u16 = 22;
/// The wait stands in the next two words, the high one first.
const SKIP: u16 = 59;
/// Longest text, bytes.
const MOST_TEXT: usize = 255;
/// Codes that are beats of some kind (ecgcodes of the WFDB library, from memory).
const BEATS: [u16; 19] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 25, 30, 34, 35, 38, 41];
/// What tells the length in a text, as this form has no place for it.
const LENGTH: &str = " length_s=";
/// What tells the unit of the annotations' times, where it is not a sample.
const RESOLUTION: &str = "## time resolution:";

/// One annotation on its way out.
struct Mark {
    sample: usize,
    beat: bool,
    text: String,
}

/// The annotation file of a recording of `length` samples (at least one).
pub(super) fn write(notes: &[Note], rate_hz: f64, length: usize) -> Vec<u8> {
    let mut marks: Vec<Mark> = Vec::new();
    let mut sorted = notes.to_vec();
    in_order(&mut sorted);
    for note in &sorted {
        let beat = note.text == BEAT && note.length_s.is_none();
        // Readers take a comment at sample 0 for something about the file, not about the signal.
        let first = if beat { 0.0 } else { 1.0_f64.min((length - 1) as f64) };
        let near = (note.at_s * rate_hz).round().clamp(first, (length - 1) as f64) as usize;
        let text = if beat { String::new() } else { words(note) };
        place(&mut marks, near, beat, &text, length);
    }
    let mut out = Vec::new();
    let mut before = 0;
    for mark in &marks {
        let wait = mark.sample - before;
        before = mark.sample;
        let code = if mark.beat { NORMAL } else { NOTE };
        let mut word = |w: u16| out.extend(w.to_le_bytes());
        let mut left = wait as u16 & 0x3ff;
        if wait > 0x3ff {
            word(SKIP << 10);
            word((wait >> 16) as u16);
            word(wait as u16);
            left = 0;
        }
        word(code << 10 | left);
        if !mark.text.is_empty() {
            word(63 << 10 | mark.text.len() as u16);
            out.extend(mark.text.bytes());
            if mark.text.len() % 2 == 1 {
                out.push(0);
            }
        }
    }
    out.extend([0, 0]);
    out
}

/// Puts a mark at the sample, or joins it to what is there, or takes the next free sample; at the end of the recording
/// the marks before make room.
fn place(marks: &mut Vec<Mark>, near: usize, beat: bool, text: &str, length: usize) {
    match marks.last_mut() {
        Some(last) if last.sample >= near => {
            let together = last.text.len() + text.len() + 2;
            let joins = if beat { !last.beat } else { together <= MOST_TEXT };
            if joins {
                last.beat |= beat;
                if !text.is_empty() {
                    last.text =
                        if last.text.is_empty() { text.into() } else { format!("{}; {text}", last.text) };
                }
                return;
            }
            let sample = last.sample + 1;
            marks.push(Mark { sample, beat, text: text.into() });
        }
        _ => marks.push(Mark { sample: near, beat, text: text.into() }),
    }
    let mut most = length - 1;
    for mark in marks.iter_mut().rev() {
        if mark.sample <= most {
            break;
        }
        mark.sample = most;
        most = most.saturating_sub(1);
    }
}

/// A note's text with its length, at most [`MOST_TEXT`] bytes.
fn words(note: &Note) -> String {
    let length = note.length_s.map_or_else(String::new, |s| format!("{LENGTH}{s}"));
    let mut text = plain_text(&note.text).replace("; ", ", ");
    let mut most = MOST_TEXT - length.len();
    while !text.is_char_boundary(most.min(text.len())) {
        most -= 1;
    }
    text.truncate(most);
    text + &length
}

/// Reads an annotation file. The times are samples of `rate_hz`, unless the file tells otherwise.
pub(super) fn read(file: &str, bytes: &[u8], rate_hz: f64) -> Result<Vec<Note>, FileError> {
    let mut notes = Vec::new();
    let (mut at, mut sample, mut rate) = (0, 0_i64, rate_hz);
    let damaged = |at: usize| FileError::FileAnnotation { file: file.to_string(), at };
    let word = |at: usize| match bytes.get(at..at + 2) {
        Some(b) => Ok(u16::from_le_bytes([b[0], b[1]])),
        None => Err(damaged(at)),
    };
    while at < bytes.len() && notes.len() < MOST_NOTES {
        let mut head = word(at)?;
        if head == 0 {
            break;
        }
        let began = at;
        at += 2;
        while head >> 10 == SKIP {
            let wait = i64::from((i32::from(word(at)?) << 16) | i32::from(word(at + 2)?));
            sample += wait;
            at += 4;
            head = word(at)?;
            at += 2;
        }
        let code = head >> 10;
        sample += i64::from(head & 0x3ff);
        if sample < 0 || code > 49 {
            return Err(damaged(began));
        }
        // What follows the annotation and belongs to it: numbers that are not needed here, and a text.
        let mut text = String::new();
        while at < bytes.len() {
            let next = word(at)?;
            match next >> 10 {
                60..=62 => at += 2,
                63 => {
                    let length = usize::from(next & 0x3ff);
                    let aux = bytes.get(at + 2..at + 2 + length).ok_or_else(|| damaged(at))?;
                    text = plain_text(&String::from_utf8_lossy(aux).replace('\0', " "));
                    at += 2 + length + length % 2;
                }
                _ => break,
            }
        }
        if let Some(told) = text.strip_prefix(RESOLUTION) {
            rate = told.trim().parse::<f64>().ok().filter(|r| r.is_finite() && *r > 0.0).unwrap_or(rate);
            continue;
        }
        // Code 0 marks nothing; some writers put one to end what they tell of the file.
        if code == 0 {
            continue;
        }
        let at_s = sample as f64 / rate;
        if BEATS.contains(&code) {
            notes.push(Note::new(at_s, BEAT));
        } else if text.is_empty() {
            notes.push(Note::new(at_s, format!("annotation {code}")));
        }
        notes.extend(text.split("; ").filter(|t| !t.is_empty()).map(|t| spoken(at_s, t)));
    }
    Ok(notes)
}

fn spoken(at_s: f64, text: &str) -> Note {
    let length = text.rsplit_once(LENGTH).and_then(|(text, s)| {
        s.parse::<f64>().ok().filter(|s| s.is_finite() && *s >= 0.0).map(|s| (text, s))
    });
    match length {
        Some((text, s)) => Note::lasting(at_s, s, text),
        None => Note::new(at_s, text),
    }
}
