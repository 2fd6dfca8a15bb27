//! A table of measurements as dots with their uncertainty: side by side by condition, those of one turn joined, or over time
//! with a curve through them.

use super::error::ChartError;
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::{Pen, Place};
use crate::trace::axes::{label, step};
use crate::trace::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// A value with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dot {
    /// The condition's number.
    pub condition: usize,
    /// Time since the condition began, s; none where the bench was found in it.
    pub t_s: Option<f64>,
    /// The value.
    pub value: f64,
    /// Its uncertainty, one standard deviation.
    pub u: f64,
}

/// Words of this chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Words<'a> {
    /// The unit of the values.
    pub unit: &'a str,
    /// The names of the conditions.
    pub conditions: &'a [&'a str],
}

/// What the dots lie on.
#[derive(Clone, Debug, PartialEq)]
enum Across {
    /// A place for each condition.
    Conditions(usize),
    /// Time, up to so many seconds; the first condition as a level, and the points of a curve.
    Time { to_s: f64, level: Option<f64>, curve: Vec<(f64, f64)> },
}

/// Half the length of the bar's end, CSS pixels.
const TIP: f64 = 4.0;
/// Room of the conditions' names on both sides of the middle one, as part of a place.
const SIDE: f64 = 0.5;

/// A table of measurements.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    dots: Vec<Dot>,
    across: Across,
}

impl Table {
    /// By condition, of which there are `conditions`. `None` without a dot.
    pub fn beside(dots: &[Dot], conditions: usize) -> Option<Self> {
        let good = |d: &&Dot| d.condition < conditions && d.value.is_finite() && d.u.is_finite();
        let dots: Vec<Dot> = dots.iter().filter(good).copied().collect();
        (!dots.is_empty()).then_some(Self { dots, across: Across::Conditions(conditions) })
    }

    /// Over time: the dots that have one, with a curve. Those of condition 0 become a level. `None` without a dot in time.
    pub fn over_time(dots: &[Dot], curve: impl Fn(f64) -> Option<f64>) -> Option<Self> {
        let good = |d: &&Dot| d.value.is_finite() && d.u.is_finite();
        let all: Vec<Dot> = dots.iter().filter(good).copied().collect();
        let rest: Vec<f64> = all.iter().filter(|d| d.condition == 0).map(|d| d.value).collect();
        let level = (!rest.is_empty()).then(|| rest.iter().sum::<f64>() / rest.len() as f64);
        let dots: Vec<Dot> = all.into_iter().filter(|d| d.condition > 0 && d.t_s.is_some()).collect();
        let to_s = 1.1 * dots.iter().filter_map(|d| d.t_s).fold(0.0, f64::max);
        if dots.is_empty() || to_s <= 0.0 {
            return None;
        }
        let times = (0..=200).map(|k| to_s * f64::from(k) / 200.0);
        let curve = times.filter_map(|t| Some((t, curve(t)?))).collect();
        Some(Self { dots, across: Across::Time { to_s, level, curve } })
    }

    /// Dots of one turn, the k-th of each condition, in the order of the conditions.
    fn turns(&self, conditions: usize) -> Vec<Vec<Dot>> {
        let of = |c: usize| self.dots.iter().filter(move |d| d.condition == c);
        let most = (0..conditions).map(|c| of(c).count()).max().unwrap_or(0);
        (0..most).map(|k| (0..conditions).filter_map(|c| of(c).nth(k).copied()).collect()).collect()
    }

    /// Lowest and highest value of the plot, round, with the bars in it.
    fn bounds(&self) -> (f64, f64) {
        let more: Vec<f64> = match &self.across {
            Across::Time { level, curve, .. } => curve.iter().map(|c| c.1).chain(*level).collect(),
            Across::Conditions(_) => Vec::new(),
        };
        let values = self.dots.iter().flat_map(|d| [d.value - d.u, d.value + d.u]).chain(more);
        let (low, high) =
            values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)));
        let unit = step((high - low).max(1e-3 * high.abs().max(1e-6)), 5.0);
        // Room above for the unit.
        ((low / unit - 0.2).floor() * unit, (high / unit + 0.9).ceil() * unit)
    }

    /// Draws it.
    pub fn draw<B: DrawingBackend>(
        &self,
        area: &DrawingArea<B, Shift>,
        look: &Look,
        words: &Words,
    ) -> Result<(), ChartError> {
        let (pen, frame) = paper::lay(area, look, &Heading::default())?;
        let theme = &look.theme;
        let (low, high) = self.bounds();
        let (left, right) = (frame.left, frame.left + frame.width);
        let frame = match &self.across {
            Across::Time { to_s, level, curve } => {
                let frame = frame.showing(0.0, *to_s, low, high);
                pen.axes(&frame, true)?;
                if let Some(level) = level {
                    pen.dashes(
                        (left, frame.y(*level)),
                        (right, frame.y(*level)),
                        1.25,
                        theme.accent.to_rgba(),
                    )?;
                    // At the left, where the curve is far above it.
                    let name = words.conditions.first().copied().unwrap_or_default();
                    pen.note(
                        name,
                        (left + pen.px(8.0), frame.y(*level) - pen.px(3.0)),
                        15.0,
                        theme.accent,
                        Place::AboveRight,
                    )?;
                }
                let points: Vec<(f64, f64)> = curve.iter().map(|(t, v)| (frame.x(*t), frame.y(*v))).collect();
                pen.line(&points, 2.0, theme.accent.to_rgba())?;
                frame
            }
            Across::Conditions(n) => {
                let frame = frame.showing(-SIDE, *n as f64 - 1.0 + SIDE, low, high);
                values(&pen, &frame, look)?;
                for (k, name) in words.conditions.iter().enumerate().take(*n) {
                    pen.number(
                        name,
                        (frame.x(k as f64), frame.top + frame.height + pen.px(8.0)),
                        Place::Below,
                    )?;
                }
                for turn in self.turns(*n) {
                    let points: Vec<(f64, f64)> =
                        turn.iter().map(|d| (frame.x(d.condition as f64), frame.y(d.value))).collect();
                    pen.line(&points, 1.25, theme.ink.mix(0.45))?;
                }
                frame
            }
        };
        for dot in &self.dots {
            let x = frame.x(match self.across {
                Across::Time { .. } => dot.t_s.unwrap_or(0.0),
                Across::Conditions(_) => dot.condition as f64,
            });
            let (top, bottom) = (frame.y(dot.value + dot.u), frame.y(dot.value - dot.u));
            pen.line(&[(x, top), (x, bottom)], 1.25, theme.ink.to_rgba())?;
            for y in [top, bottom] {
                pen.line(&[(x - pen.px(TIP), y), (x + pen.px(TIP), y)], 1.25, theme.ink.to_rgba())?;
            }
            pen.dot((x, frame.y(dot.value)), 4.0, theme.ink)?;
        }
        pen.note(words.unit, (left + pen.px(8.0), frame.top + pen.px(13.0)), 16.0, theme.axis, Place::Right)
    }
}

/// Ground, lines and labels of the values alone.
fn values<B: DrawingBackend>(pen: &Pen<B>, frame: &Frame, look: &Look) -> Result<(), ChartError> {
    let (left, right) = (frame.left, frame.left + frame.width);
    let bottom = frame.top + frame.height;
    pen.block((left, frame.top), (right, bottom), look.theme.ground.to_rgba())?;
    let unit = step(frame.v1 - frame.v0, (frame.height / frame.dpr / 34.0).clamp(2.0, 8.0));
    let mut k = (frame.v0 / unit - 1e-9).ceil();
    while k * unit <= frame.v1 + 1e-9 * unit {
        let y = frame.y(k * unit);
        pen.line(&[(left, y), (right, y)], 1.0, look.theme.grid.to_rgba())?;
        pen.number(&label(k * unit, unit, look.theme.decimal), (left - pen.px(6.0), y), Place::Left)?;
        k += 1.0;
    }
    pen.line(&[(left, bottom), (right, bottom)], 1.0, look.theme.axis.to_rgba())
}
