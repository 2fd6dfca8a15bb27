//! What students handed in, from files and folders: result files, and lists of codes, one a line. Replayed on all
//! cores; what cannot be read is named and does not hold up the rest.

use std::collections::HashMap;
use std::io::IsTerminal;
use std::panic::{self, AssertUnwindSafe};
use std::path::{Path, PathBuf};

use dicrotic::exchange::handin::set::{BenchMark, bench_mark};
use dicrotic::exchange::handin::{Graded, Handed, Set, result};
use dicrotic::session::compact::PREFIX;
use indicatif::{ProgressBar, ProgressStyle};
use rayon::prelude::*;

use crate::failure::Failure;
use crate::stamp::files_below;
use crate::{project, text_file};

/// From so many files on a bar shows how far it is.
const LONG_WORK: usize = 20;

/// One result with where it came from, and what came of it or why nothing did.
pub struct Row {
    /// The file; in a list of codes with its line.
    pub file: String,
    /// What came of it.
    pub graded: Result<Graded, String>,
}

/// One thing to be graded.
enum Work {
    File(PathBuf),
    Code { file: String, code: String },
    Wrong { file: String, why: String },
}

/// Grades everything in `paths` by what was `set`, in their order. Codes may belong to the project's scenarios besides.
pub fn grade_all(paths: &[PathBuf], set: &Set) -> Result<Vec<Row>, Failure> {
    let mut work = Vec::new();
    for path in paths {
        if path.is_dir() {
            let mut files = files_below(path)
                .map_err(|error| Failure::new(format!("reading {}: {error}", path.display())))?;
            files.sort();
            for file in files {
                add(&mut work, &file);
            }
        } else {
            add(&mut work, path);
        }
    }
    // Only codes need to be told their scenario.
    let codes = work.iter().any(|one| matches!(one, Work::Code { .. }));
    let known = if codes { known_scenarios() } else { Known::new() };
    let bar = if work.len() >= LONG_WORK && std::io::stderr().is_terminal() {
        ProgressBar::new(work.len() as u64)
    } else {
        ProgressBar::hidden()
    };
    if let Ok(style) = ProgressStyle::with_template("{bar:40} {pos} of {len}, {per_sec}, {eta} left") {
        bar.set_style(style);
    }
    // A replay that panics is a fault of ours; it is told as one file's and does not take the others along.
    let hook = panic::take_hook();
    panic::set_hook(Box::new(|_| {}));
    let rows = work
        .par_iter()
        .map(|one| {
            let row = grade(one, set, &known);
            bar.inc(1);
            row
        })
        .collect();
    panic::set_hook(hook);
    bar.finish_and_clear();
    Ok(rows)
}

fn add(work: &mut Vec<Work>, path: &Path) {
    let file = path.display().to_string();
    let name = path.file_name().unwrap_or_default().to_string_lossy().to_lowercase();
    if !name.ends_with(".txt") {
        work.push(if name.ends_with(".json") {
            Work::File(path.to_path_buf())
        } else {
            let why = format!("neither a result file (*{}) nor a list of codes (*.txt)", result::EXTENSION);
            Work::Wrong { file, why }
        });
        return;
    }
    match small_text(path) {
        Err(why) => work.push(Work::Wrong { file, why }),
        Ok(text) => {
            let before = work.len();
            for (k, line) in text.lines().enumerate() {
                // Whatever stands before the code is the instructor's note.
                if let Some(at) = line.find(PREFIX) {
                    let code = line[at..].split_whitespace().next().unwrap_or_default().to_string();
                    work.push(Work::Code { file: format!("{file}, line {}", k + 1), code });
                }
            }
            if work.len() == before {
                work.push(Work::Wrong { file, why: format!("no line with a code ({PREFIX}...)") });
            }
        }
    }
}

/// A file's text, if it is not larger than a result.
fn small_text(path: &Path) -> Result<String, String> {
    let size = std::fs::metadata(path).map_err(|e| e.to_string())?.len();
    if size > result::MOST_BYTES as u64 {
        return Err(format!("{size} bytes; a result has at most {}", result::MOST_BYTES));
    }
    let bytes = std::fs::read(path).map_err(|e| e.to_string())?;
    String::from_utf8(bytes).map_err(|e| format!("not UTF-8 text: {}", e.utf8_error()))
}

type Known = HashMap<BenchMark, String>;

fn known_scenarios() -> Known {
    let mut texts = Vec::new();
    // Away from the project's folder there are only the scenarios that are named.
    if let Ok(root) = project::root() {
        for path in files_below(&root.join("scenarios")).unwrap_or_default() {
            if path.extension().is_some_and(|e| e == "toml") {
                texts.extend(text_file::read(&path).ok());
            }
        }
    }
    texts.into_par_iter().map(|text| (bench_mark(&text), text)).collect()
}

fn grade(work: &Work, set: &Set, known: &Known) -> Row {
    let (file, handed) = match work {
        Work::Wrong { file, why } => return Row { file: file.clone(), graded: Err(why.clone()) },
        Work::File(path) => {
            let handed = small_text(path).and_then(|text| result::read(&text).map_err(|e| e.to_string()));
            (path.display().to_string(), handed)
        }
        Work::Code { file, code } => {
            let handed = Handed::of_code(code, set, |code| known.get(&code.scenario).cloned());
            (file.clone(), handed.map_err(|e| e.to_string()))
        }
    };
    let graded = handed.and_then(|handed| {
        panic::catch_unwind(AssertUnwindSafe(|| handed.grade_by(set).map_err(|e| e.to_string())))
            .unwrap_or_else(|_| Err("the replay came to a fault of this program".into()))
    });
    Row { file, graded }
}
