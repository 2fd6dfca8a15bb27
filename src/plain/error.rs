//! Why a structure could not be read, and where.

use super::called_now;
use serde::de::{Expected, Unexpected};
use std::fmt;

/// A structure that could not be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Unread(Box<Why>);

#[derive(Clone, Debug, PartialEq)]
struct Why {
    path: String,
    at: Option<usize>,
    cause: Cause,
}

/// What is wrong. What is done about it is decided by this, never by the words of [`Unread::message`].
#[derive(Clone, Debug, PartialEq)]
pub enum Cause {
    /// A field that has to be there is not.
    Missing {
        /// The field.
        field: &'static str,
    },
    /// A field that the structure does not have.
    UnknownField {
        /// What stands there.
        name: String,
        /// What could stand there.
        known: &'static [&'static str],
    },
    /// One of several forms is asked for, and this is none of them.
    UnknownVariant {
        /// What stands there.
        name: String,
        /// What could stand there.
        known: &'static [&'static str],
    },
    /// Something else than what was expected.
    Other {
        /// What stands there.
        found: String,
        /// What was expected.
        expected: String,
    },
    /// What somebody else's code has to say: words to be shown.
    Said(String),
}

impl Unread {
    pub(super) fn new(cause: Cause) -> Self {
        Self(Box::new(Why { path: String::new(), at: None, cause }))
    }

    /// Something else than what was expected.
    pub(super) fn other(found: String, expected: String) -> Self {
        Self::new(Cause::Other { found, expected })
    }

    /// Where in the text it is, unless something further inside has said so.
    pub(super) fn at(mut self, at: Option<usize>) -> Self {
        self.0.at = self.0.at.or(at);
        self
    }

    /// It is within this field.
    #[inline(never)]
    pub(super) fn within(self, key: &str, at: Option<usize>) -> Self {
        self.outside(key.to_string(), at)
    }

    /// It is within this item of a list.
    #[inline(never)]
    pub(super) fn within_item(self, number: usize, at: Option<usize>) -> Self {
        self.outside(format!("[{number}]"), at)
    }

    fn outside(self, mut outer: String, at: Option<usize>) -> Self {
        let mut why = self.at(at);
        if !(why.0.path.is_empty() || why.0.path.starts_with('[')) {
            outer.push('.');
        }
        outer.push_str(&why.0.path);
        why.0.path = outer;
        why
    }

    /// What is wrong.
    pub fn cause(&self) -> &Cause {
        &self.0.cause
    }

    /// What stands there; none where nothing stands there.
    pub fn found(&self) -> Option<String> {
        Some(match &self.0.cause {
            Cause::Missing { .. } => return None,
            Cause::UnknownField { name, known } => {
                format!("unknown field `{name}`{}", called_now(name, known))
            }
            Cause::UnknownVariant { name, known } => {
                format!("unknown variant `{name}`{}", called_now(name, known))
            }
            Cause::Other { found, .. } => found.clone(),
            Cause::Said(words) => words.clone(),
        })
    }

    /// What was expected there; none where that is not known.
    pub fn expected(&self) -> Option<String> {
        match &self.0.cause {
            Cause::Missing { field } => Some(format!("the field `{field}`")),
            Cause::UnknownField { known, .. } | Cause::UnknownVariant { known, .. } => one_of(known),
            Cause::Other { expected, .. } => Some(expected.clone()),
            Cause::Said(_) => None,
        }
    }

    /// What is wrong, in one sentence to be shown: "unknown field `x`, expected one of ..." or "invalid type: string "a",
    /// expected f64".
    pub fn message(&self) -> String {
        match (self.found(), self.expected(), &self.0.cause) {
            (_, _, Cause::Missing { field }) => format!("missing field `{field}`"),
            (Some(found), Some(expected), _) => format!("{found}, expected {expected}"),
            (found, _, _) => found.unwrap_or_default(),
        }
    }

    /// Path of the innermost field that was begun to be read, as `bench.place[0].x`; empty at the outermost.
    pub fn path(&self) -> &str {
        &self.0.path
    }

    /// Where in the text that is, in bytes, if it is known.
    pub fn place(&self) -> Option<usize> {
        self.0.at
    }
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        if !self.0.path.is_empty() {
            f.write_str(&self.0.path)?;
            f.write_str(": ")?;
        }
        f.write_str(&self.message())
    }
}

impl std::error::Error for Unread {}

/// Names to choose from; none where there are none.
fn one_of(known: &[&str]) -> Option<String> {
    Some(match known {
        [] => return None,
        [only] => format!("`{only}`"),
        [first, second] => format!("`{first}` or `{second}`"),
        many => format!("one of `{}`", many.join("`, `")),
    })
}

impl serde::de::Error for Unread {
    #[inline(never)]
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self::new(Cause::Said(message.to_string()))
    }

    #[inline(never)]
    fn invalid_type(found: Unexpected, expected: &dyn Expected) -> Self {
        Self::other(format!("invalid type: {found}"), expected.to_string())
    }

    #[inline(never)]
    fn invalid_value(found: Unexpected, expected: &dyn Expected) -> Self {
        Self::other(format!("invalid value: {found}"), expected.to_string())
    }

    #[inline(never)]
    fn invalid_length(length: usize, expected: &dyn Expected) -> Self {
        Self::other(format!("invalid length {length}"), expected.to_string())
    }

    #[inline(never)]
    fn unknown_variant(name: &str, known: &'static [&'static str]) -> Self {
        Self::new(Cause::UnknownVariant { name: name.into(), known })
    }

    #[inline(never)]
    fn unknown_field(name: &str, known: &'static [&'static str]) -> Self {
        Self::new(Cause::UnknownField { name: name.into(), known })
    }

    #[inline(never)]
    fn missing_field(field: &'static str) -> Self {
        Self::new(Cause::Missing { field })
    }
}
