//! Three forms of a test, as hard as each other as far as that can be known beforehand.
//!
//! Each pool of the test gives one bench to every form, and each form has other members of it: so all forms ask for the same kinds of
//! faults with the same question, and nobody meets a fault twice. How hard a fault is to find is taken to be the number of
//! faults that the catalogue says it is confused with, since each has to be told apart by a test; members are dealt so that these
//! numbers add up as equally as they can. Severities are drawn from the same ranges. What difference is left falls on every test
//! and on both arms alike, see [`super::deal`].

use crate::plain::json;
use crate::scenario::fault::{self, Fault};
use crate::scenario::{Scenario, ScenarioError, compose, text};
use serde_json::{Map, Value};
use thiserror::Error;

/// Number of forms.
pub const FORMS: usize = 3;
/// Their names in files.
pub const NAMES: [&str; FORMS] = ["a", "b", "c"];
/// Most benches of a test: each takes some minutes.
pub const MOST_BENCHES: usize = 10;

/// Why pools make no test.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum FormError {
    /// None, or too many.
    #[error("{found} pools; a test has 1 to {MOST_BENCHES}")]
    Number {
        /// How many were given.
        found: usize,
    },
    /// Not a scenario.
    #[error("{from}: {error}")]
    Scenario {
        /// Which file.
        from: String,
        /// What is wrong with it.
        error: ScenarioError,
    },
    /// A scenario without a pool.
    #[error("{from}: it has no [pool]; each test bench is drawn from one")]
    NoPool {
        /// Which file.
        from: String,
    },
    /// A pool that is too small for three forms.
    #[error("{from}: pool.faults: {found} faults; {needed} are needed, {each} for each of the three forms")]
    TooFew {
        /// Which file.
        from: String,
        /// Faults that it has.
        found: usize,
        /// Faults that are needed.
        needed: usize,
        /// Faults for each form.
        each: usize,
    },
    /// A fault of two pools.
    #[error("{from}: pool.faults: {fault} is also in {other}; a student would meet it twice")]
    Shared {
        /// Which file.
        from: String,
        /// The other file.
        other: String,
        /// The fault.
        fault: String,
    },
}

/// The benches of one form: texts of scenarios without an `[assignment]`.
pub type Form = Vec<String>;

/// Three forms out of pools, each given with where it came from.
pub fn forms(pools: &[(String, String)]) -> Result<[Form; FORMS], FormError> {
    if !(1..=MOST_BENCHES).contains(&pools.len()) {
        return Err(FormError::Number { found: pools.len() });
    }
    let mut met: Vec<(&str, &str)> = Vec::new();
    let mut dealt: Vec<Parts> = Vec::new();
    for (from, text) in pools {
        let from = from.as_str();
        let refused = |error| FormError::Scenario { from: from.into(), error };
        let scenario = Scenario::read(text).map_err(refused)?;
        let Some(pool) = &scenario.pool else { return Err(FormError::NoPool { from: from.into() }) };
        let members = pool.members();
        for member in &members {
            if let Some((_, other)) = met.iter().find(|(fault, _)| *fault == member.id) {
                let (from, other, fault) = (from.into(), other.to_string(), member.id.into());
                return Err(FormError::Shared { from, other, fault });
            }
        }
        met.extend(members.iter().map(|member| (member.id, from)));
        let least = usize::from(pool.draw) + 1;
        if members.len() < FORMS * least {
            let (found, needed) = (members.len(), FORMS * least);
            return Err(FormError::TooFew { from: from.into(), found, needed, each: least });
        }
        dealt.push(apart(members));
    }
    level(&mut dealt);
    let mut forms: [Form; FORMS] = Default::default();
    for ((from, text), parts) in pools.iter().zip(&dealt) {
        for (form, part) in forms.iter_mut().zip(parts) {
            let refused = |error| FormError::Scenario { from: from.clone(), error };
            form.push(with_members(text, part).map_err(refused)?);
        }
    }
    Ok(forms)
}

/// What each form has of a pool.
type Parts = [Vec<&'static Fault>; FORMS];

/// How many faults one is confused with, by its own entry of the catalogue or by theirs.
pub fn look_alikes(fault: &Fault) -> usize {
    let alike = |other: &&Fault| {
        other.id != fault.id
            && (fault.confused_with.contains(&other.id) || other.confused_with.contains(&fault.id))
    };
    fault::all().filter(alike).count()
}

fn hard(part: &[&'static Fault]) -> usize {
    part.iter().map(|fault| look_alikes(fault)).sum()
}

/// Members in three parts of one size: the hardest first, each to the part that has least so far.
fn apart(mut members: Vec<&'static Fault>) -> Parts {
    members.sort_by_key(|fault| core::cmp::Reverse(look_alikes(fault)));
    let mut parts = Parts::default();
    let each = members.len() / FORMS;
    for member in members.into_iter().take(each * FORMS) {
        let fewest = parts.iter().map(Vec::len).min().unwrap_or(0);
        let open = (0..FORMS).filter(|k| parts[*k].len() == fewest);
        if let Some(k) = open.min_by_key(|k| hard(&parts[*k])) {
            parts[k].push(member);
        }
    }
    parts
}

/// Swaps members of one pool between two forms as long as that makes the forms' sums more equal.
fn level(dealt: &mut [Parts]) {
    let sums =
        |dealt: &[Parts]| [0, 1, 2].map(|form| dealt.iter().map(|parts| hard(&parts[form])).sum::<usize>());
    // The sum of their squares is least where they are equal; it falls with each swap, so this ends.
    let squares = |dealt: &[Parts]| sums(dealt).iter().map(|sum| sum * sum).sum::<usize>();
    let mut best = squares(dealt);
    loop {
        let before = best;
        for pool in 0..dealt.len() {
            for (one, other) in [(0, 1), (0, 2), (1, 2)] {
                for (i, j) in pairs(dealt[pool][one].len(), dealt[pool][other].len()) {
                    swap(&mut dealt[pool], (one, i), (other, j));
                    match squares(dealt) {
                        now if now < best => best = now,
                        _ => swap(&mut dealt[pool], (one, i), (other, j)),
                    }
                }
            }
        }
        if best == before {
            return;
        }
    }
}

fn pairs(n: usize, m: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..n).flat_map(move |i| (0..m).map(move |j| (i, j)))
}

fn swap(parts: &mut Parts, (one, i): (usize, usize), (other, j): (usize, usize)) {
    let held = parts[one][i];
    parts[one][i] = parts[other][j];
    parts[other][j] = held;
}

/// A scenario's text with these members alone in its pool, without scripts, and without help.
fn with_members(text: &str, members: &[&'static Fault]) -> Result<String, ScenarioError> {
    let mut fields = fields_of(text);
    if let Some(Value::Object(pool)) = fields.get_mut("pool") {
        pool.remove("impression");
        pool.remove("look_alike");
        let names: Vec<&str> = members.iter().map(|fault| fault.id).collect();
        pool.insert("faults".into(), json!(names));
    }
    fields.insert("help".into(), json!("alone"));
    fields.remove("assignment");
    compose::of_json(&Value::Object(fields).to_string())
}

/// A scenario's text as an assignment with these fields; its id and title others.
pub fn assigned(text: &str, id: &str, title: &str, assignment: Value) -> Result<String, ScenarioError> {
    let mut fields = fields_of(text);
    fields.insert("id".into(), json!(id));
    fields.insert("title".into(), json!(title));
    fields.insert("assignment".into(), assignment);
    compose::of_json(&Value::Object(fields).to_string())
}

fn fields_of(text: &str) -> Map<String, Value> {
    match text::value_of(text) {
        Some(Value::Object(fields)) => fields,
        _ => Map::new(),
    }
}
