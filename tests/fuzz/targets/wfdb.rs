//! A WFDB record of several files: the input is cut at lines of `====`. Also as an archive.
#![no_main]
use dicrotic::exchange::{NamedFile, Options, import, zip};
use libfuzzer_sys::fuzz_target;

mod opened;

fuzz_target!(|bytes: &[u8]| {
    let mut files: Vec<NamedFile> = Vec::new();
    let mut rest = bytes;
    for name in ["a.hea", "a.dat", "a.atr", "b.dat"] {
        let cut = rest.windows(6).position(|w| w == b"\n====\n");
        let (part, after) = cut.map_or((rest, None), |at| (&rest[..at + 1], Some(&rest[at + 6..])));
        files.push((name.into(), part.to_vec()));
        match after {
            Some(after) => rest = after,
            None => break,
        }
    }
    let options = Options { rate_hz: None, channel: None };
    if let Ok(read) = import(&files, &options) {
        opened::look(&read);
    }
    if let Some(packed) = zip::store(&files) {
        assert_eq!(zip::unstore(&packed).as_ref(), Some(&files));
        let _ = import(&[("a.zip".into(), packed)], &options);
    }
    if zip::is_zip(bytes) {
        let _ = import(&[("a.zip".into(), bytes.to_vec())], &options);
    }
});
