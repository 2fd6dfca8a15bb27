//! What of a scenario is handed out, and which bench it is.
//!
//! Two digests, both SHA-256 of the scenario as it is [handed out](handed_out), as JSON without blanks, with the keys of
//! every table in order, whole numbers without a point, and without what says nothing (empty texts, lists and tables):
//!
//! - the whole digest ([`digest`]) changes with every password;
//! - the bench digest ([`bench_digest`]) leaves out [what may be put right later](TOLD): words, order of difficulty, what
//!   must be reached, the instructor's own misreadings and hints, the number of tries. Results are compared with what was set by it, and the heart of an assigned bench
//!   is drawn from it.

use super::compose;
use super::text::value_of;
use serde_json::{Map, Number, Value};
use sha2::{Digest, Sha256};

/// What is no part of the bench: of the file, and of its table `assignment`.
pub const TOLD: [&[&str]; 2] =
    [&["level", "title", "aim", "brief", "pass", "misreading", "hint"], &["attempts", "opening", "closing"]];
/// What a password's hash begins with.
const HASHED: &str = "sha256:";
/// What stands before key and password, so that no other use of the hash gives the same.
const PASSWORD: &str = "dicrotic password 1";
/// The same for the heart of a student's bench, and of a worked example.
const HEART: &str = "dicrotic heart 1";
const EXAMPLE: &str = "dicrotic example 1";

/// A scenario's text as it goes to students: without comments, with the hash of the instructor's password in the password's place,
/// and without scripted attempts. The worked example, the first that passes, stays where it may be watched: where there
/// is no `[assignment]`, or where that says `worked = true`.
pub fn handed_out(text: &str) -> String {
    match value_of(text) {
        Some(Value::Object(fields)) => minimised(&compose::write(&stripped(fields))),
        _ => text.to_string(),
    }
}

/// A scenario's text without comments and blank lines; the text itself where that would change what it says.
pub fn minimised(text: &str) -> String {
    let kept = |line: &&str| !line.trim().is_empty() && !line.trim_start().starts_with('#');
    let short: String = text.lines().filter(kept).flat_map(|line| [line.trim_end(), "\n"]).collect();
    match (value_of(&short), value_of(text)) {
        (Some(a), Some(b)) if a == b => short,
        _ => text.to_string(),
    }
}

/// The whole digest.
pub fn digest(text: &str) -> [u8; 32] {
    of(text, &[&[], &[]])
}

/// The bench digest.
pub fn bench_digest(text: &str) -> [u8; 32] {
    of(text, &TOLD)
}

fn of(text: &str, without: &[&[&str]; 2]) -> [u8; 32] {
    let Some(Value::Object(fields)) = value_of(text) else { return Sha256::digest(text.as_bytes()).into() };
    let mut fields = stripped(fields);
    without[0].iter().for_each(|key| drop(fields.remove(*key)));
    if let Some(Value::Object(assignment)) = fields.get_mut("assignment") {
        without[1].iter().for_each(|key| drop(assignment.remove(*key)));
    }
    let mut told = String::new();
    canonical(&plain(Value::Object(fields)), &mut told);
    Sha256::digest(told.as_bytes()).into()
}

/// A scenario's fields as they are handed out.
fn stripped(mut fields: Map<String, Value>) -> Map<String, Value> {
    let mut shown = true;
    if let Some(Value::Object(assignment)) = fields.get_mut("assignment") {
        shown = assignment.get("worked") == Some(&Value::Bool(true));
        let key = assignment.get("key").and_then(Value::as_str).unwrap_or_default().to_string();
        if let Some(Value::String(password)) = assignment.get_mut("password")
            && !password.is_empty()
        {
            *password = hashed(&key, password);
        }
    }
    if let Some(Value::Array(attempts)) = fields.remove("attempt")
        && let Some(example) = attempts.into_iter().find(|a| a["expect"]["passed"] == true).filter(|_| shown)
    {
        fields.insert("attempt".into(), Value::Array(vec![example]));
    }
    fields
}

/// What says nothing left out, and numbers in one form.
fn plain(value: Value) -> Value {
    match value {
        Value::Object(fields) => {
            let fields = fields.into_iter().map(|(key, value)| (key, plain(value)));
            Value::Object(fields.filter(|(_, value)| !says_nothing(value)).collect())
        }
        Value::Array(items) => Value::Array(items.into_iter().map(plain).collect()),
        Value::Number(n) => match n.as_f64().filter(|x| n.is_f64() && x.fract() == 0.0 && x.abs() < 9e15) {
            Some(whole) => Value::Number(Number::from(whole as i64)),
            None => Value::Number(n),
        },
        other => other,
    }
}

fn says_nothing(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::String(text) => text.is_empty(),
        Value::Array(items) => items.is_empty(),
        Value::Object(fields) => fields.is_empty(),
        _ => false,
    }
}

/// JSON without blanks and with the keys of every object in order.
pub fn canonical(value: &Value, told: &mut String) {
    match value {
        Value::Object(fields) => {
            let mut keys: Vec<&String> = fields.keys().collect();
            keys.sort();
            told.push('{');
            for (k, key) in keys.into_iter().enumerate() {
                if k > 0 {
                    told.push(',');
                }
                told.push_str(&Value::from(key.as_str()).to_string());
                told.push(':');
                canonical(&fields[key], told);
            }
            told.push('}');
        }
        Value::Array(items) => {
            told.push('[');
            for (k, item) in items.iter().enumerate() {
                if k > 0 {
                    told.push(',');
                }
                canonical(item, told);
            }
            told.push(']');
        }
        plain => told.push_str(&plain.to_string()),
    }
}

/// Whether a password is its hash already.
pub fn is_hashed(password: &str) -> bool {
    password.strip_prefix(HASHED).is_some_and(|d| d.len() == 64 && d.bytes().all(|b| b.is_ascii_hexdigit()))
}

/// The instructor's password as it travels: SHA-256 with the assignment's key as its salt. A hash stays as it is.
pub fn hashed(key: &str, password: &str) -> String {
    if is_hashed(password) {
        return password.to_string();
    }
    let told = format!("{PASSWORD}\n{}\n{}", key.trim(), password.trim());
    format!("{HASHED}{}", hex(&Sha256::digest(told.as_bytes())))
}

/// From what the heart and all else that is drawn for an assigned bench comes: the seed and the bench digest, so that
/// another bench, or the same without its `[assignment]`, has another heart. A worked example has one that is no student's.
pub fn heart(text: &str, seed: u64, example: bool) -> u64 {
    let domain = if example { EXAMPLE } else { HEART };
    let hash = Sha256::digest(format!("{domain}\n{}\n{seed}", hex(&bench_digest(text))).as_bytes());
    hash[..8].iter().fold(0, |heart, byte| heart << 8 | u64::from(*byte))
}

/// Bytes as hexadecimal digits.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|b| format!("{b:02x}")).collect()
}
