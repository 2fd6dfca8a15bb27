//! The stretch that was measured: hum, clipping, size on the screen.

use crate::measure::quality;
use crate::recorder::converter;
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
    let pulse_v = quality::pulse_pp(&values, recording.rate_hz()).unwrap_or(0.0);
    // Where slow sampling has folded the mains among the pulse, nobody can tell the two apart.
    let hum_v = quality::hum(&values, recording.rate_hz(), mains_hz).map_or(0.0, |hum| hum.pp);
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
        quality: quality::quality(&values, recording.rate_hz()).map_or(0.0, |q| q.index),
    })
}
