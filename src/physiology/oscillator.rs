//! Narrow-band Gaussian noise: a rotating, leaking phasor kicked by noise at every tick.
//!
//! `z <- r e^(i w dt) z + sqrt(1 - r^2) n`, whose spectrum is a Lorentzian around the centre frequency with half
//! width `-ln r / (2 pi dt)`. Two multiplications and two noise draws a tick; the variance of the real part is one
//! from the first tick, because the phasor starts in its stationary distribution. With centre 0 it is the
//! Ornstein-Uhlenbeck process.

use super::TICK_S;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// A unit-variance narrow-band noise, advanced once a tick.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Oscillator {
    re: f64,
    im: f64,
    cos: f64,
    sin: f64,
    kick: f64,
}

impl Oscillator {
    /// Centre and half width at half maximum of the spectrum, both in hertz; `half_width_hz` above 0.
    pub fn new(centre_hz: f64, half_width_hz: f64, stream: &mut Stream) -> Self {
        let r = math::exp(-math::TAU * half_width_hz * TICK_S);
        let angle = math::TAU * centre_hz * TICK_S;
        Self {
            re: stream.normal(),
            im: stream.normal(),
            cos: r * math::cos(angle),
            sin: r * math::sin(angle),
            kick: (1.0 - r * r).sqrt(),
        }
    }

    /// Goes on by one tick and gives the new value: zero mean, unit variance.
    pub fn tick(&mut self, stream: &mut Stream) -> f64 {
        let re = self.cos * self.re - self.sin * self.im + self.kick * stream.noise();
        let im = self.sin * self.re + self.cos * self.im + self.kick * stream.noise();
        self.re = re;
        self.im = im;
        re
    }
}
