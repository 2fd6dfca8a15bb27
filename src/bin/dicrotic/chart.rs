//! Charts of samples, written to SVG and PNG files: what `render --plot` and `plot` share.

use std::path::Path;
use std::str::FromStr;

use clap::ValueEnum;
use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use dicrotic::measure::{detect::detect, quality, variability};
use dicrotic::recording::Recording;
use dicrotic::trace::charts::beat::Beat;
use dicrotic::trace::charts::file;
use dicrotic::trace::charts::rate::Rate;
use dicrotic::trace::charts::spectrum::Spectrum;
use dicrotic::trace::charts::trace::Trace;
use dicrotic::trace::charts::{ChartError, Heading, Look};

use crate::chart_words::{self, Chart};
use crate::failure::{Failure, While};
use crate::terminal;

/// The charts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Kind {
    /// The samples over time
    Trace,
    /// The instantaneous rate over time, with its mean
    Rate,
    /// The spectrum, with the lines of pulse and power line
    Spectrum,
    /// The mean beat with its landmarks and the spread of single beats
    Beat,
}

/// The themes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Theme {
    /// Ivory on near black
    Dark,
    /// Ink on cream, for print
    Light,
}

/// What the themes were called before, with their names of today.
const OLD_THEMES: [(&str, &str); 2] = [("smoked", "dark"), ("paper", "light")];

/// Reads a theme; an old name is refused with the new one.
pub fn theme_parser() -> impl TypedValueParser<Value = Theme> {
    let names = Theme::value_variants().iter().filter_map(Theme::to_possible_value);
    let old = OLD_THEMES.iter().map(|(name, _)| PossibleValue::new(*name).hide(true));
    PossibleValuesParser::new(names.chain(old)).try_map(|name| {
        match OLD_THEMES.iter().find(|(old, _)| *old == name) {
            Some((_, new)) => Err(format!("its name is now \"{new}\"")),
            None => Theme::from_str(&name, false),
        }
    })
}

/// A size in pixels, as `1200x480`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size(pub u32, pub u32);

impl FromStr for Size {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let side = |text: &str| text.parse::<u32>().ok().filter(|side| *side > 0);
        text.split_once('x')
            .and_then(|(w, h)| Some(Size(side(w)?, side(h)?)))
            .ok_or_else(|| "expected width and height in pixels, as in 1200x480".into())
    }
}

/// Which files charts are written to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Format {
    Svg,
    Png,
}

/// How a chart is drawn and where it goes.
pub struct Order<'a> {
    /// Which chart.
    pub kind: Kind,
    /// Its colours.
    pub theme: Theme,
    /// Its size; the kind's own without.
    pub size: Option<Size>,
    /// The file.
    pub out: &'a Path,
}

/// What is drawn.
#[derive(Clone, Copy)]
pub struct Samples<'a> {
    /// Where they come from, in words.
    pub title: &'a str,
    /// The samples; the pulse points up.
    pub values: &'a [f64],
    /// Samples a second.
    pub rate_hz: f64,
    /// Time of the first sample on the axis, s.
    pub start_s: f64,
    /// Frequency of the power line.
    pub power_line_hz: Option<f64>,
    /// Their unit is not known.
    pub plain: bool,
}

/// Whether a file's name ends as a chart's does.
pub fn is_chart(out: &Path) -> bool {
    format(out).is_ok()
}

fn format(out: &Path) -> Result<Format, Failure> {
    match out.extension().and_then(|e| e.to_str()).map(str::to_ascii_lowercase).as_deref() {
        Some("svg") => Ok(Format::Svg),
        Some("png") => Ok(Format::Png),
        _ => {
            let name = terminal::name(out);
            Err(Failure::new(format!("--out {name}: a chart is written to a file that ends in .svg or .png")))
        }
    }
}

impl Order<'_> {
    /// Refuses what cannot be written, before any work is done.
    pub fn check(&self) -> Result<(), Failure> {
        format(self.out).map(|_| ())
    }

    /// The drawn chart as its file has it.
    pub fn drawn(&self, samples: &Samples) -> Result<Vec<u8>, Failure> {
        // A title may be a file's name: what would act in a drawing or spoil its XML becomes visible.
        let title = terminal::one_line(samples.title);
        let samples = &Samples { title: &title, ..*samples };
        let drawing = || format!("the {} chart of {}", self.kind.name(), samples.title);
        let look = match self.theme {
            Theme::Dark => Look::dark(),
            Theme::Light => Look::light(),
        };
        let Size(width, height) = self.size.unwrap_or(self.kind.size());
        let note = samples.note(self.kind);
        let heading = Heading { title: samples.title, note: &note };
        let recording = Recording::of_values(samples.rate_hz, samples.values);
        let chart = samples.chart(self.kind, &recording, heading).while_doing(drawing)?;
        match format(self.out)? {
            Format::Svg => {
                file::svg(&chart, &look, (width, height)).while_doing(drawing).map(String::into_bytes)
            }
            Format::Png => file::png(&chart, &look, (width, height)).while_doing(drawing),
        }
    }
}

impl Kind {
    fn name(self) -> &'static str {
        match self {
            Kind::Trace => "trace",
            Kind::Rate => "rate",
            Kind::Spectrum => "spectrum",
            Kind::Beat => "beat",
        }
    }

    /// The size that suits it.
    fn size(self) -> Size {
        match self {
            Kind::Trace | Kind::Rate => Size(1200, 420),
            Kind::Spectrum => Size(1200, 560),
            Kind::Beat => Size(960, 560),
        }
    }
}

impl Samples<'_> {
    fn seconds(&self) -> f64 {
        self.values.len() as f64 / self.rate_hz
    }

    fn chart<'a>(
        &self,
        kind: Kind,
        recording: &'a Recording,
        heading: Heading<'a>,
    ) -> Result<Chart<'a>, ChartError> {
        let (values, rate_hz) = (self.values, self.rate_hz);
        let to_s = self.start_s + self.seconds();
        Ok(match kind {
            Kind::Trace => {
                let trace = Trace::of(recording, 0.0, self.seconds(), None, self.plain)?;
                Chart::Trace(trace.starting_at(self.start_s), heading)
            }
            Kind::Rate => {
                let beats: Vec<f64> = detect(values, rate_hz).iter().map(|t| t + self.start_s).collect();
                Chart::Rate(Rate::of(&beats, self.start_s, to_s)?, heading)
            }
            Kind::Spectrum => {
                Chart::Spectrum(Spectrum::of(values, rate_hz, self.power_line_hz, self.plain)?, heading)
            }
            Kind::Beat => {
                Chart::Beat(Beat::of(values, rate_hz, &detect(values, rate_hz), self.plain)?, heading)
            }
        })
    }

    /// What stands at the right over the plot.
    fn note(&self, kind: Kind) -> String {
        let (values, rate_hz) = (self.values, self.rate_hz);
        match kind {
            Kind::Trace => {
                let hum = self.power_line_hz.and_then(|hz| quality::hum(values, rate_hz, hz));
                let pulse = quality::pulse_pp(values, rate_hz);
                chart_words::trace_note(pulse, hum.and_then(|hum| hum.ratio), self.plain)
            }
            Kind::Rate => {
                let intervals = variability::intervals(&detect(values, rate_hz)).unwrap_or_default();
                variability::time_domain(&intervals)
                    .map(|found| chart_words::rate_note(&found))
                    .unwrap_or_default()
            }
            Kind::Spectrum => chart_words::sampling_note(self.seconds(), rate_hz),
            Kind::Beat => {
                let mean = dicrotic::measure::landmarks::mean_beat(values, rate_hz, &detect(values, rate_hz));
                mean.map(|mean| chart_words::beat_note(&mean.landmarks)).unwrap_or_default()
            }
        }
    }
}
