//! The page's English words for what the core names by codes, so that the command line, the gradebook and the page call a step,
//! a fault, a misreading or a state alike.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use dicrotic::assess::own::PREFIX;
use serde_json::Value;

use crate::texts;

/// The messages without places; the others need a number, which only the page fills in.
static WORDS: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let files = [
        include_str!("../../../www/texts/en/debrief.ftl"),
        include_str!("../../../www/texts/en/judged.ftl"),
        include_str!("../../../www/texts/en/later/class.ftl"),
        include_str!("../../../www/texts/en/later/faults.ftl"),
        include_str!("../../../www/texts/en/later/skills.ftl"),
    ];
    // A file that cannot be read fails the build of the page and a test below; here its codes stand for themselves.
    let messages = files.into_iter().flat_map(|file| texts::messages(file).unwrap_or_default());
    let plain = |(key, value)| match value {
        Value::String(text) => Some((key, text)),
        _ => None,
    };
    messages.filter_map(plain).collect()
});

/// The words for a code of the kind that `prefix` begins the keys of, such as `class-state-` and `tried`; what an instructor
/// named has that name, and a code without words stands for itself.
pub fn named(prefix: &str, code: &str) -> String {
    if let Some(own) = code.strip_prefix(PREFIX) {
        return format!("your own: {}", own.replace('_', " "));
    }
    WORDS.get(&format!("{prefix}{code}")).cloned().unwrap_or_else(|| code.replace('_', " "))
}

/// The same within a sentence or a list: with a small letter, unless the first word is a sign such as N.
pub fn inside(prefix: &str, code: &str) -> String {
    let text = named(prefix, code);
    let mut letters = text.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() || (first == 'A' && second == ' ') => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => text,
    }
}

/// The keys of each kind begin so.
pub const STATE: &str = "class-state-";
/// A step of the verdict.
pub const STEP: &str = "debrief-step-";
/// Why a trace was not good enough.
pub const TRACE: &str = "class-trace-";
/// A misreading.
pub const MISREADING: &str = "class-misreading-";
/// A fault.
pub const FAULT: &str = "entry-";
/// A skill.
pub const SKILL: &str = "skill-";
/// What the dates of a course say of a part.
pub const PART: &str = "class-part_";

#[cfg(test)]
mod tests {
    use super::*;
    use dicrotic::assess::skill::SKILLS;
    use dicrotic::exchange::class::line::STATES;
    use dicrotic::exchange::class::talk::CAUSES;
    use dicrotic::scenario::fault;

    #[test]
    fn every_code_that_the_command_line_tells_has_words() {
        let of = |prefix: &'static str, codes: Vec<&'static str>| {
            codes.into_iter().map(move |code| format!("{prefix}{code}")).collect::<Vec<_>>()
        };
        let all = [
            of(STATE, STATES.iter().map(|state| state.name()).collect()),
            of(TRACE, CAUSES.iter().map(|(cause, _)| *cause).collect()),
            of(FAULT, fault::all().map(|one| one.id).collect()),
            of(SKILL, SKILLS.to_vec()),
        ]
        .concat();
        assert!(all.len() > 60, "{}", all.len());
        let missing: Vec<&String> = all.iter().filter(|key| !WORDS.contains_key(*key)).collect();
        assert!(missing.is_empty(), "{missing:?}");
    }

    #[test]
    fn in_a_sentence_the_first_letter_is_small_and_a_sign_stays() {
        assert_eq!(inside(STEP, "name"), "the fault you named");
        assert_eq!(inside(FAULT, "charger_near"), "charger beside the sensor cable");
        assert_eq!(inside(MISREADING, "other_window"), "T between other cursors");
        assert_eq!(inside(MISREADING, "own-guessed_it"), "your own: guessed it");
        assert_eq!(inside(STEP, "no_such_step"), "no such step");
    }
}
