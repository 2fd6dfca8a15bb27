//! The page's words for the fault catalogue: complete, and none left over.

use dicrotic::scenario::Scenario;
use dicrotic::scenario::fault;
use serde_json::Value;
use std::collections::BTreeSet;

const FIELDS: [&str; 6] = ["cause", "model", "name", "remedy", "seen", "test"];

fn words() -> serde_json::Map<String, Value> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/www/texts/faults.en.json");
    let text = std::fs::read_to_string(path).unwrap();
    let Value::Object(words) = serde_json::from_str(&text).unwrap() else { panic!("{path}: not an object") };
    words
}

fn is_text(value: &Value) -> bool {
    value.as_str().is_some_and(|s| !s.trim().is_empty() && s.trim() == s)
}

#[test]
fn every_fault_has_all_its_words_and_no_words_are_left_over() {
    let words = words();
    let mut wanted: BTreeSet<&str> = fault::all().map(|f| f.id).collect();
    assert!(!wanted.is_empty());
    for id in &wanted {
        let entry = words.get(*id).unwrap_or_else(|| panic!("no words for {id}"));
        let fields: Vec<&str> = entry.as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(BTreeSet::from_iter(fields), BTreeSet::from(FIELDS), "{id}");
        for field in FIELDS {
            assert!(is_text(&entry[field]), "{id}.{field}");
        }
        // A name stands in a list to choose from; a cause is one sentence.
        assert!(entry["name"].as_str().unwrap().chars().count() <= 40, "{id}.name");
        assert!(entry["cause"].as_str().unwrap().ends_with('.'), "{id}.cause");
        assert_eq!(entry["cause"].as_str().unwrap().matches(". ").count(), 0, "{id}.cause");
    }
    wanted.insert("impressions");
    let there: BTreeSet<&str> = words.keys().map(String::as_str).collect();
    assert_eq!(there, wanted);
}

#[test]
fn every_impression_has_a_name_and_no_name_is_left_over() {
    let words = words();
    let names = words["impressions"].as_object().unwrap();
    let used: BTreeSet<String> = fault::all()
        .map(|f| serde_json::to_value(f.impression).unwrap().as_str().unwrap().to_string())
        .collect();
    let there: BTreeSet<String> = names.keys().cloned().collect();
    assert_eq!(there, used);
    assert!(names.values().all(is_text));
}

#[test]
fn no_two_faults_share_a_name() {
    let words = words();
    let names: BTreeSet<String> =
        fault::all().map(|f| words[f.id]["name"].as_str().unwrap().to_lowercase()).collect();
    assert_eq!(names.len(), fault::all().count());
}

/// Where the student is to name the fault, nothing that can be read before tells it.
#[test]
fn no_brief_gives_its_fault_away() {
    let words = words();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let mut looked_at = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "toml") {
            continue;
        }
        let scenario = Scenario::read(&std::fs::read_to_string(&path).unwrap()).unwrap();
        for spec in scenario.fault.iter().filter(|_| scenario.name_faults) {
            looked_at += 1;
            let told = format!("{} {} {} {}", scenario.id, scenario.title, scenario.aim, scenario.brief)
                .to_lowercase();
            let id = spec.name.replace('_', "-");
            let name = words[&spec.name]["name"].as_str().unwrap().to_lowercase();
            assert!(!told.contains(&id) && !told.contains(&name), "{}: {name}", path.display());
        }
    }
    assert!(looked_at >= 25, "{looked_at}");
}
