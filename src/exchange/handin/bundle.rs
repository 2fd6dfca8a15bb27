//! The result of a course: one file that holds the results of its parts. Each is an ordinary result with its own checksum; the file
//! around them says nothing that is believed.

use super::error::HandinError;
use super::result;
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

/// What is in one. Nothing of it is believed but the results, each for itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Bundle {
    /// The id of the course that it says it is of; empty where it says none.
    pub course: String,
    /// The texts of the results, in their order.
    pub results: Vec<String>,
}

/// Reads one; an error for anything else too.
pub fn read(text: &str) -> Result<Bundle, HandinError> {
    if text.len() > MOST_BYTES {
        return Err(HandinError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    let other = || Err(HandinError::NoResult { found: "another format".into() });
    of(text).unwrap_or_else(other)
}

/// Reads one; `None` where the text is something else. That goes by its field `format` alone, wherever it stands: the same word may
/// be a student's code.
pub fn of(text: &str) -> Option<Result<Bundle, HandinError>> {
    // A mark of byte order, as some editors put it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // Looked for first, since ordinary results are many: without the word nothing needs to be parsed.
    if !text.trim_start().starts_with('{') || !text.contains(FORMAT) {
        return None;
    }
    if text.len() > MOST_BYTES {
        return Some(Err(HandinError::TooLong { bytes: text.len(), most: MOST_BYTES }));
    }
    match serde_json::from_str::<Value>(text) {
        Err(e) if e.is_eof() => Some(Err(HandinError::CutShort {})),
        Err(e) => Some(Err(HandinError::NoResult { found: e.to_string() })),
        Ok(value) => (value.get("format").and_then(Value::as_str) == Some(FORMAT)).then(|| within(&value)),
    }
}

/// What is in one.
fn within(value: &Value) -> Result<Bundle, HandinError> {
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
