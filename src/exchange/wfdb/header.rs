//! The header: a line for the record, a line for each signal; comments after `#`.

use crate::exchange::error::{Expected, FileError, Place, Unsupported};

/// Most signals in a record that is read.
const MOST_SIGNALS: f64 = 4096.0;
/// Steps a unit where the header tells none.
const DEFAULT_GAIN: f64 = 200.0;
/// Sampling rate where the header tells none, Hz.
const DEFAULT_RATE_HZ: f64 = 250.0;

/// What a header tells.
#[derive(Debug)]
pub(super) struct Header {
    pub record: String,
    pub rate_hz: f64,
    /// Samples of each signal, if told.
    pub length: Option<u64>,
    pub signals: Vec<Signal>,
}

/// What a header tells of a signal.
#[derive(Debug)]
pub(super) struct Signal {
    pub file: String,
    pub format: u16,
    /// Bytes before the first sample.
    pub offset: u64,
    /// Steps a unit.
    pub gain: f64,
    /// Step of value zero.
    pub baseline: f64,
    pub unit: String,
    pub initial: Option<i32>,
    pub checksum: Option<i32>,
    pub name: String,
}

/// The lines that count, with their numbers from 1.
fn lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .map(|(k, line)| (k + 1, line.trim()))
        .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
}

/// Whether a file is a header: a record line with a number of signals, and as many lines that begin with the name of a
/// file and a format.
pub fn is_header(bytes: &[u8]) -> bool {
    if bytes.len() > 1 << 20 {
        return false;
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return false };
    let mut lines = lines(text);
    let Some((_, record)) = lines.next() else { return false };
    let mut parts = record.split_whitespace();
    let (Some(name), Some(count)) = (parts.next(), parts.next()) else { return false };
    let name = name.split('/').next().unwrap_or_default();
    let named =
        !name.is_empty() && name.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'_' | b'-'));
    let rate = parts.next().is_none_or(|p| p.starts_with(|c: char| c.is_ascii_digit()));
    let signal = |line: &str| {
        let mut parts = line.split_whitespace();
        // A name with a letter tells it from a table of numbers.
        let file = parts.next().is_some_and(|f| f == "~" || f.contains(|c: char| c.is_alphabetic()));
        let segments = record.split_whitespace().next().is_some_and(|n| n.contains('/'));
        file && (segments || parts.next().is_some_and(|f| f.starts_with(|c: char| c.is_ascii_digit())))
    };
    named && rate && count.parse::<u32>().is_ok() && lines.next().is_some_and(|(_, line)| signal(line))
}

/// Reads a header.
pub(super) fn read(file: &str, bytes: &[u8]) -> Result<Header, FileError> {
    let text = String::from_utf8_lossy(bytes);
    let mut lines = lines(&text);
    let (line, first) = lines.next().unwrap_or((1, ""));
    let at = Reading { file, line };
    let mut parts = first.split_whitespace();
    let name = parts.next().ok_or_else(|| at.wrong("record name", Expected::Something, ""))?;
    if let Some((_, segments)) = name.split_once('/') {
        let (file, found) = (file.to_string(), segments.chars().take(20).collect());
        return Err(FileError::FileUnsupported { file, what: Unsupported::Segments, found });
    }
    let found = parts.next().unwrap_or_default();
    let count = at.whole("number of signals", found, 0.0, MOST_SIGNALS)? as usize;
    let rate_hz = match parts.next() {
        None => DEFAULT_RATE_HZ,
        Some(found) => {
            // The frequency of a counter may follow.
            let told = found.split(['/', '(']).next().unwrap_or_default();
            at.number("sampling frequency", told)?
        }
    };
    let length = match parts.next() {
        None => None,
        Some(found) => Some(at.whole("number of samples", found, 0.0, 1e15)? as u64).filter(|n| *n > 0),
    };
    let mut signals = Vec::new();
    for k in 0..count {
        let Some((line, text)) = lines.next() else {
            return Err(Reading { file, line: line + k + 1 }.wrong(
                "file name of a signal",
                Expected::Something,
                "",
            ));
        };
        signals.push(signal(&Reading { file, line }, text)?);
    }
    Ok(Header { record: name.to_string(), rate_hz, length, signals })
}

fn signal(at: &Reading, text: &str) -> Result<Signal, FileError> {
    let mut parts = text.split_whitespace();
    let file = parts.next().unwrap_or_default().to_string();
    let form = parts.next().unwrap_or_default();
    let refused = |what| FileError::FileUnsupported {
        file: at.file.to_string(),
        what,
        found: form.chars().take(20).collect(),
    };
    let digits = form.find(|c: char| !c.is_ascii_digit()).unwrap_or(form.len());
    let format = at.whole("format", &form[..digits], 0.0, 9999.0)? as u16;
    let mut offset = 0;
    let mut rest = &form[digits..];
    while let Some(mark) = rest.chars().next() {
        let tail = &rest[mark.len_utf8()..];
        let end = tail.find(|c: char| !c.is_ascii_digit()).unwrap_or(tail.len());
        let value = at.whole("format", &tail[..end], 0.0, 1e12)?;
        match mark {
            'x' if value > 1.0 => return Err(refused(Unsupported::Frames)),
            ':' if value > 0.0 => return Err(refused(Unsupported::Skew)),
            '+' => offset = value as u64,
            'x' | ':' => {}
            _ => return Err(refused(Unsupported::Format)),
        }
        rest = &tail[end..];
    }
    let (mut gain, mut baseline, mut unit) = (0.0, None, "mV".to_string());
    if let Some(told) = parts.next() {
        let (scale, named) = told.split_once('/').unwrap_or((told, ""));
        let (steps, base) = scale.split_once('(').map_or((scale, None), |(s, b)| (s, Some(b)));
        gain = at.number("gain", steps)?;
        if let Some(base) = base {
            baseline = Some(at.whole("baseline", base.trim_end_matches(')'), -2147483648.0, 2147483647.0)?);
        }
        if !named.is_empty() {
            unit = named.to_string();
        }
    }
    let mut next = |field: &'static str| {
        parts.next().map(|found| at.whole(field, found, -2147483648.0, 4294967295.0)).transpose()
    };
    let _resolution = next("resolution of the converter")?;
    let zero = next("zero of the converter")?.unwrap_or(0.0);
    let initial = next("initial value")?.map(|v| v as i32);
    let checksum = next("checksum")?.map(|v| v as i32);
    let _block = next("block size")?;
    let name = parts.collect::<Vec<_>>().join(" ");
    Ok(Signal {
        file,
        format,
        offset,
        gain: if gain == 0.0 { DEFAULT_GAIN } else { gain },
        baseline: baseline.unwrap_or(zero),
        unit,
        initial,
        checksum,
        name,
    })
}

/// A line under the reader's eye.
struct Reading<'a> {
    file: &'a str,
    line: usize,
}

impl Reading<'_> {
    fn whole(&self, field: &'static str, found: &str, low: f64, high: f64) -> Result<f64, FileError> {
        let value = found.parse::<i64>().ok().map(|n| n as f64).filter(|n| (low..=high).contains(n));
        value.ok_or_else(|| self.wrong_in(field, Expected::WholeNumber, low, high, found))
    }

    fn number(&self, field: &'static str, found: &str) -> Result<f64, FileError> {
        let value = found.parse::<f64>().ok().filter(|v| v.is_finite());
        value.ok_or_else(|| self.wrong(field, Expected::Number, found))
    }

    fn wrong(&self, field: &'static str, expected: Expected, found: &str) -> FileError {
        self.wrong_in(field, expected, 0.0, 0.0, found)
    }

    fn wrong_in(
        &self,
        field: &'static str,
        expected: Expected,
        low: f64,
        high: f64,
        found: &str,
    ) -> FileError {
        let (file, found) = (self.file.to_string(), found.chars().take(40).collect());
        FileError::FileField { file, place: Place::Line, at: self.line, field, expected, low, high, found }
    }
}
