//! Writes EDF+C.

use super::annotations::{list, time_keeper};
use super::fields::{Toward, eight};
use super::{ANNOTATIONS, END, HEADER, MOST_RECORD};
use crate::exchange::error::FileError;
use crate::exchange::{Outgoing, scale};
use crate::session::note::{self, Note};

/// Number of signals: the recording and its annotations.
const SIGNALS: usize = 2;
/// Most annotation bytes in a record before notes wait for the next one.
const ROOMY: usize = 2048;

/// One signal's ends in the header, and the scale that they stand for.
struct Ends {
    low: String,
    high: String,
    unit: &'static str,
    /// Value of one step, in the recording's own unit.
    step: f64,
    /// Value of code zero.
    zero: f64,
}

/// How a recording is cut into records.
struct Cut {
    /// Samples in a record.
    samples: usize,
    /// Length of a record, as the header tells it.
    seconds: String,
    seconds_value: f64,
}

/// A recording with its notes as an EDF+C file.
pub fn write(out: &Outgoing) -> Result<Vec<u8>, FileError> {
    let file = format!("{}.edf", out.name);
    let samples = &out.samples;
    let ends = ends(out).ok_or_else(|| {
        let s = scale::of(samples, i16::MIN);
        FileError::FileRange { file: file.clone(), low: s.low, high: s.high }
    })?;
    let cut = cut(samples.rate_hz());
    let records = samples.len().div_ceil(cut.samples).max(1);
    let mut notes = out.notes.to_vec();
    notes.push(Note::new(samples.duration_s(), END));
    note::in_order(&mut notes);
    let lists = lists(&notes, records, &cut).ok_or(FileError::FileNotes { file, found: notes.len() })?;
    let room = lists.iter().map(Vec::len).max().unwrap_or(0).next_multiple_of(2);

    let mut bytes = header(out, &ends, &cut, records, room);
    let mut codes: Vec<i16> = scale::codes(samples, ends.step, ends.zero, i16::MIN);
    codes.resize(records * cut.samples, codes.last().copied().unwrap_or(0));
    for (record, list) in codes.chunks(cut.samples).zip(&lists) {
        bytes.extend(record.iter().flat_map(|code| code.to_le_bytes()));
        bytes.extend(list);
        bytes.resize(bytes.len() + room - list.len(), 0);
    }
    Ok(bytes)
}

/// The ends of the scale in eight characters each. Volts, as everywhere else, unless their digits are too few.
fn ends(out: &Outgoing) -> Option<Ends> {
    let scale = scale::of(&out.samples, i16::MIN);
    let largest = scale.low.abs().max(scale.high.abs()).max(32768.0 * scale.step);
    let (factor, unit) = match out.volts {
        false => (1.0, ""),
        true if largest < 1e-6 => (1e6, "uV"),
        true if largest < 1e-3 => (1e3, "mV"),
        true => (1.0, "V"),
    };
    let end = |code: f64| (scale.zero + scale.step * code) * factor;
    let (mut bottom, mut top) = (end(-32768.0), end(32767.0));
    // A flat recording far from zero: its own scale is finer than eight characters can tell.
    if top - bottom < 1e-6 * largest * factor {
        let room = (1e-6 * largest * factor).max(1e-6);
        (bottom, top) = (bottom - room, top + room);
    }
    let low = eight(bottom, Toward::Down)?;
    let high = eight(top, Toward::Up)?;
    let (bottom, top): (f64, f64) = (low.parse().ok()?, high.parse().ok()?);
    let step = (top - bottom) / 65535.0 / factor;
    (top > bottom).then(|| Ends { low, high, unit, step, zero: bottom / factor + 32768.0 * step })
}

/// A record of about a second whose length can be told exactly, or as nearly as eight characters allow.
fn cut(rate_hz: f64) -> Cut {
    let made = |samples: usize| {
        let seconds = format!("{:.6}", samples as f64 / rate_hz);
        let seconds = seconds.trim_end_matches('0').trim_end_matches('.').chars().take(8).collect::<String>();
        let seconds_value: f64 = seconds.parse().unwrap_or(0.0);
        let off = (seconds_value * rate_hz / samples as f64 - 1.0).abs();
        (off, Cut { samples, seconds, seconds_value })
    };
    let first = (rate_hz.ceil() as usize).max(1);
    let mut best = made(first);
    // At most ten seconds, and at most half of the largest record.
    let last = ((10.0 * rate_hz) as usize).min(MOST_RECORD / 4).max(first);
    for samples in first + 1..=last {
        if best.0 < 1e-12 {
            break;
        }
        let next = made(samples);
        if next.0 < best.0 {
            best = next;
        }
    }
    best.1
}

/// The annotation lists of each record: its time, and the notes that lie in it or waited for room.
fn lists(notes: &[Note], records: usize, cut: &Cut) -> Option<Vec<Vec<u8>>> {
    let most = MOST_RECORD - 2 * cut.samples;
    let mut waiting = notes.iter().peekable();
    let mut all: Vec<Vec<u8>> = Vec::with_capacity(records);
    for k in 0..records {
        let mut lists = time_keeper(k as f64 * cut.seconds_value);
        let end = (k + 1) as f64 * cut.seconds_value;
        let last = k + 1 == records;
        while let Some(note) = waiting.next_if(|n| {
            let room = if last { most } else { most.min(ROOMY) };
            (n.at_s < end || last) && lists.len() + list(n).len() <= room
        }) {
            lists.extend(list(note));
        }
        all.push(lists);
    }
    waiting.peek().is_none().then_some(all)
}

fn header(out: &Outgoing, ends: &Ends, cut: &Cut, records: usize, room: usize) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(HEADER * (SIGNALS + 1) + records * (2 * cut.samples + room));
    let mut put = |text: &str, width: usize| {
        let end = bytes.len() + width;
        bytes.extend(text.bytes().take(width));
        bytes.resize(end, b' ');
    };
    put("0", 8);
    // Unknown code, sex, birth date and name; unknown start date, code, technician; the equipment.
    put("X X X X", 80);
    put("Startdate X X X Dicrotic", 80);
    // The date that stands for none.
    put("01.01.85", 8);
    put("00.00.00", 8);
    put(&(HEADER * (SIGNALS + 1)).to_string(), 8);
    put("EDF+C", 44);
    put(&records.to_string(), 8);
    put(&cut.seconds, 8);
    put(&SIGNALS.to_string(), 4);
    let room = (room / 2).to_string();
    let samples = cut.samples.to_string();
    let transducer = if out.volts { "finger sensor" } else { "" };
    for (width, [signal, annotations]) in [
        (16, ["Pulse", ANNOTATIONS]),
        (80, [transducer, ""]),
        (8, [ends.unit, ""]),
        (8, [ends.low.as_str(), "-1"]),
        (8, [ends.high.as_str(), "1"]),
        (8, ["-32768", "-32768"]),
        (8, ["32767", "32767"]),
        (80, ["", ""]),
        (8, [samples.as_str(), room.as_str()]),
        (32, ["", ""]),
    ] {
        put(signal, width);
        put(annotations, width);
    }
    bytes
}
