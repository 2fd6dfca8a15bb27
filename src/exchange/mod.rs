//! What comes in from other tools and what goes out to them.
//!
//! | module | what lives there |
//! |---|---|
//! | [`csv`] | recordings as tables of text: reader and writer |
//! | [`edf`] | European Data Format, EDF and EDF+: reader and writer |
//! | [`wfdb`] | WaveForm DataBase records with annotations: reader and writer |
//! | [`error`] | what can be wrong with a file |
//! | [`glance`] | five seconds of each channel, for choosing one |
//! | [`qr`] | a link as a picture that a phone reads |
//! | [`handin`] | what students hand in: result files, grading by replay, a class |
//! | [`bank`] | a question bank: stills with misreadings to choose from |
//! | [`study`] | a study of a class: tests, arms, the anonymous table, effects with their intervals |
//! | [`package`] | an assignment and the page that opens it, for a course site |
//! | [`zip`] | several files as one |
//! | `pulse_name` | which channel is the pulse, by its name |
//! | `formula` | text that a spreadsheet must not take for a formula |
//! | `scale` | one scale for a recording whose range changed |
//!
//! A file is known by what stands in it, not by its name: see [`import`].

pub mod bank;
pub mod class;
pub mod csv;
pub mod edf;
pub mod error;
mod formula;
pub mod glance;
pub mod handin;
pub mod package;
mod pulse_name;
pub mod qr;
mod scale;
pub mod study;
pub mod wfdb;
pub mod zip;

pub use error::FileError;
pub use scale::Samples;

use crate::session::note::{self, Note};
use csv::Recorded;
use error::Unsupported;
use serde::Serialize;

/// Most notes that are taken from a file.
pub const MOST_NOTES: usize = 200_000;
/// Largest value of a sample that is read, whatever its unit.
pub const MOST_VALUE: f64 = 1e30;
/// Longest unit that is told, characters.
const MOST_UNIT: usize = 12;
/// What files write where a value has no unit (common practice).
const NO_UNIT: [&str; 6] = ["nu", "n/a", "none", "-", "1", "adu"];
/// One sample in this many may be missing.
const MISSING_LIMIT: usize = 10;

/// A file by name and content.
pub type NamedFile = (String, Vec<u8>);

/// A form of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Format {
    /// A table of text.
    Csv,
    /// European Data Format.
    Edf,
    /// A WFDB record.
    Wfdb,
}

impl Format {
    /// The form that a file's ending asks for.
    pub fn of_ending(name: &str) -> Option<Self> {
        let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
        [("csv", Self::Csv), ("edf", Self::Edf), ("hea", Self::Wfdb)]
            .into_iter()
            .find(|(known, _)| ending.eq_ignore_ascii_case(known))
            .map(|(_, format)| format)
    }
}

/// A recording on its way out.
#[derive(Clone, Copy, Debug)]
pub struct Outgoing<'a> {
    /// Name of the file without an ending.
    pub name: &'a str,
    /// The samples.
    pub samples: Samples<'a>,
    /// The values are volts; otherwise their unit is not known.
    pub volts: bool,
    /// What is known of it, by time.
    pub notes: &'a [Note],
}

/// A recording that came in.
#[derive(Clone, Debug, PartialEq)]
pub struct Imported {
    /// The form of its file.
    pub format: Format,
    /// The samples. Values told in V, mV or uV are in V.
    pub recorded: Recorded,
    /// The file tells that its values are voltages.
    pub volts: bool,
    /// What the file notes, by time from the first sample.
    pub notes: Vec<Note>,
}

/// What the caller knows that the file may not say.
pub type Options<'a> = csv::Options<'a>;

/// The files of a recording in the form asked for.
pub fn export(format: Format, out: &Outgoing) -> Result<Vec<NamedFile>, FileError> {
    match format {
        Format::Csv => {
            let name = format!("{}.csv", out.name);
            let text = csv::write_with_notes(out.samples.rate_hz(), &out.samples.values(), out.notes);
            Ok(vec![(name, text.into_bytes())])
        }
        Format::Edf => Ok(vec![(format!("{}.edf", out.name), edf::write(out)?)]),
        Format::Wfdb => wfdb::write(out),
    }
}

/// Reads a recording from one file, or from the several files of a WFDB record, which may come in an archive as
/// [`zip::store`] makes it.
pub fn import(files: &[NamedFile], options: &Options) -> Result<Imported, FileError> {
    let read = match files {
        [(_, bytes)] if zip::is_zip(bytes) => match zip::unstore(bytes) {
            Some(inner) => import_plain(&inner, options),
            None => import_plain(files, options),
        },
        _ => import_plain(files, options),
    }?;
    // A header's scale, or a table, may hold numbers with which nothing can be worked out.
    let beyond = read.recorded.values.iter().position(|v| v.is_nan() || v.abs() > MOST_VALUE);
    match beyond {
        Some(k) => {
            let (file, found) = (read.recorded.name, read.recorded.values[k]);
            Err(FileError::FileValue { file, sample: k + 1, found: format!("{found:e}"), most: MOST_VALUE })
        }
        None => Ok(read),
    }
}

fn import_plain(files: &[NamedFile], options: &Options) -> Result<Imported, FileError> {
    let unknown = |name: &str| FileError::FileUnsupported {
        file: name.to_string(),
        what: Unsupported::Unknown,
        found: ending(name).to_string(),
    };
    let several = |one: &NamedFile, two: &NamedFile| {
        Err(FileError::FileSeveral { file: one.0.clone(), other: two.0.clone() })
    };
    let mut found: Option<(Format, &NamedFile)> = None;
    let mut rest: Option<&NamedFile> = None;
    for file in files {
        match (format_of(&file.1), found) {
            (Some(_), Some((_, first))) => return several(first, file),
            (Some(format), None) => found = Some((format, file)),
            (None, _) => rest = rest.or(Some(file)),
        }
    }
    // Only a WFDB record has several files.
    match (found, rest) {
        (Some((Format::Edf, one)), Some(two)) => return several(one, two),
        (None, Some(one)) if files.iter().filter(|f| !is_part_of_record(&f.0)).count() > 1 => {
            let two = files.iter().find(|f| f.0 != one.0).unwrap_or(one);
            return several(one, two);
        }
        _ => {}
    }
    match (found, rest) {
        (Some((Format::Edf, (name, bytes))), _) => edf::read(name, bytes, options),
        (Some((Format::Wfdb, header)), _) => wfdb::read(header, files, options),
        (_, Some((name, bytes))) => {
            let belongs = is_part_of_record(name);
            let text = std::str::from_utf8(bytes).ok().filter(|text| !text.contains('\0'));
            match text {
                Some(text) if !belongs => table(name, text, options),
                _ if belongs => Err(FileError::FileHeadless { file: name.clone() }),
                _ => Err(unknown(name)),
            }
        }
        _ => Err(unknown("")),
    }
}

fn table(name: &str, text: &str, options: &Options) -> Result<Imported, FileError> {
    let recorded = csv::read_with(name, text, options)?;
    let mut notes = csv::read_notes(text);
    for note in &mut notes {
        note.at_s -= recorded.start_s;
    }
    // A table of ours tells its gaps itself.
    let told = notes.iter().any(|n| n.text == note::MISSING);
    if !told && !recorded.gaps.is_empty() {
        notes.extend(
            recorded.gaps.iter().map(|(at_s, length_s)| Note::lasting(*at_s, *length_s, note::MISSING)),
        );
        note::in_order(&mut notes);
    }
    Ok(Imported { format: Format::Csv, recorded, volts: false, notes })
}

/// The form that a file's content shows; none for what may be a table of text or anything else.
fn format_of(bytes: &[u8]) -> Option<Format> {
    if edf::is_edf(bytes) {
        Some(Format::Edf)
    } else if wfdb::is_header(bytes) {
        Some(Format::Wfdb)
    } else {
        None
    }
}

/// Whether a name is that of samples or annotations, which are nothing without their header.
fn is_part_of_record(name: &str) -> bool {
    ["dat", "atr"].iter().any(|e| ending(name).eq_ignore_ascii_case(e))
}

/// What follows the last point of a name.
fn ending(name: &str) -> &str {
    name.rsplit_once('.').map_or("", |(_, ending)| ending)
}

/// Checks a sampling rate.
fn checked_rate(file: &str, found_hz: f64) -> Result<f64, FileError> {
    let (low_hz, high_hz) = (csv::MIN_RATE_HZ, csv::MAX_RATE_HZ);
    if (low_hz..=high_hz).contains(&found_hz) {
        return Ok(found_hz);
    }
    Err(FileError::FileRate { file: file.to_string(), low_hz, high_hz, found_hz })
}

/// Checks a number of samples.
fn checked_length(file: &str, found: u64) -> Result<usize, FileError> {
    let (low, high) = (2, csv::MAX_SAMPLES as u64);
    if (low..=high).contains(&found) {
        return Ok(found as usize);
    }
    Err(FileError::FileLength { file: file.to_string(), low, high, found })
}

/// The channel asked for, by name or by number from 1; without a wish the one that is a pulse by its name, else the first.
fn channel(file: &str, names: &[String], asked: Option<&str>) -> Result<usize, FileError> {
    if names.is_empty() {
        let (file, what) = (file.to_string(), Unsupported::NoChannel);
        return Err(FileError::FileUnsupported { file, what, found: "0".into() });
    }
    let Some(asked) = asked.map(str::trim) else {
        return Ok(pulse_name::pulse_of(names.iter().map(String::as_str)).unwrap_or(0));
    };
    names
        .iter()
        .position(|name| name.eq_ignore_ascii_case(asked))
        .or_else(|| asked.parse::<usize>().ok().filter(|n| (1..=names.len()).contains(n)).map(|n| n - 1))
        .ok_or_else(|| FileError::FileChannel {
            file: file.to_string(),
            found: asked.chars().take(40).collect(),
            known: names.to_vec(),
        })
}

/// Factor that makes volts of a unit, where it is one of voltage.
fn volts_of(unit: &str) -> Option<f64> {
    match unit.trim() {
        "V" | "Volt" => Some(1.0),
        "mV" => Some(1e-3),
        "uV" | "\u{b5}V" | "\u{3bc}V" => Some(1e-6),
        "nV" => Some(1e-9),
        _ => None,
    }
}

/// A unit as it stands beside the values that were read in it: volts for all voltages, nothing where there is none.
fn unit_text(unit: &str) -> String {
    if volts_of(unit).is_some() {
        return "V".into();
    }
    plain_unit(unit)
}

/// A unit as a file has it, nothing where there is none: values of a table stay in it.
fn plain_unit(unit: &str) -> String {
    let unit: String = plain_text(unit).chars().take(MOST_UNIT).collect();
    // WFDB header, signal(5): "NU", no units.
    if NO_UNIT.iter().any(|none| unit.eq_ignore_ascii_case(none)) { String::new() } else { unit }
}

/// Draws straight lines over missing values (NaN), repeats the first or last at the ends, and notes each stretch.
fn fill(file: &str, values: &mut [f64], rate_hz: f64, notes: &mut Vec<Note>) -> Result<usize, FileError> {
    let (of, limit_one_in) = (values.len(), MISSING_LIMIT);
    let found = values.iter().filter(|v| v.is_nan()).count();
    if found * limit_one_in > of {
        return Err(FileError::FileMissing { file: file.to_string(), found, of, limit_one_in });
    }
    let mut at = 0;
    while let Some(from) = values[at..].iter().position(|v| v.is_nan()).map(|k| at + k) {
        let to = values[from..].iter().position(|v| !v.is_nan()).map_or(of, |k| from + k);
        let before = from.checked_sub(1).map(|k| values[k]);
        let after = values.get(to).copied();
        let (a, b) = (before.or(after).unwrap_or(0.0), after.or(before).unwrap_or(0.0));
        let span = (to - from + 1) as f64;
        for (k, value) in values[from..to].iter_mut().enumerate() {
            *value = a + (b - a) * (k + 1) as f64 / span;
        }
        notes.push(Note::lasting(from as f64 / rate_hz, (to - from) as f64 / rate_hz, note::MISSING));
        at = to;
    }
    Ok(found)
}

/// Text that may stand in a file: no control characters, no blanks at its ends.
fn plain_text(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect::<String>().trim().to_string()
}
