//! What was typed into the worksheet.

use crate::assess::parse::{self, Problem};
pub use crate::assess::task::{FIELDS, Field};
use crate::assess::verdict::Typed;
use serde::Serialize;

/// The worksheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Worksheet {
    texts: [String; FIELDS.len()],
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
    /// Whether it was typed as a quotient, as `60/15`.
    pub quotient: bool,
}

impl Worksheet {
    fn slot(field: Field) -> usize {
        FIELDS.iter().position(|f| *f == field).unwrap_or(0)
    }

    /// Fills in a field. What is far longer than a number is cut.
    pub fn set(&mut self, field: Field, text: &str) {
        self.texts[Self::slot(field)] = text.chars().take(4 * parse::MOST_CHARACTERS).collect();
    }

    /// Count, time and rate become those of the first of two windows. Nothing that was typed is lost: who wrote them into the first
    /// window's own fields finds them there, and what stands in the second's as well; `again`, when another window was kept before,
    /// the two change places.
    pub fn keep_first(&mut self, again: bool) {
        let pairs =
            [(Field::Count, Field::Count1), (Field::Seconds, Field::Seconds1), (Field::Rate, Field::Rate1)];
        let typed = |sheet: &Self, field: Field| !sheet.texts[Self::slot(field)].trim().is_empty();
        let first = pairs.iter().any(|(_, first)| typed(self, *first));
        let second = pairs.iter().any(|(second, _)| typed(self, *second));
        if second && (again || !first) {
            for (second, first) in pairs {
                self.texts.swap(Self::slot(second), Self::slot(first));
            }
        }
    }

    /// A field as the page shows it.
    pub fn entry(&self, field: Field) -> Entry {
        let text = self.texts[Self::slot(field)].clone();
        let read = match field {
            field if field.in_millivolts() => parse::millivolts(&text),
            Field::Seconds | Field::Seconds1 | Field::Middle => parse::seconds(&text),
            _ => parse::number(&text),
        };
        Entry { value: read.ok(), problem: read.err(), quotient: parse::is_quotient(&text), text }
    }

    /// A field's number, if it can be read.
    pub fn value(&self, field: Field) -> Option<f64> {
        self.entry(field).value
    }

    /// All numbers that can be read, of the window that is open.
    pub fn typed(&self) -> Typed {
        Typed {
            count: self.value(Field::Count),
            seconds: self.value(Field::Seconds),
            multiplier: self.value(Field::Multiplier),
            rate: self.value(Field::Rate),
        }
    }

    /// The numbers of the first of two windows.
    pub fn typed_first(&self) -> Typed {
        Typed {
            count: self.value(Field::Count1),
            seconds: self.value(Field::Seconds1),
            multiplier: None,
            rate: self.value(Field::Rate1),
        }
    }
}
