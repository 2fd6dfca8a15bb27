//! The stretch that was measured: hum, clipping, size on the screen.

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
}

/// Looks at the stretch from `a` to `b` seconds of a recording; `None` when it is shorter than two seconds.
pub fn look(recording: &Recording, a: f64, b: f64, mains_hz: f64) -> Option<Trace> {
    let (from, to) = (recording.sample_at(a), recording.sample_at(b));
    if ((to.saturating_sub(from)) as f64) < 2.0 * recording.rate_hz() {
        return None;
    }
    let values = recording.values(from, to);
    let pulse_v = pulse_height(&values, recording.rate_hz());
    let hum_v = hum_height(&values, recording.rate_hz(), mains_hz);
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
    })
}

/// Height of the pulse, peak to peak, in the unit of `values`: the median over stretches of two seconds, each at
/// least one beat, after an average over one period of the mains.
fn pulse_height(values: &[f64], rate_hz: f64) -> f64 {
    let n = ((rate_hz / 50.0).round() as usize).max(1);
    let smooth: Vec<f64> = values.windows(n).map(|w| w.iter().sum::<f64>() / n as f64).collect();
    let heights = smooth.chunks_exact(((2.0 * rate_hz) as usize).max(2)).map(|chunk| {
        let (low, high) =
            chunk.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
        high - low
    });
    median(heights.collect())
}

/// Height of the hum, peak to peak: fundamental and third harmonic fitted over stretches of 0.4 s.
fn hum_height(values: &[f64], rate_hz: f64, mains_hz: f64) -> f64 {
    if rate_hz <= 2.2 * mains_hz {
        return 0.0;
    }
    let chunk = ((20.0 * rate_hz / mains_hz).round() as usize).max(4);
    let heights = values.chunks_exact(chunk).map(|part| {
        let amplitude = |hz: f64| {
            let (mut re, mut im) = (0.0, 0.0);
            for (k, v) in part.iter().enumerate() {
                let angle = crate::math::TAU * hz * k as f64 / rate_hz;
                re += v * crate::math::cos(angle);
                im += v * crate::math::sin(angle);
            }
            2.0 * crate::math::hypot(re, im) / part.len() as f64
        };
        2.0 * amplitude(mains_hz)
    });
    median(heights.collect())
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}
