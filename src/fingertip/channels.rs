//! Which mixtures of the colors may carry the pulse.

use super::even::{Even, RATE_HZ};
use crate::dsp::{section, section::Section, zero_phase};
use crate::math;

/// Lower corner of the band, in Hz: the slowest heart that is looked for.
const LOW_HZ: f64 = 0.5;
/// Upper corner, in Hz: that of the detector of beats.
const HIGH_HZ: f64 = 8.0;
/// A color whose mean is below this, of 255, cannot be measured by its own mean.
pub(super) const MEASURABLE: f64 = 2.0;

/// A mixture of colors as a signal that rises with the blood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mixture {
    /// One color: its number in the frame.
    Color(usize),
    /// How much more of the second color is taken away than of the first.
    Difference(usize, usize),
}

/// All mixtures. More blood takes light away, of green and blue more than of red; what changes the light itself changes
/// all colors by one factor, which the difference of their logarithms takes out.
pub(super) const MIXTURES: [Mixture; 6] = [
    Mixture::Color(1),
    Mixture::Color(0),
    Mixture::Color(2),
    Mixture::Difference(0, 1),
    Mixture::Difference(0, 2),
    Mixture::Difference(2, 1),
];

/// The colors of a stretch as signals: of measurable ones the logarithm, so that the unit is a share of the light, of
/// others the color itself; upside down, as blood darkens.
pub(super) struct Signals {
    /// Time of the first sample, in seconds.
    pub from_s: f64,
    /// Whether a color is measurable.
    pub measurable: [bool; 3],
    /// Of each color, without drift and noise.
    pub colors: [Vec<f64>; 3],
}

impl Signals {
    /// Takes logarithms and filters.
    pub fn of(even: &Even) -> Self {
        let mut measurable = [false; 3];
        let colors = core::array::from_fn(|k| {
            let x = &even.colors[k];
            measurable[k] = x.iter().sum::<f64>() >= MEASURABLE * x.len() as f64;
            let down: Vec<f64> = match measurable[k] {
                true => x.iter().map(|v| -math::ln(v.max(0.25 * MEASURABLE))).collect(),
                false => x.iter().map(|v| -v).collect(),
            };
            banded(down)
        });
        Self { from_s: even.from_s, measurable, colors }
    }

    /// A mixture's pulse, up with the blood; `None` where its colors do not allow it.
    pub fn pulse(&self, mixture: Mixture) -> Option<Vec<f64>> {
        match mixture {
            // A color that never changes has nothing to say.
            Mixture::Color(k) => self.colors[k].iter().any(|v| *v != 0.0).then(|| self.colors[k].clone()),
            Mixture::Difference(less, more) => (self.measurable[less] && self.measurable[more])
                .then(|| self.colors[more].iter().zip(&self.colors[less]).map(|(m, l)| m - l).collect()),
        }
    }
}

/// Drift below the slowest heart and noise above what a pulse holds are taken off, without shifting anything.
fn banded(mut x: Vec<f64>) -> Vec<f64> {
    let low = Section::low_pass(HIGH_HZ, RATE_HZ, section::BUTTERWORTH_2);
    let high = Section::high_pass(LOW_HZ, RATE_HZ, section::BUTTERWORTH_2);
    zero_phase::filter(&[high, low], &mut x, (2.0 * RATE_HZ) as usize);
    x
}
