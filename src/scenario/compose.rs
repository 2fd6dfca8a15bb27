//! A scenario as the text of a file: always in the same order, a word of comment at each table, so that a person can
//! read and edit it. It is made from and turned into a plain value, field by field as it stands in the file, so that what
//! the file does not say stays unsaid.

use super::error::ScenarioError;
use super::schema::Scenario;
use crate::plain;
use serde_json::{Map, Value};

/// Keys that stand before the first table, in order.
const TOP: [&str; 9] =
    ["id", "level", "title", "aim", "brief", "help", "name_faults", "time_base_s", "before"];
/// Tables in order, each with its comment. A table that is not named here comes after them.
const TABLES: [(&str, &str); 10] = [
    ("assignment", "How it is handed out: the key makes the seeds, together with each student ID."),
    ("task", "What is asked."),
    (
        "pool",
        "What each seed draws from: faults of the catalogue, and whether it may be that nothing is wrong.",
    ),
    ("subject", "The subject; what is left out is drawn for each seed."),
    ("power_line", "The power line of the region: 50 or 60 Hz, and volts."),
    ("sensor", "The sensor."),
    ("bench", "How the equipment is found."),
    ("trouble", "What the subject and the equipment do by themselves, 0 to 1 each."),
    ("recorder", "The recorder's settings at the start."),
    ("pass", "What must be reached; shares of the screen and of the pulse, and seconds."),
];
/// Lists of tables in order, each with its comment.
const LISTS: [(&str, &str); 4] = [
    (
        "fault",
        "A fault of the catalogue. Its severity is a number from 0 to 1, or two to draw between; drawn freely when left out.",
    ),
    (
        "misreading",
        "A misreading to look for: the answer that it shows in, the wrong number, what the student reads.",
    ),
    ("hint", "Words instead of a built-in hint: for a step or a topic."),
    ("attempt", ""),
];

/// A scenario given as JSON, as the file has it in TOML. Refuses what the scenario's own checks refuse. Scripted attempts
/// are left out: they belong to whoever wrote them.
pub fn of_json(text: &str) -> Result<String, ScenarioError> {
    let value = plain::value(text).map_err(|e| ScenarioError::at("file", e, "a scenario as JSON"))?;
    let Value::Object(mut fields) = value else {
        return Err(ScenarioError::at("file", "something else", "a scenario as JSON"));
    };
    fields.remove("attempt");
    let text = write(&fields);
    // Reading is what checks.
    Scenario::read(&text).map(|_| text)
}

/// The text of a scenario's file, from its fields.
pub(super) fn write(all: &Map<String, Value>) -> String {
    let mut text = String::new();
    for key in TOP {
        put_pair(&mut text, key, all.get(key).unwrap_or(&Value::Null));
    }
    let mut others: Vec<&str> = all.keys().map(String::as_str).collect();
    others.sort_unstable();
    others.retain(|key| !TOP.contains(key) && !LISTS.iter().chain(&TABLES).any(|(k, _)| k == key));
    for (key, comment) in TABLES.into_iter().chain(others.into_iter().map(|key| (key, ""))) {
        match all.get(key) {
            Some(Value::Object(table)) if table.values().any(|v| !v.is_null()) => {
                text.push('\n');
                if !comment.is_empty() {
                    text.push_str(&format!("# {comment}\n"));
                }
                text.push_str(&format!("[{}]\n", bare(key)));
                for (name, value) in table {
                    put_pair(&mut text, &bare(name), value);
                }
            }
            None | Some(Value::Object(_) | Value::Null) => {}
            // No scenario has it; reading will say so.
            Some(other) => text = format!("{} = {}\n{text}", bare(key), inline(other)),
        }
    }
    for (key, comment) in LISTS {
        for (k, one) in all.get(key).and_then(Value::as_array).into_iter().flatten().enumerate() {
            text.push('\n');
            if k == 0 && !comment.is_empty() {
                text.push_str(&format!("# {comment}\n"));
            }
            text.push_str(&format!("[[{key}]]\n"));
            for (name, value) in one.as_object().into_iter().flatten() {
                put_pair(&mut text, &bare(name), value);
            }
        }
    }
    text
}

/// A key with its value.
pub(super) fn put_pair(text: &mut String, key: &str, value: &Value) {
    match value {
        Value::Null => {}
        Value::String(words) if words.contains('\n') && !words.contains("\"\"\"") => {
            text.push_str(&format!("{key} = \"\"\"\n{}\"\"\"\n", escaped(words, true)));
        }
        other => text.push_str(&format!("{key} = {}\n", inline(other))),
    }
}

/// A value on one line.
fn inline(value: &Value) -> String {
    match value {
        Value::String(words) => format!("\"{}\"", escaped(words, false)),
        Value::Array(items) => {
            let items: Vec<String> = items.iter().filter(|v| !v.is_null()).map(inline).collect();
            if items.iter().map(String::len).sum::<usize>() > 70 {
                format!("[\n  {},\n]", items.join(",\n  "))
            } else {
                format!("[{}]", items.join(", "))
            }
        }
        Value::Object(fields) => {
            let pairs: Vec<String> = fields
                .iter()
                .filter(|(_, v)| !v.is_null())
                .map(|(key, v)| format!("{} = {}", bare(key), inline(v)))
                .collect();
            format!("{{ {} }}", pairs.join(", "))
        }
        plain => plain.to_string(),
    }
}

/// A key, in quotes where it is not made of letters, digits, `_` and `-`.
fn bare(key: &str) -> String {
    let plain = !key.is_empty() && key.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_' || b == b'-');
    if plain { key.to_string() } else { format!("\"{}\"", escaped(key, false)) }
}

/// A text for a basic string of TOML.
fn escaped(words: &str, lines: bool) -> String {
    let mut text = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\n' if lines => text.push('\n'),
            '\n' => text.push_str("\\n"),
            '\t' => text.push_str("\\t"),
            c if c.is_control() => text.push_str(&format!("\\u{:04x}", u32::from(c))),
            c => text.push(c),
        }
    }
    text
}
