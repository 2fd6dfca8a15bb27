//! The sensor's electrical side.

use crate::math;
use crate::physiology::touch::Spread;
use serde::{Deserialize, Serialize};

/// What the sensor is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "SensorKind"))]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A ceramic disc: 20 nF on 100 megohm.
    Ceramic,
    /// A polymer film: 2.4 nF on 1 gigohm.
    Film,
    /// Light through the skin, with an amplifier of its own: a low impedance, coupled at 0.05 Hz.
    Optical,
}

/// State of the shield around the sensor's cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shield {
    /// Whole: 40 dB.
    Good,
    /// Torn at the plug: 15 dB.
    Damaged,
    /// None: 0 dB.
    None,
}

/// The sensor as a scenario describes it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Sensor {
    /// What it is made of.
    pub kind: Kind,
    /// Shield of its cable.
    pub shield: Shield,
    /// An amplifier of its own in the sensor's housing, so that the recorder's input does not load it. An optical sensor
    /// has one in any case.
    pub buffer: bool,
}

impl Default for Sensor {
    fn default() -> Self {
        Self { kind: Kind::Ceramic, shield: Shield::Good, buffer: false }
    }
}

impl Sensor {
    /// Capacitance of the sensor with its cable, farad (design defaults: sensors of these kinds are sold with some
    /// hundreds of picofarad to some tens of nanofarad). The optical sensor has no such capacitance; its value stands for the coupling at 0.05 Hz behind 1 kilohm.
    pub fn capacitance_f(&self) -> f64 {
        match self.kind {
            Kind::Ceramic => 20e-9,
            Kind::Film => 2.4e-9,
            Kind::Optical => 3.2e-3,
        }
    }

    /// Resistance across the sensor, ohm.
    pub fn resistance_ohm(&self) -> f64 {
        match self.kind {
            Kind::Ceramic => 100e6,
            Kind::Film => 1e9,
            Kind::Optical => 1e3,
        }
    }

    /// Signal for a given pulse against the ceramic sensor's (design defaults: the film gives a little less, the optical
    /// sensor's amplifier ten times as much).
    pub fn sensitivity(&self) -> f64 {
        match self.kind {
            Kind::Ceramic => 1.0,
            Kind::Film => 0.7,
            Kind::Optical => 10.0,
        }
    }

    /// How far sensors of this kind smooth the pulse and let slow changes go. Design defaults: what the model needs to
    /// give the rise times of recordings with a phone's camera (smoothing .016 s in the middle) and of bedside
    /// monitors (.026 s).
    pub fn touches(&self) -> Spread {
        match self.kind {
            Kind::Ceramic => Spread { smoothing_s: (0.016, 0.4), coupling_hz: (0.015, 0.8) },
            Kind::Film => Spread { smoothing_s: (0.021, 0.4), coupling_hz: (0.03, 0.9) },
            Kind::Optical => Spread { smoothing_s: (0.024, 0.4), coupling_hz: (0.06, 0.9) },
        }
    }

    /// Share of the pulse that a sensor feels through its back: a pad is pressed all the same (common practice: a tenth), light
    /// that shines away from the finger comes back without a pulse.
    pub fn through_back(&self) -> f64 {
        match self.kind {
            Kind::Ceramic | Kind::Film => 0.1,
            Kind::Optical => 0.005,
        }
    }

    /// Whether an amplifier stands between what feels the pulse and the cable.
    pub fn drives_cable(&self) -> bool {
        self.buffer || self.kind == Kind::Optical
    }

    /// Resistance that the sensor's charge runs off through, ohm: its own, and beside it that of the recorder's input
    /// where no amplifier stands between the two.
    pub fn load_ohm(&self, input_ohm: f64) -> f64 {
        if self.drives_cable() { self.resistance_ohm() } else { parallel(self.resistance_ohm(), input_ohm) }
    }

    /// Corner of the high-pass that sensor and input make together, Hz: `1 / (2 pi R C)`.
    pub fn corner_hz(&self, input_ohm: f64) -> f64 {
        corner_hz(self.load_ohm(input_ohm), self.capacitance_f())
    }

    /// Magnitude of the impedance to ground at a frequency where the pulse is felt, ohm.
    pub fn impedance_ohm(&self, hz: f64, input_ohm: f64) -> f64 {
        let r = self.load_ohm(input_ohm);
        let wrc = math::TAU * hz * r * self.capacitance_f();
        r / (1.0 + wrc * wrc).sqrt()
    }

    /// The same along the cable, ohm: what an amplifier drives lies low.
    pub fn cable_ohm(&self, hz: f64, input_ohm: f64) -> f64 {
        if self.drives_cable() { DRIVEN_OHM } else { self.impedance_ohm(hz, input_ohm) }
    }

    /// Share of an electric field's current that passes the shield, 0 to 1 (design defaults of 40, 15 and 0 dB).
    pub fn shield_leak(&self) -> f64 {
        let db = match self.shield {
            Shield::Good => 40.0,
            Shield::Damaged => 15.0,
            Shield::None => 0.0,
        };
        math::pow(10.0, -db / 20.0)
    }
}

/// Impedance of a cable that an amplifier drives, ohm (design default).
const DRIVEN_OHM: f64 = 1e3;

/// Two resistances side by side, ohm.
pub fn parallel(a_ohm: f64, b_ohm: f64) -> f64 {
    a_ohm * b_ohm / (a_ohm + b_ohm)
}

/// Corner of a first-order high-pass of `ohm` and `farad`, Hz: `1 / (2 pi R C)`.
pub fn corner_hz(ohm: f64, farad: f64) -> f64 {
    1.0 / (math::TAU * ohm * farad)
}
