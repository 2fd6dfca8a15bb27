//! Characters that a reader does not see, and that make a text do or say something else: they come in names, codes and file names of
//! others, and go out into tables, reports and terminals.

/// Whether a character acts: a control character, an end of a line or a paragraph, or one that turns the direction of reading, by which
/// a text is shown in another order than it is stored (Unicode Standard Annex 9, table 4: marks, embeddings, overrides, isolates).
pub fn acts(c: char) -> bool {
    let line = matches!(c, '\u{2028}' | '\u{2029}');
    let turns =
        matches!(c, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    c.is_control() || line || turns
}

/// The text with a blank in the place of each character that [acts]. Joiners without width stay: names of several scripts need them.
pub fn without(text: &str) -> String {
    text.chars().map(|c| if acts(c) { ' ' } else { c }).collect()
}
