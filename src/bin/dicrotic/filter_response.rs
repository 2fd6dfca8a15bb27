//! `filter-response`: gain and phase of one of the recorder's filters, to compare with other people's.

use clap::ValueEnum;
use dicrotic::math;
use dicrotic::recorder::filters::{Section, average_length, average_response};
use dicrotic::recorder::settings::NOTCH_Q;

use crate::failure::Failure;
use crate::output;

/// The filters of the recorder.
#[derive(Clone, Copy, PartialEq, ValueEnum)]
#[value(rename_all = "snake_case")]
pub enum Kind {
    /// Butterworth high-pass
    HighPass,
    /// Butterworth low-pass
    LowPass,
    /// Power line notch
    Notch,
    /// Mean of the samples of one period of --hz
    Average,
}

/// Number of frequencies, evenly spread over the logarithm from [`LOWEST`] to [`HIGHEST`].
const POINTS: i32 = 60;
/// Lowest frequency, as a share of the sampling rate.
const LOWEST: f64 = 1e-5;
/// Highest frequency, as a share of the sampling rate: just under half.
const HIGHEST: f64 = 0.499;

/// Prints `hz,gain,phase_rad` for a series of frequencies.
pub fn run(kind: Kind, hz: f64, order: u8, rate_hz: f64) -> Result<(), Failure> {
    if !(rate_hz.is_finite() && rate_hz > 0.0) {
        return Err(Failure::new(format!("--rate must be above 0, found {rate_hz}")));
    }
    if !(hz.is_finite() && hz > 0.0 && hz < rate_hz / 2.0 || kind == Kind::Average && hz == rate_hz / 2.0) {
        return Err(Failure::new(format!("--hz must be above 0 and below half of --rate, found {hz}")));
    }
    if !(1..=2).contains(&order) {
        return Err(Failure::new(format!("--order must be 1 or 2, found {order}")));
    }
    let mut text = String::from("hz,gain,phase_rad\n");
    for k in 0..POINTS {
        let share = f64::from(k) / f64::from(POINTS - 1);
        let at_hz = rate_hz * LOWEST * math::pow(HIGHEST / LOWEST, share);
        let (re, im) = match kind {
            Kind::HighPass => Section::high_pass(order, hz, rate_hz).response(at_hz, rate_hz),
            Kind::LowPass => Section::low_pass(order, hz, rate_hz).response(at_hz, rate_hz),
            Kind::Notch => Section::notch(hz, NOTCH_Q, rate_hz).response(at_hz, rate_hz),
            Kind::Average => average_response(average_length(1000.0 / hz, rate_hz), at_hz, rate_hz),
        };
        text += &format!("{at_hz},{},{}\n", math::hypot(re, im), math::atan2(im, re));
    }
    output::print(&text)
}
