//! The English words of the charts.

use dicrotic::measure::landmarks::Landmarks;
use dicrotic::measure::variability::TimeDomain;
use dicrotic::trace::charts::beat::{self, Beat};
use dicrotic::trace::charts::file::Drawn;
use dicrotic::trace::charts::rate::{self, Rate};
use dicrotic::trace::charts::spectrum::{self, Spectrum};
use dicrotic::trace::charts::trace::Trace;
use dicrotic::trace::charts::{ChartError, Heading, Look};
use plotters::coord::Shift;
use plotters::prelude::{DrawingArea, DrawingBackend};

/// A chart with its heading.
pub enum Chart<'a> {
    Trace(Trace<'a>, Heading<'a>),
    Rate(Rate, Heading<'a>),
    Spectrum(Spectrum, Heading<'a>),
    Beat(Beat, Heading<'a>),
}

impl Drawn for Chart<'_> {
    fn draw<B: DrawingBackend>(&self, area: &DrawingArea<B, Shift>, look: &Look) -> Result<(), ChartError> {
        match self {
            Chart::Trace(trace, heading) => trace.draw(area, look, heading),
            Chart::Rate(rate, heading) => {
                let words = rate::Words {
                    heading: *heading,
                    unit: "beats/min",
                    mean: "mean {v} beats/min",
                    irregular: "{v} beat intervals more than 20 % off the ones beside them",
                };
                rate.draw(area, look, &words)
            }
            Chart::Spectrum(spectrum, heading) => {
                let words = spectrum::Words {
                    heading: *heading,
                    height: "as a sine, peak to peak",
                    pulse: "pulse {v} Hz",
                    harmonic: "\u{d7}{v}",
                    power_line: "power line {v} Hz",
                    folded: "power line {v} Hz, folded to {seen} Hz",
                };
                spectrum.draw(area, look, &words)
            }
            Chart::Beat(beat, heading) => {
                let words = beat::Words {
                    heading: *heading,
                    foot: "foot",
                    peak: "peak, {v} ms",
                    notch: "dicrotic notch, {v} ms",
                    second: "second bump, {v} ms",
                    shoulder: "shoulder, {v} ms",
                    spread: "mean of {v} beats; eight of ten are in the band",
                };
                beat.draw(area, look, &words)
            }
        }
    }
}

/// Size of the pulse, and hum as part of it.
pub fn trace_note(pulse_pp: Option<f64>, hum_ratio: Option<f64>, plain: bool) -> String {
    let pulse = match pulse_pp {
        None => return "no pulse found".into(),
        Some(_) if plain => "pulse found".into(),
        Some(volts) => format!("pulse {:.1} mV", 1000.0 * volts),
    };
    match hum_ratio {
        Some(ratio) => format!("{pulse}, hum {:.0} % of it", 100.0 * ratio),
        None => pulse,
    }
}

/// How much the beat intervals vary.
pub fn rate_note(found: &TimeDomain) -> String {
    format!(
        "{} normal beat intervals, SDNN {:.0} ms, RMSSD {:.0} ms",
        found.count, found.sdnn_ms, found.rmssd_ms
    )
}

/// Length and sampling rate.
pub fn sampling_note(seconds: f64, rate_hz: f64) -> String {
    let round = |v: f64| (v * 10.0).round() / 10.0;
    format!("{} s at {} samples/s", round(seconds), round(rate_hz))
}

/// Times of the upstroke.
pub fn beat_note(marks: &Landmarks) -> String {
    format!("rise 10\u{2013}90 % {:.0} ms, width at half height {:.0} ms", marks.rise_ms, marks.width50_ms)
}
