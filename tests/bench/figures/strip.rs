//! Decimation: lowest and highest value of each column of pixels.

use dicrotic::chain::Chain;
use dicrotic::recording::Recording;
use dicrotic::trace::columns::of_recording;
use dicrotic::trace::frame::Frame;
use dicrotic::trace::live::Live;

use crate::{HUM, config, quantiles, told};

pub fn run() {
    let mut codes = Vec::new();
    Chain::new(config(HUM), 1).expect("its settings").fill(600_000, &mut codes);
    for (what, seconds) in [("10 s", 10_usize), ("10 min", 600), ("2 h", 7200)] {
        let mut recording = Recording::new(1000.0);
        recording.mark_span(1e-6, 0.0, 16);
        for k in 0..seconds.div_ceil(600) {
            recording.push(&codes[..(seconds - 600 * k).min(600) * 1000]);
        }
        let frame = Frame::new(1600.0, 600.0, 1.0).showing(0.0, seconds as f64, -0.05, 0.05);
        let took = quantiles(499, || assert!(!of_recording(&recording, &frame).is_empty()));
        told(&format!("decimation of {what} at 1 kHz to 1,600 columns, native"), &both(took));
    }
    // A frame at 60 frames a second.
    let mut live = Live::new(1000.0);
    let frame = Frame::new(1600.0, 600.0, 1.0).showing(0.0, 10.0, -0.05, 0.05);
    let mut from = codes.chunks_exact(17).cycle();
    let took = quantiles(5000, || {
        live.push(from.next().unwrap_or_default(), 1e-6);
        assert!(!live.fresh(&frame).is_empty());
    });
    told("new columns of a live frame, native", &both(took));
}

fn both((median, p99): (f64, f64)) -> String {
    format!("median {:.4} ms, p99 {:.4} ms", 1000.0 * median, 1000.0 * p99)
}
