//! Recordings as tables of text: reads what real devices and spreadsheets write, and writes `t_s,value`.
//!
//! Read: a header or none (names, and a line of units under them); comma, semicolon, tab or blanks between the
//! cells; a decimal comma where it cannot be a separator (semicolons, tabs, blanks, quotes); a byte-order mark; any
//! line ends; blank lines; comments after `#`; a `sep=` line as spreadsheets write it. Time as a number of s, ms, us, min or h, as a clock time
//! or as a date with a clock time.
//!
//! Rules for what is not said:
//! - The time column is the one whose title says so; without a header, the first of two or more columns. With a
//!   header in which no title speaks of time, the first column is taken, unless a rate came along.
//! - The unit of time is told by the title (`t_ms`, `time (s)`), else by the median step: up to .1 it is seconds, up
//!   to 100 milliseconds, above that microseconds; at 10 Hz to 10 kHz no other reading is possible.
//! - Sample numbers are no time: `sample,value` needs a rate from elsewhere.
//! - More numbers in a line than titles, or than in the first line, are refused, and so are values of which some have a
//!   comma before three digits and others, without one, are whole: these may be thousands.
//! - Where stamps leave a gap, a straight line stands, and [`Recorded::gaps`] tells so.
//! - The value column is the first that is neither time nor a running number, unless one is asked for by name.
//! - Comments of the form `# note,2.5,,beat` are notes: time, length or nothing, and text, as [`write_with_notes`]
//!   puts them under the table.
//! - One column with a decimal comma and no other separator reads as two columns; where the first of them cannot be
//!   time, it is taken for what it is.

mod cells;
mod clock;
pub mod colors;
mod error;
mod notes;
mod thousands;
mod uniform;

pub use error::CsvError;
pub use notes::{read_notes, write_with_notes};

use super::plain_unit;
use super::pulse_name::pulse_of;
use cells::{Cell, Separator};
use clock::TimeUnit;
use serde::{Deserialize, Serialize};
use std::fmt::Write as _;
use thousands::Thousands;

/// Most samples that are read.
pub const MAX_SAMPLES: usize = 20_000_000;
/// Lowest sampling rate that is accepted, in Hz.
pub const MIN_RATE_HZ: f64 = 10.0;
/// Highest sampling rate that is accepted, in Hz.
pub const MAX_RATE_HZ: f64 = 10_000.0;
/// One value in this many may be missing.
const MISSING_LIMIT: usize = 10;

/// A recording at a uniform rate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Recorded {
    /// Name of the file it came from.
    pub name: String,
    /// Title of the value column; empty where there was no header.
    pub channel: String,
    /// Titles of all columns that could have been chosen as values; empty without a header.
    pub channels: Vec<String>,
    /// Unit of the values, as the file has it; empty where it tells none. Of voltages in EDF and WFDB it is `V`.
    #[serde(default)]
    pub unit: String,
    /// Samples a second, in Hz.
    pub rate_hz: f64,
    /// Time of the first sample in the file, in seconds (of dates: since 1970; of clock times: since midnight).
    pub start_s: f64,
    /// The samples, in whatever unit the file has.
    pub values: Vec<f64>,
    /// Whether the stamps were uneven, so that the samples were interpolated linearly to a uniform rate.
    pub uneven: bool,
    /// Longest step between stamps, in seconds: with `uneven`, a hole over which a straight line was drawn.
    pub longest_step_s: f64,
    /// Missing values that were filled in linearly (the first or last repeated at the ends).
    pub missing: usize,
    /// Lines left out because their time was that of the line before.
    pub repeated: usize,
    /// Longer stretches without values, over which a straight line was drawn: beginning from the first sample, and length, s.
    #[serde(default)]
    pub gaps: Vec<(f64, f64)>,
}

/// What the caller knows that the file may not say.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Options<'a> {
    /// Sampling rate in Hz, for tables without a time column. Where there is one, it is what counts.
    pub rate_hz: Option<f64>,
    /// Title of the value column (case does not matter), or its number from 1.
    pub channel: Option<&'a str>,
}

/// Reads a recording that has a time column, or a comment that tells the rate.
pub fn read(name: &str, text: &str) -> Result<Recorded, CsvError> {
    read_with(name, text, &Options::default())
}

/// Reads a recording without a time column, sampled at `rate_hz`.
pub fn read_with_rate(name: &str, text: &str, rate_hz: f64) -> Result<Recorded, CsvError> {
    read_with(name, text, &Options { rate_hz: Some(rate_hz), channel: None })
}

/// Reads a recording with what `options` say.
pub fn read_with(name: &str, text: &str, options: &Options) -> Result<Recorded, CsvError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let (separator, body) = declared_separator(text);
    let rate_hz = options.rate_hz.or_else(|| cells::rate_in_comments(text));
    let separator = separator.unwrap_or_else(|| cells::separator(body));
    let table = Table::open(name, body, separator)?;
    match table.recorded(options, rate_hz) {
        // "0,51" is one number after all, as its first half is no clock.
        Err(CsvError::CsvTimeOrder { .. })
            if separator == Separator::Char(',') && rate_hz.is_some() && table.is_one_decimal_comma() =>
        {
            Table::open(name, body, Separator::None)?.recorded(options, rate_hz)
        }
        // One title over two halves: the comma is the decimal.
        Err(CsvError::CsvCells { .. })
            if separator == Separator::Char(',')
                && table.titles.len() == 1
                && table.is_one_decimal_comma() =>
        {
            Table::open(name, body, Separator::None)?.recorded(options, rate_hz)
        }
        result => result,
    }
}

/// Writes `t_s,value`, one line a sample from time zero, with as many digits as bring back the same numbers.
pub fn write(rate_hz: f64, values: &[f64]) -> String {
    let mut text = String::with_capacity(16 * values.len() + 16);
    text.push_str("t_s,value\n");
    for (i, value) in values.iter().enumerate() {
        // Writing to a String cannot fail.
        let _ = writeln!(text, "{},{value}", i as f64 / rate_hz);
    }
    text
}

/// A `sep=;` line, and the text after it.
fn declared_separator(text: &str) -> (Option<Separator>, &str) {
    let line = text.split('\n').next().unwrap_or(text);
    let mut chars = line.trim_end_matches('\r').strip_prefix("sep=").unwrap_or("").chars();
    match (chars.next(), chars.next()) {
        // The line stays in the count of lines: its line end is kept.
        (Some(c), None) => (Some(Separator::Char(c)), &text[line.len()..]),
        _ => (None, text),
    }
}

/// A table whose header has been read.
struct Table<'a> {
    name: &'a str,
    text: &'a str,
    separator: Separator,
    /// Titles in lower case, for comparing; empty without a header.
    keys: Vec<String>,
    titles: Vec<String>,
    units: Vec<String>,
    /// Number of lines above the first line of numbers.
    heads: usize,
    /// Number of cells in the first line of numbers.
    width: usize,
}

/// Which columns are read, from 0.
struct Columns {
    time: Option<usize>,
    unit: Option<TimeUnit>,
    value: usize,
    rate_hz: Option<f64>,
}

/// What stands in the columns: times as written, values with NaN where one is missing.
struct Raw {
    channel: String,
    channels: Vec<String>,
    /// Unit of the values.
    of: String,
    times: Vec<f64>,
    values: Vec<f64>,
    unit: Option<TimeUnit>,
    /// Line on which each value stood.
    lines: Vec<u32>,
    time_column: usize,
}

impl<'a> Table<'a> {
    fn open(name: &'a str, text: &'a str, separator: Separator) -> Result<Self, CsvError> {
        let mut row: Vec<Cell> = Vec::new();
        let mut heads: Vec<Vec<String>> = Vec::new();
        let comma = separator != Separator::Char(',');
        for (_, line) in cells::lines(text) {
            cells::split(line, separator, &mut row);
            let tells = |c: &Cell| {
                cells::number(&c.text, comma || c.quoted).is_some() || clock::clock_seconds(&c.text).is_some()
            };
            // Names and, under them, units: a third line without any number is a fault, and is reported as one.
            if row.iter().any(tells) || heads.len() == 2 {
                let width = row.len();
                let mut heads = heads.into_iter();
                let (titles, units) = (heads.next().unwrap_or_default(), heads.next().unwrap_or_default());
                let heads = usize::from(!titles.is_empty()) + usize::from(!units.is_empty());
                let keys = titles.iter().map(|t| t.to_lowercase()).collect();
                return Ok(Self { name, text, separator, keys, titles, units, heads, width });
            }
            heads.push(row.iter().map(|c| c.text.to_string()).collect());
        }
        Err(CsvError::CsvEmpty { file: name.to_string() })
    }

    /// Everything below the header, at a uniform rate.
    fn recorded(&self, options: &Options, rate_hz: Option<f64>) -> Result<Recorded, CsvError> {
        let columns = self.columns(options, rate_hz)?;
        let raw = self.read(&columns)?;
        let count = raw.values.len();
        let (low, high) = (2, MAX_SAMPLES);
        if count < low {
            return Err(CsvError::CsvLength { file: self.name.to_string(), low, high, found: count });
        }
        let missing = raw.values.iter().filter(|v| v.is_nan()).count();
        if missing * MISSING_LIMIT > count {
            let (file, limit_one_in) = (self.name.to_string(), MISSING_LIMIT);
            return Err(CsvError::CsvMissing { file, found: missing, of: count, limit_one_in });
        }
        uniform::uniform(self.name, raw, columns.rate_hz, missing)
    }

    /// Chooses the columns.
    fn columns(&self, options: &Options, rate_hz: Option<f64>) -> Result<Columns, CsvError> {
        let titled = self.keys.iter().position(|k| clock::is_time_title(k));
        // The number of a sample is no time: how much lies between two of them is not told.
        let index = self.keys.first().is_some_and(|k| clock::is_index_title(k));
        let time = match titled {
            Some(column) => Some(column),
            None if self.width > 1 && !index && (self.keys.is_empty() || rate_hz.is_none()) => Some(0),
            None => None,
        };
        let unit = time.and_then(|c| {
            let unit = |names: &[String]| names.get(c).and_then(|n| TimeUnit::from_title(&n.to_lowercase()));
            unit(&self.titles).or_else(|| unit(&self.units))
        });
        let free = |c: usize| Some(c) != time && !self.keys.get(c).is_some_and(|k| clock::is_index_title(k));
        let value = match options.channel {
            None => {
                let titles = || self.titles.iter().enumerate().filter(|(c, _)| *c < self.width && free(*c));
                let named = pulse_of(titles().map(|(_, title)| title.as_str()));
                named
                    .and_then(|k| titles().nth(k))
                    .map(|(c, _)| c)
                    .or_else(|| (0..self.width).find(|c| free(*c)))
            }
            Some(asked) => {
                self.titles.iter().position(|t| t.eq_ignore_ascii_case(asked.trim())).or_else(|| {
                    asked.trim().parse::<usize>().ok().filter(|n| (1..=self.width).contains(n)).map(|n| n - 1)
                })
            }
        };
        match value {
            Some(value) => {
                Ok(Columns { time, unit, value, rate_hz: if time.is_some() { None } else { rate_hz } })
            }
            None => Err(match options.channel {
                Some(found) => CsvError::CsvColumnUnknown {
                    file: self.name.to_string(),
                    found: found.to_string(),
                    known: self.titles.clone(),
                },
                None => {
                    let line = cells::lines(self.text).nth(self.heads).map_or(1, |(n, _)| n);
                    CsvError::CsvColumns { file: self.name.to_string(), line, expected: 2, found: self.width }
                }
            }),
        }
    }

    /// Whether every line is a run of digits, or two about one comma: a table of two whole numbers, or of one number
    /// with a decimal comma.
    fn is_one_decimal_comma(&self) -> bool {
        cells::lines(self.text).skip(self.heads).take(1000).all(|(_, line)| {
            let (a, b) = line.trim().split_once(',').unwrap_or((line.trim(), "0"));
            let digits = |s: &str| !s.is_empty() && s.bytes().all(|c| c.is_ascii_digit());
            digits(a.trim_start_matches(['-', '+'])) && digits(b)
        })
    }

    /// The unit of a column: from the line of units, else what stands in brackets at the end of its title.
    fn unit_of(&self, column: usize) -> String {
        if let Some(unit) = self.units.get(column).filter(|unit| !unit.trim().is_empty()) {
            return plain_unit(unit.trim_matches(|c: char| c.is_whitespace() || "()[]".contains(c)));
        }
        let title = self.titles.get(column).map_or("", |title| title.trim());
        let inner = |open: char, close: char| {
            title.strip_suffix(close).and_then(|rest| rest.rsplit_once(open)).map(|(_, unit)| unit)
        };
        plain_unit(inner('(', ')').or_else(|| inner('[', ']')).unwrap_or(""))
    }

    fn read(&self, columns: &Columns) -> Result<Raw, CsvError> {
        if columns.time.is_none() && columns.rate_hz.is_none() {
            return Err(CsvError::CsvRateMissing { file: self.name.to_string() });
        }
        let comma = self.separator != Separator::Char(',');
        let needed = columns.time.map_or(columns.value, |t| t.max(columns.value)) + 1;
        let mut row: Vec<Cell> = Vec::new();
        let title = |c: usize| self.titles.get(c).cloned().unwrap_or_default();
        let chosen = |c: &usize| Some(*c) != columns.time && !clock::is_index_title(&self.keys[*c]);
        let mut raw = Raw {
            channel: title(columns.value),
            channels: (0..self.keys.len()).filter(chosen).map(title).collect(),
            of: self.unit_of(columns.value),
            times: Vec::new(),
            values: Vec::new(),
            unit: columns.unit,
            lines: Vec::new(),
            time_column: columns.time.unwrap_or(0),
        };
        let wrong = |line, c: usize, expected, found: &str| CsvError::CsvCell {
            file: self.name.to_string(),
            line,
            column: c + 1,
            title: title(c),
            expected,
            found: found.chars().take(40).collect(),
        };
        let mut thousands = Thousands::default();
        // As many as there are titles; without any, as many as the first line has. Fewer titles than columns of numbers
        // are as wrong as a line with more.
        let width = if self.titles.is_empty() { self.width } else { self.titles.len() };
        let mut day_s = 0.0;
        for (line, text) in cells::lines(self.text).skip(self.heads) {
            cells::split(text, self.separator, &mut row);
            if row.len() < needed {
                let (file, found) = (self.name.to_string(), row.len());
                return Err(CsvError::CsvColumns { file, line, expected: needed, found });
            }
            let more = row.iter().skip(width).any(|c| cells::number(&c.text, comma || c.quoted).is_some());
            if more && self.separator != Separator::Blanks {
                let (file, found) = (self.name.to_string(), row.len());
                return Err(CsvError::CsvCells { file, line, expected: width, found });
            }
            if raw.values.len() == MAX_SAMPLES {
                let (low, high, found) = (2, MAX_SAMPLES, MAX_SAMPLES + 1);
                return Err(CsvError::CsvLength { file: self.name.to_string(), low, high, found });
            }
            let cell = &row[columns.value];
            raw.values.push(match cells::number(&cell.text, comma || cell.quoted) {
                Some(value) => value,
                None if cells::is_missing(&cell.text) => f64::NAN,
                None => return Err(wrong(line, columns.value, "a number", &cell.text)),
            });
            thousands.see(&cell.text, line);
            raw.lines.push(u32::try_from(line).unwrap_or(u32::MAX));
            let Some(c) = columns.time else { continue };
            let cell = &row[c];
            if let Some(time) = cells::number(&cell.text, comma || cell.quoted) {
                raw.times.push(time);
            } else if let Some(time) = clock::clock_seconds(&cell.text) {
                // A clock without a date starts again at midnight.
                if raw.times.last().is_some_and(|last| time + day_s < last - 43_200.0) {
                    day_s += 86_400.0;
                }
                raw.times.push(time + day_s);
                raw.unit = Some(TimeUnit::Seconds);
            } else {
                return Err(wrong(line, c, "a time (number, hh:mm:ss or date and hh:mm:ss)", &cell.text));
            }
        }
        match thousands.found() {
            Some((line, found, other)) => {
                Err(CsvError::CsvThousands { file: self.name.to_string(), line, found, other })
            }
            None => Ok(raw),
        }
    }
}
