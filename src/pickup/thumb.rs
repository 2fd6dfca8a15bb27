//! A helper who holds the sensor on the finger with the thumb. The thumb has a pulse of its own, from another heart, and presses
//! it on the sensor's back: two rhythms in one trace. A sensor that is pressed feels it; light that shines away from the thumb
//! does not come back from there.

use crate::bench::strap::Strap;
use crate::physiology::{Body, Subject, SubjectSpec};
use crate::rng;
use serde::{Deserialize, Serialize};

/// Work space, samples.
const RUN: usize = 256;
/// Share of the helper's pulse at the sensor: at the least severity that counts, and more at the greatest (design default).
const SHARE: (f64, f64) = (0.6, 0.4);
/// How much faster or slower the helper's heart beats at rest (design default).
const APART: f64 = 1.28;
/// Rate under which the helper's is the faster, beats/min.
const MIDDLE_BPM: f64 = 76.0;
/// The strap that would press as the thumb does.
const AS_TIGHT: f64 = 0.6;

/// The helper's thumb as a stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Thumb {
    body: Box<Body>,
    share: f64,
    holds: bool,
}

impl Thumb {
    /// A thumb on the sensor of somebody whose heart beats at `rest_bpm`; `severity` from 0 to 1 says how hard it presses.
    pub fn new(rate_hz: f64, severity: f64, rest_bpm: f64, seed: u64) -> Self {
        let own = if rest_bpm < MIDDLE_BPM { rest_bpm * APART } else { rest_bpm / APART };
        // Another person: nothing of the subject's is drawn from this seed.
        let seed = rng::mix(seed ^ rng::fnv1a(b"helper"));
        let spec = SubjectSpec {
            rest_rate_bpm: Some(own),
            restlessness: Some(0.0),
            premature_per_min: Some(0.0),
            finger_temp_c: Some(33.0),
            ..SubjectSpec::default()
        };
        let body = Box::new(Body::new(Subject::draw(&spec, seed), seed, rate_hz));
        Self { body, share: SHARE.0 + SHARE.1 * severity, holds: true }
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.body.set_rate(rate_hz);
    }

    /// The helper lets go.
    pub fn let_go(&mut self) {
        self.holds = false;
    }

    /// Whether the thumb is on the sensor.
    pub fn holds(&self) -> bool {
        self.holds
    }

    /// The strap that would press the sensor as strap and thumb do together.
    pub fn held(&self, strap: &Strap) -> Strap {
        let tightness = if self.holds { strap.tightness.max(AS_TIGHT) } else { strap.tightness };
        Strap { tightness, ..strap.clone() }
    }

    /// Adds the helper's pulse to the sensor's signal in place.
    pub fn add(&mut self, signal: &mut [f64]) {
        let (mut pulse, mut breath) = ([0.0; RUN], [0.0; RUN]);
        for run in signal.chunks_mut(RUN) {
            let n = run.len();
            self.body.fill(&mut pulse[..n], &mut breath[..n]);
            if self.holds {
                run.iter_mut().zip(&pulse).for_each(|(x, p)| *x += self.share * p);
            }
        }
    }
}
