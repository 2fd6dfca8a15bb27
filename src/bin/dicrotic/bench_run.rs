//! The bench of a scenario file as it is found, before anybody touches it.

use std::path::Path;

use dicrotic::chain::{Chain, Config};
use dicrotic::recorder::settings::BadValue;
use dicrotic::scenario::Scenario;

use crate::failure::{Failure, While};
use crate::{terminal, text_file};

/// What a scenario file describes; `rate_hz` in the place of the file's sampling rate.
pub fn config(file: &Path, rate_hz: Option<u32>) -> Result<Config, Failure> {
    let text = text_file::read(file)?;
    let here = || terminal::name(file);
    let mut config = Scenario::read(&text).while_doing(here)?.config().while_doing(here)?;
    if let Some(rate_hz) = rate_hz {
        config.recorder.rate_hz = rate_hz;
    }
    Ok(config)
}

/// The bench at the start of a run.
pub fn start(file: &Path, seed: u64, rate_hz: Option<u32>) -> Result<Chain, Failure> {
    Chain::new(config(file, rate_hz)?, seed).map_err(|bad| refused(file, &bad))
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
