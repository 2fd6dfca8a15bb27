//! Many results together: which faults stayed, which misreadings came, how steps and skills went.

use super::grade::Graded;
use super::set::Compared;
use super::together::{benches_of_one_name, beside};
use crate::assess::skill::Got;
use crate::assess::verdict::{Step, Verdict};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// How often a fault was met and not mended.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FaultCount {
    /// Its name in the catalogue.
    pub id: &'static str,
    /// Results whose bench had it.
    pub met: usize,
    /// Results in which it was still there at the end.
    pub left: usize,
}

/// How a step went over all results.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StepCount {
    /// Which.
    pub step: Step,
    /// Results in which it was judged.
    pub judged: usize,
    /// Results in which it was right, give or take an edge.
    pub right: usize,
}

/// A class.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Summary {
    /// Most often left first.
    pub faults: Vec<FaultCount>,
    /// Misreadings by count, most frequent first.
    pub misreadings: Vec<(String, usize)>,
    /// Steps in the order of measuring.
    pub steps: Vec<StepCount>,
    /// Skills with the share of results that show them, where there is evidence.
    pub skills: Vec<(&'static str, f64)>,
    /// Number of results, each counted once.
    pub results: usize,
    /// How many of them are verified and of a bench that was set, as far as that is known: faults, misreadings, steps and skills are
    /// counted in these alone.
    pub here: usize,
    /// Results that were handed in again.
    pub again: usize,
    /// Results that were not compared with anything, because nothing was given as set.
    pub not_compared: usize,
    /// Results whose verdict the criteria set now have turned.
    pub turned: usize,
    /// Benches that go by one name while nobody said which was set.
    pub several: Vec<(String, usize)>,
    /// Number of results that are not verified.
    pub doubtful: usize,
}

/// Sums up results, each once. Who is ready is said by [`crate::exchange::class::Class::lines`].
pub fn sum_up(results: &[Graded]) -> Summary {
    let beside = beside(results);
    let several = benches_of_one_name(results);
    let each = results.iter().zip(&beside).filter(|(_, beside)| beside.again.is_none());
    let results: Vec<&Graded> = each.map(|(graded, _)| graded).collect();
    let results = &results[..];
    let here: Vec<&Graded> = results.iter().copied().filter(|graded| on_this_bench(graded)).collect();
    Summary {
        faults: faults(&here),
        misreadings: most_first(here.iter().filter_map(|g| g.outcome.explained())),
        steps: steps(&here),
        skills: skills(&here),
        here: here.len(),
        results: results.len(),
        again: beside.iter().filter(|b| b.again.is_some()).count(),
        not_compared: results.iter().filter(|g| g.compared == Compared::Nothing).count(),
        turned: results.iter().filter(|g| g.turned().is_some()).count(),
        several,
        doubtful: results.iter().filter(|g| !g.verified()).count(),
    }
}

/// Whether a result was done on the bench that was set, as far as that is known.
pub(in crate::exchange) fn on_this_bench(graded: &Graded) -> bool {
    graded.verified() && graded.compared != Compared::Other
}

/// Codes in their order, each once.
pub(in crate::exchange) fn once_each(codes: impl Iterator<Item = &'static str>) -> Vec<&'static str> {
    codes.collect::<BTreeSet<_>>().into_iter().collect()
}

fn most_first(found: impl Iterator<Item = String>) -> Vec<(String, usize)> {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    found.for_each(|name| *counts.entry(name).or_default() += 1);
    // Of two as frequent the one whose name comes first.
    let mut sorted: Vec<(String, usize)> = counts.into_iter().collect();
    sorted.sort_by_key(|(_, n)| core::cmp::Reverse(*n));
    sorted
}

fn faults(results: &[&Graded]) -> Vec<FaultCount> {
    let mut counts: BTreeMap<&'static str, (usize, usize)> = BTreeMap::new();
    for fault in results.iter().flat_map(|g| &g.faults) {
        let (met, left) = counts.entry(fault.id).or_default();
        *met += 1;
        *left += usize::from(!fault.cleared);
    }
    let mut sorted: Vec<FaultCount> =
        counts.into_iter().map(|(id, (met, left))| FaultCount { id, met, left }).collect();
    // By share; of two alike the one that was met more often.
    sorted.sort_by(|a, b| (b.left * a.met).cmp(&(a.left * b.met)).then(b.met.cmp(&a.met)));
    sorted
}

fn steps(results: &[&Graded]) -> Vec<StepCount> {
    let mut counts: Vec<StepCount> = Vec::new();
    for (step, verdict) in results.iter().flat_map(|g| &g.steps) {
        if *verdict == Verdict::Note {
            continue;
        }
        let k = counts.iter().position(|c| c.step == *step).unwrap_or_else(|| {
            counts.push(StepCount { step: *step, judged: 0, right: 0 });
            counts.len() - 1
        });
        counts[k].judged += 1;
        counts[k].right += usize::from(verdict.holds());
    }
    counts
}

fn skills(results: &[&Graded]) -> Vec<(&'static str, f64)> {
    let mut counts: Vec<(&'static str, usize, usize)> = Vec::new();
    for (skill, got) in results.iter().flat_map(|g| &g.skills) {
        let k = counts.iter().position(|(known, ..)| known == skill).unwrap_or_else(|| {
            counts.push((skill, 0, 0));
            counts.len() - 1
        });
        counts[k].1 += usize::from(*got != Got::None);
        counts[k].2 += usize::from(*got == Got::Pass);
    }
    let seen = counts.into_iter().filter(|(_, seen, _)| *seen > 0);
    seen.map(|(skill, seen, passed)| (skill, passed as f64 / seen as f64)).collect()
}
