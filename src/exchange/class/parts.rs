//! A student's line in a course: how each part stands, and what the whole comes to.

use super::care::Care;
use super::course::Class;
use super::line::{Line, Own, Seen, State};
use crate::assess::rubric::OF;
use crate::exchange::handin::set::{BenchMark, bench_mark};
use crate::scenario::plan::Part;
use serde::Serialize;

/// How a student stands in one part of a course.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PartLine {
    /// Where they stand in it.
    pub state: State,
    /// Points of the attempt that stands for them in it, of twenty.
    pub points: Option<u32>,
    /// Results that came in for it.
    pub results: usize,
    /// What its dates say of the attempt that stands, or else of any: `before_open`, `after_due`. They are held against the begin and
    /// the end that the student's device told, and fail nothing.
    pub remarks: Vec<&'static str>,
}

impl Class {
    /// The benches of the course's parts.
    pub(super) fn part_benches(&self) -> Vec<BenchMark> {
        self.plan.iter().flat_map(|plan| &plan.part).map(|part| bench_mark(&part.scenario)).collect()
    }

    /// A student's line in a course: that of everything they handed in, with its parts in the place of what belongs to one bench.
    pub(super) fn course_line(&self, own: Own, seen: &Seen, benches: &[BenchMark]) -> Line {
        let parts = self.plan.as_ref().map_or(&[][..], |plan| &plan.part);
        let lines: Vec<Line> = benches
            .iter()
            .zip(parts)
            .map(|(bench, part)| {
                let here = |k: &usize| self.graded[*k].digest == *bench;
                let results = own.results.iter().copied().filter(here).collect();
                let due_s = part.due_s().unwrap_or(0);
                let entry = own.entry.clone();
                self.line(Own { entry, listed: own.listed, results, failed: Vec::new(), due_s }, seen)
            })
            .collect();
        let mut whole = self.line(own, seen);
        let care = &whole.care;
        let part = |(line, part): (&Line, &Part)| PartLine {
            state: line.state,
            points: line.points,
            results: line.results.len(),
            remarks: self.dated(line, part, care),
        };
        whole.parts = lines.iter().zip(parts).map(part).collect();
        whole.of = OF * parts.len() as u32;
        let is = |state: State| move |line: &Line| line.state == state;
        if lines.iter().all(is(State::Ready)) {
            whole.state = State::Ready;
        } else if whole.state != State::Waived
            && lines.iter().any(|l| matches!(l.state, State::Ready | State::Tried))
        {
            whole.state = State::Tried;
        } else if whole.state == State::Ready {
            whole.state = State::WrongBench; // ready in what is no part of the course
        }
        let points: Vec<u32> = lines.iter().filter_map(|line| line.points).collect();
        whole.points = (!points.is_empty()).then(|| points.iter().sum());
        whole.chosen = None;
        whole.passes = lines.iter().filter(|line| line.state == State::Ready).count();
        let open = || lines.iter().filter(|line| line.state != State::Ready);
        whole.first_wrong = open().find_map(|line| line.first_wrong);
        whole.faults_left = each_once(lines.iter().flat_map(|line| line.faults_left.clone()));
        whole.misreadings = each_once(lines.iter().flat_map(|line| line.misreadings.clone()));
        whole.trace = each_once(lines.iter().flat_map(|line| line.trace.clone()));
        whole
    }

    /// What a part's dates say.
    fn dated(&self, line: &Line, part: &Part, care: &Care) -> Vec<&'static str> {
        let of = line.chosen.map_or_else(|| line.results.clone(), |k| vec![k]);
        let about = || of.iter().map(|k| &self.graded[*k].about);
        let due_s = Some(care.until_s).filter(|s| *s > 0).or(part.due_s());
        let early = |opens: u64| about().any(|a| a.begun_s > 0 && a.begun_s < opens);
        let late = |due: u64| about().any(|a| a.ended_s > due);
        [
            part.opens_s().is_some_and(early).then_some("before_open"),
            due_s.is_some_and(late).then_some("after_due"),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

fn each_once<T: PartialEq>(all: impl Iterator<Item = T>) -> Vec<T> {
    let mut once = Vec::new();
    all.for_each(|one| {
        if !once.contains(&one) {
            once.push(one);
        }
    });
    once
}
