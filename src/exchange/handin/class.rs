//! Many results together: who is ready, which faults stayed, which misreadings came, how long it took.

use super::error::HandinError;
use super::grade::Graded;
use super::set::Compared;
use super::together::{benches_of_one_name, beside, whose};
use crate::assess::skill::Got;
use crate::assess::verdict::{Step, Verdict};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// A student, by the code they typed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Student {
    /// Their code as they typed it first; empty for a result without one.
    pub student: String,
    /// Their results: places in the list that was summed up. What they handed in twice is there once.
    pub results: Vec<usize>,
    /// Benches (different seeds) on which they did what [`Need`] asks for.
    pub passes: usize,
    /// Their best score by the rubric, of 20.
    pub score: Option<u32>,
    /// Whether that is often enough.
    pub ready: bool,
    /// Time at the bench over all results, min.
    pub minutes: f64,
    /// The step that went wrong first in their last result.
    pub first_wrong: Option<Step>,
    /// Faults that they left in, over all results.
    pub faults_left: Vec<&'static str>,
    /// Codes of what keeps results of theirs from being verified.
    pub doubts: Vec<&'static str>,
    /// Codes of what keeps results of theirs from counting, see [`super::grade::Against`].
    pub against: Vec<&'static str>,
    /// Whether somebody else handed in the same log.
    pub copied: bool,
    /// Whether somebody else's cursors and marks stand where theirs do.
    pub alike: bool,
    /// Codes of what a log made by a program looks like, see [`super::remark`].
    pub remarks: Vec<&'static str>,
}

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
    /// Not ready first, then by passes, then by code.
    pub students: Vec<Student>,
    /// Most often left first.
    pub faults: Vec<FaultCount>,
    /// Misreadings by count, most frequent first.
    pub misreadings: Vec<(String, usize)>,
    /// Steps in the order of measuring.
    pub steps: Vec<StepCount>,
    /// Skills with the share of results that show them, where there is evidence.
    pub skills: Vec<(&'static str, f64)>,
    /// Time at the bench a student, min: quarter, middle, three quarters.
    pub minutes: Option<[f64; 3]>,
    /// Number of results, each counted once.
    pub results: usize,
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

/// What makes a student ready.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    /// On how many different benches.
    pub benches: usize,
    /// By the rubric; else by passing the check, which asks for what the assignment says.
    pub rubric: bool,
}

/// Sums up results. What is not verified, or was done on a bench of somebody else, counts as handed in, but not towards
/// being ready.
pub fn sum_up(results: &[Graded], need: Need) -> Summary {
    let beside = beside(results);
    let mut by_student: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    let once = || results.iter().enumerate().filter(|(k, _)| beside[*k].again.is_none());
    for (k, graded) in once() {
        by_student.entry(whose(graded)).or_default().push(k);
    }
    let mut students: Vec<Student> = by_student
        .into_values()
        .map(|mine| {
            let of = || mine.iter().map(|k| &results[*k]);
            let passed = |g: &&Graded| {
                let good = if need.rubric { g.rubric_ready } else { g.outcome.passed };
                good && g.counts()
            };
            let passes = of().filter(passed).map(|g| (g.digest, g.seed)).collect::<BTreeSet<_>>().len();
            let left: BTreeSet<&'static str> =
                of().flat_map(|g| &g.faults).filter(|f| !f.cleared).map(|f| f.id).collect();
            let doubts: BTreeSet<&'static str> =
                of().flat_map(|g| &g.doubts).map(HandinError::code).collect();
            Student {
                student: of().next().map_or_else(String::new, |g| g.about.student.clone()),
                passes,
                ready: passes >= need.benches.max(1),
                score: of().filter_map(|g| g.score).max(),
                minutes: of().map(|g| g.minutes).sum(),
                first_wrong: of().next_back().and_then(|g| g.outcome.first_wrong),
                faults_left: left.into_iter().collect(),
                doubts: doubts.into_iter().collect(),
                against: once_each(of().flat_map(|g| &g.against).map(|a| a.code())),
                copied: mine.iter().any(|k| !beside[*k].copies.is_empty()),
                alike: mine.iter().any(|k| !beside[*k].alike.is_empty()),
                remarks: once_each(of().flat_map(|g| &g.remarks).map(|r| r.code())),
                results: mine,
            }
        })
        .collect();
    students.sort_by_key(|s| (s.ready, s.passes));
    let mut minutes: Vec<f64> = students.iter().map(|s| s.minutes).collect();
    minutes.sort_by(f64::total_cmp);
    let several = benches_of_one_name(results);
    let results: Vec<&Graded> = once().map(|(_, graded)| graded).collect();
    let results = &results[..];
    let at = |share: f64| minutes[((minutes.len() - 1) as f64 * share).round() as usize];
    Summary {
        minutes: (!minutes.is_empty()).then(|| [at(0.25), at(0.5), at(0.75)]),
        faults: faults(results),
        misreadings: most_first(results.iter().filter_map(|g| g.outcome.explained())),
        steps: steps(results),
        skills: skills(results),
        results: results.len(),
        again: beside.iter().filter(|b| b.again.is_some()).count(),
        not_compared: results.iter().filter(|g| g.compared == Compared::Nothing).count(),
        turned: results.iter().filter(|g| g.turned().is_some()).count(),
        several,
        doubtful: results.iter().filter(|g| !g.verified()).count(),
        students,
    }
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
