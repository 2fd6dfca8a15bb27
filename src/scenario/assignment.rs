//! What makes a scenario an assignment: a key for the seeds of a class, how often it may be tried, words before and
//! after. And the identity of a scenario: a digest of its text that comments and blank lines do not change.

use super::error::ScenarioError;
use super::text::value_of;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Longest key, characters.
pub const MOST_KEY: usize = 60;
/// Longest opening or closing text, characters.
pub const MOST_TEXT: usize = 2000;

/// Whose seed is whose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Seeds {
    /// Each student's own, from the key and the student's code.
    #[default]
    Each,
    /// The same for everybody, from the key alone.
    Same,
}

/// A scenario handed out to a class.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Assignment {
    /// From which seeds are derived, see [`crate::session::seeds`].
    pub key: String,
    /// Whose seed is whose.
    pub seeds: Seeds,
    /// How many fresh tries a student has; as many as they like when absent.
    pub attempts: Option<u32>,
    /// Shown before the first try.
    pub opening: String,
    /// Shown after the last check.
    pub closing: String,
}

impl Assignment {
    /// Refuses what cannot be.
    pub fn check(&self) -> Result<(), ScenarioError> {
        let key = self.key.trim().chars().count();
        if !(1..=MOST_KEY).contains(&key) || self.key.chars().any(char::is_control) {
            let expected = format!("1 to {MOST_KEY} characters on one line");
            return Err(ScenarioError::at("assignment.key", format!("{key} characters"), expected));
        }
        if let Some(n) = self.attempts.filter(|n| !(1..=99).contains(n)) {
            return Err(ScenarioError::at("assignment.attempts", n, "a whole number from 1 to 99"));
        }
        for (field, text) in [("opening", &self.opening), ("closing", &self.closing)] {
            let length = text.chars().count();
            if length > MOST_TEXT {
                let expected = format!("at most {MOST_TEXT} characters");
                return Err(ScenarioError::at(
                    format!("assignment.{field}"),
                    format!("{length} characters"),
                    expected,
                ));
            }
        }
        Ok(())
    }
}

/// A scenario's text without comments and blank lines, as it goes into links; the text itself where that would change
/// what it says.
pub fn minimised(text: &str) -> String {
    let kept = |line: &&str| !line.trim().is_empty() && !line.trim_start().starts_with('#');
    let short: String = text.lines().filter(kept).flat_map(|line| [line.trim_end(), "\n"]).collect();
    match (value_of(&short), value_of(text)) {
        (Some(a), Some(b)) if a == b => short,
        _ => text.to_string(),
    }
}

/// SHA-256 of a scenario's [`minimised`] text: the same for a file and for the link made from it.
pub fn digest(text: &str) -> [u8; 32] {
    Sha256::digest(minimised(text).as_bytes()).into()
}

/// Bytes as hexadecimal digits.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|b| format!("{b:02x}")).collect()
}
