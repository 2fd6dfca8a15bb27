//! A phone beside the cable: time slots of a transmitter, rectified in the input, as a comb of spikes.
//!
//! The older digital standard sends in one of eight slots of 577 us every 4.615 ms (3GPP TS 45.002), which is
//! rectified to 217 Hz and its harmonics; while the phone talks to the network it does so in bursts about every
//! two seconds (pattern of the bursts and strength: design defaults).

use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Length of a frame and of a slot, s.
const FRAME_S: f64 = 0.12 / 26.0;
const SLOT_S: f64 = 0.12 / 26.0 / 8.0;

/// The phone as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Phone {
    rate_hz: f64,
    stream: Stream,
    burst_left: f64,
    pause_left: f64,
    phase_s: f64,
}

impl Phone {
    /// A silent phone that soon begins to talk.
    pub fn new(rate_hz: f64, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "phone");
        Self { rate_hz, burst_left: 0.0, pause_left: stream.range(0.2, 1.0), phase_s: 0.0, stream }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// Adds spikes of `volts` at the input. Silent, but running on, at zero.
    pub fn add(&mut self, signal: &mut [f64], volts: f64) {
        let dt = 1.0 / self.rate_hz;
        for x in signal {
            if self.burst_left <= 0.0 {
                self.pause_left -= dt;
                if self.pause_left <= 0.0 {
                    self.burst_left = self.stream.range(0.3, 0.9);
                    self.pause_left = self.stream.range(1.2, 2.4);
                }
                continue;
            }
            self.burst_left -= dt;
            // Share of this step that lies in the slot: the amplifier sees the mean over the step.
            let from = self.phase_s;
            self.phase_s += dt;
            let mut inside = (SLOT_S.min(self.phase_s) - from.min(SLOT_S)).max(0.0);
            if self.phase_s >= FRAME_S {
                self.phase_s -= FRAME_S;
                inside += self.phase_s.min(SLOT_S);
            }
            *x += volts * inside / dt;
        }
    }
}
