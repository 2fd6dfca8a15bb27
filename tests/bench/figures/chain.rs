//! The chain whole: samples a second, and how that holds with ten and a hundred times the samples.

use dicrotic::chain::Chain;
use dicrotic::session::Session;

use crate::{HUM, RESTLESS, config, count, median, told};

/// Seconds of one step of a page, as `Lab::advance` takes them at most.
const STEP_S: f64 = 0.25;

pub fn run() {
    for (what, text) in [("one fault", HUM), ("loose strap and restless hand", RESTLESS)] {
        let mut codes = Vec::new();
        for samples in [10_000, 100_000, 1_000_000] {
            let mut chain = Chain::new(config(text), 1).expect("its settings");
            let took = median(if samples < 1_000_000 { 51 } else { 9 }, || {
                codes.clear();
                chain.fill(samples, &mut codes);
            });
            let speed = samples as f64 / took / 1e6;
            let block = count(samples);
            told(
                &format!("chain, {what}, native, block of {block}"),
                &format!("{speed:.1} million samples/s"),
            );
        }
    }
    // The same work that tests/bench/node.mjs and tests/browser/speed.mjs ask of the core as WebAssembly.
    for samples in [10_000, 100_000, 1_000_000] {
        let mut session = Session::new(HUM, 1).expect("a scenario of the project");
        let took = median(if samples < 1_000_000 { 51 } else { 9 }, || {
            for _ in 0..samples / 250 {
                session.advance(STEP_S);
            }
        });
        let speed = samples as f64 / took / 1e6;
        let name = format!("bench with live strip, native, {} samples", count(samples));
        told(&name, &format!("{speed:.1} million samples/s"));
    }
}
