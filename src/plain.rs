//! One reader for everything that comes in as TOML or JSON: text becomes a [`Plain`] value, and every structure is read
//! from that.
//!
//! Serde writes the code of a structure anew for each form that it is read from. With one form between, the page's core
//! carries it once, and an error of a JSON file names its field as one of a TOML file does.

mod error;
mod give;
mod names;
mod read;
mod renamed;

pub use error::{Cause, Unread};
pub(crate) use give::json;
pub use give::{Fields, fields, given, list, object, put};
pub(crate) use names::names;
pub use renamed::now as called_now;

use serde::de::DeserializeOwned;
use serde_json::Value;
use toml::de::{DeTable, DeValue};

/// A value, and where in the text it begins, in bytes, if that is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Plain {
    at: Option<usize>,
    kind: Kind,
}

#[derive(Clone, Debug, PartialEq)]
enum Kind {
    Null,
    Bool(bool),
    /// A whole number below zero.
    Below(i64),
    /// A whole number from zero.
    Whole(u64),
    Float(f64),
    Text(String),
    List(Vec<Plain>),
    Table(Vec<Entry>),
}

#[derive(Clone, Debug, PartialEq)]
struct Entry {
    key: String,
    /// Where the key begins.
    at: Option<usize>,
    value: Plain,
}

impl Plain {
    /// Reads TOML. What JSON has no word for, dates and numbers that are none, is refused with its path; where the text is no
    /// TOML at all, the path is empty.
    pub fn of_toml(text: &str) -> Result<Self, Unread> {
        let table =
            DeTable::parse(text).map_err(|e| said(e.message().trim()).at(e.span().map(|s| s.start)))?;
        Ok(Self { at: None, kind: of_table(table.get_ref())? })
    }

    /// As JSON has it.
    pub fn into_value(self) -> Value {
        match self.kind {
            Kind::Null => Value::Null,
            Kind::Bool(on) => Value::Bool(on),
            Kind::Below(n) => Value::from(n),
            Kind::Whole(n) => Value::from(n),
            Kind::Float(n) => Value::from(n),
            Kind::Text(text) => Value::String(text),
            Kind::List(items) => Value::Array(items.into_iter().map(Plain::into_value).collect()),
            Kind::Table(entries) => {
                let mut all = Fields::new();
                for entry in entries {
                    all.insert(entry.key, entry.value.into_value());
                }
                Value::Object(all)
            }
        }
    }

    /// Reads a structure.
    pub fn read<T: DeserializeOwned>(&self) -> Result<T, Unread> {
        T::deserialize(self)
    }
}

impl From<Value> for Plain {
    fn from(value: Value) -> Self {
        let kind = match value {
            Value::Null => Kind::Null,
            Value::Bool(on) => Kind::Bool(on),
            Value::Number(n) => match (n.as_u64(), n.as_i64()) {
                (Some(n), _) => Kind::Whole(n),
                (None, Some(n)) => Kind::Below(n),
                (None, None) => n.as_f64().map_or(Kind::Null, Kind::Float),
            },
            Value::String(text) => Kind::Text(text),
            Value::Array(items) => Kind::List(items.into_iter().map(Plain::from).collect()),
            Value::Object(fields) => Kind::Table(
                fields.into_iter().map(|(key, value)| Entry { key, at: None, value: value.into() }).collect(),
            ),
        };
        Self { at: None, kind }
    }
}

/// Reads a structure from the text of a JSON document.
pub fn from_json<T: DeserializeOwned>(text: &str) -> Result<T, Unread> {
    Plain::from(value(text)?).read()
}

/// Reads a structure from a value.
pub fn from_value<T: DeserializeOwned>(value: Value) -> Result<T, Unread> {
    Plain::from(value).read()
}

/// Reads the text of a JSON document as it is.
pub fn value(text: &str) -> Result<Value, Unread> {
    serde_json::from_str(text).map_err(|e| said(&e.to_string()))
}

fn of_table(table: &DeTable) -> Result<Kind, Unread> {
    let mut entries = Vec::with_capacity(table.len());
    for (key, value) in table {
        let (name, at) = (key.get_ref(), Some(key.span().start));
        let kind = of_toml(value.get_ref()).map_err(|e| e.within(name, at))?;
        let value = Plain { at: Some(value.span().start), kind };
        entries.push(Entry { key: name.to_string(), at, value });
    }
    Ok(Kind::Table(entries))
}

fn of_toml(value: &DeValue) -> Result<Kind, Unread> {
    Ok(match value {
        DeValue::String(text) => Kind::Text(text.to_string()),
        DeValue::Integer(n) => {
            let whole = u64::from_str_radix(n.as_str(), n.radix()).map(Kind::Whole);
            let signed = || i64::from_str_radix(n.as_str(), n.radix()).map(Kind::Below);
            whole.or_else(|_| signed()).map_err(|_| odd(n.as_str(), "a whole number of at most 64 bits"))?
        }
        DeValue::Float(n) => {
            let finite = n.as_str().parse::<f64>().ok().filter(|v| v.is_finite());
            finite.map(Kind::Float).ok_or_else(|| odd(n.as_str(), "a finite number"))?
        }
        DeValue::Boolean(on) => Kind::Bool(*on),
        DeValue::Datetime(moment) => {
            return Err(odd(&moment.to_string(), "a number, a text in quotes, true or false"));
        }
        DeValue::Array(items) => {
            let mut list = Vec::with_capacity(items.len());
            for (k, item) in items.iter().enumerate() {
                let at = Some(item.span().start);
                let kind = of_toml(item.get_ref()).map_err(|e| e.within_item(k, at))?;
                list.push(Plain { at, kind });
            }
            Kind::List(list)
        }
        DeValue::Table(table) => of_table(table)?,
    })
}

/// A value that JSON has no word for.
fn odd(found: &str, expected: &str) -> Unread {
    Unread::other(found.into(), expected.into())
}

/// What the reader of a text has to say.
fn said(words: &str) -> Unread {
    Unread::new(Cause::Said(words.into()))
}
