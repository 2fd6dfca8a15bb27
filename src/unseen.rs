//! Characters that a reader does not see, and that make a text do or say something else: they come in names, codes and file names of
//! others, and go out into tables, reports and terminals.

use core::ops::RangeInclusive;

/// Unicode Character Database 15.0: Default_Ignorable_Code_Point of DerivedCoreProperties, and the format characters (Cf) of
/// DerivedGeneralCategory. Among them are all that turn the direction of reading (Unicode Standard Annex 9, table 4).
const IGNORED: [RangeInclusive<char>; 25] = [
    '\u{ad}'..='\u{ad}',
    '\u{34f}'..='\u{34f}',
    '\u{600}'..='\u{605}',
    '\u{61c}'..='\u{61c}',
    '\u{6dd}'..='\u{6dd}',
    '\u{70f}'..='\u{70f}',
    '\u{890}'..='\u{891}',
    '\u{8e2}'..='\u{8e2}',
    '\u{115f}'..='\u{1160}',
    '\u{17b4}'..='\u{17b5}',
    '\u{180b}'..='\u{180f}',
    '\u{200b}'..='\u{200f}',
    '\u{202a}'..='\u{202e}',
    '\u{2060}'..='\u{206f}',
    '\u{3164}'..='\u{3164}',
    '\u{fe00}'..='\u{fe0f}',
    '\u{feff}'..='\u{feff}',
    '\u{ffa0}'..='\u{ffa0}',
    '\u{fff0}'..='\u{fffb}',
    '\u{110bd}'..='\u{110bd}',
    '\u{110cd}'..='\u{110cd}',
    '\u{13430}'..='\u{1343f}',
    '\u{1bca0}'..='\u{1bca3}',
    '\u{1d173}'..='\u{1d17a}',
    '\u{e0000}'..='\u{e0fff}',
];

/// Whether nobody sees a character: it is to be ignored, or only says how others are shown.
pub fn is_ignored(c: char) -> bool {
    // The first range that does not end before it.
    let at = IGNORED.partition_point(|range| *range.end() < c);
    IGNORED.get(at).is_some_and(|range| range.contains(&c))
}

/// Joiners without width, and what chooses between forms of a character: names of several scripts, and signs, need them.
fn joins(c: char) -> bool {
    matches!(c, '\u{200c}' | '\u{200d}' | '\u{fe00}'..='\u{fe0f}')
}

/// Whether a character acts: a control character, an end of a line or a paragraph, or one that [nobody sees](is_ignored), such as those
/// by which a text is shown in another order than it is stored; but for joiners.
pub fn acts(c: char) -> bool {
    c.is_control() || matches!(c, '\u{2028}' | '\u{2029}') || (is_ignored(c) && !joins(c))
}

/// The text with a blank in the place of each character that [acts]. Joiners without width stay.
pub fn without(text: &str) -> String {
    text.chars().map(|c| if acts(c) { ' ' } else { c }).collect()
}
