//! What makes a scenario an assignment: a key for the seeds of a class, how often it may be tried, words before and
//! after, and the instructor's password for the truth of its benches.

pub use super::digest::{digest, hex, minimised};
use super::digest::{hashed, is_hashed};
use super::error::ScenarioError;
use serde::{Deserialize, Serialize};

/// Longest key, characters.
pub const MOST_KEY: usize = 60;
/// Longest opening or closing text, characters.
pub const MOST_TEXT: usize = 2000;
/// Shortest and longest password, characters: what travels is its hash, which a short one would not withstand.
pub const PASSWORD: [usize; 2] = [8, 60];

/// Whose seed is whose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Assignment {
    /// What the seeds are made from, together with each student ID.
    pub key: String,
    /// Whether each student has their own seed, or all have the same.
    pub seeds: Seeds,
    /// How many attempts a student has; no limit when absent.
    pub attempts: Option<u32>,
    /// Text before the first attempt.
    pub opening: String,
    /// Text after the last check.
    pub closing: String,
    /// Whether students may watch the worked example; its heart is no student's.
    pub worked: bool,
    /// The id of a study that it is a test of; then the student is asked, before the first attempt, whether the results may be
    /// used in it. Whatever they answer, the bench opens.
    pub study: String,
    /// The instructor's password. The program gives the true values only with it, and to nobody if it is empty. It is only in
    /// the instructor's own file: what is [handed out](super::digest::handed_out) has its hash.
    pub password: String,
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
        let study = self.study.trim().chars().count();
        if study > MOST_KEY || self.study.chars().any(char::is_control) {
            let expected = format!("at most {MOST_KEY} characters on one line");
            return Err(ScenarioError::at("assignment.study", format!("{study} characters"), expected));
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
        let password = self.password.trim().chars().count();
        let [least, most] = PASSWORD;
        let fits = (least..=most).contains(&password) && !self.password.chars().any(char::is_control);
        if password > 0 && !is_hashed(&self.password) && !fits {
            let expected = format!("{least} to {most} characters on one line");
            return Err(ScenarioError::at("assignment.password", format!("{password} characters"), expected));
        }
        Ok(())
    }

    /// Whether this is the instructor's own file, with the password in it.
    pub fn is_own_file(&self) -> bool {
        !self.password.is_empty() && !is_hashed(&self.password)
    }

    /// Whether whoever gives this password may be told the truth of the benches.
    pub fn is_opened_by(&self, password: Option<&str>) -> bool {
        self.is_own_file()
            || (is_hashed(&self.password)
                && password.is_some_and(|w| hashed(&self.key, w) == self.password && w != self.password))
    }
}
