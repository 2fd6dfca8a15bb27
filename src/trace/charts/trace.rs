//! A stretch of a recording over time, as the trace shows it.

use super::error::ChartError;
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::Point;
use crate::recording::Recording;
use crate::trace::columns;
use crate::trace::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// What is shown of which recording.
#[derive(Clone, Copy, Debug)]
pub struct Trace<'a> {
    recording: &'a Recording,
    from_s: f64,
    to_s: f64,
    low: f64,
    high: f64,
    plain: bool,
    start_s: f64,
}

impl<'a> Trace<'a> {
    /// The stretch from `from_s` to `to_s`, cut to the recording's length. `volts` are the values at bottom and top;
    /// without them the stretch fills nine tenths of the height. `plain` if the unit of the values is not known.
    pub fn of(
        recording: &'a Recording,
        from_s: f64,
        to_s: f64,
        volts: Option<(f64, f64)>,
        plain: bool,
    ) -> Result<Self, ChartError> {
        ChartError::rising(from_s, to_s)?;
        let (from_s, to_s) = (from_s.max(0.0), to_s.min(recording.duration_s()));
        let extent = recording.extent(recording.sample_at(from_s), recording.sample_at(to_s));
        let (Some(extent), true) = (extent, from_s < to_s) else {
            return Err(ChartError::NoSamples { from_s, to_s });
        };
        let (min, max) = (f64::from(extent.min), f64::from(extent.max));
        if !(min.is_finite() && max.is_finite()) {
            return Err(ChartError::NoNumbers);
        }
        // A flat line lies in the middle.
        let room = if max > min { (max - min) / 18.0 } else { (min.abs() / 10.0).max(1e-3) };
        let (low, high) = volts
            .filter(|(low, high)| low < high && (high - low).is_finite())
            .unwrap_or((min - room, max + room));
        Ok(Self { recording, from_s, to_s, low, high, plain, start_s: 0.0 })
    }

    /// The same stretch with its times told as if the recording began at `start_s`.
    pub fn starting_at(self, start_s: f64) -> Self {
        Self { start_s, ..self }
    }

    /// The values at the bottom and at the top.
    pub fn values(&self) -> (f64, f64) {
        (self.low, self.high)
    }

    /// Draws it.
    pub fn draw<B: DrawingBackend>(
        &self,
        area: &DrawingArea<B, Shift>,
        look: &Look,
        heading: &Heading,
    ) -> Result<(), ChartError> {
        let (pen, frame) = paper::lay(area, look, heading)?;
        let told = |t: f64| t + self.start_s;
        pen.axes(&frame.showing(told(self.from_s), told(self.to_s), self.low, self.high), self.plain)?;
        let frame = frame.showing(self.from_s, self.to_s, self.low, self.high);
        pen.trace(&trace(self.recording, &frame), look.theme.ink)
    }
}

/// The points of the trace: of each column the first, the lowest, the highest and the last value.
fn trace(recording: &Recording, frame: &Frame) -> Vec<Point> {
    // Two columns a CSS pixel are as many as an eye tells apart; a sheet of finer dots gets no more.
    let fine = Frame { left: 0.0, width: frame.width.min((2.0 * frame.width / frame.dpr).round()), ..*frame };
    let wide = frame.width / fine.width;
    let inside = |v: f32| frame.y(f64::from(v)).clamp(frame.top, frame.top + frame.height);
    let mut points: Vec<Point> = Vec::new();
    for column in columns::of_recording(recording, &fine) {
        let x = frame.left + (column.x as f64 + 0.5) * wide;
        // The way through a column that is nearest to the samples' own: an end first that lies nearer to it.
        let low_first = column.first - column.min <= column.max - column.first;
        let turns = if low_first { [column.min, column.max] } else { [column.max, column.min] };
        for v in [column.first, turns[0], turns[1], column.last] {
            let point = (x, inside(v));
            if points.last() != Some(&point) {
                points.push(point);
            }
        }
    }
    points
}
