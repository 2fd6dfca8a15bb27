//! Judging an attempt by other criteria than its scenario's own, without changing its course.

use super::attempt::{Session, World};
use crate::assess::Criteria;

impl Session {
    /// The same by other criteria, where there are some; the first check that passes by them stands.
    pub(super) fn judge_again(&mut self) {
        let Some(others) = self.sheet.others.clone() else { return };
        if self.sheet.by_others.as_ref().is_some_and(|check| check.report.passed) {
            return;
        }
        let (own, wrong) = (self.criteria(), self.sheet.wrong.clone());
        self.set_criteria(others);
        self.sheet.by_others = self.checked();
        self.set_criteria(own);
        self.sheet.wrong = wrong;
    }

    fn set_criteria(&mut self, criteria: Criteria) {
        if let World::Bench { scenario, .. } = &mut self.run.world {
            scenario.pass = criteria;
        }
    }

    /// Has each check from now on judged by other criteria as well. Nothing of the attempt's course changes by it.
    pub(super) fn judge_by(&mut self, criteria: Criteria) {
        self.sheet.others = Some(criteria);
    }

    /// What the last check comes to by the other criteria takes the place of what it came to; whether it was passed before.
    pub(super) fn take_others(&mut self) -> Option<bool> {
        let before = self.sheet.check.as_ref().map(|check| check.report.passed)?;
        let others = self.sheet.others.take()?;
        self.sheet.check = self.sheet.by_others.take();
        self.set_criteria(others);
        Some(before)
    }
}
