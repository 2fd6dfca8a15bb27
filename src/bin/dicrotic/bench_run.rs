//! The bench of a scenario file as a student meets it, or as a scripted attempt leaves it; the session is the page's own.

use std::path::Path;

use dicrotic::recorder::settings::Change;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::script::Attempt;
use dicrotic::session::{Action, Refusal, Session};

use crate::failure::{Failure, While};
use crate::{terminal, text_file};

/// A scenario file.
pub struct Read {
    /// Its text.
    pub text: String,
    /// What it says.
    pub scenario: Scenario,
}

/// Reads a scenario file.
pub fn read(file: &Path) -> Result<Read, Failure> {
    let text = text_file::read(file, text_file::SCENARIO)?;
    let scenario = Scenario::read(&text).while_doing(|| terminal::name(file))?;
    Ok(Read { text, scenario })
}

/// The bench that a student of that seed meets: with its faults, and after what happened before. With `rate_hz` the sampling rate
/// is chosen first of all.
pub fn start(file: &Path, read: &Read, seed: u64, rate_hz: Option<u32>) -> Result<Session, Failure> {
    let here = || terminal::name(file);
    let mut session = Session::new(&read.text, seed).while_doing(here)?;
    let chosen = rate_hz.map(|hz| session.act(&Action::Recorder(Change::Rate { hz })));
    match chosen {
        None | Some(Ok(())) => Ok(session),
        Some(Err(Refusal::BadValue { field, expected })) => {
            Err(Failure::new(format!("{}: the recorder's {field} must be one of {expected}", here())))
        }
        Some(Err(refusal)) => Err(Failure::new(format!("{}: --rate: {refusal:?}", here()))),
    }
}

/// The scripted attempt of a name; an unknown name is refused with those that there are.
pub fn attempt<'a>(file: &Path, read: &'a Read, name: &str) -> Result<&'a Attempt, Failure> {
    read.scenario.attempt.iter().find(|attempt| attempt.name == name).ok_or_else(|| {
        let (file, name) = (terminal::name(file), terminal::one_line(name));
        Failure::new(format!("{file}: there is no attempt \"{name}\"; {}", names(&read.scenario)))
    })
}

/// The names of the scripted attempts, in words.
pub fn names(scenario: &Scenario) -> String {
    if scenario.attempt.is_empty() {
        return "the scenario has no scripted attempts".into();
    }
    let names = scenario.attempt.iter().map(|a| format!("\"{}\"", terminal::one_line(&a.name)));
    format!("the attempts are {}", names.collect::<Vec<_>>().join(", "))
}

/// Refuses an assigned bench to whoever does not know its password: `what` would tell more than a student may know.
pub fn opened(file: &Path, scenario: &Scenario, password: Option<&str>, what: &str) -> Result<(), Failure> {
    match &scenario.assignment {
        Some(assignment) if !assignment.is_opened_by(password) => Err(Failure::new(format!(
            "{}: {what} of an assigned scenario only with the instructor's password: --password PASSWORD{}",
            terminal::name(file),
            match (assignment.password.is_empty(), password) {
                (true, _) => "; this assignment has none (assignment.password)",
                (false, Some(_)) => "; the one given is not it",
                (false, None) => "",
            }
        ))),
        _ => Ok(()),
    }
}
