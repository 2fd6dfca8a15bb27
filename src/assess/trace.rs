//! The stretch that was measured: hum, clipping, size on the screen.

use crate::measure::quality;
use crate::recorder::converter;
use crate::recorder::settings::RANGES_V;
use crate::recording::Recording;
use serde::Serialize;

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
    /// Quality of the stretch, 0 to 1: see [`quality::Quality::index`].
    pub quality: f64,
}

/// Looks at the stretch from `a` to `b` seconds of a recording; `None` when it is shorter than two seconds.
pub fn look(recording: &Recording, a: f64, b: f64, mains_hz: f64) -> Option<Trace> {
    let (from, to) = (recording.sample_at(a), recording.sample_at(b));
    if ((to.saturating_sub(from)) as f64) < 2.0 * recording.rate_hz() {
        return None;
    }
    let values = recording.values(from, to);
    let rate_hz = recording.rate_hz();
    let quality = quality::quality(&values, rate_hz);
    // The quality has measured the pulse already; a stretch too short for it has a pulse all the same.
    let pulse_v = match &quality {
        Some(quality) if quality.pulse_pp > 0.0 => quality.pulse_pp,
        Some(_) => 0.0,
        None => quality::pulse_pp(&values, rate_hz).unwrap_or(0.0),
    };
    // Where slow sampling has folded the mains among the pulse, nobody can tell the two apart.
    let hum_v = quality::hum_alone(&values, rate_hz, mains_hz).map_or(0.0, |(pp, _)| pp);
    let clipped = recording.codes()[from..to]
        .iter()
        .enumerate()
        .filter(|(k, code)| {
            recording.span_at(from + k).is_some_and(|span| converter::at_limit(**code, span.bits))
        })
        .count();
    let screen_v = recording.span_at(from).map_or(1.0, |span| span.code_v * 65536.0);
    Some(Trace {
        hum_ratio: if pulse_v > 0.0 { hum_v / pulse_v } else { f64::MAX },
        clip_share: clipped as f64 / values.len() as f64,
        fill: pulse_v / screen_v,
        pulse_v,
        smaller_range_fits: smaller_range_fits(&values, screen_v / 2.0),
        quality: quality.map_or(0.0, |q| q.index),
    })
}

/// Whether the next smaller range of the recorder would hold all values about their mean, with a tenth to spare. False where
/// `range_v` is none of the recorder's ranges, as when the labels carry a factor.
fn smaller_range_fits(values: &[f64], range_v: f64) -> bool {
    let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
    let furthest = values.iter().map(|v| (v - mean).abs()).fold(0.0, f64::max);
    let steps = RANGES_V.windows(2).find(|w| (w[0] / range_v - 1.0).abs() < 1e-6);
    steps.is_some_and(|w| furthest < 0.9 * w[1])
}
