//! The beat detector on a simulated pulse. The same samples are written for tests/bench/peers.py, as little-endian
//! 64-bit floats, V: `pulse-RATE.f64` of 300 s, and `pulse-1000-long.f64` of 3,000 s, whose first 300 s are the same.

use std::path::Path;

use dicrotic::chain::Chain;
use dicrotic::measure::detect::detect;
use dicrotic::recorder::converter;

use crate::{GOOD, config, median, told};

const SECONDS: usize = 300;

pub fn run() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).parent().expect("the target folder").join("bench");
    std::fs::create_dir_all(&folder).expect("a folder for the samples");
    for rate in [100, 250, 1000] {
        let x = pulse(rate, SECONDS);
        write(&folder.join(format!("pulse-{rate}.f64")), &x);
        line(&x, rate, SECONDS);
    }
    let x = pulse(1000, 10 * SECONDS);
    write(&folder.join("pulse-1000-long.f64"), &x);
    line(&x[..30 * 1000], 1000, 30);
    line(&x, 1000, 10 * SECONDS);
}

fn line(x: &[f64], rate: u32, seconds: usize) {
    let took =
        median(if seconds > 1000 { 9 } else { 51 }, || assert!(!detect(x, f64::from(rate)).is_empty()));
    let each = took / x.len() as f64 * 1e9;
    // peers.py reads this line.
    told(
        &format!("detector, {seconds} s at {rate} Hz, native"),
        &format!("{:.3} ms, {each:.1} ns a sample", 1000.0 * took),
    );
}

/// A good trace, V.
fn pulse(rate: u32, seconds: usize) -> Vec<f64> {
    let mut config = config(GOOD);
    config.recorder.rate_hz = rate;
    let code_v = converter::code_v(config.recorder.range_v);
    let mut chain = Chain::new(config, 1).expect("its settings");
    let mut codes = Vec::new();
    chain.fill(rate as usize * seconds, &mut codes);
    codes.iter().map(|c| f64::from(*c) * code_v).collect()
}

fn write(file: &Path, x: &[f64]) {
    let bytes: Vec<u8> = x.iter().flat_map(|v| v.to_le_bytes()).collect();
    std::fs::write(file, bytes).expect("the samples can be written");
}
