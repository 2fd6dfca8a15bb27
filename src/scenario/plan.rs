//! A course: several assignments in order, with days and words, handed out as one link or one file. Each part is an ordinary
//! assignment; what students do with it, and how it is graded, is as if it had been handed out alone.

use super::check;
use super::compose;
use super::digest::{bench_digest, handed_out};
use super::error::ScenarioError;
use super::moment;
use super::schema::Scenario;
use super::text;
use crate::plain::{self, Plain, json};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Most parts.
pub const MOST_PARTS: usize = 20;
/// Longest text of a course with all its parts, bytes.
pub const MOST_BYTES: usize = (MOST_PARTS + 1) * check::MOST_BYTES;
/// Longest title, and longest words, characters.
const MOST_TITLE: usize = 80;
const MOST_WORDS: usize = 2000;

/// A course as it stands in a file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// What it is.
    pub course: Heading,
    /// Its assignments, in order.
    pub part: Vec<Part>,
}

/// What a course is called, and what its students are told.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Heading {
    /// Name in results: small letters, digits, hyphens.
    pub id: String,
    /// Heading.
    pub title: String,
    /// Text above the list.
    #[serde(default)]
    pub words: String,
}

/// One assignment of a course.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "CoursePart"))]
#[serde(default, deny_unknown_fields)]
pub struct Part {
    /// When it opens: a day or a moment (`2026-09-01`, `2026-09-01T08:00+02:00`). Students' devices and the class
    /// tell who started before; nothing is locked.
    pub opens: Option<String>,
    /// When it is due; a day counts to its end. It is compared with the clock of the student's device.
    pub due: Option<String>,
    /// Text for it in the list.
    pub words: String,
    /// The text of its scenario file, which has an `[assignment]`.
    pub scenario: String,
    /// The path of that file, from the course's own folder, instead of its text. Only the command line follows it.
    pub file: String,
}

impl Part {
    /// From when on, s since 1970.
    pub fn opens_s(&self) -> Option<u64> {
        moment::seconds(self.opens.as_ref()?, false)
    }

    /// Until when, s since 1970.
    pub fn due_s(&self) -> Option<u64> {
        moment::seconds(self.due.as_ref()?, true)
    }
}

/// Whether a text is that of a course and not of a scenario: in TOML or, out of a link, in JSON.
pub fn is_plan(text: &str) -> bool {
    value_of(text).is_some_and(|value| value.get("course").is_some() || value.get("part").is_some())
}

fn value_of(text: &str) -> Option<Value> {
    if text.trim_start().starts_with('{') { plain::value(text).ok() } else { text::value_of(text) }
}

impl Plan {
    /// Reads a course and checks it and all its parts. The error names the field, what stands there and what was expected.
    pub fn read(text: &str) -> Result<Self, ScenarioError> {
        let plan = Self::outline(text)?;
        plan.check()?;
        Ok(plan)
    }

    /// Reads its tables without looking into its parts, of which some may be in files of their own.
    pub fn outline(text: &str) -> Result<Self, ScenarioError> {
        if text.len() > MOST_BYTES {
            let expected = format!("at most {MOST_BYTES} bytes");
            return Err(ScenarioError::at("file", format!("{} bytes", text.len()), expected));
        }
        if text.trim_start().starts_with('{') {
            let damaged = |e: plain::Unread| ScenarioError::at("file", e.to_string(), "a course");
            return Plain::from(plain::value(text).map_err(damaged)?).read().map_err(damaged);
        }
        text::read(text)
    }

    fn check(&self) -> Result<(), ScenarioError> {
        let Heading { id, title, words } = &self.course;
        check::check_id("course.id", id)?;
        check::check_text("course.title", title, MOST_TITLE)?;
        worded("course.words", words)?;
        let parts = self.part.len();
        if !(1..=MOST_PARTS).contains(&parts) {
            return Err(ScenarioError::at("part", format!("{parts} parts"), format!("1 to {MOST_PARTS}")));
        }
        for (k, part) in self.part.iter().enumerate() {
            part.check(k)?;
            let bench = bench_digest(&part.scenario);
            if let Some(l) = self.part[..k].iter().position(|other| bench_digest(&other.scenario) == bench) {
                let found = format!("the same bench as part[{l}]");
                let expected = "another one: results are told apart by their bench";
                return Err(ScenarioError::at(format!("part[{k}].scenario"), found, expected));
            }
        }
        Ok(())
    }

    /// The course as a file.
    pub fn written(&self) -> String {
        let Heading { id, title, words } = &self.course;
        let mut text = String::from("[course]\n");
        // What must be there stands there even where it is empty, so that it is refused for what it is.
        for (key, value) in [("id", Some(id)), ("title", Some(title)), ("words", said(words))] {
            if let Some(value) = value {
                compose::put_pair(&mut text, key, &Value::from(value.as_str()));
            }
        }
        for part in &self.part {
            text.push_str("\n[[part]]\n");
            let texts = [
                ("opens", part.opens.as_ref()),
                ("due", part.due.as_ref()),
                ("words", said(&part.words)),
                ("file", said(&part.file)),
                ("scenario", said(&part.scenario)),
            ];
            for (key, value) in texts {
                if let Some(value) = value {
                    compose::put_pair(&mut text, key, &Value::from(value.as_str()));
                }
            }
        }
        text
    }

    /// The course as it goes to students: each part as it is handed out, moments in universal time. It is JSON, which the page
    /// reads by itself.
    pub fn handed_out(&self) -> String {
        let moment = |s: Option<u64>| s.map(crate::scenario::moment::told);
        let part = |part: &Part| {
            json!({
                "opens": moment(part.opens_s()), "due": moment(part.due_s()), "words": part.words,
                "scenario": handed_out(&part.scenario),
            })
        };
        let parts: Value = self.part.iter().map(part).collect();
        json!({"course": self.course, "part": parts}).to_string()
    }
}

impl Part {
    fn check(&self, k: usize) -> Result<(), ScenarioError> {
        let here = |field: &str| format!("part[{k}].{field}");
        if !self.file.is_empty() {
            let found = format!("\"{}\"", self.file.chars().take(200).collect::<String>());
            let expected = "the text of the assignment as scenario; only the command line follows a path";
            return Err(ScenarioError::at(here("file"), found, expected));
        }
        for (field, moment, seconds) in
            [("opens", &self.opens, self.opens_s()), ("due", &self.due, self.due_s())]
        {
            if let (Some(text), None) = (moment, seconds) {
                let found = format!("\"{}\"", text.chars().take(40).collect::<String>());
                let expected = "a day or a moment from 1970 on, as 2026-09-01 or 2026-09-01T08:00+02:00";
                return Err(ScenarioError::at(here(field), found, expected));
            }
        }
        if let Some((opens, due)) = self.opens_s().zip(self.due_s()).filter(|(opens, due)| opens >= due) {
            let found = format!("{} s before it opens", opens - due);
            return Err(ScenarioError::at(here("due"), found, "a moment after it opens"));
        }
        worded(&here("words"), &self.words)?;
        let scenario = Scenario::read(&self.scenario).map_err(|e| {
            let field = format!("{}: {}", here("scenario"), e.field);
            ScenarioError { field, ..e }
        })?;
        if scenario.assignment.is_none() {
            let expected = "an [assignment] with a key, so that each student has a bench of their own";
            return Err(ScenarioError::at(here("scenario"), "none", expected));
        }
        Ok(())
    }
}

/// A text that may be left out, where it says something.
fn said(text: &String) -> Option<&String> {
    Some(text).filter(|text| !text.is_empty())
}

fn worded(field: &str, words: &str) -> Result<(), ScenarioError> {
    let length = words.chars().count();
    if length > MOST_WORDS {
        let expected = format!("at most {MOST_WORDS} characters");
        return Err(ScenarioError::at(field, format!("{length} characters"), expected));
    }
    Ok(())
}
