//! What is typed into a blank of the worksheet.
#![no_main]
use dicrotic::assess::parse;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    for read in [parse::number(text), parse::millivolts(text)] {
        if let Ok(value) = read {
            assert!(value.is_finite() && value >= 0.0, "{text:?} is read as {value}");
        }
    }
    let _ = parse::is_quotient(text);
});
