//! Reads EDF and EDF+C. A file with gaps is refused, whatever it calls itself: by its name, EDF+D, or by the times that its
//! records keep.

use super::fields::Header;
use super::{ANNOTATIONS, HEADER, annotations};
use crate::exchange::csv::Recorded;
use crate::exchange::error::{Expected, FileError, Unsupported};
use crate::exchange::{
    Format, Imported, MOST_NOTES, Options, channel, checked_length, checked_rate, unit_text, volts_of,
};
use crate::session::note;

/// Most signals in a file that is read.
const MOST_SIGNALS: i64 = 4096;

/// Whether a file's first bytes are those of EDF, or of its 24-bit relative, which is refused by name.
pub fn is_edf(bytes: &[u8]) -> bool {
    let fixed = bytes.get(..8);
    let edf = fixed == Some(b"0       ")
        && bytes.len() > 16
        && bytes[8..16].iter().all(|b| !matches!(b, b'\n' | b'\r'));
    edf || fixed == Some(b"\xffBIOSEMI")
}

/// One signal's place and meaning.
struct Signal {
    label: String,
    /// Samples in a record.
    samples: usize,
    /// Bytes from the record's start.
    at: usize,
    /// Place of the signal in the header.
    number: usize,
}

/// Reads one signal and all annotations.
pub fn read(file: &str, bytes: &[u8], options: &Options) -> Result<Imported, FileError> {
    let unsupported =
        |what, found: String| FileError::FileUnsupported { file: file.to_string(), what, found };
    if bytes.first() == Some(&0xff) {
        return Err(unsupported(Unsupported::Bdf, "BDF".into()));
    }
    let short = |expected: usize| FileError::FileShort {
        file: file.to_string(),
        expected: expected as u64,
        found: bytes.len() as u64,
    };
    if bytes.len() < HEADER {
        return Err(short(HEADER));
    }
    let header = Header { file, bytes };
    let kind = header.text(192, 44);
    // The standard writes capitals; files are found that do not.
    let kind = kind.to_ascii_uppercase();
    if kind.starts_with("EDF+D") {
        return Err(unsupported(Unsupported::Discontinuous, "EDF+D".into()));
    }
    let count = header.whole(252, 4, "number of signals", 1, MOST_SIGNALS)? as usize;
    let length = HEADER * (count + 1);
    header.whole(184, 8, "number of bytes in the header", length as i64, length as i64)?;
    if bytes.len() < length {
        return Err(short(length));
    }
    let told = header.whole(236, 8, "number of data records", -1, 99_999_999)?;
    let seconds = header.number(244, "duration of a data record")?;

    // The header of the signals holds the first field of all of them, then the second, and so on.
    let place = |before: usize, width: usize, k: usize| HEADER + before * count + width * k;
    let mut signals = Vec::with_capacity(count);
    // Told sizes are added up wide: on a 32-bit machine they could wrap round.
    let mut told_record = 0_u64;
    for k in 0..count {
        let samples = header.whole(place(216, 8, k), 8, "samples in a data record", 1, 10_000_000)? as usize;
        let label = header.text(place(0, 16, k), 16);
        // Places beyond the file are never used: the record is refused below.
        signals.push(Signal { label, samples, at: told_record.min(u64::from(u32::MAX)) as usize, number: k });
        told_record += 2 * samples as u64;
    }
    if told_record > (bytes.len() - length) as u64 {
        let expected = length as u64 + told_record * told.max(1) as u64;
        return Err(FileError::FileShort { file: file.to_string(), expected, found: bytes.len() as u64 });
    }
    let record = told_record as usize;
    let there = (bytes.len() - length) / record;
    let records = if told < 0 { there } else { told as usize };
    let needed = (records as u64) * (record as u64) + length as u64;
    if there < records {
        return Err(FileError::FileShort {
            file: file.to_string(),
            expected: needed,
            found: bytes.len() as u64,
        });
    }

    let (notes_in, waves): (Vec<Signal>, Vec<Signal>) =
        signals.into_iter().partition(|s| s.label == ANNOTATIONS && kind.starts_with("EDF+"));
    let labels: Vec<String> = waves.iter().map(|s| s.label.clone()).collect();
    let chosen = &waves[channel(file, &labels, options.channel)?];
    if seconds <= 0.0 {
        return Err(header.wrong(244, "duration of a data record", Expected::AboveZero, 0.0, 0.0));
    }
    let rate_hz = checked_rate(file, chosen.samples as f64 / seconds)?;
    let total = checked_length(file, records as u64 * chosen.samples as u64)?;

    let k = chosen.number;
    let unit = header.text(place(96, 8, k), 8);
    let (low, high) = (
        header.number(place(104, 8, k), "physical minimum")?,
        header.number(place(112, 8, k), "physical maximum")?,
    );
    let bottom = header.whole(place(120, 8, k), 8, "digital minimum", -32768, 32767)?;
    let top = header.whole(place(128, 8, k), 8, "digital maximum", -32768, 32767)?;
    if bottom == top {
        return Err(header.wrong(place(128, 8, k), "digital maximum", Expected::OtherThanLow, 0.0, 0.0));
    }
    if low == high {
        return Err(header.wrong(place(112, 8, k), "physical maximum", Expected::OtherThanLow, 0.0, 0.0));
    }
    let factor = volts_of(&unit).unwrap_or(1.0);
    let step = (high - low) / (top - bottom) as f64;
    let mut values = Vec::with_capacity(total);
    let mut notes = Vec::new();
    let mut start_s = None;
    let mut before: Option<(usize, f64)> = None;
    // Stamps have a last digit; a gap that matters is longer than two samples.
    let slack_s = (0.1 * seconds).max(2.0 / rate_hz);
    for (number, data) in bytes[length..].chunks_exact(record).take(records).enumerate() {
        let samples = &data[chosen.at..chosen.at + 2 * chosen.samples];
        values.extend(samples.chunks_exact(2).map(|b| {
            let code = f64::from(i16::from_le_bytes([b[0], b[1]]));
            ((code - bottom as f64) * step + low) * factor
        }));
        for (n, signal) in notes_in.iter().enumerate() {
            let text = &data[signal.at..signal.at + 2 * signal.samples];
            let keeps = annotations::read(text, n == 0, &mut notes, MOST_NOTES);
            let Some(at_s) = keeps.filter(|_| n == 0) else { continue };
            start_s = start_s.or(Some(at_s));
            if let Some((last, was_s)) = before {
                let expected_s = was_s + (number - last) as f64 * seconds;
                if (at_s - expected_s).abs() > slack_s {
                    let found = format!("record {} at {at_s} s, expected {expected_s} s", number + 1);
                    return Err(unsupported(Unsupported::Discontinuous, found));
                }
            }
            before = Some((number, at_s));
        }
    }
    // Onsets are told from the time in the header; the first record may begin up to a second later.
    let start_s = start_s.unwrap_or(0.0);
    for note in &mut notes {
        note.at_s -= start_s;
    }
    note::in_order(&mut notes);
    // Our own mark tells where the last record's filling begins.
    if let Some(k) = notes.iter().rposition(annotations::is_end) {
        let end = (notes[k].at_s * rate_hz).round();
        if end >= 2.0 && end <= total as f64 && total as f64 - end < chosen.samples as f64 {
            values.truncate(end as usize);
            notes.remove(k);
        }
    }
    let recorded = Recorded {
        name: file.to_string(),
        channel: chosen.label.clone(),
        channels: labels,
        unit: unit_text(&unit),
        rate_hz,
        start_s,
        values,
        uneven: false,
        longest_step_s: 1.0 / rate_hz,
        missing: 0,
        repeated: 0,
        gaps: Vec::new(),
    };
    Ok(Imported { format: Format::Edf, recorded, volts: volts_of(&unit).is_some(), notes })
}
