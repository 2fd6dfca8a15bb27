//! A pool: what a seed draws the bench from. Two students of one assignment meet two benches of it, and a second try at one
//! title is another search.

use super::error::ScenarioError;
use super::fault::{self, Fault, Impression};
use super::schema::{FaultSpec, Scenario};
use super::together;
use crate::assess::task::{Reads, TaskSpec};
use crate::physiology::subject::People;
use crate::pickup::sensor::Sensor;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Most faults that one bench draws: two hide parts of each other, three are work for an instructor's own bench.
const MOST_DRAWN: u8 = 2;
/// Longest list of sensors, people or tasks.
const MOST_LISTED: usize = 12;

/// What a seed draws a bench from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Pool {
    /// Faults of the catalogue.
    pub faults: Vec<String>,
    /// All faults of a first impression, beside those of `faults`. With a later version there may be more of them.
    pub impression: Option<Impression>,
    /// A fault of the catalogue and all that it is confused with, beside those of `faults`.
    pub look_alike: Option<String>,
    /// How many faults are there at once: 1 or 2. Of two that undo each other never both.
    pub draw: u8,
    /// Whether it may be that nothing is wrong, as often as any one draw. To name nothing is right then.
    pub with_nothing: bool,
    /// What somebody did before the student came where nothing is wrong: steps as in a scripted attempt.
    pub if_nothing: Vec<Value>,
    /// Sensors to draw from, in the place of `[sensor]`.
    pub sensors: Vec<Sensor>,
    /// Kinds of people to draw the subject from, in the place of `subject.people`.
    pub people: Vec<People>,
    /// Questions to draw from, in the place of `[task]`.
    pub tasks: Vec<TaskSpec>,
}

impl Default for Pool {
    fn default() -> Self {
        Self {
            faults: Vec::new(),
            impression: None,
            look_alike: None,
            draw: 1,
            with_nothing: true,
            if_nothing: Vec::new(),
            sensors: Vec::new(),
            people: Vec::new(),
            tasks: Vec::new(),
        }
    }
}

/// What may be wrong at once; empty where nothing is.
pub type Draw = Vec<&'static Fault>;

impl Pool {
    /// Its faults, each once, in the order of the catalogue.
    pub fn members(&self) -> Vec<&'static Fault> {
        let centre = self.look_alike.as_deref().and_then(fault::named);
        let alike = |f: &Fault| {
            centre.is_some_and(|c| {
                c.id == f.id || c.confused_with.contains(&f.id) || f.confused_with.contains(&c.id)
            })
        };
        let member = |f: &&Fault| {
            self.faults.iter().any(|name| name == f.id) || self.impression == Some(f.impression) || alike(f)
        };
        fault::all().filter(member).collect()
    }

    /// Refuses what cannot be by itself.
    pub(super) fn check(&self, scenario: &Scenario) -> Result<(), ScenarioError> {
        let unknown = |name: &&String| fault::named(name).is_none();
        for (field, name) in [
            ("pool.faults", self.faults.iter().find(unknown)),
            ("pool.look_alike", self.look_alike.iter().find(unknown)),
        ] {
            if let Some(name) = name {
                let known: Vec<&str> = fault::all().map(|f| f.id).collect();
                return Err(ScenarioError::at(
                    field,
                    format!("\"{name}\""),
                    format!("one of {}", known.join(", ")),
                ));
            }
        }
        if !(1..=MOST_DRAWN).contains(&self.draw) {
            return Err(ScenarioError::at("pool.draw", self.draw, format!("1 to {MOST_DRAWN}")));
        }
        let members = self.members().len();
        let least = usize::from(self.draw) + 1;
        if members < least {
            let expected = format!("at least {least} faults to draw from");
            return Err(ScenarioError::at("pool.faults", format!("{members} in all"), expected));
        }
        for (field, length) in [
            ("pool.sensors", self.sensors.len()),
            ("pool.people", self.people.len()),
            ("pool.tasks", self.tasks.len()),
        ] {
            if length > MOST_LISTED {
                return Err(ScenarioError::at(field, length, format!("at most {MOST_LISTED}")));
            }
        }
        if !scenario.fault.is_empty() || !scenario.task.one_of.is_empty() {
            let field = if scenario.fault.is_empty() { "task.one_of" } else { "fault" };
            return Err(ScenarioError::at(field, "a fault", "nothing: the pool draws what is wrong"));
        }
        for (k, task) in self.tasks.iter().enumerate() {
            let here = |field: &str| format!("pool.tasks[{k}].{field}");
            task.check()
                .map_err(|(field, found, expected)| ScenarioError::at(here(field), found, expected))?;
            if !task.one_of.is_empty() {
                return Err(ScenarioError::at(
                    here("one_of"),
                    "a fault",
                    "nothing: the pool draws what is wrong",
                ));
            }
            if task.kind.question().reads == Reads::Nothing && !scenario.name_faults {
                let expected = "true where the question is to name the fault";
                return Err(ScenarioError::at("name_faults", "false", expected));
            }
        }
        Ok(())
    }
}

impl Scenario {
    /// All that its pool may put into a bench: each draw as likely as any other; none without a pool.
    pub fn draws(&self) -> Vec<Draw> {
        let Some(pool) = &self.pool else { return Vec::new() };
        let members = pool.members();
        let mut draws: Vec<Draw> = if pool.draw < 2 {
            members.into_iter().map(|f| vec![f]).collect()
        } else {
            let pairs = members
                .iter()
                .enumerate()
                .flat_map(|(k, first)| members[k + 1..].iter().map(move |second| vec![*first, *second]));
            pairs.filter(|pair| together::fit(self, pair)).collect()
        };
        if pool.with_nothing {
            draws.push(Vec::new());
        }
        draws
    }

    /// The faults of the catalogue that any seed may put into the bench: its own, and those it draws from.
    pub fn possible(&self) -> Vec<FaultSpec> {
        let members = self.pool.as_ref().map_or_else(Vec::new, Pool::members);
        let drawn = members.iter().map(|f| f.id.to_string()).chain(self.task.one_of.iter().cloned());
        let drawn = drawn.map(|name| FaultSpec { name, severity: None });
        self.fault.iter().cloned().chain(drawn).collect()
    }

    /// The scenario as a seed draws it from its pool; with `chosen` faults in the place of those that the seed draws.
    pub(super) fn out_of_pool(&mut self, seed: u64, chosen: Option<&[FaultSpec]>) {
        let Some(pool) = self.pool.clone() else { return };
        let mut stream = Stream::new(seed, "pool");
        let mut pick = |n: usize| ((stream.uniform() * n as f64) as usize).min(n.saturating_sub(1));
        let draws = self.draws();
        // Drawn even where it is not used, so that what follows is drawn as without a choice.
        let at = pick(draws.len());
        let drawn = draws.get(at).into_iter().flatten();
        self.fault = chosen.map_or_else(
            || drawn.map(|f| FaultSpec { name: f.id.into(), severity: None }).collect(),
            <[FaultSpec]>::to_vec,
        );
        if self.fault.is_empty() {
            self.before.extend(pool.if_nothing.iter().cloned());
        }
        if let Some(sensor) = pool.sensors.get(pick(pool.sensors.len())) {
            self.sensor = *sensor;
        }
        if let Some(people) = pool.people.get(pick(pool.people.len())) {
            self.subject.people = *people;
        }
        if let Some(task) = pool.tasks.get(pick(pool.tasks.len())) {
            self.task = task.clone();
        }
    }
}
