//! What the subject can be asked to do, each with its published course.
//!
//! A course gives what the manoeuvre adds to the rate and by what it multiplies the height of the pulse, as a function
//! of the time since it began (`u`) and since it ended (`v`, 0 while it lasts). All courses start from nothing and are
//! continuous.
//!
//! **Ice water, Valsalva and face immersion exist here in simulation only.** In a room they can make people faint and
//! can slow the heart dangerously; whether they may be done at all is for local rules, the institution and licensed
//! clinicians to say.

use super::subject::{Fitness, SpecError, Subject, warmth, within};
use crate::math;
use serde::{Deserialize, Serialize};

/// Something the subject is asked to do. A new one ends what it is incompatible with.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Manoeuvre {
    /// Stop whatever is going on (but stay sitting or standing) and be quiet.
    Rest,
    /// Breathe at a given rate until told otherwise.
    PacedBreathing {
        /// Breaths a minute, 3 to 30.
        per_min: f64,
    },
    /// One deep breath, quickly.
    DeepBreath,
    /// Hold the breath in air, for 30 s.
    BreathHold,
    /// Stand up and stay standing.
    StandUp,
    /// Sit down again.
    SitDown,
    /// Exercise on the spot, then sit still.
    Exercise {
        /// Duration, 10 to 1800 s.
        seconds: f64,
        /// Share of the way from resting to highest rate that is aimed at, 0.1 to 1.
        effort: f64,
    },
    /// Squeeze with the other hand at a third of the strength, for 2 min.
    Grip,
    /// The other hand in cool water, for 1 min.
    ColdOtherHand,
    /// Talk until told to rest.
    Talk,
    /// Laugh for 8 s.
    Laugh,
    /// The other hand in ice water for 1 min. Simulation only.
    IceWater,
    /// The sensor's hand in warm water and a towel, until told to rest: the finger warms towards 33 degrees C.
    WarmHand,
    /// Blow against a closed airway for 15 s. Simulation only.
    Valsalva,
    /// Hold the breath for 30 s with the face in cold water. Simulation only.
    FaceImmersion,
}

/// What can only be done one at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// With the breath.
    Breath,
    /// With the posture.
    Posture,
    /// With the other hand.
    Hand,
    /// With the whole body.
    Body,
    /// With the hand that carries the sensor.
    Warmth,
}

/// Holds until it is ended; finite, so that it can be saved as a number.
pub const UNTIL_ENDED: f64 = 1e12;

impl Manoeuvre {
    /// Checks the parameters.
    pub fn check(&self) -> Result<(), SpecError> {
        match *self {
            Self::PacedBreathing { per_min } => {
                within("per_min", "a rate from 3 to 30 breaths/min", per_min, 3.0, 30.0)
            }
            Self::Exercise { seconds, effort } => {
                within("seconds", "a duration from 10 to 1800 s", seconds, 10.0, 1800.0)?;
                within("effort", "a share from 0.1 to 1", effort, 0.1, 1.0)
            }
            _ => Ok(()),
        }
    }

    /// The same with its parameters drawn into their ranges.
    pub(crate) fn limited(self) -> Self {
        match self {
            Self::PacedBreathing { per_min } => Self::PacedBreathing { per_min: limit(per_min, 3.0, 30.0) },
            Self::Exercise { seconds, effort } => {
                Self::Exercise { seconds: limit(seconds, 10.0, 1800.0), effort: limit(effort, 0.1, 1.0) }
            }
            other => other,
        }
    }

    /// What it is incompatible with; `None` for rest, which ends everything but the posture.
    pub fn kind(&self) -> Option<Kind> {
        Some(match self {
            Self::Rest => return None,
            Self::PacedBreathing { .. }
            | Self::DeepBreath
            | Self::BreathHold
            | Self::Talk
            | Self::Laugh
            | Self::Valsalva
            | Self::FaceImmersion => Kind::Breath,
            Self::StandUp | Self::SitDown => Kind::Posture,
            Self::Grip | Self::ColdOtherHand | Self::IceWater => Kind::Hand,
            Self::Exercise { .. } => Kind::Body,
            Self::WarmHand => Kind::Warmth,
        })
    }

    /// How long it lasts by itself, s.
    pub fn lasts_s(&self) -> f64 {
        match *self {
            Self::Rest | Self::SitDown => 0.0,
            Self::PacedBreathing { .. } | Self::StandUp | Self::Talk | Self::WarmHand => UNTIL_ENDED,
            Self::DeepBreath => 5.0,
            Self::BreathHold | Self::FaceImmersion => 30.0,
            Self::Exercise { seconds, .. } => seconds,
            Self::Grip => 120.0,
            Self::ColdOtherHand | Self::IceWater => 60.0,
            Self::Laugh => 8.0,
            Self::Valsalva => 15.0,
        }
    }

    /// How long after its end anything of it can still be felt, s.
    pub fn lingers_s(&self) -> f64 {
        match self {
            Self::Exercise { .. } => 10_800.0,
            Self::WarmHand => 7_200.0,
            Self::DeepBreath => 40.0,
            _ => 240.0,
        }
    }
}

/// `x` drawn into a range; not-a-number becomes the lower end.
pub(crate) fn limit(x: f64, low: f64, high: f64) -> f64 {
    if x > low { x.min(high) } else { low }
}

/// Which individual reaction a subject shows this time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reaction {
    /// Strength, around 0.5, uniform on 0 to 1.
    pub strength: f64,
    /// Picks between forms of reaction, uniform on 0 to 1.
    pub form: f64,
}

/// What a manoeuvre does at an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Course {
    /// Added to the rate, beats/min.
    pub rate_bpm: f64,
    /// Factor on the height of the pulse.
    pub height: f64,
}

/// A rise with time constant `tau`, from 0 towards 1.
fn rise(t: f64, tau: f64) -> f64 {
    1.0 - math::exp(-t / tau)
}

/// A decay with time constant `tau`, from 1 towards 0.
fn decay(t: f64, tau: f64) -> f64 {
    math::exp(-t / tau)
}

/// Piecewise course through knots `(time, value)`, each piece a half cosine's like smooth step.
fn through(knots: &[(f64, f64)], t: f64) -> f64 {
    let mut before = knots[0];
    for &(time, value) in knots {
        if t < time {
            let x = (t - before.0) / (time - before.0);
            return before.1 + (value - before.1) * x * x * (3.0 - 2.0 * x);
        }
        before = (time, value);
    }
    before.1
}

/// The hump `(u/tau) e^(1 - u/tau)`, 1 at `u = tau`.
fn hump(u: f64, tau: f64) -> f64 {
    if u <= 0.0 { 0.0 } else { (u / tau) * math::exp(1.0 - u / tau) }
}

/// Recovery of the rate after exercise as two exponentials: share and time constant of the fast part, and time
/// constant of the slow one, s. Fitted to the falls at 1, 3 and 6 min in Sci Rep 2021, s41598-021-83071-w, Table 2,
/// with a slow part that reaches rest within the hour.
fn recovery(fitness: Fitness) -> (f64, f64, f64) {
    match fitness {
        Fitness::Low => (0.465, 134.0, 2400.0),
        Fitness::Moderate => (0.474, 97.0, 2400.0),
        Fitness::High => (0.483, 87.0, 2400.0),
    }
}

/// Length of the exercise that [`recovery`] was fitted to, s, and time constant with which its slow part gathers (design default:
/// after two hard minutes the rate is some ten over rest in five, from memory).
const TESTED_S: f64 = 600.0;
/// See [`TESTED_S`].
const GATHERS_S: f64 = 700.0;

/// How much warmer a finger is after `lasted` s of warming that ended `v` s ago, degrees C. A cold finger rewarms with a time
/// constant of about 5 min and cools more slowly (design values).
pub fn warmer_c(subject: &Subject, lasted: f64, v: f64) -> f64 {
    (33.0 - subject.finger_temp_c).max(0.0) * rise(lasted, 300.0) * decay(v, 1200.0)
}

/// The course of `m` at `u` s after its start, `v` s after its end (0 while it lasts).
pub fn course(m: &Manoeuvre, subject: &Subject, r: Reaction, u: f64, v: f64) -> Course {
    let lasted = u - v;
    let rest = subject.rest_rate_bpm;
    let (rate_bpm, height) = match *m {
        Manoeuvre::Rest | Manoeuvre::SitDown | Manoeuvre::PacedBreathing { .. } => (0.0, 1.0),
        // Skin flow falls by 40-80 % after a gasp (Clin Sci 89:233: 71 % in young men, 59 % in women); recovery in
        // 15-20 s from memory. The rate swings with the breath itself.
        Manoeuvre::DeepBreath => (0.0, 1.0 - (0.4 + 0.4 * r.strength) * hump(u - 2.5, 4.0)),
        // Rises a little at first, below rest within 30 s in untrained subjects.
        Manoeuvre::BreathHold => {
            let fall = -(0.05 + 0.1 * r.strength) * rest;
            let held = through(&[(0.0, 0.0), (4.0, 4.0), (10.0, 0.0), (30.0, fall)], lasted);
            (held * decay(v, 5.0), 1.0 - (0.3 + 0.2 * r.strength) * rise(lasted, 5.0) * decay(v, 6.0))
        }
        // 30 s with the face in ice water: 70 -> 45 beats/min (1985 report on facial immersion).
        Manoeuvre::FaceImmersion => {
            let fall = -(0.2 + 0.3 * r.strength) * rest;
            let held = through(&[(0.0, 0.0), (2.0, 3.0), (30.0, fall)], lasted);
            (held * decay(v, 6.0), 1.0 - 0.6 * rise(lasted, 5.0) * decay(v, 10.0))
        }
        // A first peak at about 3 s, the second at 12 s, a dip at 20 s, then a plateau 10-20 above lying or sitting.
        Manoeuvre::StandUp => {
            let k = 0.8 + 0.4 * r.strength;
            let knots = [(0.0, 0.0), (3.0, 13.0), (6.0, 11.0), (12.0, 22.0), (20.0, 9.0), (32.0, 12.0)];
            (k * through(&knots, lasted) * decay(v, 9.0), 1.0 - 0.3 * rise(lasted, 5.0) * decay(v, 10.0))
        }
        Manoeuvre::Exercise { effort, .. } => {
            let reserve = effort * (subject.max_rate_bpm - rest);
            let (fast, tau, slow_tau) = recovery(subject.fitness);
            let top = reserve * rise(lasted, 35.0);
            // Light exercise leaves little of the slow part behind, and both are faster; so does a short one, since what
            // falls slowly (heat, what the muscles have made) has gathered slowly. The figures are for ten minutes of it.
            let gathered = rise(lasted, GATHERS_S) / rise(TESTED_S, GATHERS_S);
            let slow = (1.0 - fast) * effort * gathered;
            let tau = tau * (0.55 + 0.45 * effort);
            let left = (1.0 - slow) * decay(v, tau)
                + slow * decay(v, slow_tau * effort * (0.3 + 0.7 * gathered.min(1.0)));
            // Skin vessels close at the start and open when warm (from memory).
            let warm = 0.5 * effort * rise(lasted, 150.0) * decay(v, 500.0);
            (top * left, 1.0 - 0.3 * hump(u, 12.0) + warm)
        }
        // At a third of the strength +10 to +15 over two minutes (from memory).
        Manoeuvre::Grip => {
            let held = (0.7 + 0.6 * r.strength) * (4.0 * rise(lasted, 3.0) + 8.0 * lasted / 120.0);
            (held * decay(v, 12.0), 1.0 - 0.3 * rise(lasted, 6.0) * decay(v, 12.0))
        }
        Manoeuvre::ColdOtherHand => {
            let held = (2.0 + 3.0 * r.strength) * rise(lasted, 8.0);
            (held * decay(v, 15.0), 1.0 - 0.35 * rise(lasted, 6.0) * decay(v, 25.0))
        }
        // Half of the people keep a raised rate, the other half rise and fall back (Mourot 2009: 20 and 19 of 39).
        Manoeuvre::IceWater => {
            let top = 5.0 + 10.0 * r.strength;
            let held = if r.form < 0.5 {
                top * rise(lasted, 8.0)
            } else {
                through(&[(0.0, 0.0), (18.0, top), (50.0, -0.4 * top)], lasted)
            };
            let closed = 0.4 + 0.3 * r.strength;
            (held * decay(v, 20.0), 1.0 - closed * rise(lasted, 7.0) * decay(v, 40.0))
        }
        // Rate rises while straining, falls below rest 5-15 s after release; ratio of the longest interval after to
        // the shortest during at least 1.21 (Ewing's limits).
        Manoeuvre::Valsalva => {
            let k = 0.8 + 0.4 * r.strength;
            let held = k * through(&[(0.0, 0.0), (2.0, -3.0), (15.0, 25.0)], lasted);
            let rebound = -0.2 * rest * k * hump(v - 1.0, 6.0);
            let height = 1.0 - 0.6 * rise(lasted, 6.0) * decay(v, 2.5) + 0.35 * hump(v - 1.0, 6.0);
            (held * decay(v, 2.5) + rebound, height)
        }
        Manoeuvre::WarmHand => {
            let warmer = warmer_c(subject, lasted, v);
            (0.0, warmth(subject.finger_temp_c + warmer) / subject.warmth())
        }
        Manoeuvre::Talk => ((5.0 + 5.0 * r.strength) * rise(lasted, 8.0) * decay(v, 10.0), 1.0),
        Manoeuvre::Laugh => ((5.0 + 6.0 * r.strength) * rise(lasted, 3.0) * decay(v, 8.0), 1.0),
    };
    Course { rate_bpm, height }
}
