//! The tables of a scenario file.

use super::assignment::Assignment;
use super::fault::Fault;
use super::pool::Pool;
use super::script::Attempt;
use crate::assess::Criteria;
use crate::assess::own::{OwnHint, OwnMisreading};
use crate::assess::task::TaskSpec;
use crate::bench::strap::{Place, Side};
use crate::bench::table::Part;
use crate::bench::wiring::{End, Socket};
use crate::chain::Trouble;
use crate::experiment::Spec;
use crate::physiology::SubjectSpec;
use crate::pickup::field::PowerLine;
use crate::pickup::sensor::Sensor;
use crate::recorder::Settings;
use serde::de::{Error, SeqAccess, Unexpected, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::fmt;

/// How much the page helps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Help {
    /// The next step is named.
    #[default]
    Guided,
    /// The student works alone.
    Alone,
}

/// A scenario.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    /// Name in links and results: small letters, digits, hyphens.
    pub id: String,
    /// Order of difficulty, from 1.
    pub level: u8,
    /// Heading.
    pub title: String,
    /// What students learn from it.
    pub aim: String,
    /// What the student is told.
    pub brief: String,
    /// How much the page helps.
    #[serde(default)]
    pub help: Help,
    /// The power line of the region.
    #[serde(default)]
    pub power_line: PowerLine,
    /// The subject; what is left out is drawn from the seed.
    #[serde(default)]
    pub subject: SubjectSpec,
    /// The sensor.
    #[serde(default)]
    pub sensor: Sensor,
    /// How the bench is found.
    #[serde(default)]
    pub bench: BenchSpec,
    /// What the subject and the equipment do by themselves.
    #[serde(default)]
    pub trouble: Trouble,
    /// The recorder's settings.
    #[serde(default)]
    pub recorder: Settings,
    /// The trace's time base at the start, s per screen.
    #[serde(default = "ten")]
    pub time_base_s: f64,
    /// What is asked.
    #[serde(default)]
    pub task: TaskSpec,
    /// What must be reached.
    #[serde(default)]
    pub pass: Criteria,
    /// Faults of the catalogue that are put into the equipment.
    #[serde(default)]
    pub fault: Vec<FaultSpec>,
    /// What the seed draws the fault, and what goes with it, from.
    #[serde(default)]
    pub pool: Option<Pool>,
    /// Whether the student is to name what is wrong before the check.
    #[serde(default)]
    pub name_faults: bool,
    /// An experiment: conditions that are compared, and what is measured in each.
    #[serde(default)]
    pub experiment: Option<Spec>,
    /// Misreadings that the instructor looks for beside the built-in ones.
    #[serde(default)]
    pub misreading: Vec<OwnMisreading>,
    /// The instructor's own words instead of built-in hints.
    #[serde(default)]
    pub hint: Vec<OwnHint>,
    /// What somebody did before the student came: steps as in a scripted attempt.
    #[serde(default)]
    pub before: Vec<serde_json::Value>,
    /// How it is assigned to a class.
    #[serde(default)]
    pub assignment: Option<Assignment>,
    /// Scripted attempts.
    #[serde(default)]
    pub attempt: Vec<Attempt>,
}

/// A fault of the catalogue in a scenario.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FaultSpec {
    /// Its name in the catalogue.
    pub name: String,
    /// Its severity, 0 to 1; drawn from the catalogue's range when absent.
    #[serde(default)]
    pub severity: Option<Severity>,
}

impl FaultSpec {
    /// Least and greatest severity, 0 to 1: its own, or the catalogue's.
    pub fn bounds(&self, fault: &Fault) -> [f64; 2] {
        self.severity.map_or([fault.severity.0, fault.severity.1], Severity::bounds)
    }
}

/// A severity, or a range to draw one from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Severity {
    /// As it is.
    Fixed(f64),
    /// Drawn between two bounds.
    Between([f64; 2]),
}

impl Severity {
    /// Least and greatest.
    pub fn bounds(self) -> [f64; 2] {
        match self {
            Self::Fixed(v) => [v, v],
            Self::Between(bounds) => bounds,
        }
    }
}

impl<'de> Deserialize<'de> for Severity {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(SeverityVisitor)
    }
}

struct SeverityVisitor;

impl<'de> Visitor<'de> for SeverityVisitor {
    type Value = Severity;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a number from 0 to 1, or two of them")
    }

    fn visit_f64<E>(self, value: f64) -> Result<Severity, E> {
        Ok(Severity::Fixed(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Severity, E> {
        Ok(Severity::Fixed(value as f64))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Severity, E> {
        Ok(Severity::Fixed(value as f64))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Severity, A::Error> {
        let (low, high, more) = (items.next_element()?, items.next_element()?, items.next_element::<f64>()?);
        match (low, high, more) {
            (Some(low), Some(high), None) => Ok(Severity::Between([low, high])),
            _ => Err(A::Error::invalid_value(Unexpected::Seq, &self)),
        }
    }
}

fn ten() -> f64 {
    10.0
}

/// How the bench is found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct BenchSpec {
    /// What the bench is before the rest of this table applies.
    pub start: Start,
    /// Whether the desk lamp is on.
    pub lamp_on: bool,
    /// Whether the computer finds the recorder by itself.
    pub finds_recorder: bool,
    /// Whether the charger is in the power strip.
    pub charger: bool,
    /// Whether the power strip is on.
    pub power_strip_on: bool,
    /// The strap.
    pub strap: StrapSpec,
    /// Things that are in another place than on a tidy bench.
    pub place: Vec<PlaceSpec>,
    /// Plugs that are in another place than the start puts them.
    pub plug: Vec<PlugSpec>,
}

impl Default for BenchSpec {
    fn default() -> Self {
        Self {
            start: Start::Wired,
            lamp_on: false,
            finds_recorder: true,
            charger: false,
            power_strip_on: true,
            strap: StrapSpec::default(),
            place: Vec::new(),
            plug: Vec::new(),
        }
    }
}

/// What the bench is at first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Start {
    /// All cables apart, the recorder off, the sensor beside the hand.
    Apart,
    /// Wired, powered, strapped.
    Wired,
}

/// The strap, as far as it is laid down.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct StrapSpec {
    /// On the finger.
    pub on: Option<bool>,
    /// 0 to 1.
    pub tightness: Option<f64>,
    /// Place along the finger.
    pub place: Option<Place>,
    /// Where the sensing side points.
    pub side: Option<Side>,
    /// Height of the hand over the heart, cm.
    pub height_cm: Option<f64>,
}

/// A part and where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlaceSpec {
    /// The thing.
    pub part: Part,
    /// Center, cm from the left edge.
    pub x: f64,
    /// Center, cm from the far edge.
    pub y: f64,
}

/// A plug and where it is; no socket when it lies on the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlugSpec {
    /// The plug.
    pub end: End,
    /// The socket.
    #[serde(default)]
    pub socket: Option<Socket>,
}
