//! The text of a scenario file as a plain value, and what is wrong with it told in a scenario's way.

use super::error::ScenarioError;
use crate::plain::{Cause, Plain, Unread};
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
    ScenarioError {
        field: field_of(error),
        expected: error.expected().unwrap_or_else(|| "another value".into()),
        found: error.found().unwrap_or_else(|| "nothing".into()),
        line: line_of(text, error),
    }
}

fn line_of(text: &str, error: &Unread) -> Option<usize> {
    text.get(..error.place()?).map(|before| before.matches('\n').count() + 1)
}

/// The path with the name of a missing field added, which a path without it leaves out.
fn field_of(error: &Unread) -> String {
    match (error.cause(), error.path()) {
        (Cause::Missing { field }, "") => field.to_string(),
        (Cause::Missing { field }, path) => format!("{path}.{field}"),
        (_, "") => "file".to_string(),
        (_, path) => path.to_string(),
    }
}
