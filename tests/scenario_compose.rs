//! Scenarios written as files: every one of the project's comes back as it was, in stable order, and links carry the same.

use dicrotic::scenario::Scenario;
use dicrotic::scenario::assignment::{digest, minimised};
use dicrotic::scenario::compose::of_json;
use dicrotic::scenario::text::value_of;
use serde_json::json;

fn project() -> Vec<(String, String)> {
    let mut files: Vec<_> = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios"))
        .unwrap()
        .map(|f| f.unwrap().path())
        .filter(|p| p.extension().is_some_and(|e| e == "toml"))
        .collect();
    files.sort();
    files.iter().map(|p| (p.display().to_string(), std::fs::read_to_string(p).unwrap())).collect()
}

#[test]
fn every_scenario_comes_back_as_it_was_but_for_its_scripts() {
    let files = project();
    assert!(files.len() > 40);
    for (name, text) in files {
        let mut scenario = Scenario::read(&text).unwrap();
        scenario.attempt.clear();
        let written =
            of_json(&value_of(&text).unwrap().to_string()).unwrap_or_else(|e| panic!("{name}: {e}"));
        assert_eq!(Scenario::read(&written).unwrap(), scenario, "{name}\n{written}");
        assert_eq!(of_json(&value_of(&written).unwrap().to_string()).unwrap(), written, "{name}");
        // The whole scenario, with all that is as usual, is the same scenario.
        let whole = of_json(&serde_json::to_string(&scenario).unwrap()).unwrap();
        assert_eq!(Scenario::read(&whole).unwrap(), scenario, "{name}\n{whole}");
    }
}

#[test]
fn awkward_texts_come_back() {
    for text in [
        "\"\"\" quotes \" and \\ back",
        "line\nline\n\n# no comment\nend",
        "\ttab \u{7f} \u{1}",
        "'''",
        "é 心 \u{1f493}",
        "</script>",
        "ends with \"\"",
        "\n\n\nlate",
    ] {
        let mut scenario = Scenario::read(&project()[0].1).unwrap();
        scenario.brief = format!("a{text}b");
        scenario.attempt.clear();
        let written = of_json(&serde_json::to_string(&scenario).unwrap()).unwrap();
        assert_eq!(Scenario::read(&written).unwrap_or_else(|e| panic!("{e}\n{written}")), scenario);
        let short = minimised(&written);
        assert_eq!(Scenario::read(&short).unwrap(), scenario);
    }
}

#[test]
fn comments_and_blank_lines_do_not_change_what_a_scenario_is() {
    let text =
        "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n[assignment]\nkey = \"k\"\n";
    let with = format!("# A comment\r\n\r\n{}\n# End\n", text.replace('\n', "  \r\n\r\n"));
    assert_eq!(minimised(&with), text);
    assert_eq!(digest(&with), digest(text));
    assert_ne!(digest(&text.replace("\"k\"", "\"l\"")), digest(text));
    // Inside a text of several lines nothing is taken away.
    let verse = text.replace("\"b\"", "\"\"\"\none\n\n# two\n\"\"\"");
    assert_eq!(minimised(&verse), verse);
}

#[test]
fn an_assignment_that_cannot_be_is_refused_with_its_field() {
    let base = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n[assignment]\n";
    for (rest, part) in [
        ("key = \"\"", "assignment.key"),
        ("key = \"a\\nb\"", "assignment.key"),
        ("key = \"k\"\nattempts = 0", "assignment.attempts"),
        ("key = \"k\"\nattempts = 100", "assignment.attempts"),
        ("key = \"k\"\nseeds = \"some\"", "assignment.seeds"),
        ("key = \"k\"\nteacher = \"x\"", "teacher"),
    ] {
        let error = Scenario::read(&format!("{base}{rest}\n")).unwrap_err().to_string();
        assert!(error.contains(part), "{error}, not {part}");
    }
    for (json, part) in [
        (json!({"id": "a"}), "level"),
        (json!([1]), "JSON"),
        (json!({"id": "a\nlevel = 1", "level": 1, "title": "t", "aim": "a", "brief": "b"}), "id"),
        (json!({"id": "a", "level": 1, "title": "t", "aim": "a", "brief": "b", "recorder": 3}), "recorder"),
        (json!({"id": "a", "level": 1, "title": "t", "aim": "a", "brief": "b", "x]\n[y": {"z": 1}}), "x]"),
    ] {
        let error = of_json(&json.to_string()).unwrap_err().to_string();
        assert!(error.contains(part), "{error}, not {part}");
    }
}
