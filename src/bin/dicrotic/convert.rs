//! `convert`: a recording from one form of file into another, with its notes.

use std::path::Path;

use dicrotic::exchange::{Options, Outgoing, Samples};

use crate::failure::Failure;
use crate::{output, recording_file};

/// Reads `from` and writes `to`; tells what was written.
pub fn run(from: &Path, to: &Path, options: &Options) -> Result<(), Failure> {
    recording_file::format_of(to)?;
    if std::path::absolute(from).ok() == std::path::absolute(to).ok() {
        return Err(Failure::new(format!("{} would be written over itself", to.display())));
    }
    let read = recording_file::read(from, options)?;
    let samples = Samples::Values { rate_hz: read.recorded.rate_hz, values: &read.recorded.values };
    let outgoing = Outgoing { name: "", samples, volts: read.volts, notes: &read.notes };
    let written = recording_file::write(to, &outgoing)?;
    let (samples, rate_hz, notes) = (read.recorded.values.len(), read.recorded.rate_hz, read.notes.len());
    output::print(&format!("{}: {samples} samples at {rate_hz} Hz, {notes} notes\n", written.join(", ")))
}
