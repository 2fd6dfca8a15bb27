//! `fingerprint`: hashes of what the recorder gives, to compare machines by. The page's core has its twin.

use std::path::PathBuf;

use dicrotic::session::heard;

use crate::failure::{Failure, While};
use crate::{bench_run, output, terminal};

/// Most samples: a day at 1 kHz.
const MOST_SAMPLES: u64 = 86_400_000;

/// What is hashed.
pub enum Of {
    /// So many samples of the bench as a student of that seed meets it.
    Bench { seed: u64, samples: u64 },
    /// The scripted attempts, each on its own seed.
    Attempts,
}

/// Prints a line for each file: the hash, or those of its scripted attempts.
pub fn run(scenarios: &[PathBuf], of: &Of) -> Result<(), Failure> {
    for file in scenarios {
        let here = || terminal::name(file);
        let read = bench_run::read(file)?;
        let hashes = match *of {
            Of::Bench { samples, .. } if samples > MOST_SAMPLES => {
                return Err(Failure::new(format!(
                    "--samples must be at most {MOST_SAMPLES}, found {samples}"
                )));
            }
            Of::Bench { seed, samples } => {
                vec![heard::fingerprint(&read.text, seed, samples).while_doing(here)?]
            }
            Of::Attempts => (0..read.scenario.attempt.len())
                .map(|k| heard::fingerprint_of_attempt(&read.text, k).while_doing(here))
                .collect::<Result<_, _>>()?,
        };
        output::print(&format!("{}\n", hashes.join(" ")))?;
    }
    Ok(())
}
