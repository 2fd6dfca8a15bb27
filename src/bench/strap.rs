//! The sensor on the finger.

use crate::math;
use serde::{Deserialize, Serialize};

/// Where along the finger the sensor sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// The soft pulp of the fingertip.
    Pulp,
    /// The middle phalanx.
    Middle,
    /// Over a joint: bone under the sensor.
    Joint,
}

/// Which way the sensor's sensing face looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// To the skin, as it should.
    ToSkin,
    /// Away from the skin.
    Away,
}

/// What the subject says of the strap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Feel {
    /// No sensor on the finger.
    Off,
    /// The sensor slides about.
    Loose,
    /// Held, and comfortable.
    Snug,
    /// It throbs.
    Tight,
}

/// Where the subject's other hand is: what the body touches decides how far it follows the power line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OtherHand {
    /// In the lap.
    Lap,
    /// On the laptop, whose charger leaves it floating between the power line conductors.
    Laptop,
    /// On the grounded case of the recorder. Only to look: it is a test, not a way to record.
    Case,
}

/// The sensor and its strap.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Strap {
    /// On the finger or not.
    pub on: bool,
    /// Slider, 0 to 1.
    pub tightness: f64,
    /// Place along the finger.
    pub place: Place,
    /// Sensing face.
    pub side: Side,
    /// Height of the hand over the heart, cm.
    pub height_cm: f64,
    /// A cloth over the finger keeps light off.
    pub shaded: bool,
    /// Where the other hand is.
    pub other_hand: OtherHand,
}

impl Strap {
    /// Not on the finger, and left loose.
    pub fn off() -> Self {
        Self {
            on: false,
            tightness: 0.35,
            place: Place::Pulp,
            side: Side::ToSkin,
            height_cm: 0.0,
            shaded: false,
            other_hand: OtherHand::Lap,
        }
    }

    /// On the fingertip near the best pressure.
    pub fn snug() -> Self {
        Self { on: true, tightness: 0.72, ..Self::off() }
    }

    /// Pressure of the sensor on the skin, mmHg: `3 e^(4u)`, from 3 to 164 over the slider (design default), so that
    /// equal steps of the slider are equal ratios of pressure.
    pub fn pressure_mmhg(&self) -> f64 {
        if self.on { 3.0 * math::exp(4.0 * self.tightness) } else { 0.0 }
    }

    /// What the subject says; the bounds (20 and 85 mmHg, a middle diastolic pressure) are design defaults.
    pub fn feel(&self) -> Feel {
        match self.pressure_mmhg() {
            _ if !self.on => Feel::Off,
            p if p < 20.0 => Feel::Loose,
            p if p < 85.0 => Feel::Snug,
            _ => Feel::Tight,
        }
    }
}
