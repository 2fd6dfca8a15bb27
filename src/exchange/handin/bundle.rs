//! The result of a course: one file that holds the results of its parts. Each is an ordinary result with its own checksum; the file
//! around them says nothing that is believed.

use super::error::HandinError;
use super::result;
use crate::plain;
use serde::Serialize;
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

/// So much of a course's id is kept, characters.
const MOST_ID: usize = 60;

/// Whether a text is one, as far as its beginning tells.
pub fn is_bundle(text: &str) -> bool {
    let start: String = text.chars().take(400).collect();
    start.trim_start().starts_with('{') && start.contains(&format!("\"{FORMAT}\""))
}

/// What is in one. Nothing of it is believed but the results, each for itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Bundle {
    /// The id of the course that it says it is of; empty where it says none.
    pub course: String,
    /// The texts of the results, in their order.
    pub results: Vec<String>,
}

/// Reads one.
pub fn read(text: &str) -> Result<Bundle, HandinError> {
    if text.len() > MOST_BYTES {
        return Err(HandinError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    let value = plain::value(text).map_err(|e| HandinError::NoResult { found: e.to_string() })?;
    if value.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(HandinError::NoResult { found: "another format".into() });
    }
    let found = |found: String| HandinError::NoResult { found };
    let Some(version) = value.get("version").and_then(Value::as_u64) else {
        return Err(found("a course result without the number of its form".into()));
    };
    if version != VERSION {
        return Err(HandinError::CourseVersion { found: version });
    }
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
    let course = value.get("course").and_then(Value::as_str).unwrap_or_default();
    let course = course.chars().take(MOST_ID).collect();
    Ok(Bundle { course, results: results.iter().map(one).collect::<Result<_, _>>()? })
}
