//! `study`: plans a study of a class, and makes a table of what came in.

use std::fs;
use std::path::{Path, PathBuf};

use dicrotic::exchange::class::{items, roster};
use dicrotic::exchange::handin::Set;
use dicrotic::exchange::handin::table::cell;
use dicrotic::exchange::study::came::sort;
use dicrotic::exchange::study::plan::{EXTENSION, OCCASIONS, Study, file_name};
use dicrotic::exchange::study::{plan, rows};
use dicrotic::scenario::plan::Plan;

use crate::failure::{Failure, While};
use crate::handed_in::grade_all;
use crate::page_words::{MISREADING, inside};
use crate::{link, output, safe_output, same_file, set, study_words, terminal, text_file};

/// What a study is planned from.
pub struct Planned<'a> {
    /// Its name.
    pub id: &'a str,
    /// Its heading.
    pub title: &'a str,
    /// The list of students.
    pub roster: &'a Path,
    /// The word.
    pub word: &'a str,
    /// Scenario files of the tests.
    pub tests: &'a [PathBuf],
    /// Scenario files for rehearsal.
    pub rehearsal: &'a [PathBuf],
    /// The password of its assignments.
    pub password: &'a str,
    /// A study that is gone on with.
    pub open: Option<&'a Path>,
    /// The folder to write to.
    pub out: &'a Path,
    /// The page's address, for links.
    pub at: Option<&'a str>,
}

/// Plans a study, or places more students in one.
pub fn plan(wanted: &Planned) -> Result<(), Failure> {
    wanted.at.map_or(Ok(()), link::checked)?;
    let mut study = match wanted.open {
        Some(path) => read_study(path)?,
        None => {
            let [tests, rehearsal] = [texts(wanted.tests)?, texts(wanted.rehearsal)?];
            let Planned { id, title, word, password, .. } = *wanted;
            let new = plan::Wanted { id, title, word, password, tests: &tests, rehearsal: &rehearsal };
            Study::plan(&new).while_doing(|| "study".into())?
        }
    };
    let path = wanted.out.join(format!("{}{EXTENSION}", study.id));
    if wanted.open.is_none() && path.exists() {
        let why = "this study is there already: use --open to place more students, or another folder";
        return Err(Failure::new(format!("{}: {why}", terminal::name(&path))));
    }
    let codes = codes(wanted.roster)?;
    let before = study.placed.len();
    study.deal(wanted.word, &codes).while_doing(|| "--word".into())?;
    let mut files: Vec<(PathBuf, Vec<u8>)> = Vec::new();
    let mut links = String::from("course,link\n");
    for (name, course) in study.courses() {
        // As the page reads it: the same course as a file.
        let text = Plan::read(course).while_doing(|| name.clone())?.written();
        files.push((wanted.out.join(format!("{name}.toml")), text.into_bytes()));
        if let Some(address) = wanted.at {
            links += &format!("{name},{}\n", link::of(address, "#c=", course)?);
        }
    }
    if wanted.at.is_some() {
        files.push((wanted.out.join("links.csv"), links.into_bytes()));
    }
    files.push((wanted.out.join("arms.csv"), arms(&study).into_bytes()));
    files.push((path.clone(), study.written().into_bytes()));
    let outputs: Vec<&Path> = files
        .iter()
        .map(|(file, _)| file.as_path())
        .filter(|file| wanted.open.is_none_or(|open| open != *file))
        .collect();
    let read = wanted.tests.iter().chain(wanted.rehearsal).map(PathBuf::as_path);
    same_file::refuse_overlap(read.chain([wanted.roster]), &outputs)?;
    fs::create_dir_all(wanted.out).while_doing(|| format!("making {}", terminal::name(wanted.out)))?;
    safe_output::write(&files)?;
    let new = study.placed.len() - before;
    output::print(&study_words::planned(&study, new, &terminal::name(wanted.out)))
}

/// The list of who is where, for the instructor.
fn arms(study: &Study) -> String {
    let mut text = String::from("student ID,arm,first test,second test,later test\n");
    for one in &study.placed {
        let tests = OCCASIONS.iter().enumerate().map(|(nth, occasion)| file_name(*occasion, one.form(nth)));
        text += &format!("{},{},{}\n", cell(&one.code), one.arm.name(), tests.collect::<Vec<_>>().join(","));
    }
    text
}

fn texts(files: &[PathBuf]) -> Result<Vec<(String, String)>, Failure> {
    files.iter().map(|file| Ok((terminal::name(file), text_file::read(file, text_file::SCENARIO)?))).collect()
}

fn read_study(path: &Path) -> Result<Study, Failure> {
    Study::read(&text_file::read(path, text_file::STUDY)?).while_doing(|| terminal::name(path))
}

fn codes(path: &Path) -> Result<Vec<String>, Failure> {
    let list = roster::read(&text_file::read(path, text_file::LIST)?).map_err(|errors| {
        let told = |e: &roster::RosterError| {
            format!("{}: {}", terminal::name(path), terminal::one_line(&e.to_string()))
        };
        Failure::new(errors.iter().map(told).collect::<Vec<_>>().join("\ndicrotic: "))
    })?;
    Ok(list.into_iter().map(|entry| entry.code).collect())
}

/// What a table is made from.
pub struct Wanted<'a> {
    /// Results.
    pub results: &'a [PathBuf],
    /// The study.
    pub plan: &'a Path,
    /// Its word.
    pub word: &'a str,
    /// The anonymous table.
    pub out: &'a Path,
    /// The table of items.
    pub items: Option<&'a Path>,
    /// Who has taken a yes back.
    pub withdrawn: &'a [String],
    /// The fewest people of whom anything is told.
    pub least: usize,
}

/// Makes the tables of what came in, and prints what they come to.
pub fn table(wanted: &Wanted) -> Result<(), Failure> {
    let study = read_study(wanted.plan)?;
    study.check_word(wanted.word).while_doing(|| "--word".into())?;
    let mut given = set::Given { files: vec![wanted.plan.to_path_buf()], ..set::Given::default() };
    given.set = tests(&study)?;
    let outputs: Vec<&Path> = [Some(wanted.out), wanted.items].into_iter().flatten().collect();
    let mut complaints = Vec::new();
    let mut results = Vec::new();
    for row in grade_all(wanted.results, &given, &outputs)? {
        match row.graded {
            Ok(graded) => results.push((row.file, graded)),
            Err(why) => complaints.push(format!("{}: skipped: {why}", row.file)),
        }
    }
    let mut came = sort(&study, &results).while_doing(|| terminal::name(wanted.plan))?;
    for code in wanted.withdrawn {
        if !came.withdraw(code) {
            let why = format!("--withdrawn {}: no student of this study", terminal::one_line(code));
            return Err(Failure::new(why));
        }
    }
    complaints.extend(came.wrong.iter().map(|(file, why)| format!("{file}: left out: {why}")));
    let (rows, few) = rows::of(&came.people, wanted.word, wanted.least);
    let mut files = vec![(wanted.out.to_path_buf(), rows::written(&rows).into_bytes())];
    if let Some(path) = wanted.items {
        let all = items::of(&came.seen(), wanted.least);
        let text = items::table(&all, wanted.least, &|name| inside(MISREADING, name));
        files.push((path.to_path_buf(), text.into_bytes()));
    }
    safe_output::write(&files)?;
    let mut told = study_words::flow(&study, &came, few, wanted.least);
    told += &study_words::effects(&rows::effects(&rows, wanted.least), wanted.least);
    output::print(&told)?;
    if complaints.is_empty() {
        return Ok(());
    }
    let lines: Vec<String> = complaints.iter().map(|why| terminal::one_line(why)).collect();
    Err(Failure::new(lines.join("\ndicrotic: ")))
}

/// What was set by a study.
fn tests(study: &Study) -> Result<Set, Failure> {
    let mut set = Set::default();
    for (name, course) in study.courses() {
        set.add_any(&name, course).while_doing(|| name.clone())?;
    }
    Ok(set)
}

/// Prints what anonymous tables come to.
pub fn effect(tables: &[PathBuf], least: usize, json: bool) -> Result<(), Failure> {
    let mut all = Vec::new();
    for path in tables {
        let text = text_file::read(path, text_file::ROWS)?;
        all.extend(rows::read(&text).while_doing(|| terminal::name(path))?);
    }
    let effects = rows::effects(&all, least);
    let told = if json { study_words::json(&effects) } else { study_words::effects(&effects, least) };
    output::print(&told)
}
