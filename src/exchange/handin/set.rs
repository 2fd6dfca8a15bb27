//! What was set, given by the instructor, and a result compared with it.

use crate::plain::json;
use crate::scenario::digest::{bench_digest, digest};
use crate::scenario::plan::{self, Plan};
use crate::scenario::schema::FaultSpec;
use crate::scenario::{Scenario, ScenarioError};
use crate::session::compact::{Code, DIGEST_BYTES};
use crate::session::regrade::Terms;
use crate::unseen;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use thiserror::Error;

/// The first bytes of a bench digest, by which benches are told apart.
pub type BenchMark = [u8; DIGEST_BYTES];

/// The first bytes of a scenario's bench digest.
pub fn bench_mark(text: &str) -> BenchMark {
    let mut mark = BenchMark::default();
    mark.copy_from_slice(&bench_digest(text)[..DIGEST_BYTES]);
    mark
}

/// One scenario that was set.
#[derive(Clone, Debug, PartialEq)]
pub struct One {
    /// Where it came from: a file's name, or a link.
    pub from: String,
    /// Its file's text.
    pub text: String,
    /// Its bench.
    pub bench: BenchMark,
    /// Its whole digest.
    pub whole: [u8; 32],
    /// By what it judges: what must be reached, and the misreadings that are looked for.
    pub terms: Terms,
    /// Tries that a student has, where they are counted.
    pub attempts: Option<u32>,
    /// Its name in results.
    pub id: String,
    /// Its heading.
    pub title: String,
    /// Its faults; of a pool all that it draws from.
    pub faults: Vec<FaultSpec>,
}

impl One {
    /// One scenario, given where its text came from.
    fn read(from: &str, text: &str) -> Result<Self, ScenarioError> {
        let scenario = Scenario::read(text)?;
        Ok(Self {
            from: from.into(),
            text: text.into(),
            bench: bench_mark(text),
            whole: digest(text),
            terms: Terms::of(&scenario),
            attempts: scenario.assignment.as_ref().and_then(|a| a.attempts),
            faults: scenario.possible(),
            id: scenario.id,
            title: scenario.title,
        })
    }

    /// Whether an instructor could take one for the other: they have one name or one heading, and are two benches.
    fn rivals(&self, other: &One) -> bool {
        self.bench != other.bench && (self.id == other.id || seen(&self.title) == seen(&other.title))
    }
}

/// A heading as it looks to whoever reads it in passing: without what is unseen, in small letters, with one blank between words.
fn seen(title: &str) -> String {
    let visible: String = title
        .chars()
        .filter(|c| c.is_whitespace() || !(unseen::acts(*c) || unseen::is_ignored(*c)))
        .collect();
    visible.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// All that was set.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Set(Vec<One>);

/// Why something given is not taken as set.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SetError {
    /// It is no scenario.
    #[error("{0}")]
    Scenario(#[from] ScenarioError),
    /// The same bench is set already with something else to be reached: only one of the two can judge.
    #[error("{}the same scenario as {other} with other criteria: give only the one to grade by", part.map(|k| format!("part[{k}]: ")).unwrap_or_default())]
    Twice {
        /// Where the other came from.
        other: String,
        /// Which part of a course it is, from 0, where it is one.
        part: Option<usize>,
    },
}

impl SetError {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            SetError::Scenario(error) => ("scenario_invalid", json!(error)),
            SetError::Twice { other, .. } => ("set_twice", json!({"other": other})),
        }
    }
}

impl Set {
    /// Takes one more scenario as set, given its text and where that came from. The same once more changes nothing.
    pub fn add(&mut self, from: &str, text: &str) -> Result<(), SetError> {
        let one = One::read(from, text)?;
        match self.of_bench(&one.bench) {
            Some(known) if known.whole == one.whole => {}
            Some(known) => return Err(SetError::Twice { other: known.from.clone(), part: None }),
            None => self.0.push(one),
        }
        Ok(())
    }

    /// Takes a scenario, or every part of a course, as set; the course, where it was one.
    pub fn add_any(&mut self, from: &str, text: &str) -> Result<Option<Plan>, SetError> {
        self.any(from, text, Self::add)
    }

    /// The same in the place of those with the same bench.
    pub fn put_any(&mut self, from: &str, text: &str) -> Result<Option<Plan>, SetError> {
        self.any(from, text, Self::put)
    }

    fn any(
        &mut self,
        from: &str,
        text: &str,
        take: fn(&mut Self, &str, &str) -> Result<(), SetError>,
    ) -> Result<Option<Plan>, SetError> {
        if !plan::is_plan(text) {
            return take(self, from, text).map(|()| None);
        }
        let plan = Plan::read(text)?;
        for (k, part) in plan.part.iter().enumerate() {
            take(self, &format!("{from}, part {}", k + 1), &part.scenario).map_err(|error| match error {
                SetError::Twice { other, .. } => SetError::Twice { other, part: Some(k) },
                other => other,
            })?;
        }
        Ok(Some(plan))
    }

    /// Takes a scenario as set in the place of one with the same bench, whose criteria no longer count.
    pub fn put(&mut self, from: &str, text: &str) -> Result<(), SetError> {
        let bench = bench_mark(text);
        Scenario::read(text)?;
        self.0.retain(|one| one.bench != bench);
        self.add(from, text)
    }

    /// Those set already that carry the name or the heading of a scenario, or of a part of a course, and are other benches: whoever
    /// sets both lets the easier one count.
    pub fn rivals(&self, text: &str) -> Result<Vec<&One>, SetError> {
        let texts = match plan::is_plan(text) {
            true => Plan::read(text)?.part.into_iter().map(|part| part.scenario).collect(),
            false => vec![text.to_string()],
        };
        let new = texts.iter().map(|text| One::read("", text)).collect::<Result<Vec<_>, _>>()?;
        Ok(self.0.iter().filter(|known| new.iter().any(|one| known.rivals(one))).collect())
    }

    /// The names under which several different benches are set, with the places from which those came.
    pub fn of_one_name(&self) -> Vec<(&One, &One)> {
        let pairs = self.0.iter().enumerate();
        pairs
            .filter_map(|(k, one)| {
                self.0[..k].iter().find(|other| one.rivals(other)).map(|other| (other, one))
            })
            .collect()
    }

    /// Sets the scenario with this bench no longer.
    pub fn take_back(&mut self, bench: &BenchMark) {
        self.0.retain(|one| one.bench != *bench);
    }

    /// All of them, in the order in which they were given.
    pub fn all(&self) -> &[One] {
        &self.0
    }

    /// Whether nothing was given.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The one with this bench.
    pub fn of_bench(&self, bench: &BenchMark) -> Option<&One> {
        self.0.iter().find(|one| one.bench == *bench)
    }

    /// The text of the one that a code is of.
    pub fn text_of(&self, code: &Code) -> Option<&str> {
        self.of_bench(&code.scenario).map(|one| one.text.as_str())
    }
}

/// How a result's bench stands to what was set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Compared {
    /// Nothing was given to compare it with.
    #[default]
    Nothing,
    /// It is the one set, to the word.
    Same,
    /// It is the bench that was set; words or what must be reached are others now, and those set now count.
    Changed,
    /// It is another bench.
    Other,
}

impl Compared {
    /// Its name in the table: yes, no, or nothing.
    pub const fn name(self) -> &'static str {
        match self {
            Compared::Nothing => "",
            Compared::Same | Compared::Changed => "yes",
            Compared::Other => "no",
        }
    }
}
