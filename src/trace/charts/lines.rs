//! Which lines of a spectrum are the pulse's and which the power line', and whether they stand out.

use crate::measure::{detect::detect, quality};

/// Where a line comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The pulse, and what makes up its shape.
    Pulse,
    /// The power line.
    PowerLine,
}

/// A line of the spectrum that can be named.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Where it comes from.
    pub source: Source,
    /// 1 for the fundamental, 2 for the second harmonic, and so on.
    pub order: u32,
    /// Its own frequency, Hz.
    pub true_hz: f64,
    /// Where it shows at this sampling rate, Hz.
    pub seen_hz: f64,
    /// Peak to peak of the sine there, in the unit of the samples.
    pub pp: f64,
    /// Whether it is a top, three times as high as what lies about it.
    pub stands_out: bool,
}

impl Line {
    /// Whether sampling has folded it to another frequency.
    pub fn is_folded(&self) -> bool {
        (self.true_hz - self.seen_hz).abs() > 1e-6
    }
}

/// Highest frequency that is looked at, Hz.
pub const TOP_HZ: f64 = 150.0;
/// Highest frequency of a named harmonic of the pulse, Hz: 99 % of the power of finger pulses lies below 6.3 Hz
/// (measured on the recordings of Neshitov et al. 2021, Sensors 21:6798).
const PULSE_TOP_HZ: f64 = 6.3;
/// Likeness of the beats from which on they are taken for a pulse; noise gives about half.
const LEAST_LIKENESS: f64 = 0.6;

/// Where a sine of `hz` shows when it is sampled at `rate_hz`, Hz: the distance to the nearest multiple of the rate
/// (any text on sampling, e.g. Oppenheim & Schafer, Discrete-Time Signal Processing, ch. 4).
pub fn folded(hz: f64, rate_hz: f64) -> f64 {
    (hz - (hz / rate_hz).round() * rate_hz).abs()
}

/// The frequency of the pulse, Hz: intervals between beats over the time they take; `None` where there is no pulse.
pub fn pulse_hz(values: &[f64], rate_hz: f64) -> Option<f64> {
    let beats = detect(values, rate_hz);
    let (first, last) = (beats.first()?, beats.last()?);
    let alike = quality::quality(values, rate_hz)?.likeness >= LEAST_LIKENESS;
    (beats.len() >= 4 && alike).then(|| (beats.len() - 1) as f64 / (last - first))
}

/// The lines of a spectrum that can be named, the pulse's first. `pp` are the heights of the spectrum at multiples of
/// `step_hz`, `width_hz` is how wide it draws a sine.
pub(super) fn named(
    pp: &[f64],
    (step_hz, width_hz): (f64, f64),
    rate_hz: f64,
    pulse_hz: Option<f64>,
    power_line_hz: Option<f64>,
) -> Vec<Line> {
    let mut lines = Vec::new();
    let orders = |of: f64, top: f64| (1..=(top / of + 1e-9) as u32).map(move |k| (k, f64::from(k) * of));
    if let Some(of) = pulse_hz {
        // The rate varies within the stretch, and so does a harmonic's place, by as many per cent.
        for (order, hz) in orders(of, PULSE_TOP_HZ.min(0.45 * rate_hz)) {
            let (seen_hz, pp, stands_out) = highest(pp, step_hz, hz, width_hz.max(0.08 * hz).min(0.4 * of));
            lines.push(Line { source: Source::Pulse, order, true_hz: hz, seen_hz, pp, stands_out });
        }
    }
    if let Some(of) = power_line_hz.filter(|hz| *hz > 0.0) {
        for (order, hz) in orders(of, TOP_HZ) {
            let seen_hz = folded(hz, rate_hz);
            // Power line wander by a few tenths of a per cent (EN 50160 allows 1 %, from memory).
            let reach_hz = width_hz.max(0.003 * hz);
            let (_, height, stands_out) = highest(pp, step_hz, seen_hz, reach_hz);
            // Among the pulse's lines a folded one can be told only where it is the highest for half their distance.
            let among = pulse_hz.filter(|_| seen_hz < PULSE_TOP_HZ);
            let told =
                among.is_none_or(|of| highest(pp, step_hz, seen_hz, reach_hz.max(0.5 * of)).1 <= height);
            let stands_out = stands_out && told;
            lines.push(Line {
                source: Source::PowerLine,
                order,
                true_hz: hz,
                seen_hz,
                pp: height,
                stands_out,
            });
        }
    }
    lines
}

/// Place and height of the highest point within `reach_hz` of `hz`, and whether it is a top, three times as high as the
/// median of as much again on both sides. The flank of another line is no top.
fn highest(pp: &[f64], step_hz: f64, hz: f64, reach_hz: f64) -> (f64, f64, bool) {
    let bin = |hz: f64| ((hz / step_hz).round().max(0.0) as usize).min(pp.len() - 1);
    let (from, to) = (bin(hz - reach_hz), bin(hz + reach_hz));
    let best = (from..=to).max_by(|a, b| pp[*a].total_cmp(&pp[*b])).unwrap_or(from);
    let top =
        (best == 0 || pp[best - 1] <= pp[best]) && pp.get(best + 1).is_none_or(|next| *next <= pp[best]);
    let (below, above) = (bin(hz - 3.0 * reach_hz)..from, to + 1..bin(hz + 3.0 * reach_hz) + 1);
    let mut about: Vec<f64> = below.chain(above).map(|k| pp[k]).collect();
    let middle = about.len() / 2;
    let usual = if about.is_empty() { 0.0 } else { *about.select_nth_unstable_by(middle, f64::total_cmp).1 };
    (best as f64 * step_hz, pp[best], top && pp[best] > 3.0 * usual)
}
