//! The core's figures for the table of `tests/bench.sh`: one line each, `name`, `figure`, parted by a tab. Medians of
//! several runs. With arguments only the groups that they name: `chain`, `stages`, `detector`, `strip`, `replay`.
//!
//! - [`chain`]: the chain whole, and how it grows
//! - [`stages`]: its stages by themselves
//! - [`detector`]: the beat detector, and the samples on which the peers are measured
//! - [`trace`]: lowest and highest values of columns
//! - [`replay`]: attempts done again, saved and restored

mod chain;
mod detector;
mod replay;
mod stages;
mod strip;

use std::time::Instant;

use dicrotic::chain::Config;
use dicrotic::scenario::Scenario;

/// A bench with one fault.
pub const HUM: &str = include_str!("../../../scenarios/02-hum-on-the-trace.toml");
/// A bench with a restless hand.
pub const RESTLESS: &str = include_str!("../../../scenarios/03-loose-and-restless.toml");
/// A bench that gives a good trace as it stands.
pub const GOOD: &str = include_str!("../../reference/scenarios/rate-75.toml");

/// What a scenario's chain starts from.
pub fn config(text: &str) -> Config {
    Scenario::read(text).and_then(|s| s.config()).expect("a scenario of the project")
}

/// Median seconds of `runs` runs after one that warms up.
pub fn median(runs: usize, run: impl FnMut()) -> f64 {
    quantiles(runs, run).0
}

/// Median and 99th percentile of the seconds of `runs` runs after one that warms up.
pub fn quantiles(runs: usize, mut run: impl FnMut()) -> (f64, f64) {
    run();
    let mut took: Vec<f64> = (0..runs)
        .map(|_| {
            let began = Instant::now();
            run();
            began.elapsed().as_secs_f64()
        })
        .collect();
    took.sort_by(f64::total_cmp);
    (took[runs / 2], took[(runs * 99 / 100).min(runs - 1)])
}

/// A line of the table.
pub fn told(name: &str, figure: &str) {
    println!("{name}\t{figure}");
}

/// A number of samples with its thousands parted.
pub fn count(n: usize) -> String {
    let digits = n.to_string();
    let first = digits.len() % 3;
    let mut out = digits[..first].to_string();
    for run in digits.as_bytes()[first..].chunks(3) {
        if !out.is_empty() {
            out.push(',');
        }
        out.extend(run.iter().map(|b| char::from(*b)));
    }
    out
}

fn main() {
    // Cargo adds `--bench` of its own.
    let asked: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with("--")).collect();
    let groups: [(&str, fn()); 5] = [
        ("chain", chain::run),
        ("stages", stages::run),
        ("detector", detector::run),
        ("strip", strip::run),
        ("replay", replay::run),
    ];
    for name in &asked {
        assert!(groups.iter().any(|(known, _)| known == name), "no group {name}");
    }
    for (name, run) in groups {
        if asked.is_empty() || asked.iter().any(|a| a == name) {
            run();
        }
    }
}
