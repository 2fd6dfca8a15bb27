//! A scenario as the text of a file: always in the same order, what is as usual left out, a word of comment at each
//! table, so that a person can read and edit it. Scripted attempts are left out: they belong to whoever wrote them.

use super::error::ScenarioError;
use super::schema::Scenario;
use serde_json::{Map, Value};

/// Keys that stand before the first table, in order.
const TOP: [&str; 9] =
    ["id", "level", "title", "aim", "brief", "help", "name_faults", "time_base_s", "before"];
/// Keys without which a file is no scenario.
const NEEDED: [&str; 5] = ["id", "level", "title", "aim", "brief"];
/// Tables in order, each with its comment. A table that is not named here comes after them.
const TABLES: [(&str, &str); 9] = [
    ("assignment", "How it is handed out: the key makes the seeds, together with each student's own code."),
    ("task", "What is asked."),
    ("subject", "Who sits at the bench; what is left out is drawn for each seed."),
    ("mains", "The mains of the region: 50 or 60 Hz, and volts."),
    ("pad", "The pad."),
    ("bench", "How the bench is found."),
    ("trouble", "What subject and surroundings do by themselves, 0 to 1 each."),
    ("recorder", "The recorder's settings at the start."),
    ("pass", "What must be reached; shares of the screen and of the pulse, and seconds."),
];
const FAULTS: &str = "A fault of the catalogue. Its severity is a number from 0 to 1, or two to draw between; drawn freely when left out.";

/// A scenario given as JSON, as the file has it in TOML. Refuses what the scenario's own checks refuse.
pub fn of_json(text: &str) -> Result<String, ScenarioError> {
    let value: Value =
        serde_json::from_str(text).map_err(|e| ScenarioError::at("file", e, "a scenario as JSON"))?;
    let scenario: Scenario =
        serde_json::from_value(value).map_err(|e| ScenarioError::at("file", e, "a scenario as JSON"))?;
    let text = write(&scenario);
    // Reading is what checks.
    Scenario::read(&text).map(|_| text)
}

/// The text of a scenario's file.
pub fn write(scenario: &Scenario) -> String {
    let usual = "id = \"usual\"\nlevel = 1\ntitle = \"u\"\naim = \"u\"\nbrief = \"u\"\n";
    let usual = Scenario::read(usual).ok().and_then(|s| serde_json::to_value(s).ok()).unwrap_or_default();
    let Ok(Value::Object(all)) = serde_json::to_value(scenario) else { return String::new() };
    let mut text = String::new();
    for key in TOP {
        if NEEDED.contains(&key) || all.get(key) != usual.get(key) {
            put_pair(&mut text, key, all.get(key).unwrap_or(&Value::Null));
        }
    }
    let others = all.keys().map(String::as_str).filter(|key| {
        !TOP.contains(key) && !["fault", "attempt"].contains(key) && !TABLES.iter().any(|(k, _)| k == key)
    });
    for (key, comment) in TABLES.into_iter().chain(others.map(|key| (key, ""))) {
        let Some(Value::Object(table)) = all.get(key).map(|v| unusual(v, &usual[key])) else { continue };
        if table.is_empty() {
            continue;
        }
        text.push('\n');
        if !comment.is_empty() {
            text.push_str(&format!("# {comment}\n"));
        }
        text.push_str(&format!("[{key}]\n"));
        for (name, value) in &table {
            put_pair(&mut text, name, value);
        }
    }
    for (k, fault) in all.get("fault").and_then(Value::as_array).into_iter().flatten().enumerate() {
        text.push('\n');
        if k == 0 {
            text.push_str(&format!("# {FAULTS}\n"));
        }
        text.push_str("[[fault]]\n");
        for (name, value) in fault.as_object().into_iter().flatten() {
            put_pair(&mut text, name, value);
        }
    }
    text
}

/// What of a value is not as usual; objects part by part.
fn unusual(value: &Value, usual: &Value) -> Value {
    match (value, usual) {
        (Value::Object(fields), Value::Object(plain)) => Value::Object(
            fields
                .iter()
                .filter(|(key, v)| plain.get(*key) != Some(v))
                .map(|(key, v)| (key.clone(), unusual(v, plain.get(key).unwrap_or(&Value::Null))))
                .collect::<Map<String, Value>>(),
        ),
        _ => value.clone(),
    }
}

fn put_pair(text: &mut String, key: &str, value: &Value) {
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
