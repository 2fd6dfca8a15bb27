//! What is said of results beside their grades: what keeps them from counting, and what an instructor should know.

use dicrotic::exchange::class::within::{self, Odd};
use dicrotic::exchange::handin::remark::Remark;
use dicrotic::exchange::handin::set::One;
use dicrotic::exchange::handin::table::moment;
use dicrotic::exchange::handin::together::{Beside, benches_of_one_name, beside};
use dicrotic::exchange::handin::{Compared, Graded, Set};
use dicrotic::scenario::plan::Plan;

use crate::handed_in::Row;
use crate::terminal;

/// All that is said.
pub struct Told {
    /// What was graded, each with its file, once.
    pub once: Vec<(String, Graded, Beside)>,
    /// The same with what was handed in again, in the order of the files.
    pub all: Vec<Graded>,
    /// What must be looked at: the exit code tells of it too.
    pub complaints: Vec<String>,
    /// What is good to know.
    pub notes: Vec<String>,
}

/// What is said of different benches that were set under one name.
pub fn one_name(set: &Set) -> Vec<String> {
    let note = |(first, second): (&One, &One)| {
        terminal::one_line(&format!(
            "{} and {} are different scenarios, and both are called \"{}\": the results of both count",
            first.from,
            second.from,
            second.title.trim()
        ))
    };
    set.of_one_name().into_iter().map(note).collect()
}

/// Takes results apart into what counts and what is said of it. `called` tells how a student is called, given the code that was
/// typed.
pub fn of(rows: Vec<Row>, plan: Option<&Plan>, called: &dyn Fn(&str) -> String) -> Told {
    let mut complaints = Vec::new();
    let (mut files, mut all, mut sources) = (Vec::new(), Vec::new(), Vec::new());
    for row in rows {
        match row.graded {
            Ok(graded) => {
                files.push(row.file);
                sources.push(row.source);
                all.push(graded);
            }
            Err(why) => complaints.push(format!("{}: skipped: {why}", row.file)),
        }
    }
    let found = beside(&all);
    let mut notes = general(&all, &files, &found);
    notes.extend(within::odd(&sources, &all, plan).iter().flat_map(|one| odd(one, called)));
    let mut once = Vec::new();
    for ((file, graded), beside) in files.iter().zip(&all).zip(found) {
        if beside.again.is_some() {
            continue;
        }
        complaints.extend(against(file, graded));
        if !beside.copies.is_empty() {
            complaints.push(format!("{file}: the same actions as {}", named(&files, &beside.copies)));
        }
        if !beside.alike.is_empty() {
            let others = named(&files, &beside.alike);
            notes.push(format!("{file}: remark: same cursors and marks as {others}"));
        }
        if !beside.redated.is_empty() {
            let when = |k: usize| told_moment(all[k].about.ended_s);
            let others: Vec<String> =
                beside.redated.iter().map(|k| format!("{}, ended {}", files[*k], when(*k))).collect();
            notes.push(format!(
                "{file}: remark: the same actions with two times: this one, ended {}, counts; {}",
                told_moment(graded.about.ended_s),
                others.join("; ")
            ));
        }
        if !beside.begun.is_empty() {
            let others = named(&files, &beside.begun);
            notes.push(format!("{file}: remark: the same attempt started twice, also in {others}"));
        }
        let own = graded.remarks.iter().filter(|remark| **remark != Remark::OtherWords);
        notes.extend(own.map(|remark| format!("{file}: remark: {remark}")));
        if let Some(before) = graded.turned() {
            let word = |passed: bool| if passed { "passed" } else { "not passed" };
            let (before, now) = (word(before), word(graded.outcome.passed));
            notes.push(format!(
                "{file}: {before}, now {now}: it is judged by the criteria given now, not by its own"
            ));
        }
        once.push((file.clone(), graded.clone(), beside));
    }
    // Told once: where a class is graded by other criteria it is so of everybody.
    let others = |graded: &Graded| graded.remarks.contains(&Remark::OtherWords);
    let others: Vec<&str> = once.iter().filter(|(_, g, _)| others(g)).map(|(file, ..)| &file[..]).collect();
    if !others.is_empty() {
        notes.push(format!("remark: {}: {}", Remark::OtherWords, others.join(", ")));
    }
    // Names and codes come from elsewhere.
    for text in complaints.iter_mut().chain(&mut notes) {
        *text = terminal::one_line(text);
    }
    Told { once, all, complaints, notes }
}

fn against(file: &str, graded: &Graded) -> Vec<String> {
    let mut found = Vec::new();
    if !graded.verified() {
        let why: Vec<String> = graded.doubts.iter().map(ToString::to_string).collect();
        found.push(format!("{file}: not verified: {}", why.join("; ")));
    }
    found.extend(graded.against.iter().map(|against| format!("{file}: {against}")));
    found
}

/// A moment; in words where it is not known.
fn told_moment(since_1970_s: u64) -> String {
    if since_1970_s == 0 { "at no known time".into() } else { moment(since_1970_s) }
}

/// What is odd about a course result.
fn odd(odd: &Odd, called: &dyn Fn(&str) -> String) -> Vec<String> {
    let file = &odd.within.file;
    let several = (!odd.students.is_empty()).then(|| {
        let students = odd.students.iter().map(|code| called(code)).collect::<Vec<_>>().join(", ");
        format!("{file}: remark: one course result with the results of several students: {students}")
    });
    let other = odd.set.map(|set| {
        let said = match odd.within.course.as_str() {
            "" => "no course".into(),
            course => format!("the course \"{course}\""),
        };
        format!(
            "{file}: remark: it says it is the result of {said}; the course that was assigned is \"{set}\""
        )
    });
    several.into_iter().chain(other).collect()
}

fn named(files: &[String], places: &[usize]) -> String {
    places.iter().map(|k| files[*k].as_str()).collect::<Vec<_>>().join(", ")
}

fn general(all: &[Graded], files: &[String], found: &[Beside]) -> Vec<String> {
    let mut notes = Vec::new();
    let open = all.iter().filter(|g| g.compared == Compared::Nothing).count();
    if open > 0 {
        notes.push(format!(
            "{open} not compared with an assignment, and may be from another scenario: give the assignment with --set"
        ));
    }
    for (name, n) in benches_of_one_name(all) {
        notes.push(format!(
            "{n} different scenarios are called {name}: give the one that was assigned with --set"
        ));
    }
    let again: Vec<usize> = (0..all.len()).filter(|k| found[*k].again.is_some()).collect();
    if !again.is_empty() {
        let (n, list) = (again.len(), named(files, &again));
        notes.push(format!("{n} submitted more than once, counted once: {list}"));
    }
    notes
}
