//! The grades as a table of text. A cell that a spreadsheet would take for a formula gets an apostrophe before it, so
//! that a name typed by somebody runs nothing on the instructor's machine (after OWASP, "CSV Injection").

use super::grade::Graded;
use super::together::Beside;
use crate::assess::misreading::Misreading;
use crate::assess::verdict::Step;

/// The table's head.
pub const HEAD: &str = "file,student,scenario,seed,try,verified,why_not,passed,checks,score,rubric_ready,first_wrong,misreading,faults_left,minutes,actions,hints,begun,ended,own_seed,program,set,against,beside,remarks,passed_before";

/// One line of the table, without its end. `beside` tells what the result has to do with others.
pub fn line(file: &str, graded: &Graded, beside: &str) -> String {
    let yes = |on: bool| if on { "yes" } else { "no" }.to_string();
    let why: Vec<String> = graded.doubts.iter().map(ToString::to_string).collect();
    let left: Vec<&str> = graded.faults.iter().filter(|f| !f.cleared).map(|f| f.id).collect();
    let outcome = &graded.outcome;
    let about = &graded.about;
    [
        file.to_string(),
        about.student.clone(),
        graded.scenario.clone(),
        graded.seed.to_string(),
        if about.tries > 0 { about.tries.to_string() } else { String::new() },
        yes(graded.verified()),
        why.join("; "),
        yes(outcome.passed),
        outcome.tries.to_string(),
        graded.score.map_or_else(String::new, |s| s.to_string()),
        yes(graded.rubric_ready),
        outcome.first_wrong.map_or("", Step::name).into(),
        outcome.misreading.map_or("", Misreading::name).into(),
        left.join(" "),
        format!("{:.1}", graded.minutes),
        graded.actions.to_string(),
        graded.hints.to_string(),
        moment(about.begun_s),
        moment(about.ended_s),
        graded.own_seed.map_or_else(String::new, yes),
        graded.program.clone(),
        graded.compared.name().into(),
        graded.against.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "),
        beside.into(),
        graded.remarks.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "),
        graded.passed_before.map_or_else(String::new, yes),
    ]
    .iter()
    .map(|text| cell(text))
    .collect::<Vec<_>>()
    .join(",")
}

/// What the table says of a result and others in the list.
pub fn beside(results: &[Graded], beside: &Beside) -> String {
    let list = |others: &[usize]| {
        others.iter().map(|k| results[*k].about.student.as_str()).collect::<Vec<_>>().join(" ")
    };
    let told = [("the same log as", &beside.copies), ("cursors and marks as", &beside.alike)];
    let told = told.into_iter().filter(|(_, others)| !others.is_empty());
    told.map(|(what, others)| format!("{what} {}", list(others))).collect::<Vec<_>>().join("; ")
}

/// A text as a cell.
pub fn cell(text: &str) -> String {
    // Control characters other than line ends have no place in a table; line ends would break naive readers.
    let plain: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let formula =
        plain.trim_start().starts_with(['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}']);
    let safe = if formula { format!("'{plain}") } else { plain };
    if safe.contains([',', ';', '"', '\'']) { format!("\"{}\"", safe.replace('"', "\"\"")) } else { safe }
}

/// A moment as `2026-09-01T08:30:00Z`; nothing where it is not known (civil date after the proleptic Gregorian
/// calendar, days counted in eras of 400 years).
pub fn moment(since_1970_s: u64) -> String {
    if since_1970_s == 0 || since_1970_s > 253_402_300_799 {
        return String::new();
    }
    let (days, s) = (since_1970_s / 86_400, since_1970_s % 86_400);
    // Years that begin in March end with the leap day.
    let shifted = days + 719_468;
    let (era, day_of_era) = (shifted / 146_097, shifted % 146_097);
    let year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let from_march = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 { from_march + 3 } else { from_march - 9 };
    let year = era * 400 + year_of_era + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}T{:02}:{:02}:{:02}Z", s / 3600, s / 60 % 60, s % 60)
}
