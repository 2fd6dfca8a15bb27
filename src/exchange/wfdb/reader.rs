//! Reads one signal of a record, and the annotations that came with it.

use super::{annotations, header, samples};
use crate::exchange::csv::Recorded;
use crate::exchange::error::{FileError, Unsupported};
use crate::exchange::{
    Format, Imported, NamedFile, Options, channel, checked_length, checked_rate, ending, fill, unit_text,
    volts_of,
};
use crate::session::note;

/// Reads a record: its header, and the files that came with it.
pub fn read(header: &NamedFile, files: &[NamedFile], options: &Options) -> Result<Imported, FileError> {
    let (file, bytes) = header;
    let told = header::read(file, bytes)?;
    let rate_hz = checked_rate(file, told.rate_hz)?;
    let names: Vec<String> = told
        .signals
        .iter()
        .enumerate()
        .map(|(k, s)| if s.name.is_empty() { format!("{}", k + 1) } else { s.name.clone() })
        .collect();
    let chosen = channel(file, &names, options.channel)?;
    let signal = &told.signals[chosen];
    if !samples::FORMATS.contains(&signal.format) {
        let (file, what) = (file.clone(), Unsupported::Format);
        return Err(FileError::FileUnsupported { file, what, found: signal.format.to_string() });
    }
    // All signals of a file lie in it side by side.
    let beside: Vec<usize> =
        (0..told.signals.len()).filter(|k| told.signals[*k].file == signal.file).collect();
    if let Some(other) = beside.iter().map(|k| &told.signals[*k]).find(|s| s.format != signal.format) {
        let (file, what) = (file.clone(), Unsupported::Format);
        let found = format!("{}, {}", signal.format, other.format);
        return Err(FileError::FileUnsupported { file, what, found });
    }
    let (data_name, data) = file_named(files, &signal.file)
        .ok_or_else(|| FileError::FileAlone { file: file.clone(), needs: signal.file.clone() })?;
    let (format, width) = (signal.format, beside.len() as u64);
    let there = (data.len() as u64).saturating_sub(signal.offset);
    let held = samples::held(format, there) / width;
    let length = told.length.unwrap_or(held);
    let count = checked_length(data_name, length)?;
    if held < length {
        let expected = samples::needed(format, length * width).saturating_add(signal.offset);
        return Err(FileError::FileShort { file: data_name.clone(), expected, found: data.len() as u64 });
    }
    let data = &data[signal.offset.min(data.len() as u64) as usize..];
    let lane = beside.iter().position(|k| *k == chosen).unwrap_or(0);
    let factor = volts_of(&signal.unit).unwrap_or(1.0);
    let mut values = Vec::with_capacity(count);
    let mut sum = 0_i32;
    // Format 8 keeps differences from the initial value.
    let mut last = signal.initial.unwrap_or(0);
    for k in 0..count {
        let mut code = samples::sample(format, data, k * beside.len() + lane);
        if format == 8 {
            last = last.wrapping_add(code.unwrap_or(0));
            code = Some(last);
        }
        // A missing sample counts into the sum as the code that stands for it.
        sum = sum.wrapping_add(code.unwrap_or(missing(format)));
        values.push(code.map_or(f64::NAN, |c| (f64::from(c) - signal.baseline) / signal.gain * factor));
    }
    // The sum of all samples, in 16 bits.
    if let Some(expected) = signal.checksum.filter(|c| told.length.is_some() && *c as i16 != sum as i16) {
        return Err(FileError::FileChecksum {
            file: file.clone(),
            channel: names[chosen].clone(),
            expected: i32::from(expected as i16),
            found: i32::from(sum as i16),
        });
    }
    let mut notes = Vec::new();
    for (name, bytes) in files.iter().filter(|(name, _)| annotates(name, &told)) {
        notes.extend(annotations::read(name, bytes, rate_hz)?);
    }
    let missing = fill(data_name, &mut values, rate_hz, &mut notes)?;
    note::in_order(&mut notes);
    let recorded = Recorded {
        name: file.clone(),
        channel: names[chosen].clone(),
        channels: names,
        unit: unit_text(&signal.unit),
        rate_hz,
        start_s: 0.0,
        values,
        uneven: false,
        longest_step_s: 1.0 / rate_hz,
        missing,
        repeated: 0,
        gaps: Vec::new(),
    };
    Ok(Imported { format: Format::Wfdb, recorded, volts: volts_of(&signal.unit).is_some(), notes })
}

fn missing(format: u16) -> i32 {
    match format {
        80 => -128,
        212 => -2048,
        _ => i32::from(super::MISSING),
    }
}

/// The names of the files that belong to a header: samples, and the annotations of the usual ending.
pub fn companions(header: &[u8]) -> Vec<String> {
    let Ok(told) = header::read("", header) else { return Vec::new() };
    let mut names: Vec<String> = told.signals.iter().map(|s| base(&s.file).to_string()).collect();
    names.push(format!("{}.atr", base(&told.record)));
    names.sort();
    names.dedup();
    names
}

/// The last part of a name, as a page or a folder may add the way to it.
fn base(name: &str) -> &str {
    name.rsplit(['/', '\\']).next().unwrap_or(name)
}

fn file_named<'a>(files: &'a [NamedFile], name: &str) -> Option<&'a NamedFile> {
    files.iter().find(|(n, _)| base(n) == base(name))
}

/// Whether a file holds annotations of the record: its name is the record's, its ending neither that of the header nor
/// one that the header names as samples.
fn annotates(name: &str, told: &header::Header) -> bool {
    let name = base(name);
    let own = name.strip_prefix(told.record.as_str()).is_some_and(|rest| rest.starts_with('.'));
    let samples = told.signals.iter().any(|s| base(&s.file) == name);
    own && !samples
        && !["hea", "dat", "csv", "txt", "edf"].iter().any(|e| ending(name).eq_ignore_ascii_case(e))
}
