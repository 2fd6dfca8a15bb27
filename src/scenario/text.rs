//! The text of a scenario file as a plain value, and the place of a part in it. The fields are read from the plain value and
//! not from the text itself, so that the page's core holds one reader of each table and not two; what a reader of values
//! cannot tell, where the part stands that it complains about, is found here.

use super::error::ScenarioError;
use serde_json::{Map, Value};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// A step of a path into a value.
#[derive(Clone, Debug, PartialEq)]
enum Step {
    Key(String),
    Item(usize),
}

/// A scenario file's text, taken apart.
pub(super) struct Parsed<'a> {
    text: &'a str,
    table: Spanned<DeTable<'a>>,
}

impl<'a> Parsed<'a> {
    /// Takes a text apart. The error tells the line where it stops being TOML.
    pub(super) fn of(text: &'a str) -> Result<Self, ScenarioError> {
        let table = DeTable::parse(text).map_err(|e| ScenarioError {
            line: e.span().and_then(|span| line_of(text, span.start)),
            ..ScenarioError::at("file", e.message().trim(), "a TOML document")
        })?;
        Ok(Self { text, table })
    }

    /// What it says. The error names a value that JSON has no word for.
    pub(super) fn value(&self) -> Result<Value, ScenarioError> {
        let mut path = Vec::new();
        all(self.table.get_ref(), &mut path).map_err(|(found, expected)| ScenarioError {
            line: self.line(&path),
            ..ScenarioError::at(joined(&path), found, expected)
        })
    }

    /// The error of a reader that was given `value` and complained so. `complaint` asks it about another value.
    pub(super) fn blame(
        &self,
        value: &Value,
        told: &str,
        complaint: &dyn Fn(Value) -> Option<String>,
    ) -> ScenarioError {
        let path = culprit(value, told, complaint);
        let (found, expected) = split_message(told);
        ScenarioError { field: field_of(&joined(&path), told), expected, found, line: self.line(&path) }
    }

    /// The line of a part: where its key stands, or the item itself.
    fn line(&self, path: &[Step]) -> Option<usize> {
        let (first, rest) = path.split_first()?;
        let Step::Key(first) = first else { return None };
        let (key, mut at) = self.table.get_ref().get_key_value(first.as_str())?;
        let mut place = key.span().start;
        for step in rest {
            match (step, at.get_ref()) {
                (Step::Key(name), DeValue::Table(table)) => {
                    let (key, value) = table.get_key_value(name.as_str())?;
                    (place, at) = (key.span().start, value);
                }
                (Step::Item(k), DeValue::Array(items)) => {
                    at = items.get(*k)?;
                    place = at.span().start;
                }
                _ => return None,
            }
        }
        line_of(self.text, place)
    }
}

/// What a scenario file says, as a value; `None` where it is no TOML or says what JSON has no word for.
pub fn value_of(text: &str) -> Option<Value> {
    Parsed::of(text).ok()?.value().ok()
}

fn line_of(text: &str, place: usize) -> Option<usize> {
    text.get(..place).map(|before| before.matches('\n').count() + 1)
}

/// What was found and what was expected in its place.
type Odd = (String, &'static str);

fn all(table: &DeTable, path: &mut Vec<Step>) -> Result<Value, Odd> {
    let mut fields = Map::new();
    for (key, value) in table {
        path.push(Step::Key(key.get_ref().to_string()));
        fields.insert(key.get_ref().to_string(), plain(value.get_ref(), path)?);
        path.pop();
    }
    Ok(Value::Object(fields))
}

fn plain(value: &DeValue, path: &mut Vec<Step>) -> Result<Value, Odd> {
    Ok(match value {
        DeValue::String(text) => Value::from(text.as_ref()),
        DeValue::Integer(n) => i64::from_str_radix(n.as_str(), n.radix())
            .map(Value::from)
            .map_err(|_| (n.as_str().to_string(), "a whole number of at most 63 bits"))?,
        DeValue::Float(n) => {
            let finite = n.as_str().parse::<f64>().ok().filter(|v| v.is_finite());
            finite.map(Value::from).ok_or((n.as_str().to_string(), "a finite number"))?
        }
        DeValue::Boolean(on) => Value::from(*on),
        DeValue::Datetime(moment) => {
            return Err((moment.to_string(), "a number, a text in quotes, true or false"));
        }
        DeValue::Array(items) => {
            let mut list = Vec::with_capacity(items.len());
            for (k, item) in items.iter().enumerate() {
                path.push(Step::Item(k));
                list.push(plain(item.get_ref(), path)?);
                path.pop();
            }
            Value::Array(list)
        }
        DeValue::Table(table) => return all(table, path),
    })
}

/// The innermost part that a complaint is about. A reader goes through a table in the order of its keys and stops at the
/// first that it cannot use: so the shortest beginning of the table that brings the same complaint ends with that part. A
/// field that is missing is missed at the end of its table, whatever else is there: the part is the innermost table
/// without which nothing of the kind is missed.
fn culprit(whole: &Value, told: &str, complaint: &dyn Fn(Value) -> Option<String>) -> Vec<Step> {
    let missing = told.trim().starts_with("missing field");
    let same = |path: &[Step], part: Value| {
        let mut changed = whole.clone();
        *inner(&mut changed, path) = part;
        complaint(changed).is_some_and(|other| other == told)
    };
    let mut path = Vec::new();
    loop {
        let next = match inner(&mut whole.clone(), &path) {
            Value::Object(fields) if missing => fields
                .iter()
                .filter(|(_, value)| value.is_object() || value.is_array())
                .map(|(key, _)| key.clone())
                .find(|key| {
                    let mut without = fields.clone();
                    without.remove(key);
                    !same(&path, Value::Object(without))
                })
                .map(Step::Key),
            Value::Object(fields) => {
                let mut begun = Map::new();
                fields
                    .iter()
                    .find(|(key, value)| {
                        begun.insert((*key).clone(), (*value).clone());
                        same(&path, Value::Object(begun.clone()))
                    })
                    .map(|(key, _)| Step::Key(key.clone()))
            }
            Value::Array(items) => {
                (0..items.len()).find(|k| same(&path, Value::Array(items[..=*k].to_vec()))).map(Step::Item)
            }
            _ => None,
        };
        match next {
            Some(step) => path.push(step),
            None => return path,
        }
    }
}

/// The part at the end of a path that is there.
fn inner<'v>(value: &'v mut Value, path: &[Step]) -> &'v mut Value {
    path.iter().fold(value, |at, step| match step {
        Step::Key(key) => &mut at[key.as_str()],
        Step::Item(k) => &mut at[*k],
    })
}

/// A path as it is told: `bench.place[0].x`.
fn joined(path: &[Step]) -> String {
    let mut told = String::new();
    for step in path {
        match step {
            Step::Item(k) => told += &format!("[{k}]"),
            Step::Key(key) if told.is_empty() => told += key,
            Step::Key(key) => told += &format!(".{key}"),
        }
    }
    told
}

/// Serde says what it found and expected in one sentence: "unknown field `x`, expected one of ..." or "invalid type:
/// string "a", expected f64".
fn split_message(message: &str) -> (String, String) {
    let message = message.trim();
    match message.rsplit_once(", expected ") {
        Some((found, expected)) => (found.to_string(), expected.to_string()),
        None => match message.strip_prefix("missing field ") {
            Some(field) => ("nothing".into(), format!("the field {field}")),
            None => (message.to_string(), "another value".into()),
        },
    }
}

/// The path with the name of a missing field added, which the complaint alone has.
fn field_of(path: &str, message: &str) -> String {
    let missing = message.trim().strip_prefix("missing field `").and_then(|m| m.split('`').next());
    match missing {
        Some(name) if path.is_empty() => name.to_string(),
        Some(name) => format!("{path}.{name}"),
        None if path.is_empty() => "file".to_string(),
        None => path.to_string(),
    }
}
