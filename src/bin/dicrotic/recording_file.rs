//! Recordings in files: a table, EDF or a WFDB record, known by what stands in them.

use std::fs;
use std::path::Path;

use dicrotic::exchange::{self, Format, Imported, NamedFile, Options, Outgoing, wfdb};

use crate::failure::Failure;
use crate::text_file;

/// Reads a recording. Of a WFDB record the header is named; its samples and its `.atr` annotations lie beside it.
pub fn read(file: &Path, options: &Options) -> Result<Imported, Failure> {
    let name = file.display().to_string();
    let bytes = text_file::read_bytes(file)?;
    let mut files: Vec<NamedFile> = Vec::new();
    if wfdb::is_header(&bytes) {
        for other in wfdb::companions(&bytes) {
            let path = file.with_file_name(&other);
            // What is missing is named by the reader, if it is needed.
            if path.is_file() {
                files.push((other, text_file::read_bytes(&path)?));
            }
        }
    }
    files.insert(0, (name, bytes));
    // The error names the file itself.
    exchange::import(&files, options).map_err(|error| Failure::new(error.to_string()))
}

/// The form that an ending asks for, or what is wrong with it.
pub fn format_of(out: &Path) -> Result<Format, Failure> {
    let name = out.display().to_string();
    Format::of_ending(&name).ok_or_else(|| {
        Failure::new(format!("{name}: a recording's file ends in .csv, .edf or .hea (a WFDB record)"))
    })
}

/// Writes a recording in the form that the ending of `out` asks for, and tells the names written. `make` gets the
/// name without its ending.
pub fn write(out: &Path, recording: &Outgoing) -> Result<Vec<String>, Failure> {
    let format = format_of(out)?;
    let stem = out.file_stem().map(|s| s.to_string_lossy().into_owned()).unwrap_or_default();
    let files = exchange::export(format, &Outgoing { name: &stem, ..*recording })
        .map_err(|error| Failure::new(error.to_string()))?;
    if format == Format::Wfdb && files.first().is_some_and(|(name, _)| *name != format!("{stem}.hea")) {
        return Err(Failure::new(format!(
            "{}: a WFDB record may have only letters, digits and '_' in its name",
            out.display()
        )));
    }
    let mut written = Vec::new();
    for (k, (name, bytes)) in files.iter().enumerate() {
        // The first is the one that was named; its ending keeps its case.
        let path = if k == 0 { out.to_path_buf() } else { out.with_file_name(name) };
        text_file::write_bytes(&path, bytes)?;
        written.push(path.display().to_string());
    }
    // Annotations of an earlier record of this name are not those of this one.
    if format == Format::Wfdb && files.len() == 2 {
        let _ = fs::remove_file(out.with_extension("atr"));
    }
    Ok(written)
}
