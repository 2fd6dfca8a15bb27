//! How much help there is: the mode chosen at the start, the ladder of hints, a worked example under way.

use super::guide::Worked;
use crate::assess::hint::{Hint, Rung};
use crate::assess::skill::Aid;
use crate::assess::verdict::Step;

/// The help's state.
#[derive(Clone, Debug, Default)]
pub(super) struct Help {
    /// How much help was asked for.
    pub(super) aid: Option<Aid>,
    /// The caution was read and agreed to.
    pub(super) agreed: bool,
    /// The sampling rate when the set-up was done by the bench.
    pub(super) rate_after_setup: Option<u32>,
    /// The last hint.
    pub(super) hint: Option<Hint>,
    /// Where on the ladder one is, and on whose.
    pub(super) rung: Option<(Step, &'static str, Rung)>,
    /// All hints given so far, in their order: they stay in sight.
    pub(super) taken: Vec<Hint>,
    /// Hints asked for so far.
    pub(super) hints: u32,
    /// A worked example.
    pub(super) worked: Option<Worked>,
}
