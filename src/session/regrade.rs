//! Judging an attempt by other criteria than its scenario's own, without changing its course.

use super::attempt::{Session, World};
use crate::assess::Criteria;
use crate::assess::own::OwnMisreading;
use crate::scenario::Scenario;
use core::mem::replace;

/// By what an attempt is judged, so far as that may be put right after it was made.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Terms {
    /// What must be reached.
    pub pass: Criteria,
    /// The instructor's own misreadings.
    pub misreading: Vec<OwnMisreading>,
}

impl Terms {
    /// Those of a scenario.
    pub fn of(scenario: &Scenario) -> Self {
        Self { pass: scenario.pass.clone(), misreading: scenario.misreading.clone() }
    }
}

impl Session {
    /// The same by other criteria, where there are some; the first check that passes by them stands.
    pub(super) fn judge_again(&mut self) {
        let Some(others) = self.sheet.others.clone() else { return };
        if self.sheet.by_others.as_ref().is_some_and(|check| check.report.passed) {
            return;
        }
        let wrong = self.sheet.wrong.clone();
        let own = self.set_terms(others);
        self.sheet.by_others = self.checked();
        self.set_terms(own);
        self.sheet.wrong = wrong;
    }

    /// Puts others in the place of those that the scenario has, which come back.
    fn set_terms(&mut self, terms: Terms) -> Terms {
        match &mut self.run.world {
            World::Bench { scenario, .. } => Terms {
                pass: replace(&mut scenario.pass, terms.pass),
                misreading: replace(&mut scenario.misreading, terms.misreading),
            },
            World::File { .. } => terms,
        }
    }

    /// Has each check from now on judged by other criteria as well. Nothing of the attempt's course changes by it.
    pub(super) fn judge_by(&mut self, terms: Terms) {
        self.sheet.others = Some(terms);
    }

    /// What the last check comes to by the other criteria takes the place of what it came to; whether it was passed before.
    pub(super) fn take_others(&mut self) -> Option<bool> {
        let before = self.sheet.check.as_ref().map(|check| check.report.passed)?;
        let others = self.sheet.others.take()?;
        self.sheet.check = self.sheet.by_others.take();
        self.set_terms(others);
        Some(before)
    }
}
