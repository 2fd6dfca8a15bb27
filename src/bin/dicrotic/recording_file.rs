//! Recordings in files: a table, EDF or a WFDB record, known by what stands in them.

use std::fs;
use std::path::{Path, PathBuf};

use dicrotic::exchange::{self, Format, Imported, NamedFile, Options, Outgoing, wfdb};

use crate::failure::Failure;
use crate::safe_output::Output;
use crate::same_file::identity;
use crate::{terminal, text_file};

/// Reads a recording. Of a WFDB record the header is named; its samples and its `.atr` annotations lie beside it. Says on
/// the error output where values were made up.
pub fn read(file: &Path, options: &Options) -> Result<Imported, Failure> {
    let name = terminal::name(file);
    let bytes = text_file::read_bytes(file, text_file::RECORDING)?;
    let mut files: Vec<NamedFile> = Vec::new();
    for (other, path) in companions(file, &bytes) {
        // What is missing is named by the reader, if it is needed.
        if path.is_file() {
            files.push((other, text_file::read_bytes(&path, text_file::RECORDING)?));
        }
    }
    files.insert(0, (name.clone(), bytes));
    // The error names the file itself.
    let read = exchange::import(&files, options).map_err(|error| Failure::new(error.to_string()))?;
    if let (Some((at_s, _)), gaps) = (read.recorded.gaps.first(), read.recorded.gaps.len()) {
        let longest = read.recorded.gaps.iter().fold(0.0, |most: f64, (_, length_s)| most.max(*length_s));
        terminal::say(&format!(
            "{name}: {gaps} gaps without values, up to {longest:.3} s long, the first at {at_s:.3} s from the first \
             sample; a straight line stands in their place"
        ));
    }
    Ok(read)
}

fn companions(file: &Path, bytes: &[u8]) -> Vec<(String, PathBuf)> {
    if !wfdb::is_header(bytes) {
        return Vec::new();
    }
    wfdb::companions(bytes).into_iter().map(|name| (name.clone(), file.with_file_name(name))).collect()
}

/// The files that a recording is read from: the one that is named, and those that a WFDB header names.
pub fn files_of(file: &Path) -> Vec<PathBuf> {
    let header = file
        .is_file()
        .then(|| text_file::read_bytes(file, text_file::RECORDING).ok())
        .flatten()
        .unwrap_or_default();
    let beside = companions(file, &header).into_iter().map(|(_, path)| path);
    std::iter::once(file.to_path_buf()).chain(beside).collect()
}

/// The form that an ending asks for, or what is wrong with it.
pub fn format_of(out: &Path) -> Result<Format, Failure> {
    let name = terminal::name(out);
    Format::of_ending(&name).ok_or_else(|| {
        Failure::new(format!("{name}: a recording's file ends in .csv, .edf or .hea (a WFDB record)"))
    })
}

/// The files that a recording written to `out` may replace. Of a WFDB record these are its samples and annotations too:
/// such files are refused where they are another record's.
pub fn written_to(out: &Path) -> Result<Vec<PathBuf>, Failure> {
    let mut written = vec![out.to_path_buf()];
    if format_of(out)? == Format::Wfdb {
        let own = files_of(out);
        for ending in ["dat", "atr"] {
            let path = out.with_extension(ending);
            if path.exists() && !own.iter().any(|known| identity(known) == identity(&path)) {
                return Err(Failure::new(format!(
                    "{} would be written over by the record {}, but belongs to another; choose another name",
                    terminal::name(&path),
                    terminal::name(out)
                )));
            }
            written.push(path);
        }
    }
    Ok(written)
}

/// The files of a recording in the form that the ending of `out` asks for, the one of that name last: it is what the
/// others are found by.
pub fn made(out: &Path, recording: &Outgoing) -> Result<Vec<Output>, Failure> {
    let format = format_of(out)?;
    let stem = out.file_stem().map(|s| s.to_string_lossy().into_owned()).unwrap_or_default();
    let files = exchange::export(format, &Outgoing { name: &stem, ..*recording })
        .map_err(|error| Failure::new(error.to_string()))?;
    if format == Format::Wfdb && files.first().is_some_and(|(name, _)| *name != format!("{stem}.hea")) {
        return Err(Failure::new(format!(
            "{}: a WFDB record may have only letters, digits and '_' in its name",
            terminal::name(out)
        )));
    }
    let mut made: Vec<Output> = files
        .into_iter()
        .enumerate()
        // The first is the one that was named; its ending keeps its case.
        .map(|(k, (name, bytes))| (if k == 0 { out.to_path_buf() } else { out.with_file_name(name) }, bytes))
        .collect();
    made.rotate_left(1);
    Ok(made)
}

/// Annotations of an earlier record of this name are not those of this one, which has none.
pub fn forget_notes(written: &[Output]) {
    let header =
        written.iter().find(|(path, _)| Format::of_ending(&path.to_string_lossy()) == Some(Format::Wfdb));
    if let Some((header, _)) = header {
        let notes = header.with_extension("atr");
        if !written.iter().any(|(path, _)| *path == notes) {
            let _ = fs::remove_file(notes);
        }
    }
}
