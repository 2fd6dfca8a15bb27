//! What an instructor gives as set: scenario files, course files, folders of them, links, and files with a link in them.

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::Set;
use dicrotic::scenario::check::MOST_BYTES;
use dicrotic::scenario::plan::{self, Plan};
use dicrotic::session::compact::base64;
use flate2::read::DeflateDecoder;

use crate::failure::{Failure, While};
use crate::stamp::files_below;
use crate::{course, handed_in, terminal, text_file};

/// What stands in a link before what it carries: a scenario, or a course.
const MARKS: [&str; 2] = ["#a=", "#c="];

/// What was set, and the files that it was read from.
#[derive(Default)]
pub struct Given {
    /// What results are compared with.
    pub set: Set,
    /// The course whose parts were set, where one was given.
    pub plan: Option<Plan>,
    /// The files, which nothing may be written over.
    pub files: Vec<PathBuf>,
}

/// Reads all that was given.
pub fn read(given: &[String]) -> Result<Given, Failure> {
    let mut all = Given::default();
    for one in given {
        if carries(one) {
            add(&mut all, "the link", &unpacked(one).while_doing(|| "--set: the link".into())?)?;
            continue;
        }
        let path = Path::new(one);
        if !path.is_dir() {
            add_file(&mut all, path)?;
            continue;
        }
        let files = files_below(path).while_doing(|| format!("--set {one}"))?;
        let files: Vec<_> =
            files.into_iter().filter(|f| f.extension().is_some_and(|e| e == "toml")).collect();
        if files.is_empty() {
            return Err(Failure::new(format!(
                "--set {one}: there is no scenario file (*.toml) in this folder"
            )));
        }
        for file in &files {
            // What a folder holds nobody named: a pipe in it would be waited for.
            let kind = fs::metadata(file).while_doing(|| terminal::name(file))?.file_type();
            if let Some(why) = handed_in::not_read(kind) {
                return Err(Failure::new(format!("--set {one}: {}: {why}", terminal::name(file))));
            }
            add_file(&mut all, file)?;
        }
    }
    Ok(all)
}

fn add_file(all: &mut Given, path: &Path) -> Result<(), Failure> {
    let (name, text) = (terminal::name(path), text_file::read(path)?);
    all.files.push(path.to_path_buf());
    if path.extension().is_none_or(|e| e != "toml") && carries(&text) {
        return add(all, &name, &unpacked(&text).while_doing(|| name.clone())?);
    }
    let text = if plan::is_plan(&text) { course::whole(path, &text)?.0 } else { text };
    add(all, &name, &text)
}

fn add(all: &mut Given, name: &str, text: &str) -> Result<(), Failure> {
    let plan = all.set.add_any(name, text).while_doing(|| format!("--set {name}"))?;
    if plan.is_some() && all.plan.is_some() {
        return Err(Failure::new(format!("--set {name}: a second course; a class has one")));
    }
    all.plan = all.plan.take().or(plan);
    Ok(())
}

/// Whether there is a link in a text.
fn carries(text: &str) -> bool {
    MARKS.iter().any(|mark| text.contains(mark))
}

/// What the first link in a text carries.
fn unpacked(text: &str) -> Result<String, String> {
    let damaged = || "the link is damaged".to_string();
    let first = MARKS.iter().filter_map(|mark| text.find(mark)).min().ok_or_else(damaged)?;
    let most = if text[first..].starts_with(MARKS[1]) { plan::MOST_BYTES } else { MOST_BYTES };
    let packed = &text[first + MARKS[0].len()..];
    let end = packed.find(|c: char| !(c.is_ascii_alphanumeric() || c == '-' || c == '_'));
    let bytes = base64::read(&packed[..end.unwrap_or(packed.len())]).map_err(|_| damaged())?;
    let mut whole = String::new();
    // A link that swells beyond what it may carry is none of ours.
    let read = DeflateDecoder::new(&bytes[..]).take(most as u64 + 1).read_to_string(&mut whole);
    match read {
        Ok(n) if n > 0 && n <= most => Ok(whole),
        _ => Err(damaged()),
    }
}
