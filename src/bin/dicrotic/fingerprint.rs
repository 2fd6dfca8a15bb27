//! `fingerprint`: a hash of a run's samples, to compare machines by. The page's core has its twin.

use std::path::Path;

use dicrotic::chain;

use crate::failure::Failure;
use crate::{bench_run, output};

/// Most samples: a day at 1 kHz.
const MOST_SAMPLES: u64 = 86_400_000;

/// Prints the hash of the first `samples` samples.
pub fn run(scenario: &Path, seed: u64, samples: u64) -> Result<(), Failure> {
    if samples > MOST_SAMPLES {
        return Err(Failure::new(format!("--samples must be at most {MOST_SAMPLES}, found {samples}")));
    }
    let (config, heart) = bench_run::config(scenario, seed, None)?;
    let hash =
        chain::fingerprint(config, heart, samples).map_err(|bad| bench_run::refused(scenario, &bad))?;
    output::print(&format!("{hash}\n"))
}
