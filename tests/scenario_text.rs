//! The text of a scenario file as a plain value, and where in it a complaint belongs.

use dicrotic::scenario::Scenario;
use dicrotic::scenario::text::value_of;

const LEAST: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

#[test]
fn a_complaint_is_told_at_its_innermost_part_and_line() {
    for (extra, field, line) in [
        // Two of the same kind: the first in the order of names.
        ("[recorder]\nrange_v = \"x\"\nlow_pass_hz = \"x\"\n", "recorder.low_pass_hz", 8),
        ("[[fault]]\nname = \"strip_off\"\n[[fault]]\nname = 7\n", "fault[1].name", 9),
        ("[[fault]]\nname = \"strip_off\"\n[[fault]]\nseverity = 0.5\n", "fault[1].name", 8),
        (
            "[bench]\nplace = [\n  { part = \"unit\", x = 3.0, y = 4.0 },\n  { part = \"unit\", y = 4.0 },\n]\n",
            "bench.place[1].x",
            9,
        ),
        ("[[attempt]]\nname = \"a\"\nseed = 1\n", "attempt[0].expect", 6),
        ("[subject]\nage_years = nan\n", "subject.age_years", 7),
        ("[subject]\nage_years = -inf\n", "subject.age_years", 7),
        ("[mains]\nhz = 1979-05-27\n", "mains.hz", 7),
        ("[bench.strap]\ntightness = [1.0, { a = 99999999999999999999 }]\n", "bench.strap.tightness[1].a", 7),
    ] {
        let error = Scenario::read(&format!("{LEAST}{extra}")).unwrap_err();
        assert_eq!((error.field.as_str(), error.line), (field, Some(line)), "{error}");
        assert!(!error.found.is_empty() && !error.expected.is_empty(), "{error}");
    }
}

#[test]
fn numbers_of_every_writing_mean_the_same() {
    let value = value_of("a = 1_000\nb = 0x3e8\nc = 1_000.0\nd = 1e3\ne = +1000\n").unwrap();
    for key in ["a", "b", "c", "d", "e"] {
        assert_eq!(value[key].as_f64(), Some(1000.0), "{key}");
    }
}
