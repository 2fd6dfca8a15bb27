//! What the instructor decided for a student, kept with the class.

use crate::session::seeds;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Most tries that are given beside those of the assignment.
pub const MOST_TRIES: u32 = 20;
/// Longest note to a student, characters.
pub const MOST_NOTE: usize = 1000;

/// What was decided for a student.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Care {
    /// They need not hand in.
    pub waived: bool,
    /// Tries beside those of the assignment.
    pub tries: u32,
    /// Until when they may hand in, s since 1970; with everybody else when 0.
    pub until_s: u64,
    /// A note to them; it goes out with the feedback.
    pub note: String,
}

impl Care {
    /// Brought within its limits.
    pub fn tidied(mut self) -> Self {
        self.tries = self.tries.min(MOST_TRIES);
        self.note = self.note.trim().chars().take(MOST_NOTE).collect();
        self
    }
}

/// What was decided, by the student's code as it counts.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Cares(BTreeMap<String, Care>);

impl Cares {
    /// For whoever types this code.
    pub fn of(&self, code: &str) -> Care {
        self.0.get(&seeds::code(code)).cloned().unwrap_or_default()
    }

    /// Decides; nothing is kept of a student for whom nothing is decided.
    pub fn put(&mut self, code: &str, care: Care) {
        match care.tidied() {
            care if care == Care::default() => drop(self.0.remove(&seeds::code(code))),
            care => drop(self.0.insert(seeds::code(code), care)),
        }
    }

    /// Codes for which something is decided, as they count.
    pub fn codes(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }
}

/// Which attempt stands for a student.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Pick {
    /// The best one.
    #[default]
    Best,
    /// The last one.
    Last,
}

/// By what the class is judged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Terms {
    /// On how many different benches a student must have passed.
    pub benches: usize,
    /// By the rubric; else by passing the check.
    pub rubric: bool,
    /// Which attempt stands for a student.
    pub pick: Pick,
    /// Until when it may be handed in, s since 1970; 0 for as long as one likes. It is held against the end of an attempt as
    /// the student's machine told it.
    pub due_s: u64,
}

impl Default for Terms {
    fn default() -> Self {
        Self { benches: 1, rubric: false, pick: Pick::Best, due_s: 0 }
    }
}
