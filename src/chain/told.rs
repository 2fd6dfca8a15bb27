//! What can be known of a running chain.

use super::{Chain, Config, Looks, Voice};
use crate::bench::Bench;
use crate::bench::wiring::End;
use crate::physiology::Beat;
use crate::recorder::Settings;

impl Chain {
    /// The bench as it now is.
    pub fn bench(&self) -> &Bench {
        &self.bench
    }

    /// The recorder's settings as they now are.
    pub fn settings(&self) -> &Settings {
        self.recorder.settings()
    }

    /// What the run started from.
    pub fn config(&self) -> &Config {
        &self.config
    }

    /// Whether the computer sees the recorder.
    pub fn seen(&self) -> bool {
        self.seen && !self.gaps.open_at(self.bench.wiring.socket_of(End::DataComputer))
    }

    /// Whether the sensor's plug is in the input that is shown.
    pub fn routed(&self) -> bool {
        self.bench.wiring.sensor_input() == Some(self.recorder.settings().input)
    }

    /// How the hand looks to somebody who looks at it.
    pub fn looks(&self) -> Looks {
        if self.motion.unrest() > 0.1 || self.tremor.taps() {
            Looks::Moving
        } else if self.contact.dusky() || self.sleeve.dusky() {
            Looks::Dusky
        } else {
            Looks::Calm
        }
    }

    /// What can be heard of the subject.
    pub fn voice(&self) -> Voice {
        if self.talks {
            Voice::Talking
        } else if !self.quiet {
            Voice::Sighing
        } else {
            Voice::Quiet
        }
    }

    /// Samples made since the start.
    pub fn samples(&self) -> u64 {
        self.samples
    }

    /// Time since the start, s.
    pub fn time_s(&self) -> f64 {
        self.body.time_s()
    }

    /// The true beats so far. For the assessment alone.
    pub fn truth(&self) -> &[Beat] {
        self.body.beats()
    }

    /// Height of the pulse at the best strap on a warm finger, V.
    pub fn best_pulse_v(&self) -> f64 {
        self.pulse_v
    }

    /// Breaths of the subject at rest, 1/min. For the assessment alone.
    pub fn breaths_per_min(&self) -> f64 {
        self.body.subject().breaths_per_min
    }

    /// Hum at the input before any filter, peak volts.
    pub fn hum_v(&self) -> f64 {
        if self.routed() { self.hum.total_v() } else { self.hum_open.total_v() }
    }
}
