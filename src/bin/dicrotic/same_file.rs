//! Whether two names lead to one file: by spelling, by links of either kind. What a command reads it must not write over.

use std::path::{Path, PathBuf};
use std::{env, fs};

use crate::failure::Failure;
use crate::terminal;

/// What a name leads to: the same for all names of one file.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Identity {
    /// A file that is there, by its number on its device.
    #[cfg(unix)]
    Number(u64, u64),
    /// By its full name.
    Name(PathBuf),
}

/// What `path` leads to, whether it is there or not yet.
pub fn identity(path: &Path) -> Identity {
    #[cfg(unix)]
    if let Ok(facts) = fs::metadata(path) {
        use std::os::unix::fs::MetadataExt;
        return Identity::Number(facts.dev(), facts.ino());
    }
    Identity::Name(full(path))
}

/// The name without links, `.` and `..`, as far as it is there.
fn full(path: &Path) -> PathBuf {
    if let Ok(whole) = fs::canonicalize(path) {
        return whole;
    }
    // A link to a file that is not there yet is written through.
    if let Ok(to) = fs::read_link(path) {
        let to = path.parent().map_or_else(|| to.clone(), |folder| folder.join(&to));
        if fs::symlink_metadata(&to).is_err() {
            return full(&to);
        }
    }
    let absolute = env::current_dir().unwrap_or_default().join(path);
    match (absolute.parent().map(fs::canonicalize), absolute.file_name()) {
        (Some(Ok(folder)), Some(name)) => folder.join(name),
        _ => absolute,
    }
}

/// Whether a name leads into a folder, or into one below it.
pub fn lies_in(path: &Path, folder: &Path) -> bool {
    full(path).starts_with(full(folder))
}

/// Refuses to write `outputs` where one of them is one of `inputs`, or two of them are one.
pub fn refuse_overlap<'a>(
    inputs: impl IntoIterator<Item = &'a Path>,
    outputs: &[&Path],
) -> Result<(), Failure> {
    let own: Vec<Identity> = outputs.iter().map(|path| identity(path)).collect();
    for input in inputs {
        let read = identity(input);
        if let Some(k) = own.iter().position(|one| *one == read) {
            return Err(Failure::new(format!(
                "{} would be written over {}, which is read: it is the same file; choose another name",
                terminal::name(outputs[k]),
                terminal::name(input)
            )));
        }
    }
    for (k, one) in own.iter().enumerate() {
        // Two results may go down one pipe or device.
        let file = fs::metadata(outputs[k]).map_or(true, |facts| facts.is_file());
        if let Some(other) = own[..k].iter().position(|before| file && before == one) {
            return Err(Failure::new(format!(
                "{} and {} would be written into the same file; choose two names",
                terminal::name(outputs[other]),
                terminal::name(outputs[k])
            )));
        }
    }
    Ok(())
}
