//! A result code: as text, and with the checksum made right so that the inside is reached.
#![no_main]
use dicrotic::exchange::handin::{Handed, Set};
use dicrotic::session::compact::{Code, PREFIX, base64};
use libfuzzer_sys::fuzz_target;
use sha2::{Digest, Sha256};

const SCENARIO: &str = include_str!("../../../scenarios/04-rest-pulse.toml");

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        read(text);
    }
    let mut body = bytes.to_vec();
    let sum = Sha256::digest(&body);
    body.extend(&sum[..4]);
    read(&format!("{PREFIX}{}", base64::write(&body)));
});

fn read(text: &str) {
    let Ok(code) = Code::read(text) else { return };
    let again = Code::read(&code.write()).expect("what was read can be written and read");
    assert_eq!(again.log, code.log);
    assert_eq!((again.seed, again.samples, again.outcome), (code.seed, code.samples, code.outcome));
    if let Ok(handed) = Handed::of_code(text, &Set::default(), |_| Some(SCENARIO.into()))
        && let Ok(mut replay) = handed.begin(&Set::default())
    {
        for _ in 0..4 {
            if !matches!(replay.step(&handed.log, 2048), Ok(false)) {
                break;
            }
        }
    }
}
