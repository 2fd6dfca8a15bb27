//! What is done to the subject, the sensor or a plug without changing the bench, and what comes back.

use super::{COLD_C, Chain, PRESS_S, RESTED_SHARE, STILL_SHARE};
use crate::bench::look::Spot;
use crate::bench::strap::Feel;
use crate::bench::wiring::End;
use crate::physiology::{Manoeuvre, manoeuvre};
use crate::pickup::sensor::Shield;
use serde::{Deserialize, Serialize};

/// Something done to the subject, the sensor or a plug, without changing the bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Poke {
    /// Tap the sensor.
    TapSensor {},
    /// Ask the subject to keep the hand still.
    AskStill {},
    /// Wiggle a plug.
    Wiggle {
        /// The plug.
        end: End,
    },
    /// Let the computer look for the recorder.
    Rescan {},
    /// Ask the subject to be quiet and breathe quietly.
    AskQuiet {},
    /// Ask the subject how the finger feels: cold or warm.
    AskFinger {},
    /// Take another cable for the sensor.
    SwapCable {},
    /// Press the strapped finger lightly and let go again.
    PressFinger {},
    /// Look at a place of the bench.
    Look {
        /// Which.
        at: Spot,
    },
    /// Lay the arm on a cushion and let it rest.
    RestArm {},
    /// Tell the instructor what was seen.
    TellInstructor {},
    /// Push the sleeve up, and take a watch off.
    PushUpSleeve {},
    /// Wipe the sensor's plug clean and dry.
    DryPlug {},
    /// Wipe the sensing side of the sensor.
    WipeSensor {},
    /// Close other programs on the computer.
    ClosePrograms {},
}

/// How the subject answers a request.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// "All right, I'll keep still."
    WillKeepStill,
    /// "I am keeping still."
    AmStill,
    /// "All right, I'll be quiet."
    WillBeQuiet,
    /// "My finger is cold."
    FingerCold,
    /// "My finger is warm."
    FingerWarm,
    /// "It pinches and throbs."
    FingerThrobs,
    /// "My whole hand feels full and heavy."
    HandFull,
}

/// How the hand looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Looks {
    /// At rest.
    Calm,
    /// It moves.
    Moving,
    /// The fingertip is dusky.
    Dusky,
}

/// What can be heard of the subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Voice {
    /// Quiet breathing.
    Quiet,
    /// Talk.
    Talking,
    /// A sigh now and then.
    Sighing,
}

impl Chain {
    /// Does something to the subject, the sensor or a plug.
    pub fn poke(&mut self, poke: &Poke) -> Option<Answer> {
        match poke {
            Poke::TapSensor {} => self.motion.tap(),
            Poke::AskStill {} => {
                let restless = self.motion.unrest() > STILL_SHARE || self.tremor.taps();
                self.motion.set_unrest(self.config.trouble.unrest * STILL_SHARE);
                self.tremor.set(self.config.trouble.tremor, 0.0);
                return Some(if restless { Answer::WillKeepStill } else { Answer::AmStill });
            }
            Poke::Wiggle { end } => {
                if *end == End::Sensor {
                    self.plug.wiggle();
                }
            }
            Poke::Rescan {} => self.seen = self.link_path(),
            Poke::AskQuiet {} => {
                self.quiet = true;
                self.talks = false;
                self.sigh_left = u64::MAX;
                self.body.start(Manoeuvre::Rest);
                return Some(Answer::WillBeQuiet);
            }
            Poke::AskFinger {} => {
                let cold = self.finger_temp_c() < COLD_C;
                return Some(match self.bench.strap.feel() {
                    Feel::Tight => Answer::FingerThrobs,
                    _ if self.sleeve.dusky() => Answer::HandFull,
                    _ if cold => Answer::FingerCold,
                    _ => Answer::FingerWarm,
                });
            }
            Poke::SwapCable {} => {
                self.config.trouble.cable_break = 0.0;
                self.config.sensor.shield = Shield::Good;
                self.dry_plug();
                self.refresh();
            }
            Poke::PushUpSleeve {} => self.sleeve.push_up(),
            Poke::DryPlug {} => self.dry_plug(),
            Poke::WipeSensor {} => {
                self.config.trouble.smear = 0.0;
                self.refresh();
            }
            Poke::ClosePrograms {} => {
                self.config.trouble.busy = 0.0;
                self.refresh();
            }
            Poke::PressFinger {} => self.press_left = PRESS_S,
            Poke::Look { .. } | Poke::TellInstructor {} => {}
            Poke::RestArm {} => {
                // Who lies on the cushion already lies no softer for being asked again.
                if !self.rested {
                    self.rested = true;
                    self.shaken.lay_on_cushion();
                    self.config.trouble.tremor *= RESTED_SHARE;
                }
                let tapping = if self.tremor.taps() { self.config.trouble.tapping } else { 0.0 };
                self.tremor.set(self.config.trouble.tremor, tapping);
            }
        }
        None
    }

    /// The sensor's plug is clean and dry.
    fn dry_plug(&mut self) {
        self.damp.dry();
        self.set_section(self.recorder.settings().analogue_rate_hz());
        self.refresh();
    }

    /// Lets the subject begin a manoeuvre.
    pub fn start(&mut self, what: Manoeuvre) {
        // Nobody talks through another exercise of the breath.
        if what == Manoeuvre::Rest || what.kind() == Some(manoeuvre::Kind::Breath) {
            self.talks = what == Manoeuvre::Talk;
        }
        self.body.start(what);
    }
}
