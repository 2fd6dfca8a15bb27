//! The anonymous table: a row a person, with a number that tells nothing of who it is, their arm, and what each test came to. It can
//! be published, and everything that is told of a study can be worked out from it again.

use super::LEAST;
use super::came::Person;
use super::deal::{ARMS, Arm, keyed};
use super::effect::{Effect, Pair};
use crate::exchange::class::table;
use crate::session::seeds;
use serde::Serialize;
use thiserror::Error;

/// The head of the table.
pub const HEAD: &str = "person,arm,first,second,later";
/// Most rows that are read.
pub const MOST_ROWS: usize = 50_000;

/// A person.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Their number in the table.
    pub person: String,
    /// Their arm.
    pub arm: Arm,
    /// What the first and the second test came to, percent of the points.
    pub first: f64,
    /// See [`Row::first`].
    pub second: f64,
    /// The same of the later test, where they did it.
    pub later: Option<f64>,
}

/// What is wrong with a table.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum RowError {
    /// It has another head.
    #[error("line 1: found \"{found}\"; expected {HEAD}")]
    Head {
        /// What stands there.
        found: String,
    },
    /// A quote that is not closed.
    #[error("line {line}: a quote opens here and is not closed")]
    Quote {
        /// Where.
        line: usize,
    },
    /// A cell that is not what it must be.
    #[error("line {line}, {column}: found \"{found}\"; expected {expected}")]
    Cell {
        /// Where.
        line: usize,
        /// Which column.
        column: &'static str,
        /// What stands there.
        found: String,
        /// What was expected.
        expected: &'static str,
    },
    /// More rows than any study.
    #[error("{found} rows; at most {MOST_ROWS}")]
    TooMany {
        /// How many.
        found: usize,
    },
}

/// The rows of everybody who said yes and did the first and the second test, in the order of their numbers, which only who knows the
/// word can work out; and how many of each arm are not told because they are fewer than `least`.
pub fn of(people: &[Person], word: &str, least: usize) -> (Vec<Row>, [usize; 2]) {
    let mut usable: Vec<(String, &Person, f64, f64)> = people
        .iter()
        .filter(|person| person.agreed())
        .filter_map(|person| {
            let key = keyed("row", word, &seeds::code(&person.code));
            Some((key, person, person.score[0]?, person.score[1]?))
        })
        .collect();
    let few = ARMS.map(|arm| {
        let n = usable.iter().filter(|(_, person, ..)| person.arm == arm).count();
        if n < least { n } else { 0 }
    });
    // A person beyond few people would be known by their arm.
    usable.retain(|(_, person, ..)| few[ARMS.iter().position(|arm| *arm == person.arm).unwrap_or(0)] == 0);
    // Later tests of a few would tell who they are, too.
    let later = ARMS.map(|arm| {
        usable.iter().filter(|(_, person, ..)| person.arm == arm && person.score[2].is_some()).count()
            >= least
    });
    usable.sort_by(|a, b| a.0.cmp(&b.0));
    let row = |(k, (_, person, first, second)): (usize, (String, &Person, f64, f64))| Row {
        person: format!("{}", k + 1),
        arm: person.arm,
        first,
        second,
        later: person.score[2].filter(|_| later[usize::from(person.arm == Arm::Without)]),
    };
    (usable.into_iter().enumerate().map(row).collect(), few)
}

/// The table as text.
pub fn written(rows: &[Row]) -> String {
    let mut text = format!("{HEAD}\n");
    for row in rows {
        let later = row.later.map_or_else(String::new, |later| format!("{later:.2}"));
        text += &format!("{},{},{:.2},{:.2},{later}\n", row.person, row.arm.name(), row.first, row.second);
    }
    text
}

/// Reads a table. The error names line and column.
pub fn read(text: &str) -> Result<Vec<Row>, RowError> {
    let rows = table::rows(text).map_err(|line| RowError::Quote { line })?;
    let short = |text: &str| text.chars().take(40).collect::<String>();
    let head = rows.first().map_or_else(String::new, |row| row.cells.join(","));
    if head != HEAD {
        return Err(RowError::Head { found: short(&head) });
    }
    if rows.len() > MOST_ROWS + 1 {
        return Err(RowError::TooMany { found: rows.len() - 1 });
    }
    rows[1..].iter().map(|row| one(row.line, &row.cells)).collect()
}

fn one(line: usize, cells: &[String]) -> Result<Row, RowError> {
    let cell = |k: usize| cells.get(k).map_or("", String::as_str);
    let wrong = |k: usize, column: &'static str, expected: &'static str| RowError::Cell {
        line,
        column,
        found: cell(k).chars().take(40).collect(),
        expected,
    };
    if cells.len() > 5 {
        return Err(wrong(5, "after the last column", "nothing"));
    }
    let number = |k: usize, column: &'static str| {
        let value: Option<f64> = cell(k).parse().ok();
        let value = value.filter(|v| (0.0..=100.0).contains(v));
        value.ok_or_else(|| wrong(k, column, "a number from 0 to 100, with a point"))
    };
    Ok(Row {
        person: cell(0).into(),
        arm: Arm::of_name(cell(1)).ok_or_else(|| wrong(1, "arm", "with or without"))?,
        first: number(2, "first")?,
        second: number(3, "second")?,
        later: if cell(4).is_empty() { None } else { Some(number(4, "later")?) },
    })
}

/// What a table comes to.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Effects {
    /// The second test against the first; none where an arm has too few people.
    pub second: Option<Effect>,
    /// The later test against the first.
    pub later: Option<Effect>,
}

/// Works out what a table comes to, where each arm has `least` people at least (two, and never fewer).
pub fn effects(rows: &[Row], least: usize) -> Effects {
    let pairs = |arm: Arm, after: fn(&Row) -> Option<f64>| -> Vec<Pair> {
        rows.iter().filter(|row| row.arm == arm).filter_map(|row| Some((row.first, after(row)?))).collect()
    };
    let effect = |after: fn(&Row) -> Option<f64>| {
        let [with, without] = ARMS.map(|arm| pairs(arm, after));
        (with.len().min(without.len()) >= least.max(2)).then(|| Effect::of(&with, &without))
    };
    Effects { second: effect(|row| Some(row.second)), later: effect(|row| row.later) }
}

/// [`effects`] with the usual fewest people.
pub fn usual_effects(rows: &[Row]) -> Effects {
    effects(rows, LEAST)
}
