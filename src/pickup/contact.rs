//! The sensor against the skin: how large a pulse it feels.
//!
//! The curve over contact pressure is a design default shaped after oscillometry: the arterial wall is most
//! compliant near zero transmural pressure (Babbs 2012, BioMed Eng OnLine 11:56), so the pulse is largest at a
//! medium pressure, fades when the strap is loose, and is cut off when the strap closes the artery.

use crate::bench::strap::{Feel, Place, Side, Strap};
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Fall of arterial pressure with height over the heart, mmHg per cm: the density of blood times g; measured as 30
/// to 31 mmHg over 40 cm (Raamat 2009, Med Eng Phys 31:522).
const MMHG_PER_CM: f64 = 0.776;
/// Pressure under which the sensor may lift off, mmHg (design default).
const LOOSE_MMHG: f64 = 12.0;
/// Time over which an over-tight strap empties the fingertip, s (design default).
const FADE_S: f64 = 60.0;

/// What of the subject matters to the contact.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Finger {
    /// Systolic pressure at heart height, mmHg.
    pub systolic_mmhg: f64,
    /// Diastolic pressure at heart height, mmHg.
    pub diastolic_mmhg: f64,
}

/// Share of the best pulse at a contact pressure, 0 to 1, for a hand at heart height:
/// `exp(-ln^2(Pc/P0) / (2 .75^2)) / (1 + e^((Pc - (SBP - 5))/8))`, `P0 = 0.6 MAP` (design default).
pub fn pressure_gain(contact_mmhg: f64, systolic_mmhg: f64, diastolic_mmhg: f64) -> f64 {
    if contact_mmhg <= 0.0 {
        return 0.0;
    }
    let log = math::ln(contact_mmhg / best_mmhg(systolic_mmhg, diastolic_mmhg)) / 0.75;
    math::exp(-0.5 * log * log) * math::logistic(-(contact_mmhg - (systolic_mmhg - 5.0)) / 8.0)
}

/// Change of the pulse with the height of the hand: larger raised, smaller hanging (fitted to Hickey 2016, J Clin
/// Monit Comput 30:727: about +70 % at +50 cm, -68 % at -50 cm).
pub fn height_gain(cm: f64) -> f64 {
    math::exp(if cm >= 0.0 { 0.0106 * cm } else { 0.0228 * cm })
}

/// Contact pressure under which the pulse is largest, mmHg: .6 of the mean pressure in the artery (design default).
fn best_mmhg(systolic_mmhg: f64, diastolic_mmhg: f64) -> f64 {
    (0.6 * (diastolic_mmhg + (systolic_mmhg - diastolic_mmhg) / 3.0)).max(10.0)
}

/// Share of the best pulse that reaches the side of the sensor that touches, without the slow fading of a tight strap. How
/// large the pulse in a warm or cold finger is belongs to the body, not to the contact.
///
/// The law of height was measured under light contact and is the whole of what height does there. Above the best pressure the
/// pressures in the artery, which fall as the hand rises, say how much more is cut off.
pub fn gain(strap: &Strap, finger: &Finger) -> f64 {
    if !strap.on {
        return 0.0;
    }
    let place = match strap.place {
        Place::Pulp => 1.0,
        Place::Middle => 0.45,
        Place::Joint => 0.25,
    };
    let shift = -MMHG_PER_CM * strap.height_cm;
    let pressure = strap.pressure_mmhg();
    let level = |mmhg| pressure_gain(mmhg, finger.systolic_mmhg, finger.diastolic_mmhg);
    let here = |mmhg| pressure_gain(mmhg, finger.systolic_mmhg + shift, finger.diastolic_mmhg + shift);
    let best = best_mmhg(finger.systolic_mmhg, finger.diastolic_mmhg);
    let under = if pressure <= best { level(pressure) } else { level(best) * here(pressure) / here(best) };
    under * height_gain(strap.height_cm) * place
}

/// How much more of a movement a loose sensor feels: `1 + 4 e^(-Pc/12)` (design default).
pub fn motion_gain(contact_mmhg: f64) -> f64 {
    1.0 + 4.0 * math::exp(-contact_mmhg / 12.0)
}

/// The contact as a stage: it turns the pulse into the sensor's signal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Contact {
    rate_hz: f64,
    stream: Stream,
    /// Share of the pulse that the sensor feels through its back.
    through_back: f64,
    /// Gain that the strap asks for, and the one reached: a strap settles in about a quarter of a second.
    goal: f64,
    gain: f64,
    /// Share left by an over-tight strap.
    fade: f64,
    tight: bool,
    smooth: [f64; 2],
    /// How fast the strap slips, and what is left of its grip.
    slip: f64,
    grip: f64,
    lift_rate: f64,
    next_lift: f64,
    lifted: f64,
    bounce: f64,
}

impl Contact {
    /// A contact with nothing strapped on, under a strap that slips with severity `slip`, 0 to 1, of a sensor that feels a
    /// tenth of the pulse through its back.
    pub fn new(rate_hz: f64, slip: f64, seed: u64) -> Self {
        Self {
            through_back: 0.1,
            rate_hz,
            stream: Stream::new(seed, "contact"),
            goal: 0.0,
            gain: 0.0,
            fade: 1.0,
            tight: false,
            smooth: [0.0; 2],
            slip,
            grip: 1.0,
            lift_rate: 0.0,
            next_lift: f64::MAX,
            lifted: 0.0,
            bounce: 0.0,
        }
    }

    /// The same of a sensor that feels another share through its back.
    pub fn through_back(mut self, share: f64) -> Self {
        self.through_back = share;
        self
    }

    /// Goes on at another number of samples a second.
    pub fn set_rate(&mut self, rate_hz: f64) {
        self.rate_hz = rate_hz;
    }

    /// Takes over a changed strap or finger.
    pub fn set(&mut self, strap: &Strap, finger: &Finger) {
        let pressure = strap.pressure_mmhg();
        let face = if strap.side == Side::Away { self.through_back } else { 1.0 };
        self.goal = face * gain(strap, finger);
        // One bound for what the subject says, for the color of the tip and for the artery, so that they never contradict
        // each other: a middle diastolic pressure (design default).
        self.tight = strap.feel() == Feel::Tight;
        let rate = if strap.on && pressure < LOOSE_MMHG { 0.6 * math::exp(-pressure / 4.0) } else { 0.0 };
        if rate != self.lift_rate {
            self.lift_rate = rate;
            self.next_lift = self.stream.waiting_s(rate);
        }
    }

    /// Puts the contact at once where it is heading; for the start of a run.
    pub fn settle(&mut self) {
        self.gain = self.goal;
    }

    /// The strap has been fastened anew: it sits, and stays.
    pub fn fasten(&mut self) {
        (self.slip, self.grip) = (0.0, 1.0);
    }

    /// What is left of the strap's grip, 1 to a fifth.
    pub fn grip(&self) -> f64 {
        self.grip
    }

    /// Whether the strap slips.
    pub fn slips(&self) -> bool {
        self.slip > 0.0
    }

    /// Whether the fingertip looks dusky: strapped too tight for a while.
    pub fn dusky(&self) -> bool {
        self.tight && self.fade < 0.8
    }

    /// Turns the pulse into the sensor's mechanical signal in place; the unit stays that of the pulse.
    pub fn apply(&mut self, pulse: &mut [f64]) {
        let dt = 1.0 / self.rate_hz;
        let settle = dt / 0.25;
        let (fade_step, fade_goal) = if self.tight { (dt / FADE_S, 0.1) } else { (dt / 15.0, 1.0) };
        // Above diastolic pressure the artery opens late in each beat and the wave is rounded: two low-passes of 4 Hz.
        let corner = math::TAU * 4.0 * dt;
        let soft = corner / (1.0 + corner);
        let bounce_decay = 1.0 - dt / 0.02;
        let slide = self.slip * dt / 8.0;
        // Copies stay in registers; behind `self` each would be written and read again at every sample.
        let Self {
            mut gain,
            mut fade,
            mut grip,
            mut smooth,
            mut lifted,
            mut next_lift,
            mut bounce,
            goal,
            tight,
            ..
        } = *self;
        for x in pulse {
            gain += (goal - gain) * settle;
            fade += (fade_goal - fade) * fade_step;
            // A slipping strap loses its grip down to a fifth (design default).
            grip += (0.2 - grip) * slide;
            let share = if tight { soft } else { 1.0 };
            smooth[0] += (*x - smooth[0]) * share;
            smooth[1] += (smooth[0] - smooth[1]) * share;
            let mut y = gain * grip * fade * smooth[1];
            if lifted > 0.0 {
                lifted -= dt;
                y = 0.0;
                if lifted <= 0.0 {
                    // The sensor falls back on the skin with a knock of 2 to 10 times the pulse (design default).
                    bounce = self.stream.range(2.0, 10.0) * (0.1 + gain);
                    next_lift = self.stream.waiting_s(self.lift_rate);
                }
            } else {
                next_lift -= dt;
                if next_lift <= 0.0 {
                    lifted = self.stream.range(0.05, 0.3);
                }
            }
            y += bounce;
            // Cut off before it becomes a number too small for fast arithmetic.
            bounce = if bounce > 1e-9 { bounce * bounce_decay } else { 0.0 };
            *x = y;
        }
        (self.gain, self.fade, self.grip, self.smooth) = (gain, fade, grip, smooth);
        (self.lifted, self.next_lift, self.bounce) = (lifted, next_lift, bounce);
    }
}
