//! The points that there are: each a code and what it is given for. A kind of question may have points of its own.

use super::super::verdict::Step;
use crate::deed::Kind as Deed;

/// A point: its code, and what it is given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PointOf {
    /// Its code.
    pub code: &'static str,
    /// What it is given for.
    pub(super) how: How,
}

/// What a point is given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum How {
    /// Something was done.
    Done(Deed),
    /// The first was done before the second was done for the first time; at any time where the second was not.
    Before(Deed, Deed),
    /// The sensor's cable is in the input that is shown.
    Routed,
    /// The strap is on and snug.
    Strapped,
    /// The trace is without these findings.
    Without(&'static [&'static str]),
    /// Single beats could be seen, and their shape was kept.
    View,
    /// These steps are right.
    Right(&'static [Step]),
    /// A test told what is wrong.
    Tested,
    /// One change at a time.
    OneChange,
    /// No cause remains.
    Mended,
    /// The recording is long enough.
    Long,
}

impl PointOf {
    const fn of(code: &'static str, how: How) -> Self {
        Self { code, how }
    }

    /// A point for steps that are right.
    pub const fn right(code: &'static str, steps: &'static [Step]) -> Self {
        Self::of(code, How::Right(steps))
    }
}

const RESTLESS: &[&str] = &["trace_restless", "trace_spike", "trace_step", "trace_unlike"];

/// The bench put together.
pub(super) const SETUP: &[PointOf] = &[
    PointOf::of("linked", How::Done(Deed::Record)),
    PointOf::of("socket", How::Routed),
    PointOf::of("strap", How::Strapped),
];

/// The trace tuned.
pub(super) const SIGNAL: &[PointOf] = &[
    PointOf::of("size", How::Without(&["trace_small", "trace_tall"])),
    PointOf::of("hum", How::Without(&["trace_hum"])),
    PointOf::of("unclipped", How::Without(&["trace_clipped"])),
    PointOf::of("calm", How::Without(RESTLESS)),
    PointOf::of("view", How::View),
];

/// Recorded long enough.
pub(super) const RECORDING: &[PointOf] = &[PointOf::of("long", How::Long)];

/// What is wrong named.
pub(super) const NAMED: PointOf = PointOf::right("named", &[Step::Name]);
/// A test told what is wrong.
pub(super) const TESTED: PointOf = PointOf::of("tested", How::Tested);
/// One change at a time.
pub(super) const ONE_CHANGE: PointOf = PointOf::of("one_change", How::OneChange);
/// No cause remains.
pub(super) const MENDED: PointOf = PointOf::of("mended", How::Mended);
/// The instructor was told of what nobody mends.
pub(super) const TOLD: PointOf = PointOf::of("told", How::Done(Deed::TellInstructor));
/// The uncertainty, where it is asked for.
pub(super) const UNCERTAINTY: &[PointOf] = &[PointOf::right("uncertainty", &[Step::Uncertainty])];
/// The caution read while it is one: before a sensor is put on a finger. Where it is there already nobody can come too late.
pub(super) const SAFETY: &[PointOf] = &[PointOf::of("caution", How::Before(Deed::Agree, Deed::StrapOn))];

/// The cursors where they belong.
pub const CLEAN_WINDOW: PointOf = PointOf::right("clean_window", &[Step::Window, Step::Window1]);
/// The beats counted.
pub const EXACT_COUNT: PointOf = PointOf::right("exact_count", &[Step::Count, Step::Count1]);
/// The time read in seconds.
pub const UNITS: PointOf = PointOf::right("units", &[Step::Seconds, Step::Seconds1]);
/// The rate worked out.
pub const FORMULA: PointOf = PointOf::right("formula", &[Step::Multiplier, Step::Rate, Step::Rate1]);
