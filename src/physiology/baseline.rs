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
    followed: f64,
    mayer: Oscillator,
    drift: Oscillator,
    speech: Oscillator,
    group: Oscillator,
    strain: f64,
    stream: Stream,
}

impl Baseline {
    /// The wander of `subject` under `seed`.
    pub fn new(subject: &Subject, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "physiology.baseline");
        Self {
            breath: subject.breath_on_baseline,
            vasomotor: subject.vasomotor_baseline,
            followed: 0.0,
            mayer: Oscillator::new(0.09, 0.015, &mut stream),
            drift: Oscillator::new(0.0, 0.008, &mut stream),
            speech: Oscillator::new(1.1, 0.6, &mut stream),
            group: Oscillator::new(0.4, 0.15, &mut stream),
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
        // Speech comes in groups of a second or two, with silence between.
        let bursts = demand.bursts * group.max(0.0) * speech;
        self.breath * self.followed + self.vasomotor * (0.6 * mayer + 0.8 * drift) + bursts + self.strain
    }
}
