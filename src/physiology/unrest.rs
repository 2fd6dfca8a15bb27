//! Nobody holds a finger perfectly still.
//!
//! Small involuntary movements of the finger on its support, as they are in recordings of people who were told to sit
//! still: a wander with most of its power below 1 Hz, a little tremor, and now and then a slow shift of a second or
//! two that is larger than the pulse and leaves the contact slightly changed. Deliberate movement is not in here.
//! Sizes are design values, chosen so that beats correlate with their own median shape as in finger recordings.

use super::TICK_S;
use super::oscillator::Oscillator;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// One slow shift under way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Shift {
    /// How far through, 0 to 1.
    done: f64,
    per_tick: f64,
    size: f64,
    /// 0: out and back; 1: out, through and back.
    swing: f64,
}

/// What unrest does at a tick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stir {
    /// Added to the baseline, in units of the pulse.
    pub baseline: f64,
    /// Factor on the height of beats.
    pub contact: f64,
}

/// Involuntary movement: configuration and state.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Unrest {
    size: f64,
    shifts_per_s: f64,
    wait_s: f64,
    shift: Option<Shift>,
    contact: f64,
    contact_goal: f64,
    drifted: f64,
    eased: f64,
    wander: Oscillator,
    sway: Oscillator,
    stir: Oscillator,
    tremor: Oscillator,
    stream: Stream,
}

impl Unrest {
    /// `restlessness`: 0 perfectly still, 1 like the middle one of people told to sit still.
    pub fn new(restlessness: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "physiology.unrest");
        let shifts_per_s = restlessness / 35.0;
        Self {
            size: restlessness,
            shifts_per_s,
            // Finite, so that it can be saved as a number.
            wait_s: stream.waiting_s(shifts_per_s).min(1e12),
            shift: None,
            contact: 0.0,
            contact_goal: 0.0,
            drifted: 0.0,
            eased: 0.0,
            wander: Oscillator::new(0.0, 0.06, &mut stream),
            sway: Oscillator::new(0.4, 0.3, &mut stream),
            stir: Oscillator::new(2.0, 1.5, &mut stream),
            tremor: Oscillator::new(7.0, 2.0, &mut stream),
            stream,
        }
    }

    /// Goes on by one tick.
    pub fn tick(&mut self) -> Stir {
        let s = &mut self.stream;
        let drift = 0.12 * self.wander.tick(s) + 0.045 * self.sway.tick(s);
        let quick = 0.055 * self.stir.tick(s) + 0.006 * self.tremor.tick(s);
        // A hand has mass and rests on flesh: it drifts without jerks.
        self.drifted += (drift - self.drifted) * (TICK_S / 0.12);
        self.eased += (self.drifted + quick - self.eased) * (TICK_S / 0.04);
        let wander = self.eased;
        self.wait_s -= TICK_S;
        if self.wait_s <= 0.0 && self.shift.is_none() {
            self.wait_s = s.waiting_s(self.shifts_per_s).min(1e12);
            let sign = if s.uniform() < 0.5 { -1.0 } else { 1.0 };
            self.shift = Some(Shift {
                done: 0.0,
                per_tick: TICK_S / s.range(0.8, 2.5),
                size: sign * 1.0 * math::exp(s.normal()).min(5.0),
                swing: s.uniform(),
            });
            self.contact_goal = 0.6 * self.contact_goal + 0.15 * self.size.min(2.0) * s.normal();
        }
        let mut shifted = 0.0;
        if let Some(shift) = &mut self.shift {
            shift.done += shift.per_tick;
            let x = shift.done.min(1.0);
            let hump = math::sin(math::PI * x);
            let turn = 1.0 - shift.swing + shift.swing * 2.0 * math::cos(math::PI * x);
            shifted = shift.size * hump * hump * turn;
            if shift.done >= 1.0 {
                self.shift = None;
            }
        }
        self.contact += (self.contact_goal - self.contact) * (TICK_S / 1.0);
        Stir { baseline: self.size * wander + shifted, contact: math::exp(self.contact) }
    }
}
