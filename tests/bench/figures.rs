//! The core's figures for the table of `tests/bench.sh`: one line each, `name`, `figure`, parted by a tab. Medians of several runs.

use std::time::Instant;

use dicrotic::chain::Chain;
use dicrotic::measure::detect::detect;
use dicrotic::recording::Recording;
use dicrotic::scenario::Scenario;
use dicrotic::session::Session;
use dicrotic::strip::columns::of_recording;
use dicrotic::strip::frame::Frame;

const HUM: &str = include_str!("../../scenarios/02-hum-on-the-strip.toml");

/// Median seconds of `runs` runs after one that warms up.
fn median(runs: usize, mut run: impl FnMut()) -> f64 {
    run();
    let mut took: Vec<f64> = (0..runs)
        .map(|_| {
            let began = Instant::now();
            run();
            began.elapsed().as_secs_f64()
        })
        .collect();
    took.sort_by(f64::total_cmp);
    took[runs / 2]
}

fn main() {
    let config = Scenario::read(HUM).and_then(|s| s.config()).expect("a shipped scenario");
    let mut chain = Chain::new(config, 1).expect("its settings");
    let mut codes = Vec::new();
    for (name, samples) in [
        ("chain, native, 10 s blocks", 10_000),
        ("chain, native, 100 s blocks", 100_000),
        ("chain, native, 1,000 s blocks", 1_000_000),
    ] {
        let took = median(9, || {
            codes.clear();
            chain.fill(samples, &mut codes);
        });
        println!("{name}\t{:.1} million samples/s", samples as f64 / took / 1e6);
    }
    for seconds in [30, 300, 3000] {
        let values: Vec<f64> = codes.iter().cycle().take(seconds * 1000).map(|c| f64::from(*c)).collect();
        let took = median(5, || assert!(!detect(&values, 1000.0).is_empty()));
        println!("detector, {seconds} s at 1 kHz\t{:.1} ms", 1000.0 * took);
    }
    for seconds in [10_usize, 600, 7200] {
        let mut recording = Recording::new(1000.0);
        recording.mark_span(1e-6, 0.0, 16);
        for k in 0..seconds.div_ceil(600) {
            recording.push(&codes[..(seconds - 600 * k).min(600) * 1000]);
        }
        let frame = Frame::new(1600.0, 600.0, 1.0).showing(0.0, seconds as f64, -0.05, 0.05);
        let took = median(99, || assert!(!of_recording(&recording, &frame).is_empty()));
        println!("columns of a strip of {seconds} s at 1 kHz\t{:.3} ms", 1000.0 * took);
    }
    let mut session = Session::new(HUM, 1).expect("a shipped scenario");
    session.run_long(600_000);
    let saved = session.save().expect("a bench can be saved");
    let took = median(5, || assert!(Session::restore(&saved).is_ok()));
    println!("replay of ten minutes\t{:.0} ms, {:.0} a minute a core", 1000.0 * took, 60.0 / took);
}
