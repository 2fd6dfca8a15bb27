//! How the students of a class are called: by the code that they typed, or by the number of their line.

use std::collections::HashMap;

use dicrotic::exchange::class::Line;
use dicrotic::session::seeds;

use crate::terminal;

/// The students of a class.
pub struct Students<'a> {
    /// Their lines; the number of one is its place here, from 1.
    pub lines: &'a [Line],
    /// Whether they are called by their codes.
    names: bool,
    /// The places by the codes as they count.
    places: HashMap<String, usize>,
}

impl<'a> Students<'a> {
    /// Those of these lines.
    pub fn new(lines: &'a [Line], names: bool) -> Self {
        let places = lines.iter().enumerate().map(|(k, line)| (seeds::code(&line.code), k)).collect();
        Self { lines, names, places }
    }

    /// What stands at the head of a line.
    pub fn name(&self, k: usize) -> String {
        let code = terminal::one_line(&self.lines[k].code);
        let called = terminal::one_line(&self.lines[k].name);
        match (self.names && !code.trim().is_empty(), called.is_empty()) {
            (false, _) => format!("student {}", k + 1),
            (true, true) => code,
            (true, false) => format!("{called} ({code})"),
        }
    }

    /// How somebody is called elsewhere, given a code as it was typed.
    pub fn called(&self, code: &str) -> String {
        let counted = seeds::code(code);
        match self.places.get(&counted) {
            _ if self.names && !counted.is_empty() => terminal::one_line(code),
            // Of those without a code nobody can tell one from another.
            Some(k) if !counted.is_empty() => format!("student {}", k + 1),
            _ => "a student without an ID".into(),
        }
    }
}
