//! `render`: what the recorder would write of a scenario's bench that nobody touches.

use std::path::Path;

use dicrotic::exchange::csv;
use dicrotic::recorder::converter::code_v;

use crate::bench_run;
use crate::failure::Failure;
use crate::text_file;

/// Longest strip, s: it is held in memory.
const LONGEST_S: f64 = 24.0 * 3600.0;

/// Writes `seconds` of samples to `out`, and the true beats to `truth`.
pub fn run(
    scenario: &Path,
    seed: u64,
    seconds: f64,
    rate_hz: Option<u32>,
    out: &Path,
    truth: Option<&Path>,
) -> Result<(), Failure> {
    if !(seconds.is_finite() && seconds > 0.0 && seconds <= LONGEST_S) {
        return Err(Failure::new(format!(
            "--seconds must be above 0 and at most {LONGEST_S}, found {seconds}"
        )));
    }
    let mut chain = bench_run::start(scenario, seed, rate_hz)?;
    let rate = f64::from(chain.settings().rate_hz);
    let mut codes = Vec::new();
    chain.fill((seconds * rate).round() as usize, &mut codes);
    let step_v = code_v(chain.settings().range_v);
    let volts: Vec<f64> = codes.iter().map(|code| f64::from(*code) * step_v).collect();
    text_file::write(out, &csv::write(rate, &volts))?;
    if let Some(truth) = truth {
        let inside = |t: &f64| (0.0..=seconds).contains(t);
        let beats = chain.truth().iter().map(|beat| beat.peak_s).filter(inside);
        text_file::write(truth, &beats.map(|t| format!("{t:.6}\n")).collect::<String>())?;
    }
    Ok(())
}
