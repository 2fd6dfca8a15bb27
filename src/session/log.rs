//! What was done, and what was so before.

use super::action::Page;
use super::attempt::Session;
use super::causes::Before;
use crate::deed::Action;
use crate::scenario::fault::Fault;
use serde::{Deserialize, Serialize};

/// An action with the sample before which it was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Logged {
    /// Samples made since the start.
    pub at: u64,
    /// What was done.
    pub action: Action,
}

/// The log with what the way of working is judged by.
#[derive(Clone, Debug, Default)]
pub(super) struct Log {
    pub(super) entries: Vec<Logged>,
    /// What was so before each entry.
    pub(super) trail: Vec<Before>,
    /// The faults of the scenario and those that come with them.
    pub(super) cases: Vec<&'static Fault>,
    /// Other faults whose cause is there as well.
    pub(super) also: Vec<&'static str>,
}

impl Session {
    /// Everything done so far.
    pub fn log(&self) -> &[Logged] {
        &self.log.entries
    }

    /// Writes an action into the log. A drag sends many of a kind in a row; of those that leave no trace of the way
    /// (a cursor, a scroll, a part moved again before the next sample) only the last is kept.
    pub(super) fn note(&mut self, logged: Logged, before: Before) {
        use crate::bench::Change;
        let replaces = self.log.entries.last().is_some_and(|last| match (&last.action, &logged.action) {
            (Action::Page(Page::Cursor { which: a, .. }), Action::Page(Page::Cursor { which: b, .. })) => {
                a == b
            }
            (Action::Page(Page::Scroll { .. }), Action::Page(Page::Scroll { .. })) => true,
            (
                Action::Page(Page::Label { recording: a, .. }),
                Action::Page(Page::Label { recording: b, .. }),
            ) => a == b,
            (Action::Page(Page::Answer { field: a, .. }), Action::Page(Page::Answer { field: b, .. })) => {
                a == b
            }
            (Action::Bench(Change::Move { part: a, .. }), Action::Bench(Change::Move { part: b, .. })) => {
                a == b && last.at == logged.at
            }
            _ => false,
        });
        match self.log.entries.last_mut() {
            Some(last) if replaces => *last = logged,
            _ => {
                self.log.entries.push(logged);
                self.log.trail.push(before);
            }
        }
    }
}
