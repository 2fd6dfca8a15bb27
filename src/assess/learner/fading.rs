//! Help that fades: a step less after each success, a step more after two failures in a row (faded worked examples: Renkl &
//! Atkinson 2003, Educ Psychol 38:15; the two are a design default).

use crate::deed::Aid;

#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Fading {
    level: u8,
    failures: u8,
}

impl Fading {
    pub(super) fn pass(&mut self) {
        self.level = (self.level + 1).min(2);
        self.failures = 0;
    }

    pub(super) fn fail(&mut self) {
        self.failures += 1;
        if self.failures == 2 {
            self.level = self.level.saturating_sub(1);
            self.failures = 0;
        }
    }

    pub(super) fn seen(&mut self) {
        self.level = self.level.max(1);
    }

    pub(super) fn aid(self) -> Aid {
        [Aid::Shown, Aid::Half, Aid::Alone][usize::from(self.level.min(2))]
    }
}
