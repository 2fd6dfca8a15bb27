//! The mean beat of a stretch with its landmarks, and how single beats spread about it.

use super::error::ChartError;
use super::look::Look;
use super::paper::{self, Heading};
use super::pen::{Pen, Place, Point, fill};
use crate::dsp::{resample, section, section::Section, zero_phase};
use crate::measure::detect::LOWEST_RATE_HZ;
use crate::measure::landmarks::{self, Landmarks, MeanBeat};
use crate::trace::axes::label;
use crate::trace::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// Words of this chart. In the names of the landmarks `{v}` stands for milliseconds after the foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words<'a> {
    /// Above the plot.
    pub heading: Heading<'a>,
    /// The foot.
    pub foot: &'a str,
    /// The peak.
    pub peak: &'a str,
    /// The notch, where a second bump follows it.
    pub notch: &'a str,
    /// The second bump.
    pub second: &'a str,
    /// The bend in the falling limb, where there is no bump.
    pub shoulder: &'a str,
    /// How many beats the mean is of (`{v}`), and what the band is.
    pub spread: &'a str,
}

/// Beats needed: three that have one after them.
const NEEDED: usize = 4;
/// Free time before the foot and after the next, s.
const MARGIN_S: f64 = 0.05;

/// The mean beat and the spread about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Beat {
    mean: MeanBeat,
    /// Tenth and ninetieth part of the single beats at each point of the mean; none where less than half of them
    /// reach, as the shorter ones have ended.
    band: Vec<Option<(f64, f64)>>,
    plain: bool,
}

impl Beat {
    /// The mean beat of the samples, given the times of the beats' peaks, s from the first sample; the pulse points
    /// up. `plain` if the unit of the values is not known.
    pub fn of(values: &[f64], rate_hz: f64, beats_s: &[f64], plain: bool) -> Result<Self, ChartError> {
        if !(rate_hz.is_finite() && rate_hz >= LOWEST_RATE_HZ) {
            return Err(ChartError::RateTooLow { needed_hz: LOWEST_RATE_HZ, found_hz: rate_hz });
        }
        if let Some(k) = beats_s.iter().position(|t| !t.is_finite()) {
            return Err(ChartError::NotRising { beat: k + 1 });
        }
        if let Some(k) = beats_s.windows(2).position(|w| w[1] <= w[0]) {
            return Err(ChartError::NotRising { beat: k + 2 });
        }
        if values.len() < 2 || beats_s.len() < NEEDED {
            return Err(ChartError::TooFewBeats { needed: NEEDED, found: beats_s.len() });
        }
        let mean = landmarks::mean_beat(values, rate_hz, beats_s)
            .ok_or(ChartError::Unlike { found: beats_s.len() })?;
        if mean.values.iter().any(|v| !v.is_finite()) {
            return Err(ChartError::NoNumbers);
        }
        let band = band(values, rate_hz, &landmarks::of_beats(values, rate_hz, beats_s), &mean);
        Ok(Self { mean, band, plain })
    }

    /// The mean beat.
    pub fn mean(&self) -> &MeanBeat {
        &self.mean
    }

    /// The values between which eight in ten of the single beats lie at each point of the mean beat, above its foot.
    pub fn band(&self) -> &[Option<(f64, f64)>] {
        &self.band
    }

    /// Draws it.
    pub fn draw<B: DrawingBackend>(
        &self,
        area: &DrawingArea<B, Shift>,
        look: &Look,
        words: &Words,
    ) -> Result<(), ChartError> {
        let (pen, frame) = paper::lay(area, look, &words.heading)?;
        let marks = &self.mean.landmarks;
        let highest = self.band.iter().flatten().map(|b| b.1).fold(marks.height, f64::max);
        let lowest = self.band.iter().flatten().map(|b| b.0).fold(0.0, f64::min);
        let (low, high) = (lowest - 0.16 * marks.height, highest + 0.16 * marks.height);
        let length_s = (self.mean.values.len() - 1) as f64 / self.mean.rate_hz;
        let frame = frame.showing(-MARGIN_S, length_s + MARGIN_S, low, high);
        pen.axes(&frame, self.plain)?;

        let at = |k: usize, v: f64| (frame.x(k as f64 / self.mean.rate_hz), frame.y(v));
        let reached = || self.band.iter().enumerate().filter_map(|(k, b)| b.map(|b| (k, b)));
        let mut outline: Vec<Point> = reached().map(|(k, b)| at(k, b.1)).collect();
        let back: Vec<Point> = reached().map(|(k, b)| at(k, b.0)).collect();
        outline.extend(back.into_iter().rev());
        if outline.len() > 2 {
            pen.shape(&outline, look.theme.ink.mix(0.17))?;
        }
        let curve: Vec<Point> = self.mean.values.iter().enumerate().map(|(k, v)| at(k, *v)).collect();
        pen.trace(&curve, look.theme.ink)?;
        self.name(&pen, &frame, words)
    }

    /// Dots and names of the landmarks.
    fn name<B: DrawingBackend>(&self, pen: &Pen<B>, frame: &Frame, words: &Words) -> Result<(), ChartError> {
        let (theme, marks) = (&pen.look.theme, &self.mean.landmarks);
        let mark = |t: f64, name: &str, (dx, dy): Point, place: Place| {
            let value = resample::linear(&self.mean.values, t * self.mean.rate_hz);
            let dot = (frame.x(t), frame.y(value));
            let end = (dot.0 + pen.px(dx), dot.1 + pen.px(dy));
            let near = (dot.0 + pen.px(dx) * 0.25, dot.1 + pen.px(dy) * 0.25);
            pen.line(&[near, end], 1.0, theme.accent.mix(0.7))?;
            pen.dot(dot, 3.5, theme.accent)?;
            let words = fill(name, &label(1000.0 * t, 1.0, theme.decimal));
            let beside = pen.px(if dx > 0.0 { 4.0 } else { -4.0 });
            pen.note(&words, (end.0 + beside, end.1), 18.0, theme.ink, place)
        };
        mark(marks.foot_s, words.foot, (22.0, 12.0), Place::Right)?;
        let beside_peak = (26.0, -14.0);
        mark(marks.peak_s, words.peak, beside_peak, Place::Right)?;
        if let Some(t) = marks.notch_s {
            let name = if marks.second_s.is_some() { words.notch } else { words.shoulder };
            mark(t, name, (-22.0, 34.0), Place::Left)?;
        }
        if let Some(t) = marks.second_s {
            // Above the peak's name, where it would lie on it.
            let y = |t: f64| frame.y(resample::linear(&self.mean.values, t * self.mean.rate_hz));
            let (dx, dy) = (24.0, -30.0);
            let gap = frame.x(t) + pen.px(dx) - frame.x(marks.peak_s) - pen.px(beside_peak.0);
            let taken = y(marks.peak_s) + pen.px(beside_peak.1);
            let meets = (y(t) + pen.px(dy) - taken).abs() < pen.px(20.0)
                && gap < pen.about_width(words.peak, 18.0) + pen.px(12.0);
            let dy = if meets { (taken - y(t)) / pen.px(1.0) - 22.0 } else { dy };
            mark(t, words.second, (dx, dy), Place::Right)?;
        }
        let corner = (frame.left + frame.width - pen.px(8.0), frame.top + pen.px(8.0));
        let words = fill(words.spread, &self.mean.beats.to_string());
        pen.note(&words, corner, 16.0, theme.axis, Place::BelowLeft)
    }
}

/// The spread of single beats at each point of the mean. They are smoothed and levelled as the mean is (see
/// [`landmarks`]), and laid over it so that the upstrokes cross half of their height together.
fn band(values: &[f64], rate_hz: f64, singles: &[Landmarks], mean: &MeanBeat) -> Vec<Option<(f64, f64)>> {
    let mut smooth = resample::held(values).into_owned();
    if rate_hz > 50.0 {
        let low = Section::low_pass(20.0, rate_hz, section::BUTTERWORTH_2);
        zero_phase::filter(&[low], &mut smooth, rate_hz as usize);
    }
    let step_s = 1.0 / mean.rate_hz;
    let half_way = |of: &dyn Fn(f64) -> f64, foot: f64, peak: f64| {
        let half = 0.5 * of(peak);
        let mut t = peak;
        while t > foot && of(t) > half {
            t -= step_s;
        }
        t
    };
    let middle = |t: f64| resample::linear(&mean.values, t * mean.rate_hz);
    let mean_half = half_way(&middle, 0.0, mean.landmarks.peak_s);
    let usual_s = (mean.values.len() - 1) as f64 * step_s;

    let mut at: Vec<Vec<f64>> = vec![Vec::new(); mean.values.len()];
    let mut count = 0;
    for pair in singles.windows(2) {
        let (foot, end) = (pair[0].foot_s, pair[1].foot_s);
        // A beat left out between them, or an early one.
        if !(0.8..=1.2).contains(&((end - foot) / usual_s)) {
            continue;
        }
        let raw = |t: f64| resample::cubic(&smooth, t * rate_hz);
        let (level, slope) = (raw(foot), (raw(end) - raw(foot)) / (end - foot));
        let beat = |t: f64| raw(t) - level - slope * (t - foot);
        let start = half_way(&beat, foot, pair[0].peak_s) - mean_half;
        count += 1;
        for (k, values) in at.iter_mut().enumerate() {
            let t = start + k as f64 * step_s;
            if t >= (foot - MARGIN_S).max(0.0) && t <= end {
                values.push(beat(t));
            }
        }
    }
    at.into_iter()
        .map(|mut values| {
            values.sort_by(f64::total_cmp);
            let part = |p: f64| values[(p * (values.len() - 1) as f64).round() as usize];
            (values.len() >= 3 && 2 * values.len() >= count).then(|| (part(0.1), part(0.9)))
        })
        .collect()
}
