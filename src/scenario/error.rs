//! What is wrong with a scenario file, and where.

use serde::Serialize;
use thiserror::Error;

/// A scenario file that cannot be used.
#[derive(Clone, Debug, Error, PartialEq, Serialize)]
#[error("{}{field}: {found}; expected {expected}", line.map(|n| format!("line {n}, ")).unwrap_or_default())]
pub struct ScenarioError {
    /// Path of the field, as `bench.strap.tightness`.
    pub field: String,
    /// What would have been accepted.
    pub expected: String,
    /// What stands there.
    pub found: String,
    /// Line of the file, from 1, where it is known.
    pub line: Option<usize>,
}

impl ScenarioError {
    /// An error at a field.
    pub fn at(field: impl Into<String>, found: impl ToString, expected: impl Into<String>) -> Self {
        Self { field: field.into(), expected: expected.into(), found: found.to_string(), line: None }
    }
}
