//! What is done to the subject, the pad or a plug without changing the bench, and what comes back.

use crate::bench::look::Spot;
use crate::bench::wiring::End;
use serde::{Deserialize, Serialize};

/// Something done to the subject, the pad or a plug, without changing the bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Poke {
    /// Tap the pad.
    TapPad {},
    /// Ask the subject to keep the hand still.
    AskStill {},
    /// Wiggle a plug.
    Wiggle {
        /// The plug.
        end: End,
    },
    /// Let the computer look for the unit.
    Rescan {},
    /// Ask the subject to be quiet and breathe quietly.
    AskQuiet {},
    /// Ask the subject how the finger feels: cold or warm.
    AskFinger {},
    /// Take another lead for the pad.
    SwapLead {},
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
