//! European Data Format. The first eight bytes are put right, so that every input is taken for one.
#![no_main]
use dicrotic::exchange::{Options, import};
use libfuzzer_sys::fuzz_target;

mod opened;

fuzz_target!(|bytes: &[u8]| {
    let mut bytes = bytes.to_vec();
    if bytes.len() > 8 && bytes[0] != 0xff {
        bytes[..8].copy_from_slice(b"0       ");
    }
    for channel in [None, Some("2")] {
        if let Ok(read) = import(&[("a.edf".into(), bytes.clone())], &Options { rate_hz: None, channel }) {
            opened::look(&read);
        }
    }
});
