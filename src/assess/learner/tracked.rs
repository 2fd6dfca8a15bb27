//! One trait of one student over time.

use super::super::skill::Record;
use super::belief::Belief;
use super::credit::{About, FURTHER, Item};
use serde::Serialize;
use std::collections::BTreeMap;

/// A day, ms.
pub(super) const DAY_MS: f64 = 86_400_000.0;
/// A success counts as one of another day after so long, ms: the same hour of the next day, and a little early (design
/// default; that a delay tells lasting from passing: Bjork & Bjork 2011).
pub(super) const DELAY_MS: f64 = 20.0 * 3_600_000.0;
/// Half of what was seen once is gone after so many days; each success of another day adds as many (design default).
const HALF_DAYS: f64 = 30.0;
/// What an attempt teaches, logits, and how much less sure it makes (design defaults).
const TEACHES: f64 = 0.5;
const UNSURE: f64 = 0.12;
/// What is explained after a wrong step gives back this share of what the step lost (design default).
const EXPLAINED: f64 = 0.5;
/// A fault or a bench that was done right before is half known by heart.
const GUESS_KNOWN: f64 = 0.5;
/// Steps that are told as "so many of the last".
const RECENT: usize = 8;
/// Most different faults or benches that are kept by name.
const MOST: usize = 12;

/// The judged steps of one trait in one attempt.
pub(super) struct Occasion {
    pub(super) items: Vec<Item>,
    /// What it was shown on: the fault, else the scenario.
    pub(super) on: String,
}

impl Occasion {
    pub(super) fn of(record: &Record, about: About) -> Self {
        let called = record.faults.iter().find(|f| match about {
            About::Skill(skill) => f.skill.as_deref() == Some(skill),
            About::Set(set) => f.set == set,
        });
        Self { items: Vec::new(), on: called.map_or(&record.scenario, |f| &f.id).clone() }
    }
}

/// What is known of a trait.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub(super) struct Trait {
    #[serde(flatten)]
    pub(super) belief: Belief,
    /// Last judged step, ms since 1970.
    pub(super) last_ms: Option<f64>,
    pub(super) right: u32,
    pub(super) judged: u32,
    /// The last steps, oldest first.
    pub(super) recent: Vec<bool>,
    /// First success on each fault or bench, ms since 1970.
    pub(super) firsts: BTreeMap<String, f64>,
    /// Successes of another day than the one before.
    pub(super) days: u32,
    pub(super) success_ms: Option<f64>,
    /// Two successes on different faults or benches, one of a later day.
    pub(super) proved: bool,
    /// The last occasion went well.
    pub(super) held: bool,
    /// It was mastered after the last occasion.
    pub(super) mastered: bool,
}

impl Trait {
    /// The estimate at a time.
    pub(super) fn belief_at(&self, now_ms: f64) -> Belief {
        let Some(last) = self.last_ms else { return self.belief };
        self.belief.after((now_ms - last) / DAY_MS, HALF_DAYS * f64::from(1 + self.days))
    }

    /// The chance of a right step for who does not know: what was done right before is half known by heart.
    fn guess(&self, item: &Item, on: &str) -> f64 {
        if self.firsts.contains_key(on) { item.guess.max(GUESS_KNOWN) } else { item.guess }
    }

    /// How likely a step comes out right.
    pub(super) fn foresees(&self, item: &Item, occasion: &Occasion, now_ms: f64) -> f64 {
        self.belief_at(now_ms).foresees(self.guess(item, &occasion.on), item.slip)
    }

    /// Takes in an occasion.
    pub(super) fn note(&mut self, occasion: &Occasion, at_ms: f64) {
        self.belief = self.belief_at(at_ms);
        self.last_ms = Some(self.last_ms.map_or(at_ms, |last| last.max(at_ms)));
        let before = self.belief;
        let mut all = true;
        for (k, item) in occasion.items.iter().enumerate() {
            let guess = self.guess(item, &occasion.on);
            let weight = if k == 0 { 1.0 } else { FURTHER };
            self.belief = self.belief.seen(item.right, guess, item.slip, weight);
            self.judged += 1;
            self.right += u32::from(item.right);
            self.recent.push(item.right);
            all &= item.right;
        }
        self.recent.drain(..self.recent.len().saturating_sub(RECENT));
        // What went wrong is explained afterwards, but that is no gain before it has shown: it gives back a part of the loss.
        if all {
            self.belief = self.belief.taught(TEACHES, UNSURE);
        } else if self.belief.mean < before.mean {
            self.belief.mean += EXPLAINED * (before.mean - self.belief.mean);
        }
        self.held = all;
        if all {
            self.succeed(&occasion.on, at_ms);
        }
        self.mastered = self.is_mastered_by(self.belief);
    }

    fn succeed(&mut self, on: &str, at_ms: f64) {
        if self.success_ms.is_none_or(|last| at_ms - last >= DELAY_MS) {
            self.days += u32::from(self.success_ms.is_some());
        }
        self.success_ms = Some(at_ms);
        let later = |(name, first): (&String, &f64)| name != on && at_ms - first >= DELAY_MS;
        self.proved |= self.firsts.iter().any(later);
        if self.firsts.len() < MOST {
            self.firsts.entry(on.to_string()).or_insert(at_ms);
        }
    }
}
