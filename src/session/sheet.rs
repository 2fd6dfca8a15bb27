//! The worksheet with its question, what was named, and the last check.

use super::action::{Page, Refusal};
use super::attempt::{MOST_TEXT, Session};
use super::judging::Checked;
use super::kept_recording::KeptRecording;
use super::regrade::Terms;
use super::worksheet::Worksheet;
use crate::assess::task::Task;
use crate::assess::verdict::Step;
use crate::scenario::fault;

/// Characters of a line of why that are kept.
const MOST_EXPLAINED: usize = 160;

/// The worksheet's state.
#[derive(Clone, Debug, Default)]
pub(super) struct Sheet {
    /// What is asked.
    pub(super) task: Task,
    pub(super) worksheet: Worksheet,
    /// The first of two windows: its ends and its recording.
    pub(super) kept: Option<(f64, f64, usize)>,
    /// Faults that were named.
    pub(super) named: Vec<String>,
    /// How the student says that they know it, a line; nothing judges it.
    pub(super) explained: String,
    /// The last check.
    pub(super) check: Option<Checked>,
    /// Other criteria by which checks are judged as well, and what the last one comes to by them.
    pub(super) others: Option<Terms>,
    pub(super) by_others: Option<Checked>,
    /// Codes that were wrong in any check.
    pub(super) wrong: Vec<(Step, &'static str)>,
    /// Whether the answer was shown on demand.
    pub(super) revealed: bool,
    /// Whether the attempt has ended.
    pub(super) over: bool,
}

impl Session {
    /// Does what is done on the worksheet.
    pub(super) fn on_sheet(&mut self, page: &Page) -> Result<(), Refusal> {
        match *page {
            Page::Answer { field, ref text } => {
                if self.sheet.over {
                    return Err(Refusal::AttemptOver {});
                }
                if text.chars().count() > MOST_TEXT {
                    return Err(Refusal::TextTooLong { max: MOST_TEXT });
                }
                if !self.sheet.task.asks(field) {
                    let asked: Vec<&str> = self.sheet.task.fields().iter().map(|f| f.name()).collect();
                    return Err(Refusal::BadValue { field: "field", expected: asked.join(", ") });
                }
                self.sheet.worksheet.set(field, text);
            }
            Page::KeepWindow {} => {
                if self.sheet.over {
                    return Err(Refusal::AttemptOver {});
                }
                if self.sheet.task.windows() != 2 {
                    return Err(Refusal::NotAsked {});
                }
                let shown = self.trace.shown_recording.ok_or(Refusal::NoRecording {})?;
                let (a, b) = self.recording().and_then(KeptRecording::window).ok_or(Refusal::NoWindow {})?;
                let again = self.sheet.kept.replace((a, b, shown)).is_some();
                self.sheet.worksheet.keep_first(again);
            }
            Page::KeepClear {} => self.sheet.kept = None,
            Page::Name { ref fault } => {
                if self.sheet.over {
                    return Err(Refusal::AttemptOver {});
                }
                if fault::named(fault).is_none() {
                    return Err(Refusal::BadValue {
                        field: "fault",
                        expected: "a name of the catalogue".into(),
                    });
                }
                if self.sheet.named.len() >= 4 {
                    return Err(Refusal::OutOfRange { field: "faults", min: 0.0, max: 4.0 });
                }
                if !self.sheet.named.contains(fault) {
                    self.sheet.named.push(fault.clone());
                }
            }
            Page::Unname { ref fault } => self.sheet.named.retain(|f| f != fault),
            Page::Explain { ref text } => {
                if self.sheet.check.is_some() || self.sheet.over {
                    return Err(Refusal::NotAsked {});
                }
                if text.chars().count() > MOST_TEXT {
                    return Err(Refusal::TextTooLong { max: MOST_TEXT });
                }
                self.sheet.explained = text.trim().chars().take(MOST_EXPLAINED).collect();
            }
            Page::Check {} => self.judge()?,
            Page::AnotherWindow {} => self.another_window()?,
            Page::Reveal {} => {
                if self.sheet.over {
                    return Err(Refusal::AttemptOver {});
                }
                self.reveal()?;
            }
            _ => {}
        }
        Ok(())
    }

    /// The last check.
    pub fn check(&self) -> Option<&Checked> {
        self.sheet.check.as_ref()
    }
}
