//! A result file: read, replayed for a while, compared.
#![no_main]
use dicrotic::exchange::handin::class::sum_up;
use dicrotic::exchange::handin::{Graded, Set, result, table};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let Ok(handed) = result::read(text) else { return };
    let Ok(mut replay) = handed.begin(&Set::default()) else { return };
    for _ in 0..4 {
        match replay.step(&handed.log, 2048) {
            Ok(false) => {}
            Ok(true) => {
                let graded = Graded::of(&handed, &mut replay, &Set::default());
                let line = table::line("a file", &graded, "");
                assert!(!line.contains('\n'), "one result, one line: {line}");
                let _ = serde_json::to_string(&sum_up(&[graded]));
                break;
            }
            Err(_) => break,
        }
    }
});
