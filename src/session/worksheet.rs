//! What was typed into the worksheet.

use crate::assess::parse::{self, Problem};
use crate::assess::verdict::Typed;
use serde::{Deserialize, Serialize};

/// A field of the worksheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// Beats counted, N.
    Count,
    /// Length of the window, T, s.
    Seconds,
    /// Multiplier, 60/T, 1/min.
    Multiplier,
    /// Rate, beats/min.
    Rate,
}

/// All fields, in their order.
pub const FIELDS: [Field; 4] = [Field::Count, Field::Seconds, Field::Multiplier, Field::Rate];

/// The worksheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Worksheet {
    texts: [String; 4],
}

/// A field as the page shows it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Entry {
    /// As typed.
    pub text: String,
    /// As a number.
    pub value: Option<f64>,
    /// Why it is none.
    pub problem: Option<Problem>,
}

impl Worksheet {
    fn slot(field: Field) -> usize {
        FIELDS.iter().position(|f| *f == field).unwrap_or(0)
    }

    /// Fills in a field. What is far longer than a number is cut.
    pub fn set(&mut self, field: Field, text: &str) {
        self.texts[Self::slot(field)] = text.chars().take(4 * parse::MOST_CHARACTERS).collect();
    }

    /// A field as the page shows it.
    pub fn entry(&self, field: Field) -> Entry {
        let text = self.texts[Self::slot(field)].clone();
        let read = parse::number(&text);
        Entry { value: read.ok(), problem: read.err(), text }
    }

    /// All numbers that can be read.
    pub fn typed(&self) -> Typed {
        let value = |field| self.entry(field).value;
        Typed {
            count: value(Field::Count),
            seconds: value(Field::Seconds),
            multiplier: value(Field::Multiplier),
            rate: value(Field::Rate),
        }
    }
}
