//! The files below a folder that strangers filled. Each item that cannot be read is told with its reason, and the rest goes
//! on: a link that leads in a circle, a folder that is closed, a pipe that would never end.

use std::ffi::OsStr;
use std::fs::{self, FileType};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

/// Most items of one folder, with all below it, that are looked at.
pub const MOST_ITEMS: usize = 20_000;
/// How many folders deep is looked.
pub const MOST_DEPTH: usize = 16;

/// What was found: a file, or an item that is not read and why.
pub type Found = Result<PathBuf, (PathBuf, String)>;

/// Everything below `top`, by name.
pub fn items(top: &Path) -> Vec<Found> {
    walked(top, |_| false)
}

/// The same without what is hidden: what editors and tools keep for themselves under a name with a dot before it.
pub fn items_in_sight(top: &Path) -> Vec<Found> {
    walked(top, |name| name.as_encoded_bytes().starts_with(b"."))
}

fn walked(top: &Path, passed_over: fn(&OsStr) -> bool) -> Vec<Found> {
    let root = fs::canonicalize(top).unwrap_or_else(|_| top.to_path_buf());
    let mut walk = Walk { root, passed_over, left: MOST_ITEMS, found: Vec::new() };
    walk.look(top, 0);
    walk.found
}

struct Walk {
    root: PathBuf,
    passed_over: fn(&OsStr) -> bool,
    left: usize,
    found: Vec<Found>,
}

impl Walk {
    fn look(&mut self, folder: &Path, depth: usize) {
        let refused = |why: String| Err((folder.to_path_buf(), why));
        if depth > MOST_DEPTH {
            return self.found.push(refused(format!("more than {MOST_DEPTH} folders deep: not looked into")));
        }
        let entries = match fs::read_dir(folder) {
            Ok(entries) => entries,
            Err(error) => return self.found.push(refused(format!("the folder cannot be read: {error}"))),
        };
        let mut paths = Vec::new();
        for entry in entries {
            if entry.as_ref().is_ok_and(|entry| (self.passed_over)(&entry.file_name())) {
                continue;
            }
            if self.left == 0 {
                self.found
                    .push(refused(format!("more than {MOST_ITEMS} items in all: the rest is left out")));
                break;
            }
            self.left -= 1;
            match entry {
                Ok(entry) => paths.push(entry.path()),
                Err(error) => {
                    self.found.push(refused(format!("the folder cannot be read to its end: {error}")));
                    break;
                }
            }
        }
        paths.sort();
        for path in paths {
            let kind = match fs::symlink_metadata(&path) {
                Ok(facts) => facts.file_type(),
                Err(error) => {
                    self.found.push(Err((path, error.to_string())));
                    continue;
                }
            };
            if kind.is_dir() {
                self.look(&path, depth + 1);
            } else if kind.is_symlink() {
                self.found.push(followed(path, &self.root));
            } else {
                self.found.push(match not_read(kind) {
                    None => Ok(path),
                    Some(why) => Err((path, why.into())),
                });
            }
        }
    }
}

/// A link to a file of the same folder is read; no other.
fn followed(link: PathBuf, root: &Path) -> Found {
    let why = match fs::canonicalize(&link) {
        Err(error) if error.kind() == ErrorKind::NotFound => "a link to something that is not there".into(),
        // The system's words tell of too many levels, which is what it sees of a circle.
        Err(error) => format!("a link that leads nowhere: {error}"),
        Ok(to) if !to.starts_with(root) => "a link that leads out of the folder: not followed".into(),
        Ok(to)
            if link.starts_with(&to)
                || fs::canonicalize(link.parent().unwrap_or(root)).is_ok_and(|f| f.starts_with(&to)) =>
        {
            "a link to a folder that it lies in: not followed".into()
        }
        Ok(to) => match fs::metadata(&to) {
            Err(error) => error.to_string(),
            Ok(facts) if facts.is_dir() => "a link to a folder, which is read where it lies".into(),
            Ok(facts) => match not_read(facts.file_type()) {
                None => return Ok(link),
                Some(why) => why.into(),
            },
        },
    };
    Err((link, why))
}

/// Why something that is no folder and no link is not read; nothing for a plain file.
pub fn not_read(kind: FileType) -> Option<&'static str> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        if kind.is_fifo() {
            return Some("a pipe, not a file: not read");
        }
        if kind.is_socket() {
            return Some("a socket, not a file: not read");
        }
        if kind.is_block_device() || kind.is_char_device() {
            return Some("a device, not a file: not read");
        }
    }
    if kind.is_file() { None } else { Some("not a plain file: not read") }
}
