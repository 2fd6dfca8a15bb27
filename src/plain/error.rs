//! Why a structure could not be read, and where.

use std::fmt;

/// A structure that could not be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Unread(Box<Why>);

#[derive(Clone, Debug, PartialEq)]
struct Why {
    path: String,
    at: Option<usize>,
    message: String,
}

impl Unread {
    pub(super) fn new(message: String) -> Self {
        Self(Box::new(Why { path: String::new(), at: None, message }))
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

    /// What is wrong, in serde's words: "unknown field `x`, expected one of ..." or "invalid type: string "a", expected
    /// f64".
    pub fn message(&self) -> &str {
        &self.0.message
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
        f.write_str(&self.0.message)
    }
}

impl std::error::Error for Unread {}

impl serde::de::Error for Unread {
    #[inline(never)]
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self::new(message.to_string())
    }
}
