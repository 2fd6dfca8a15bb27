//! Files that a command reads and writes, with limits and clear errors.

use std::fs::{self, File};
use std::io::Read;
use std::path::Path;

use dicrotic::exchange::class::{roster, saved};
use dicrotic::exchange::study;
use dicrotic::fingertip::series::MOST_FRAMES;
use dicrotic::scenario::{check, plan};
use dicrotic::session::save;

use crate::failure::{Failure, While};
use crate::{safe_output, terminal};

/// A kind of file, and the most bytes that one has.
#[derive(Clone, Copy)]
pub struct Kind {
    name: &'static str,
    most: u64,
}

/// A scenario's file.
pub const SCENARIO: Kind = Kind { name: "a scenario", most: check::MOST_BYTES as u64 };
/// A course's file, or anything else that may be set.
pub const COURSE: Kind = Kind { name: "a course", most: plan::MOST_BYTES as u64 };
/// A list of students.
pub const LIST: Kind = Kind { name: "a list of students", most: roster::MOST_BYTES as u64 };
/// A class that was saved.
pub const CLASS: Kind = Kind { name: "a saved class", most: saved::MOST_BYTES as u64 };
/// A study as it was planned.
pub const STUDY: Kind = Kind { name: "a study", most: study::plan::MOST_BYTES as u64 };
/// The anonymous table of a study: of the most rows that are read, each with a hundred characters.
pub const ROWS: Kind = Kind { name: "the table of a study", most: 100 * study::rows::MOST_ROWS as u64 };
/// An attempt that was saved.
pub const ATTEMPT: Kind = Kind { name: "a saved attempt", most: save::MOST_BYTES as u64 };
/// A recording: a day of samples at 1 kHz is larger, and no pulse recording is.
pub const RECORDING: Kind = Kind { name: "a recording", most: 1 << 30 };

/// The colors of a camera: of the most frames that are read, each with a hundred characters.
pub const COLORS: Kind = Kind { name: "a table of colors", most: 100 * MOST_FRAMES as u64 };

/// The text of a file of this kind.
pub fn read(path: &Path, kind: Kind) -> Result<String, Failure> {
    text_of(read_bytes(path, kind)?).map_err(|why| Failure::new(format!("{}: {why}", terminal::name(path))))
}

/// The bytes of a file of this kind.
pub fn read_bytes(path: &Path, kind: Kind) -> Result<Vec<u8>, Failure> {
    let Kind { name, most } = kind;
    let doing = || format!("reading {}", terminal::name(path));
    let too_large = |size: String| {
        Err(Failure::new(format!("{}: {size} bytes; {name} has at most {most}", terminal::name(path))))
    };
    let facts = fs::metadata(path).while_doing(doing)?;
    if facts.is_dir() {
        return Err(Failure::new(format!("{} is a folder, not a file", terminal::name(path))));
    }
    if facts.len() > most {
        return too_large(facts.len().to_string());
    }
    // A device or a pipe has no size of its own: what counts is what comes.
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(most + 1).read_to_end(&mut bytes)).while_doing(doing)?;
    if bytes.len() as u64 > most { too_large(format!("more than {most}")) } else { Ok(bytes) }
}

/// Bytes as text, without a mark of byte order; what else it is, in words.
pub fn text_of(mut bytes: Vec<u8>) -> Result<String, String> {
    if bytes.starts_with(b"\xef\xbb\xbf") {
        bytes.drain(..3);
    }
    let start = &bytes[..bytes.len().min(400)];
    // Without its mark, UTF-16 of a text in Latin letters has a zero in every other byte.
    let zeros = |first: usize| start.iter().skip(first).step_by(2).filter(|b| **b == 0).count();
    let half = start.len() / 2;
    if start.starts_with(b"\xff\xfe")
        || start.starts_with(b"\xfe\xff")
        || (half >= 4 && zeros(0).max(zeros(1)) * 4 > half * 3)
    {
        return Err("not UTF-8 text: it was saved as UTF-16; save it as UTF-8".into());
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to() + 1;
        format!("not UTF-8 text (byte {at}): if it was saved as Latin-1 or Windows-1252, save it as UTF-8")
    })
}

/// Writes a file in place of what was there.
pub fn write(path: &Path, text: &str) -> Result<(), Failure> {
    write_bytes(path, text.as_bytes())
}

/// Writes a file that is no text in place of what was there.
pub fn write_bytes(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    safe_output::write(&[(path.to_path_buf(), bytes.to_vec())])
}
