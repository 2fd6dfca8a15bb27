//! The grades as a table of text. Cells that hold anything but letters, digits and a few marks stand in quotes; and where
//! a cell, or a part of it that another separator would make one, begins like a formula, an apostrophe stands before it
//! (see `exchange/formula.rs`), so that a name typed by somebody runs nothing on the instructor's machine.

use super::grade::Graded;
use super::together::Beside;
use crate::assess::verdict::Step;
use crate::exchange::formula::disarmed;
use crate::scenario::moment::told;
use crate::unseen;
use serde_json::Value;

/// The table's head.
pub const HEAD: &str = "file,student,scenario,seed,try,verified,why_not,passed,checks,score,rubric_ready,first_wrong,misreading,faults_left,minutes,actions,hints,begun,ended,own_seed,program,set,against,beside,remarks,passed_before";

/// Number of fields of a result.
const FIELDS: usize = 24;

/// One result's fields with their names, in the table's order. A number is a number; what is not known is null. A seed is
/// text, because numbers of JavaScript do not hold all of them.
pub fn fields(graded: &Graded) -> [(&'static str, Value); FIELDS] {
    let yes = |on: bool| Value::from(if on { "yes" } else { "no" });
    let known = |text: String| if text.is_empty() { Value::Null } else { Value::from(text) };
    let why: Vec<String> = graded.doubts.iter().map(ToString::to_string).collect();
    let left: Vec<&str> = graded.faults.iter().filter(|f| !f.cleared).map(|f| f.id).collect();
    let outcome = &graded.outcome;
    let about = &graded.about;
    [
        ("student", known(about.student.clone())),
        ("scenario", known(graded.scenario.clone())),
        ("seed", Value::from(graded.seed.to_string())),
        ("try", if about.tries > 0 { Value::from(about.tries) } else { Value::Null }),
        ("verified", yes(graded.verified())),
        ("why_not", known(why.join("; "))),
        ("passed", yes(outcome.passed)),
        ("checks", Value::from(outcome.tries)),
        ("score", graded.score.map_or(Value::Null, Value::from)),
        ("rubric_ready", yes(graded.rubric_ready)),
        ("first_wrong", outcome.first_wrong.map_or(Value::Null, |step| Value::from(Step::name(step)))),
        ("misreading", outcome.explained().map_or(Value::Null, Value::from)),
        ("faults_left", known(left.join(" "))),
        ("minutes", Value::from(format!("{:.1}", graded.minutes).parse::<f64>().unwrap_or(0.0))),
        ("actions", Value::from(graded.actions)),
        ("hints", Value::from(graded.hints)),
        ("begun", known(moment(about.begun_s))),
        ("ended", known(moment(about.ended_s))),
        ("own_seed", graded.own_seed.map_or(Value::Null, yes)),
        ("program", known(graded.program.clone())),
        ("set", Value::from(graded.compared.name())),
        ("against", known(graded.against.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))),
        ("remarks", known(graded.remarks.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))),
        ("passed_before", graded.passed_before.map_or(Value::Null, yes)),
    ]
}

/// One line of the table, without its end. `beside` tells what the result has to do with others.
pub fn line(file: &str, graded: &Graded, beside: &str) -> String {
    let mut cells = vec![cell(file)];
    for (name, value) in fields(graded) {
        if name == "remarks" {
            cells.push(cell(beside));
        }
        cells.push(match value {
            Value::Null => String::new(),
            Value::String(text) => cell(&text),
            Value::Number(number) if name == "minutes" => format!("{:.1}", number.as_f64().unwrap_or(0.0)),
            other => other.to_string(),
        });
    }
    cells.join(",")
}

/// What the table says of a result and others in the list.
pub fn beside(results: &[Graded], beside: &Beside) -> String {
    let list = |others: &[usize]| {
        others.iter().map(|k| results[*k].about.student.as_str()).collect::<Vec<_>>().join(" ")
    };
    let told = [("the same actions as", &beside.copies), ("same cursors and marks as", &beside.alike)];
    let told = told.into_iter().filter(|(_, others)| !others.is_empty());
    let mut all: Vec<String> = told.map(|(what, others)| format!("{what} {}", list(others))).collect();
    if !beside.redated.is_empty() {
        let ends = beside.redated.iter().map(|k| moment(results[*k].about.ended_s)).collect::<Vec<_>>();
        all.push(format!("the same actions with two times: also ended {}", ends.join(" ")));
    }
    if !beside.begun.is_empty() {
        all.push("the same attempt started twice".into());
    }
    all.join("; ")
}

/// A text as a cell.
pub fn cell(text: &str) -> String {
    // Line ends would break naive readers; and no cell is shown otherwise than it is stored.
    let safe = disarmed(&unseen::without(text));
    let bare = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '.' | ':' | '_' | '-' | '/' | '(' | ')');
    if safe.chars().all(bare) { safe } else { format!("\"{}\"", safe.replace('"', "\"\"")) }
}

/// A moment as `2026-09-01T08:30:00Z`; nothing where it is not known.
pub fn moment(since_1970_s: u64) -> String {
    if since_1970_s == 0 { String::new() } else { told(since_1970_s) }
}
