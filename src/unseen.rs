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

/// Whether a character has no width and stands for nothing: soft hyphen, joiners and what else hides (Unicode Technical Report 36), a
/// mark of byte order, tags.
pub fn hides(c: char) -> bool {
    matches!(c,
        '\u{ad}' | '\u{180e}' | '\u{200b}'..='\u{200d}' | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{fffe}' | '\u{ffff}'
        | '\u{e0000}'..='\u{e007f}')
}

/// The text with a blank in the place of each character that [acts]. Joiners without width stay: names of several scripts need them.
pub fn without(text: &str) -> String {
    text.chars().map(|c| if acts(c) { ' ' } else { c }).collect()
}
