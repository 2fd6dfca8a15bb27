//! One reader for everything that comes in as TOML or JSON: text becomes a [`Plain`] value, and every structure is read
//! from that.
//!
//! Serde writes the code of a structure anew for each form that it is read from. With one form between, the page's core
//! carries it once, and an error of a JSON file names its field as one of a TOML file does.

mod error;
mod give;
mod read;

pub use error::Unread;
pub(crate) use give::json;
pub use give::{Fields, fields, given, list, object};

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
    /// A date or a time; nothing is read from it.
    Moment(String),
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
    /// Reads TOML.
    pub fn of_toml(text: &str) -> Result<Self, Unread> {
        let table = DeTable::parse(text)
            .map_err(|e| Unread::new(e.message().trim().to_string()).at(e.span().map(|s| s.start)))?;
        Ok(Self { at: None, kind: of_table(table.get_ref()) })
    }

    /// As JSON has it. Numbers that JSON does not know become null.
    pub fn into_value(self) -> Value {
        match self.kind {
            Kind::Null => Value::Null,
            Kind::Bool(on) => Value::Bool(on),
            Kind::Below(n) => Value::from(n),
            Kind::Whole(n) => Value::from(n),
            Kind::Float(n) => Value::from(n),
            Kind::Text(text) | Kind::Moment(text) => Value::String(text),
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
    serde_json::from_str(text).map_err(|e| Unread::new(e.to_string()))
}

fn of_table(table: &DeTable) -> Kind {
    let entry = |(key, value): (&toml::Spanned<std::borrow::Cow<str>>, &toml::Spanned<DeValue>)| Entry {
        key: key.get_ref().to_string(),
        at: Some(key.span().start),
        value: Plain { at: Some(value.span().start), kind: of_toml(value.get_ref()) },
    };
    Kind::Table(table.iter().map(entry).collect())
}

fn of_toml(value: &DeValue) -> Kind {
    match value {
        DeValue::String(text) => Kind::Text(text.to_string()),
        DeValue::Integer(n) => {
            let whole = u64::from_str_radix(n.as_str(), n.radix()).map(Kind::Whole);
            let signed = || i64::from_str_radix(n.as_str(), n.radix()).map(Kind::Below);
            // Too many digits for a whole number: what wants one will refuse it.
            whole.or_else(|_| signed()).unwrap_or_else(|_| of_float(n.as_str()))
        }
        DeValue::Float(n) => of_float(n.as_str()),
        DeValue::Boolean(on) => Kind::Bool(*on),
        DeValue::Datetime(moment) => Kind::Moment(moment.to_string()),
        DeValue::Array(items) => Kind::List(
            items
                .iter()
                .map(|item| Plain { at: Some(item.span().start), kind: of_toml(item.get_ref()) })
                .collect(),
        ),
        DeValue::Table(table) => of_table(table),
    }
}

fn of_float(digits: &str) -> Kind {
    digits.parse().map_or(Kind::Null, Kind::Float)
}
