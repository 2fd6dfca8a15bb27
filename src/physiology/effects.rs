//! Which manoeuvres are acting now, and what they do together.

use super::breath::Pattern;
use super::manoeuvre::{Kind, Manoeuvre, Reaction, course, warmer_c};
use super::subject::Subject;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// One manoeuvre under way or wearing off.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Effect {
    manoeuvre: Manoeuvre,
    start_s: f64,
    end_s: f64,
    reaction: Reaction,
}

/// How far somebody who pants at the highest rate moves the hand, peak to peak in units of the pulse (design default).
const PANTING: f64 = 0.6;

/// All manoeuvres that still act.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Effects {
    acting: Vec<Effect>,
    stream: Stream,
}

/// What the body is asked for at an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Mean rate, beats/min.
    pub rate_bpm: f64,
    /// Factor on the height of the pulse.
    pub height: f64,
    /// How to breathe.
    pub breathing: Pattern,
    /// Size of the waves of speech in the baseline, peak to peak in units of the pulse.
    pub bursts: f64,
    /// Steady push on the baseline, in units of the pulse.
    pub strain: f64,
}

impl Effects {
    /// Nothing going on.
    pub fn new(seed: u64) -> Self {
        Self { acting: Vec::new(), stream: Stream::new(seed, "physiology.effects") }
    }

    /// Starts `m` at `now_s` and ends what it is incompatible with.
    pub fn start(&mut self, m: Manoeuvre, now_s: f64) {
        let kind = m.kind();
        for e in &mut self.acting {
            let ends = match kind {
                None => e.manoeuvre.kind() != Some(Kind::Posture),
                some => e.manoeuvre.kind() == some,
            };
            if ends {
                e.end_s = e.end_s.min(now_s);
            }
        }
        let reaction = Reaction { strength: self.stream.uniform(), form: self.stream.uniform() };
        self.acting.push(Effect { manoeuvre: m, start_s: now_s, end_s: now_s + m.lasts_s(), reaction });
    }

    /// How much warmer than at the start the finger is, degrees C.
    pub fn warmer_c(&self, subject: &Subject, now_s: f64) -> f64 {
        let warmed = self.acting.iter().filter(|e| e.manoeuvre == Manoeuvre::WarmHand);
        warmed
            .map(|e| {
                let (u, v) = ((now_s - e.start_s).max(0.0), (now_s - e.end_s).max(0.0));
                warmer_c(subject, u - v, v)
            })
            .fold(0.0, f64::max)
    }

    /// The joint demand at `now_s`. Rates add, but what others add fades as exercise nears the highest rate; heights
    /// multiply.
    pub fn demand(&mut self, subject: &Subject, now_s: f64) -> Demand {
        self.acting.retain(|e| now_s < e.end_s + e.manoeuvre.lingers_s());
        let mut exercise = 0.0;
        let mut other = 0.0;
        let mut d = Demand {
            rate_bpm: 0.0,
            height: 1.0,
            breathing: Pattern {
                per_min: subject.breaths_per_min,
                depth: 1.0,
                irregularity: subject.breath_irregularity,
            },
            bursts: 0.0,
            strain: 0.0,
        };
        for e in &self.acting {
            let u = (now_s - e.start_s).max(0.0);
            let v = (now_s - e.end_s).max(0.0);
            let c = course(&e.manoeuvre, subject, e.reaction, u, v);
            d.height *= c.height;
            match e.manoeuvre {
                Manoeuvre::Exercise { .. } => {
                    exercise += c.rate_bpm;
                    // Up to about 35 breaths/min and twice as deep, settling with the rate.
                    let x = c.rate_bpm / (subject.max_rate_bpm - subject.rest_rate_bpm);
                    d.breathing.per_min += x * (35.0 - subject.breaths_per_min).max(0.0);
                    d.breathing.depth += x;
                    d.bursts += PANTING * x;
                }
                _ => other += c.rate_bpm,
            }
            if now_s < e.end_s {
                act(&mut d, &e.manoeuvre, e.reaction, subject, u);
            }
        }
        let room = 1.0 - exercise / (subject.max_rate_bpm - subject.rest_rate_bpm);
        let sum = subject.rest_rate_bpm + exercise + other * room.clamp(0.0, 1.0);
        d.rate_bpm = sum.clamp(25.0, 230.0);
        // Up to twenty times: a cold finger that is warmed again.
        d.height = d.height.clamp(0.02, 20.0);
        d
    }
}

/// What a manoeuvre does to breathing and baseline while it lasts.
fn act(d: &mut Demand, m: &Manoeuvre, r: Reaction, subject: &Subject, u: f64) {
    match *m {
        Manoeuvre::PacedBreathing { per_min } => {
            // Slower breaths are deeper, though not so much that ventilation stays the same.
            let depth = (subject.breaths_per_min / per_min).sqrt().clamp(0.6, 1.5);
            d.breathing = Pattern { per_min, depth, irregularity: 0.02 };
        }
        Manoeuvre::DeepBreath => d.breathing = Pattern { per_min: 12.0, depth: 3.5, irregularity: 0.05 },
        Manoeuvre::BreathHold | Manoeuvre::FaceImmersion => d.breathing.depth = 0.0,
        Manoeuvre::Valsalva => {
            d.breathing.depth = 0.0;
            d.strain = 0.6;
        }
        Manoeuvre::Talk => {
            d.breathing = Pattern { per_min: 11.0, depth: 1.3, irregularity: 0.35 };
            d.bursts = (1.6 + 1.2 * r.strength) * (u / 1.0).min(1.0);
        }
        Manoeuvre::Laugh => {
            d.breathing = Pattern { per_min: 25.0, depth: 1.6, irregularity: 0.35 };
            d.bursts = (3.0 + 5.0 * r.strength) * (u / 0.5).min(1.0);
        }
        _ => {}
    }
}
