//! Rows and cells of a table that somebody else made: as RFC 4180 has them, with any of the usual separators.

use crate::unseen::acts;

/// A row that has something in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// The line on which it begins, from 1.
    pub line: usize,
    /// Its cells, without blanks at their ends.
    pub cells: Vec<String>,
}

/// The rows of a text without those that are empty; the line of a quote that is not closed.
pub fn rows(text: &str) -> Result<Vec<Row>, usize> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let divides = separator(text);
    let mut rows = Vec::new();
    let mut row = Row { line: 1, cells: Vec::new() };
    let mut cell = String::new();
    let (mut line, mut quoted_since, mut was_quoted) = (1, None, false);
    let mut chars = text.chars().peekable();
    let end = |row: &mut Row, cell: &mut String| row.cells.push(std::mem::take(cell).trim().to_string());
    while let Some(c) = chars.next() {
        if c == '\n' || (c == '\r' && chars.peek() != Some(&'\n')) {
            line += 1;
        }
        if quoted_since.is_some() {
            match c {
                '"' if chars.peek() == Some(&'"') => {
                    cell.push('"');
                    chars.next();
                }
                '"' => quoted_since = None,
                // A name goes on one line wherever it is shown.
                c if acts(c) => cell.push(' '),
                c => cell.push(c),
            }
            continue;
        }
        match c {
            '"' if cell.trim().is_empty() && !was_quoted => {
                cell.clear();
                quoted_since = Some(line);
                was_quoted = true;
            }
            '\n' | '\r' => {
                if c == '\r' && chars.peek() == Some(&'\n') {
                    continue;
                }
                end(&mut row, &mut cell);
                let done = std::mem::replace(&mut row, Row { line, cells: Vec::new() });
                rows.push(done);
                was_quoted = false;
            }
            c if c == divides => {
                end(&mut row, &mut cell);
                was_quoted = false;
            }
            c if acts(c) => cell.push(' '),
            c => cell.push(c),
        }
    }
    if let Some(line) = quoted_since {
        return Err(line);
    }
    end(&mut row, &mut cell);
    rows.push(row);
    rows.retain(|row| row.cells.iter().any(|cell| !cell.is_empty()));
    Ok(rows)
}

/// What divides the cells of the first row that has any: a tab, or whichever of semicolon and comma is there more often.
fn separator(text: &str) -> char {
    let mut quoted = false;
    let mut counts = [('\t', 0), (';', 0), (',', 0)];
    for c in text.trim_start().chars() {
        match c {
            '"' => quoted = !quoted,
            '\n' | '\r' if !quoted => break,
            c if !quoted => counts.iter_mut().filter(|(s, _)| *s == c).for_each(|(_, n)| *n += 1),
            _ => {}
        }
    }
    let [(tab, tabs), (semicolon, semicolons), (comma, commas)] = counts;
    if tabs > 0 {
        tab
    } else if semicolons >= commas && semicolons > 0 {
        semicolon
    } else {
        comma
    }
}
