//! `plot`: a chart of a recording from a file.

use std::path::{Path, PathBuf};

use dicrotic::exchange::Options;

use crate::chart::{Order, Samples};
use crate::failure::Failure;
use crate::{recording_file, same_file, terminal, text_file};

/// Which part of which file is drawn, and what its text does not say.
pub struct Source<'a> {
    /// The recording.
    pub file: &'a Path,
    /// Its sampling rate, Hz, if it has no time column.
    pub rate_hz: Option<f64>,
    /// The column to read.
    pub column: Option<&'a str>,
    /// The pulse points down in it.
    pub inverted: bool,
    /// The stretch, s from the first sample; to the end without `to_s`.
    pub from_s: f64,
    /// End of the stretch.
    pub to_s: Option<f64>,
    /// Frequency of the power line, Hz.
    pub power_line_hz: Option<f64>,
}

/// Draws the chart.
pub fn run(source: &Source, order: &Order) -> Result<(), Failure> {
    order.check()?;
    if let Some(hz) = source.power_line_hz.filter(|hz| !(40.0..=70.0).contains(hz)) {
        return Err(Failure::new(format!("--power-line must be 50 or 60, or near it: 40 to 70, found {hz}")));
    }
    let name = terminal::name(source.file);
    let files = recording_file::files_of(source.file);
    same_file::refuse_overlap(files.iter().map(PathBuf::as_path), &[order.out])?;
    let options = Options { rate_hz: source.rate_hz, channel: source.column };
    let recorded = recording_file::read(source.file, &options)?.recorded;
    let mut values = recorded.values;
    if source.inverted {
        values.iter_mut().for_each(|v| *v = -*v);
    }
    let length_s = values.len() as f64 / recorded.rate_hz;
    let (from_s, to_s) = (source.from_s, source.to_s.unwrap_or(length_s));
    if !(from_s >= 0.0 && from_s < to_s && to_s <= length_s + 1e-9) {
        return Err(Failure::new(format!(
            "{name}: --from and --to must rise and lie from 0 to {length_s} s, found {from_s} and {to_s}"
        )));
    }
    let sample = |t: f64| ((t * recorded.rate_hz).round() as usize).min(values.len());
    let title =
        source.file.file_stem().map_or_else(|| name.clone(), |stem| stem.to_string_lossy().into_owned());
    let bytes = order.drawn(&Samples {
        title: &title,
        values: &values[sample(from_s)..sample(to_s)],
        rate_hz: recorded.rate_hz,
        start_s: from_s,
        power_line_hz: source.power_line_hz,
        plain: true,
    })?;
    text_file::write_bytes(order.out, &bytes)
}
