//! The tables of a scenario file and their checks.

use super::assignment::Assignment;
use super::error::ScenarioError;
use super::fault::{self, Situation};
use super::script::{Attempt, LONGEST_WAIT_S, MOST_STEPS};
use super::text;
use crate::assess::Criteria;
use crate::assess::own::{OwnHint, OwnMisreading};
use crate::assess::task::{Kind, TaskSpec};
use crate::bench::strap::{Face, Place};
use crate::bench::table::{Part, Point};
use crate::bench::wiring::{End, Socket};
use crate::bench::{Bench, Change};
use crate::chain::{Config, Trouble};
use crate::physiology::SubjectSpec;
use crate::pickup::field::Mains;
use crate::pickup::pad::Pad;
use crate::plain;
use crate::recorder::Settings;
use crate::rng::Stream;
use serde::de::{Error, SeqAccess, Unexpected, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::fmt;

/// Longest scenario file, bytes.
pub const MOST_BYTES: usize = 64 * 1024;

/// Longest time that passes before the student comes, s: a scenario handed in by a stranger must not hold anyone up.
const MOST_BEFORE_S: f64 = 1800.0;

/// Longest time that all scripted attempts of a scenario take together, with what happens before each of them, s. Each is
/// replayed whenever the scenario is checked.
pub const MOST_SCRIPTED_S: f64 = 7200.0;

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
    /// What is to be learnt.
    pub aim: String,
    /// What the student is told.
    pub brief: String,
    /// How much the page helps.
    #[serde(default)]
    pub help: Help,
    /// The mains of the region.
    #[serde(default)]
    pub mains: Mains,
    /// The subject, as far as it is laid down.
    #[serde(default)]
    pub subject: SubjectSpec,
    /// The pad.
    #[serde(default)]
    pub pad: Pad,
    /// How the bench is found.
    #[serde(default)]
    pub bench: BenchSpec,
    /// What the subject and the things about do by themselves.
    #[serde(default)]
    pub trouble: Trouble,
    /// The recorder's settings.
    #[serde(default)]
    pub recorder: Settings,
    /// The strip's time base at the start, s a screen.
    #[serde(default = "ten")]
    pub time_base_s: f64,
    /// What is asked.
    #[serde(default)]
    pub task: TaskSpec,
    /// What must be reached.
    #[serde(default)]
    pub pass: Criteria,
    /// Faults of the catalogue that are put into the bench.
    #[serde(default)]
    pub fault: Vec<FaultSpec>,
    /// Whether the student is to name what is wrong before the check.
    #[serde(default)]
    pub name_faults: bool,
    /// Misreadings that the instructor looks for beside the built-in ones.
    #[serde(default)]
    pub misreading: Vec<OwnMisreading>,
    /// Words of the instructor's in the place of those of built-in hints.
    #[serde(default)]
    pub hint: Vec<OwnHint>,
    /// What somebody did before the student came: steps as in a scripted attempt.
    #[serde(default)]
    pub before: Vec<serde_json::Value>,
    /// How it is handed out to a class.
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
    /// Whether the desk lamp burns.
    pub lamp_on: bool,
    /// Whether the computer finds the unit by itself.
    pub finds_unit: bool,
    /// Whether the charger is in the power strip.
    pub charger: bool,
    /// Whether the power strip is on.
    pub strip_on: bool,
    /// The strap.
    pub strap: StrapSpec,
    /// Parts that stand elsewhere than on a tidy bench.
    pub place: Vec<PlaceSpec>,
    /// Plugs that are elsewhere than the start says.
    pub plug: Vec<PlugSpec>,
}

impl Default for BenchSpec {
    fn default() -> Self {
        Self {
            start: Start::Wired,
            lamp_on: false,
            finds_unit: true,
            charger: false,
            strip_on: true,
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
    /// All leads apart, the unit off, the pad beside the hand.
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
    /// Sensing face.
    pub face: Option<Face>,
    /// Height of the hand over the heart, cm.
    pub height_cm: Option<f64>,
}

/// A part and where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlaceSpec {
    /// The part.
    pub part: Part,
    /// Centre, cm from the left edge.
    pub x: f64,
    /// Centre, cm from the far edge.
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

impl Scenario {
    /// Reads and checks a scenario file. The error names the field, what stands there and what was expected.
    pub fn read(text: &str) -> Result<Self, ScenarioError> {
        if text.len() > MOST_BYTES {
            let expected = format!("at most {MOST_BYTES} bytes");
            return Err(ScenarioError::at("file", format!("{} bytes", text.len()), expected));
        }
        let scenario: Scenario = text::read(text)?;
        scenario.check()?;
        Ok(scenario)
    }

    fn check(&self) -> Result<(), ScenarioError> {
        let known = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if self.id.is_empty() || self.id.len() > 60 || !self.id.chars().all(known) {
            let expected = "1 to 60 small letters, digits and hyphens";
            return Err(ScenarioError::at("id", format!("\"{}\"", self.id), expected));
        }
        if !(1..=9).contains(&self.level) {
            return Err(ScenarioError::at("level", self.level, "a whole number from 1 to 9"));
        }
        for (field, text, most) in
            [("title", &self.title, 80), ("aim", &self.aim, 400), ("brief", &self.brief, 2000)]
        {
            let length = text.trim().chars().count();
            if length == 0 || length > most {
                let expected = format!("1 to {most} characters");
                return Err(ScenarioError::at(field, format!("{length} characters"), expected));
            }
        }
        if ![50.0, 60.0].contains(&self.mains.hz) {
            return Err(ScenarioError::at("mains.hz", self.mains.hz, "50 or 60"));
        }
        if !(self.mains.volts.is_finite() && (90.0..=260.0).contains(&self.mains.volts)) {
            return Err(ScenarioError::at("mains.volts", self.mains.volts, "a number from 90 to 260"));
        }
        self.subject
            .check()
            .map_err(|e| ScenarioError::at(format!("subject.{}", e.field), e.found, e.expected))?;
        self.recorder
            .check()
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        if !crate::strip::frame::TIME_BASES_S.contains(&self.time_base_s) {
            let list = crate::strip::frame::TIME_BASES_S.map(|t| t.to_string()).join(", ");
            return Err(ScenarioError::at("time_base_s", self.time_base_s, format!("one of {list}")));
        }
        self.pass.check().map_err(|(field, expected)| {
            ScenarioError::at(format!("pass.{field}"), "another value", expected)
        })?;
        self.task.check().map_err(|(field, found, expected)| {
            ScenarioError::at(format!("task.{field}"), found, expected)
        })?;
        if self.task.kind == Kind::NameFault && !self.name_faults {
            let expected = "true where the question is to name the fault";
            return Err(ScenarioError::at("name_faults", "false", expected));
        }
        self.trouble.check().map_err(|(field, found)| {
            ScenarioError::at(format!("trouble.{field}"), found, "a number from 0 to 1")
        })?;
        if self.fault.len() > 4 {
            return Err(ScenarioError::at("fault", format!("{} faults", self.fault.len()), "at most 4"));
        }
        if let Some(name) = self.task.one_of.iter().find(|name| fault::named(name).is_none()) {
            let known: Vec<&str> = fault::all().map(|f| f.id).collect();
            let expected = format!("names out of {}", known.join(", "));
            return Err(ScenarioError::at("task.one_of", format!("\"{name}\""), expected));
        }
        for (k, spec) in self.fault.iter().enumerate() {
            let here = |field: &str| format!("fault[{k}].{field}");
            if fault::named(&spec.name).is_none() {
                let known: Vec<&str> = fault::all().map(|f| f.id).collect();
                let found = format!("\"{}\"", spec.name);
                return Err(ScenarioError::at(here("name"), found, format!("one of {}", known.join(", "))));
            }
            let bounds = match spec.severity {
                None => [0.0, 1.0],
                Some(Severity::Fixed(v)) => [v, v],
                Some(Severity::Between(bounds)) => bounds,
            };
            let good =
                bounds.iter().all(|v| v.is_finite() && (0.0..=1.0).contains(v)) && bounds[0] <= bounds[1];
            if !good {
                let expected = "a number from 0 to 1, or two of them, ascending";
                return Err(ScenarioError::at(here("severity"), format!("{bounds:?}"), expected));
            }
        }
        if self.before.len() > MOST_STEPS {
            let found = format!("{} steps", self.before.len());
            return Err(ScenarioError::at("before", found, format!("at most {MOST_STEPS} steps")));
        }
        let waited = waited_of(&self.before, "before")?;
        if waited > MOST_BEFORE_S {
            let found = format!("waits of {waited} s in all");
            return Err(ScenarioError::at("before", found, format!("at most {MOST_BEFORE_S} s of waiting")));
        }
        let mut scripted_s = 0.0;
        for (k, attempt) in self.attempt.iter().enumerate() {
            if attempt.steps.len() > MOST_STEPS {
                let expected = format!("at most {MOST_STEPS} steps");
                let found = format!("{} steps", attempt.steps.len());
                return Err(ScenarioError::at(format!("attempt[{k}].steps"), found, expected));
            }
            scripted_s += waited + waited_of(&attempt.steps, &format!("attempt[{k}].steps"))?;
            if scripted_s > MOST_SCRIPTED_S {
                let found = format!("scripted attempts of {scripted_s} s in all up to here");
                let expected = format!("at most {MOST_SCRIPTED_S} s of waiting in all attempts together");
                return Err(ScenarioError::at(format!("attempt[{k}].steps"), found, expected));
            }
        }
        if let Some(assignment) = &self.assignment {
            assignment.check()?;
        }
        self.build_bench()?;
        super::together::check(self)
    }

    /// The bench as the student finds it.
    fn build_bench(&self) -> Result<Bench, ScenarioError> {
        let spec = &self.bench;
        let mut bench = match spec.start {
            Start::Apart => Bench::tidy(),
            Start::Wired => Bench::wired(),
        };
        let refused = |field: String, r: crate::bench::Refusal| {
            let told = plain::given(&r);
            ScenarioError::at(
                field,
                format!("a change that the bench refuses ({told})"),
                "a change that can be done",
            )
        };
        bench.wiring.strip_on = spec.strip_on;
        bench.wiring.lamp_on = spec.lamp_on;
        for (k, plug) in spec.plug.iter().enumerate() {
            let change = match plug.socket {
                Some(socket) => Change::Plug { end: plug.end, socket },
                None => Change::Unplug { end: plug.end },
            };
            bench.change(&change).map_err(|r| refused(format!("bench.plug[{k}]"), r))?;
        }
        bench.wiring.charger_plugged = spec.charger;
        if spec.charger && bench.wiring.end_in(Socket::Outlet4).is_some() {
            return Err(ScenarioError::at("bench.charger", "true", "outlet4 left free for the charger"));
        }
        // All places at once: only the finished arrangement has to suit the lead.
        for (k, place) in spec.place.iter().enumerate() {
            let inside = |v: f64, most: f64| v.is_finite() && (0.0..=most).contains(&v);
            let (w, d) = (crate::bench::table::WIDTH_CM, crate::bench::table::DEPTH_CM);
            if !inside(place.x, w) || !inside(place.y, d) {
                let found = format!("x = {}, y = {}", place.x, place.y);
                let expected = format!("a place on the table of {w} by {d} cm");
                return Err(ScenarioError::at(format!("bench.place[{k}]"), found, expected));
            }
            let to = Point { x: place.x, y: place.y };
            match place.part {
                Part::Lead1 => bench.lead.handles[0] = to,
                Part::Lead2 => bench.lead.handles[1] = to,
                part => bench.table.put(part, to),
            }
        }
        let strap = &spec.strap;
        bench.strap.on = strap.on.unwrap_or(bench.strap.on);
        bench.strap.place = strap.place.unwrap_or(bench.strap.place);
        bench.strap.face = strap.face.unwrap_or(bench.strap.face);
        if let Some(u) = strap.tightness {
            if !(u.is_finite() && (0.0..=1.0).contains(&u)) {
                return Err(ScenarioError::at("bench.strap.tightness", u, "a number from 0 to 1"));
            }
            bench.strap.tightness = u;
        }
        if let Some(cm) = strap.height_cm {
            if !(cm.is_finite() && (-50.0..=50.0).contains(&cm)) {
                return Err(ScenarioError::at("bench.strap.height_cm", cm, "a number from -50 to 50"));
            }
            bench.strap.height_cm = cm;
        }
        if bench.slack_cm() < 0.0 {
            let found = format!("a lead {:.0} cm too short", -bench.slack_cm());
            return Err(ScenarioError::at("bench.place", found, "places that the pad's lead reaches"));
        }
        Ok(bench)
    }

    /// From what is drawn for a seed, given the file's text: see [`super::digest::heart`].
    pub fn heart(&self, text: &str, seed: u64) -> u64 {
        self.assignment.as_ref().map_or(seed, |_| super::digest::heart(text, seed, false))
    }

    /// The scenario as a seed has it: with the fault that it draws, where there are some to draw from.
    pub fn drawn(mut self, seed: u64) -> Self {
        if let Some(name) = self.task.fault(seed).map(str::to_string) {
            self.fault.push(FaultSpec { name, severity: None });
        }
        self
    }

    /// The faults with the severity that a seed draws for each.
    pub fn severities(&self, seed: u64) -> Vec<(&'static fault::Fault, f64)> {
        let mut stream = Stream::new(seed, "faults");
        let known = self.fault.iter().filter_map(|spec| Some((spec, fault::named(&spec.name)?)));
        known
            .map(|(spec, fault)| {
                let (low, high) = match spec.severity {
                    None => fault.severity,
                    Some(Severity::Fixed(v)) => (v, v),
                    Some(Severity::Between([low, high])) => (low, high),
                };
                (fault, stream.range(low, high))
            })
            .collect()
    }

    /// The situation that a seed makes: bench, recorder and strip with the faults put in.
    pub fn situation(&self, seed: u64) -> Result<Situation, ScenarioError> {
        let mut situation = Situation {
            config: self.config()?,
            time_base_s: self.time_base_s,
            before: self.before.clone(),
            foreign_take: false,
        };
        for (fault, severity) in self.severities(seed) {
            (fault.apply)(&mut situation, severity);
        }
        Ok(situation)
    }

    /// The chain's description, without the faults.
    pub fn config(&self) -> Result<Config, ScenarioError> {
        Ok(Config {
            subject: self.subject.clone(),
            mains: self.mains,
            pad: self.pad,
            trouble: self.trouble,
            finds_unit: self.bench.finds_unit,
            bench: self.build_bench()?,
            recorder: self.recorder.clone(),
        })
    }
}

/// The waits of a script in all, s. Each is looked at by itself as well: one below zero, or none at all, would hide the
/// others in the sum.
fn waited_of(steps: &[serde_json::Value], here: &str) -> Result<f64, ScenarioError> {
    let mut waited = 0.0;
    for (k, wait) in steps.iter().enumerate().filter_map(|(k, step)| Some((k, step.get("wait")?))) {
        waited += wait.as_f64().filter(|s| (0.0..=LONGEST_WAIT_S).contains(s)).ok_or_else(|| {
            let expected = format!("a number from 0 to {LONGEST_WAIT_S}");
            ScenarioError::at(format!("{here}[{k}].wait"), wait, expected)
        })?;
    }
    Ok(waited)
}
