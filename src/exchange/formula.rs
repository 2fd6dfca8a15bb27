//! Text that a spreadsheet must not take for a formula. A cell becomes one by its first character (OWASP, "CSV
//! Injection"); and what is one cell where commas divide is several where semicolons or tabs do. So an apostrophe, which
//! makes a cell text, stands before every part that begins like a formula, whatever divides the parts.

use crate::unseen::is_ignored;

/// What divides cells, here or elsewhere.
const DIVIDES: [char; 5] = [',', ';', '\t', '\n', '\r'];

/// How often an apostrophe is there already, if a part begins like a formula behind them; blanks, quotes and what
/// nobody sees do not count, because programs drop them before they look.
fn begins(part: &str) -> Option<usize> {
    let skipped = |c: char| c == '"' || c == '\'' || c.is_whitespace() || is_ignored(c);
    let inner = part.trim_start_matches(skipped);
    let formula = inner.starts_with(['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}']);
    formula.then(|| part.len() - part.trim_start_matches('\'').len())
}

fn each_part(text: &str, change: impl Fn(&str, &mut String)) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    for part in text.split_inclusive(DIVIDES) {
        change(part, &mut out);
    }
    out
}

/// The text with an apostrophe before each part that begins like a formula.
pub(super) fn disarmed(text: &str) -> String {
    each_part(text, |part, out| {
        if begins(part).is_some() {
            out.push('\'');
        }
        out.push_str(part);
    })
}

/// The text that was [`disarmed`].
pub(super) fn as_written(text: &str) -> String {
    each_part(text, |part, out| match begins(part) {
        Some(1..) => out.push_str(&part[1..]),
        _ => out.push_str(part),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_that_could_be_a_formula_is_text_and_comes_back() {
        for (text, safe) in [
            ("x;=cmd|' /C calc'!A0", "x;'=cmd|' /C calc'!A0"),
            ("=1", "'=1"),
            ("a,\"=1\"", "a,'\"=1\""),
            ("a\t +1;-2", "a\t' +1;'-2"),
            ("Group A-01", "Group A-01"),
            ("'=1", "''=1"),
            ("\u{200b}=1+1", "'\u{200b}=1+1"),
            ("a;\u{200d}\u{2060}\u{fe0f} @x", "a;'\u{200d}\u{2060}\u{fe0f} @x"),
            ("it's;a 'word'", "it's;a 'word'"),
            ("", ""),
        ] {
            assert_eq!(disarmed(text), safe);
            assert_eq!(as_written(safe), text);
        }
        // What nobody disarmed stays as it is.
        assert_eq!(as_written("=1"), "=1");
    }
}
