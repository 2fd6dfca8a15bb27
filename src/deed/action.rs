//! One action, as it stands in logs and scripts: `{"do": "strap", "tightness": 0.6}`. The enums themselves are tagged from
//! outside, which makes for far less code; [`Action`] turns the one form into the other.

use super::page::Page;
use super::table::{Group, Kind};
use crate::bench;
use crate::chain::Poke;
use crate::plain::{self, Plain, Unread};
use crate::recorder::settings;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use serde_json::Value;
use thiserror::Error;

/// One action.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// At the bench.
    Bench(bench::Change),
    /// At the recorder's settings.
    Recorder(settings::Change),
    /// To the subject, the sensor or a plug.
    Poke(Poke),
    /// On the trace and the worksheet.
    Page(Page),
}

/// Why something is no action.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Unknown {
    /// It is no object with a name.
    #[error("an action is an object with its name under \"do\"")]
    Nameless,
    /// No action is called so.
    #[error("there is no action \"{name}\"{now}", name = .0, now = renamed(.0))]
    Name(String),
    /// The action has other fields.
    #[error("action \"{0}\": {1}")]
    Fields(&'static str, Unread),
}

/// What to say of an action's name of an older version.
fn renamed(name: &str) -> String {
    let known: Vec<&str> = Kind::ALL.iter().map(|kind| kind.name()).collect();
    crate::plain::called_now(name, &known)
}

impl Serialize for Action {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.to_value().serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Action {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let value = Value::deserialize(deserializer)?;
        Action::from_value(value).map_err(serde::de::Error::custom)
    }
}

impl Action {
    /// The action as it stands in logs.
    pub fn to_value(&self) -> Value {
        // {"plug": {"end": ...}} becomes {"do": "plug", "end": ...}.
        let mut flat = serde_json::Map::new();
        flat.insert("do".into(), Value::from(self.name()));
        flat.extend(self.fields());
        Value::Object(flat)
    }

    /// Which action it is, whatever its fields.
    pub fn kind(&self) -> Kind {
        Kind::of(self)
    }

    /// The action's name in logs.
    pub fn name(&self) -> &'static str {
        self.kind().name()
    }

    /// Its fields as they stand in logs; an action has strings for keys and finite numbers, so that it always becomes a value.
    pub fn fields(&self) -> serde_json::Map<String, Value> {
        let value = match self {
            Action::Bench(a) => plain::given(a),
            Action::Recorder(a) => plain::given(a),
            Action::Poke(a) => plain::given(a),
            Action::Page(a) => plain::given(a),
        };
        match value {
            Value::Object(outer) => match outer.into_iter().next() {
                Some((_, Value::Object(fields))) => fields,
                _ => Default::default(),
            },
            _ => Default::default(),
        }
    }

    /// Reads an action; the error says what is wrong with it.
    pub fn from_value(value: Value) -> Result<Self, Unknown> {
        let Value::Object(mut fields) = value else { return Err(Unknown::Nameless) };
        let Some(Value::String(name)) = fields.remove("do") else { return Err(Unknown::Nameless) };
        let Some(kind) = Kind::named(&name) else { return Err(Unknown::Name(name)) };
        // {"do": "plug", "end": ...} becomes {"plug": {"end": ...}}, which serde reads without a detour.
        let named =
            Plain::from(Value::Object(plain::fields(&mut [(name, Value::Object(fields))].into_iter())));
        let read = match kind.group() {
            Group::Bench => named.read().map(Action::Bench),
            Group::Recorder => named.read().map(Action::Recorder),
            Group::Poke => named.read().map(Action::Poke),
            Group::Page => named.read().map(Action::Page),
        };
        read.map_err(|e| Unknown::Fields(kind.name(), e))
    }
}
