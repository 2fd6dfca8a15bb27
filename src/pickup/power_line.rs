//! The hum itself: a fundamental that wanders a little about its nominal frequency, with odd harmonics and a trace of
//! the second, made by rotating one phasor and taking its powers. No sine is evaluated per sample.

use super::field::Hum;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Spread of the frequency, Hz, and time over which it wanders, s (design defaults; EN 50160 allows 1 % in general).
const WANDER_HZ: f64 = 0.02;
const WANDER_S: f64 = 20.0;
/// The frequency and the slow swing of the amplitude are renewed once in so many samples.
const RENEW: u32 = 64;

/// Amplitudes of harmonics 2, 3 and 5 against the fundamental (design defaults; EN 50160 allows 5 and 6 % for the
/// third and fifth in the supply, switching chargers make far more).
const PLAIN: [f64; 3] = [0.01, 0.05, 0.05];
const SWITCHED: [f64; 3] = [0.04, 0.25, 0.15];

/// Makes the hum sample by sample.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Oscillator {
    nominal_hz: f64,
    step_s: f64,
    stream: Stream,
    wander_hz: f64,
    swing: f64,
    phasor: (f64, f64),
    turn: (f64, f64),
    count: u32,
}

impl Oscillator {
    /// An oscillator at `nominal_hz` for `rate_hz` samples a second.
    pub fn new(nominal_hz: f64, rate_hz: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "mains");
        let angle = math::TAU * stream.uniform();
        let mut made = Self {
            nominal_hz,
            step_s: 1.0 / rate_hz,
            wander_hz: WANDER_HZ * stream.normal(),
            swing: 0.0,
            stream,
            phasor: (math::cos(angle), math::sin(angle)),
            turn: (1.0, 0.0),
            count: 0,
        };
        made.aim();
        made
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.step_s = 1.0 / rate_hz;
        self.aim();
    }

    fn aim(&mut self) {
        let angle = math::TAU * (self.nominal_hz + self.wander_hz) * self.step_s;
        self.turn = (math::cos(angle), math::sin(angle));
    }

    fn renew(&mut self) {
        let dt = f64::from(RENEW) * self.step_s;
        // Ornstein-Uhlenbeck steps: exact decay over dt would need an exponential; dt is far below both time
        // constants, so the first-order step serves.
        self.wander_hz +=
            -self.wander_hz * dt / WANDER_S + WANDER_HZ * (2.0 * dt / WANDER_S).sqrt() * self.stream.noise();
        self.swing += -self.swing * dt / 1.0 + (2.0 * dt / 1.0).sqrt() * self.stream.noise();
        let (c, s) = self.phasor;
        let norm = 1.0 / math::hypot(c, s);
        self.phasor = (c * norm, s * norm);
        self.aim();
    }

    /// Adds the hum to `signal`. `hum` gives the strength; `unrest` (0 to 1) how much a moving subject makes it
    /// swell and fade.
    pub fn add(&mut self, signal: &mut [f64], hum: &Hum, unrest: f64) {
        let mix = Mix::new(hum, unrest);
        let mut rest = signal;
        while !rest.is_empty() {
            let (run, more) = rest.split_at_mut(self.run(rest.len()));
            for out in run.iter_mut() {
                *out += self.next(&mix);
            }
            self.passed(run.len());
            rest = more;
        }
    }

    /// How many of the next `most` samples can be asked for before [`Oscillator::passed`] must be told of them.
    pub fn run(&self, most: usize) -> usize {
        most.min((RENEW - self.count) as usize)
    }

    /// So many samples were asked for.
    pub fn passed(&mut self, samples: usize) {
        self.count += samples as u32;
        if self.count == RENEW {
            self.count = 0;
            self.renew();
        }
    }

    /// The next sample of the hum, V.
    #[inline(always)]
    pub fn next(&mut self, mix: &Mix) -> f64 {
        let (c, s) = self.phasor;
        let (tc, ts) = self.turn;
        self.phasor = (c * tc - s * ts, c * ts + s * tc);
        let (c2, s2) = (c * c - s * s, 2.0 * c * s);
        let (c3, s3) = (c2 * c - s2 * s, c2 * s + s2 * c);
        let s5 = c3 * s2 + s3 * c2;
        let swell = (1.0 + mix.depth * self.swing.clamp(-2.5, 2.5)).max(0.0);
        let [a1, a2, a3, a5] = mix.parts;
        swell * (a1 * s + a2 * c2 + a3 * s3 + a5 * s5) + mix.loop_v * c
    }
}

/// What of the oscillator's turns is heard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mix {
    /// How much the hum swells and fades.
    depth: f64,
    /// Of the fundamental and of harmonics 2, 3 and 5, V.
    parts: [f64; 4],
    /// Of a loop of earths, V.
    loop_v: f64,
}

impl Mix {
    /// `hum` gives the strength, `unrest` (0 to 1) how much a moving subject makes it swell and fade.
    pub fn new(hum: &Hum, unrest: f64) -> Self {
        let plain = hum.wiring_v + hum.body_v;
        let part = |h: usize| PLAIN[h] * plain + SWITCHED[h] * hum.charger_v;
        Self {
            depth: 0.05 + 0.3 * unrest,
            parts: [plain + hum.charger_v, part(0), part(1), part(2)],
            loop_v: hum.loop_v,
        }
    }
}
