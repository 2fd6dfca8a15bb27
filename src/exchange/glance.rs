//! Five seconds of each channel of a file as a small outline, so that nobody chooses one blind.

use super::{FileError, NamedFile, Options, import};
use serde::Serialize;

/// How much of a channel is shown, s.
pub const GLANCE_S: f64 = 5.0;
/// Columns of the outline.
pub const COLUMNS: usize = 120;
/// Most channels that are looked at.
pub const MOST_CHANNELS: usize = 24;
/// Most bytes that are read for it in all: each channel is a reading of the whole file.
const MOST_BYTES: usize = 200_000_000;

/// A channel.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Glance {
    /// Its name.
    pub channel: String,
    /// Its unit; empty where the file tells none.
    pub unit: String,
    /// Where the part begins that is shown, s: it is the middle of the recording, since beginnings are restless.
    pub from_s: f64,
    /// Lowest and highest value of each column in turn, from 0 at the bottom to 1 at the top.
    pub outline: Vec<f32>,
}

/// The outline of the five seconds in the middle.
pub fn outline(values: &[f64], rate_hz: f64) -> (f64, Vec<f32>) {
    let length = ((GLANCE_S * rate_hz).round() as usize).clamp(1, values.len().max(1));
    let from = values.len().saturating_sub(length) / 2;
    let part = &values[from..(from + length).min(values.len())];
    let ends =
        |of: &[f64]| of.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
    let (low, high) = ends(part);
    // A flat line stands in the middle.
    let height = |v: f64| if high > low { ((v - low) / (high - low)) as f32 } else { 0.5 };
    let columns = COLUMNS.min(part.len());
    let column = |k: usize| {
        let (l, h) = ends(&part[k * part.len() / columns..(k + 1) * part.len() / columns]);
        [height(l), height(h)]
    };
    (from as f64 / rate_hz, (0..columns).flat_map(column).collect())
}

/// Each channel of a file, in its order. Channels of one name are one, as they cannot be chosen apart by it. What cannot be read as a
/// channel has no outline.
pub fn of_files(files: &[NamedFile], rate_hz: Option<f64>) -> Result<Vec<Glance>, FileError> {
    let first = import(files, &Options { rate_hz, channel: None })?;
    let bytes: usize = files.iter().map(|(_, bytes)| bytes.len()).sum();
    let most = MOST_CHANNELS.min(MOST_BYTES / bytes.max(1));
    let mut found: Vec<Glance> = Vec::new();
    for name in &first.recorded.channels {
        if found.len() >= most {
            break;
        }
        if found.iter().any(|one| one.channel == *name) {
            continue;
        }
        let read = import(files, &Options { rate_hz, channel: Some(name) });
        found.push(match read {
            Ok(read) => {
                let (from_s, outline) = outline(&read.recorded.values, read.recorded.rate_hz);
                Glance { channel: name.clone(), unit: read.recorded.unit, from_s, outline }
            }
            Err(_) => Glance { channel: name.clone(), unit: String::new(), from_s: 0.0, outline: Vec::new() },
        });
    }
    Ok(found)
}
