//! What an instructor gives as set: scenario files, course files, folders of them, links, and files with a link in them.

use std::io::Read;
use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::Set;
use dicrotic::scenario::check::MOST_BYTES;
use dicrotic::scenario::plan::{self, Plan};
use dicrotic::session::compact::base64;
use flate2::read::DeflateDecoder;

use crate::failure::{Failure, While};
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
        add_folder(&mut all, path).while_doing(|| format!("--set {}", terminal::one_line(one)))?;
    }
    Ok(all)
}

fn add_file(all: &mut Given, path: &Path) -> Result<(), Failure> {
    let (name, text) = (terminal::name(path), text_file::read(path, text_file::COURSE)?);
    all.files.push(path.to_path_buf());
    if path.extension().is_none_or(|e| e != "toml") && carries(&text) {
        return add(all, &name, &unpacked(&text).while_doing(|| name.clone())?);
    }
    let text = if plan::is_plan(&text) { course::whole(path, &text)?.0 } else { text };
    add(all, &name, &text)
}

/// Takes what a folder holds. Nobody named each of its files: what is no scenario is told on the error output and left out, what is
/// hidden is left out in silence. An error where nothing is left.
fn add_folder(all: &mut Given, folder: &Path) -> Result<(), Failure> {
    let (mut taken, mut left_out) = (0, Vec::new());
    for item in handed_in::items_in_sight(folder) {
        let (path, read) = match item {
            Ok(path) if path.extension().is_none_or(|e| e != "toml") => continue,
            Ok(path) => {
                let read = scenario_in(&path).map_err(|why| why.to_string());
                (path, read)
            }
            Err((path, why)) => (path, Err(why)),
        };
        match read {
            Ok(text) => {
                add(all, &terminal::name(&path), &text)?;
                taken += 1;
            }
            Err(why) => left_out.push(format!("{}: left out: {why}", terminal::name(&path))),
        }
        all.files.push(path);
    }
    if taken == 0 {
        let none = "there is no scenario file (*.toml) in this folder".to_string();
        return Err(Failure::new([vec![none], left_out].concat().join("\ndicrotic: ")));
    }
    left_out.iter().for_each(|why| terminal::say(why));
    Ok(())
}

/// The text of a scenario's or a course's file; an error where it is neither.
fn scenario_in(path: &Path) -> Result<String, Failure> {
    let text = text_file::read(path, text_file::COURSE)?;
    let text = if plan::is_plan(&text) { course::whole(path, &text)?.0 } else { text };
    Set::default().add_any("", &text).map_err(|why| Failure::new(why.to_string()))?;
    Ok(text)
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
