//! The bench of a scenario file as it is found, before anybody touches it.

use std::path::Path;

use dicrotic::chain::{Chain, Config};
use dicrotic::recorder::settings::BadValue;
use dicrotic::scenario::Scenario;

use crate::failure::{Failure, While};
use crate::{terminal, text_file};

/// What a scenario file describes, and from what a seed's heart is drawn; `rate_hz` in the place of the file's sampling rate.
pub fn config(file: &Path, seed: u64, rate_hz: Option<u32>) -> Result<(Config, u64), Failure> {
    let text = text_file::read(file, text_file::SCENARIO)?;
    let here = || terminal::name(file);
    let scenario = Scenario::read(&text).while_doing(here)?;
    let mut config = scenario.config().while_doing(here)?;
    if let Some(rate_hz) = rate_hz {
        config.recorder.rate_hz = rate_hz;
    }
    Ok((config, scenario.heart(&text, seed)))
}

/// The bench at the start of a run.
pub fn start(file: &Path, seed: u64, rate_hz: Option<u32>) -> Result<Chain, Failure> {
    let (config, heart) = config(file, seed, rate_hz)?;
    Chain::new(config, heart).map_err(|bad| refused(file, &bad))
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

/// The failure for a setting that the recorder does not take.
pub fn refused(file: &Path, bad: &BadValue) -> Failure {
    Failure::new(format!(
        "{}: the recorder's {} must be one of {}",
        terminal::name(file),
        bad.field,
        bad.expected
    ))
}
