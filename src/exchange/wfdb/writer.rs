//! Writes a record of one signal in format 16.

use super::{MISSING, annotations};
use crate::exchange::error::FileError;
use crate::exchange::{NamedFile, Outgoing, scale};

/// Header, samples and, if there are notes, annotations.
pub fn write(out: &Outgoing) -> Result<Vec<NamedFile>, FileError> {
    let samples = &out.samples;
    let record = record_name(out.name);
    if samples.is_empty() {
        let (file, low, high) = (format!("{record}.hea"), 1, crate::exchange::csv::MAX_SAMPLES as u64);
        return Err(FileError::FileLength { file, low, high, found: 0 });
    }
    let scale = scale::of(samples, MISSING + 1);
    // The code of value zero is a whole number of at most 31 bits; where it is not, the step grows until it is, and all
    // values are rounded anew.
    let least = (scale.low.abs().max(scale.high.abs())) / f64::from(1 << 30);
    let at = |step: f64, zero: f64| {
        let baseline = (-zero / step).round();
        let code = |value: f64| (value / step + baseline).round();
        let fits = code(scale.low) > f64::from(MISSING) && code(scale.high) <= 32767.0;
        fits.then_some((step, baseline))
    };
    // One step more than the extremes need leaves room for the whole number.
    let wide = ((scale.high - scale.low) / 65532.0).max(least);
    let (step, baseline) = at(scale.step.max(least), scale.zero)
        .or_else(|| at(wide, (scale.low + scale.high) / 2.0))
        .ok_or_else(|| FileError::FileRange {
            file: format!("{record}.hea"),
            low: scale.low,
            high: scale.high,
        })?;
    let zero = -baseline * step;
    let (gain, unit) = (1.0 / step, if out.volts { "V" } else { "NU" });
    let codes: Vec<i16> = scale::codes(samples, step, zero, MISSING + 1);
    let checksum = codes.iter().fold(0_i16, |sum, code| sum.wrapping_add(*code));
    let initial = codes[0];
    let (rate, length) = (samples.rate_hz(), codes.len());
    let header = format!(
        "{record} 1 {rate} {length}\n{record}.dat 16 {gain}({baseline})/{unit} 16 0 {initial} {checksum} 0 Pulse\n"
    );
    let mut files = vec![
        (format!("{record}.hea"), header.into_bytes()),
        (format!("{record}.dat"), codes.iter().flat_map(|code| code.to_le_bytes()).collect()),
    ];
    if !out.notes.is_empty() {
        files.push((format!("{record}.atr"), annotations::write(out.notes, rate, length)));
    }
    Ok(files)
}

/// A record's name has letters, digits and underscores only.
fn record_name(name: &str) -> String {
    let name: String =
        name.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '_' }).take(60).collect();
    if name.is_empty() { "recording".into() } else { name }
}
