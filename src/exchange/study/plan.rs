//! A study as the instructor keeps it: its tests, and who is where. It holds the codes of students, so it stays with the instructor.

use super::deal::{self, Placed};
use super::forms::{self, FORMS, Form, NAMES};
use crate::exchange::handin::set::{BenchMark, bench_mark};
use crate::plain::{self, json, names};
use crate::scenario::ScenarioError;
use crate::scenario::assignment::PASSWORD;
use crate::scenario::digest::hashed;
use crate::scenario::plan::{Heading, MOST_PARTS, Part, Plan};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;
use thiserror::Error;

/// What the field `format` says.
pub const FORMAT: &str = "dicrotic-study";
/// Number of this form.
pub const VERSION: u32 = 1;
/// How the names of such files end.
pub const EXTENSION: &str = ".dicrotic-study.json";
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 16 << 20;
/// Longest id, and longest title, characters: what is made of them must fit as well.
const MOST_ID: usize = 40;
const MOST_TITLE: usize = 60;

/// Which test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Occasion {
    /// Before anybody rehearses.
    First,
    /// After half of the class has rehearsed.
    Second,
    /// Some time later.
    Later,
}

names! {
    Occasion {
        First => "first",
        Second => "second",
        Later => "later",
    }
}

/// All three, in their order.
pub const OCCASIONS: [Occasion; 3] = [Occasion::First, Occasion::Second, Occasion::Later];

/// Why there is no study.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum StudyError {
    /// Something is not as it must be.
    #[error("{0}")]
    Field(#[from] ScenarioError),
    /// The pools make no test.
    #[error("{0}")]
    Forms(#[from] forms::FormError),
    /// Too long.
    #[error("{bytes} bytes; a study has at most {MOST_BYTES}")]
    TooLong {
        /// How long it is.
        bytes: usize,
    },
    /// Something else, or damaged.
    #[error("not the file of a study (*{EXTENSION}): {found}")]
    NoStudy {
        /// What was found.
        found: String,
    },
    /// Written by another version.
    #[error("form {found} of the file of a study; this version reads form {VERSION}")]
    Version {
        /// Which.
        found: u64,
    },
    /// Another word.
    #[error("this is not the word with which the study was planned")]
    OtherWord,
}

/// One form of one test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Test {
    /// Which test.
    pub occasion: Occasion,
    /// Which form, from 0.
    pub form: usize,
    /// The course that students get, as JSON.
    pub course: String,
}

impl Test {
    /// How its files are called.
    pub fn name(&self) -> String {
        file_name(self.occasion, self.form)
    }
}

/// How the files of a form of a test are called.
pub fn file_name(occasion: Occasion, form: usize) -> String {
    format!("{}-{}", occasion.name(), NAMES[form % FORMS])
}

/// A study.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Study {
    format: String,
    version: u32,
    /// Version of the program that planned it.
    program: String,
    /// Its name in files and results.
    pub id: String,
    /// Its heading.
    pub title: String,
    /// Hash of the word that arms and the numbers of the anonymous table are made with.
    word: String,
    /// Three forms of three tests.
    pub tests: Vec<Test>,
    /// The course for rehearsal, as JSON.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rehearsal: Option<String>,
    /// Who is where.
    pub placed: Vec<Placed>,
}

/// What a study is planned from.
#[derive(Clone, Debug, Default)]
pub struct Wanted<'a> {
    /// See [`Study::id`].
    pub id: &'a str,
    /// See [`Study::title`].
    pub title: &'a str,
    /// The instructor's word.
    pub word: &'a str,
    /// The password for the truth of the benches; may be empty.
    pub password: &'a str,
    /// Scenario files with pools for the tests: from where, and text.
    pub tests: &'a [(String, String)],
    /// Scenario files for rehearsal.
    pub rehearsal: &'a [(String, String)],
}

/// Where a bench belongs in a study.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A bench of a test.
    Test {
        /// Which test.
        occasion: Occasion,
        /// Which form.
        form: usize,
        /// Which bench of it, from 0.
        bench: usize,
    },
    /// A bench for rehearsal.
    Rehearsal,
}

impl Study {
    /// Plans a study without students yet.
    pub fn plan(wanted: &Wanted) -> Result<Self, StudyError> {
        let Wanted { id, title, word, password, tests, rehearsal } = *wanted;
        limited("id", id, MOST_ID)?;
        limited("title", title, MOST_TITLE)?;
        let length = word.trim().chars().count();
        let [least, most] = PASSWORD;
        if !(least..=most).contains(&length) || word.chars().any(char::is_control) {
            let expected = format!("{least} to {most} characters on one line: who guesses it knows the arms");
            return Err(ScenarioError::at("word", format!("{length} characters"), expected).into());
        }
        let forms = forms::forms(tests)?;
        let mut all = Vec::new();
        for (nth, occasion) in OCCASIONS.into_iter().enumerate() {
            for (form, benches) in forms.iter().enumerate() {
                let course = course(wanted, nth, form, benches)?;
                all.push(Test { occasion, form, course });
            }
        }
        if rehearsal.len() > MOST_PARTS {
            let expected = format!("at most {MOST_PARTS}");
            return Err(ScenarioError::at("rehearsal", rehearsal.len(), expected).into());
        }
        let mut parts = Vec::new();
        for (k, (from, text)) in rehearsal.iter().enumerate() {
            let key = format!("{id} rehearsal {}", k + 1);
            let name = format!("{id}-rehearsal-{}", k + 1);
            let heading = format!("{title} R{}", k + 1);
            let mut assignment = json!({"key": key});
            secured(&mut assignment, password);
            let scenario = forms::assigned(text, &name, &heading, assignment).map_err(|error| {
                StudyError::Forms(forms::FormError::Scenario { from: from.clone(), error })
            })?;
            parts.push(Part { scenario, ..Part::default() });
        }
        let rehearsal = match parts.is_empty() {
            true => None,
            false => Some(handed(format!("{id}-rehearsal"), format!("{title} R"), parts)?),
        };
        Ok(Self {
            format: FORMAT.into(),
            version: VERSION,
            program: env!("CARGO_PKG_VERSION").into(),
            id: id.into(),
            title: title.into(),
            word: hashed(id, word),
            tests: all,
            rehearsal,
            placed: Vec::new(),
        })
    }

    /// Places students who have no place yet. Fails with another word than that of the plan.
    pub fn deal(&mut self, word: &str, codes: &[String]) -> Result<(), StudyError> {
        self.check_word(word)?;
        self.placed = deal::deal(word, codes, &self.placed);
        Ok(())
    }

    /// Fails with another word than that of the plan.
    pub fn check_word(&self, word: &str) -> Result<(), StudyError> {
        if hashed(&self.id, word) == self.word && word != self.word {
            Ok(())
        } else {
            Err(StudyError::OtherWord)
        }
    }

    /// The study as a file.
    pub fn written(&self) -> String {
        format!("{}\n", plain::given(self))
    }

    /// Reads one; courses and places are looked at.
    pub fn read(text: &str) -> Result<Self, StudyError> {
        if text.len() > MOST_BYTES {
            return Err(StudyError::TooLong { bytes: text.len() });
        }
        let foreign = |found: String| StudyError::NoStudy { found };
        let value = plain::value(text).map_err(|e| foreign(e.to_string()))?;
        let format = value.get("format").and_then(Value::as_str).unwrap_or_default();
        if format != FORMAT {
            return Err(foreign(format!("format \"{}\"", format.chars().take(40).collect::<String>())));
        }
        match value.get("version").and_then(Value::as_u64) {
            Some(version) if version == u64::from(VERSION) => {}
            Some(found) => return Err(StudyError::Version { found }),
            None => return Err(foreign("it does not say the number of its form".into())),
        }
        let study: Self = plain::from_value(value).map_err(|e| foreign(e.to_string()))?;
        study.benches()?;
        let wrong = |what: String| foreign(what);
        if let Some(test) = study.tests.iter().find(|test| test.form >= FORMS) {
            return Err(wrong(format!("tests: form {}; expected 0 to {}", test.form, FORMS - 1)));
        }
        let orders = deal::ORDERS.len();
        if let Some(one) = study.placed.iter().find(|one| one.order >= orders) {
            return Err(wrong(format!("placed: order {}; expected 0 to {}", one.order, orders - 1)));
        }
        Ok(study)
    }

    /// All courses with what they are called.
    pub fn courses(&self) -> Vec<(String, &str)> {
        let tests = self.tests.iter().map(|test| (test.name(), test.course.as_str()));
        tests.chain(self.rehearsal.iter().map(|course| ("rehearsal".into(), course.as_str()))).collect()
    }

    /// Where each bench belongs.
    pub fn benches(&self) -> Result<BTreeMap<BenchMark, Place>, StudyError> {
        let mut all = BTreeMap::new();
        for test in &self.tests {
            for (bench, part) in Plan::read(&test.course)?.part.iter().enumerate() {
                let Test { occasion, form, .. } = *test;
                all.insert(bench_mark(&part.scenario), Place::Test { occasion, form, bench });
            }
        }
        if let Some(course) = &self.rehearsal {
            for part in &Plan::read(course)?.part {
                all.insert(bench_mark(&part.scenario), Place::Rehearsal);
            }
        }
        Ok(all)
    }

    /// Benches of a test.
    pub fn length(&self) -> usize {
        self.tests.first().and_then(|test| Plan::read(&test.course).ok()).map_or(0, |plan| plan.part.len())
    }
}

/// One form of a test as a course.
fn course(wanted: &Wanted, nth: usize, form: usize, benches: &Form) -> Result<String, StudyError> {
    let Wanted { id, title, password, .. } = *wanted;
    let occasion = OCCASIONS[nth].name();
    let letter = NAMES[form];
    let mut parts = Vec::new();
    for (k, text) in benches.iter().enumerate() {
        let name = format!("{id}-{occasion}-{letter}{}", k + 1);
        let heading = format!("{title} {}: {}{}", nth + 1, letter.to_uppercase(), k + 1);
        let mut assignment = json!({"key": name, "attempts": 1, "study": id});
        secured(&mut assignment, password);
        let scenario = forms::assigned(text, &name, &heading, assignment)?;
        parts.push(Part { scenario, ..Part::default() });
    }
    handed(format!("{id}-{occasion}-{letter}"), format!("{title} {}", nth + 1), parts)
}

fn secured(assignment: &mut Value, password: &str) {
    if !password.is_empty() {
        assignment["password"] = json!(password);
    }
}

/// A course as it is handed out, once it is known to be one.
fn handed(id: String, title: String, part: Vec<Part>) -> Result<String, StudyError> {
    let plan = Plan { course: Heading { id, title, words: String::new() }, part };
    Ok(Plan::read(&plan.written())?.handed_out())
}

fn limited(field: &str, text: &str, most: usize) -> Result<(), StudyError> {
    let length = text.trim().chars().count();
    if (1..=most).contains(&length) && !text.chars().any(char::is_control) {
        return Ok(());
    }
    let expected = format!("1 to {most} characters on one line");
    Err(ScenarioError::at(field, format!("{length} characters"), expected).into())
}
