//! `convert`: a recording from one form of file into another, with its notes.

use std::path::{Path, PathBuf};

use dicrotic::exchange::{Options, Outgoing, Samples};

use crate::failure::Failure;
use crate::{output, recording_file, safe_output, same_file, terminal};

/// Reads `from` and writes `to`; tells what was written.
pub fn run(from: &Path, to: &Path, options: &Options) -> Result<(), Failure> {
    recording_file::format_of(to)?;
    if same_file::identity(from) == same_file::identity(to) {
        let (from, to) = (terminal::name(from), terminal::name(to));
        return Err(Failure::new(format!(
            "{to} would be written over itself: it is the same file as {from}"
        )));
    }
    let (inputs, outputs) = (recording_file::files_of(from), recording_file::written_to(to)?);
    let outputs: Vec<&Path> = outputs.iter().map(PathBuf::as_path).collect();
    same_file::refuse_overlap(inputs.iter().map(PathBuf::as_path), &outputs)?;
    let read = recording_file::read(from, options)?;
    let samples = Samples::Values { rate_hz: read.recorded.rate_hz, values: &read.recorded.values };
    let outgoing = Outgoing { name: "", samples, volts: read.volts, notes: &read.notes };
    let files = recording_file::made(to, &outgoing)?;
    safe_output::write(&files)?;
    recording_file::forget_notes(&files);
    // The file that was named is told first.
    let named = files.last().into_iter().chain(&files[..files.len() - 1]);
    let written: Vec<String> = named.map(|(path, _)| terminal::name(path)).collect();
    let (samples, rate_hz, notes) = (read.recorded.values.len(), read.recorded.rate_hz, read.notes.len());
    output::print(&format!("{}: {samples} samples at {rate_hz} Hz, {notes} notes\n", written.join(", ")))
}
