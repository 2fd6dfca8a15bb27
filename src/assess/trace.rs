//! The stretch that was measured: movement, hum, clipping, size on the screen.

use super::range;
use crate::measure::detect::detect;
use crate::measure::movement::{Movement, movement};
use crate::measure::quality;
use crate::recorder::converter;
use crate::recorder::settings::RANGES_V;
use crate::recording::Recording;
use serde::Serialize;

/// So much movement within a second, as a share of the pulse's height, disturbs counting and reading: a bump of half a beat
/// may be taken for a beat, or hide one (design default).
pub const DISTURBS: f64 = 0.5;
/// So much of a recording is looked at before and behind the stretch, s: more than the longest beat.
const ABOUT_S: f64 = 2.5;

/// Figures of a stretch of trace.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Trace {
    /// Hum over pulse, both peak to peak.
    pub hum_ratio: f64,
    /// Share of samples at either end of the range.
    pub clip_share: f64,
    /// Height of the pulse as a share of the screen.
    pub fill: f64,
    /// Height of the pulse, peak to peak, V.
    pub pulse_v: f64,
    /// Whether the next smaller range would have held the whole stretch, its mean brought to zero.
    pub smaller_range_fits: bool,
    /// The smallest range that would hold the trace once it is zeroed, V.
    #[serde(skip)]
    pub fitting_v: Option<f64>,
    /// Quality of the stretch, 0 to 1: see [`quality::Quality::index`].
    pub quality: f64,
    /// The stretch's worst place, s from the recording's start; absent where there are too few beats to tell.
    pub movement: Option<Movement>,
}

impl Trace {
    /// The movement, where it disturbs counting and reading.
    pub fn disturbed(&self) -> Option<Movement> {
        self.movement.filter(|m| m.height >= DISTURBS)
    }

    /// How much there is to be said against it, for choosing the worse of two: a disturbed stretch before any other, then the
    /// one of lower quality.
    pub fn badness(&self) -> f64 {
        f64::from(u8::from(self.disturbed().is_some())) - self.quality
    }
}

/// Looks at the stretch from `a` to `b` seconds of a recording; `None` when it is shorter than two seconds.
pub fn look(recording: &Recording, a: f64, b: f64, power_line_hz: f64) -> Option<Trace> {
    let (from, to) = (recording.sample_at(a), recording.sample_at(b));
    let rate_hz = recording.rate_hz();
    if ((to.saturating_sub(from)) as f64) < 2.0 * rate_hz {
        return None;
    }
    // Beats at the ends are known better with those beside them.
    let (first, end) = (recording.sample_at(a - ABOUT_S), recording.sample_at(b + ABOUT_S));
    let wide = recording.values(first, end);
    let values = &wide[from - first..to - first];
    let cut_off = cut_off(recording, first, end);
    let beats = detect(&wide, rate_hz);
    let (start_s, before_s) = (first as f64 / rate_hz, (from - first) as f64 / rate_hz);
    let after_s = (to - first) as f64 / rate_hz;
    let inside: Vec<f64> =
        beats.iter().filter(|t| (before_s..after_s).contains(*t)).map(|t| t - before_s).collect();
    let quality = quality::quality_of(values, rate_hz, &inside);
    // The quality has measured the pulse already; a stretch too short for it has a pulse all the same.
    let pulse_v = match &quality {
        Some(quality) if quality.pulse_pp > 0.0 => quality.pulse_pp,
        Some(_) => 0.0,
        None => quality::pulse_pp(values, rate_hz).unwrap_or(0.0),
    };
    // Where slow sampling has folded the power line among the pulse, nobody can tell the two apart.
    let hum_v = quality::hum_alone(values, rate_hz, power_line_hz).map_or(0.0, |(pp, _)| pp);
    let movement = movement(&wide, &cut_off, rate_hz, power_line_hz, &beats, (before_s, after_s))
        .map(|m| Movement { from_s: start_s + m.from_s, to_s: start_s + m.to_s, ..m });
    let clipped = cut_off[from - first..to - first].iter().filter(|cut| **cut).count();
    let screen_v = recording.span_at(from).map_or(1.0, |span| span.code_v * 65536.0);
    Some(Trace {
        hum_ratio: if pulse_v > 0.0 { hum_v / pulse_v } else { f64::MAX },
        clip_share: clipped as f64 / values.len() as f64,
        fill: pulse_v / screen_v,
        pulse_v,
        smaller_range_fits: smaller_range_fits(range::furthest(values), screen_v / 2.0),
        fitting_v: range::fitting(range::furthest(values), pulse_v),
        quality: quality.map_or(0.0, |q| q.index),
        movement,
    })
}

/// Which samples stand at an end of the range.
fn cut_off(recording: &Recording, from: usize, to: usize) -> Vec<bool> {
    (from..to)
        .zip(&recording.codes()[from..to])
        .map(|(k, code)| recording.span_at(k).is_some_and(|span| converter::at_limit(*code, span.bits)))
        .collect()
}

/// Whether the next smaller range of the recorder would hold the values. False where `range_v` is none of the recorder's ranges,
/// as when the labels carry a factor.
fn smaller_range_fits(furthest_v: f64, range_v: f64) -> bool {
    let steps = RANGES_V.windows(2).find(|w| (w[0] / range_v - 1.0).abs() < 1e-6);
    steps.is_some_and(|w| furthest_v < range::ROOM_BELOW * w[1])
}
