//! The answer key: what each student of a list meets on their own bench, try by try. It is made from the assignment's key and
//! the students' codes, and opens with the instructor's password alone.

use super::roster::Entry;
use crate::chain::Chain;
use crate::exchange::handin::table::cell;
use crate::plain::json;
use crate::scenario::assignment::Seeds;
use crate::scenario::{Scenario, ScenarioError};
use crate::session::seeds;
use serde_json::Value;
use thiserror::Error;

/// Over so long a time the true rate is told, s.
pub const RATE_S: f64 = 60.0;
/// Most tries that are told of a student.
pub const MOST_TRIES: u32 = 10;
/// Samples that pass at once.
const PIECE: usize = 4096;

/// What a student meets in a try.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct Answer {
    /// Their code.
    pub code: String,
    /// Their name.
    pub name: String,
    /// Their group.
    pub group: String,
    /// Which try, from 1.
    #[serde(rename = "try")]
    pub tries: u32,
    /// Its seed, in decimal digits.
    pub seed: String,
    /// The faults, each with its severity from 0 to 1.
    pub faults: Vec<(&'static str, f64)>,
    /// The true mean rate over the first minute on the bench as it is found, beats/min; nothing where there are no two beats.
    pub rate: Option<f64>,
}

/// Why there is no key.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum AnswersError {
    /// It is no scenario.
    #[error("{0}")]
    Scenario(#[from] ScenarioError),
    /// It is no assignment: nobody's bench is theirs alone.
    #[error("the scenario has no [assignment], so no student has a heart of their own")]
    NoAssignment,
    /// It has no password.
    #[error("this assignment has no password (assignment.password), so nobody can open its answers")]
    NoWord,
    /// The password is another one.
    #[error("the password is not the one of this assignment")]
    OtherWord,
}

impl AnswersError {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            Self::Scenario(error) => ("scenario_invalid", json!(error)),
            Self::NoAssignment => ("answers_no_assignment", json!({})),
            Self::NoWord => ("answers_no_word", json!({})),
            Self::OtherWord => ("answers_other_word", json!({})),
        }
    }
}

/// An assignment that its password has opened: tells what any student meets at it.
#[derive(Debug)]
pub struct Key {
    scenario: Scenario,
    text: String,
    key: String,
    seeds: Seeds,
    tries: u32,
}

impl Key {
    /// Opens the key of an assignment, given its text. `password` is the instructor's; it may be left out where the file itself
    /// has it.
    pub fn open(text: &str, password: Option<&str>) -> Result<Self, AnswersError> {
        let scenario = Scenario::read(text)?;
        let Some(assignment) = scenario.assignment.clone() else { return Err(AnswersError::NoAssignment) };
        if assignment.password.is_empty() {
            return Err(AnswersError::NoWord);
        }
        // Where the file itself has the password none is needed; a wrong one is told all the same.
        let wrong =
            assignment.is_own_file() && password.is_some_and(|password| password != assignment.password);
        if wrong || !assignment.is_opened_by(password) {
            return Err(AnswersError::OtherWord);
        }
        let tries = assignment.attempts.unwrap_or(1).min(MOST_TRIES);
        Ok(Self { scenario, text: text.into(), key: assignment.key, seeds: assignment.seeds, tries })
    }

    /// What a student meets, try by try, with `more` tries than the others. It depends on that student alone, so that a list may be
    /// divided.
    pub fn of(&self, entry: &Entry, more: u32) -> Result<Vec<Answer>, AnswersError> {
        let student = if self.seeds == Seeds::Each { entry.code.as_str() } else { "" };
        let answer = |n: u32| {
            let seed = seeds::seed(&self.key, student, n);
            let heart = self.scenario.heart(&self.text, seed);
            let drawn = self.scenario.clone().drawn(heart);
            Ok(Answer {
                code: entry.code.clone(),
                name: entry.name.clone(),
                group: entry.group.clone(),
                tries: n,
                seed: seed.to_string(),
                faults: drawn.severities(heart).into_iter().map(|(fault, v)| (fault.id, v)).collect(),
                rate: true_rate(&drawn, heart)?,
            })
        };
        (1..=self.tries.saturating_add(more).min(MOST_TRIES)).map(answer).collect()
    }
}

/// The key for a list of students, each with how many tries they have more than the others, as [`Key`] tells it for each.
pub fn answers(
    text: &str,
    password: Option<&str>,
    list: &[(Entry, u32)],
) -> Result<Vec<Answer>, AnswersError> {
    let key = Key::open(text, password)?;
    let all: Result<Vec<Vec<Answer>>, AnswersError> =
        list.iter().map(|(entry, more)| key.of(entry, *more)).collect();
    Ok(all?.concat())
}

fn true_rate(scenario: &Scenario, heart: u64) -> Result<Option<f64>, ScenarioError> {
    let config = scenario.situation(heart)?.config;
    let mut chain = Chain::new(config, heart)
        .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
    let mut codes = Vec::new();
    while chain.time_s() < RATE_S {
        codes.clear();
        chain.fill(PIECE, &mut codes);
    }
    let beats: Vec<f64> = chain.truth().iter().map(|beat| beat.peak_s).filter(|t| *t <= RATE_S).collect();
    let (first, last) = (beats.first().copied(), beats.last().copied());
    let span = last.zip(first).map_or(0.0, |(last, first)| last - first);
    Ok((beats.len() > 1 && span > 0.0).then(|| 60.0 * (beats.len() - 1) as f64 / span))
}

/// The first line of the key as a table.
pub const HEAD: &str = "student,name,group,try,seed,faults,severities,true_rate_bpm\n";

/// The key as a table of text.
pub fn table(answers: &[Answer]) -> String {
    HEAD.to_string() + &rows(answers)
}

/// The lines of the table after its first.
pub fn rows(answers: &[Answer]) -> String {
    let mut text = String::new();
    for one in answers {
        let ids: Vec<&str> = one.faults.iter().map(|(id, _)| *id).collect();
        let severities: Vec<String> = one.faults.iter().map(|(_, v)| format!("{v:.2}")).collect();
        let rate = one.rate.map_or_else(String::new, |rate| format!("{rate:.1}"));
        let cells = [
            cell(&one.code),
            cell(&one.name),
            cell(&one.group),
            one.tries.to_string(),
            one.seed.clone(),
            ids.join(" "),
            severities.join(" "),
            rate,
        ];
        text += &cells.join(",");
        text.push('\n');
    }
    text
}
