//! How far a trait is, in codes that the page puts into words.

use super::belief::Belief;
use super::tracked::{DAY_MS, DELAY_MS, Trait};
use crate::deed::Aid;
use serde::Serialize;
use std::collections::BTreeMap;

/// The lower end of the range must be above this share for mastery (design default).
pub const LEVEL: f64 = 0.5;
/// A retest is looked for within so many days.
const FARTHEST_DAYS: u32 = 120;

/// How far a trait is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Never judged.
    New,
    /// Judged, and not yet sure.
    Practising,
    /// Sure enough, and not yet on different faults with a day between.
    Once,
    /// Mastered.
    Ready,
    /// It was mastered, and so long ago that it is no longer sure.
    Due,
}

/// What is wanting for mastery.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Need {
    /// More right steps.
    More,
    /// A success on another fault or bench.
    Other,
    /// A success on a later day.
    Later,
}

/// A trait in the map.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Standing {
    /// How far it is.
    pub state: State,
    /// How likely a step comes out right, 0 to 1, guesses and slips aside.
    pub share: f64,
    /// The lower end of where that may be.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// Right steps among the last ones.
    pub right: u32,
    /// The last ones.
    pub of: u32,
    /// All judged steps.
    pub judged: u32,
    /// Last judged step, ms since 1970.
    pub last_ms: Option<f64>,
    /// What is wanting.
    pub needs: Vec<Need>,
    /// From when a success counts as one of a later day, ms since 1970, where that is wanting.
    pub later_ms: Option<f64>,
    /// When it will no longer be sure, ms since 1970, where it is mastered.
    pub retest_ms: Option<f64>,
    /// Help proposed for the next time.
    pub help: Aid,
}

/// How often the rubric was good enough, on different seeds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Readiness {
    /// Often enough.
    pub ready: bool,
    /// How often.
    pub times: usize,
    /// How often it needs to be.
    pub need: usize,
}

/// The skill map.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Map {
    /// Each skill.
    pub skills: BTreeMap<&'static str, Standing>,
    /// Each set of faults that look alike, of those that were met.
    pub sets: BTreeMap<&'static str, Standing>,
    /// Help proposed for the next attempt as a whole.
    pub help: Aid,
    /// How often the rubric was good enough.
    pub readiness: Readiness,
    /// Attempts that gave no credit, by why.
    pub without: BTreeMap<&'static str, u32>,
}

fn sure(belief: Belief) -> bool {
    belief.ends()[0] >= LEVEL
}

impl Trait {
    pub(super) fn is_mastered_by(&self, belief: Belief) -> bool {
        sure(belief) && self.proved && self.held
    }

    /// What is wanting for mastery.
    pub(super) fn needs(&self, belief: Belief) -> Vec<Need> {
        let later = !self.proved && self.firsts.len() >= 2;
        [
            ((!sure(belief) || !self.held), Need::More),
            (!self.proved && self.firsts.len() < 2, Need::Other),
            (later, Need::Later),
        ]
        .into_iter()
        .filter_map(|(is, need)| is.then_some(need))
        .collect()
    }

    /// From when a success counts as one of a later day.
    pub(super) fn later_ms(&self) -> Option<f64> {
        let first = self.firsts.values().copied().reduce(f64::min)?;
        (!self.proved).then_some(first + DELAY_MS)
    }

    pub(super) fn state(&self, belief: Belief) -> State {
        match () {
            () if self.judged == 0 => State::New,
            () if self.is_mastered_by(belief) => State::Ready,
            () if self.mastered => State::Due,
            () if sure(belief) && self.held => State::Once,
            () => State::Practising,
        }
    }

    pub(super) fn standing(&self, now_ms: f64, help: Aid) -> Standing {
        let belief = self.belief_at(now_ms);
        let state = self.state(belief);
        let [low, high] = belief.ends();
        let last = self.last_ms.unwrap_or(now_ms);
        let retest_ms = (self.mastered).then(|| {
            let days = (1..=FARTHEST_DAYS).map(|d| last + f64::from(d) * DAY_MS);
            days.into_iter().find(|at| !sure(self.belief_at(*at)))
        });
        Standing {
            state,
            share: belief.share(),
            low,
            high,
            right: self.recent.iter().filter(|r| **r).count() as u32,
            of: self.recent.len() as u32,
            judged: self.judged,
            last_ms: self.last_ms,
            needs: self.needs(belief),
            later_ms: self.later_ms(),
            retest_ms: retest_ms.flatten(),
            help,
        }
    }
}
