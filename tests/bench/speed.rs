//! How fast the core is, native. Figures are printed, never asserted: `bash tests/bench.sh`.

use dicrotic::chain::Chain;
use dicrotic::measure::detect::detect;
use dicrotic::recording::Recording;
use dicrotic::scenario::Scenario;
use dicrotic::session::Session;
use dicrotic::trace::columns::of_recording;
use dicrotic::trace::frame::Frame;
use dicrotic::trace::live::Live;
use divan::Bencher;
use divan::counter::ItemsCount;

const HUM: &str = include_str!("../../scenarios/02-hum-on-the-trace.toml");
const RESTLESS: &str = include_str!("../../scenarios/03-loose-and-restless.toml");

fn main() {
    divan::main();
}

fn chain(text: &str) -> Chain {
    Chain::new(Scenario::read(text).and_then(|s| s.config()).expect("a shipped scenario"), 1)
        .expect("its settings")
}

/// A minute of codes at 1 kHz.
fn minute(text: &str) -> Vec<i16> {
    let mut codes = Vec::new();
    chain(text).fill(60_000, &mut codes);
    codes
}

#[divan::bench(args = ["hum", "restless"])]
fn chain_samples(bencher: Bencher, name: &str) {
    let mut running = chain(if name == "hum" { HUM } else { RESTLESS });
    let mut codes = Vec::new();
    bencher.counter(ItemsCount::new(100_000_usize)).bench_local(|| {
        codes.clear();
        running.fill(100_000, &mut codes);
    });
}

/// Growth with length: ten times the samples should take ten times as long.
#[divan::bench(args = [10, 60, 600])]
fn detector_seconds_of_1_khz(bencher: Bencher, seconds: usize) {
    let codes = minute(HUM);
    let values: Vec<f64> = codes.iter().cycle().take(seconds * 1000).map(|c| f64::from(*c)).collect();
    bencher.counter(ItemsCount::new(values.len())).bench(|| detect(&values, 1000.0));
}

/// Columns of a whole recording: the pyramid keeps it flat.
#[divan::bench(args = [10, 600, 7200])]
fn columns_seconds_of_1_khz(bencher: Bencher, seconds: usize) {
    let codes = minute(HUM);
    let mut recording = Recording::new(1000.0);
    recording.mark_span(1e-6, 0.0, 16);
    for k in 0..seconds.div_ceil(60) {
        recording.push(&codes[..(seconds - 60 * k).min(60) * 1000]);
    }
    let frame = Frame::new(1600.0, 600.0, 1.0).showing(0.0, seconds as f64, -0.05, 0.05);
    bencher.bench(|| of_recording(&recording, &frame));
}

/// The new columns of one frame at 60 frames a second.
#[divan::bench]
fn live_frame_columns(bencher: Bencher) {
    let codes = minute(HUM);
    let mut live = Live::new(1000.0);
    let frame = Frame::new(1600.0, 600.0, 1.0).showing(0.0, 10.0, -0.05, 0.05);
    let mut k = 0;
    bencher.bench_local(|| {
        for _ in 0..17 {
            live.push(&[codes[k % codes.len()]], 1.0);
            k += 1;
        }
        live.fresh(&frame)
    });
}

/// An attempt of ten minutes done again from its log.
#[divan::bench(sample_count = 10)]
fn restore_ten_minutes(bencher: Bencher) {
    let mut session = Session::new(HUM, 1).expect("a shipped scenario");
    session.run_long(600_000);
    let saved = session.save().expect("a bench can be saved");
    bencher.bench(|| Session::restore(&saved));
}
