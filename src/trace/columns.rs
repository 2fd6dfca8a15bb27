//! Lowest and highest value of each column of pixels. Taking every n-th sample instead would hide hum, or turn it
//! into a slow wave that is not there.

use super::frame::Frame;
use crate::recording::Recording;

/// What a column of pixels shows, V.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// Number of the column, from the plot's left.
    pub x: usize,
    /// Value of its first sample.
    pub first: f32,
    /// Lowest value.
    pub min: f32,
    /// Highest value.
    pub max: f32,
    /// Value of its last sample.
    pub last: f32,
}

impl Column {
    /// A column of one sample.
    pub fn start(x: usize, v: f32) -> Self {
        Self { x, first: v, min: v, max: v, last: v }
    }

    /// Adds a later sample.
    pub fn add(&mut self, v: f32) {
        self.min = self.min.min(v);
        self.max = self.max.max(v);
        self.last = v;
    }
}

/// The columns of a recording in a frame; columns without samples are left out.
pub fn of_recording(recording: &Recording, frame: &Frame) -> Vec<Column> {
    let n = frame.columns();
    let mut out = Vec::with_capacity(n);
    let per_column = (frame.t1 - frame.t0) / n as f64 * recording.rate_hz();
    let origin = frame.t0 * recording.rate_hz();
    let edge = |x: usize| (origin + per_column * x as f64).ceil().max(0.0) as usize;
    for x in 0..n {
        let (from, to) = (edge(x), edge(x + 1).min(recording.len()));
        if let (Some(extent), Some(first), Some(last)) = (
            recording.extent(from, to),
            recording.volts(from),
            to.checked_sub(1).and_then(|k| recording.volts(k)),
        ) {
            out.push(Column { x, first: first as f32, min: extent.min, max: extent.max, last: last as f32 });
        }
    }
    out
}
