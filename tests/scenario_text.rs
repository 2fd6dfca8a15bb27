//! The text of a scenario file as a plain value, and where in it a complaint belongs.

use dicrotic::scenario::Scenario;
use dicrotic::scenario::text::value_of;
use dicrotic::session::Action;
use serde_json::json;

const LEAST: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

#[test]
fn a_complaint_is_told_at_its_innermost_part_and_line() {
    for (extra, field, line) in [
        // Two of the same kind: the first in the order of names.
        ("[recorder]\nrange_v = \"x\"\nlow_pass_hz = \"x\"\n", "recorder.low_pass_hz", 8),
        ("[[fault]]\nname = \"power_strip_off\"\n[[fault]]\nname = 7\n", "fault[1].name", 9),
        ("[[fault]]\nname = \"power_strip_off\"\n[[fault]]\nseverity = 0.5\n", "fault[1].name", 8),
        (
            "[bench]\nplace = [\n  { part = \"recorder\", x = 3.0, y = 4.0 },\n  { part = \"recorder\", y = 4.0 },\n]\n",
            "bench.place[1].x",
            9,
        ),
        ("[[attempt]]\nname = \"a\"\nseed = 1\n", "attempt[0].expect", 6),
        ("[subject]\nage_years = nan\n", "subject.age_years", 7),
        ("[subject]\nage_years = -inf\n", "subject.age_years", 7),
        ("[power_line]\nhz = 1979-05-27\n", "power_line.hz", 7),
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

/// A file of an older version is told what its names are called now, wherever they stand.
#[test]
fn an_old_name_is_told_the_new_one() {
    for (extra, old, new) in [
        ("[pad]\nkind = \"film\"\n".to_string(), "pad", "sensor"),
        ("[mains]\nhz = 60.0\n".to_string(), "mains", "power_line"),
        ("[bench]\nfinds_unit = false\n".to_string(), "finds_unit", "finds_recorder"),
        ("[bench]\nstrip_on = false\n".to_string(), "strip_on", "power_strip_on"),
        ("[bench]\nplace = [{ part = \"lead1\", x = 3.0, y = 4.0 }]\n".to_string(), "lead1", "cable1"),
        ("[bench]\nplug = [{ end = \"mains_wall\" }]\n".to_string(), "mains_wall", "power_wall"),
        (
            "[bench]\nplug = [{ end = \"sensor\", socket = \"unit_data\" }]\n".to_string(),
            "unit_data",
            "recorder_data",
        ),
        ("[bench.strap]\nface = \"away\"\n".to_string(), "face", "side"),
        ("[trouble]\nlead_break = 0.5\n".to_string(), "lead_break", "cable_break"),
        ("[task]\nkind = \"clean_stretch\"\n".to_string(), "clean_stretch", "clean_part"),
        ("[assignment]\nkey = \"k\"\nword = \"chalk and slate\"\n".to_string(), "word", "password"),
        ("[[fault]]\nname = \"lead_on_strip\"\n".to_string(), "lead_on_strip", "cable_on_power_strip"),
        (
            "name_faults = true\n[task]\nkind = \"name_fault\"\none_of = [\"held\", \"unit_off\"]\n"
                .to_string(),
            "held",
            "paused",
        ),
    ] {
        let error = Scenario::read(&format!("{LEAST}{extra}")).unwrap_err().to_string();
        assert!(error.contains(old) && error.contains("is called") && error.contains(new), "{old}: {error}");
    }
    for (action, old, new) in [
        (json!({"do": "tap_pad"}), "tap_pad", "tap_sensor"),
        (json!({"do": "open_take", "take": 0}), "open_take", "open_recording"),
        (json!({"do": "label", "take": 0, "text": ""}), "take", "recording"),
        (json!({"do": "show", "mode": "hold"}), "hold", "paused"),
        (json!({"do": "switch", "id": "unit", "on": true}), "unit", "recorder"),
    ] {
        let error = Action::from_value(action).unwrap_err().to_string();
        assert!(error.contains(old) && error.contains("is called") && error.contains(new), "{old}: {error}");
    }
    // What never had another name is only unknown.
    let error = Scenario::read(&format!("{LEAST}[bench]\nstrips = 2\n")).unwrap_err().to_string();
    assert!(error.contains("unknown field") && !error.contains("is called"), "{error}");
}
