//! What students handed in, from files and folders: result files, and lists of codes. Replayed on all cores; what cannot
//! be read is named and does not hold up the rest.
//!
//! | module | what lives there |
//! |---|---|
//! | `folder` | the files below a folder, with what is not read and why |
//! | `codes` | the codes in a text as people pass them on |

pub mod codes;
mod folder;

pub use folder::items_in_sight;

use std::collections::HashMap;
use std::fs::{self, File};
use std::io::{IsTerminal, Read};
use std::panic::{self, AssertUnwindSafe};
use std::path::{Path, PathBuf};

use dicrotic::exchange::class::Source;
use dicrotic::exchange::class::within::Within;
use dicrotic::exchange::handin::bundle::Bundle;
use dicrotic::exchange::handin::set::{BenchMark, bench_mark};
use dicrotic::exchange::handin::{Graded, Handed, HandinError, Set, bundle, result};
use dicrotic::session::compact::{Code, PREFIX};
use indicatif::{ProgressBar, ProgressStyle};
use rayon::prelude::*;

use crate::failure::Failure;
use crate::same_file::{Identity, identity};
use crate::set::Given;
use crate::stamp::files_below;
use crate::{project, same_file, terminal, text_file};

/// From so many files on a bar shows how far it is.
const LONG_WORK: usize = 20;

/// One result with where it came from, and what came of it or why nothing did.
pub struct Row {
    /// The file; in a list of codes with its line.
    pub file: String,
    /// What came of it.
    pub graded: Result<Graded, String>,
    /// As it came, as far as it could be read.
    pub source: Source,
    /// Why nothing came of it, where that is known to the core.
    pub why: Option<HandinError>,
}

/// One thing to be graded.
enum Work {
    File(PathBuf),
    Code { file: String, code: String },
    Wrong { file: String, why: String },
}

/// Grades everything in `paths` by what was `set`, in their order. Codes may belong to the project's scenarios besides.
/// `outputs` are what will be written: refused where one of them is one of the files that are read, also out of a folder.
pub fn grade_all(paths: &[PathBuf], set: &Given, outputs: &[&Path]) -> Result<Vec<Row>, Failure> {
    same_file::refuse_overlap(paths.iter().chain(&set.files).map(PathBuf::as_path), outputs)?;
    let own: Vec<Identity> = outputs.iter().map(|path| identity(path)).collect();
    let mut work = Vec::new();
    for path in paths {
        if path.is_dir() {
            for item in folder::items(path) {
                match item {
                    Ok(file) => {
                        if read_from_folder(&file, &own, outputs)? {
                            add(&mut work, &file);
                        }
                    }
                    Err((path, why)) => work.push(Work::Wrong { file: terminal::name(&path), why }),
                }
            }
        } else {
            add(&mut work, path);
        }
    }
    // Only codes need to be told their scenario.
    let codes = work.iter().any(|one| matches!(one, Work::Code { .. }));
    let known = if codes { Known::new() } else { Known::default() };
    let bar = if work.len() >= LONG_WORK && std::io::stderr().is_terminal() {
        ProgressBar::new(work.len() as u64)
    } else {
        ProgressBar::hidden()
    };
    if let Ok(style) = ProgressStyle::with_template("{bar:40} {pos} of {len}, {per_sec}, {eta} left") {
        bar.set_style(style);
    }
    let rows = quietly(|| {
        work.par_iter()
            .flat_map(|one| {
                let rows = grade(one, &set.set, &known);
                bar.inc(1);
                rows
            })
            .collect()
    });
    bar.finish_and_clear();
    Ok(rows)
}

/// Does something in which a panic is told in another way than by its own words.
pub fn quietly<T>(work: impl FnOnce() -> T) -> T {
    let hook = panic::take_hook();
    panic::set_hook(Box::new(|_| {}));
    let done = work();
    panic::set_hook(hook);
    done
}

/// Whether a name is that of something that is read: a result file or a list of codes.
fn is_handed_in(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default().to_string_lossy().to_lowercase();
    name.ends_with(".txt") || name.ends_with(".json")
}

/// Whether a file of a folder is to be read. What is about to be written over is left out, if it is an earlier table, and
/// refused, if it is a result.
fn read_from_folder(file: &Path, own: &[Identity], outputs: &[&Path]) -> Result<bool, Failure> {
    if !own.contains(&identity(file)) {
        return Ok(true);
    }
    if is_handed_in(file) {
        same_file::refuse_overlap([file], outputs)?;
    }
    Ok(false)
}

fn add(work: &mut Vec<Work>, path: &Path) {
    let file = terminal::name(path);
    let name = path.file_name().unwrap_or_default().to_string_lossy().to_lowercase();
    if !is_handed_in(path) {
        let why =
            format!("neither a result file (*{}) nor a list of result codes (*.txt)", result::EXTENSION);
        return work.push(Work::Wrong { file, why });
    }
    if name.ends_with(".json") {
        return work.push(Work::File(path.to_path_buf()));
    }
    match small_text(path).and_then(|text| codes::find(&text)) {
        Err(why) => work.push(Work::Wrong { file, why }),
        Ok(found) if found.is_empty() => {
            work.push(Work::Wrong { file, why: format!("no line with a result code ({PREFIX}...)") });
        }
        Ok(found) => work.extend(found.into_iter().map(|one| {
            let file = format!("{file}, line {}", one.line);
            match one.code {
                Ok(code) => Work::Code { file, code },
                Err(why) => Work::Wrong { file, why },
            }
        })),
    }
}

/// A file's text, if it is a file and not larger than a result.
fn small_text(path: &Path) -> Result<String, String> {
    let named = path.file_name().is_some_and(|n| n.to_string_lossy().ends_with(bundle::EXTENSION));
    plain_text(path, if named { bundle::MOST_BYTES } else { result::MOST_BYTES } as u64, "a result")
}

/// The text of a file, if it is a plain file with at most so many bytes, which is what `kind` has.
pub fn plain_text(path: &Path, most: u64, kind: &str) -> Result<String, String> {
    text_file::text_of(plain_bytes(path, most, kind)?)
}

/// The same as bytes.
pub fn plain_bytes(path: &Path, most: u64, kind: &str) -> Result<Vec<u8>, String> {
    // Asked before it is opened: opening a pipe waits for somebody at its other end.
    let facts = fs::metadata(path).map_err(|e| e.to_string())?;
    if let Some(why) = folder::not_read(facts.file_type()) {
        return Err(why.into());
    }
    if facts.len() > most {
        return Err(format!("{} bytes; {kind} has at most {most}", facts.len()));
    }
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(|e| e.to_string())?;
    file.take(most + 1).read_to_end(&mut bytes).map_err(|e| e.to_string())?;
    Ok(bytes)
}

/// The scenarios that codes may belong to.
#[derive(Default)]
pub struct Known(HashMap<BenchMark, String>);

impl Known {
    /// The project's own.
    pub fn new() -> Self {
        let mut texts = Vec::new();
        // Away from the project's folder there are only the scenarios that were set.
        if let Ok(root) = project::root() {
            for path in files_below(&root.join("scenarios")).unwrap_or_default() {
                if path.extension().is_some_and(|e| e == "toml") {
                    texts.extend(text_file::read(&path, text_file::SCENARIO).ok());
                }
            }
        }
        Self(texts.into_par_iter().map(|text| (bench_mark(&text), text)).collect())
    }

    /// The text of the scenario that a code is of.
    pub fn of(&self, code: &Code) -> Option<String> {
        self.0.get(&code.scenario).cloned()
    }
}

/// One thing to be graded; of a course's result each part.
fn grade(work: &Work, set: &Set, known: &Known) -> Vec<Row> {
    match work {
        Work::Wrong { file, why } => vec![unread(file.clone(), why.clone())],
        Work::File(path) => {
            let file = terminal::name(path);
            let of = |file: String, text| graded(Source { file, text, ..Source::default() }, set, known);
            match small_text(path) {
                Err(why) => vec![unread(file, why)],
                Ok(text) => match bundle::of(&text) {
                    None => vec![of(file, text)],
                    Some(Err(why)) => vec![unread(file, why.to_string())],
                    Some(Ok(Bundle { course, results })) => {
                        let within = Some(Within { file: file.clone(), course });
                        let part = |(k, text)| {
                            let file = format!("{file}, result {}", k + 1);
                            graded(
                                Source { file, text, within: within.clone(), ..Source::default() },
                                set,
                                known,
                            )
                        };
                        results.into_iter().enumerate().map(part).collect()
                    }
                },
            }
        }
        Work::Code { file, code } => {
            vec![graded(Source { file: file.clone(), code: code.clone(), ..Source::default() }, set, known)]
        }
    }
}

fn unread(file: String, why: String) -> Row {
    let source = Source { file: file.clone(), ..Source::default() };
    Row { file, graded: Err(why), source, why: None }
}

/// Grades something as it came: a result file's text, or a code, whose scenario may stand beside it.
pub fn graded(mut source: Source, set: &Set, known: &Known) -> Row {
    let handed = if source.code.is_empty() {
        result::read(&source.text)
    } else {
        let own = (!source.scenario.is_empty()).then(|| source.scenario.clone());
        Handed::of_code(&source.code, set, |code| {
            own.filter(|text| code.is_of(text)).or_else(|| known.of(code))
        })
    };
    let file = source.file.clone();
    match handed {
        Err(why) => Row { file, graded: Err(why.to_string()), source, why: Some(why) },
        Ok(handed) => {
            if !source.code.is_empty() {
                source.scenario = handed.scenario.clone();
            }
            Row { file, graded: replayed(&handed, set), source, why: None }
        }
    }
}

/// Replays what was handed in. A replay that panics is a fault of ours; it is told as one result's and does not take the
/// others along.
pub fn replayed(handed: &Handed, set: &Set) -> Result<Graded, String> {
    panic::catch_unwind(AssertUnwindSafe(|| handed.grade_by(set).map_err(|e| e.to_string())))
        .unwrap_or_else(|_| Err("the replay failed because of a fault in this program".into()))
}
