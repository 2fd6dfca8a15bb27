//! What a row of attempts says of a student: for each skill, and for each set of faults that look alike, how likely a step
//! comes out right and how sure that is.
//!
//! A trait is a number on the logit scale with a variance. A judged step moves it by how surprising it is (as Elo's and
//! Glickman's ratings do; Glickman 1999, Appl Stat 48:377; for learners Pelánek 2016, Comput Educ 98:169), within bounds for
//! guesses and slips (as in Corbett & Anderson 1995, User Model User-Adapt Interact 4:253). Time takes it back to where it
//! began, more slowly after each success on another day (Cepeda 2006, Psychol Bull 132:354). All numbers are design
//! defaults; `tests/bench/learners` looks at what they do to learners that another model made.
//!
//! Nothing here keeps a clock or draws a number: the same attempts in the same order give the same bits.
//!
//! - [`belief`]: the estimate and what moves it
//! - [`credit`]: what an attempt gives, and what gives nothing
//! - [`standing`]: how far a skill is, and what is wanting
//! - [`choose`]: the next bench

pub mod belief;
pub mod choose;
pub mod credit;
mod fading;
pub mod standing;
mod tracked;

use super::skill::{Aid, Got, Record, SKILLS};
use crate::plain::json;
use credit::About;
use fading::Fading;
use serde_json::Value;
use standing::{Map, Readiness};
use std::collections::{BTreeMap, BTreeSet};
use tracked::{Occasion, Trait};

/// Sets of faults that look alike at first: the first impressions of the catalogue.
pub const SETS: [&str; 10] =
    ["no_recorder", "flat", "small", "cut", "fuzzy", "misshapen", "jumpy", "wandering", "crowded", "paper"];

/// Number of the form in which the state is written.
pub const FORM: u32 = 1;

/// What is known of a student.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learner {
    skills: BTreeMap<&'static str, Trait>,
    sets: BTreeMap<&'static str, Trait>,
    /// Attempts that gave no credit, by why.
    without: BTreeMap<&'static str, u32>,
    /// Benches with their seeds that have been judged: one that is done again is known by heart.
    done: BTreeSet<(String, String)>,
    /// How often each scenario was done.
    times: BTreeMap<String, u32>,
    help: Fading,
    helps: BTreeMap<&'static str, Fading>,
    ready: BTreeSet<(String, String)>,
}

impl Learner {
    /// What records in order of time say.
    pub fn of(records: &[Record]) -> Self {
        let mut learner = Self::default();
        records.iter().for_each(|r| learner.note(r));
        learner
    }

    /// Takes in an attempt.
    pub fn note(&mut self, record: &Record) {
        let bench = (record.scenario.clone(), record.seed.clone());
        let again = record.mode != Aid::Shown && !self.done.insert(bench.clone());
        *self.times.entry(record.scenario.clone()).or_default() += 1;
        let why = if again { Some("again") } else { credit::without(record) };
        if let Some(why) = why {
            *self.without.entry(why).or_default() += 1;
        }
        self.fade(record, why.is_none());
        if record.rubric.ready && why.is_none() {
            self.ready.insert(bench);
        }
        if again {
            return;
        }
        let mut occasions: BTreeMap<About, Occasion> = BTreeMap::new();
        for item in credit::items(record) {
            // Nothing is gained without thinking, and what went wrong went wrong.
            if item.right && why.is_some() {
                continue;
            }
            let occasion = occasions.entry(item.about).or_insert_with(|| Occasion::of(record, item.about));
            occasion.items.push(item);
        }
        for (about, occasion) in occasions {
            let traits = match about {
                About::Skill(_) => &mut self.skills,
                About::Set(_) => &mut self.sets,
            };
            traits.entry(about.name()).or_default().note(&occasion, record.at_ms);
        }
    }

    /// Help fades a step with each success and comes back after two failures in a row.
    fn fade(&mut self, record: &Record, counts: bool) {
        let steps = SKILLS.iter().filter_map(|skill| Some((*skill, record.skills.get(*skill)?.got)));
        if record.mode == Aid::Shown {
            self.help.seen();
            SKILLS.iter().for_each(|skill| self.helps.entry(*skill).or_default().seen());
            return;
        }
        for (skill, got) in steps {
            match got {
                Got::Pass if counts => self.helps.entry(skill).or_default().pass(),
                Got::Fail => self.helps.entry(skill).or_default().fail(),
                _ => {}
            }
        }
        match record.passed {
            true if counts => self.help.pass(),
            true => {}
            false => self.help.fail(),
        }
    }

    /// The map at `now_ms` (ms since 1970).
    pub fn map(&self, now_ms: f64) -> Map {
        let bare = Trait::default();
        let skills = SKILLS.iter().map(|skill| {
            let help = self.helps.get(skill).copied().unwrap_or_default().aid();
            (*skill, self.skills.get(skill).unwrap_or(&bare).standing(now_ms, help))
        });
        let sets = self.sets.iter().map(|(set, known)| (*set, known.standing(now_ms, Aid::default())));
        Map {
            skills: skills.collect(),
            sets: sets.collect(),
            help: self.help.aid(),
            readiness: Readiness { ready: self.ready.len() >= 2, times: self.ready.len(), need: 2 },
            without: self.without.clone(),
        }
    }

    /// The state as it stands in a file. It is never read from there: what was done says it again.
    pub fn told(&self) -> Value {
        json!({"form": FORM, "skills": self.skills, "sets": self.sets, "without": self.without})
    }

    /// How likely each judged step of an attempt comes out right at `now_ms`, before it is known how it went, 0 to 1.
    pub fn foresees(&self, record: &Record, now_ms: f64) -> Vec<(About, f64)> {
        let bare = Trait::default();
        credit::items(record)
            .iter()
            .map(|item| {
                let traits = match item.about {
                    About::Skill(_) => &self.skills,
                    About::Set(_) => &self.sets,
                };
                let known = traits.get(item.about.name()).unwrap_or(&bare);
                (item.about, known.foresees(item, &Occasion::of(record, item.about), now_ms))
            })
            .collect()
    }

    /// Whether a trait is mastered, as it was after its last occasion.
    pub fn is_mastered(&self, about: About) -> bool {
        match about {
            About::Skill(name) => self.skills.get(name),
            About::Set(name) => self.sets.get(name),
        }
        .is_some_and(|known| known.mastered)
    }
}
