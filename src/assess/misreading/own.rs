//! Which of the instructor's own misreadings explains what was typed. They go before the built-in ones.

use super::{Evidence, Reading};
use crate::assess::expression::Numbers;
use crate::assess::own::OwnMisreading;
use crate::assess::verdict::Step;
use crate::deed::Field;

/// The own misreading that explains an answer that is wrong, and the step that it explains: of the first step that one explains, the
/// nearest; of equals the first of the file. Where a right answer would meet it too, it says nothing.
pub fn named<'a>(e: &Evidence, own: &'a [OwnMisreading]) -> Option<(&'a OwnMisreading, Step)> {
    let steps = || e.report.steps.iter().map(|finding| finding.step);
    let place = |step: Step| steps().position(|one| one == step);
    let mut best: Option<(usize, f64, &OwnMisreading, Step)> = None;
    for reading in e.readings() {
        for one in own {
            let Some(step) = one.step().filter(|step| e.is_wrong(&reading, *step)) else { continue };
            let Some(off) = distance(&reading, one) else { continue };
            let step = reading.step(step);
            let at = place(step).unwrap_or(usize::MAX);
            if best.is_none_or(|(k, so_far, ..)| (at, off) < (k, so_far)) {
                best = Some((at, off, one, step));
            }
        }
    }
    best.map(|(_, _, one, step)| (one, step))
}

/// How far the answer is from the signature.
fn distance(r: &Reading, one: &OwnMisreading) -> Option<f64> {
    let typed = r.typed;
    let length = r.length().unwrap_or(f64::NAN);
    // Where most beats cannot be told, no count is the true one.
    let count = r.allowed.filter(|found| !found.mostly_unsure()).map_or(f64::NAN, |found| found.exact as f64);
    let known = |value: Option<f64>| value.unwrap_or(f64::NAN);
    let numbers: Numbers = [
        known(typed.count),
        known(typed.seconds),
        known(typed.multiplier),
        known(typed.rate),
        count,
        length,
        60.0 * count / length,
    ];
    let (answer, right) = match one.field {
        Field::Count => {
            (typed.count, r.allowed.map_or(Vec::new(), |a| (a.least..=a.most).map(|n| n as f64).collect()))
        }
        Field::Seconds => (typed.seconds, vec![length]),
        Field::Multiplier => (typed.multiplier, vec![60.0 / typed.seconds.unwrap_or(length)]),
        _ => (typed.rate, vec![60.0 * known(typed.count) / typed.seconds.unwrap_or(length)]),
    };
    let met = |right: &f64| one.distance(*right, &numbers).is_some();
    one.distance(answer?, &numbers).filter(|_| !right.iter().any(met))
}
