//! The next bench: the one that tells and teaches most, about all skills that it asks for together.

use super::belief::Belief;
use super::credit::{GUESS, SLIP};
use super::standing::State;
use super::tracked::Trait;
use super::{Learner, SKILLS};
use crate::deed::Aid;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A bench to choose from.
#[derive(Clone, Debug, Deserialize)]
pub struct Bench {
    /// Its scenario.
    pub id: String,
    /// Its level, 1 to 9.
    #[serde(default)]
    pub level: u8,
    /// The skills that it asks for.
    pub skills: Vec<String>,
    /// Skills that it may ask for beside those, by what is drawn from its pool: in which share of its draws, 0 to 1. Empty for a
    /// bench that is the same whenever it is done, up to the heart and how bad things are.
    #[serde(default)]
    pub may_ask: BTreeMap<String, f64>,
    /// Whether it can be watched, or half of it be done.
    #[serde(default)]
    pub worked: bool,
}

/// The proposal.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Next {
    /// The scenario.
    pub id: String,
    /// The skill that gains most by it.
    pub skill: &'static str,
    /// Why that one.
    pub why: Why,
    /// Help.
    pub aid: Aid,
}

/// Why a skill is next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Why {
    /// Nothing is known of it.
    New,
    /// It goes wrong more often than not.
    Practice,
    /// It is not yet sure how far it is.
    Unsure,
    /// It is to be shown on another fault or bench.
    Other,
    /// It is to be shown on a later day, and that has come.
    Later,
    /// It was mastered long ago.
    Due,
}

/// What teaching is worth beside telling (design default).
const TEACHING: f64 = 0.5;
/// What a bench is worth that was done before, as a share of a new one, each time, and so often at most.
const AGAIN: f64 = 0.7;
const AGAIN_MOST: u32 = 3;
/// A skill that few benches ask for is worth more where it is met: by this power of the benches that ask for it.
const RARE: f64 = -0.35;
/// What a skill is worth whose day has not come.
const WAITS: f64 = 0.03;
/// A step of level above what suits takes away so much.
const TOO_HARD: f64 = 0.12;
/// Skills that are done by the bench when half is done.
const SET_UP: [&str; 8] = ["wiring", "link", "contact", "range", "time_base", "hum", "motion", "recording"];

impl Bench {
    /// How likely it asks for a skill, 0 to 1.
    fn share(&self, skill: &str) -> f64 {
        let sure = self.skills.iter().any(|s| s == skill);
        if sure { 1.0 } else { self.may_ask.get(skill).map_or(0.0, |share| share.clamp(0.0, 1.0)) }
    }
}

impl Learner {
    /// The bench that is worth most at `now_ms`; `None` when nothing is wanting.
    pub fn next(&self, benches: &[Bench], now_ms: f64) -> Option<Next> {
        let bare = Trait::default();
        let help = self.help.aid();
        let ready = SKILLS.iter().filter(|s| self.skills.get(*s).is_some_and(|t| t.mastered)).count();
        let suits = 2.0 + ready as f64 / 2.0;
        let rare = SKILLS.map(|skill| {
            let asking: f64 = benches.iter().map(|b| b.share(skill)).sum();
            crate::math::pow(asking.max(1.0), RARE)
        });
        let mut best: Option<(f64, Next)> = None;
        for bench in benches {
            let times = self.times.get(&bench.id).copied().unwrap_or(0);
            let aid = if bench.worked && times == 0 { help } else { Aid::Alone };
            let mut sum = 0.0;
            let mut most: Option<(f64, &'static str, Why)> = None;
            for (skill, rare) in SKILLS.into_iter().zip(rare) {
                let asks = bench.share(skill);
                if asks <= 0.0 {
                    continue;
                }
                let known = self.skills.get(skill).unwrap_or(&bare);
                let told = aid == Aid::Alone || (aid == Aid::Half && !SET_UP.contains(&skill));
                // What a pool draws anew is another fault most of the time.
                let fresh = bench.may_ask.contains_key(skill) || !known.firsts.contains_key(&bench.id);
                let (worth, why) = known.worth(told, fresh, now_ms);
                let worth = worth * rare * asks;
                sum += worth;
                if worth > 0.0 && most.is_none_or(|(w, ..)| worth > w) {
                    most = Some((worth, skill, why));
                }
            }
            let Some((_, skill, why)) = most else { continue };
            let hard = 1.0 / (1.0 + TOO_HARD * (f64::from(bench.level) - suits).max(0.0));
            let value = sum * hard * crate::math::pow(AGAIN, f64::from(times.min(AGAIN_MOST)));
            if best.as_ref().is_none_or(|(v, _)| value > *v) {
                best = Some((value, Next { id: bench.id.clone(), skill, why, aid }));
            }
        }
        best.map(|(_, next)| next)
    }
}

impl Trait {
    /// What an attempt is worth for this trait, and why. `told`: whether it will be judged; `fresh`: on a bench where it has
    /// not been shown.
    fn worth(&self, told: bool, fresh: bool, now_ms: f64) -> (f64, Why) {
        let belief: Belief = self.belief_at(now_ms);
        let share = belief.share();
        let telling = if told { belief.tells(GUESS, SLIP) } else { 0.0 };
        let worth = telling + TEACHING * (1.0 - share);
        match self.state(belief) {
            State::Ready => (0.0, Why::Due),
            State::Due => (worth, Why::Due),
            State::New => (worth, Why::New),
            State::Practising if share < 0.5 => (worth, Why::Practice),
            State::Practising => (worth, Why::Unsure),
            State::Once
                if self.later_ms().is_some_and(|at| now_ms < at) && (self.firsts.len() >= 2 || !fresh) =>
            {
                (WAITS, Why::Later)
            }
            State::Once if self.firsts.len() < 2 => {
                (if fresh && told { worth + 0.2 } else { WAITS }, Why::Other)
            }
            State::Once => (if told { worth + 0.4 } else { WAITS }, Why::Later),
        }
    }
}
