//! The schema of scenario files and the table of all fields: what they say is what the reader takes. `tests/reference/schema.py`
//! holds the schema against somebody else's validator.

mod command;

use command::{dicrotic, error_of, scratch, told};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::fields::{File, schema, table};
use dicrotic::scenario::plan::Plan;
use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;

const HEAD: &str = "id = \"x\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

/// What the reader says that it knows, where it meets a field that it does not, in a table.
fn known(text: &str, read: fn(&str) -> String) -> BTreeSet<String> {
    let error = read(text);
    let list = error.split("expected one of ").nth(1).or_else(|| error.split("; expected ").nth(1));
    let list = list.unwrap_or_else(|| panic!("{text}: {error}"));
    list.split('`').skip(1).step_by(2).map(str::to_string).collect()
}

fn names(file: File, table_path: &str) -> BTreeSet<String> {
    let rows = table(file);
    let inner = rows.iter().filter_map(|row| {
        let rest = match table_path {
            "" => row.path.as_str(),
            path => row.path.strip_prefix(path)?.strip_prefix('.')?,
        };
        (!rest.contains('.')).then(|| rest.trim_end_matches("[]").to_string())
    });
    inner.collect()
}

/// Every table of a file has in the schema just the fields that the reader knows there.
#[test]
fn the_schema_has_the_fields_that_the_reader_knows() {
    let read = |text: &str| Scenario::read(text).expect_err(text).to_string();
    let mut tables = BTreeSet::from([String::new()]);
    for row in table(File::Scenario) {
        if let Some((before, _)) = row.path.rsplit_once('.') {
            tables.insert(before.to_string());
        }
    }
    assert!(tables.len() > 15, "{tables:?}");
    for path in &tables {
        // `bench.place[]` as `[bench]` and `[[bench.place]]`: what stands behind the unknown field does not matter.
        let (plain, listed) = (path.replace("[]", ""), path.ends_with("[]"));
        let text = match (path.is_empty(), listed) {
            (true, _) => format!("colour = 1\n{HEAD}"),
            (_, true) => format!("{HEAD}[[{plain}]]\ncolour = 1\n"),
            // An attempt's expectation lies in a list.
            _ if plain.starts_with("attempt.") => format!("{HEAD}[[attempt]]\n[{plain}]\ncolour = 1\n"),
            _ => format!("{HEAD}[{plain}]\ncolour = 1\n"),
        };
        assert_eq!(names(File::Scenario, path), known(&text, read), "[{path}]");
    }
    let read = |text: &str| Plan::outline(text).expect_err(text).to_string();
    assert_eq!(names(File::Course, ""), known("colour = 1", read));
    assert_eq!(names(File::Course, "course"), known("[course]\ncolour = 1", read));
    assert_eq!(names(File::Course, "part[]"), known("[[part]]\ncolour = 1", read));
}

/// Whoever adds a field gives it words.
#[test]
fn every_field_has_words_and_no_link_is_left_in_them() {
    for row in [File::Scenario, File::Course].into_iter().flat_map(table) {
        assert!(row.about.len() > 3 && !row.about.contains("crate::"), "{row:?}");
        assert!(!row.about.contains("](") && !row.about.contains("[`"), "{row:?}");
        assert!(!row.kind.is_empty() && !row.kind.contains("null"), "{row:?}");
    }
    let row = |path: &str| table(File::Scenario).into_iter().find(|row| row.path == path).unwrap();
    let level = row("level");
    assert_eq!((level.kind.as_str(), level.needed, level.usual.as_str()), ("whole number", true, ""));
    let hum = row("pass.hum_ratio");
    assert_eq!((hum.kind.as_str(), hum.needed, hum.usual.as_str()), ("number", false, "0.1"));
    assert_eq!(row("fault[].severity").kind, "number or 2 of number");
    assert_eq!(row("sensor.kind").kind, "\"ceramic\", \"film\", \"optical\"");
}

/// What is left out is what the table says.
#[test]
fn what_is_left_out_is_what_the_reader_puts_there() {
    let read: Value = serde_json::to_value(Scenario::read(HEAD).unwrap()).unwrap();
    let drawn = format!("{HEAD}\nname_faults = true\n[pool]\nlook_alike = \"moving\"\n");
    let pooled: Value = serde_json::to_value(Scenario::read(&drawn).unwrap()).unwrap();
    let compared = format!(
        "{HEAD}\n[experiment]\nquestion = \"q\"\nmeasures = [\"rate\"]\n\
         [[experiment.condition]]\nid = \"a\"\nlabel = \"A\"\nat_start = true\n\
         [[experiment.condition]]\nid = \"b\"\nlabel = \"B\"\nbegins = [{{ do = \"strap_on\" }}]\n"
    );
    let compared: Value = serde_json::to_value(Scenario::read(&compared).unwrap()).unwrap();
    let rows = table(File::Scenario);
    let told: Vec<_> = rows.iter().filter(|row| !row.usual.is_empty() && !row.path.contains("[]")).collect();
    assert!(told.len() > 30, "{}", told.len());
    for row in told {
        let pointer = format!("/{}", row.path.replace('.', "/"));
        let usual: Value = serde_json::from_str(&row.usual).unwrap();
        // Without an assignment there is none of its fields, and without a pool or an experiment none of theirs.
        let from = match row.path.split('.').next() {
            Some("pool") => &pooled,
            Some("experiment") => &compared,
            _ => &read,
        };
        let found = from.pointer(&pointer).cloned();
        assert!(row.path.starts_with("assignment.") || found == Some(usual), "{row:?}: {found:?}");
    }
}

#[test]
fn the_command_writes_both_and_never_over_a_folder() {
    let folder = scratch("schema");
    let path = |name: &str| folder.join(name).display().to_string();
    told(&mut dicrotic(&["schema", "--out", &path("s.json")]));
    let written: Value = serde_json::from_str(&fs::read_to_string(path("s.json")).unwrap()).unwrap();
    assert_eq!(written, schema(File::Scenario));
    assert_eq!(written["$schema"], "https://json-schema.org/draft/2020-12/schema");
    let printed: Value = serde_json::from_str(&told(&mut dicrotic(&["schema", "--course"]))).unwrap();
    assert_eq!(printed, schema(File::Course));
    let text = told(&mut dicrotic(&["schema", "--table"]));
    assert_eq!(text.lines().count(), table(File::Scenario).len() + 2);
    assert!(text.contains("| fault[].name | text | yes |"), "{text}");
    error_of(&mut dicrotic(&["schema", "--out", &folder.display().to_string()]));
}
