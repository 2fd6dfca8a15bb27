//! Which range of the recorder fits a signal: one rule for the judgement, the hints and the example.

use crate::recorder::settings::RANGES_V;

/// Share of a range up to which a signal may reach, so that the next beats have room too (design default).
pub const ROOM: f64 = 0.9;
/// Share of the next smaller range up to which a signal may reach for that range to be asked for: less than [`ROOM`], so that
/// nobody is sent to a range in which the next beats are cut off (design default).
pub const ROOM_BELOW: f64 = 0.75;
/// Share of the screen that a pulse may fill, in ranges to one side of zero: three quarters of both sides (design default).
const PULSE: f64 = 1.5;

/// How far values go from their mean, which zeroing puts into the middle of the screen.
pub fn furthest(values: &[f64]) -> f64 {
    let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
    values.iter().map(|v| (v - mean).abs()).fold(0.0, f64::max)
}

/// Whether a range holds a signal that reaches so far from zero.
pub fn holds(reach_v: f64, range_v: f64) -> bool {
    reach_v < ROOM * range_v
}

/// The smallest range that holds a signal and in which its pulse is not too tall, V.
pub fn fitting(reach_v: f64, pulse_v: f64) -> Option<f64> {
    RANGES_V.iter().copied().filter(|v| holds(reach_v, *v) && pulse_v <= PULSE * v).min_by(f64::total_cmp)
}
