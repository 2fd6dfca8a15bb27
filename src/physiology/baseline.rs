//! The slow wander under the pulse: breathing, vasomotion near 0.1 Hz and below, and the bursts of talking.

use super::TICK_S;
use super::effects::Demand;
use super::oscillator::Oscillator;
use super::subject::Subject;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Baseline at the finger, in units of the resting pulse.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Baseline {
    breath: f64,
    vasomotor: f64,
    warmth: f64,
    /// How far each breath moves the hand; nothing of it is the vessels'.
    sway: f64,
    followed: f64,
    mayer: Oscillator,
    drift: Oscillator,
    speech: Oscillator,
    group: Oscillator,
    /// Speech, twice smoothed.
    said: [f64; 2],
    strain: f64,
    stream: Stream,
}

impl Baseline {
    /// The wander of `subject` under `seed`. What the vessels do is as small in a cold finger as the pulse is.
    pub fn new(subject: &Subject, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "physiology.baseline");
        Self {
            breath: subject.breath_on_baseline,
            vasomotor: subject.vasomotor_baseline,
            warmth: subject.warmth(),
            sway: subject.breath_on_hand,
            followed: 0.0,
            mayer: Oscillator::new(0.09, 0.015, &mut stream),
            drift: Oscillator::new(0.0, 0.008, &mut stream),
            speech: Oscillator::new(0.35, 0.1, &mut stream),
            group: Oscillator::new(0.25, 0.1, &mut stream),
            said: [0.0; 2],
            strain: 0.0,
            stream,
        }
    }

    /// Goes on by one tick; gives the baseline at the tick's end.
    pub fn tick(&mut self, chest: f64, demand: &Demand) -> f64 {
        let s = &mut self.stream;
        let (mayer, drift) = (self.mayer.tick(s), self.drift.tick(s));
        let (speech, group) = (self.speech.tick(s), self.group.tick(s));
        // The finger's volume falls when the chest draws blood in, about half a second late.
        self.followed += (-chest - self.followed) * (TICK_S / 0.5);
        self.strain += (demand.strain - self.strain) * (TICK_S / 1.5);
        // Speech comes in groups of some seconds, with silence between; chest and arm follow it without jerks. A wave of
        // unit variance that goes no further than 1.5 is a little more than 2 from top to bottom once it is smoothed.
        let bursts = demand.bursts / 3.0 * (0.5 + 1.5 * group).clamp(0.0, 1.0) * speech.clamp(-1.5, 1.5);
        self.said[0] += (bursts - self.said[0]) * (TICK_S / 0.12);
        self.said[1] += (self.said[0] - self.said[1]) * (TICK_S / 0.12);
        let vessels = self.breath * self.followed + self.vasomotor * (0.6 * mayer + 0.8 * drift);
        self.warmth * demand.height * vessels + self.said[1] + self.strain
    }

    /// How far the breath has moved the hand at the last tick, in units of the pulse.
    pub fn sway(&self) -> f64 {
        self.sway * self.followed
    }
}
