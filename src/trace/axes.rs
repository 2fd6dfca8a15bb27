//! Grid, ticks and labels of the trace, drawn once for a view, on any plotters backend. The time line lies under the
//! trace with its ticks, as a clock would scratch it.

use super::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// Colours and font of the trace, given by the page's theme.
#[derive(Clone, Debug, PartialEq)]
pub struct Theme {
    /// Ground of the plot.
    pub ground: RGBColor,
    /// Lines of the grid.
    pub grid: RGBColor,
    /// Axis, ticks and labels.
    pub axis: RGBColor,
    /// The trace.
    pub ink: RGBColor,
    /// Things that want attention.
    pub accent: RGBColor,
    /// Font family of the labels.
    pub font: String,
    /// Decimal sign of the labels.
    pub decimal: char,
}

impl Default for Theme {
    fn default() -> Self {
        Self {
            ground: RGBColor(33, 25, 20),
            grid: RGBColor(62, 50, 42),
            axis: RGBColor(190, 174, 150),
            ink: RGBColor(243, 232, 208),
            accent: RGBColor(224, 150, 62),
            font: "sans-serif".into(),
            decimal: '.',
        }
    }
}

impl Theme {
    /// A colour written `#rrggbb`.
    pub fn colour(text: &str) -> Option<RGBColor> {
        let hex = text.trim().strip_prefix('#')?;
        if hex.len() != 6 || !hex.is_ascii() {
            return None;
        }
        let byte = |k: usize| u8::from_str_radix(&hex[k..k + 2], 16).ok();
        Some(RGBColor(byte(0)?, byte(2)?, byte(4)?))
    }
}

/// Distance between grid lines: 1, 2 or 5 times a power of ten, at most `most` of them over `span`.
pub fn step(span: f64, most: f64) -> f64 {
    let least = span / most.max(1.0);
    let mut unit = 1e-9;
    while unit * 10.0 <= least {
        unit *= 10.0;
    }
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * unit).find(|s| *s >= least).unwrap_or(10.0 * unit)
}

/// A colour as `#rrggbb`, the inverse of [`Theme::colour`].
pub fn hex(colour: RGBColor) -> String {
    format!("#{:02x}{:02x}{:02x}", colour.0, colour.1, colour.2)
}

/// A number with as many decimals as its grid step needs.
pub fn label(value: f64, step: f64, decimal: char) -> String {
    let mut decimals = 0;
    let mut unit = 1.0;
    while decimals < 9 && step < unit * 0.999 {
        unit /= 10.0;
        decimals += 1;
    }
    let value = if value.abs() < step * 1e-6 { 0.0 } else { value };
    format!("{value:.decimals$}").replace('.', &decimal.to_string()).replace('-', "\u{2212}")
}

/// Unit of the value axis for a full scale: (factor, name).
pub fn value_unit(full_scale_v: f64) -> (f64, &'static str) {
    if full_scale_v <= 0.5 { (1e3, "mV") } else { (1.0, "V") }
}

/// Multiples of `step` from `from` to `to`.
fn ticks(from: f64, to: f64, step: f64) -> Vec<f64> {
    let first = (from / step - 1e-9).ceil();
    let count = ((to - first * step) / step + 1e-9).floor();
    if count.is_finite() && (0.0..10_000.0).contains(&count) {
        (0..=count as u32).map(|k| (first + f64::from(k)) * step).collect()
    } else {
        Vec::new()
    }
}

/// Draws ground, grid, ticks and labels. `plain_values` keeps the values without a unit of voltage, for recordings
/// whose unit is unknown.
pub fn draw<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    frame: &Frame,
    theme: &Theme,
    plain_values: bool,
) -> Result<(), DrawingAreaErrorKind<B::ErrorType>> {
    let dpr = frame.dpr;
    let (left, top) = (frame.left, frame.top);
    let (right, bottom) = (left + frame.width, top + frame.height);
    let at = |x: f64, y: f64| (x.round() as i32, y.round() as i32);
    let line = |colour: RGBColor, width: f64, from: (i32, i32), to: (i32, i32)| {
        PathElement::new(vec![from, to], colour.stroke_width((width * dpr).round().max(1.0) as u32))
    };
    area.draw(&Rectangle::new([at(left, top), at(right, bottom)], theme.ground.filled()))?;

    let font = (theme.font.as_str(), 12.0 * dpr).into_font();
    let text = |h: plotters::style::text_anchor::HPos, v: plotters::style::text_anchor::VPos| {
        font.color(&theme.axis).pos(plotters::style::text_anchor::Pos::new(h, v))
    };
    use plotters::style::text_anchor::{HPos, VPos};

    let (factor, unit) = if plain_values { (1.0, "") } else { value_unit((frame.v1 - frame.v0) / 2.0) };
    let (low, high) = (frame.v0 * factor, frame.v1 * factor);
    let value_step = step(high - low, (frame.height / dpr / 34.0).clamp(2.0, 10.0));
    let values = ticks(low, high, value_step);
    for (k, value) in values.iter().enumerate() {
        let y = frame.y(value / factor);
        let zero = value.abs() < value_step * 1e-6;
        area.draw(&line(theme.grid, if zero { 2.0 } else { 1.0 }, at(left, y), at(right, y)))?;
        // The topmost label carries the unit.
        let mut words = label(*value, value_step, theme.decimal);
        if k + 1 == values.len() && !unit.is_empty() {
            words = words + " " + unit;
        }
        // Labels at the very edge move in, so that they are not cut off.
        let anchor = if y < top + 7.0 * dpr { VPos::Top } else { VPos::Center };
        area.draw(&Text::new(words, at(left - 6.0 * dpr, y), text(HPos::Right, anchor)))?;
    }

    let time_step = step(frame.t1 - frame.t0, (frame.width / dpr / 64.0).clamp(2.0, 20.0));
    // Small ticks at a fifth of the labelled ones (a quarter where the step begins with 2).
    let fine = time_step / if label(time_step, time_step, '.').contains('2') { 4.0 } else { 5.0 };
    let on_grid = |t: f64| ((t / time_step) - (t / time_step).round()).abs() < 1e-6;
    let times = ticks(frame.t0, frame.t1, fine);
    let last = times.iter().rposition(|t| on_grid(*t));
    for (k, t) in times.iter().enumerate() {
        let x = frame.x(*t);
        if on_grid(*t) {
            area.draw(&line(theme.grid, 1.0, at(x, top), at(x, bottom)))?;
            area.draw(&line(theme.axis, 1.0, at(x, bottom), at(x, bottom + 7.0 * dpr)))?;
            // The last label carries the unit, and ends at the plot's edge where it would run over it.
            let mut words = label(*t, time_step, theme.decimal);
            if Some(k) == last {
                words += " s";
            }
            let (place, anchor) = match x {
                x if x > right - 12.0 * dpr => (right + 6.0 * dpr, HPos::Right),
                x => (x, HPos::Center),
            };
            area.draw(&Text::new(words, at(place, bottom + 9.0 * dpr), text(anchor, VPos::Top)))?;
        } else {
            area.draw(&line(theme.axis, 1.0, at(x, bottom), at(x, bottom + 4.0 * dpr)))?;
        }
    }
    area.draw(&line(theme.axis, 1.0, at(left, bottom), at(right, bottom)))?;
    Ok(())
}
