//! A question bank: stills of a scenario's subject, each with one right rate and some that well-known misreadings lead to.
//!
//! - [`qti`]: as items of QTI 3, for a course site
//! - [`table`]: as a table of text with pictures
//!
//! What is asked and answered is made of numbers here; the words come from the caller, who gets the facts of each question.

pub mod qti;
pub mod table;

use super::NamedFile;
use crate::assess::misreading::Misreading;
use crate::plain::{json, names};
use crate::rng::{Stream, fnv1a, mix};
use crate::session::still::{Reading, Still, StillError, shuffle, still};
use crate::trace::axes::{Theme, step};
use crate::trace::frame::Frame;
use crate::trace::svg;
use plotters::style::RGBColor;
use serde::Deserialize;
use serde_json::Value;
use thiserror::Error;

/// Most questions in a bank.
pub const MOST_QUESTIONS: u32 = 500;
/// Most wrong answers of a question, and fewest.
pub const MOST_WRONG: usize = 4;
const FEWEST_WRONG: usize = 3;
/// Least distance between any two answers, beats/min: one beat in 15 s.
pub const APART_BPM: f64 = 4.0;
/// Longest text of the caller's for one place, characters.
pub const MOST_WORDS: usize = 2000;
/// Most stills until one has enough wrong answers.
const MOST_STILLS: u64 = 20;
/// Width and height of a picture, pixels. At this width the time axis has a line every 2 s and a mark every half second.
const SIZE: (f64, f64) = (1028.0, 300.0);

/// The form of a bank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A package of QTI 3 items.
    Qti,
    /// A table of text.
    Csv,
}

names! {
    Form {
        Qti => "qti",
        Csv => "csv",
    }
}

/// Why there is no question, or why it cannot be written.
#[derive(Debug, Error, PartialEq)]
pub enum BankError {
    /// No still can be made of the scenario.
    #[error(transparent)]
    Still(#[from] StillError),
    /// The misreadings of no still lead to rates that lie apart.
    #[error(
        "subject: on none of {stills} recordings do {FEWEST_WRONG} misreadings lead to rates that lie {APART_BPM} beats/min apart"
    )]
    Alike {
        /// Stills that were made.
        stills: u64,
    },
    /// A text of the caller's is missing, or too long.
    #[error("words of question {number}: {found} in {field}; expected {expected}")]
    Words {
        /// Number of the question.
        number: u32,
        /// Which text.
        field: &'static str,
        /// What there is.
        found: String,
        /// What there should be.
        expected: String,
    },
    /// Too many questions.
    #[error("a bank has at most {MOST_QUESTIONS} questions")]
    Full,
}

/// An answer to choose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// What is put down by whoever comes to it.
    pub reading: Reading,
    /// The misreading that leads to it; none leads to the right one.
    pub slip: Option<Misreading>,
}

/// A question: how many beats a minute?
#[derive(Clone, Debug)]
pub struct Question {
    /// A name that no other question has, of letters, digits and hyphens, beginning with a letter.
    pub id: String,
    /// Its number in the bank, from 1.
    pub number: u32,
    /// The still that it is about.
    pub still: Still,
    /// The answers in the order in which they are shown.
    pub answers: Vec<Answer>,
}

impl Question {
    /// Question `number`, from 1, of the bank with a seed, about a scenario given as the text of its file.
    pub fn new(scenario: &str, seed: u64, number: u32) -> Result<Self, BankError> {
        let own = mix(mix(seed) ^ u64::from(number));
        for k in 0..MOST_STILLS {
            let still = still(scenario, mix(own ^ k))?;
            let mut draws = Stream::new(own, "answers");
            let Some(mut answers) = answers(&still, &mut draws) else { continue };
            shuffle(&mut answers, &mut draws);
            let id = format!("trace-{:016x}", mix(own ^ fnv1a(scenario.as_bytes())));
            return Ok(Self { id, number, still, answers });
        }
        Err(BankError::Alike { stills: MOST_STILLS })
    }

    /// Which answer is right, from 0.
    pub fn right(&self) -> usize {
        self.answers.iter().position(|a| a.slip.is_none()).unwrap_or(0)
    }

    /// The facts from which the caller makes words. What an alternative to the picture may say is in `seen`.
    pub fn told(&self) -> Value {
        let still = &self.still;
        let answers: Vec<Value> = self
            .answers
            .iter()
            .map(|a| json!({"rate": a.reading.rate, "misreading": a.slip.map(Misreading::name)}))
            .collect();
        let frame = self.frame();
        json!({
            "id": self.id, "number": self.number, "scenario": still.scenario, "title": still.title,
            "seen": {
                "seconds": still.duration_s, "a": still.a_s, "b": still.b_s,
                "division": step(frame.t1 - frame.t0, frame.width / 64.0),
            },
            "right": {"beats": still.right.count, "seconds": still.right.seconds, "rate": still.right.rate},
            "answers": answers,
        })
    }

    fn frame(&self) -> Frame {
        let (low, high) = self.still.session().value_range();
        Frame::new(SIZE.0, SIZE.1, 1.0).showing(0.0, self.still.duration_s, low, high)
    }

    /// The still as a drawing, dark on white, with A and B and the time axis; `decimal` stands in the numbers of its axes.
    pub fn picture(&self, title: &str, decimal: char) -> String {
        let Some(kept) = self.still.recording() else { return String::new() };
        let theme = Theme {
            ground: RGBColor(255, 255, 255),
            grid: RGBColor(205, 209, 214),
            axis: RGBColor(60, 64, 70),
            ink: RGBColor(16, 24, 40),
            accent: RGBColor(176, 42, 24),
            font: "sans-serif".into(),
            decimal,
        };
        let cursors = [Some(self.still.a_s), Some(self.still.b_s)];
        svg::picture(
            &kept.recording,
            &self.frame(),
            &theme,
            &svg::Over { title, cursors, ..svg::Over::default() },
        )
    }
}

/// The right answer and some wrong ones, all of them apart; nothing where there are too few.
fn answers(still: &Still, draws: &mut Stream) -> Option<Vec<Answer>> {
    let mut found = vec![Answer { reading: still.right, slip: None }];
    let mut slips = still.slips.clone();
    shuffle(&mut slips, draws);
    for slip in slips {
        let rate = slip.reading.rate;
        let beyond = (rate - still.right.rate).abs() > still.tolerance_bpm;
        let apart = found.iter().all(|a| (a.reading.rate - rate).abs() >= APART_BPM);
        if beyond && apart && found.len() <= MOST_WRONG {
            found.push(Answer { reading: slip.reading, slip: Some(slip.id) });
        }
    }
    (found.len() > FEWEST_WRONG).then_some(found)
}

/// The words of a question, in the language of its caller.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Words {
    /// Its heading.
    pub title: String,
    /// What is asked.
    pub question: String,
    /// What stands in the picture's place; not the count.
    pub alt: String,
    /// Each answer, in order.
    pub answers: Vec<String>,
    /// What is said to whoever chooses it, in the same order.
    pub feedback: Vec<String>,
}

impl Words {
    fn check(&self, question: &Question) -> Result<(), BankError> {
        let (number, of) = (question.number, question.answers.len());
        let wrong =
            |field, found: String, expected: String| Err(BankError::Words { number, field, found, expected });
        for (field, list) in [("answers", &self.answers), ("feedback", &self.feedback)] {
            if list.len() != of {
                return wrong(field, format!("{} texts", list.len()), format!("{of}, one for each answer"));
            }
        }
        let single = [("title", &self.title), ("question", &self.question), ("alt", &self.alt)];
        let many =
            self.answers.iter().map(|t| ("answers", t)).chain(self.feedback.iter().map(|t| ("feedback", t)));
        for (field, text) in single.into_iter().chain(many) {
            let length = text.chars().count();
            if text.trim().is_empty() || length > MOST_WORDS {
                return wrong(field, format!("{length} characters"), format!("1 to {MOST_WORDS}, not blank"));
            }
        }
        Ok(())
    }
}

/// A question with its words.
struct Item {
    id: String,
    right: usize,
    scenario: String,
    slips: Vec<Option<Misreading>>,
    words: Words,
    size: (f64, f64),
}

/// A bank in the making.
pub struct Bank {
    form: Form,
    language: String,
    decimal: char,
    items: Vec<Item>,
    pictures: Vec<NamedFile>,
}

impl Bank {
    /// An empty one; `language` as in `xml:lang`, `decimal` stands in the numbers of the axes.
    pub fn new(form: Form, language: &str, decimal: char) -> Self {
        // Letters, digits and hyphens are all that a language tag has (RFC 5646, section 2.1).
        let language = language.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').take(35).collect();
        Self { form, language, decimal, items: Vec::new(), pictures: Vec::new() }
    }

    /// Takes a question in.
    pub fn add(&mut self, question: &Question, words: Words) -> Result<(), BankError> {
        if self.items.len() >= MOST_QUESTIONS as usize {
            return Err(BankError::Full);
        }
        words.check(question)?;
        let drawn = question.picture(&words.title, self.decimal);
        self.pictures.push((picture_name(&question.id), drawn.into_bytes()));
        self.items.push(Item {
            id: question.id.clone(),
            right: question.right(),
            scenario: question.still.scenario.clone(),
            slips: question.answers.iter().map(|a| a.slip).collect(),
            words,
            size: SIZE,
        });
        Ok(())
    }

    /// The files of it, in the order in which they stand in the archive.
    pub fn files(&self) -> Vec<NamedFile> {
        let mut files = match self.form {
            Form::Qti => qti::files(&self.items, &self.language),
            Form::Csv => vec![(table::NAME.to_string(), table::write(&self.items).into_bytes())],
        };
        files.extend(self.pictures.iter().cloned());
        files
    }
}

/// Where the picture of a question lies in the archive.
fn picture_name(id: &str) -> String {
    format!("pictures/{id}.svg")
}
