//! `course`: several assignments as one link or one file.

use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::table::moment;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::plan::Plan;

use crate::failure::{Failure, While};
use crate::{link, output, same_file, terminal, text_file};

/// What is to be done with a course.
pub struct Order<'a> {
    /// The page's address, for which the link is printed.
    pub at: Option<&'a str>,
    /// The file to write, with all parts in it.
    pub out: Option<&'a Path>,
}

/// Checks the course of a file; prints its link, writes it as one file, or tells what is in it.
pub fn run(file: &Path, order: &Order) -> Result<(), Failure> {
    let text = text_file::read(file)?;
    if let Some(out) = order.out {
        let parts = files(file, &text)?;
        same_file::refuse_overlap(parts.iter().map(PathBuf::as_path).chain([file]), &[out])?;
    }
    let whole = whole(file, &text)?;
    let plan = Plan::read(&whole).while_doing(|| terminal::name(file))?;
    if let Some(out) = order.out {
        text_file::write(out, &whole)?;
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

/// A course's text with the texts of its parts in the place of their paths.
pub fn whole(file: &Path, text: &str) -> Result<String, Failure> {
    let mut plan = Plan::outline(text).while_doing(|| terminal::name(file))?;
    let folder = file.parent().unwrap_or(Path::new("."));
    for (k, part) in plan.part.iter_mut().enumerate().filter(|(_, part)| !part.file.is_empty()) {
        if !part.scenario.is_empty() {
            let why = format!("part[{k}]: file and scenario; expected one of the two");
            return Err(Failure::new(format!("{}: {why}", terminal::name(file))));
        }
        let path = folder.join(std::mem::take(&mut part.file));
        part.scenario =
            text_file::read(&path).while_doing(|| format!("{}: part[{k}].file", terminal::name(file)))?;
    }
    Ok(plan.written())
}
