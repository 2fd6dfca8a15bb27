//! The compact code of an attempt: one line of printable ASCII that can be pasted into a mail or kept by a courseware
//! system. It carries which scenario, the seed, what was done and when; the samples come back by replay.
//!
//! ```text
//! D3.<base64url of: body, then the first four bytes of its SHA-256>
//! body = form, first 8 bytes of the bench digest, first 4 of the whole digest, seed, samples, outcome, try, begun, length, student, program,
//!        number of entries, entries
//! entry = action, samples since the entry before, fields in the action's order
//! ```
//!
//! Whole numbers are variable-length (seven bits a byte, low ones first). A field is one self-describing value, see
//! [`value`]. Nothing is rounded here: a number that is no short decimal takes its eight bytes, so that replay is exact.
//! Actions have their numbers and the order of their fields from [`crate::deed::table`]; a word that is in no table goes
//! through as text.
//!
//! - [`table`]: the numbering of words
//! - [`value`]: numbers and texts as bytes

pub mod base64;
pub mod table;
pub mod value;

use super::attempt::{Logged, MOST_ACTIONS, Session};
use super::save::{self, MOST_SAMPLES, RestoreError};
use super::seeds;
use crate::deed::{Action, Kind};
use crate::scenario::digest;
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};
use thiserror::Error;
use value::Reader;

/// What every code begins with.
pub const PREFIX: &str = "D3.";
/// Number of this form.
const FORM: u8 = 3;
/// Bytes of the bench digest that a code carries.
pub const DIGEST_BYTES: usize = 8;
/// Bytes of the whole digest.
pub const WHOLE_BYTES: usize = 4;
/// Bytes of the checksum.
const SUM_BYTES: usize = 4;
/// Longest code that is read, characters.
const MOST_CHARACTERS: usize = 1 << 20;

/// Who did an attempt and when, as told by the page; nothing here changes the replay.
#[derive(Clone, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(default)]
pub struct About {
    /// The student's own code, as it is [kept](seeds::kept); may be empty.
    pub student: String,
    /// Which fresh try at the assignment, from 1; 0 where nobody counts.
    #[serde(rename = "try")]
    pub tries: u32,
    /// Begin by the page's clock, s since 1970; 0 where it is not known.
    pub begun_s: u64,
    /// End by the page's clock, s since 1970.
    pub ended_s: u64,
}

/// An attempt as a code holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Code {
    /// First bytes of the scenario's bench digest, see [`digest::bench_digest`].
    pub scenario: [u8; DIGEST_BYTES],
    /// First bytes of its whole digest, see [`digest::digest`].
    pub whole: [u8; WHOLE_BYTES],
    /// Seed.
    pub seed: u64,
    /// Samples made at the end.
    pub samples: u64,
    /// What came of it: 0 before the first check, then twice the number of the last check, and one more if it was
    /// passed. A replay must come to the same.
    pub outcome: u64,
    /// Version of the program that made it.
    pub program: String,
    /// Who and when.
    pub about: About,
    /// What was done.
    pub log: Vec<Logged>,
}

/// Why a text is no code of an attempt.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum CodeError {
    /// It does not begin like one.
    #[error("not a result code: it does not begin with {PREFIX}")]
    Foreign,
    /// It is longer than any attempt can be.
    #[error("the result code has {0} characters; at most {MOST_CHARACTERS} are read")]
    TooLong(usize),
    /// A character that no code has.
    #[error("character {at} of the result code is \"{found}\", which no result code has")]
    Character {
        /// Its place, from 1.
        at: usize,
        /// The character.
        found: char,
    },
    /// Cut short or changed.
    #[error("the result code is damaged: a part is missing or was changed")]
    Damaged,
    /// It was made by another version: it has another form, or tells of what the bench no longer has.
    #[error(
        "another version of the program made this result code, of form {0}; this version reads result codes of form {FORM} \
         that tell of its own bench: open it with the version that made it, or do the attempt again"
    )]
    Form(u8),
    /// The checksum holds and yet something in it cannot be.
    #[error("the result code cannot be read: {0}")]
    Content(String),
}

impl Code {
    /// The code as text.
    pub fn write(&self) -> String {
        let mut body = vec![FORM];
        body.extend(self.scenario);
        body.extend(self.whole);
        let about = &self.about;
        for number in [self.seed, self.samples, self.outcome, u64::from(about.tries), about.begun_s] {
            value::put_whole(&mut body, number);
        }
        value::put_whole(&mut body, about.ended_s.saturating_sub(about.begun_s));
        value::put_text(&mut body, &seeds::kept(&about.student));
        value::put_text(&mut body, &self.program);
        value::put_whole(&mut body, self.log.len() as u64);
        let mut before = 0;
        for logged in &self.log {
            put_entry(&mut body, logged, before);
            before = logged.at;
        }
        let sum = Sha256::digest(&body);
        body.extend(&sum[..SUM_BYTES]);
        format!("{PREFIX}{}", base64::write(&body))
    }

    /// Reads a code; blanks and line ends in it, as mail programs put them in, do not matter.
    pub fn read(text: &str) -> Result<Self, CodeError> {
        if text.len() > MOST_CHARACTERS {
            return Err(CodeError::TooLong(text.len()));
        }
        let text: String = text.chars().filter(|c| !c.is_whitespace() && *c != '\u{feff}').collect();
        let digits = text.strip_prefix(PREFIX).ok_or_else(|| match text.as_bytes() {
            [b'D', form @ b'1'..=b'9', b'.', ..] => CodeError::Form(form - b'0'),
            _ => CodeError::Foreign,
        })?;
        let bytes = base64::read(digits).map_err(|bad| match bad {
            base64::Bad::Character(at, found) => CodeError::Character { at: at + 1 + PREFIX.len(), found },
            base64::Bad::Length => CodeError::Damaged,
        })?;
        let (body, sum) =
            bytes.split_at_checked(bytes.len().wrapping_sub(SUM_BYTES)).ok_or(CodeError::Damaged)?;
        if Sha256::digest(body)[..SUM_BYTES] != *sum {
            return Err(CodeError::Damaged);
        }
        let mut reader = Reader::new(body);
        let form = reader.byte()?;
        if form != FORM {
            return Err(CodeError::Form(form));
        }
        let mut scenario = [0; DIGEST_BYTES];
        let mut whole = [0; WHOLE_BYTES];
        for byte in scenario.iter_mut().chain(&mut whole) {
            *byte = reader.byte()?;
        }
        let (seed, samples, outcome) = (reader.whole()?, reader.whole()?, reader.whole()?);
        let tries = u32::try_from(reader.whole()?).map_err(|_| content("a number of tries beyond reason"))?;
        let begun_s = reader.whole()?;
        let ended_s = begun_s.checked_add(reader.whole()?).ok_or_else(|| content("an end beyond reason"))?;
        let (student, program) = (seeds::kept(&reader.text()?), reader.text()?);
        let about = About { student, tries, begun_s, ended_s };
        let entries = reader.whole()?;
        if entries > MOST_ACTIONS as u64 {
            return Err(content(format!("{entries} entries, at most {MOST_ACTIONS}")));
        }
        let mut log = Vec::new();
        let mut before = 0;
        for _ in 0..entries {
            let logged = entry(&mut reader, before)?;
            before = logged.at;
            log.push(logged);
        }
        if !reader.is_empty() {
            return Err(content("more bytes than entries"));
        }
        Ok(Self { scenario, whole, seed, samples, outcome, program, about, log })
    }

    /// Whether this is an attempt at the bench of the scenario with this text.
    pub fn is_of(&self, scenario_text: &str) -> bool {
        digest::bench_digest(scenario_text)[..DIGEST_BYTES] == self.scenario
    }

    /// Whether it was judged by this very text.
    pub fn is_of_whole(&self, scenario_text: &str) -> bool {
        digest::digest(scenario_text)[..WHOLE_BYTES] == self.whole
    }

    /// Does the attempt again, given its scenario's text.
    pub fn replay(&self, scenario_text: &str) -> Result<Session, RestoreError> {
        save::replay(scenario_text, self.seed, self.samples, &self.log)
    }
}

impl Session {
    /// The attempt as a code; `None` for an opened recording.
    pub fn code(&self, about: &About) -> Option<Code> {
        let text = self.scenario_text()?;
        let (mut scenario, mut whole) = ([0; DIGEST_BYTES], [0; WHOLE_BYTES]);
        scenario.copy_from_slice(&digest::bench_digest(text)[..DIGEST_BYTES]);
        whole.copy_from_slice(&digest::digest(text)[..WHOLE_BYTES]);
        Some(Code {
            scenario,
            whole,
            seed: self.seed(),
            samples: self.samples(),
            outcome: self.outcome(),
            program: env!("CARGO_PKG_VERSION").into(),
            about: about.clone(),
            log: self.log().to_vec(),
        })
    }

    /// What came of the attempt so far, as [`Code::outcome`] has it.
    pub fn outcome(&self) -> u64 {
        self.check().map_or(0, |c| 2 * u64::from(c.tries) + u64::from(c.report.passed))
    }
}

fn content(what: impl Into<String>) -> CodeError {
    CodeError::Content(what.into())
}

fn put_entry(body: &mut Vec<u8>, logged: &Logged, before: u64) {
    let row = logged.action.kind().row();
    value::put_whole(body, u64::from(row.number));
    // A log that is out of order is written as it is and refused at replay, as it is when it comes from a file.
    value::put_whole(body, logged.at.wrapping_sub(before));
    let fields = logged.action.fields();
    for key in row.fields {
        match fields.get(*key) {
            Some(field) => value::put(body, field),
            None => value::put_none(body),
        }
    }
}

fn entry(reader: &mut Reader, before: u64) -> Result<Logged, CodeError> {
    let number = reader.whole()?;
    let at = before.wrapping_add(reader.whole()?);
    if at > MOST_SAMPLES {
        return Err(content(format!("an action at sample {at}, at most {MOST_SAMPLES}")));
    }
    let kind = Kind::numbered(number)
        .ok_or_else(|| content(format!("action number {number}, which this version does not know")))?;
    let mut fields = Map::new();
    fields.insert("do".into(), Value::from(kind.name()));
    for key in kind.row().fields {
        if let Some(field) = reader.field()? {
            // As a socket alone: a note may hold any word.
            if *key == "socket" && field.as_str().is_some_and(|word| table::RETIRED.contains(&word)) {
                return Err(CodeError::Form(FORM));
            }
            fields.insert((*key).into(), field);
        }
    }
    let action = Action::from_value(Value::Object(fields)).map_err(|e| content(e.to_string()))?;
    Ok(Logged { at, action })
}
