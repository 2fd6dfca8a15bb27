//! Whether the commas of a column divide thousands. `2,272` is a decimal number where others have other numbers of decimals;
//! where every comma stands before three digits and other numbers are whole and have none, it is more likely 2272.

use super::cells;

/// What is known of a column so far.
#[derive(Default)]
pub(super) struct Thousands {
    /// The first number that may be one of thousands, with its line.
    grouped: Option<(usize, String)>,
    /// The first whole number without a comma.
    plain: Option<String>,
    /// A number that shows that the comma is the decimal.
    decimal: bool,
}

impl Thousands {
    /// Looks at a cell of the column.
    pub fn see(&mut self, text: &str, line: usize) {
        if self.decimal {
            return;
        }
        match text.split_once(',') {
            Some((whole, part)) => {
                let digits = whole.trim_start_matches(['-', '+']);
                let three = part.len() == 3 && part.bytes().all(|b| b.is_ascii_digit());
                // A group before the first comma has one to three digits and no zero first.
                if !three || !(1..=3).contains(&digits.len()) || digits.starts_with('0') {
                    self.decimal = true;
                } else if self.grouped.is_none() {
                    self.grouped = Some((line, text.to_string()));
                }
            }
            None if self.plain.is_none() => {
                let whole = text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'-' | b'+'));
                self.plain =
                    cells::number(text, false).filter(|v| whole && *v != 0.0).map(|_| text.to_string());
            }
            None => {}
        }
    }

    /// The line and the number that may be one of thousands, and the one beside which it may be so.
    pub fn found(self) -> Option<(usize, String, String)> {
        let short = |text: String| text.chars().take(40).collect();
        let ((line, grouped), plain) = self.grouped.zip(self.plain).filter(|_| !self.decimal)?;
        Some((line, short(grouped), short(plain)))
    }
}
