//! `grade`: replays what students handed in and writes a table of what came of it.

use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::table;

use crate::failure::Failure;
use crate::handed_in::{complaints, grade_all};
use crate::{output, terminal, text_file};

/// Grades `paths` into the table `out`; fails at the end if something could not be read or does not verify.
pub fn run(paths: &[PathBuf], scenarios: &[PathBuf], out: &Path) -> Result<(), Failure> {
    let rows = grade_all(paths, scenarios, Some(out))?;
    let mut text = format!("{}\n", table::HEAD);
    let mut graded = 0;
    for row in &rows {
        if let Ok(one) = &row.graded {
            text.push_str(&table::line(&row.file, one));
            text.push('\n');
            graded += 1;
        }
    }
    text_file::write(out, &text)?;
    let complaints = complaints(&rows);
    output::print(&format!(
        "{graded} of {} results graded into {}, {} complaints\n",
        rows.len(),
        terminal::name(out),
        complaints.len()
    ))?;
    if complaints.is_empty() { Ok(()) } else { Err(Failure::new(complaints.join("\ndicrotic: "))) }
}
