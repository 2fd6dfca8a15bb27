//! Second-order sections.

use crate::math;

/// A second-order section `(b0 + b1 z^-1 + b2 z^-2) / (1 + a1 z^-1 + a2 z^-2)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Numerator.
    pub b: [f64; 3],
    /// Denominator without its leading one.
    pub a: [f64; 2],
}

impl Section {
    /// Second-order low-pass with quality `q`: the analogue prototype `1 / (s^2 + s/q + 1)` under the bilinear
    /// transform, with `corner_hz` pre-warped (Oppenheim & Schafer, Discrete-Time Signal Processing, ch. 7).
    /// `corner_hz` must lie between 0 and half of `rate_hz`.
    pub fn low_pass(corner_hz: f64, rate_hz: f64, q: f64) -> Self {
        let k = math::tan(math::PI * corner_hz / rate_hz);
        let norm = 1.0 / (1.0 + k / q + k * k);
        let b = k * k * norm;
        Self { b: [b, 2.0 * b, b], a: [2.0 * (k * k - 1.0) * norm, (1.0 - k / q + k * k) * norm] }
    }

    /// Second-order high-pass with quality `q`; as [`Section::low_pass`] with `s` replaced by `1 / s`.
    pub fn high_pass(corner_hz: f64, rate_hz: f64, q: f64) -> Self {
        let k = math::tan(math::PI * corner_hz / rate_hz);
        let norm = 1.0 / (1.0 + k / q + k * k);
        Self { b: [norm, -2.0 * norm, norm], a: [2.0 * (k * k - 1.0) * norm, (1.0 - k / q + k * k) * norm] }
    }

    /// Gain at zero frequency.
    pub fn dc_gain(&self) -> f64 {
        (self.b[0] + self.b[1] + self.b[2]) / (1.0 + self.a[0] + self.a[1])
    }

    /// Magnitude of the response at `hz`.
    pub fn gain(&self, hz: f64, rate_hz: f64) -> f64 {
        let w = math::TAU * hz / rate_hz;
        let (c1, s1, c2, s2) = (math::cos(w), math::sin(w), math::cos(2.0 * w), math::sin(2.0 * w));
        let [b0, b1, b2] = self.b;
        let [a1, a2] = self.a;
        math::hypot(b0 + b1 * c1 + b2 * c2, b1 * s1 + b2 * s2)
            / math::hypot(1.0 + a1 * c1 + a2 * c2, a1 * s1 + a2 * s2)
    }
}

/// Quality of the one section of a second-order Butterworth filter.
pub const BUTTERWORTH_2: f64 = core::f64::consts::FRAC_1_SQRT_2;

/// Qualities of the two sections of a fourth-order Butterworth filter: `1 / (2 cos(pi / 8))`, `1 / (2 cos(3 pi / 8))`.
pub const BUTTERWORTH_4: [f64; 2] = [0.541_196_100_146_197, 1.306_562_964_876_376_5];
