//! Files are written whole or not at all: beside the place, to the disk, and then put there by one rename. Whatever ends
//! the program meanwhile, the old file is there; an error leaves nothing behind. What a killed run left is taken away by
//! the next one that writes the same file.

use std::ffi::OsString;
use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::failure::{Failure, While};
use crate::terminal;

/// A file to be written: where, and its bytes.
pub type Output = (PathBuf, Vec<u8>);

/// How the names of files on their way end.
const PART: &str = ".dicrotic-part";

/// Writes files that belong together, in their order, so that of a record the header comes last. Only when all of them are
/// on the disk does the first take its place; if one cannot, those before it are put back.
pub fn write(outputs: &[Output]) -> Result<(), Failure> {
    let mut parts = Vec::with_capacity(outputs.len());
    for (path, bytes) in outputs {
        let doing = || format!("writing {}", terminal::name(path));
        match stream(path).while_doing(doing)? {
            // Into a pipe or a device there is nothing to put in place.
            Some(mut stream) => stream.write_all(bytes).while_doing(doing)?,
            None => parts.push(Part::new(path, bytes).while_doing(doing)?),
        }
    }
    let several = parts.len() > 1;
    for k in 0..parts.len() {
        if let Err(error) = parts[k].put(several) {
            parts[..k].iter_mut().for_each(Part::put_back);
            return Err(error).while_doing(|| format!("writing {}", terminal::name(&parts[k].place)));
        }
    }
    Ok(())
}

/// What stands at a path if it is there and no file: a pipe or a device, opened for writing.
fn stream(path: &Path) -> io::Result<Option<File>> {
    match fs::metadata(path) {
        Ok(facts) if facts.is_dir() => Err(io::Error::new(ErrorKind::IsADirectory, "it is a folder")),
        Ok(facts) if !facts.is_file() => OpenOptions::new().write(true).open(path).map(Some),
        _ => Ok(None),
    }
}

/// A file that is on the disk beside its place. It goes when it is dropped, unless it took its place.
struct Part {
    place: PathBuf,
    part: PathBuf,
    /// Held while it is on its way: a part that nobody holds was left by a run that was killed.
    _held: File,
    /// The old file under another name, for the time in which the others may still fail.
    before: Option<PathBuf>,
    placed: bool,
}

impl Part {
    fn new(path: &Path, bytes: &[u8]) -> io::Result<Self> {
        // A link stays a link: what it leads to is replaced.
        let place = fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf());
        sweep(&place);
        let part = beside(&place, "");
        // Behind somebody else's file or link of that name nothing is written.
        let mut held = OpenOptions::new().write(true).create_new(true).open(&part)?;
        let made = Self { place, part, before: None, placed: false, _held: held.try_clone()? };
        // Where a file system has no locks, nothing is swept either.
        let _ = held.try_lock();
        if let Ok(facts) = fs::metadata(&made.place) {
            held.set_permissions(facts.permissions())?;
        }
        held.write_all(bytes)?;
        held.sync_all()?;
        Ok(made)
    }

    fn put(&mut self, keep_before: bool) -> io::Result<()> {
        if keep_before {
            let before = beside(&self.place, "-before");
            if fs::hard_link(&self.place, &before).is_ok() {
                self.before = Some(before);
            }
        }
        fs::rename(&self.part, &self.place)?;
        self.placed = true;
        // The new name reaches the disk with its folder; where folders cannot be opened, the system sees to it.
        if let Some(folder) =
            self.place.parent().map(|f| if f.as_os_str().is_empty() { Path::new(".") } else { f })
            && let Ok(folder) = File::open(folder)
        {
            let _ = folder.sync_all();
        }
        Ok(())
    }

    fn put_back(&mut self) {
        let _ = match self.before.take() {
            Some(before) => fs::rename(before, &self.place),
            None => fs::remove_file(&self.place),
        };
    }
}

impl Drop for Part {
    fn drop(&mut self) {
        if !self.placed {
            let _ = fs::remove_file(&self.part);
        }
        if let Some(before) = &self.before {
            let _ = fs::remove_file(before);
        }
    }
}

/// The name of a file on its way to `place`: hidden, in the same folder, of this process.
fn beside(place: &Path, more: &str) -> PathBuf {
    let mut name = start(place);
    name.push(format!("{}{more}{PART}", std::process::id()));
    place.with_file_name(name)
}

fn start(place: &Path) -> OsString {
    let mut name = OsString::from(".");
    name.push(place.file_name().unwrap_or_default());
    name.push(".");
    name
}

/// Takes away what killed runs left beside `place`.
fn sweep(place: &Path) {
    let start = start(place);
    let start = start.as_encoded_bytes();
    let folder = place.parent().filter(|f| !f.as_os_str().is_empty()).unwrap_or(Path::new("."));
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let name = name.as_encoded_bytes();
        if name.starts_with(start)
            && name.ends_with(PART.as_bytes())
            && entry.file_type().is_ok_and(|kind| kind.is_file())
            && File::open(entry.path()).is_ok_and(|left| left.try_lock().is_ok())
        {
            let _ = fs::remove_file(entry.path());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn of_files_that_belong_together_all_are_new_or_all_are_old() {
        let folder = Scratch::new("safe-together");
        folder.write("a", "old a");
        folder.write("c/inside", "a folder is in the way");
        let place = |name: &str| folder.path().join(name);
        let new = |name: &str| (place(name), b"new".to_vec());
        assert!(write(&[new("a"), new("b"), new("c")]).unwrap_err().to_string().contains("folder"));
        assert_eq!(fs::read_to_string(place("a")).unwrap(), "old a");
        assert_eq!(names(folder.path()), ["a", "c"]);

        // One that fails only when it takes its place: those before it are put back.
        let mut parts: Vec<Part> =
            ["a", "b"].iter().map(|name| Part::new(&place(name), b"new").unwrap()).collect();
        for part in &mut parts {
            part.put(true).unwrap();
        }
        parts.iter_mut().for_each(Part::put_back);
        drop(parts);
        assert_eq!(fs::read_to_string(place("a")).unwrap(), "old a");
        assert_eq!(names(folder.path()), ["a", "c"]);

        write(&[new("a"), new("b")]).unwrap();
        assert_eq!(fs::read_to_string(place("b")).unwrap(), "new");
        assert_eq!(names(folder.path()), ["a", "b", "c"]);
    }

    #[test]
    fn what_a_killed_run_left_is_swept_and_what_another_run_writes_is_not() {
        let folder = Scratch::new("safe-sweep");
        folder.write(".a.999999999.dicrotic-part", "half");
        folder.write(".a.1.dicrotic-part", "on its way");
        folder.write("b", "not ours");
        let other = File::open(folder.path().join(".a.1.dicrotic-part")).unwrap();
        other.try_lock().unwrap();
        write(&[(folder.path().join("a"), b"new".to_vec())]).unwrap();
        assert_eq!(names(folder.path()), [".a.1.dicrotic-part", "a", "b"]);
    }
}
