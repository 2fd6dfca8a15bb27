//! Scenario files: the ones that ship, and what is said of bad ones.

use dicrotic::scenario::Scenario;
use dicrotic::session::script;

fn shipped() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "toml"))
        .map(|path| (path.display().to_string(), std::fs::read_to_string(&path).unwrap()))
        .collect();
    files.sort();
    assert!(files.len() >= 3);
    files
}

#[test]
fn every_scripted_attempt_ends_as_its_file_says() {
    for (name, text) in shipped() {
        let scenario = Scenario::read(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
        let (good, bad) = (
            scenario.attempt.iter().filter(|a| a.expect.passed).count(),
            scenario.attempt.iter().filter(|a| !a.expect.passed).count(),
        );
        assert!(good >= 1 && bad >= 1, "{name}: a good attempt and a bad one");
        assert_eq!(script::replay_all(&scenario, &text), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn a_script_with_another_expectation_is_reported() {
    let (_, text) = &shipped()[0];
    let wrong = text.replacen("expect = { passed = true", "expect = { passed = false", 1);
    let scenario = Scenario::read(&wrong).unwrap();
    let told = script::replay_all(&scenario, &wrong);
    assert_eq!(told.len(), 1);
    assert!(told[0].contains("expected false"), "{}", told[0]);
}

const LEAST: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

#[test]
fn five_lines_make_a_scenario() {
    Scenario::read(LEAST).unwrap();
}

#[test]
fn a_bad_file_is_told_where_and_what() {
    for (extra, field, expected) in [
        ("[mains]\nhz = 55.0\n", "mains.hz", "50 or 60"),
        ("[mains]\nvolts = \"much\"\n", "mains.volts", "f64"),
        ("[recorder]\nrange_v = 0.3\n", "recorder.range_v", "0.1"),
        ("[recorder]\nspeed = 1\n", "recorder.speed", "one of"),
        ("[trouble]\nunrest = 2.0\n", "trouble.unrest", "from 0 to 1"),
        ("[bench.strap]\ntightness = -1.0\n", "bench.strap.tightness", "from 0 to 1"),
        ("[bench]\nplace = [{ part = \"unit\", x = 500.0, y = 1.0 }]\n", "bench.place[0]", "on the table"),
        ("[bench]\nplace = [{ part = \"sofa\", x = 5.0, y = 1.0 }]\n", "bench.place[0].part", "one of"),
        ("[bench]\nplug = [{ end = \"pad\", socket = \"outlet1\" }]\n", "bench.plug[0]", "can be done"),
        ("[pass]\nwindow_s = 0.0\n", "pass.window_s", "seconds"),
        ("[subject]\nrest_rate_bpm = 9.0\n", "subject.rest_rate_bpm", ""),
        ("time_base_s = 3.0\n", "time_base_s", "one of"),
        ("wobble = 3.0\n", "wobble", "one of"),
        ("[broken\n", "file", "TOML"),
    ] {
        let error = Scenario::read(&format!("{LEAST}{extra}")).unwrap_err();
        assert_eq!(error.field, field, "{error}");
        assert!(error.expected.contains(expected), "{error}");
        assert!(!error.found.is_empty(), "{error}");
    }
    let error =
        Scenario::read(&format!("{LEAST}[bench]\nplace = [{{ part = \"unit\", x = 3.0 }}]\n")).unwrap_err();
    assert_eq!((error.field.as_str(), error.line), ("bench.place[0].y", Some(7)), "{error}");
    let error = Scenario::read("level = 1\n").unwrap_err();
    assert_eq!(error.field, "id", "{error}");
    let error = Scenario::read(&LEAST.replace("level = 1", "level = \"one\"")).unwrap_err();
    assert_eq!((error.field.as_str(), error.line), ("level", Some(2)), "{error}");
    assert!(Scenario::read(&"#".repeat(70_000)).is_err());
}
