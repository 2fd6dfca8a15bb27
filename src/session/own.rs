//! What the instructor wrote of their own, met in an attempt: the misreading that explains an answer, the words of a hint.

use super::attempt::Session;
use crate::assess::hint::Rung;
use crate::assess::misreading::{Evidence, own};
use crate::assess::own::{OwnHint, OwnMisreading, PREFIX, hint_words};
use crate::assess::verdict::{Report, Step};

/// The own misreading that explains what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnReading {
    /// Its name.
    pub name: String,
    /// The step that it explains.
    pub step: Step,
    /// The instructor's words.
    pub words: String,
}

impl OwnReading {
    /// Its name as it stands beside those of the built-in ones.
    pub fn id(&self) -> String {
        format!("{PREFIX}{}", self.name)
    }
}

impl Session {
    /// The misreadings that this attempt is looked through for.
    pub fn own_misreadings(&self) -> &[OwnMisreading] {
        self.scenario().map_or(&[], |s| &s.misreading)
    }

    /// The own misreading that explains what was typed and judged so.
    pub(super) fn own_reading(&self, report: &Report) -> Option<OwnReading> {
        let list = self.own_misreadings();
        if list.is_empty() || report.passed {
            return None;
        }
        self.with_sheet(None, |sheet| {
            // An own signature lies in the numbers alone.
            let evidence = Evidence::of_numbers(sheet, report);
            own::named(&evidence, list).map(|(one, step)| OwnReading {
                name: one.name.clone(),
                step,
                words: one.words.clone(),
            })
        })?
    }

    /// The instructor's words for a hint.
    pub(super) fn own_hint(&self, topic: &str, step: Step, rung: Rung) -> Option<String> {
        let hints: &[OwnHint] = self.scenario().map_or(&[], |s| &s.hint);
        hint_words(hints, topic, step, rung).map(str::to_string)
    }
}
