//! Lines into cells, cells into numbers.

use std::borrow::Cow;

/// One cell of a line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Cell<'a> {
    /// Its text, without quotes and outer blanks.
    pub text: Cow<'a, str>,
    /// Whether it stood in quotes, inside which a comma is not a separator.
    pub quoted: bool,
}

/// What stands between the cells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Separator {
    /// A comma, semicolon or tab.
    Char(char),
    /// Any run of blanks.
    Blanks,
    /// Nothing: one column.
    None,
}

/// The lines that count, with their numbers from 1: no blank ones, no comments. Line ends LF, CR LF or CR.
pub(super) fn lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    text.split(end)
        .enumerate()
        .map(|(i, line)| (i + 1, line.trim_matches(|c: char| c == '\r' || c == ' ' || c == '\0')))
        .filter(|(_, line)| !line.trim().is_empty() && !line.starts_with('#'))
}

/// A sampling rate in Hz told in a comment, as in `# Sampling Rate (Hz):= 1000.00` or `# rate_hz = 250`: a comment
/// line that names both "rate" and "hz", and the number after its last `=` or `:`.
pub(super) fn rate_in_comments(text: &str) -> Option<f64> {
    text.lines().take(100).filter_map(|l| l.trim().strip_prefix('#')).find_map(|comment| {
        let low = comment.to_lowercase();
        if !(low.contains("rate") && low.contains("hz")) {
            return None;
        }
        let tail = low.rsplit(['=', ':']).next()?.trim().trim_end_matches("hz").trim();
        tail.parse::<f64>().ok().filter(|hz| hz.is_finite())
    })
}

/// The separator of a table, told from its first lines: a tab or semicolon anywhere (outside quotes) settles it, as
/// these are never part of a number; then a comma; then blanks between numbers.
pub(super) fn separator(text: &str) -> Separator {
    let mut found = Separator::None;
    for (_, line) in lines(text).take(20) {
        let mut quoted = false;
        for c in line.chars() {
            match c {
                '"' => quoted = !quoted,
                '\t' | ';' if !quoted => return Separator::Char(c),
                ',' if !quoted => found = Separator::Char(','),
                _ => {}
            }
        }
        let words = line.split_whitespace();
        if found == Separator::None
            && words.clone().count() > 1
            && words.clone().all(|w| number(w, false).is_some())
        {
            found = Separator::Blanks;
        }
    }
    found
}

/// Splits a line. A doubled quote inside quotes is a quote.
pub(super) fn split<'a>(line: &'a str, separator: Separator, cells: &mut Vec<Cell<'a>>) {
    cells.clear();
    let plain = |text: &'a str| Cell { text: Cow::Borrowed(text.trim()), quoted: false };
    let c = match separator {
        Separator::Char(c) => c,
        Separator::Blanks => return cells.extend(line.split_whitespace().map(plain)),
        Separator::None => '\0',
    };
    if !line.contains('"') {
        return cells.extend(line.split(c).map(plain));
    }
    let mut rest = line;
    loop {
        let body = rest.trim_start_matches(' ');
        let Some(inner) = body.strip_prefix('"') else {
            let (head, tail) = rest.split_once(c).map_or((rest, None), |(h, t)| (h, Some(t)));
            cells.push(plain(head));
            match tail {
                Some(t) => rest = t,
                None => return,
            }
            continue;
        };
        let mut text = String::new();
        let mut chars = inner.char_indices().peekable();
        let mut end = inner.len();
        while let Some((i, ch)) = chars.next() {
            if ch != '"' {
                text.push(ch);
            } else if matches!(chars.peek(), Some((_, '"'))) {
                chars.next();
                text.push('"');
            } else {
                end = i + 1;
                break;
            }
        }
        cells.push(Cell { text: Cow::Owned(text.trim().to_string()), quoted: true });
        match inner[end..].split_once(c) {
            Some((_, tail)) => rest = tail,
            None => return,
        }
    }
}

/// A finite number; with `decimal_comma`, a comma may stand for the point.
pub(super) fn number(text: &str, decimal_comma: bool) -> Option<f64> {
    // std also reads "inf", "nan" and the like, which no cell of a recording may be.
    if !text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'+' | b'-' | b'.' | b',' | b'e' | b'E')) {
        return None;
    }
    let value: Option<f64> = match text.split_once(',') {
        None => text.parse().ok(),
        Some((whole, part)) if decimal_comma && !whole.contains('.') => {
            format!("{whole}.{part}").parse().ok()
        }
        Some(_) => None,
    };
    value.filter(|v| v.is_finite())
}

/// Whether a cell says that there is no value.
pub(super) fn is_missing(text: &str) -> bool {
    text.is_empty()
        || ["nan", "na", "n/a", "null", "none", "-", "--"].iter().any(|m| text.eq_ignore_ascii_case(m))
}
