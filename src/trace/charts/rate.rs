//! The instantaneous rate over time: a step for each interval between beats, and the mean.

use super::error::ChartError;
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::{Place, fill};
use crate::measure::variability::{self, Interval, VariabilityError};
use crate::trace::axes::{label, step};
use plotters::coord::Shift;
use plotters::prelude::*;

/// Words of this chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words<'a> {
    /// Above the plot.
    pub heading: Heading<'a>,
    /// The unit of the rate.
    pub unit: &'a str,
    /// At the line of the mean; `{v}` stands for the rate.
    pub mean: &'a str,
    /// What the intervals are that are marked as not normal; `{v}` stands for their number.
    pub irregular: &'a str,
}

/// Beats needed.
const NEEDED: usize = 3;
/// Least height of the plot, beats/min: a steady rate shall look steady.
const LEAST_SPAN: f64 = 20.0;

/// Steps are drawn up to this rate, beats/min: an interval cut in two by a false beat shall not press all others flat.
const HIGHEST: f64 = 300.0;
/// Distance between two rows of notes, CSS pixels.
const ROW: f64 = 20.0;

/// The rates of a stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Rate {
    from_s: f64,
    to_s: f64,
    intervals: Vec<Interval>,
    mean_bpm: f64,
}

impl Rate {
    /// The rates between the beats in `[from_s, to_s)`, given the times of the beats.
    pub fn of(beats_s: &[f64], from_s: f64, to_s: f64) -> Result<Self, ChartError> {
        ChartError::rising(from_s, to_s)?;
        let inside: Vec<f64> = beats_s.iter().copied().filter(|t| (from_s..to_s).contains(t)).collect();
        let few = || ChartError::TooFewBeats { needed: NEEDED, found: inside.len() };
        let told = |error: VariabilityError| match error {
            VariabilityError::NotRising { beat } => ChartError::NotRising { beat },
            _ => few(),
        };
        let intervals = variability::intervals(beats_s).map_err(told)?;
        if inside.len() < NEEDED {
            return Err(few());
        }
        let mean_bpm = variability::mean_rates(&inside, from_s, to_s).map_err(told)?.interval_bpm;
        let within = |i: &Interval| i.end_s - i.ms / 1000.0 >= from_s - 1e-9 && i.end_s < to_s;
        Ok(Self { from_s, to_s, intervals: intervals.into_iter().filter(within).collect(), mean_bpm })
    }

    /// The mean rate, beats/min: the number of intervals over the time that they take.
    pub fn mean_bpm(&self) -> f64 {
        self.mean_bpm
    }

    /// The intervals shown.
    pub fn intervals(&self) -> &[Interval] {
        &self.intervals
    }

    /// Draws it.
    pub fn draw<B: DrawingBackend>(
        &self,
        area: &DrawingArea<B, Shift>,
        look: &Look,
        words: &Words,
    ) -> Result<(), ChartError> {
        let (pen, frame) = paper::lay(area, look, &words.heading)?;
        let theme = &look.theme;
        let (low, high) = self.bounds(frame.height / frame.dpr);
        let frame = frame.showing(self.from_s, self.to_s, low, high);
        pen.axes(&frame, true)?;
        let (left, right) = (frame.left, frame.left + frame.width);

        let mut before: Option<(f64, f64)> = None;
        for interval in &self.intervals {
            let (from, to) = (frame.x(interval.end_s - interval.ms / 1000.0), frame.x(interval.end_s));
            let y = frame.y(interval.bpm.min(HIGHEST));
            if let Some((_, last)) = before.filter(|(x, _)| (x - from).abs() < 1.0) {
                pen.line(&[(from, last), (from, y)], 1.0, theme.ink.mix(0.45))?;
            }
            let colour = if interval.normal { theme.ink } else { theme.accent };
            pen.line(&[(from, y), (to, y)], 2.0, colour.to_rgba())?;
            before = Some((to, y));
        }

        let mean = frame.y(self.mean_bpm);
        pen.dashes((left, mean), (right, mean), 1.25, theme.accent.to_rgba())?;

        // The notes lie in the room above the steps; the one on the mean has a piece of its line.
        let row = |k: f64| frame.top + pen.px(14.0 + ROW * k);
        pen.note(words.unit, (left + pen.px(8.0), row(0.0)), 16.0, theme.axis, Place::Right)?;
        let said = fill(words.mean, &label(self.mean_bpm, 0.1, theme.decimal));
        let piece = (right - pen.px(34.0), right - pen.px(8.0));
        pen.dashes((piece.0, row(0.0)), (piece.1, row(0.0)), 1.25, theme.accent.to_rgba())?;
        pen.note(&said, (piece.0 - pen.px(6.0), row(0.0)), 18.0, theme.accent, Place::Left)?;
        if self.odd() > 0 {
            let said = fill(words.irregular, &self.odd().to_string());
            pen.note(&said, (right - pen.px(8.0), row(1.0)), 16.0, theme.accent, Place::Left)?;
        }
        Ok(())
    }

    fn odd(&self) -> usize {
        self.intervals.iter().filter(|i| !i.normal).count()
    }

    /// Lowest and highest rate of the plot: the lowest round, the highest with room for the notes above the steps.
    /// `height` is that of the plot in CSS pixels.
    fn bounds(&self, height: f64) -> (f64, f64) {
        let rates =
            || self.intervals.iter().map(|i| i.bpm).chain([self.mean_bpm]).map(|bpm| bpm.min(HIGHEST));
        let (low, high) = (rates().fold(f64::INFINITY, f64::min), rates().fold(0.0, f64::max));
        let room = (LEAST_SPAN - (high - low)).max(0.0) / 2.0;
        let unit = step(high - low + 2.0 * room, 8.0);
        let low = (((low - room) / unit).floor() * unit).max(0.0);
        let rows = if self.odd() > 0 { 2.0 } else { 1.0 };
        let notes = ((10.0 + ROW * rows) / height).min(0.5);
        (low, low + (high + room - low) / (1.0 - notes))
    }
}
