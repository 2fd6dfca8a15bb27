//! The class itself: what is known of it, and what came in.

use super::care::{Cares, Terms};
use super::roster::Entry;
use super::within::Within;
use crate::exchange::handin::set::{One, SetError};
use crate::exchange::handin::{Graded, HandinError, Set};
use crate::plain::json;
use crate::scenario::digest::hex;
use crate::scenario::plan::Plan;
use crate::session::compact::Code;
use crate::unseen;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Something that was handed in, as it came, so that it can be graded again.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Source {
    /// The file; in a list of codes with its place.
    pub file: String,
    /// A result file's text.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub text: String,
    /// A code.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub code: String,
    /// The text of the scenario that the code is of.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub scenario: String,
    /// The course result that it stood in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub within: Option<Within>,
}

impl Source {
    /// Whether something of it was kept, so that it can be graded again.
    pub fn is_kept(&self) -> bool {
        !(self.text.is_empty() && self.code.is_empty())
    }
}

/// Something that could not be used.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Failed {
    /// As it came.
    pub source: Source,
    /// Whose it says it is, as far as that can be read.
    pub student: String,
    /// Why, as a code with arguments.
    pub why: String,
    /// The arguments.
    pub args: Value,
}

/// How a student stood when the class was last looked at, to be compared with.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Stood {
    /// The student's code.
    pub code: String,
    /// Name of the state, see [`super::line::State`].
    pub state: String,
    /// Points of the attempt that stands for them.
    pub points: Option<u32>,
}

/// A class.
#[derive(Clone, Debug, Default)]
pub struct Class {
    /// The list of students; empty where there is none.
    pub roster: Vec<Entry>,
    /// What was decided for them.
    pub cares: Cares,
    /// By what they are judged.
    pub terms: Terms,
    /// What was set.
    pub set: Set,
    /// The course whose parts were set, where it is one: then a student is ready who is ready in every part.
    pub plan: Option<Plan>,
    /// What came in and was graded: where it came from, and what came of it, place by place.
    pub sources: Vec<Source>,
    /// See [`Class::sources`].
    pub graded: Vec<Graded>,
    /// What could not be used.
    pub failed: Vec<Failed>,
    /// How the students stood before it was graded anew.
    pub stood: Vec<Stood>,
}

impl Class {
    /// Takes a scenario, or a course with its parts, as set; in the place of what has the same bench.
    pub fn give(&mut self, from: &str, text: &str) -> Result<(), SetError> {
        if let Some(plan) = self.set.put_any(from, text)? {
            self.plan = Some(plan);
        }
        Ok(())
    }

    /// What was set, for whoever has to tell one bench from another: where it came from, its heading, its faults with their
    /// severity (nothing where a seed draws it), how many tries there are, whether it is part of the course, and whether another
    /// bench is set under its name.
    pub fn set_told(&self) -> Value {
        let parts = self.part_benches();
        let alike: Vec<&One> = self.set.of_one_name().into_iter().flat_map(|(a, b)| [a, b]).collect();
        let told = |one: &One| {
            json!({
                "from": one.from, "title": one.title, "id": one.id, "bench": hex(&one.bench), "tries": one.attempts,
                "faults": one.faults.iter().map(|f| json!({"id": f.name, "severity": f.severity})).collect::<Vec<_>>(),
                "of_course": parts.contains(&one.bench), "rival": alike.iter().any(|other| other.bench == one.bench),
            })
        };
        self.set.all().iter().map(told).collect()
    }

    /// Sets the bench of this mark no longer; a part takes its course along, because what is left of one is another course.
    pub fn take_back(&mut self, bench: &str) {
        let parts = self.part_benches();
        if parts.iter().any(|part| hex(part) == bench) {
            parts.iter().for_each(|part| self.set.take_back(part));
            self.plan = None;
        }
        let found = self.set.all().iter().find(|one| hex(&one.bench) == bench).map(|one| one.bench);
        found.iter().for_each(|bench| self.set.take_back(bench));
    }

    /// Takes down what came of something.
    pub fn take(&mut self, mut source: Source, graded: Graded) {
        source.file = unseen::without(&source.file);
        self.sources.push(source);
        self.graded.push(graded);
    }

    /// Takes down what could not be used, and why.
    pub fn fail(&mut self, source: Source, why: &HandinError) {
        self.refuse(source, why.code(), why.args());
    }

    /// The same, with the reason as a code and its arguments.
    pub fn refuse(&mut self, mut source: Source, why: &str, args: Value) {
        source.file = unseen::without(&source.file);
        let student = match Code::read(&source.code) {
            Ok(code) => code.about.student,
            Err(_) => student_said(&source.text),
        };
        self.failed.push(Failed { source, student, why: why.into(), args });
    }

    /// All that came in, to be graded anew; how the students stand now is kept to be compared with.
    pub fn again(&mut self) -> Vec<Source> {
        if !self.graded.is_empty() {
            self.stood = self.stand();
        }
        self.graded.clear();
        // Of what nothing was kept, nothing can be tried again: it stays told.
        let kept = |failed: &Failed| failed.source.is_kept();
        let (again, stays): (Vec<_>, Vec<_>) = std::mem::take(&mut self.failed).into_iter().partition(kept);
        self.failed = stays;
        std::mem::take(&mut self.sources)
            .into_iter()
            .chain(again.into_iter().map(|failed| failed.source))
            .collect()
    }

    /// Everybody with a code: those of the list, and whoever handed in beside them; each with how many tries they have more than the
    /// others.
    pub fn everybody(&self) -> Vec<(Entry, u32)> {
        let entry = |line: super::line::Line| {
            let super::line::Line { code, name, email, group, care, .. } = line;
            (Entry { code, name, email, group }, care.tries)
        };
        self.lines().into_iter().filter(|line| !line.code.is_empty()).map(entry).collect()
    }

    /// How every student stands.
    pub fn stand(&self) -> Vec<Stood> {
        let stood = |line: super::line::Line| Stood {
            code: line.code,
            state: line.state.name().into(),
            points: line.points,
        };
        self.lines().into_iter().map(stood).collect()
    }
}

/// Whose a damaged result says it is: the text after `"student":`, however the rest of the file looks.
pub fn student_said(text: &str) -> String {
    const FIELD: &str = "\"student\"";
    let after = text.find(FIELD).map(|at| text[at + FIELD.len()..].trim_start());
    let Some(value) = after.and_then(|rest| rest.strip_prefix(':')).map(str::trim_start) else {
        return String::new();
    };
    let mut end = None;
    let mut escaped = false;
    for (at, c) in value.char_indices().skip(1).take(400) {
        if c == '"' && !escaped {
            end = Some(at);
            break;
        }
        escaped = c == '\\' && !escaped;
    }
    let said = end.and_then(|end| serde_json::from_str::<String>(&value[..=end]).ok()).unwrap_or_default();
    crate::session::seeds::kept(&said)
}
