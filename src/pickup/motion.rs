//! Movement: what a restless hand adds to the sensor's signal. Strengths are design defaults in units of the best
//! pulse; published models of motion artefact are a baseline shift together with a change of contact gain
//! (Sensors 2025, 25:5710), and both are here.

use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// A knock: half a sine wave.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
struct Knock {
    height: f64,
    length_s: f64,
    age_s: f64,
}

impl Knock {
    fn value(&self) -> f64 {
        if self.age_s < self.length_s {
            self.height * math::sin(math::PI * self.age_s / self.length_s)
        } else {
            0.0
        }
    }
}

/// Movement as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Motion {
    rate_hz: f64,
    stream: Stream,
    unrest: f64,
    next_twitch: f64,
    next_shift: f64,
    burst_left: f64,
    pause_left: f64,
    envelope: f64,
    burst_height: f64,
    // Fidgeting: white noise between about 0.3 and 6 Hz.
    low1: f64,
    low2: f64,
    base: f64,
    shift: f64,
    wobble: f64,
    twitch: Knock,
    tap: Knock,
}

impl Motion {
    /// A stage for a subject whose restlessness is `unrest`, 0 (a statue) to 1 (cannot sit still).
    pub fn new(rate_hz: f64, unrest: f64, seed: u64) -> Self {
        let mut made = Self {
            rate_hz,
            stream: Stream::new(seed, "motion"),
            unrest: 0.0,
            next_twitch: f64::MAX,
            next_shift: f64::MAX,
            burst_left: 0.0,
            pause_left: 0.0,
            envelope: 0.0,
            burst_height: 0.0,
            low1: 0.0,
            low2: 0.0,
            base: 0.0,
            shift: 0.0,
            wobble: 0.0,
            twitch: Knock::default(),
            tap: Knock::default(),
        };
        made.set_unrest(unrest);
        made
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// Takes over another restlessness, 0 to 1.
    pub fn set_unrest(&mut self, unrest: f64) {
        if unrest != self.unrest {
            self.unrest = unrest;
            self.next_twitch = self.stream.waiting_s(0.3 * unrest);
            self.next_shift = self.stream.waiting_s(0.08 * unrest);
            self.pause_left = self.stream.range(0.5, 2.0);
        }
    }

    /// Restlessness now.
    pub fn unrest(&self) -> f64 {
        self.unrest
    }

    /// Someone taps the sensor.
    pub fn tap(&mut self) {
        self.tap = Knock { height: self.stream.range(6.0, 9.0), length_s: 0.04, age_s: 0.0 };
    }

    /// Adds movement to the sensor's signal in place. `feel` is the contact's motion gain (see
    /// [`super::contact::motion_gain`]), `on` whether the sensor is on the finger.
    pub fn apply(&mut self, signal: &mut [f64], feel: f64, on: bool) {
        let dt = 1.0 / self.rate_hz;
        let strength = if on { self.unrest * feel } else { 0.0 };
        let low = math::TAU * 6.0 * dt / (1.0 + math::TAU * 6.0 * dt);
        let high = math::TAU * 0.3 * dt;
        // Keeps the fidget's size the same at every number of samples a second.
        let drive = (self.rate_hz / 1000.0).sqrt() * 6.0;
        for x in signal {
            // Asked at every sample, so that blocks of any size draw the same numbers.
            if strength != 0.0 || self.shift.abs() >= 1e-9 {
                let white = self.stream.noise() * drive;
                self.low1 += (white - self.low1) * low;
                self.low2 += (self.low1 - self.low2) * low;
                self.base += (self.low2 - self.base) * high;
                self.wobble += (self.low2 - self.wobble) * high * 2.0;
                self.step_burst(dt);
                self.step_events(dt);
                let d = self.burst_height * self.envelope * (self.low2 - self.base) + self.shift;
                let g = 0.2 * self.envelope * self.unrest * self.wobble.clamp(-2.0, 2.0);
                *x = (1.0 + g) * *x + strength * (d + self.twitch.value());
                self.twitch.age_s += dt;
                // The sensor's own high-pass turns a step into a spike with a tail; the finger gives way as well.
                self.shift *= 1.0 - dt / 3.0;
            }
            if self.tap.age_s < self.tap.length_s {
                *x += self.tap.value();
                self.tap.age_s += dt;
            }
        }
    }

    fn step_burst(&mut self, dt: f64) {
        let goal = if self.burst_left > 0.0 {
            self.burst_left -= dt;
            if self.burst_left <= 0.0 {
                self.pause_left = self.stream.range(0.5, 4.0);
            }
            1.0
        } else {
            self.pause_left -= dt;
            if self.pause_left <= 0.0 {
                self.burst_left = self.stream.range(1.0, 5.0);
                self.burst_height = self.stream.range(0.7, 2.0);
            }
            0.0
        };
        self.envelope += (goal - self.envelope) * dt / 0.2;
    }

    fn step_events(&mut self, dt: f64) {
        self.next_twitch -= dt;
        if self.next_twitch <= 0.0 {
            let height = self.stream.range(3.0, 10.0) * if self.stream.uniform() < 0.5 { -1.0 } else { 1.0 };
            self.twitch = Knock { height, length_s: self.stream.range(0.03, 0.15), age_s: 0.0 };
            self.next_twitch = self.stream.waiting_s(0.3 * self.unrest);
        }
        self.next_shift -= dt;
        if self.next_shift <= 0.0 {
            self.shift += self.stream.range(2.0, 6.0) * if self.stream.uniform() < 0.5 { -1.0 } else { 1.0 };
            self.next_shift = self.stream.waiting_s(0.08 * self.unrest);
        }
    }
}
