//! What of a result's own text is told otherwise than in what was set: misreadings, hints and criteria are no part of the bench, and a
//! misreading with a true value in it tells at the first check what is right.

use super::grade::Against;
use super::handed::Handed;
use super::remark::Remark;
use super::set::One;
use crate::assess::expression::names_truth;
use crate::assess::own::OwnMisreading;
use crate::scenario::Scenario;
use crate::session::regrade::Terms;

/// What is remarked of a result on the bench of the one that was set, and what is against it.
pub fn otherwise(handed: &Handed, one: &One) -> (Option<Remark>, Option<Against>) {
    if handed.is_whole(one) {
        return (None, None);
    }
    // Of a code only the digest is known, which changes with every word.
    if handed.whole.is_some() {
        return (Some(Remark::OtherWords), None);
    }
    let (Ok(own), Ok(set)) = (Scenario::read(&handed.scenario), Scenario::read(&one.text)) else {
        return (None, None);
    };
    let attempts = |s: &Scenario| s.assignment.as_ref().and_then(|a| a.attempts);
    let same = Terms::of(&own) == Terms::of(&set) && own.hint == set.hint && attempts(&own) == attempts(&set);
    let told = tells_truth(&own.misreading, &set.misreading);
    ((!same).then_some(Remark::OtherWords), told.then_some(Against::ToldTruth))
}

/// Whether there is a signature with a true value that the set ones do not have. Tolerances and words may be put right after a class
/// has handed in, so that they do not matter here.
fn tells_truth(own: &[OwnMisreading], set: &[OwnMisreading]) -> bool {
    let signature = |one: &OwnMisreading| {
        let formula: String = one.formula.chars().filter(|c| !c.is_whitespace()).collect();
        (one.field, formula.to_ascii_lowercase())
    };
    let often = |list: &[OwnMisreading], one| list.iter().filter(|other| signature(other) == one).count();
    own.iter()
        .filter(|one| names_truth(&one.formula))
        .any(|one| often(own, signature(one)) > often(set, signature(one)))
}
