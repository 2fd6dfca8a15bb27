//! A sensor's cable that touches the computer: its fan shakes the cable, and what is rubbed and pressed apart in it gives a
//! small steady wave at the turns of the fan. Frequency, size and reach are design defaults; the amplifier of a light sensor
//! has so low an impedance that none of it is left.

use crate::bench::Bench;
use crate::bench::table::{Part, Point};
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Turns a second of the fan: 1,560 to 2,040 a minute.
const TURNS_HZ: (f64, f64) = (26.0, 34.0);
/// Height of the wave for a cable that touches, peak to peak in units of the best pulse: at the least severity, and more at the
/// greatest.
const SIZE: (f64, f64) = (0.3, 0.4);
/// Gap at which a third is left, cm.
const REACH_CM: f64 = 1.5;
/// How much and over what time the size wanders, s.
const SWELL: f64 = 0.12;
const SWELL_S: f64 = 1.0;
/// Samples after which the turning is drawn to its length and the size renewed.
const RENEW: u32 = 64;

/// How far the fan's shaking gets into the cable as it lies, 0 to 1.
pub fn reach(bench: &Bench) -> f64 {
    let near = |at: Point| bench.table.gap_to(Part::Computer, at);
    let path = bench.cable_path();
    let mut least = f64::MAX;
    for leg in path.windows(2) {
        let pieces = (leg[0].distance(leg[1]).ceil() as u32).max(1);
        for k in 0..=pieces {
            let u = f64::from(k) / f64::from(pieces);
            least = least.min(near(Point {
                x: leg[0].x + u * (leg[1].x - leg[0].x),
                y: leg[0].y + u * (leg[1].y - leg[0].y),
            }));
        }
    }
    math::exp(-least / REACH_CM)
}

/// The shaking as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Fan {
    stream: Stream,
    hz: f64,
    step_s: f64,
    phasor: (f64, f64),
    turn: (f64, f64),
    swell: f64,
    count: u32,
    size: f64,
}

impl Fan {
    /// A fan that shakes a cable at its side with a severity from 0 to 1; at 0 it stands still.
    pub fn new(rate_hz: f64, severity: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "fan");
        let hz = stream.range(TURNS_HZ.0, TURNS_HZ.1);
        let size = if severity > 0.0 { SIZE.0 + SIZE.1 * severity } else { 0.0 };
        let mut made = Self {
            hz,
            stream,
            step_s: 1.0,
            phasor: (1.0, 0.0),
            turn: (1.0, 0.0),
            swell: 0.0,
            count: 0,
            size,
        };
        made.set_rate(rate_hz);
        made
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.step_s = 1.0 / rate_hz;
        let angle = math::TAU * self.hz * self.step_s;
        self.turn = (math::cos(angle), math::sin(angle));
    }

    /// Height of the wave for a cable that touches, peak to peak in units of the best pulse.
    pub fn size(&self) -> f64 {
        self.size
    }

    /// Adds the wave to the sensor's signal in place; `reach` from 0 to 1.
    pub fn add(&mut self, signal: &mut [f64], reach: f64) {
        if self.size == 0.0 {
            return;
        }
        for x in signal {
            let ((c, s), (tc, ts)) = (self.phasor, self.turn);
            self.phasor = (c * tc - s * ts, c * ts + s * tc);
            *x += 0.5 * self.size * reach * (1.0 + self.swell.clamp(-0.5, 0.5)) * s;
            self.count += 1;
            if self.count == RENEW {
                self.count = 0;
                let dt = f64::from(RENEW) * self.step_s;
                self.swell += SWELL * (2.0 * dt / SWELL_S).sqrt() * self.stream.noise()
                    - self.swell * (dt / SWELL_S).min(1.0);
                let norm = 1.0 / math::hypot(self.phasor.0, self.phasor.1);
                self.phasor = (self.phasor.0 * norm, self.phasor.1 * norm);
            }
        }
    }
}
