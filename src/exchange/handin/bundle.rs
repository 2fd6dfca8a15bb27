//! The result of a course: one file that holds the results of its parts. Each is an ordinary result with its own checksum; the file
//! around them says nothing that is believed.

use super::error::HandinError;
use super::result;
use crate::plain;
use serde_json::Value;

/// What the field `format` says.
pub const FORMAT: &str = "dicrotic-course-result";
/// Number of this form.
pub const VERSION: u64 = 1;
/// How the names of such files end.
pub const EXTENSION: &str = ".dicrotic-course-result.json";
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 16 << 20;
/// Most results in one.
pub const MOST_RESULTS: usize = 200;

/// Whether a text is one, as far as its beginning tells.
pub fn is_bundle(text: &str) -> bool {
    let start: String = text.chars().take(400).collect();
    start.trim_start().starts_with('{') && start.contains(&format!("\"{FORMAT}\""))
}

/// The texts of the results in one, in their order.
pub fn read(text: &str) -> Result<Vec<String>, HandinError> {
    if text.len() > MOST_BYTES {
        return Err(HandinError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    let value = plain::value(text).map_err(|e| HandinError::NoResult { found: e.to_string() })?;
    if value.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(HandinError::NoResult { found: "another format".into() });
    }
    let version = value.get("version").and_then(Value::as_u64).unwrap_or_default();
    if version != VERSION {
        return Err(HandinError::Version { found: version });
    }
    let found = |found: String| HandinError::NoResult { found };
    let Some(results) = value.get("results").and_then(Value::as_array).filter(|all| !all.is_empty()) else {
        return Err(found("a course's result without results".into()));
    };
    if results.len() > MOST_RESULTS {
        return Err(found(format!(
            "{} results; a course's result has at most {MOST_RESULTS}",
            results.len()
        )));
    }
    let one = |result: &Value| {
        let text = result.to_string();
        match text.len() {
            bytes if bytes > result::MOST_BYTES => {
                Err(HandinError::TooLong { bytes, most: result::MOST_BYTES })
            }
            _ => Ok(text),
        }
    };
    results.iter().map(one).collect()
}
