//! The text of a scenario file as a plain value, and what is wrong with it told in a scenario's way.

use super::error::ScenarioError;
use crate::plain::{Plain, Unread};
use serde::de::DeserializeOwned;
use serde_json::Value;

/// What a scenario file says, as a value; `None` where it is no TOML or says what JSON has no word for.
pub fn value_of(text: &str) -> Option<Value> {
    Plain::of_toml(text).ok().map(Plain::into_value)
}

/// Reads a structure from a file's text. The error names the field, what stands there, what was expected, and the line.
pub(super) fn read<T: DeserializeOwned>(text: &str) -> Result<T, ScenarioError> {
    let plain = Plain::of_toml(text).map_err(|e| match e.path() {
        "" => {
            let line = line_of(text, &e);
            ScenarioError { line, ..ScenarioError::at("file", e.message(), "a TOML document") }
        }
        _ => blame(text, &e),
    })?;
    plain.read().map_err(|e| blame(text, &e))
}

#[inline(never)]
fn blame(text: &str, error: &Unread) -> ScenarioError {
    let (found, expected) = split_message(error.message());
    ScenarioError {
        field: field_of(error.path(), error.message()),
        expected,
        found,
        line: line_of(text, error),
    }
}

fn line_of(text: &str, error: &Unread) -> Option<usize> {
    text.get(..error.place()?).map(|before| before.matches('\n').count() + 1)
}

/// Serde says what it found and expected in one sentence: "unknown field `x`, expected one of ..." or "invalid type:
/// string "a", expected f64".
fn split_message(message: &str) -> (String, String) {
    let message = message.trim();
    match message.rsplit_once(", expected ") {
        Some((found, expected)) => (found.to_string(), expected.to_string()),
        None => match message.strip_prefix("missing field ") {
            Some(field) => ("nothing".into(), format!("the field {field}")),
            None => (message.to_string(), "another value".into()),
        },
    }
}

/// The path with the name of a missing field added, which a path without it leaves out.
fn field_of(path: &str, message: &str) -> String {
    let missing = message.trim().strip_prefix("missing field `").and_then(|m| m.split('`').next());
    match missing {
        Some(name) if path.is_empty() => name.to_string(),
        Some(name) => format!("{path}.{name}"),
        None if path.is_empty() => "file".to_string(),
        None => path.to_string(),
    }
}
