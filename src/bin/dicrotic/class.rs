//! `class`: who of a class is ready, which faults stayed and which misreadings came, as a table on the terminal or as
//! one HTML file without scripts.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use dicrotic::exchange::class::items;
use dicrotic::exchange::class::line::{BEGUN_TWICE, NO_TIME, TWO_TIMES};
use dicrotic::exchange::class::parts::PartLine;
use dicrotic::exchange::class::talk::Change;
use dicrotic::exchange::class::within::{OTHER_COURSE, SEVERAL_STUDENTS};
use dicrotic::exchange::class::{Class, Line, State, Terms, answers, gradebook, minutes, roster, saved};
use dicrotic::exchange::handin::class::{Summary, sum_up};
use rayon::prelude::*;
use serde_json::json;

use crate::failure::{Failure, While};
use crate::handed_in::{self, Known, Row, grade_all};
use crate::page_words::{FAULT, MISREADING, PART, SKILL, STATE, STEP, TRACE, inside, named};
use crate::same_file::{self, identity};
use crate::students::Students;
use crate::{output, safe_output, set, terminal, text_file, told};

/// How a class is summed up.
pub struct Order<'a> {
    /// What was set: files, folders, links.
    pub set: &'a [String],
    /// What makes a student ready.
    pub terms: Terms,
    /// Whether students are called by the student ID that they typed.
    pub names: bool,
    /// The HTML file; the terminal without one.
    pub out: Option<&'a Path>,
    /// The list of students.
    pub roster: Option<&'a Path>,
    /// A class that was saved, to be gone on with.
    pub open: Option<&'a Path>,
    /// Where it is saved.
    pub save: Option<&'a Path>,
    /// The table for a course site, and its columns.
    pub gradebook: Option<(&'a Path, gradebook::Order)>,
    /// The table of items.
    pub items: Option<&'a Path>,
    /// The answer key, and the instructor's word.
    pub answers: Option<(&'a Path, Option<&'a str>)>,
}

/// Sums up what is in `paths`, together with what was saved before.
pub fn run(paths: &[PathBuf], order: &Order) -> Result<(), Failure> {
    let given = set::read(order.set)?;
    let outputs: Vec<&Path> = [order.out, order.save, order.gradebook.as_ref().map(|(path, _)| *path)]
        .into_iter()
        .chain([order.answers.map(|(path, _)| path), order.items])
        .flatten()
        .collect();
    let read = paths.iter().chain(&given.files).map(PathBuf::as_path);
    // A class may be saved over the file that it was opened from: that is going on with it.
    let open = order.open.filter(|open| order.save.is_none_or(|save| identity(save) != identity(open)));
    same_file::refuse_overlap(read.chain(order.roster).chain(open), &outputs)?;
    let (mut class, waiting) = match order.open {
        Some(path) => {
            saved::read(&text_file::read(path, text_file::CLASS)?).while_doing(|| terminal::name(path))?
        }
        None => (Class::default(), Vec::new()),
    };
    if order.open.is_none() {
        class.terms = order.terms.clone();
    }
    for one in given.set.all() {
        class.set.put(&one.from, &one.text).while_doing(|| one.from.clone())?;
    }
    class.plan = given.plan.or(class.plan);
    if let Some(path) = order.roster {
        class.roster = roster::read(&text_file::read(path, text_file::LIST)?).map_err(|errors| {
            let lines: Vec<String> = errors
                .iter()
                .map(|e| format!("{}: {}", terminal::name(path), terminal::one_line(&e.to_string())))
                .collect();
            Failure::new(lines.join("\ndicrotic: "))
        })?;
    }
    let known =
        if waiting.iter().any(|source| !source.code.is_empty()) { Known::new() } else { Known::default() };
    let mut rows: Vec<Row> =
        waiting.into_par_iter().map(|source| handed_in::graded(source, &class.set, &known)).collect();
    let set = set::Given { set: class.set.clone(), plan: None, files: given.files };
    rows.extend(grade_all(paths, &set, &outputs)?);
    for row in &rows {
        match (&row.graded, &row.why) {
            (Ok(graded), _) => class.take(row.source.clone(), graded.clone()),
            (Err(_), Some(why)) => class.fail(row.source.clone(), why),
            (Err(why), None) => class.refuse(row.source.clone(), "replay", json!({"found": why})),
        }
    }
    let lines = class.lines();
    let students = Students::new(&lines, order.names);
    let told = told::of(rows, class.plan.as_ref(), &|code| students.called(code));
    let (mut notes, complaints) = (told.notes, &told.complaints);
    notes.extend(told::one_name(&class.set));
    notes.extend(changed(&class, &students));
    let summary = sum_up(&class.graded);
    let mut files: Vec<(PathBuf, Vec<u8>)> = Vec::new();
    if let Some((path, columns)) = &order.gradebook {
        let feedback: Vec<String> = lines.iter().map(feedback).collect();
        let text = gradebook::write(&lines, &feedback, columns).while_doing(|| "--gradebook".into())?;
        files.push((path.to_path_buf(), text.into_bytes()));
    }
    if let Some((path, word)) = order.answers {
        let mut text = String::new();
        for one in class.set.all() {
            text += &answers::table(
                &answers::answers(&one.text, word, &class.everybody()).while_doing(|| one.from.clone())?,
            );
        }
        files.push((path.to_path_buf(), text.into_bytes()));
    }
    if let Some(path) = order.items {
        // The instructor's own table, of people whom they know: nothing is too few.
        let all = items::of_class(&class.graded, 1);
        files
            .push((path.to_path_buf(), items::table(&all, 1, &|name| inside(MISREADING, name)).into_bytes()));
    }
    if let Some(path) = order.save {
        files.push((path.to_path_buf(), saved::write(&class).into_bytes()));
    }
    if let Some(out) = order.out {
        files.push((out.to_path_buf(), html(&summary, &students, &notes).into_bytes()));
    }
    safe_output::write(&files)?;
    if order.out.is_none() {
        output::print(&plain(&summary, &students, &notes))?;
    }
    if complaints.is_empty() { Ok(()) } else { Err(Failure::new(complaints.join("\ndicrotic: "))) }
}

/// Who stands otherwise than when the class was saved.
fn changed(class: &Class, students: &Students) -> Vec<String> {
    let points = |n: Option<u32>| n.map_or_else(|| "-".into(), |n| n.to_string());
    let told = |change: Change| {
        let before = change.before.map_or_else(|| "new".into(), state);
        let [from, to] = change.points.map(points);
        let (code, now) = (students.called(&change.code), state(change.now));
        format!("changed: {code}: {before}, {from} points; now {now}, {to} points")
    };
    class.changes(students.lines).into_iter().map(told).collect()
}

fn state(state: State) -> String {
    named(STATE, state.name())
}

/// Codes of one kind in words, one after the other.
fn list(prefix: &str, codes: &[&str]) -> String {
    codes.iter().map(|code| inside(prefix, code)).collect::<Vec<_>>().join(", ")
}

/// A text as the beginning of a sentence.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The words for a student in the gradebook: students read them.
fn feedback(line: &Line) -> String {
    let about = |what: &str, words: String| {
        if words.is_empty() { String::new() } else { format!("{what}: {words}.") }
    };
    let misreadings: Vec<&str> = line.misreadings.iter().map(String::as_str).collect();
    let faults = if line.faults_left.len() == 1 { "Fault not fixed" } else { "Faults not fixed" };
    let parts = [
        format!("{}.", capital(&state(line.state))),
        about(
            "First step that is not correct",
            line.first_wrong.map_or_else(String::new, |step| inside(STEP, step.name())),
        ),
        about("Why the trace was not good enough", list(TRACE, &line.trace)),
        about("Misreading", list(MISREADING, &misreadings)),
        about(faults, list(FAULT, &line.faults_left)),
        line.care.note.clone(),
    ];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

fn remarks(student: &Line, students: &Students) -> Vec<String> {
    let against = |code: &str| student.against.contains(&code);
    let looks = |code: &str| student.remarks.contains(&code);
    [
        (!student.doubts.is_empty(), "a result could not be verified"),
        (!student.failed.is_empty(), "something that they submitted could not be used"),
        (against("other_bench"), "not the scenario that was assigned"),
        (against("other_seed"), "the scenario of another student ID"),
        (against("too_many_tries"), "more attempts than allowed"),
        (against("told_truth"), "misreadings that were not assigned and that tell the right answer"),
        (against("late"), "after the deadline"),
        (looks("all_at_once"), "counting window, answers and check at one moment"),
        (looks("clock"), "less time on the clock than the attempt lasted"),
        (looks("no_pause"), "many actions without time between them"),
        (looks("other_words"), "other misreadings, hints or criteria than those assigned"),
        (looks(TWO_TIMES), "the same actions with two times"),
        (looks(BEGUN_TWICE), "the same attempt started twice"),
        (looks(NO_TIME), "no time of start or end"),
        (looks(SEVERAL_STUDENTS), "in a course result with other students' results"),
        (looks(OTHER_COURSE), "in the result of another course"),
    ]
    .into_iter()
    .filter(|(on, _)| *on)
    .map(|(_, text)| text.to_string())
    .chain(
        [("same actions as", &student.copied), ("same cursors and marks as", &student.alike)]
            .into_iter()
            .filter(|(_, others)| !others.is_empty())
            .map(|(text, others)| {
                let others: Vec<String> = others.iter().map(|code| students.called(code)).collect();
                format!("{text} {}", others.join(", "))
            }),
    )
    .collect()
}

/// How each part of a course stands, behind the state of the whole.
fn parts(student: &Line) -> String {
    let part = |(k, part): (usize, &PartLine)| {
        let points = part.points.map_or_else(String::new, |points| format!(" {points}"));
        let dates: String = part.remarks.iter().map(|code| format!(", {}", named(PART, code))).collect();
        format!("{}: {}{points}{dates}", k + 1, state(part.state))
    };
    let all: Vec<String> = student.parts.iter().enumerate().map(part).collect();
    if all.is_empty() { String::new() } else { format!(" ({})", all.join("; ")) }
}

fn line(student: &Line, students: &Students) -> [String; 7] {
    [
        format!("{}{}", state(student.state), parts(student)),
        format!(
            "{} of {}",
            student.passes,
            if student.parts.is_empty() { student.results.len() } else { student.parts.len() }
        ),
        match student.points {
            None => "-".into(),
            Some(points) if student.parts.is_empty() => points.to_string(),
            Some(points) => format!("{points} of {}", student.of),
        },
        student.first_wrong.map_or_else(|| "-".into(), |step| inside(STEP, step.name())),
        if student.faults_left.is_empty() { "-".into() } else { list(FAULT, &student.faults_left) },
        format!("{:.0}", student.minutes),
        remarks(student, students).join("; "),
    ]
}

/// Those first who need something; the number is the place on the list.
fn in_order(lines: &[Line]) -> Vec<(usize, &Line)> {
    let mut order: Vec<(usize, &Line)> = lines.iter().enumerate().collect();
    order.sort_by_key(|(_, line)| line.state);
    order
}

const HEADS: [&str; 8] = [
    "student",
    "",
    "passed",
    "points of 20",
    "first step not correct",
    "faults not fixed",
    "minutes",
    "remarks",
];

fn plain(summary: &Summary, students: &Students, notes: &[String]) -> String {
    let mut table: Vec<Vec<String>> = vec![HEADS.map(String::from).to_vec()];
    for (k, student) in in_order(students.lines) {
        table.push([vec![students.name(k)], line(student, students).to_vec()].concat());
    }
    let width = |column: usize| table.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..HEADS.len()).map(width).collect();
    let mut text = String::new();
    for row in &table {
        let cells: Vec<String> = row.iter().zip(&widths).map(|(cell, w)| format!("{cell:<w$}")).collect();
        let _ = writeln!(text, "{}", cells.join("  ").trim_end());
    }
    let mut part = |head: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            let _ = writeln!(text, "\n{head}\n{}", lines.join("\n"));
        }
    };
    part(
        "faults not fixed",
        summary
            .faults
            .iter()
            .map(|f| format!("{:>3} of {:<3} {}", f.left, f.met, inside(FAULT, f.id)))
            .collect(),
    );
    part(
        "misreadings",
        summary.misreadings.iter().map(|(id, n)| format!("{n:>3} {}", inside(MISREADING, id))).collect(),
    );
    part(
        "steps correct",
        summary
            .steps
            .iter()
            .map(|s| format!("{:>3} of {:<3} {}", s.right, s.judged, inside(STEP, s.step.name())))
            .collect(),
    );
    part(
        "skills shown",
        summary
            .skills
            .iter()
            .map(|(id, share)| format!("{:>3.0} % {}", 100.0 * share, inside(SKILL, id)))
            .collect(),
    );
    part("notes", notes.to_vec());
    text
}

/// A text as it may stand in HTML.
fn escaped(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            '&' => "&amp;".into(),
            '<' => "&lt;".into(),
            '>' => "&gt;".into(),
            '"' => "&quot;".into(),
            '\'' => "&#39;".into(),
            c => c.to_string(),
        })
        .collect()
}

const STYLE: &str = ":root{color-scheme:light dark;--g:light-dark(#ebe2cf,#1a1411);--s:light-dark(#fdf8ec,#2a211c);--i:light-dark(#2b211a,#f3e9d6);--q:light-dark(#5b4b3d,#cbbba1);--a:light-dark(#8a4f08,#eaa640);--h:light-dark(#cfc0a4,#46382f)}\
*{box-sizing:border-box}body{margin:0 auto;max-width:72rem;padding:1.5rem clamp(14px,3vw,44px);background:var(--g);color:var(--i);font:1rem/1.5 Seravek,Ubuntu,'Segoe UI','Noto Sans',sans-serif}\
h1,h2{font:italic 400 1.5rem/1.2 Palatino,'URW Palladio L',P052,Georgia,serif}h1{font-size:2.2rem}h2{margin-top:2rem}\
.wide{overflow-x:auto}table{border-collapse:collapse;width:100%}th,td{text-align:left;padding:.4rem .8rem .4rem 0;border-bottom:1px solid var(--h);vertical-align:top}th{color:var(--q);font-weight:400;font-size:.86rem}\
.not{color:var(--a);font-weight:600}.quiet{color:var(--q)}td.n{font-variant-numeric:tabular-nums;white-space:nowrap}meter{width:10rem;max-width:40vw}\
@media print{:root{color-scheme:light}body{background:#fff}}";

fn html(summary: &Summary, students: &Students, notes: &[String]) -> String {
    let lines = students.lines;
    let ready = lines.iter().filter(|line| line.state == State::Ready).count();
    let mut body = String::new();
    let _ = write!(
        body,
        "<h1>Before the lab</h1><p>{ready} of {} students are ready; {} results, {} of them not verified.</p>",
        lines.len(),
        summary.results,
        summary.doubtful
    );
    if let Some([q1, q2, q3]) = minutes(lines) {
        let _ = write!(
            body,
            "<p class=quiet>Time of an attempt: median {q2:.0} min; half of the students took {q1:.0} to {q3:.0} min.</p>"
        );
    }
    for note in notes {
        let _ = write!(body, "<p class=quiet>{}</p>", escaped(note));
    }
    body.push_str("<h2>Not ready first</h2><div class=wide><table><thead><tr>");
    for head in HEADS {
        let _ = write!(body, "<th scope=col>{head}</th>");
    }
    body.push_str("</tr></thead><tbody>");
    for (k, student) in in_order(lines) {
        let [state, passed, score, step, faults, minutes, remarks] =
            line(student, students).map(|cell| escaped(&cell));
        let class = if matches!(student.state, State::Ready | State::Waived) { "quiet" } else { "not" };
        let _ = write!(
            body,
            "<tr><th scope=row>{}</th><td class={class}>{state}</td><td class=n>{passed}</td><td class=n>{score}</td><td>{step}</td>\
             <td>{faults}</td><td class=n>{minutes}</td><td>{remarks}</td></tr>",
            escaped(&students.name(k))
        );
    }
    body.push_str("</tbody></table></div>");
    let mut part = |head: &str, prefix: &str, lines: Vec<(&str, usize, usize)>| {
        if lines.is_empty() {
            return;
        }
        let _ = write!(body, "<h2>{head}</h2><div class=wide><table><tbody>");
        for (what, n, of) in lines {
            let _ = write!(
                body,
                "<tr><th scope=row>{}</th><td class=n>{n} of {of}</td><td><meter min=0 max={of} value={n}></meter></td></tr>",
                escaped(&inside(prefix, what))
            );
        }
        body.push_str("</tbody></table></div>");
    };
    part("Faults not fixed", FAULT, summary.faults.iter().map(|f| (f.id, f.left, f.met)).collect());
    part(
        "Misreadings",
        MISREADING,
        summary.misreadings.iter().map(|(id, n)| (id.as_str(), *n, summary.here)).collect(),
    );
    part(
        "Steps that were correct",
        STEP,
        summary.steps.iter().map(|s| (s.step.name(), s.right, s.judged)).collect(),
    );
    part(
        "Skills shown, per cent",
        SKILL,
        summary.skills.iter().map(|(id, share)| (*id, (100.0 * share).round() as usize, 100)).collect(),
    );
    format!(
        "<!doctype html><html lang=en><head><meta charset=utf-8><meta name=viewport content=\"width=device-width,initial-scale=1\">\
         <title>Before the lab</title><style>{STYLE}</style></head><body>{body}</body></html>\n"
    )
}
