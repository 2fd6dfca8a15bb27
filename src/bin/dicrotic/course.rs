//! `course`: several assignments as one link or one file.

use std::fs;
use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::table::moment;
use dicrotic::scenario::plan::Plan;
use dicrotic::scenario::{Scenario, check};

use crate::failure::{Failure, While};
use crate::{handed_in, link, output, same_file, terminal, text_file};

/// What is to be done with a course.
pub struct Order<'a> {
    /// The page's address, for which the link is printed.
    pub at: Option<&'a str>,
    /// The file to write, with all parts in it as they are handed out.
    pub out: Option<&'a Path>,
}

/// Checks the course of a file; prints its link, writes it as one file, or tells what is in it.
pub fn run(file: &Path, order: &Order) -> Result<(), Failure> {
    order.at.map_or(Ok(()), link::checked)?;
    let text = text_file::read(file, text_file::COURSE)?;
    if let Some(out) = order.out {
        let parts = files(file, &text)?;
        same_file::refuse_overlap(parts.iter().map(PathBuf::as_path).chain([file]), &[out])?;
    }
    let plan = whole(file, &text)?.1;
    if let Some(out) = order.out {
        // As the page writes it: without scripts and without the instructor's password in plain letters.
        let handed = Plan::read(&plan.handed_out()).while_doing(|| terminal::name(file))?;
        text_file::write(out, &handed.written())?;
    }
    if let Some(address) = order.at {
        return output::print(&format!("{}\n", link::of(address, "#c=", &plan.handed_out())?));
    }
    if order.out.is_none() {
        output::print(&told(file, &plan))?;
    }
    Ok(())
}

/// What is in a course, a line a part.
fn told(file: &Path, plan: &Plan) -> String {
    let mut text = format!("{}: valid, {} parts\n", terminal::name(file), plan.part.len());
    for (k, part) in plan.part.iter().enumerate() {
        let title = Scenario::read(&part.scenario).map_or_else(|_| String::new(), |s| s.title);
        let when = [("opens", part.opens_s()), ("due", part.due_s())]
            .into_iter()
            .filter_map(|(what, s)| Some(format!(", {what} {}", moment(s?))));
        text += &format!("{:>3}. {}{}\n", k + 1, terminal::one_line(&title), when.collect::<String>());
    }
    text
}

/// The files that a course's parts are in.
fn files(file: &Path, text: &str) -> Result<Vec<PathBuf>, Failure> {
    let plan = Plan::outline(text).while_doing(|| terminal::name(file))?;
    let folder = file.parent().unwrap_or(Path::new("."));
    Ok(plan.part.iter().filter(|part| !part.file.is_empty()).map(|part| folder.join(&part.file)).collect())
}

/// A course's text with the texts of its parts in the place of their paths, and what it says. An error names the course's file, the
/// part, and the part's own file.
pub fn whole(file: &Path, text: &str) -> Result<(String, Plan), Failure> {
    let mut plan = Plan::outline(text).while_doing(|| terminal::name(file))?;
    let folder = file.parent().unwrap_or(Path::new("."));
    let files: Vec<String> = plan.part.iter().map(|part| part.file.clone()).collect();
    for (k, part) in plan.part.iter_mut().enumerate().filter(|(_, part)| !part.file.is_empty()) {
        if !part.scenario.is_empty() {
            let why = format!("part[{k}]: file and scenario; expected one of the two");
            return Err(Failure::new(format!("{}: {why}", terminal::name(file))));
        }
        let path = std::mem::take(&mut part.file);
        part.scenario = text_below(folder, Path::new(&path))
            .while_doing(|| format!("{}: part[{k}].file {}", terminal::name(file), quoted(&path)))?;
    }
    let whole = plan.written();
    let plan = Plan::read(&whole).map_err(|error| {
        let is_of = |k: &usize| error.field.starts_with(&format!("part[{k}]"));
        let from = (0..files.len()).find(is_of).filter(|k| !files[*k].is_empty());
        let from = from.map_or_else(String::new, |k| format!("part[{k}], file {}: ", quoted(&files[k])));
        Failure::new(format!("{}: {from}{error}", terminal::name(file)))
    })?;
    Ok((whole, plan))
}

/// A path of a course's file as it may stand in an error.
fn quoted(path: &str) -> String {
    format!("\"{}\"", terminal::one_line(path))
}

/// The text of a part's file. A course comes from others: it leads to no file outside its own folder, and to none that is no plain
/// file, whose reading might not end.
fn text_below(folder: &Path, path: &Path) -> Result<String, String> {
    let root = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let root = fs::canonicalize(root).map_err(|e| e.to_string())?;
    let to = fs::canonicalize(root.join(path)).map_err(|e| e.to_string())?;
    if path.is_absolute() || !to.starts_with(&root) {
        return Err("leads out of the folder of the course file: not read".into());
    }
    handed_in::plain_text(&to, check::MOST_BYTES as u64, "a scenario")
}
