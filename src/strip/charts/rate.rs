//! The instantaneous rate over time: a step for each interval between beats, and the mean.

use super::error::ChartError;
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::{Place, fill};
use crate::measure::variability::{self, Interval, VariabilityError};
use crate::strip::axes::{label, step};
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
        if !(from_s < to_s && from_s.is_finite() && to_s.is_finite()) {
            return Err(ChartError::Backward { from_s, to_s });
        }
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
        let (low, high) = self.bounds();
        let frame = frame.showing(self.from_s, self.to_s, low, high);
        pen.axes(&frame, true)?;
        let (left, right) = (frame.left, frame.left + frame.width);

        let mut before: Option<(f64, f64)> = None;
        for interval in &self.intervals {
            let (from, to) = (frame.x(interval.end_s - interval.ms / 1000.0), frame.x(interval.end_s));
            let y = frame.y(interval.bpm).clamp(frame.top, frame.top + frame.height);
            if let Some((_, last)) = before.filter(|(x, _)| (x - from).abs() < 1.0) {
                pen.line(&[(from, last), (from, y)], 1.0, theme.ink.mix(0.45))?;
            }
            let colour = if interval.normal { theme.ink } else { theme.accent };
            pen.line(&[(from, y), (to, y)], 2.0, colour.to_rgba())?;
            before = Some((to, y));
        }

        let mean = frame.y(self.mean_bpm);
        pen.dashes((left, mean), (right, mean), 1.25, theme.accent.to_rgba())?;
        let said = fill(words.mean, &label(self.mean_bpm, 0.1, theme.decimal));
        // The note lies at the end of the line where there is more room over it.
        let third = 0.3 * (self.to_s - self.from_s);
        let top = |from: f64, to: f64| {
            let inside = self.intervals.iter().filter(|i| i.end_s >= from && i.end_s - i.ms / 1000.0 <= to);
            inside.map(|i| i.bpm).fold(0.0, f64::max)
        };
        let at_right = top(self.to_s - third, self.to_s) <= top(self.from_s, self.from_s + third);
        let (x, way, place) = if at_right { (right, -1.0, Place::Left) } else { (left, 1.0, Place::Right) };
        let middle = mean - pen.px(13.0);
        let width = pen.about_width(&said, 18.0) + pen.px(8.0);
        let near = x + way * pen.px(6.0);
        let (a, b) = (near.min(near + way * width), near.max(near + way * width));
        pen.block((a, middle - pen.px(9.0)), (b, middle + pen.px(9.0)), theme.ground.mix(0.8))?;
        pen.note(&said, (x + way * pen.px(10.0), middle), 18.0, theme.accent, place)?;

        let corner = (left + pen.px(8.0), frame.top + pen.px(8.0));
        pen.note(words.unit, corner, 16.0, theme.axis, Place::BelowRight)?;
        let odd = self.intervals.iter().filter(|i| !i.normal).count();
        if odd > 0 {
            let said = fill(words.irregular, &odd.to_string());
            let corner = (right - pen.px(8.0), frame.top + pen.px(8.0));
            pen.note(&said, corner, 16.0, theme.accent, Place::BelowLeft)?;
        }
        Ok(())
    }

    /// Lowest and highest rate of the plot: round numbers with room for the notes above.
    fn bounds(&self) -> (f64, f64) {
        let rates = || self.intervals.iter().map(|i| i.bpm.min(300.0)).chain([self.mean_bpm]);
        let (low, high) = (rates().fold(f64::INFINITY, f64::min), rates().fold(0.0, f64::max));
        let room = (LEAST_SPAN - (high - low)).max(0.0) / 2.0;
        let unit = step(high - low + 2.0 * room, 8.0);
        let low = (((low - room) / unit).floor() * unit).max(0.0);
        (low, ((high + room) / unit + 0.8).ceil() * unit)
    }
}
