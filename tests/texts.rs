//! The page's words for the fault catalogue: complete, and none left over.

use dicrotic::scenario::Scenario;
use dicrotic::scenario::fault;
use fluent_syntax::ast::{Entry, Pattern, PatternElement};
use std::collections::{BTreeMap, BTreeSet};

const FIELDS: [&str; 5] = ["cause", "model", "remedy", "seen", "test"];

/// The catalogue's words: message or `message.attribute` to text.
fn words() -> BTreeMap<String, String> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/www/texts/en/later/faults.ftl");
    let text = std::fs::read_to_string(path).unwrap();
    let resource = fluent_syntax::parser::parse(text.as_str()).map_err(|(_, errors)| errors).unwrap();
    let plain = |pattern: &Pattern<&str>| -> String {
        pattern
            .elements
            .iter()
            .map(|element| match element {
                PatternElement::TextElement { value } => *value,
                PatternElement::Placeable { .. } => panic!("{path}: these words have no places"),
            })
            .collect()
    };
    let mut words = BTreeMap::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        let id = message.id.name;
        if id.starts_with("atlas-") {
            continue; // words around the cards' pictures, not of a fault
        }
        words.extend(message.value.as_ref().map(|value| (id.to_string(), plain(value))));
        for attribute in &message.attributes {
            words.insert(format!("{id}.{}", attribute.id.name), plain(&attribute.value));
        }
    }
    words
}

fn is_text(value: &str) -> bool {
    !value.trim().is_empty() && value.trim() == value
}

#[test]
fn every_fault_and_impression_has_all_its_words_and_no_words_are_left_over() {
    let words = words();
    let mut wanted = BTreeSet::new();
    for fault in fault::all() {
        let name = format!("entry-{}", fault.id);
        wanted.extend(FIELDS.map(|field| format!("{name}.{field}")));
        wanted.insert(name);
        wanted.insert(format!(
            "impression-{}",
            serde_json::to_value(fault.impression).unwrap().as_str().unwrap()
        ));
    }
    assert!(wanted.len() > 6 * 50);
    assert_eq!(words.keys().cloned().collect::<BTreeSet<_>>(), wanted);
    assert!(words.values().all(|text| is_text(text)));
    for fault in fault::all() {
        let (name, cause) =
            (&words[&format!("entry-{}", fault.id)], &words[&format!("entry-{}.cause", fault.id)]);
        // A name stands in a list to choose from; a cause is one sentence.
        assert!(name.chars().count() <= 40, "{name}");
        assert!(cause.ends_with('.') && !cause.contains(". "), "{cause}");
    }
}

#[test]
fn no_two_faults_share_a_name() {
    let words = words();
    let names: BTreeSet<String> =
        fault::all().map(|f| words[&format!("entry-{}", f.id)].to_lowercase()).collect();
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
        for fault in scenario.possible().iter().map(|f| &f.name).filter(|_| scenario.name_faults) {
            looked_at += 1;
            let told = format!("{} {} {} {}", scenario.id, scenario.title, scenario.aim, scenario.brief)
                .to_lowercase();
            let id = fault.replace('_', "-");
            let name = words[&format!("entry-{}", fault)].to_lowercase();
            assert!(!told.contains(&id) && !told.contains(&name), "{}: {name}", path.display());
        }
    }
    assert!(looked_at >= 25, "{looked_at}");
}

/// The page knows its languages before it has asked for anything.
#[test]
fn the_page_lists_the_languages_that_there_are() {
    let www = concat!(env!("CARGO_MANIFEST_DIR"), "/www");
    let page = std::fs::read_to_string(format!("{www}/index.html")).unwrap();
    let listed = page.split("data-languages=\"").nth(1).unwrap().split('"').next().unwrap();
    let listed: BTreeSet<String> = listed.split(' ').map(str::to_string).collect();
    let folders = std::fs::read_dir(format!("{www}/texts")).unwrap();
    let there: BTreeSet<String> =
        folders.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    assert!(there.contains("en"));
    assert_eq!(listed, there);
}

/// A hint that names a test says what to do, for each test of each fault, in both languages.
#[test]
fn each_test_that_a_hint_may_name_has_words() {
    // Those that are worded with what they are done to.
    const WITH_NAMES: [&str; 5] = ["look", "wiggle", "plug", "move", "switch"];
    for language in ["en", "es"] {
        let folder = format!("{}/www/texts/{language}", env!("CARGO_MANIFEST_DIR"));
        let all: String = ["bench.ftl", "later/after.ftl"]
            .map(|file| std::fs::read_to_string(format!("{folder}/{file}")).unwrap())
            .concat();
        for fault in fault::all() {
            for told in fault.tests.iter().map(|test| test.told()) {
                let deed = told["do"].as_str().unwrap();
                let has = |key: String| all.lines().any(|line| line.starts_with(&format!("{key} =")));
                assert!(
                    WITH_NAMES.contains(&deed)
                        || has(format!("list-{deed}"))
                        || has(format!("hint-do-{deed}")),
                    "{language}, {}: {deed}",
                    fault.id
                );
            }
        }
    }
}

/// How like people the simulated ones are stands in two places, which say the same.
#[test]
fn the_figures_of_likeness_are_the_same_in_both_places() {
    let root = env!("CARGO_MANIFEST_DIR");
    let read = |file: &str| std::fs::read_to_string(format!("{root}/{file}")).unwrap();
    let after = |text: &str, head: &str| text.split_once(head).unwrap().1.to_string();
    let (readme, module) = (
        after(&read("README.md"), "The simulated people were compared"),
        after(&read("src/physiology/mod.rs"), "How like people"),
    );
    let figures = |text: &str| -> Vec<String> {
        let words = text.split(|c: char| !(c.is_ascii_digit() || c == '.')).map(|w| w.trim_end_matches('.'));
        words.filter(|w| w.len() == 4 && w.starts_with("0.")).take(4).map(str::to_string).collect()
    };
    let (told, known) = (figures(&readme), figures(&module));
    assert_eq!((told.len(), &told), (4, &known));
}
