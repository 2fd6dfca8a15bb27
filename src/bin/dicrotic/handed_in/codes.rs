//! The codes in a text as people pass them on: several on a line, in quotes, behind bullets and notes, quoted in an answer
//! (`>`), wrapped by mail at any width, with soft line ends (`=`, RFC 2045). A code has a checksum, so that its end is
//! found by trying.

use dicrotic::session::compact::{Code, PREFIX};

/// Most codes of one file.
pub const MOST_CODES: usize = 5000;
/// From so many characters on a word of a code's letters is taken for a part of one.
const PART: usize = 24;
/// Most ends that are tried for a code that goes over several lines.
const MOST_TRIES: usize = 40;

/// One code, or what looks like one, with the line on which it begins.
#[derive(Debug, PartialEq)]
pub struct Found {
    /// The line, from 1.
    pub line: usize,
    /// The code in one piece, or what is wrong.
    pub code: Result<String, String>,
}

/// A line without what mail puts before it; with the lines that soft line ends tie to it.
struct Line {
    number: usize,
    text: String,
}

/// All codes of a text, in their order. An error for more than are read.
pub fn find(text: &str) -> Result<Vec<Found>, String> {
    let count = text.matches(PREFIX).count();
    if count > MOST_CODES {
        return Err(format!(
            "{count} result codes; a list has at most {MOST_CODES}: divide it into several files"
        ));
    }
    let lines = lines(text);
    let mut found = Vec::new();
    let mut k = 0;
    while k < lines.len() {
        let Line { number, text } = &lines[k];
        let starts = starts(text);
        k += 1;
        if starts.is_empty() {
            // Words of prose are shorter, and an address has other letters.
            if is_part(text) && text.len() >= PART {
                let why = "this looks like a part of a result code whose beginning is missing".into();
                found.push(Found { line: *number, code: Err(why) });
            }
            continue;
        }
        for (n, start) in starts.iter().enumerate() {
            let end = starts.get(n + 1).copied().unwrap_or(text.len());
            let piece = &text[*start..end];
            let code = &piece[..PREFIX.len() + letters(&piece[PREFIX.len()..])];
            let last = n + 1 == starts.len();
            // What follows on the line belongs to no code: it ends here.
            let open = last && ends_open(&piece[code.len()..]);
            if !open || Code::read(code).is_ok() {
                found.push(Found { line: *number, code: Ok(code.to_string()) });
                continue;
            }
            let (whole, used) = joined(code, &lines[k..]);
            found.push(Found { line: *number, code: Ok(whole) });
            k += used;
        }
    }
    Ok(found)
}

/// A code that goes on over the next lines, and how many of them belong to it.
fn joined(start: &str, next: &[Line]) -> (String, usize) {
    let parts: Vec<&str> = next.iter().map_while(|line| part(&line.text)).collect();
    // A code ends where lines end to be of one length, or with the last of them; the longest first.
    let shorter = |k: usize| k + 1 == parts.len() || parts[k + 1].len() != parts[k].len();
    let ends = (0..parts.len()).rev().filter(|k| shorter(*k) || *k < 3).take(MOST_TRIES);
    for end in ends {
        let whole = [&[start], &parts[..=end]].concat().concat();
        if Code::read(&whole).is_ok() {
            return (whole, end + 1);
        }
    }
    // Damaged: long parts under it are parts of it and no news.
    let used = parts.iter().take_while(|part| part.len() >= PART).count();
    if used == 0 { (start.to_string(), 0) } else { ([&[start], &parts[..used]].concat().concat(), used) }
}

/// Where codes begin in a line: `D3.`, and the other forms where so much follows that it is one.
fn starts(line: &str) -> Vec<usize> {
    let form = |at: &usize| {
        let digit = line.as_bytes()[at + 1];
        let follows = letters(&line[at + PREFIX.len()..]);
        line[*at..].starts_with(PREFIX) || (matches!(digit, b'1'..=b'9') && follows >= PART)
    };
    line.match_indices('D')
        .map(|(at, _)| at)
        .filter(|at| line.as_bytes().get(at + 2) == Some(&b'.') && line.is_char_boundary(at + PREFIX.len()))
        .filter(form)
        .collect()
}

/// How many letters of a code a text begins with.
fn letters(text: &str) -> usize {
    text.bytes().take_while(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_')).count()
}

/// Whether nothing but marks follows a piece of a code, so that it may go on with the next line.
fn ends_open(rest: &str) -> bool {
    rest.chars().all(|c| c.is_whitespace())
}

/// The letters of a line that is nothing but a part of a code, perhaps with a mark behind its end.
fn part(line: &str) -> Option<&str> {
    let part = &line[..letters(line)];
    let marks = |c: char| c.is_whitespace() || "\"'”’»“)>]},;.".contains(c);
    (!part.is_empty() && line[part.len()..].chars().all(marks)).then_some(part)
}

/// Whether a line is a part of a code and no long word or rule: letters of both kinds stand mixed.
fn is_part(line: &str) -> bool {
    let mixed = line.chars().skip(1).any(char::is_uppercase) && line.contains(char::is_lowercase);
    mixed && part(line).is_some()
}

/// The lines of a text with any line ends, without marks of quoting and without what has no width.
fn lines(text: &str) -> Vec<Line> {
    let text: String =
        text.chars().filter(|c| !matches!(c, '\u{ad}' | '\u{200b}' | '\u{2060}' | '\u{feff}')).collect();
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    let mut lines: Vec<Line> = Vec::new();
    let mut tied = false;
    for (k, line) in text.lines().enumerate() {
        let plain = line.trim_start_matches(|c: char| c == '>' || c.is_whitespace()).trim_end();
        let (plain, soft) = plain.strip_suffix('=').map_or((plain, false), |rest| (rest, true));
        match lines.last_mut().filter(|_| tied) {
            Some(before) => before.text.push_str(plain),
            None => lines.push(Line { number: k + 1, text: plain.to_string() }),
        }
        tied = soft;
    }
    lines
}

/// Reads the only code of a line; the reader's own words where there is none.
pub fn only(line: &str) -> Result<String, String> {
    let mut found = find(line)?;
    match found.len() {
        0 => Err(format!("no result code ({PREFIX}...) and no result")),
        1 => found.remove(0).code,
        many => Err(format!("{many} result codes on one line; expected one")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dicrotic::session::Session;
    use dicrotic::session::compact::CodeError;

    const SCENARIO: &str = include_str!("../../../../scenarios/01-first-wiring.toml");

    fn code(seed: u64) -> String {
        Session::new(SCENARIO, seed).unwrap().code(&Default::default()).unwrap().write()
    }

    fn wrapped(code: &str, width: usize, before: &str, after: &str) -> String {
        let pieces: Vec<String> = code
            .as_bytes()
            .chunks(width)
            .map(|c| format!("{before}{}", String::from_utf8_lossy(c)))
            .collect();
        pieces.join(&format!("{after}\n"))
    }

    #[test]
    fn codes_are_found_as_people_pass_them_on() {
        let (a, b) = (code(1), code(u64::MAX));
        let both = [a.clone(), b.clone()];
        let quoted_printable = format!("{}\n{b}", wrapped(&a, 9, "", "="));
        for (shape, text) in [
            ("two on a line", format!("{a} {b}")),
            ("two without a blank", format!("{a}{b}")),
            ("two with a comma", format!("first {a}, then {b}.")),
            ("CR", format!("{a}\r{b}\r")),
            ("CR LF", format!("{a}\r\n{b}\r\n")),
            ("quotes", format!("\"{a}\"\n“{b}”\n")),
            ("bullets", format!("- {a}\n 2. {b}\n")),
            ("wrapped", format!("{}\n\n{}\n", wrapped(&a, 20, "", ""), wrapped(&b, 33, "", ""))),
            ("wrapped, words after", format!("{}\nThanks\nAnna\n{b}", wrapped(&a, 20, "", ""))),
            (
                "wrapped one under the other",
                format!("{}\n{}", wrapped(&a, 20, "", ""), wrapped(&b, 20, "", "")),
            ),
            ("quoted", format!("{}\n{}\n", wrapped(&a, 20, "> ", ""), wrapped(&b, 20, ">> ", " "))),
            (
                "in quotes and wrapped",
                format!("\"{}\"\n'{}'", wrapped(&a, 30, "  ", ""), wrapped(&b, 30, "", "")),
            ),
            ("soft line ends", quoted_printable),
            ("a mark and nothing wide", format!("\u{feff}{}\u{200b}{}\n{b}", &a[..20], &a[20..])),
        ] {
            let found: Vec<String> = find(&text).unwrap().into_iter().map(|f| f.code.unwrap()).collect();
            assert_eq!(found, both, "{shape}: {text}");
        }
    }

    #[test]
    fn what_cannot_be_read_is_told_once_with_its_line() {
        let (a, b) = (code(1), code(2));
        let damaged = format!("{}X{}", &a[..10], &a[11..]);
        let text = format!("Dear all,\n\n{}\nbest,\nA.\n{b}\n", wrapped(&damaged, 30, "", ""));
        let found = find(&text).unwrap();
        assert_eq!(found.iter().map(|f| f.line).collect::<Vec<_>>(), [3, text.lines().count()]);
        assert!(Code::read(found[0].code.as_ref().unwrap()).is_err());
        let tail = &a[5..];
        assert!(find(&format!("\n{tail}\n")).unwrap()[0].code.as_ref().unwrap_err().contains("beginning"));
        let old = format!("D1.{}", "Ab3".repeat(12));
        assert_eq!(find(&old).unwrap()[0].code, Ok(old.clone()));
        assert!(matches!(Code::read(&old), Err(CodeError::Form(1))));
        assert_eq!(
            find("D.\nThe D2 lab. Donaudampfschifffahrtsgesellschaft\n----------------------------").unwrap(),
            []
        );
        assert!(find(&"D3.x\n".repeat(MOST_CODES + 1)).unwrap_err().contains("at most 5000"));
    }
}
