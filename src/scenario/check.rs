//! What of a scenario must hold by itself, table by table; what must fit together is in [`super::together`].

use super::error::ScenarioError;
use super::fault;
use super::schema::{Scenario, Severity};
use super::script::{LONGEST_WAIT_S, MOST_STEPS};
use super::text;
use crate::assess::task::Reads;

/// Longest scenario file, bytes.
pub const MOST_BYTES: usize = 64 * 1024;

/// Longest time that passes before the student comes, s: a scenario handed in by a stranger must not hold anyone up.
const MOST_BEFORE_S: f64 = 1800.0;

/// Longest time that all scripted attempts of a scenario take together, with what happens before each of them, s. Each is
/// replayed whenever the scenario is checked.
pub const MOST_SCRIPTED_S: f64 = 7200.0;

/// Most faults of one bench.
const MOST_FAULTS: usize = 4;

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
        self.check_heading()?;
        self.check_tables()?;
        self.check_faults()?;
        if let Some(pool) = &self.pool {
            pool.check(self)?;
        }
        self.check_scripts()?;
        if let Some(assignment) = &self.assignment {
            assignment.check()?;
        }
        self.build_bench()?;
        super::together::check(self)
    }

    fn check_heading(&self) -> Result<(), ScenarioError> {
        check_id("id", &self.id)?;
        if !(1..=9).contains(&self.level) {
            return Err(ScenarioError::at("level", self.level, "a whole number from 1 to 9"));
        }
        for (field, text, most) in
            [("title", &self.title, 80), ("aim", &self.aim, 400), ("brief", &self.brief, 2000)]
        {
            check_text(field, text, most)?;
        }
        Ok(())
    }

    fn check_tables(&self) -> Result<(), ScenarioError> {
        if ![50.0, 60.0].contains(&self.power_line.hz) {
            return Err(ScenarioError::at("power_line.hz", self.power_line.hz, "50 or 60"));
        }
        if !(self.power_line.volts.is_finite() && (90.0..=260.0).contains(&self.power_line.volts)) {
            return Err(ScenarioError::at(
                "power_line.volts",
                self.power_line.volts,
                "a number from 90 to 260",
            ));
        }
        self.subject
            .check()
            .map_err(|e| ScenarioError::at(format!("subject.{}", e.field), e.found, e.expected))?;
        self.recorder
            .check()
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        if !crate::trace::frame::TIME_BASES_S.contains(&self.time_base_s) {
            let list = crate::trace::frame::TIME_BASES_S.map(|t| t.to_string()).join(", ");
            return Err(ScenarioError::at("time_base_s", self.time_base_s, format!("one of {list}")));
        }
        self.pass.check().map_err(|(field, expected)| {
            ScenarioError::at(format!("pass.{field}"), "another value", expected)
        })?;
        self.task.check().map_err(|(field, found, expected)| {
            ScenarioError::at(format!("task.{field}"), found, expected)
        })?;
        if self.task.kind.question().reads == Reads::Nothing && !self.name_faults {
            let expected = "true where the question is to name the fault";
            return Err(ScenarioError::at("name_faults", "false", expected));
        }
        if let Some(experiment) = &self.experiment {
            experiment.check().map_err(|(field, found, expected)| {
                ScenarioError::at(format!("experiment.{field}"), found, expected)
            })?;
        }
        self.trouble.check().map_err(|(field, found)| {
            ScenarioError::at(format!("trouble.{field}"), found, "a number from 0 to 1")
        })?;
        Ok(())
    }

    fn check_faults(&self) -> Result<(), ScenarioError> {
        if self.fault.len() > MOST_FAULTS {
            let found = format!("{} faults", self.fault.len());
            return Err(ScenarioError::at("fault", found, format!("at most {MOST_FAULTS}")));
        }
        if let Some(name) = self.task.one_of.iter().find(|name| fault::named(name).is_none()) {
            let known: Vec<&str> = fault::all().map(|f| f.id).collect();
            let expected = format!("names out of {}", known.join(", "));
            return Err(ScenarioError::at("task.one_of", no_fault(name, &known), expected));
        }
        for (k, spec) in self.fault.iter().enumerate() {
            let here = |field: &str| format!("fault[{k}].{field}");
            if fault::named(&spec.name).is_none() {
                let known: Vec<&str> = fault::all().map(|f| f.id).collect();
                let found = no_fault(&spec.name, &known);
                return Err(ScenarioError::at(here("name"), found, format!("one of {}", known.join(", "))));
            }
            let bounds = spec.severity.map_or([0.0, 1.0], Severity::bounds);
            let good =
                bounds.iter().all(|v| v.is_finite() && (0.0..=1.0).contains(v)) && bounds[0] <= bounds[1];
            if !good {
                let expected = "a number from 0 to 1, or two of them, ascending";
                return Err(ScenarioError::at(here("severity"), format!("{bounds:?}"), expected));
            }
        }
        Ok(())
    }

    fn check_scripts(&self) -> Result<(), ScenarioError> {
        let if_nothing = self.pool.as_ref().map_or(&[][..], |pool| &pool.if_nothing);
        let mut waited = 0.0;
        for (field, steps) in [("before", &self.before[..]), ("pool.if_nothing", if_nothing)] {
            if steps.len() > MOST_STEPS {
                let found = format!("{} steps", steps.len());
                return Err(ScenarioError::at(field, found, format!("at most {MOST_STEPS} steps")));
            }
            waited += waited_of(steps, field)?;
            if waited > MOST_BEFORE_S {
                let found = format!("waits of {waited} s in all");
                return Err(ScenarioError::at(field, found, format!("at most {MOST_BEFORE_S} s of waiting")));
            }
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
        Ok(())
    }
}

/// A name that stands in links and results.
pub(super) fn check_id(field: &str, id: &str) -> Result<(), ScenarioError> {
    let known = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
    if (1..=60).contains(&id.len()) && id.bytes().all(known) {
        return Ok(());
    }
    Err(ScenarioError::at(field, format!("\"{id}\""), "1 to 60 small letters, digits and hyphens"))
}

/// A text that is there, of at most so many characters.
pub(super) fn check_text(field: &str, text: &str, most: usize) -> Result<(), ScenarioError> {
    let length = text.trim().chars().count();
    if (1..=most).contains(&length) {
        return Ok(());
    }
    Err(ScenarioError::at(field, format!("{length} characters"), format!("1 to {most} characters")))
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

/// A name that no fault has, with what it is called now where it is one of an older version.
fn no_fault(name: &str, known: &[&str]) -> String {
    format!("\"{name}\"{}", crate::plain::called_now(name, known))
}
