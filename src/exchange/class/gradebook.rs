//! A class as a table for a course site's gradebook: one row a student, in columns whose titles the instructor chooses,
//! because every site has its own. Plain CSV; each cell is made safe as in `handin/table.rs`.

use super::line::{Line, State};
use crate::exchange::handin::table::cell;
use crate::plain::json;
use crate::scenario::plan::MOST_PARTS;
use serde::Deserialize;
use serde_json::Value;
use thiserror::Error;

/// Points of the rubric, which are scaled to the maximum that is asked for.
const OF: f64 = crate::assess::rubric::OF as f64;
/// Most columns.
pub const MOST_COLUMNS: usize = 40;

/// What a column holds.
pub const FIELDS: [&str; 13] = [
    "code", "name", "email", "group", "state", "ready", "points", "maximum", "percent", "tries", "minutes",
    "feedback", "empty",
];

/// What stands before the number of a course's part, from 1, in a column with its points: `part_1`, `part_2`.
pub const PART: &str = "part_";

/// The place of the part whose points a field holds; `None` for any other field.
fn part_of(field: &str) -> Option<usize> {
    let n: usize = field.strip_prefix(PART)?.parse().ok()?;
    (1..=MOST_PARTS).contains(&n).then(|| n - 1)
}

/// A column: its title, and what stands in it, one of [`FIELDS`] or a [part](PART) of the course.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Column {
    /// The title that the site wants.
    pub title: String,
    /// What stands there.
    pub field: String,
}

/// What is wanted.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Order {
    /// The columns, in their order.
    pub columns: Vec<Column>,
    /// What divides cells: `,`, `;` or a tab.
    pub divides: char,
    /// Whether the file begins with the mark that tells spreadsheets that it is UTF-8.
    pub bom: bool,
    /// The most points that can be had.
    pub maximum: f64,
    /// Whether whoever handed in nothing that counts has no points, in place of zero.
    pub blank: bool,
}

impl Default for Order {
    fn default() -> Self {
        let columns = ["code", "name", "points", "maximum", "feedback"];
        Self {
            columns: columns.map(|field| Column { title: field.into(), field: field.into() }).into(),
            divides: ',',
            bom: false,
            maximum: OF,
            blank: false,
        }
    }
}

/// Why no table can be made.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum OrderError {
    /// No column, or too many.
    #[error("{found} columns; 1 to {MOST_COLUMNS}")]
    Columns {
        /// How many.
        found: usize,
    },
    /// A field that there is not.
    #[error("\"{found}\" is no field; one of {}, or {PART}1 to {PART}{MOST_PARTS}", FIELDS.join(", "))]
    Field {
        /// Which.
        found: String,
    },
    /// Another separator.
    #[error("the separator must be a comma, a semicolon or a tab")]
    Divides,
    /// No number of points.
    #[error("a maximum of {found} points; a number above 0, at most 1000")]
    Maximum {
        /// Which.
        found: f64,
    },
}

impl OrderError {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            Self::Columns { found } => ("gradebook_columns", json!({"found": found, "most": MOST_COLUMNS})),
            Self::Field { found } => ("gradebook_field", json!({"found": found})),
            Self::Divides => ("gradebook_divides", json!({})),
            Self::Maximum { found } => ("gradebook_maximum", json!({"found": found})),
        }
    }
}

/// The table of these lines; `feedback` are the words for each, in the same order.
pub fn write(lines: &[Line], feedback: &[String], order: &Order) -> Result<String, OrderError> {
    let found = order.columns.len();
    if !(1..=MOST_COLUMNS).contains(&found) {
        return Err(OrderError::Columns { found });
    }
    let known = |field: &str| FIELDS.contains(&field) || part_of(field).is_some();
    if let Some(column) = order.columns.iter().find(|column| !known(&column.field)) {
        return Err(OrderError::Field { found: column.field.clone() });
    }
    if ![',', ';', '\t'].contains(&order.divides) {
        return Err(OrderError::Divides);
    }
    if !(order.maximum.is_finite() && order.maximum > 0.0 && order.maximum <= 1000.0) {
        return Err(OrderError::Maximum { found: order.maximum });
    }
    let mut text = String::from(if order.bom { "\u{feff}" } else { "" });
    let mut row = |cells: Vec<String>| {
        text += &cells.join(&order.divides.to_string());
        text += "\r\n"; // RFC 4180
    };
    row(order.columns.iter().map(|column| cell(&column.title)).collect());
    for (k, line) in lines.iter().enumerate() {
        let words = feedback.get(k).map_or("", String::as_str);
        row(order.columns.iter().map(|column| value(&column.field, line, words, order)).collect());
    }
    Ok(text)
}

fn value(field: &str, line: &Line, feedback: &str, order: &Order) -> String {
    // Nobody is marked down for what they need not do.
    let points = match (line.state, line.points) {
        (State::Waived, _) => None,
        (_, None) => (!order.blank).then_some(0.0),
        (_, Some(points)) => Some(f64::from(points)),
    };
    let number = |v: f64| {
        let text = format!("{v:.2}");
        text.trim_end_matches('0').trim_end_matches('.').to_string()
    };
    if let Some(part) = part_of(field).and_then(|k| line.parts.get(k)) {
        let points = match (line.state, part.points) {
            (State::Waived, _) => None,
            (_, None) => (!order.blank).then_some(0.0),
            (_, Some(points)) => Some(f64::from(points)),
        };
        return points.map_or_else(String::new, |p| number(p * order.maximum / OF));
    }
    match field {
        "code" => cell(&line.code),
        "name" => cell(&line.name),
        "email" => cell(&line.email),
        "group" => cell(&line.group),
        "state" => line.state.name().into(),
        "ready" => if line.state == State::Ready { "yes" } else { "no" }.into(),
        "points" => points.map_or_else(String::new, |p| number(p * order.maximum / f64::from(line.of))),
        "maximum" => number(order.maximum),
        "percent" => points.map_or_else(String::new, |p| number(100.0 * p / f64::from(line.of))),
        "tries" => line.results.len().to_string(),
        "minutes" => format!("{:.0}", line.minutes),
        "feedback" => cell(feedback),
        _ => String::new(),
    }
}
