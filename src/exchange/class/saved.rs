//! A class as one file: the list, what was decided, what was set, and everything that came in, as it came. The grades are
//! not in it; who opens it grades anew and is told what changed. What was set stands in it as it is handed out, so that the
//! instructor's word leaves in no file of a class; files that were saved with it in plain letters are read all the same.

use super::care::{Cares, Terms};
use super::course::{Class, Failed, Source, Stood};
use super::roster::{Entry, MOST_STUDENTS};
use super::within::Within;
use crate::plain;
use crate::scenario::digest::handed_out;
use crate::scenario::plan::Plan;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use thiserror::Error;

/// What the field `format` says.
pub const FORMAT: &str = "dicrotic-class";
/// Number of this form.
pub const VERSION: u32 = 1;
/// How the names of such files end.
pub const EXTENSION: &str = ".dicrotic-class.json";
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 256 << 20;
/// Most results.
pub const MOST_RESULTS: usize = 50_000;

/// Why a text is no saved class.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum SavedError {
    /// It is too long.
    #[error("{bytes} bytes; a saved class has at most {most}")]
    TooLong {
        /// How long it is.
        bytes: usize,
        /// How long it may be.
        most: usize,
    },
    /// Something else, or damaged.
    #[error("not a saved class: {found}")]
    NoClass {
        /// What was found.
        found: String,
    },
    /// Written by another version.
    #[error("form {found} of a saved class; this version reads form {VERSION}")]
    Version {
        /// Which.
        found: u64,
    },
}

impl SavedError {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            Self::TooLong { bytes, most } => ("class_too_long", plain::json!({"bytes": bytes, "most": most})),
            Self::NoClass { found } => ("class_foreign", plain::json!({"found": found})),
            Self::Version { found } => ("class_version", plain::json!({"found": found, "ours": VERSION})),
        }
    }
}

/// A scenario that was set.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Given {
    from: String,
    text: String,
}

/// The file's fields.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Form {
    format: String,
    version: u32,
    /// Version of the program that wrote it.
    program: String,
    set: Vec<Given>,
    /// The course whose parts were set, as JSON.
    #[serde(skip_serializing_if = "Option::is_none")]
    course: Option<String>,
    terms: Terms,
    roster: Vec<Entry>,
    cares: Cares,
    /// How everybody stood when it was saved.
    stood: Vec<Stood>,
    /// Scenarios of codes, each once; a code names one by its place.
    scenarios: Vec<String>,
    results: Vec<Came>,
    failed: Vec<Failed>,
}

/// A result as it came: a file's text, or a code with the place of its scenario.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Came {
    file: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    text: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    code: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    scenario: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    within: Option<Within>,
}

/// The text of something that was set as it is handed out.
fn out(text: &str) -> String {
    if text.is_empty() { String::new() } else { handed_out(text) }
}

/// A course with its parts as they are handed out, as JSON.
fn course(plan: &Plan) -> String {
    let mut plan = plan.clone();
    plan.part.iter_mut().for_each(|part| part.scenario = out(&part.scenario));
    plain::given(&plan).to_string()
}

/// The class as a file.
pub fn write(class: &Class) -> String {
    let mut scenarios: Vec<String> = Vec::new();
    let mut place = |text: &str| {
        let known = scenarios.iter().position(|one| one == text);
        known.unwrap_or_else(|| {
            scenarios.push(text.into());
            scenarios.len() - 1
        })
    };
    let hashed = |failed: &Failed| {
        let mut failed = failed.clone();
        failed.source.scenario = out(&failed.source.scenario);
        failed
    };
    let results = class
        .sources
        .iter()
        .map(|source| Came {
            file: source.file.clone(),
            text: source.text.clone(),
            code: source.code.clone(),
            scenario: (!source.scenario.is_empty()).then(|| place(&out(&source.scenario))),
            within: source.within.clone(),
        })
        .collect();
    let form = Form {
        format: FORMAT.into(),
        version: VERSION,
        program: env!("CARGO_PKG_VERSION").into(),
        set: class.set.all().iter().map(|o| Given { from: o.from.clone(), text: out(&o.text) }).collect(),
        course: class.plan.as_ref().map(course),
        terms: class.terms.clone(),
        roster: class.roster.clone(),
        cares: class.cares.clone(),
        stood: class.stand(),
        scenarios,
        results,
        failed: class.failed.iter().map(hashed).collect(),
    };
    format!("{}\n", plain::given(&form))
}

/// A class out of a file, and what came in, which is to be graded again. How everybody stood is there to compare with.
pub fn read(text: &str) -> Result<(Class, Vec<Source>), SavedError> {
    if text.len() > MOST_BYTES {
        return Err(SavedError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    let foreign = |found: String| SavedError::NoClass { found };
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value = plain::value(text).map_err(|e| foreign(e.to_string()))?;
    let format = value.get("format").and_then(Value::as_str).unwrap_or_default();
    if format != FORMAT {
        return Err(foreign(format!("format \"{}\"", format.chars().take(40).collect::<String>())));
    }
    let Some(version) = value.get("version").and_then(Value::as_u64) else {
        return Err(foreign("a saved class without the number of its form".into()));
    };
    if version != u64::from(VERSION) {
        return Err(SavedError::Version { found: version });
    }
    let form: Form = plain::from_value(value).map_err(|e| foreign(e.to_string()))?;
    for (what, found, most) in [
        ("students", form.roster.len(), MOST_STUDENTS),
        ("results", form.results.len() + form.failed.len(), MOST_RESULTS),
    ] {
        if found > most {
            return Err(foreign(format!("{found} {what}; at most {most}")));
        }
    }
    let mut class = Class {
        roster: form.roster,
        cares: form.cares,
        terms: form.terms,
        stood: form.stood,
        ..Class::default()
    };
    if let Some(course) = &form.course {
        let plan = Plan::read(course).map_err(|e| foreign(format!("course: {e}")))?;
        class.plan = Some(plan);
    }
    for one in form.set {
        class
            .set
            .put(&one.from, &one.text)
            .map_err(|e| foreign(format!("what was set, {}: {e}", one.from)))?;
    }
    let mut waiting = Vec::new();
    for (k, one) in form.results.into_iter().enumerate() {
        let scenario =
            match one.scenario {
                None => String::new(),
                Some(at) => form.scenarios.get(at).cloned().ok_or_else(|| {
                    foreign(format!("results[{k}].scenario: {at} of {}", form.scenarios.len()))
                })?,
            };
        let Came { file, text, code, within, .. } = one;
        waiting.push(Source { file, text, code, scenario, within });
    }
    waiting.extend(form.failed.iter().map(|failed| failed.source.clone()));
    // What cannot be tried again, because nothing of it was kept, is told as it was.
    class.failed = form.failed.into_iter().filter(|failed| !failed.source.is_kept()).collect();
    waiting.retain(Source::is_kept);
    Ok((class, waiting))
}
