//! Room light on an optical sensor: lamps on the power line brighten twice a period, at 100 or 120 Hz, and what gets under the
//! sensor adds to its signal. The strength is a design default.

use crate::bench::Bench;
use crate::bench::table::Part;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Flicker of the desk lamp right at the finger, in units of the pulse, and the distance at which it falls to a
/// quarter of that.
const LAMP_FLICKER: f64 = 1.2;
const LAMP_CM: f64 = 25.0;
/// Flicker of the ceiling's lamps.
const ROOM_FLICKER: f64 = 0.015;

/// Flicker that reaches an optical sensor, amplitude in units of the best pulse.
pub fn flicker(bench: &Bench) -> f64 {
    let gap = bench.table.gap_to(Part::Lamp, bench.sensor_point());
    let near = 1.0 + gap / LAMP_CM;
    let lamp = if bench.wiring.lamp_on { LAMP_FLICKER / (near * near) } else { 0.0 };
    let shade = if bench.strap.shaded { 0.02 } else { 1.0 };
    // A loose sensor lets light in at its edge.
    let edge = 0.3 + 0.7 * math::exp(-bench.strap.pressure_mmhg() / 30.0);
    (lamp + ROOM_FLICKER) * shade * edge
}

/// The flicker as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Flicker {
    phasor: (f64, f64),
    turn: (f64, f64),
    hz: f64,
    count: u32,
}

impl Flicker {
    /// Flicker at twice the power line frequency.
    pub fn new(power_line_hz: f64, rate_hz: f64, seed: u64) -> Self {
        let angle = math::TAU * Stream::new(seed, "light").uniform();
        let mut made = Self {
            phasor: (math::cos(angle), math::sin(angle)),
            turn: (1.0, 0.0),
            hz: 2.0 * power_line_hz,
            count: 0,
        };
        made.set_rate(rate_hz);
        made
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        let angle = math::TAU * self.hz / rate_hz;
        self.turn = (math::cos(angle), math::sin(angle));
    }

    /// Adds a wave of the given amplitude.
    pub fn add(&mut self, signal: &mut [f64], amplitude: f64) {
        for x in signal {
            let ((c, s), (tc, ts)) = (self.phasor, self.turn);
            self.phasor = (c * tc - s * ts, c * ts + s * tc);
            *x += amplitude * s;
            self.count += 1;
            if self.count == 256 {
                self.count = 0;
                let norm = 1.0 / math::hypot(self.phasor.0, self.phasor.1);
                self.phasor = (self.phasor.0 * norm, self.phasor.1 * norm);
            }
        }
    }
}
