//! The bench of a scenario file as it is found, running without anybody touching it.

use std::path::Path;

use dicrotic::chain::Chain;
use dicrotic::scenario::Scenario;

use crate::failure::{Failure, While};
use crate::text_file;

/// Reads a scenario file and sets its bench up; `rate_hz` in the place of the file's sampling rate.
pub fn start(file: &Path, seed: u64, rate_hz: Option<u32>) -> Result<Chain, Failure> {
    let text = text_file::read(file)?;
    let here = || file.display().to_string();
    let scenario = Scenario::read(&text).while_doing(here)?;
    let mut config = scenario.config().while_doing(here)?;
    if let Some(rate_hz) = rate_hz {
        config.recorder.rate_hz = rate_hz;
    }
    Chain::new(config, seed).map_err(|bad| {
        Failure::new(format!(
            "{}: the recorder's {} must be one of {}",
            file.display(),
            bad.field,
            bad.expected
        ))
    })
}
