//! What an attempt gives: its judged steps, each about a skill or a set of faults that look alike, each with how easily it
//! comes out right for who does not know.

use super::super::skill::{Aid, FaultRecord, Got, Record, SKILLS};
use super::SETS;

/// Chance of a right step for who does not know, where nothing makes it easier (the tutors' bound is .3, Corbett & Anderson
/// 1995; the steps here are numbers, not choices).
pub const GUESS: f64 = 0.2;
/// Chance of a wrong step for who knows (their bound is .1).
pub const SLIP: f64 = 0.06;
/// The same where a well-known misreading explains what was typed: nobody slips into one.
const SLIP_INTO_MISREADING: f64 = 0.03;
/// After it was told that the step is wrong, or after a hint.
const GUESS_TOLD: f64 = 0.6;
/// A cause that went without a test, or half the work done by the bench.
const GUESS_EASED: f64 = 0.45;
/// Passed on the way, as by recording at all.
const GUESS_ON_THE_WAY: f64 = 0.35;
/// A name from a list: one of the set, within these.
const GUESS_NAME: [f64; 2] = [0.12, 0.3];
/// Weight of steps after the first of one trait in one attempt: they come from one reading and are not independent.
pub const FURTHER: f64 = 0.6;

/// What a step is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum About {
    /// One of [`SKILLS`].
    Skill(&'static str),
    /// One of [`SETS`].
    Set(&'static str),
}

impl About {
    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Skill(name) | Self::Set(name) => name,
        }
    }
}

/// A judged step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// What it is about.
    pub about: About,
    /// Whether it was right.
    pub right: bool,
    /// Chance that it is right for who does not know.
    pub guess: f64,
    /// Chance that it is wrong for who knows.
    pub slip: f64,
}

/// Why an attempt gives no credit: nobody thought, or the answer was known. `None` where it gives some.
pub fn without(record: &Record) -> Option<&'static str> {
    const WHYS: [&str; 3] = ["hasty", "many_names", "scattered"];
    WHYS.into_iter().find(|why| record.no_credit.as_deref() == Some(why))
}

/// The judged steps of an attempt; none of one that was watched.
pub fn items(record: &Record) -> Vec<Item> {
    if record.mode == Aid::Shown {
        return Vec::new();
    }
    let eased = |guess: f64| if record.mode == Aid::Half { guess.max(GUESS_EASED) } else { guess };
    let mut found = Vec::new();
    if record.judged.is_empty() {
        // Kept before steps were: one step a skill.
        for skill in SKILLS {
            let right = match record.skills.get(skill).map_or(Got::None, |s| s.got) {
                Got::Pass => true,
                Got::Fail => false,
                Got::None => continue,
            };
            found.push(Item { about: About::Skill(skill), right, guess: eased(GUESS), slip: SLIP });
        }
    }
    for step in &record.judged {
        let Some(skill) = SKILLS.into_iter().find(|s| *s == step.skill) else { continue };
        let untested = record.faults.iter().any(|f| f.skill.as_deref() == Some(skill) && !f.tested);
        let guess = match step.code.as_str() {
            _ if step.told => GUESS_TOLD,
            "mended" if untested => GUESS_EASED,
            "long" | "view" | "trace_good" | "window_good" => GUESS_ON_THE_WAY,
            _ => GUESS,
        };
        let slip = if step.misread { SLIP_INTO_MISREADING } else { SLIP };
        found.push(Item { about: About::Skill(skill), right: step.right, guess: eased(guess), slip });
    }
    for fault in &record.faults {
        of_fault(fault, eased, &mut found);
    }
    found
}

/// A fault tells two things of those that look like it: whether it was named, and whether it was found by a test.
fn of_fault(fault: &FaultRecord, eased: impl Fn(f64) -> f64, found: &mut Vec<Item>) {
    let Some(set) = SETS.into_iter().find(|s| *s == fault.set) else { return };
    let about = About::Set(set);
    if let Some(right) = fault.named {
        let guess = (1.0 / f64::from(fault.of.max(1))).clamp(GUESS_NAME[0], GUESS_NAME[1]);
        found.push(Item { about, right, guess, slip: SLIP });
    }
    if let Some(right) = fault.gone {
        let guess = eased(if fault.tested { GUESS } else { GUESS_EASED });
        found.push(Item { about, right, guess, slip: SLIP });
    }
}
