//! The header's fields of ASCII: numbers in eight characters, and what is read of each.

use crate::exchange::error::{Expected, FileError, Place};

/// Which way a number may be rounded.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Toward {
    Down,
    Up,
}

/// A number in eight characters, rounded down or up to what they can hold, with as many decimals as fit.
pub(super) fn eight(value: f64, toward: Toward) -> Option<String> {
    let mut power = 1e7;
    for decimals in (0..=7).rev() {
        let scaled = value * power;
        let whole = scaled.round();
        // What the arithmetic of doubles is off by is no part of the value.
        let near = (scaled - whole).abs() <= 1e-9 * scaled.abs();
        let kept = match toward {
            _ if near => whole,
            Toward::Down => scaled.floor(),
            Toward::Up => scaled.ceil(),
        };
        let text = format!("{:.decimals$}", kept / power);
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        let text = if text == "-0" { "0" } else { text };
        if text.len() <= 8 && value.is_finite() {
            return Some(text.to_string());
        }
        power /= 10.0;
    }
    None
}

/// A header under the reader's eye.
pub(super) struct Header<'a> {
    pub file: &'a str,
    pub bytes: &'a [u8],
}

impl Header<'_> {
    /// The text of a field without the blanks that fill it. Bytes beyond ASCII, which some files have, are kept as
    /// Latin-1.
    pub fn text(&self, at: usize, len: usize) -> String {
        let field = self.bytes.get(at..at + len).unwrap_or_default();
        let text: String = field.iter().map(|b| char::from(*b)).collect();
        text.trim_matches([' ', '\0']).to_string()
    }

    /// A whole number from `low` to `high`.
    pub fn whole(
        &self,
        at: usize,
        len: usize,
        field: &'static str,
        low: i64,
        high: i64,
    ) -> Result<i64, FileError> {
        let found = self.text(at, len);
        found
            .parse::<i64>()
            .ok()
            .filter(|n| (low..=high).contains(n))
            .ok_or_else(|| self.wrong(at, field, Expected::WholeNumber, low as f64, high as f64))
    }

    /// A finite number.
    pub fn number(&self, at: usize, field: &'static str) -> Result<f64, FileError> {
        let found = self.text(at, 8);
        // Some writers use a decimal comma.
        found
            .replace(',', ".")
            .parse::<f64>()
            .ok()
            .filter(|v| v.is_finite())
            .ok_or_else(|| self.wrong(at, field, Expected::Number, 0.0, 0.0))
    }

    /// The error for a field.
    pub fn wrong(
        &self,
        at: usize,
        field: &'static str,
        expected: Expected,
        low: f64,
        high: f64,
    ) -> FileError {
        // All numbers but the number of signals have eight characters.
        let width = if at == 252 { 4 } else { 8 };
        let file = self.file.to_string();
        let found =
            self.text(at, width).chars().map(|c| if c.is_control() { '\u{fffd}' } else { c }).collect();
        FileError::FileField { file, place: Place::Byte, at, field, expected, low, high, found }
    }
}
