//! The spectrum of a stretch, both axes logarithmic: as high as a sine that would make it, peak to peak, so that it
//! compares with the pulse and the hum on the trace.

use super::error::ChartError;
use super::lines::{self, Line, Source, TOP_HZ};
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::{Pen, Place, Point, fill};
use crate::dsp::{fft, resample};
use crate::math;
use crate::measure::detect::LOWEST_RATE_HZ;
use crate::trace::axes::label;
use crate::trace::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// Words of this chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words<'a> {
    /// Above the plot.
    pub heading: Heading<'a>,
    /// What the height is.
    pub height: &'a str,
    /// The pulse's fundamental; `{v}` stands for its frequency in Hz.
    pub pulse: &'a str,
    /// A harmonic of the pulse; `{v}` stands for its order.
    pub harmonic: &'a str,
    /// The power line or a harmonic of it where it belongs; `{v}` stands for its frequency in Hz.
    pub power_line: &'a str,
    /// The power line or a harmonic of it folded by slow sampling; `{v}` stands for its frequency in Hz, `{seen}` for the
    /// one at which it shows.
    pub folded: &'a str,
}

/// Lowest frequency of the plot, Hz: slow enough for breathing.
const LOW_HZ: f64 = 0.15;
/// Free stretch of the axis above the highest frequency.
const BEYOND: f64 = 1.15;
/// Shortest stretch, s: three beats of a slow pulse.
const NEEDED_S: f64 = 4.0;
/// Most seconds in a segment.
const SEGMENT_S: f64 = 16.0;
/// Width of a Hann window's main peak in bins, as noise sees it (Harris 1978, Proc. IEEE 66:51, Table I).
const NOISE_WIDTH: f64 = 1.5;
/// Distance between two rows of labels, CSS pixels.
const ROW: f64 = 19.0;

/// The spectrum of a stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Spectrum {
    step_hz: f64,
    pp: Vec<f64>,
    top_hz: f64,
    lines: Vec<Line>,
    plain: bool,
}

impl Spectrum {
    /// The spectrum of at least four seconds of samples at 8 Hz or more (a sample that is no number counts as the last
    /// one that was), with the lines of the pulse and of the power line, if `power_line_hz` is known. `plain` if the unit of the
    /// values is not.
    pub fn of(
        values: &[f64],
        rate_hz: f64,
        power_line_hz: Option<f64>,
        plain: bool,
    ) -> Result<Self, ChartError> {
        if !(rate_hz.is_finite() && rate_hz >= LOWEST_RATE_HZ) {
            return Err(ChartError::RateTooLow { needed_hz: LOWEST_RATE_HZ, found_hz: rate_hz });
        }
        let found_s = values.len() as f64 / rate_hz;
        if found_s < NEEDED_S {
            return Err(ChartError::TooShort { needed_s: NEEDED_S, found_s });
        }
        let values = &resample::held(values)[..];
        if values.iter().all(|v| *v == values[0]) {
            return Err(ChartError::Flat);
        }
        // Two segments at least, unless they would be too short to tell two lines apart.
        let segment_s = if found_s < 10.0 { found_s } else { SEGMENT_S.min(found_s / 1.5) };
        let segment = (segment_s * rate_hz) as usize;
        let density = fft::welch(values, rate_hz, segment);
        let noise_hz = NOISE_WIDTH * rate_hz / segment as f64;
        // A sine of amplitude a has the power a^2 / 2, spread over that width.
        let pp: Vec<f64> = density.power.iter().map(|p| 2.0 * (2.0 * p * noise_hz).sqrt()).collect();
        if pp.iter().any(|v| !v.is_finite()) {
            return Err(ChartError::NoNumbers);
        }
        let widths = (density.step_hz, 2.0 * rate_hz / segment as f64);
        let lines = lines::named(&pp, widths, rate_hz, lines::pulse_hz(values, rate_hz), power_line_hz);
        let top_hz = TOP_HZ.min(rate_hz / 2.0);
        Ok(Self { step_hz: density.step_hz, pp, top_hz, lines, plain })
    }

    /// The lines that can be named.
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// Height at a frequency, peak to peak of a sine in the unit of the samples.
    pub fn pp_at(&self, hz: f64) -> f64 {
        resample::linear(&self.pp, hz / self.step_hz)
    }

    /// Draws it.
    pub fn draw<B: DrawingBackend>(
        &self,
        area: &DrawingArea<B, Shift>,
        look: &Look,
        words: &Words,
    ) -> Result<(), ChartError> {
        let (pen, frame) = paper::lay(area, look, &words.heading)?;
        let names = self.power_line_names(words, look);
        let scale = Scale::new(&frame, self, names.len());
        scale.grid(&pen, self.plain)?;
        let ink = look.theme.ink;

        let (lower, upper) = self.trace(&scale);
        let floor = frame.top + frame.height;
        if let (Some(first), Some(last)) = (upper.first(), upper.last()) {
            let base = [(last.0, floor), (first.0, floor)];
            pen.shape(&[&upper[..], &base].concat(), ink.mix(0.10))?;
        }
        self.power_line(&pen, &scale, &names)?;
        let back: Vec<Point> = lower.into_iter().rev().collect();
        pen.shape(&[&upper[..], &back].concat(), ink.mix(0.4))?;
        pen.line(&upper, 1.3, ink.to_rgba())?;
        self.pulse(&pen, &scale, words)?;
        let corner = (frame.left + pen.px(8.0), frame.top + frame.height - pen.px(8.0));
        pen.note(words.height, corner, 16.0, look.theme.axis, Place::AboveRight)
    }

    /// The lower and the upper edge of the spectrum: the lowest and the highest point of those that share a column of
    /// pixels.
    fn trace(&self, scale: &Scale) -> (Vec<Point>, Vec<Point>) {
        let end_hz = (self.top_hz * BEYOND).min(self.step_hz * (self.pp.len() - 1) as f64);
        let bins = (LOW_HZ / self.step_hz) as usize + 1..=(end_hz / self.step_hz) as usize;
        let inner = bins.map(|k| k as f64 * self.step_hz);
        let mut columns: Vec<(f64, f64, f64)> = Vec::new();
        for hz in [LOW_HZ].into_iter().chain(inner).chain([end_hz]) {
            let (x, pp) = (scale.x(hz).round(), self.pp_at(hz));
            match columns.last_mut() {
                Some((same, low, high)) if *same == x => (*low, *high) = (low.min(pp), high.max(pp)),
                _ => columns.push((x, pp, pp)),
            }
        }
        columns.iter().map(|(x, low, high)| ((*x, scale.y(*low)), (*x, scale.y(*high)))).unzip()
    }

    fn power_line_names(&self, words: &Words, look: &Look) -> Vec<(Line, String)> {
        let hz = |v: f64| label(v, if (v - v.round()).abs() < 0.05 { 1.0 } else { 0.1 }, look.theme.decimal);
        let name = |line: &Line| {
            let name = if line.is_folded() { words.folded } else { words.power_line };
            (*line, fill(name, &hz(line.true_hz)).replace("{seen}", &hz(line.seen_hz)))
        };
        self.lines.iter().filter(|l| l.source == Source::PowerLine).map(name).collect()
    }

    /// The power line's lines: upright, with their names in rows under the top, so that none lies on another.
    fn power_line<B: DrawingBackend>(
        &self,
        pen: &Pen<B>,
        scale: &Scale,
        names: &[(Line, String)],
    ) -> Result<(), ChartError> {
        let (frame, theme) = (&scale.frame, &pen.look.theme);
        let (right, floor) = (frame.left + frame.width, frame.top + frame.height);
        let row = |k: usize| frame.top + pen.px(ROW * (k as f64 + 0.5) + 4.0);
        let colour = |line: &Line| if line.stands_out { theme.accent } else { theme.axis };
        let shown = names.iter().enumerate().filter(|(_, (line, _))| line.seen_hz >= LOW_HZ);
        for (k, (line, _)) in shown {
            let x = scale.x(line.seen_hz);
            let strength = if line.stands_out { 1.0 } else { 0.5 };
            pen.dashes((x, row(k) - pen.px(6.0)), (x, floor), 1.25, colour(line).mix(strength))?;
        }
        for (k, (line, name)) in names.iter().enumerate() {
            // What lies below the plot's frequencies is named at its edge.
            let (x, name) = if line.seen_hz < LOW_HZ {
                (frame.left, format!("\u{2190} {name}"))
            } else {
                (scale.x(line.seen_hz), name.clone())
            };
            let width = pen.about_width(&name, 17.0) + pen.px(10.0);
            let (way, place) = if x + width < right { (1.0, Place::Right) } else { (-1.0, Place::Left) };
            let (near, far) = (x + way * pen.px(3.0), x + way * width);
            let half = pen.px(ROW / 2.0 - 1.0);
            // Its ground hides the lines of others behind it.
            let (a, b) = ((near.min(far), row(k) - half), (near.max(far), row(k) + half));
            pen.block(a, b, theme.ground.mix(0.85))?;
            pen.note(&name, (x + way * pen.px(6.0), row(k)), 17.0, colour(line), place)?;
        }
        Ok(())
    }

    /// The pulse's lines: a dot on each top.
    fn pulse<B: DrawingBackend>(&self, pen: &Pen<B>, scale: &Scale, words: &Words) -> Result<(), ChartError> {
        let theme = &pen.look.theme;
        for line in self.lines.iter().filter(|l| l.source == Source::Pulse && l.stands_out) {
            let (x, y) = (scale.x(line.seen_hz), scale.y(line.pp));
            pen.dot((x, y), 3.0, theme.ink)?;
            let above = (x, y - pen.px(8.0));
            if line.order == 1 {
                let name = fill(words.pulse, &label(line.true_hz, 0.01, theme.decimal));
                let right = x - pen.px(6.0);
                let (a, b) = (right - pen.about_width(&name, 18.0), above.1 - pen.px(17.0));
                pen.block((a, b), (right, above.1), theme.ground.mix(0.7))?;
                pen.note(&name, (right, above.1), 18.0, theme.ink, Place::AboveLeft)?;
            } else {
                let name = fill(words.harmonic, &line.order.to_string());
                pen.note(&name, above, 15.0, theme.ink, Place::Above)?;
            }
        }
        Ok(())
    }
}

/// Both logarithmic axes.
struct Scale {
    frame: Frame,
    /// Decades of frequency at the left and right edge, of height at the bottom and top.
    x: (f64, f64),
    y: (f64, f64),
}

impl Scale {
    fn new(frame: &Frame, spectrum: &Spectrum, rows: usize) -> Self {
        let bins = (LOW_HZ / spectrum.step_hz) as usize..=(spectrum.top_hz / spectrum.step_hz) as usize;
        let mut pp: Vec<f64> = bins.filter_map(|k| spectrum.pp.get(k)).copied().collect();
        pp.sort_by(f64::total_cmp);
        let highest = pp.last().copied().unwrap_or(1.0).max(1e-15);
        let usual_low = pp.get(pp.len() / 20).copied().unwrap_or(0.0) / 2.0;
        let (low, high) =
            (math::log10(usual_low.clamp(highest / 3e5, highest / 1e2)), math::log10(highest) + 0.02);
        // Room above for the rows of names and for the name at the highest top.
        let room = ((ROW * rows as f64 + 34.0) * frame.dpr / frame.height).min(0.6);
        let x = (math::log10(LOW_HZ), math::log10(spectrum.top_hz * BEYOND));
        Self { frame: *frame, x, y: (low, low + (high - low) / (1.0 - room)) }
    }

    fn x(&self, hz: f64) -> f64 {
        let part = (math::log10(hz.max(1e-9)) - self.x.0) / (self.x.1 - self.x.0);
        self.frame.left + self.frame.width * part
    }

    fn y(&self, pp: f64) -> f64 {
        let part = (math::log10(pp.max(1e-300)) - self.y.0) / (self.y.1 - self.y.0);
        self.frame.top + self.frame.height * (1.0 - part.clamp(0.0, 1.0))
    }

    /// Ground, grid and labels; frequencies at 1, 2 and 5, heights at each decade.
    fn grid<B: DrawingBackend>(&self, pen: &Pen<B>, plain: bool) -> Result<(), ChartError> {
        let (frame, theme) = (&self.frame, &pen.look.theme);
        let (left, right) = (frame.left, frame.left + frame.width);
        let (top, floor) = (frame.top, frame.top + frame.height);
        pen.block((left, top), (right, floor), theme.ground.to_rgba())?;

        for decade in self.y.0.ceil() as i32..=self.y.1.floor() as i32 {
            let value = math::pow(10.0, f64::from(decade));
            let y = self.y(value);
            pen.line(&[(left, y), (right, y)], 1.0, theme.grid.to_rgba())?;
            pen.number(&height(decade, plain, theme.decimal), (left - pen.px(6.0), y), Place::Left)?;
        }

        let mut labelled: Vec<(f64, String)> = Vec::new();
        for decade in -1..=2 {
            let unit = math::pow(10.0, f64::from(decade));
            for digit in 1..=9 {
                let hz = f64::from(digit) * unit;
                let x = self.x(hz);
                if x < left - 0.5 || x > right + 0.5 {
                    continue;
                }
                let named = matches!(digit, 1 | 2 | 5);
                if named {
                    pen.line(&[(x, top), (x, floor)], 1.0, theme.grid.to_rgba())?;
                    labelled.push((x, label(hz, unit, theme.decimal)));
                }
                let tick = pen.px(if named { 7.0 } else { 4.0 });
                pen.line(&[(x, floor), (x, floor + tick)], 1.0, theme.axis.to_rgba())?;
            }
        }
        let last = labelled.len().saturating_sub(1);
        for (k, (x, words)) in labelled.iter().enumerate() {
            let words = if k == last { format!("{words} Hz") } else { words.clone() };
            pen.number(&words, (*x, floor + pen.px(9.0)), Place::Below)?;
        }
        pen.line(&[(left, floor), (right, floor)], 1.0, theme.axis.to_rgba())
    }
}

/// A power of ten of a volt, or of nothing.
fn height(decade: i32, plain: bool, decimal: char) -> String {
    if plain && !(-4..=4).contains(&decade) {
        return format!("1e{decade}").replace('-', "\u{2212}");
    }
    let (shift, unit) = match decade {
        _ if plain => (0, ""),
        ..=-7 => (9, " nV"),
        -6..=-4 => (6, " \u{b5}V"),
        -3..=-1 => (3, " mV"),
        _ => (0, " V"),
    };
    let value = math::pow(10.0, f64::from(decade + shift));
    label(value, value, decimal) + unit
}
