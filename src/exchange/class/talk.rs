//! What to talk about: what went wrong at first and what at last, over all results, and group by group.

use super::course::Class;
use super::line::{Line, STATES, State, minutes};
use crate::assess::verdict::Verdict;
use crate::exchange::handin::class::{Summary, on_this_bench, sum_up};
use crate::exchange::handin::together::beside;
use crate::exchange::handin::{Graded, Outcome};
use crate::plain::json;
use crate::scenario::Scenario;
use crate::scenario::plan::Part;
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;

/// Why a trace was not good enough, with the codes that say so.
pub const CAUSES: [(&str, &[&str]); 7] = [
    ("clipped", &["trace_clipped"]),
    ("small", &["trace_small"]),
    ("tall", &["trace_tall"]),
    ("hum", &["trace_hum"]),
    ("restless", &["trace_restless", "trace_spike", "trace_step", "trace_unlike"]),
    ("short", &["trace_short", "trace_none"]),
    ("foreign", &["trace_foreign"]),
];

/// Why a trace was not good enough, by the codes of a check.
pub fn causes(codes: &[String]) -> Vec<&'static str> {
    let told = |list: &[&str]| codes.iter().any(|code| list.contains(&code.as_str()));
    CAUSES.into_iter().filter(|(_, list)| told(list)).map(|(cause, _)| cause).collect()
}

/// The misreadings, steps that went wrong, causes of a poor trace and faults left that stand in a student's results, as
/// `misreadings:bumps_counted`, `wrong:count`, `trace:hum`, `faults:cable_moved`: whoever is counted in what to talk about is found by it.
pub fn met(results: &[&Graded]) -> Vec<String> {
    let here = results.iter().filter(|graded| on_this_bench(graded));
    let mut all = std::collections::BTreeSet::new();
    for graded in here {
        for outcome in checks(graded) {
            all.extend(outcome.first_wrong.map(|step| format!("wrong:{}", step.name())));
            all.extend(outcome.explained().map(|id| format!("misreadings:{id}")));
            all.extend(causes(&outcome.codes).into_iter().map(|cause| format!("trace:{cause}")));
        }
        let left = graded.faults.iter().filter(|fault| !fault.cleared);
        all.extend(left.map(|fault| format!("faults:{}", fault.id)));
    }
    all.into_iter().collect()
}

/// How often something came at the first check and at the last one. Who checked once did both at once.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Often {
    /// What.
    pub id: String,
    /// Results in which the first check came to it.
    pub first: usize,
    /// Results in which the last check still came to it.
    pub last: usize,
}

/// A group beside the others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Group {
    /// Its name; empty for those without one.
    pub group: String,
    /// Students.
    pub n: usize,
    /// How many stand where, in the order of [`STATES`].
    pub states: Vec<usize>,
    /// The middle of the points, where there are any.
    pub points: Option<f64>,
    /// The name of the misreading that came most often; empty where there is none; see [`Outcome::explained`].
    pub misreading: String,
}

/// The first check and the last one of a result.
fn checks(graded: &Graded) -> [&Outcome; 2] {
    [graded.first.as_ref().unwrap_or(&graded.outcome), &graded.outcome]
}

/// Counts what `what` finds in first and last checks, most frequent first.
fn often(results: &[&Graded], what: impl Fn(&Outcome) -> Vec<String>) -> Vec<Often> {
    let mut counts: BTreeMap<String, [usize; 2]> = BTreeMap::new();
    for graded in results {
        for (k, outcome) in checks(graded).into_iter().enumerate() {
            what(outcome).into_iter().for_each(|id| counts.entry(id).or_default()[k] += 1);
        }
    }
    let mut all: Vec<Often> =
        counts.into_iter().map(|(id, [first, last])| Often { id, first, last }).collect();
    all.sort_by_key(|one| std::cmp::Reverse((one.first + one.last, one.first)));
    all
}

/// Groups side by side, by their names; those without one last.
pub fn groups(lines: &[Line]) -> Vec<Group> {
    let mut by_name: BTreeMap<(bool, &str), Vec<&Line>> = BTreeMap::new();
    for line in lines {
        by_name.entry((line.group.is_empty(), &line.group)).or_default().push(line);
    }
    let group = |((_, name), lines): ((bool, &str), Vec<&Line>)| {
        let mut points: Vec<u32> = lines.iter().filter_map(|line| line.points).collect();
        points.sort_unstable();
        let middle =
            |points: &[u32]| f64::from(points[(points.len() - 1) / 2] + points[points.len() / 2]) / 2.0;
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for misreading in lines.iter().flat_map(|line| &line.misreadings) {
            *counts.entry(misreading).or_default() += 1;
        }
        Group {
            group: name.into(),
            n: lines.len(),
            states: STATES.map(|state| lines.iter().filter(|line| line.state == state).count()).into(),
            points: (!points.is_empty()).then(|| middle(&points)),
            misreading: counts
                .into_iter()
                .max_by_key(|(_, n)| *n)
                .map_or_else(String::new, |(name, _)| name.into()),
        }
    };
    by_name.into_iter().map(group).collect()
}

/// What changed for a student.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Change {
    /// The student's code.
    pub code: String,
    /// Where they stood; nothing for somebody new.
    pub before: Option<State>,
    /// Where they stand.
    pub now: State,
    /// Points before and now.
    pub points: [Option<u32>; 2],
}

impl Class {
    /// What is otherwise than it [stood](Class::stood) before: by other criteria, by what came in since, by what was decided.
    pub fn changes(&self, lines: &[Line]) -> Vec<Change> {
        let known: BTreeMap<&str, _> = self.stood.iter().map(|stood| (stood.code.as_str(), stood)).collect();
        let change = |line: &Line| {
            let before = known.get(line.code.as_str());
            let state = before.and_then(|stood| State::of_name(&stood.state));
            let points = [before.and_then(|stood| stood.points), line.points];
            let change = Change { code: line.code.clone(), before: state, now: line.state, points };
            (state != Some(line.state) || points[0] != points[1]).then_some(change)
        };
        if self.stood.is_empty() { Vec::new() } else { lines.iter().filter_map(change).collect() }
    }

    /// Results that were done on this bench, each once.
    fn here(&self) -> Vec<&Graded> {
        let found = beside(&self.graded);
        let once = self.graded.iter().zip(found).filter(|(_, beside)| beside.again.is_none());
        once.map(|(graded, _)| graded).filter(|graded| on_this_bench(graded)).collect()
    }

    /// Steps that were not right, at first and at last; misreadings; why traces were not good enough.
    pub fn talk(&self) -> [Vec<Often>; 3] {
        let here = self.here();
        let step =
            |outcome: &Outcome| outcome.first_wrong.map(|step| step.name().to_string()).into_iter().collect();
        let misreading = |outcome: &Outcome| outcome.explained().into_iter().collect();
        let cause = |outcome: &Outcome| causes(&outcome.codes).into_iter().map(str::to_string).collect();
        [often(&here, step), often(&here, misreading), often(&here, cause)]
    }

    /// Everything that an instructor sees of the class, as JSON.
    pub fn told(&self) -> Value {
        let lines = self.lines();
        let Summary {
            faults, steps, skills, results, again, not_compared, turned, several, doubtful, ..
        } = sum_up(&self.graded);
        let [wrong, misreadings, trace] = self.talk();
        // Where there is a list, the states are those of the list: who is not on it would make more of them than there are students.
        let has_list = !self.roster.is_empty();
        let counted = || lines.iter().filter(|line| line.listed || !has_list);
        let states: BTreeMap<&str, usize> =
            STATES.map(|state| (state.name(), counted().filter(|line| line.state == state).count())).into();
        let judged = |verdict: &Verdict| *verdict != Verdict::Note;
        let checked = self.here().iter().filter(|g| g.steps.iter().any(|(_, v)| judged(v))).count();
        let failed: Vec<Value> = self
            .failed
            .iter()
            .map(|f| json!({"file": f.source.file, "student": f.student, "why": f.why, "args": f.args}))
            .collect();
        let part = |part: &Part| {
            let title = Scenario::read(&part.scenario).map_or_else(|_| String::new(), |s| s.title);
            json!({"title": title, "opens_s": part.opens_s(), "due_s": part.due_s()})
        };
        let course = self.plan.as_ref().map(|plan| {
            json!({"title": plan.course.title, "parts": plan.part.iter().map(part).collect::<Vec<_>>()})
        });
        json!({
            "course": course, "states": states, "counted": counted().count(), "groups": groups(&lines), "changes": self.changes(&lines),
            "wrong": wrong, "misreadings": misreadings, "trace": trace, "checked": checked,
            "faults": faults, "steps": steps, "skills": skills, "minutes": minutes(&lines), "results": results,
            "again": again, "not_compared": not_compared, "turned": turned, "several": several,
            "doubtful": doubtful, "failed": failed, "listed": self.roster.len(), "lines": lines,
        })
    }
}
