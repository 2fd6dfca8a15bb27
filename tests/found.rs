//! What fuzzing found (tests/fuzz), each made small.

use dicrotic::exchange::{Options, import};
use dicrotic::scenario::plan::Plan;
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

/// A file that only declares its separator, one outside of ASCII, was cut in the middle of a character.
#[test]
fn a_declared_separator_alone_is_an_error_and_no_panic() {
    for text in ["sep=\u{24b}", "sep=;", "sep=", "sep=\u{24b}\r", "sep=;\n"] {
        let files = [("a.csv".to_string(), text.as_bytes().to_vec())];
        for rate_hz in [None, Some(100.0)] {
            let error = import(&files, &Options { rate_hz, channel: None }).unwrap_err();
            assert!(error.to_string().contains("a.csv"), "{error}");
        }
    }
}

/// Four lines, the last of them half a day after the others, were filled up to nine million values.
#[test]
fn a_gap_that_outweighs_its_recording_is_told() {
    let text = "0       1 \n1  0\n7  5550 \n55410488 5 1";
    let files = [("a.csv".to_string(), text.as_bytes().to_vec())];
    let error = import(&files, &Options { rate_hz: None, channel: None }).unwrap_err().to_string();
    assert!(error.contains("without a line"), "{error}");
}

/// A course without a heading or with an empty day lost them when it was written, so that the command line told of a missing field
/// or took the day for none.
#[test]
fn what_is_empty_in_a_course_is_written_and_refused_for_what_it_is() {
    let text = "{\"course\": {\"id\": \"c\", \"title\": \"\"}, \"part\": [{\"opens\": \"\", \"due\": \"\"}]}";
    let outline = Plan::outline(text).unwrap();
    let written = outline.written();
    assert_eq!(Plan::outline(&written).as_ref(), Ok(&outline), "{written}");
    let error = Plan::read(&written).unwrap_err();
    assert_eq!((&error.field[..], &error.found[..]), ("course.title", "0 characters"));
    let titled = Plan::read(&written.replace("title = \"\"", "title = \"t\"")).unwrap_err();
    assert_eq!((&titled.field[..], &titled.found[..]), ("part[0].opens", "\"\""));
}
