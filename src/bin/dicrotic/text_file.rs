//! Files that a command reads and writes, with limits and clear errors.

use std::fs::{self, File};
use std::io::Read;
use std::path::Path;

use crate::failure::{Failure, While};
use crate::{safe_output, terminal};

/// Largest file that is read, bytes: a day of samples at 1 kHz is larger, and no pulse recording is.
const MOST_BYTES: u64 = 1 << 30;

/// The text of a file.
pub fn read(path: &Path) -> Result<String, Failure> {
    text_of(read_bytes(path)?).map_err(|why| Failure::new(format!("{}: {why}", terminal::name(path))))
}

/// The bytes of a file.
pub fn read_bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    let doing = || format!("reading {}", terminal::name(path));
    if fs::metadata(path).while_doing(doing)?.is_dir() {
        return Err(Failure::new(format!("{} is a folder, not a file", terminal::name(path))));
    }
    // A device or a pipe has no size of its own: what counts is what comes.
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes)).while_doing(doing)?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(Failure::new(format!("{} has more than {MOST_BYTES} bytes", terminal::name(path))));
    }
    Ok(bytes)
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
