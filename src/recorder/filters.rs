//! Filters: designs, their response, and the running form.
//!
//! Designs are the bilinear transform of the analogue prototypes with the corner pre-warped (any signal-processing
//! text; Oppenheim & Schafer, Discrete-Time Signal Processing, ch. 7). They are checked against scipy.signal.

use crate::math;
use serde::{Deserialize, Serialize};

/// Coefficients of `H(z) = (b0 + b1 z^-1 + b2 z^-2) / (1 + a1 z^-1 + a2 z^-2)`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Section {
    /// Numerator.
    pub b: [f64; 3],
    /// Denominator without its leading 1.
    pub a: [f64; 2],
}

impl Section {
    /// Lets everything through unchanged.
    pub const PASS: Section = Section { b: [1.0, 0.0, 0.0], a: [0.0, 0.0] };

    /// Butterworth low-pass of order 1 or 2 with its -3 dB corner at `hz`. A corner at or above half the rate lets
    /// everything through, since there is nothing above it to take away.
    pub fn low_pass(order: u8, hz: f64, rate_hz: f64) -> Section {
        if hz >= 0.5 * rate_hz {
            return Section::PASS;
        }
        let k = math::tan(math::PI * hz / rate_hz);
        if order == 1 {
            let n = 1.0 / (1.0 + k);
            return Section { b: [k * n, k * n, 0.0], a: [(k - 1.0) * n, 0.0] };
        }
        let (n, a) = Self::second_order(k);
        let b = k * k * n;
        Section { b: [b, 2.0 * b, b], a }
    }

    /// Butterworth high-pass of order 1 or 2 with its -3 dB corner at `hz`. A corner at or above half the rate lets
    /// nothing through.
    pub fn high_pass(order: u8, hz: f64, rate_hz: f64) -> Section {
        if hz >= 0.5 * rate_hz {
            return Section { b: [0.0; 3], a: [0.0; 2] };
        }
        let k = math::tan(math::PI * hz / rate_hz);
        if order == 1 {
            let n = 1.0 / (1.0 + k);
            return Section { b: [n, -n, 0.0], a: [(k - 1.0) * n, 0.0] };
        }
        let (n, a) = Self::second_order(k);
        Section { b: [n, -2.0 * n, n], a }
    }

    /// Denominator of the second-order Butterworth filters and its normaliser.
    fn second_order(k: f64) -> (f64, [f64; 2]) {
        let n = 1.0 / (1.0 + core::f64::consts::SQRT_2 * k + k * k);
        (n, [2.0 * (k * k - 1.0) * n, (1.0 - core::f64::consts::SQRT_2 * k + k * k) * n])
    }

    /// Notch at `hz` whose width at -3 dB is `hz / q`. At or above half the rate there is no such frequency to recording
    /// away, and everything passes.
    pub fn notch(hz: f64, q: f64, rate_hz: f64) -> Section {
        if hz >= 0.5 * rate_hz {
            return Section::PASS;
        }
        let w = math::TAU * hz / rate_hz;
        let beta = math::tan(w / q / 2.0);
        let gain = 1.0 / (1.0 + beta);
        let cos = math::cos(w);
        Section { b: [gain, -2.0 * gain * cos, gain], a: [-2.0 * gain * cos, 2.0 * gain - 1.0] }
    }

    /// Leaky integral, `2 pi U s / (s + 2 pi L)^2` with `U` = `unity_hz` and `L` = `leak_hz`: a sine of `U`, well above `L`, keeps
    /// its height and comes a quarter of a period late; a constant gives nothing. By the bilinear transform.
    pub fn integral(unity_hz: f64, leak_hz: f64, rate_hz: f64) -> Section {
        let (c, u, l) = (2.0 * rate_hz, math::TAU * unity_hz, math::TAU * leak_hz);
        let n = 1.0 / ((c + l) * (c + l));
        let low = (l - c) / (l + c);
        Section { b: [u * c * n, 0.0, -u * c * n], a: [2.0 * low, low * low] }
    }

    /// Complex response at a frequency: (real, imaginary).
    pub fn response(&self, hz: f64, rate_hz: f64) -> (f64, f64) {
        let w = math::TAU * hz / rate_hz;
        let (c1, s1) = (math::cos(w), -math::sin(w));
        let (c2, s2) = (math::cos(2.0 * w), -math::sin(2.0 * w));
        let top = (self.b[0] + self.b[1] * c1 + self.b[2] * c2, self.b[1] * s1 + self.b[2] * s2);
        let low = (1.0 + self.a[0] * c1 + self.a[1] * c2, self.a[0] * s1 + self.a[1] * s2);
        divide(top, low)
    }

    /// Whether the section changes nothing.
    pub fn passes_all(&self) -> bool {
        *self == Section::PASS
    }
}

fn divide(a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
    let n = 1.0 / (b.0 * b.0 + b.1 * b.1);
    ((a.0 * b.0 + a.1 * b.1) * n, (a.1 * b.0 - a.0 * b.1) * n)
}

/// State of one running section (transposed direct form II).
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Memory(f64, f64);

impl Memory {
    /// State after an endless run of `level` through `section`: starts without a transient.
    pub fn settled(section: &Section, level: f64) -> Memory {
        let [b0, b1, b2] = section.b;
        let [a1, a2] = section.a;
        let den = 1.0 + a1 + a2;
        let out = if den.abs() > 1e-300 { level * (b0 + b1 + b2) / den } else { 0.0 };
        let s2 = b2 * level - a2 * out;
        Memory(b1 * level - a1 * out + s2, s2)
    }

    /// The state of a signal `by` times as tall.
    pub fn scaled(self, by: f64) -> Memory {
        Memory(by * self.0, by * self.1)
    }

    /// One sample.
    #[inline]
    pub fn step(&mut self, section: &Section, x: f64) -> f64 {
        let y = section.b[0] * x + self.0;
        self.0 = section.b[1] * x - section.a[0] * y + self.1;
        self.1 = section.b[2] * x - section.a[1] * y;
        y
    }

    /// A block in place.
    pub fn run(&mut self, section: &Section, block: &mut [f64]) {
        if section.passes_all() {
            return;
        }
        for x in block {
            *x = self.step(section, *x);
        }
    }
}

/// Number of samples in a moving average of `ms` milliseconds, at least one.
pub fn average_length(ms: f64, rate_hz: f64) -> usize {
    // Halves are rounded up; the product is small and positive.
    ((ms * rate_hz / 1000.0 + 0.5).floor() as usize).max(1)
}

/// Response of a moving average of `n` samples: (real, imaginary).
pub fn average_response(n: usize, hz: f64, rate_hz: f64) -> (f64, f64) {
    let w = math::TAU * hz / rate_hz;
    let (mut re, mut im) = (0.0, 0.0);
    for k in 0..n {
        re += math::cos(w * k as f64);
        im -= math::sin(w * k as f64);
    }
    (re / n as f64, im / n as f64)
}

/// A running moving average over the last samples; integers, so that adding and taking away leaves no residue.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Average {
    last: Vec<i32>,
    at: usize,
    sum: i64,
}

impl Average {
    /// An average over `n` samples (1 is no average), filled with `level`.
    pub fn new(n: usize, level: i32) -> Self {
        Self { last: vec![level; n.max(1)], at: 0, sum: i64::from(level) * n.max(1) as i64 }
    }

    /// Number of samples averaged.
    pub fn length(&self) -> usize {
        self.last.len().max(1)
    }

    /// One sample.
    pub fn step(&mut self, x: i32) -> f64 {
        if self.last.len() <= 1 {
            return f64::from(x);
        }
        self.sum += i64::from(x) - i64::from(self.last[self.at]);
        self.last[self.at] = x;
        self.at = (self.at + 1) % self.last.len();
        self.sum as f64 / self.last.len() as f64
    }
}
