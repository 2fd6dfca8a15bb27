//! For the search for what may not be told: what was told as a list of leaves, and an attempt up to its measuring.

use dicrotic::scenario::script::Attempt;
use dicrotic::session::Session;
use dicrotic::session::script::play;
use serde_json::Value;
use std::collections::BTreeMap;

/// Text of the scenario file whose name contains `part`.
pub fn scenario(part: &str) -> String {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let path = std::fs::read_dir(folder)
        .unwrap()
        .map(|e| e.unwrap().path())
        .find(|p| p.file_name().unwrap().to_string_lossy().contains(part))
        .unwrap();
    std::fs::read_to_string(path).unwrap()
}

/// Does what a script does at the bench, up to its first check, without naming, measuring and answering: those carry the truth in.
/// What is refused under another seed is left out.
pub fn play_without_measuring(s: &mut Session, attempt: &Attempt) {
    const MEASURING: [&str; 11] = [
        "cursor",
        "mark",
        "unmark",
        "marks_clear",
        "answer",
        "name",
        "unname",
        "keep_window",
        "keep_clear",
        "zoom",
        "hint",
    ];
    let end = attempt.steps.iter().position(|step| step["do"] == "check").unwrap_or(attempt.steps.len());
    for step in &attempt.steps[..end] {
        if !step["do"].as_str().is_some_and(|name| MEASURING.contains(&name)) {
            drop(play(s, std::slice::from_ref(step)));
        }
    }
}

/// A value at the end of a path.
#[derive(Clone, Debug, PartialEq)]
pub enum Leaf {
    /// A number, also one that stands in a text.
    Number(f64),
    /// A text, or the name of a field.
    Text(String),
}

/// All leaves by their paths. Items of a list share one path.
pub fn leaves(value: &Value) -> BTreeMap<String, Vec<Leaf>> {
    let mut found = BTreeMap::new();
    walk(value, "", &mut found);
    found
}

fn walk(value: &Value, path: &str, found: &mut BTreeMap<String, Vec<Leaf>>) {
    let mut add = |leaf| found.entry(path.to_string()).or_default().push(leaf);
    match value {
        Value::Number(n) => add(Leaf::Number(n.as_f64().unwrap())),
        Value::String(text) => {
            // Digits within a word, as in a hash, are no number.
            let apart = |c: char| !(c.is_ascii_alphanumeric() || c == '.');
            text.split(apart).filter_map(|n| n.parse().ok()).for_each(|n| add(Leaf::Number(n)));
            add(Leaf::Text(text.clone()));
        }
        Value::Array(items) => items.iter().for_each(|item| walk(item, &format!("{path}[]"), found)),
        Value::Object(fields) => {
            for (key, inner) in fields {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                found.entry(path.clone()).or_default().push(Leaf::Text(key.clone()));
                walk(inner, &path, found);
            }
        }
        Value::Null | Value::Bool(_) => {}
    }
}

/// The words of a text; an underscore belongs to a word.
pub fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).filter(|w| !w.is_empty())
}
