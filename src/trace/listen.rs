//! The live signal for the ear: a click at each crest, higher for a taller one, and of the signal itself what lies in
//! the band of hum. What is clicked at is a crest of the trace, as it comes: a jerk of the hand clicks too.

use super::live::Live;
use crate::recorder::filters::{Memory, Section};

/// Corner under which the signal is not passed on as sound, Hz: below it lie pulse, breath and motion.
const HUM_FROM_HZ: f64 = 30.0;
/// Corner of the low-pass in front of the crests, Hz: the pulse passes, hum does not.
const PULSE_TO_HZ: f64 = 8.0;
/// Shortest time between two clicks, s: 240 a minute.
const REST_S: f64 = 0.25;
/// Smallest rise that clicks, as a share of the full-scale range.
const LEAST: f64 = 0.02;
/// Longest stretch that one call gives, s; what is older is not made up for.
const MOST_S: f64 = 0.5;
/// What is heard before a first click, s: the filters come to rest.
const BEFORE_S: f64 = 0.5;
/// How fast the usual rise is forgotten, a share a crest.
const FORGET: f64 = 0.2;

/// A crest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Click {
    /// How long ago, s.
    pub ago_s: f64,
    /// Height of the rise before it, as a share of the full-scale range (its two ends apart).
    pub height: f64,
}

/// What there is to hear since the last call.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Heard {
    /// Samples a second of [`Heard::hum`], Hz.
    pub rate_hz: f64,
    /// The signal above 30 Hz, as a share of half the full-scale range, oldest first.
    pub hum: Vec<f32>,
    /// Crests, oldest first.
    pub clicks: Vec<Click>,
}

/// Listens to the live signal.
#[derive(Clone, Debug)]
pub struct Listener {
    rate_hz: f64,
    heard: u64,
    above: (Section, Memory),
    below: (Section, Memory),
    began: Option<u64>,
    low: f64,
    high: f64,
    high_at: u64,
    usual: f64,
    rising: bool,
    clicked: Option<u64>,
}

impl Listener {
    /// Listens from now on.
    pub fn new(live: &Live) -> Self {
        let rate_hz = live.rate_hz();
        Self {
            rate_hz,
            heard: live.total(),
            above: (Section::high_pass(2, HUM_FROM_HZ, rate_hz), Memory::default()),
            below: (Section::low_pass(2, PULSE_TO_HZ, rate_hz), Memory::default()),
            began: None,
            low: f64::INFINITY,
            high: f64::NEG_INFINITY,
            high_at: 0,
            usual: 0.0,
            rising: false,
            clicked: None,
        }
    }

    /// What has come since the last call; `range_v` is half the full-scale range, V. Another sampling rate begins anew.
    pub fn hear(&mut self, live: &Live, range_v: f64) -> Heard {
        if live.rate_hz() != self.rate_hz || live.total() < self.heard {
            *self = Self::new(live);
        }
        let most = (MOST_S * self.rate_hz) as u64;
        let from = self.heard.max(live.total().saturating_sub(most));
        let mut heard = Heard { rate_hz: self.rate_hz, ..Heard::default() };
        for k in from..live.total() {
            let share = f64::from(live.sample(k).unwrap_or(0.0)) / range_v;
            let began = *self.began.get_or_insert(k);
            if began == k {
                // A line that stands off the middle is no crest and no hum.
                self.above.1 = Memory::settled(&self.above.0, share);
                self.below.1 = Memory::settled(&self.below.0, share);
            }
            heard.hum.push(self.above.1.step(&self.above.0, share) as f32);
            let smooth = self.below.1.step(&self.below.0, share) / 2.0;
            if ((k - began) as f64) < BEFORE_S * self.rate_hz {
                continue;
            }
            if let Some(height) = self.crest(k, smooth) {
                let ago_s = (live.total() - self.high_at) as f64 / self.rate_hz;
                heard.clicks.push(Click { ago_s, height });
            }
        }
        self.heard = live.total();
        heard
    }

    /// Follows the smoothed line; the height of the rise when a crest has been passed.
    fn crest(&mut self, k: u64, value: f64) -> Option<f64> {
        if value < self.low {
            (self.low, self.high, self.rising) = (value, value, false);
        }
        if value > self.high {
            (self.high, self.high_at) = (value, k);
        }
        let rise = self.high - self.low;
        // Half the usual rise: the second bump of the wave does not click, a smaller beat does.
        self.rising |= rise > LEAST.max(0.5 * self.usual);
        let passed = self.rising && self.high - value > 0.15 * rise;
        if !passed {
            return None;
        }
        (self.low, self.high, self.rising) = (value, value, false);
        let rested = self.clicked.is_none_or(|at| (self.high_at - at) as f64 >= REST_S * self.rate_hz);
        self.usual += if self.usual > 0.0 { FORGET * (rise - self.usual) } else { rise };
        if !rested {
            return None;
        }
        self.clicked = Some(self.high_at);
        Some(rise)
    }
}
