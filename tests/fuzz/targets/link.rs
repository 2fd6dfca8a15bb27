//! What stands behind `#a=` and `#c=`: base64url of a raw deflate of the text of a scenario or a course.
#![no_main]
use dicrotic::scenario::Scenario;
use dicrotic::scenario::plan::Plan;
use dicrotic::session::compact::base64;
use flate2::read::DeflateDecoder;
use libfuzzer_sys::fuzz_target;
use std::io::Read;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        if let Ok(packed) = base64::read(text) {
            assert_eq!(base64::write(&packed), text);
            unpacked(&packed);
        }
    }
    let text = base64::write(bytes);
    assert_eq!(base64::read(&text).as_deref(), Ok(bytes));
    unpacked(bytes);
});

fn unpacked(packed: &[u8]) {
    // As the page does it: no more than the core reads.
    let mut text = Vec::new();
    if DeflateDecoder::new(packed).take(64 * 1024 + 1).read_to_end(&mut text).is_ok() {
        if let Ok(text) = String::from_utf8(text) {
            let _ = Scenario::read(&text);
            let _ = Plan::read(&text);
        }
    }
}
