//! Files that a command reads and writes, with limits and clear errors.

use std::fs;
use std::path::Path;

use crate::failure::{Failure, While};

/// Largest file that is read, bytes: a day of samples at 1 kHz is larger, and no pulse recording is.
const MOST_BYTES: u64 = 1 << 30;

/// The text of a file.
pub fn read(path: &Path) -> Result<String, Failure> {
    String::from_utf8(read_bytes(path)?)
        .map_err(|error| Failure::new(format!("{}: not UTF-8 text: {}", path.display(), error.utf8_error())))
}

/// The bytes of a file.
pub fn read_bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    let doing = || format!("reading {}", path.display());
    let facts = fs::metadata(path).while_doing(doing)?;
    if facts.is_dir() {
        return Err(Failure::new(format!("{} is a folder, not a file", path.display())));
    }
    if facts.len() > MOST_BYTES {
        return Err(Failure::new(format!("{} has more than {MOST_BYTES} bytes", path.display())));
    }
    fs::read(path).while_doing(doing)
}

/// Writes a file in place of what was there.
pub fn write(path: &Path, text: &str) -> Result<(), Failure> {
    write_bytes(path, text.as_bytes())
}

/// Writes a file that is no text in place of what was there.
pub fn write_bytes(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    fs::write(path, bytes).while_doing(|| format!("writing {}", path.display()))
}
