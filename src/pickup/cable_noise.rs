//! The cable itself: it crackles while it is moved (charges rubbed apart between braid and insulation), and a pull at
//! it swings through the sensor. Sizes are design defaults in units of the best pulse.

use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// How long the crackling outlasts the movement, s.
const RUSTLE_S: f64 = 0.5;
/// Pulls a second at a taut cable.
const TUGS: f64 = 0.4;
/// Swing of a pulled cable: frequency, Hz, and damping ratio.
const SWING_HZ: f64 = 12.0;
const DAMPING: f64 = 0.1;

/// The cable's own noise as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CableNoise {
    rate_hz: f64,
    stream: Stream,
    taut: bool,
    next_tug: f64,
    rustle_left: f64,
    crackle: f64,
    /// Place and speed of the swing.
    swing: (f64, f64),
}

impl CableNoise {
    /// A cable at rest.
    pub fn new(rate_hz: f64, seed: u64) -> Self {
        Self {
            rate_hz,
            stream: Stream::new(seed, "lead"),
            taut: false,
            next_tug: f64::MAX,
            rustle_left: 0.0,
            crackle: 0.0,
            swing: (0.0, 0.0),
        }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// The cable is moved on the table.
    pub fn rustle(&mut self) {
        self.rustle_left = RUSTLE_S;
    }

    /// The cable is taut, or has slack again. A taut one passes the smallest movement of the hand on to the sensor.
    pub fn set_taut(&mut self, taut: bool) {
        if taut != self.taut {
            self.taut = taut;
            self.next_tug = if taut { self.stream.waiting_s(TUGS) } else { f64::MAX };
        }
    }

    /// A pull: a swing of 5 to 30 pulses.
    fn tug(&mut self) {
        self.swing.0 += self.stream.range(5.0, 30.0) * if self.stream.uniform() < 0.5 { -1.0 } else { 1.0 };
        self.rustle_left = RUSTLE_S;
    }

    /// Adds to the sensor's signal in place.
    pub fn apply(&mut self, signal: &mut [f64]) {
        let dt = 1.0 / self.rate_hz;
        let w = math::TAU * SWING_HZ;
        for x in signal {
            // Asked at every sample: were it asked once a block, blocks of another size would give other samples.
            if self.rustle_left <= 0.0 && self.crackle == 0.0 && self.swing == (0.0, 0.0) && !self.taut {
                break;
            }
            self.next_tug -= dt;
            if self.next_tug <= 0.0 {
                self.next_tug = self.stream.waiting_s(TUGS);
                self.tug();
            }
            if self.rustle_left > 0.0 {
                self.rustle_left -= dt;
                // Sharp charges that leak away within a few milliseconds, forty a second.
                if self.stream.uniform() < 40.0 * dt {
                    self.crackle += self.stream.range(-0.8, 0.8);
                }
            }
            self.crackle -= self.crackle * dt / 0.006;
            let force = -w * w * self.swing.0 - 2.0 * DAMPING * w * self.swing.1;
            self.swing.1 += force * dt;
            self.swing.0 += self.swing.1 * dt;
            *x += self.crackle + self.swing.0;
            // Too small to be seen; and numbers smaller still are slow to reckon with.
            if self.rustle_left <= 0.0 && self.crackle.abs() < 1e-9 {
                self.crackle = 0.0;
            }
            if self.swing.0.abs() < 1e-6 && self.swing.1.abs() < 1e-4 {
                self.swing = (0.0, 0.0);
            }
        }
    }
}
