//! The course result that results came in, beside what they say themselves: it is one student's, and of the course that was set. The
//! file around the results says nothing that is believed; that it does not fit is remarked and fails nothing.

use super::course::Source;
use crate::exchange::handin::Graded;
use crate::exchange::handin::together::whose;
use crate::scenario::plan::Plan;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// Code of the remark that a course result holds results of several students.
pub const SEVERAL_STUDENTS: &str = "several_students";
/// Code of the remark that it is of another course than the one set.
pub const OTHER_COURSE: &str = "other_course";

/// A course result.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Within {
    /// Its file.
    pub file: String,
    /// The id of the course that it says it is of.
    pub course: String,
}

/// What is odd about a course result.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Odd<'a> {
    /// Which.
    pub within: &'a Within,
    /// The students whose results it holds, where there are several: as each typed their ID first.
    pub students: Vec<&'a str>,
    /// The id of the course that was set, where the file says another.
    pub set: Option<&'a str>,
}

impl Odd<'_> {
    /// The codes of what is remarked.
    pub fn codes(&self) -> Vec<&'static str> {
        let several = (!self.students.is_empty()).then_some(SEVERAL_STUDENTS);
        several.into_iter().chain(self.set.map(|_| OTHER_COURSE)).collect()
    }
}

/// Course results that are odd, in the order of their files' names, given what came in and what came of it, place by place.
pub fn odd<'a>(sources: &'a [Source], graded: &'a [Graded], plan: Option<&'a Plan>) -> Vec<Odd<'a>> {
    let mut all: BTreeMap<&Within, Vec<&Graded>> = BTreeMap::new();
    for (source, graded) in sources.iter().zip(graded) {
        if let Some(within) = &source.within {
            all.entry(within).or_default().push(graded);
        }
    }
    let set = plan.map(|plan| plan.course.id.as_str());
    let look = |(within, graded): (&'a Within, Vec<&'a Graded>)| {
        let mut seen = BTreeSet::new();
        let each = graded.into_iter().filter(|graded| seen.insert(whose(graded)));
        let students: Vec<&str> = each.map(|graded| graded.about.student.as_str()).collect();
        let students = if students.len() > 1 { students } else { Vec::new() };
        Odd { within, students, set: set.filter(|set| *set != within.course) }
    };
    all.into_iter().map(look).filter(|odd| !odd.codes().is_empty()).collect()
}

/// The codes of what is remarked about each result for the sake of the course result that it came in, place by place.
pub fn remarks(sources: &[Source], graded: &[Graded], plan: Option<&Plan>) -> Vec<Vec<&'static str>> {
    let odd = odd(sources, graded, plan);
    let of = |source: &Source| {
        odd.iter().find(|odd| Some(odd.within) == source.within.as_ref()).map_or_else(Vec::new, Odd::codes)
    };
    sources.iter().map(of).collect()
}
