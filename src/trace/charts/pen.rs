//! Draws lines, notes and dots in the chart's look. Places are device pixels, sizes CSS pixels.

use super::error::ChartError;
use super::look::Look;
use plotters::coord::Shift;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

/// Where a text lies as seen from its point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Place {
    AboveRight,
    AboveLeft,
    Above,
    BelowLeft,
    Below,
    Right,
    Left,
}

impl Place {
    fn anchor(self) -> Pos {
        let h = match self {
            Place::AboveRight | Place::Right => HPos::Left,
            Place::AboveLeft | Place::BelowLeft | Place::Left => HPos::Right,
            Place::Above | Place::Below => HPos::Center,
        };
        let v = match self {
            Place::AboveRight | Place::AboveLeft | Place::Above => VPos::Bottom,
            Place::BelowLeft | Place::Below => VPos::Top,
            Place::Right | Place::Left => VPos::Center,
        };
        Pos::new(h, v)
    }
}

/// A pen over a sheet.
pub(super) struct Pen<'a, B: DrawingBackend> {
    pub(super) area: &'a DrawingArea<B, Shift>,
    pub(super) look: &'a Look,
}

/// A point in device pixels.
pub(super) type Point = (f64, f64);

/// No coordinate is absurd, whatever was divided by whatever.
fn pixel((x, y): Point) -> (i32, i32) {
    let whole = |v: f64| if v.is_finite() { v.round().clamp(-1e6, 1e6) as i32 } else { 0 };
    (whole(x), whole(y))
}

impl<B: DrawingBackend> Pen<'_, B> {
    fn done(&self, result: Result<(), DrawingAreaErrorKind<B::ErrorType>>) -> Result<(), ChartError> {
        result.map_err(|error| ChartError::Drawing { what: error.to_string() })
    }

    /// Device pixels of a length.
    pub(super) fn px(&self, css: f64) -> f64 {
        css * self.look.dpr
    }

    fn stroke(&self, css: f64) -> u32 {
        self.px(css).round().max(1.0) as u32
    }

    /// Grid, ticks and labels of times and values.
    pub(super) fn axes(&self, frame: &crate::trace::frame::Frame, plain: bool) -> Result<(), ChartError> {
        self.done(crate::trace::axes::draw(self.area, frame, &self.look.theme, plain))
    }

    /// A filled rectangle.
    pub(super) fn block(&self, a: Point, b: Point, colour: RGBAColor) -> Result<(), ChartError> {
        self.done(self.area.draw(&Rectangle::new([pixel(a), pixel(b)], colour.filled())))
    }

    /// A line through points.
    pub(super) fn line(&self, points: &[Point], css: f64, colour: RGBAColor) -> Result<(), ChartError> {
        let mut path: Vec<(i32, i32)> = points.iter().map(|p| pixel(*p)).collect();
        path.dedup();
        if path.len() < 2 {
            return Ok(());
        }
        self.done(self.area.draw(&PathElement::new(path, colour.stroke_width(self.stroke(css)))))
    }

    /// A level or upright line of dashes.
    pub(super) fn dashes(&self, a: Point, b: Point, css: f64, colour: RGBAColor) -> Result<(), ChartError> {
        let (dash, gap) = (self.px(6.0), self.px(4.0));
        let length = (b.0 - a.0).abs() + (b.1 - a.1).abs();
        let at = |d: f64| (a.0 + (b.0 - a.0) * d / length, a.1 + (b.1 - a.1) * d / length);
        let mut from = 0.0;
        while from < length {
            self.line(&[at(from), at((from + dash).min(length))], css, colour)?;
            from += dash + gap;
        }
        Ok(())
    }

    /// The trace, as a stylus scratches it: where it moves fast the line is thinner.
    pub(super) fn trace(&self, points: &[Point], colour: RGBColor) -> Result<(), ChartError> {
        self.line(points, 1.25, colour.to_rgba())?;
        // Slow: it rises or falls by less than it goes on, over 3 px at least.
        let slow = |w: &[Point]| (w[1].1 - w[0].1).abs() <= (w[1].0 - w[0].0).abs();
        let mut from = 0;
        for k in 1..=points.len() {
            if k == points.len() || !slow(&points[k - 1..=k]) {
                if points[k - 1].0 - points[from].0 >= self.px(3.0) {
                    self.line(&points[from..k], 1.8, colour.to_rgba())?;
                }
                from = k;
            }
        }
        Ok(())
    }

    /// A filled shape.
    pub(super) fn shape(&self, points: &[Point], colour: RGBAColor) -> Result<(), ChartError> {
        let corners: Vec<(i32, i32)> = points.iter().map(|p| pixel(*p)).collect();
        self.done(self.area.draw(&Polygon::new(corners, colour.filled())))
    }

    /// A dot with a rim of the ground's colour, which sets it off from the trace.
    pub(super) fn dot(&self, at: Point, css: f64, colour: RGBColor) -> Result<(), ChartError> {
        let disc = |css: f64, colour: RGBColor| {
            self.done(self.area.draw(&Circle::new(pixel(at), self.stroke(css) as i32, colour.filled())))
        };
        disc(css + 1.5, self.look.theme.ground)?;
        disc(css, colour)
    }

    /// A pencilled note in serif italic.
    pub(super) fn note(
        &self,
        words: &str,
        at: Point,
        css: f64,
        colour: RGBColor,
        place: Place,
    ) -> Result<(), ChartError> {
        if words.is_empty() {
            return Ok(());
        }
        let font = (self.look.serif.as_str(), self.px(css), FontStyle::Italic).into_font();
        let style = font.color(&colour).pos(place.anchor());
        self.done(self.area.draw(&Text::new(words, pixel(at), style)))
    }

    /// Upright letters, as on the axes.
    pub(super) fn number(&self, words: &str, at: Point, place: Place) -> Result<(), ChartError> {
        let theme = &self.look.theme;
        let font = (theme.font.as_str(), self.px(12.0)).into_font();
        self.done(self.area.draw(&Text::new(words, pixel(at), font.color(&theme.axis).pos(place.anchor()))))
    }

    /// About how wide a note of `css` is, device pixels: rather too wide than too narrow. Letters of the wider text
    /// faces are .57 of the em on average, and plotters' sizes are 1.24 em.
    pub(super) fn about_width(&self, words: &str, css: f64) -> f64 {
        words.chars().count() as f64 * 0.57 * self.px(css) / 1.24
    }
}

/// Puts `value` in the place of `{v}`.
pub(super) fn fill(words: &str, value: &str) -> String {
    words.replace("{v}", value)
}
