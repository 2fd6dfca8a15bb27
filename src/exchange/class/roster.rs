//! The list of a class, as course sites and spreadsheets give it: a row a student, with a code and, where they are known, a
//! name, an e-mail address and a group.
//!
//! Commas, semicolons or tabs divide the cells; which of them it is the first row tells. A cell in double quotes may hold
//! any of them, and line ends, and a quote as two. A first row of titles is known by its words, in English or Spanish; without
//! one, a column of addresses is known by its signs `@`, and the others are code, name, group in this order.

use crate::exchange::class::table::{self, Row};
use crate::plain::json;
use crate::session::seeds;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::HashMap;
use thiserror::Error;

/// Longest list that is read, bytes.
pub const MOST_BYTES: usize = 1 << 20;
/// Most students of a list.
pub const MOST_STUDENTS: usize = 5000;
/// Longest cell, characters.
pub const MOST_CELL: usize = 200;
/// So many errors are told at once.
const MOST_ERRORS: usize = 20;

/// A student of the list.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Entry {
    /// The code that they type.
    pub code: String,
    /// Their name; may be empty, as all that follows.
    pub name: String,
    /// Their e-mail address.
    pub email: String,
    /// Their group.
    pub group: String,
}

/// What is wrong with a list, and on which line, from 1.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum RosterError {
    /// It is longer than any list.
    #[error("{bytes} bytes; a list has at most {most}")]
    TooLong {
        /// How long it is.
        bytes: usize,
        /// How long it may be.
        most: usize,
    },
    /// It has more rows than a class has students.
    #[error("line {line}: more than {most} students")]
    TooMany {
        /// The line of the first one too many.
        line: usize,
        /// How many there may be.
        most: usize,
    },
    /// It is no text of ours.
    #[error("line {line}: this is no plain text: save the list as CSV in UTF-8")]
    NotText {
        /// Where.
        line: usize,
    },
    /// It is an assignment, a result, or a page.
    #[error("this is no list of students: it looks like an assignment or a result")]
    NoList,
    /// There is nobody in it.
    #[error("there is no student in the list")]
    Empty,
    /// A quote that is not closed.
    #[error("line {line}: a quote opens here and is not closed")]
    OpenQuote {
        /// Where it opens.
        line: usize,
    },
    /// The titles name no code.
    #[error("line {line}: no column has the student IDs; its titles are {titles}; call it \"student ID\"")]
    NoCodeColumn {
        /// The line of the titles.
        line: usize,
        /// The titles.
        titles: String,
    },
    /// A column is there twice.
    #[error("line {line}: two columns with the {what}: \"{first}\" and \"{second}\"")]
    TwoColumns {
        /// The line of the titles.
        line: usize,
        /// What the columns hold.
        what: &'static str,
        /// The first one's title.
        first: String,
        /// The second one's.
        second: String,
    },
    /// A student without a code.
    #[error("line {line}: the student ID is missing")]
    NoCode {
        /// Where.
        line: usize,
    },
    /// A code that stands there twice: nobody could tell whose result is whose.
    #[error("line {line}: the student ID \"{code}\" is already on line {first}")]
    Twice {
        /// Where.
        line: usize,
        /// The code.
        code: String,
        /// Where it stands first.
        first: usize,
    },
    /// More cells than columns: an unquoted separator.
    #[error("line {line}: {found} cells for {columns} columns")]
    TooManyCells {
        /// Where.
        line: usize,
        /// Cells.
        found: usize,
        /// Columns.
        columns: usize,
    },
    /// A cell that is no code or name.
    #[error("line {line}: a cell of {length} characters; at most {most}")]
    LongCell {
        /// Where.
        line: usize,
        /// Its length.
        length: usize,
        /// How long it may be.
        most: usize,
    },
}

impl RosterError {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            Self::TooLong { bytes, most } => ("too_long", json!({"bytes": bytes, "most": most})),
            Self::TooMany { line, most } => ("too_many", json!({"line": line, "most": most})),
            Self::NoList => ("no_list", json!({})),
            Self::NotText { line } => ("not_text", json!({"line": line})),
            Self::Empty => ("empty", json!({})),
            Self::OpenQuote { line } => ("open_quote", json!({"line": line})),
            Self::NoCodeColumn { line, titles } => {
                ("no_code_column", json!({"line": line, "titles": titles}))
            }
            Self::TwoColumns { line, what, first, second } => {
                ("two_columns", json!({"line": line, "what": what, "first": first, "second": second}))
            }
            Self::NoCode { line } => ("no_code", json!({"line": line})),
            Self::Twice { line, code, first } => {
                ("twice", json!({"line": line, "student": code, "first": first}))
            }
            Self::TooManyCells { line, found, columns } => {
                ("too_many_cells", json!({"line": line, "found": found, "columns": columns}))
            }
            Self::LongCell { line, length, most } => {
                ("long_cell", json!({"line": line, "length": length, "most": most}))
            }
        }
    }
}

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Code,
    Name,
    First,
    Last,
    Email,
    Group,
    /// Something that is of no use here.
    Other,
}

/// Titles by their letters and digits alone, small and without accents.
const TITLES: [(Column, &[&str]); 6] = [
    (
        Column::Code,
        &[
            "code",
            "studentcode",
            "student",
            "studentid",
            "id",
            "idnumber",
            "username",
            "user",
            "userid",
            "login",
            "number",
            "codigo",
            "estudiante",
            "idestudiante",
            "usuario",
            "identificador",
            "numero",
            "matricula",
        ],
    ),
    (Column::Name, &["name", "fullname", "studentname", "nombre", "nombrecompleto", "nombreyapellidos"]),
    (Column::First, &["firstname", "givenname", "givennames", "nombredepila", "nombres"]),
    (Column::Last, &["lastname", "surname", "familyname", "apellido", "apellidos"]),
    (Column::Email, &["email", "emailaddress", "mail", "correo", "correoelectronico", "direcciondecorreo"]),
    (
        Column::Group,
        &["group", "section", "class", "lab", "labgroup", "team", "grupo", "seccion", "clase", "equipo"],
    ),
];

fn column_of(title: &str) -> Column {
    let plain: String = title
        .to_lowercase()
        .chars()
        .filter_map(|c| match c {
            'á' => Some('a'),
            'é' => Some('e'),
            'í' => Some('i'),
            'ó' => Some('o'),
            'ú' | 'ü' => Some('u'),
            c => c.is_alphanumeric().then_some(c),
        })
        .collect();
    let known = TITLES.iter().find(|(_, titles)| titles.contains(&plain.as_str()));
    known.map_or(Column::Other, |(column, _)| *column)
}

/// Reads a list that must be whole. What is wrong is told line by line, all of it together.
pub fn read(text: &str) -> Result<Vec<Entry>, Vec<RosterError>> {
    let (entries, errors) = read_lines(text)?;
    if errors.is_empty() { Ok(entries) } else { Err(errors) }
}

/// Reads a list line by line: those students who can be taken from it, and the lines that had to be left out, with the reason.
/// A student who stands there twice is taken once. Nothing is taken from what is no list.
pub fn read_lines(text: &str) -> Result<(Vec<Entry>, Vec<RosterError>), Vec<RosterError>> {
    if text.len() > MOST_BYTES {
        return Err(vec![RosterError::TooLong { bytes: text.len(), most: MOST_BYTES }]);
    }
    if let Some(at) = text.find(['\0', '\u{fffd}']) {
        let line = 1 + text[..at].matches('\n').count();
        return Err(vec![RosterError::NotText { line }]);
    }
    if is_something_else(text) {
        return Err(vec![RosterError::NoList]);
    }
    let rows = table::rows(text).map_err(|line| vec![RosterError::OpenQuote { line }])?;
    let Some(first) = rows.first() else { return Err(vec![RosterError::Empty]) };
    let titled = titles(first);
    let columns = match &titled {
        Some(columns) => columns.clone(),
        None => untitled(&rows),
    };
    let wrong = if titled.is_some() { titles_wrong(first, &columns) } else { Vec::new() };
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let mut errors = Vec::new();
    let mut entries: Vec<Entry> = Vec::new();
    let mut lines: HashMap<String, usize> = HashMap::new();
    for row in &rows[usize::from(titled.is_some())..] {
        if errors.len() >= MOST_ERRORS {
            return Err(errors); // this is no list
        }
        if entries.len() >= MOST_STUDENTS {
            return Err(vec![RosterError::TooMany { line: row.line, most: MOST_STUDENTS }]);
        }
        match entry(row, &columns) {
            Err(error) => errors.push(error),
            Ok(entry) => match lines.get(&seeds::code(&entry.code)) {
                Some(&first) => {
                    errors.push(RosterError::Twice { line: row.line, code: entry.code, first });
                }
                None => {
                    lines.insert(seeds::code(&entry.code), row.line);
                    entries.push(entry);
                }
            },
        }
    }
    match (entries.is_empty(), errors.is_empty()) {
        (false, _) => Ok((entries, errors)),
        (true, true) => Err(vec![RosterError::Empty]),
        (true, false) => Err(errors),
    }
}

/// Whether a text is TOML, JSON or marked up: each of its lines could be taken for a student.
fn is_something_else(text: &str) -> bool {
    let start = text.trim_start_matches('\u{feff}').trim_start();
    let set = |name: &str| start.strip_prefix(name).is_some_and(|rest| rest.trim_start().starts_with('='));
    let is_header = |line: &str| {
        let name = line.trim().strip_prefix('[').and_then(|rest| rest.strip_suffix(']'));
        let name = name.map(|name| name.strip_prefix('[').and_then(|n| n.strip_suffix(']')).unwrap_or(name));
        name.is_some_and(|name| !name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase()))
    };
    start.starts_with(['{', '[', '<']) || set("id") || set("format") || text.lines().any(is_header)
}

/// The columns, if a row is one of titles: one of them says code, or two are known.
fn titles(row: &Row) -> Option<Vec<Column>> {
    let mut columns: Vec<Column> = row.cells.iter().map(|cell| column_of(cell)).collect();
    let known = columns.iter().filter(|column| **column != Column::Other).count();
    let titled = columns.contains(&Column::Code) || known >= 2;
    // Beside a column of family names, "name" is the other half.
    if columns.contains(&Column::Last) && !columns.contains(&Column::First) {
        columns.iter_mut().filter(|column| **column == Column::Name).for_each(|name| *name = Column::First);
    }
    titled.then_some(columns)
}

fn titles_wrong(row: &Row, columns: &[Column]) -> Vec<RosterError> {
    let line = row.line;
    let mut errors = Vec::new();
    if !columns.contains(&Column::Code) {
        let titles = row.cells.iter().map(|cell| format!("\"{cell}\"")).collect::<Vec<_>>().join(", ");
        errors.push(RosterError::NoCodeColumn { line, titles });
    }
    for (column, what) in [
        (Column::Code, "codes"),
        (Column::Name, "names"),
        (Column::Email, "addresses"),
        (Column::Group, "groups"),
    ] {
        let mut of = columns.iter().zip(&row.cells).filter(|(c, _)| **c == column).map(|(_, title)| title);
        if let (Some(first), Some(second)) = (of.next(), of.next()) {
            let (first, second) = (first.clone(), second.clone());
            errors.push(RosterError::TwoColumns { line, what, first, second });
        }
    }
    errors
}

/// The columns of a list without titles.
fn untitled(rows: &[Row]) -> Vec<Column> {
    let width = rows.iter().map(|row| row.cells.len()).max().unwrap_or(0);
    let mut order = [Column::Code, Column::Name, Column::Group].into_iter();
    let addresses = |k: usize| {
        let mut cells =
            rows.iter().filter_map(|row| row.cells.get(k)).filter(|cell| !cell.is_empty()).peekable();
        cells.peek().is_some() && cells.all(|cell| cell.contains('@'))
    };
    // Where addresses are all there is, they are the codes.
    let first_email = (0..width).find(|k| addresses(*k)).filter(|_| width > 1);
    (0..width)
        .map(|k| if Some(k) == first_email { Column::Email } else { order.next().unwrap_or(Column::Other) })
        .collect()
}

fn entry(row: &Row, columns: &[Column]) -> Result<Entry, RosterError> {
    let line = row.line;
    let cells = row.cells.len() - row.cells.iter().rev().take_while(|cell| cell.is_empty()).count();
    if cells > columns.len() {
        return Err(RosterError::TooManyCells { line, found: cells, columns: columns.len() });
    }
    let of = |column: Column| {
        let cell = columns.iter().zip(&row.cells).find(|(c, _)| **c == column).map(|(_, cell)| cell.as_str());
        cell.unwrap_or_default()
    };
    let whole = [of(Column::First), of(Column::Last)].join(" ").trim().to_string();
    let name = if whole.is_empty() { of(Column::Name).to_string() } else { whole };
    let entry = Entry {
        code: of(Column::Code).into(),
        name,
        email: of(Column::Email).into(),
        group: of(Column::Group).into(),
    };
    if seeds::code(&entry.code).is_empty() {
        return Err(RosterError::NoCode { line });
    }
    let lengths = [&entry.code, &entry.name, &entry.email, &entry.group].map(|text| text.chars().count());
    match lengths.into_iter().max().filter(|length| *length > MOST_CELL) {
        Some(length) => Err(RosterError::LongCell { line, length, most: MOST_CELL }),
        None => Ok(entry),
    }
}
