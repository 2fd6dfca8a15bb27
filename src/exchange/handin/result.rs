//! The result file: everything about an attempt as JSON that a person can read.
//!
//! `checksum` is the SHA-256, in hexadecimal digits, of the file's JSON without that field, written without blanks and
//! with the keys of every object in order. It is there to notice accidental change; who wants to change a file can
//! also work the checksum out anew.

use super::error::HandinError;
use super::grade::Outcome;
use super::handed::Handed;
use crate::plain;
use crate::scenario::digest::{canonical, digest, handed_out, hex};
use crate::session::attempt::Logged;
use crate::session::compact::About;
use crate::session::{Session, save, seeds};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};

/// What the field `format` says.
pub const FORMAT: &str = "dicrotic-result";
/// Number of this form.
pub const VERSION: u32 = 4;
/// How the names of result files end.
pub const EXTENSION: &str = ".dicrotic-result.json";
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 4 << 20;

/// The file's fields.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Form {
    format: String,
    version: u32,
    /// Version of the program that wrote it.
    program: String,
    about: About,
    scenario_id: String,
    /// See [`digest`].
    scenario_sha256: String,
    /// Text of the scenario, as it is [handed out](handed_out).
    scenario: String,
    /// Decimal digits.
    seed: String,
    samples: u64,
    log: Vec<Logged>,
    /// What stands on the worksheet, field by field, as typed.
    answers: Map<String, Value>,
    /// Faults that were named.
    named: Vec<String>,
    verdict: Claim,
    checksum: String,
}

/// What a file claims came of an attempt. The names stand in it as they were written, also those of another version.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// Number of checks.
    pub tries: u32,
    /// Whether the last check was passed.
    pub passed: bool,
    /// The first step that went wrong.
    pub first_wrong: Option<String>,
    /// Codes of the judged steps.
    pub codes: Vec<String>,
    /// The misreading that explains what was typed.
    pub misreading: Option<String>,
}

impl Claim {
    /// As it stands in a file.
    pub fn of(outcome: &Outcome) -> Self {
        Self {
            tries: outcome.tries,
            passed: outcome.passed,
            first_wrong: outcome.first_wrong.map(|step| step.name().into()),
            codes: outcome.codes.iter().map(|code| code.to_string()).collect(),
            misreading: outcome.explained(),
        }
    }
}

/// What a file says of the attempt besides its verdict. A replay must come to the same.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Said {
    /// Name of the scenario.
    pub scenario_id: String,
    /// What stands on the worksheet, field by field, as typed.
    pub answers: Map<String, Value>,
    /// Faults that were named.
    pub named: Vec<String>,
}

impl Said {
    /// What is so of an attempt.
    pub fn of(session: &Session) -> Self {
        let mut answers =
            session.typed().map(|(field, typed)| (field.name().to_string(), Value::from(typed)));
        Self {
            scenario_id: session.scenario().map_or_else(String::new, |s| s.id.clone()),
            answers: plain::fields(&mut answers),
            named: session.named().to_vec(),
        }
    }
}

/// The result file of an attempt; `None` for an opened recording.
pub fn write(session: &Session, about: &About) -> Option<String> {
    let text = handed_out(session.scenario_text()?);
    let Said { scenario_id, answers, named } = Said::of(session);
    let mut about = about.clone();
    about.student = seeds::kept(&about.student);
    let form = Form {
        format: FORMAT.into(),
        version: VERSION,
        program: env!("CARGO_PKG_VERSION").into(),
        about,
        scenario_id,
        scenario_sha256: hex(&digest(&text)),
        scenario: text,
        seed: session.seed().to_string(),
        samples: session.samples(),
        log: session.log().to_vec(),
        answers,
        named,
        verdict: Claim::of(&Outcome::of(session)),
        checksum: String::new(),
    };
    let mut value = plain::given(&form);
    value["checksum"] = Value::from(checksum(&value));
    serde_json::to_string_pretty(&value).ok()
}

/// Reads a result file. What it says is only compared with itself here, see [`Handed::replay`].
pub fn read(text: &str) -> Result<Handed, HandinError> {
    if text.len() > MOST_BYTES {
        return Err(HandinError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    // A mark of byte order, as some editors put it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value: Value =
        serde_json::from_str(text).map_err(|e| match e.is_eof() && text.trim_start().starts_with('{') {
            true => HandinError::CutShort {},
            false => HandinError::NoResult { found: e.to_string() },
        })?;
    let format = value.get("format").and_then(Value::as_str).unwrap_or_default();
    if format != FORMAT {
        let found = if format.is_empty() { "no field \"format\"".into() } else { short(format) };
        return Err(HandinError::NoResult { found });
    }
    let Some(version) = value.get("version").and_then(Value::as_u64) else {
        return Err(HandinError::NoResult { found: "a result file without the number of its form".into() });
    };
    if version != u64::from(VERSION) {
        return Err(HandinError::Version { found: version });
    }
    let sum = checksum(&value);
    let form: Form = plain::from_value(value).map_err(|e| HandinError::NoResult { found: e.to_string() })?;
    let seed = save::seed(&form.seed).map_err(|e| HandinError::NoResult { found: e.to_string() })?;
    let mut doubts = Vec::new();
    if form.checksum != sum {
        doubts.push(HandinError::Changed {});
    }
    if form.scenario_sha256 != hex(&digest(&form.scenario)) {
        doubts.push(HandinError::OtherScenario {});
    }
    let mut about = form.about;
    about.student = seeds::kept(&about.student);
    Ok(Handed {
        about,
        program: form.program.chars().take(40).collect(),
        scenario: form.scenario,
        seed,
        samples: form.samples,
        log: form.log,
        claims: Some(form.verdict),
        said: Some(Said { scenario_id: form.scenario_id, answers: form.answers, named: form.named }),
        whole: None,
        outcome: None,
        doubts,
    })
}

/// The start of a text that somebody else wrote.
fn short(text: &str) -> String {
    format!("format \"{}\"", text.chars().take(40).collect::<String>())
}

fn checksum(value: &Value) -> String {
    let mut value = value.clone();
    if let Some(fields) = value.as_object_mut() {
        fields.remove("checksum");
    }
    let mut told = String::new();
    canonical(&value, &mut told);
    hex(&Sha256::digest(told.as_bytes()))
}
