//! What fuzzing found (tests/fuzz), each made small.

use dicrotic::exchange::{Options, import};
use dicrotic::session::Session;

/// A flat line of large values was drawn on a range without height.
#[test]
fn a_flat_recording_far_from_zero_has_a_range() {
    for value in ["18008001022", "-18008001022", "1e30", "0", "0.000001"] {
        let files = [("a.csv".to_string(), format!("{value}\n").repeat(30).into_bytes())];
        let read = import(&files, &Options { rate_hz: Some(100.0), channel: None }).unwrap();
        let recorded = &read.recorded;
        let session = Session::of_annotated(&recorded.name, recorded.rate_hz, &recorded.values, &read.notes);
        let (low, high) = session.value_range();
        assert!(low < high, "{value}: {low} to {high}");
    }
}
