//! A table of text.
#![no_main]
use dicrotic::exchange::{Options, import};
use libfuzzer_sys::fuzz_target;

mod opened;

fuzz_target!(|bytes: &[u8]| {
    for rate_hz in [None, Some(100.0)] {
        if let Ok(read) = import(&[("a.csv".into(), bytes.to_vec())], &Options { rate_hz, channel: None }) {
            opened::look(&read);
        }
    }
});
