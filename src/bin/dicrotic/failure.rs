//! Why a command could not do its work, in words for the person at the terminal.

use std::fmt::Display;

/// The reason, as one or more lines without a trailing full stop.
#[derive(Debug)]
pub struct Failure(String);

impl Failure {
    /// A failure for the reason `why`.
    pub fn new(why: impl Into<String>) -> Self {
        Self(why.into())
    }
}

impl Display for Failure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// Names what was being done when an error came.
pub trait While<T> {
    /// Turns the error into a failure that reads `doing: error`.
    fn while_doing(self, doing: impl FnOnce() -> String) -> Result<T, Failure>;
}

impl<T, E: Display> While<T> for Result<T, E> {
    fn while_doing(self, doing: impl FnOnce() -> String) -> Result<T, Failure> {
        self.map_err(|error| Failure(format!("{}: {error}", doing())))
    }
}
