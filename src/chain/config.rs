//! What a run starts from.

use crate::bench::Bench;
use crate::physiology::SubjectSpec;
use crate::pickup::field::PowerLine;
use crate::pickup::sensor::Sensor;
use crate::recorder::Settings;
use serde::{Deserialize, Serialize};

/// Everything that a run starts from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Config {
    /// The subject, as far as it is laid down; the rest is drawn from the seed.
    pub subject: SubjectSpec,
    /// The power line of the region.
    pub power_line: PowerLine,
    /// The sensor.
    pub sensor: Sensor,
    /// What the subject and the things about do by themselves.
    pub trouble: Trouble,
    /// The computer looks for the recorder by itself. Otherwise it must be told to look after each break of the link.
    pub finds_recorder: bool,
    /// The bench at the start.
    pub bench: Bench,
    /// The recorder's settings at the start.
    pub recorder: Settings,
}

/// Troubles that no part of the bench holds, each with its severity from 0 (none) to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Trouble {
    /// How restless the hand is, until the subject is asked to keep still.
    pub unrest: f64,
    /// How strongly the hand trembles.
    pub tremor: f64,
    /// How strongly a foot or a finger taps, until the subject is asked to keep still.
    pub tapping: f64,
    /// How fast the strap slips, until it is strapped on again: at 1 within some ten seconds.
    pub slip: f64,
    /// How badly the sensor's plug sits, until it is pushed home.
    pub plug_loose: f64,
    /// How busy the phone is.
    pub phone: f64,
    /// How far the amplifier's zero is off, until it is zeroed: at 1 by a fifth of a volt.
    pub offset: f64,
    /// How badly a wire inside the sensor's cable is broken, until the cable is swapped; worse the more it is bent.
    pub cable_break: f64,
    /// How often the computer's port that is used at the start loses the recorder.
    pub port_gaps: f64,
    /// How often the subject sighs, until asked to breathe quietly.
    pub sighs: f64,
    /// How far the breathing moves the trace.
    pub breath_drift: f64,
    /// How hard the subject has hurried here, though nobody asked for it. By itself it does nothing: the exercise stands in what
    /// happened before.
    pub hurried: f64,
    /// How damp the sensor's plug is, until it is wiped.
    pub damp: f64,
    /// How strongly steps and typing shake the table, until the arm lies on a cushion.
    pub shaken: f64,
    /// How strongly the computer's fan shakes a sensor's cable that touches it.
    pub fan: f64,
    /// How hard a helper's thumb holds the sensor on the finger, until the strap is changed.
    pub thumb: f64,
    /// How hard a sleeve presses the forearm, until it is pushed up.
    pub sleeve: f64,
    /// How dirty the sensing side of a light sensor is, until it is wiped.
    pub smear: f64,
    /// Whether another program keeps the recorder, at any severity above 0, until it is closed.
    pub busy: f64,
    /// How lightly the other hand lies where it lies on the laptop: 0 is the whole palm, 1 a fingertip.
    pub light_touch: f64,
}

impl Trouble {
    /// Names the first severity that is not from 0 to 1.
    pub fn check(&self) -> Result<(), (&'static str, f64)> {
        let all = [
            ("unrest", self.unrest),
            ("tremor", self.tremor),
            ("tapping", self.tapping),
            ("slip", self.slip),
            ("plug_loose", self.plug_loose),
            ("phone", self.phone),
            ("offset", self.offset),
            ("cable_break", self.cable_break),
            ("port_gaps", self.port_gaps),
            ("sighs", self.sighs),
            ("breath_drift", self.breath_drift),
            ("hurried", self.hurried),
            ("damp", self.damp),
            ("shaken", self.shaken),
            ("fan", self.fan),
            ("thumb", self.thumb),
            ("sleeve", self.sleeve),
            ("smear", self.smear),
            ("busy", self.busy),
            ("light_touch", self.light_touch),
        ];
        match all.into_iter().find(|(_, v)| !(v.is_finite() && (0.0..=1.0).contains(v))) {
            Some(bad) => Err(bad),
            None => Ok(()),
        }
    }
}
