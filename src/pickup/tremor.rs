//! Trembling and tapping: two rhythms of the hand that are not the heart's.
//!
//! Physiological tremor and shivering lie between 8 and 12 Hz; a tapping foot or finger comes at 1.5 to 3 Hz and is
//! easily taken for a pulse. Sizes are design defaults in units of the best pulse.

use crate::math;
use crate::recorder::filters::{Memory, Section};
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Middle of the tremor's band, Hz, and its quality (centre over width).
const TREMOR_HZ: f64 = 10.0;
const TREMOR_Q: f64 = 4.0;
/// Size of the tremor at full severity: peak to peak about .8 of the pulse.
const TREMOR_SIZE: f64 = 0.8;
/// Height of a tap at full severity.
const TAP_SIZE: f64 = 2.0;
/// Length of a tap's knock, s.
const TAP_S: f64 = 0.12;

/// Trembling and tapping as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tremor {
    rate_hz: f64,
    stream: Stream,
    tremor: f64,
    tapping: f64,
    band: Section,
    memory: Memory,
    period_s: f64,
    age_s: f64,
    height: f64,
}

impl Tremor {
    /// A stage with the given severities, 0 to 1.
    pub fn new(rate_hz: f64, tremor: f64, tapping: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "tremor");
        let period_s = 1.0 / stream.range(1.5, 3.0);
        Self {
            rate_hz,
            tremor,
            tapping,
            band: band(rate_hz),
            memory: Memory::default(),
            period_s,
            age_s: stream.range(0.0, period_s),
            height: 1.0,
            stream,
        }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
        self.band = band(rate_hz);
    }

    /// Takes over other severities, 0 to 1.
    pub fn set(&mut self, tremor: f64, tapping: f64) {
        (self.tremor, self.tapping) = (tremor, tapping);
    }

    /// Whether somebody taps.
    pub fn taps(&self) -> bool {
        self.tapping > 0.0
    }

    /// Adds to the sensor's signal in place; `on` tells whether the sensor is on the finger.
    pub fn apply(&mut self, signal: &mut [f64], on: bool) {
        if !on || (self.tremor == 0.0 && self.tapping == 0.0) {
            return;
        }
        let dt = 1.0 / self.rate_hz;
        // The band lets through a share of the white noise that falls with the rate: this keeps its size.
        let drive = 0.2 * TREMOR_SIZE * self.tremor * (self.rate_hz * TREMOR_Q / TREMOR_HZ).sqrt();
        for x in signal {
            if self.tremor > 0.0 {
                *x += self.memory.step(&self.band, drive * self.stream.noise());
            }
            if self.tapping > 0.0 {
                self.age_s += dt;
                if self.age_s >= self.period_s {
                    self.age_s -= self.period_s;
                    self.height = self.stream.range(0.85, 1.15);
                }
                if self.age_s < TAP_S {
                    let knock = math::sin(math::PI * self.age_s / TAP_S);
                    *x += TAP_SIZE * self.tapping * self.height * knock;
                }
            }
        }
    }
}

/// A band of 10 Hz over Q around the tremor's frequency: what a notch there would take away.
fn band(rate_hz: f64) -> Section {
    let notch = Section::notch(TREMOR_HZ, TREMOR_Q, rate_hz);
    Section { b: [1.0 - notch.b[0], notch.a[0] - notch.b[1], notch.a[1] - notch.b[2]], a: notch.a }
}
