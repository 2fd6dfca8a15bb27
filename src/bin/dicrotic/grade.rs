//! `grade`: replays what students handed in and writes a table of what came of it.

use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::table;

use crate::failure::Failure;
use crate::handed_in::grade_all;
use crate::{output, set, terminal, text_file, told};

/// Grades `paths` by what was set into the table `out`; fails at the end if something could not be read, does not verify
/// or must not count.
pub fn run(paths: &[PathBuf], given: &[String], out: &Path) -> Result<(), Failure> {
    let given = set::read(given)?;
    let rows = grade_all(paths, &given, &[out])?;
    let handed = rows.len();
    let mut told = told::of(rows, given.plan.as_ref(), &str::to_string);
    told.notes.extend(told::one_name(&given.set));
    let mut text = format!("{}\n", table::HEAD);
    for (file, graded, beside) in &told.once {
        text.push_str(&table::line(file, graded, &table::beside(&told.all, beside)));
        text.push('\n');
    }
    text_file::write(out, &text)?;
    let (graded, complaints) = (told.once.len(), &told.complaints);
    let wrong = match complaints.len() {
        0 => String::new(),
        1 => " 1 could not be used or does not count (reason below).".into(),
        n => format!(" {n} could not be used or do not count (reasons below)."),
    };
    output::print(&format!(
        "{graded} of {handed} results graded, in {}.{wrong}\n{}",
        terminal::name(out),
        told.notes.iter().map(|note| format!("{}\n", note)).collect::<String>()
    ))?;
    if complaints.is_empty() { Ok(()) } else { Err(Failure::new(complaints.join("\ndicrotic: "))) }
}
