//! Text of others on its way to a terminal. A file's name, a student's code, a scenario's words may hold characters that
//! move the cursor, recolour, rename the window or turn the reading direction; here they become visible and do nothing.

use std::io::Write;
use std::path::Path;

use dicrotic::unseen;

/// Whether a character does something at a terminal, or hides there, instead of standing for itself.
fn acts(c: char) -> bool {
    // Joiners too, which change nothing that a terminal shows; U+FFFE is a mark of byte order turned round.
    unseen::acts(c) || unseen::is_ignored(c) || matches!(c, '\u{fffe}' | '\u{ffff}')
}

/// The text with what acts written as `\u{1b}` and the like; line ends and tabs stay.
pub fn harmless(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if acts(c) && !matches!(c, '\n' | '\t') { out.extend(c.escape_unicode()) } else { out.push(c) }
    }
    out
}

/// The text on one line: line ends become visible too, so that nobody's words pass for a line of ours.
pub fn one_line(text: &str) -> String {
    harmless(&text.replace("\r\n", "\n")).replace('\n', " \u{21b5} ").replace('\t', " ")
}

/// A file's name on one line. Bytes that are no text show as the replacement character.
pub fn name(path: &Path) -> String {
    one_line(&path.to_string_lossy())
}

/// Says something on the error output. Where nobody can hear it, that is no reason to end.
pub fn say(text: &str) {
    let _ = writeln!(std::io::stderr().lock(), "dicrotic: {}", harmless(text));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_is_made_visible_and_words_stay() {
        assert_eq!(harmless("Ана, 5 µV\n\tno"), "Ана, 5 µV\n\tno");
        assert_eq!(harmless("\u{1b}[2Ja\u{9b}b\u{7f}\r"), "\\u{1b}[2Ja\\u{9b}b\\u{7f}\\u{d}");
        assert_eq!(harmless("a\u{202e}b\u{feff}"), "a\\u{202e}b\\u{feff}");
        assert_eq!(one_line("a\ndicrotic: b"), "a \u{21b5} dicrotic: b");
    }
}
