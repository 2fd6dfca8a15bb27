//! What an instructor's own misreadings and hints must be: within their limits, formulas that are some, and no signature that right
//! answers meet.

use super::{OwnHint, OwnMisreading, SHOWN_IN, Wrong};
use crate::assess::expression::{self, NoExpression, Numbers};
use crate::assess::hint::{Rung, TOPICS};
use crate::assess::task::{Reads, TaskSpec};
use crate::assess::verdict::Step;
use crate::deed::Field;
use crate::plain;

/// Longest text of either, characters.
pub const MOST_WORDS: usize = 600;
/// Longest name of a misreading, characters.
pub const MOST_NAME: usize = 40;

impl OwnMisreading {
    fn check(&self, task: &TaskSpec, window_s: f64) -> Result<(), (&'static str, String, String)> {
        let known = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_';
        if !(1..=MOST_NAME).contains(&self.name.len()) || !self.name.bytes().all(known) {
            let expected = format!("1 to {MOST_NAME} small letters, digits and _");
            return Err(("name", quoted(&self.name), expected));
        }
        let asked = task.settle(0);
        if self.step().is_none() || !asked.asks(self.field) {
            let can = SHOWN_IN.iter().map(|(field, _)| *field).filter(|field| asked.asks(*field));
            let can: Vec<&str> = can.map(Field::name).collect();
            let expected = match can.is_empty() {
                true => "no misreading of its own, where the question asks for no count".into(),
                false => format!("one of {}, which the question asks for", can.join(", ")),
            };
            return Err(("field", quoted(self.field.name()), expected));
        }
        if let Err(NoExpression { at, expected }) = expression::value(&self.formula, &[1.0; 7]) {
            let found = format!("{} at character {at}", quoted(&self.formula));
            return Err(("formula", found, expected.to_string()));
        }
        if !self.within().is_finite() || !(0.0..=1000.0).contains(&self.within()) {
            return Err(("tolerance", self.within().to_string(), "a number from 0 to 1000".into()));
        }
        worded(&self.words)?;
        let (met, told, tried) = self.met_by_right(task, window_s);
        if told == 0 {
            let expected = "a formula that comes to a number".into();
            return Err(("formula", quoted(&self.formula), expected));
        }
        if 4 * met > tried {
            let found =
                format!("{}, which a right answer meets in {met} of {tried} windows", quoted(&self.formula));
            return Err(("formula", found, "a formula or a tolerance that right answers do not meet".into()));
        }
        Ok(())
    }

    /// In how many windows right answers meet it, in how many it tells a number at all, and how many were tried: windows of
    /// usual lengths, or of those that are asked for, at rates from 45 to 115 beats/min. A single length at which the wrong way
    /// is the right one (twice the count in half a minute) does not make it one that right answers meet; there no answer is
    /// judged wrong.
    fn met_by_right(&self, task: &TaskSpec, window_s: f64) -> (usize, usize, usize) {
        let own = [window_s, 10.0, 12.0, 14.6, 15.0, 17.3, 20.0, 24.0, 30.0, 33.5, 45.0, 60.0];
        let lengths = task.seconds.as_deref().unwrap_or(&own);
        let (mut met, mut told, mut tried) = (0, 0, 0);
        for length in lengths {
            for rate in (45..=115).step_by(5) {
                let count = (f64::from(rate) * length / 60.0).round();
                // Intervals are timed from beat to beat.
                let seconds = match task.kind.question().reads {
                    Reads::Intervals => count * 60.0 / f64::from(rate),
                    _ => *length,
                };
                let right = 60.0 * count / seconds;
                let numbers = [count, seconds, 60.0 / seconds, right.round(), count, seconds, right];
                let answer = match self.field {
                    Field::Count => count,
                    Field::Seconds => seconds,
                    Field::Multiplier => 60.0 / seconds,
                    _ => right.round(),
                };
                tried += 1;
                met += usize::from(self.distance(answer, &numbers).is_some());
                told += usize::from(expression::value(&self.formula, &numbers).is_ok_and(f64::is_finite));
            }
        }
        (met, told, tried)
    }
}

/// Numbers at which formulas are compared. Two that agree at all of them are one, however they are written: these have no round
/// relation to one another, so that no two different short formulas agree on them by chance.
const APART: [Numbers; 3] = [
    [17.931, 14.377, 4.1913, 73.217, 19.173, 15.639, 71.477],
    [23.519, 21.683, 2.7331, 61.843, 22.391, 20.147, 66.191],
    [41.257, 37.813, 1.5971, 89.719, 43.711, 38.477, 68.113],
];
/// By so much of its value a number may be off for being worked out in another order.
const ROUNDING: f64 = 1e-9;

impl OwnMisreading {
    /// Whether two are looked for in one answer and by one formula, so that only one of them could ever be named.
    fn is_one_with(&self, other: &OwnMisreading) -> bool {
        let value =
            |one: &OwnMisreading, at: &Numbers| expression::value(&one.formula, at).unwrap_or(f64::NAN);
        let same = |at: &Numbers| {
            let (a, b) = (value(self, at), value(other, at));
            (a - b).abs() <= ROUNDING * a.abs().max(b.abs())
        };
        self.field == other.field && APART.iter().all(same)
    }
}

impl OwnHint {
    fn check(&self) -> Result<(), (&'static str, String, String)> {
        if !TOPICS.contains(&self.about.as_str()) && Step::of_name(&self.about).is_none() {
            let expected = format!("a step of the verdict, or one of {}", TOPICS.join(", "));
            return Err(("about", quoted(&self.about), expected));
        }
        if self.rung == Rung::Answer {
            let expected = "look, locate, rule or worked: the answer is the program's";
            return Err(("rung", quoted("answer"), expected.into()));
        }
        worded(&self.words)
    }
}

/// Refuses what cannot be; how many there are is [counted](super::counted) before. `window_s` is the shortest window that is taken.
pub fn check(
    misreadings: &[OwnMisreading],
    hints: &[OwnHint],
    task: &TaskSpec,
    window_s: f64,
) -> Result<(), Wrong> {
    for (k, one) in misreadings.iter().enumerate() {
        let here = |field: &str| format!("misreading[{k}].{field}");
        one.check(task, window_s).map_err(|(field, found, expected)| (here(field), found, expected))?;
        if misreadings[..k].iter().any(|other| other.name == one.name) {
            return Err((here("name"), quoted(&one.name), "a name that no other has".into()));
        }
        if let Some(other) = misreadings[..k].iter().find(|other| other.is_one_with(one)) {
            let found = format!(
                "{} of {}, which always comes to the same as {} of {}",
                quoted(&one.formula),
                quoted(&one.name),
                quoted(&other.formula),
                quoted(&other.name)
            );
            return Err((here("formula"), found, "a formula that no other has for this answer".into()));
        }
    }
    for (k, one) in hints.iter().enumerate() {
        let here = |field: &str| format!("hint[{k}].{field}");
        one.check().map_err(|(field, found, expected)| (here(field), found, expected))?;
        if hints[..k].iter().any(|other| other.is_about(&one.about, one.rung)) {
            let rung = plain::given(&one.rung);
            let told = rung.as_str().unwrap_or_default();
            let found = format!("{} once more on the rung {}", quoted(&one.about), told);
            return Err((here("about"), found, "one text for each rung".into()));
        }
    }
    Ok(())
}

fn worded(words: &str) -> Result<(), (&'static str, String, String)> {
    let n = words.trim().chars().count();
    match (1..=MOST_WORDS).contains(&n) {
        true => Ok(()),
        false => Err(("words", format!("{n} characters"), format!("1 to {MOST_WORDS} characters"))),
    }
}

/// The start of a text that somebody else wrote.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.chars().take(expression::MOST_CHARS).collect::<String>())
}
