//! Where one can look at the bench. One sees what is at that place and nothing of the others.

use serde::{Deserialize, Serialize};

/// A place to look at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Spot {
    /// The recorder: its light and switch, the plugs at it.
    Recorder,
    /// The computer: the plug at it.
    Computer,
    /// The power strip: its light and switch, what is plugged in.
    PowerStrip,
    /// The sensor's cable: how it lies, what it passes.
    Cable,
    /// The sensor on the finger: place, side, strap.
    Sensor,
    /// The subject: the hand and its height, the other hand, breath and voice.
    Subject,
    /// What else lies about: phone, lamp, charger.
    Around,
}

/// All places.
pub const SPOTS: [Spot; 7] = [
    Spot::Recorder,
    Spot::Computer,
    Spot::PowerStrip,
    Spot::Cable,
    Spot::Sensor,
    Spot::Subject,
    Spot::Around,
];
