//! `class`: who of a class is ready, which faults stayed and which misreadings came, as a table on the terminal or as
//! one HTML file without scripts.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::class::{Need, Student, Summary, sum_up};

use crate::failure::Failure;
use crate::handed_in::grade_all;
use crate::{output, set, terminal, text_file, told};

/// How a class is summed up.
pub struct Order<'a> {
    /// What was set: files, folders, links.
    pub set: &'a [String],
    /// What makes a student ready.
    pub need: Need,
    /// Whether students are called by the code that they typed.
    pub names: bool,
    /// The HTML file; the terminal without one.
    pub out: Option<&'a Path>,
}

/// Sums up what is in `paths`.
pub fn run(paths: &[PathBuf], order: &Order) -> Result<(), Failure> {
    let told = told::of(grade_all(paths, &set::read(order.set)?, order.out)?);
    let (notes, complaints) = (&told.notes, &told.complaints);
    let summary = sum_up(&told.all, order.need);
    match order.out {
        Some(out) => text_file::write(out, &html(&summary, order.names, notes))?,
        None => output::print(&plain(&summary, order.names, notes))?,
    }
    if complaints.is_empty() { Ok(()) } else { Err(Failure::new(complaints.join("\ndicrotic: "))) }
}

fn name(student: &Student, k: usize, names: bool) -> String {
    let clean = terminal::one_line(&student.student);
    if names && !clean.trim().is_empty() { clean } else { format!("student {}", k + 1) }
}

/// A code of the core as words.
fn words(code: &str) -> String {
    code.replace('_', " ")
}

fn remarks(student: &Student) -> Vec<&'static str> {
    let against = |code: &str| student.against.contains(&code);
    let looks = |code: &str| student.remarks.contains(&code);
    [
        (!student.doubts.is_empty(), "a result does not verify"),
        (against("other_bench"), "another bench than the one set"),
        (against("other_seed"), "a seed is not theirs"),
        (against("too_many_tries"), "more tries than there are"),
        (student.copied, "same log as somebody else"),
        (student.alike, "cursors and marks as somebody else's"),
        (looks("all_at_once"), "window, answers and check at one moment"),
        (looks("clock"), "less time from begin to end than at the bench"),
        (looks("no_pause"), "deeds without time between them"),
    ]
    .into_iter()
    .filter_map(|(on, text)| on.then_some(text))
    .collect()
}

fn line(student: &Student) -> [String; 7] {
    [
        if student.ready { "ready" } else { "not ready" }.into(),
        format!("{} of {}", student.passes, student.results.len()),
        student.score.map_or_else(|| "-".into(), |s| s.to_string()),
        student.first_wrong.map_or_else(|| "-".into(), |step| words(step.name())),
        if student.faults_left.is_empty() {
            "-".into()
        } else {
            student.faults_left.iter().map(|f| words(f)).collect::<Vec<_>>().join(", ")
        },
        format!("{:.0}", student.minutes),
        remarks(student).join("; "),
    ]
}

const HEADS: [&str; 8] =
    ["student", "", "passed", "of 20", "first open step", "faults left", "min", "remarks"];

fn plain(summary: &Summary, names: bool, notes: &[String]) -> String {
    let mut table: Vec<Vec<String>> = vec![HEADS.map(String::from).to_vec()];
    for (k, student) in summary.students.iter().enumerate() {
        table.push([vec![name(student, k, names)], line(student).to_vec()].concat());
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
        "faults left at the end",
        summary.faults.iter().map(|f| format!("{:>3} of {:<3} {}", f.left, f.met, words(f.id))).collect(),
    );
    part(
        "misreadings",
        summary.misreadings.iter().map(|(id, n)| format!("{n:>3} {}", words(id.name()))).collect(),
    );
    part(
        "steps right",
        summary
            .steps
            .iter()
            .map(|s| format!("{:>3} of {:<3} {}", s.right, s.judged, words(s.step.name())))
            .collect(),
    );
    part(
        "skills shown",
        summary.skills.iter().map(|(id, share)| format!("{:>3.0} % {}", 100.0 * share, words(id))).collect(),
    );
    part("to be known", notes.to_vec());
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

fn html(summary: &Summary, names: bool, notes: &[String]) -> String {
    let ready = summary.students.iter().filter(|s| s.ready).count();
    let mut body = String::new();
    let _ = write!(
        body,
        "<h1>Before the lab</h1><p>{ready} of {} students are ready; {} results, {} of them not verified.</p>",
        summary.students.len(),
        summary.results,
        summary.doubtful
    );
    if let Some([q1, q2, q3]) = summary.minutes {
        let _ = write!(
            body,
            "<p class=quiet>Time at the bench: half of them between {q1:.0} and {q3:.0} minutes, the middle one {q2:.0}.</p>"
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
    for (k, student) in summary.students.iter().enumerate() {
        let [state, passed, score, step, faults, minutes, remarks] = line(student).map(|cell| escaped(&cell));
        let class = if student.ready { "quiet" } else { "not" };
        let _ = write!(
            body,
            "<tr><th scope=row>{}</th><td class={class}>{state}</td><td class=n>{passed}</td><td class=n>{score}</td><td>{step}</td>\
             <td>{faults}</td><td class=n>{minutes}</td><td>{remarks}</td></tr>",
            escaped(&name(student, k, names))
        );
    }
    body.push_str("</tbody></table></div>");
    let mut part = |head: &str, lines: Vec<(&str, usize, usize)>| {
        if lines.is_empty() {
            return;
        }
        let _ = write!(body, "<h2>{head}</h2><div class=wide><table><tbody>");
        for (what, n, of) in lines {
            let _ = write!(
                body,
                "<tr><th scope=row>{}</th><td class=n>{n} of {of}</td><td><meter min=0 max={of} value={n}></meter></td></tr>",
                escaped(&words(what))
            );
        }
        body.push_str("</tbody></table></div>");
    };
    part("Faults left at the end", summary.faults.iter().map(|f| (f.id, f.left, f.met)).collect());
    part("Misreadings", summary.misreadings.iter().map(|(id, n)| (id.name(), *n, summary.results)).collect());
    part("Steps that were right", summary.steps.iter().map(|s| (s.step.name(), s.right, s.judged)).collect());
    part(
        "Skills shown, per cent",
        summary.skills.iter().map(|(id, share)| (*id, (100.0 * share).round() as usize, 100)).collect(),
    );
    format!(
        "<!doctype html><html lang=en><head><meta charset=utf-8><meta name=viewport content=\"width=device-width,initial-scale=1\">\
         <title>Before the lab</title><style>{STYLE}</style></head><body>{body}</body></html>\n"
    )
}
