//! The page as a set of files: the hand-written ones of `www/`, the scenarios with an index of them, and the built
//! core. Held in memory; written to a folder or served from there.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use serde::Serialize;
use sha2::{Digest, Sha256};

use crate::failure::{Failure, While};
use crate::stamp::files_below;
use crate::wasm::{self, Cores};
use crate::{safe_output, schema, terminal, texts};

/// File contents by path relative to the page, with `/` between the parts.
pub type Files = BTreeMap<String, Vec<u8>>;

/// One line of `scenarios/index.json`.
#[derive(Debug, Serialize, PartialEq)]
pub struct Entry {
    file: String,
    id: String,
    level: i64,
    title: String,
    aim: String,
    help: String,
    /// Whether it is on a student's path: where a fault is to be named it is drawn, not always the same, so that neither the
    /// heading nor a second try gives it away.
    path: bool,
    /// Keys of what else it says to a student: question, reasons and conditions of an experiment.
    #[serde(skip)]
    more: Vec<String>,
}

/// The worker that keeps the page on a device, and the list of the page's files beside these two.
pub const WORKER: &str = "sw.js";
/// See [`WORKER`].
pub const LIST: &str = "files.json";

/// The whole page, built from the sources in `root` where they have changed.
pub fn build(root: &Path) -> Result<Files, Failure> {
    let mut files = hand_written(root)?;
    add_cores(&mut files, wasm::up_to_date(root)?);
    add_version(&mut files);
    Ok(files)
}

/// Tells the worker that keeps the page on a device which files there are, by path and hash; called when all others
/// are there. A browser takes up a new version when the worker's own bytes differ.
pub fn add_version(files: &mut Files) {
    let Some(worker) = files.remove(WORKER) else { return };
    // What the page packs when an instructor asks it to: all that there is but the worker and this list.
    let names: Vec<&String> = files.keys().filter(|name| *name != LIST).collect();
    let list = serde_json::json!(names).to_string();
    files.insert(LIST.into(), list.into_bytes());
    let hash =
        |bytes: &[u8]| Sha256::digest(bytes).iter().take(8).map(|b| format!("{b:02x}")).collect::<String>();
    let hashes: BTreeMap<&String, String> = files.iter().map(|(name, bytes)| (name, hash(bytes))).collect();
    let version = hash(format!("{hashes:?}").as_bytes());
    let line = format!("const BUILD = {};\n", serde_json::json!({"version": version, "files": hashes}));
    files.insert(WORKER.into(), [line.as_bytes(), &worker].concat());
}

/// Puts the cores where the page looks for them, and beside them what else is made and not written by hand: the page of all fields.
pub fn add_cores(files: &mut Files, cores: Cores) {
    files.insert(schema::PAGE.into(), schema::page().into_bytes());
    files.extend(cores.into_iter().map(|(name, bytes)| (format!("wasm/{name}"), bytes)));
}

/// Whether a file is one of those, and no edit of the sources of the page changes it.
pub fn is_made(name: &str) -> bool {
    name.starts_with("wasm/") || name == schema::PAGE
}

/// All but the core: `www/` and the scenarios.
pub fn hand_written(root: &Path) -> Result<Files, Failure> {
    let mut files = Files::new();
    let www = root.join("www");
    for path in source_files(&www)? {
        let name = page_name(&www, &path)?;
        // The page gets its words as JSON, see `texts`; declarations of types are for whoever writes its scripts.
        if name.ends_with(".ftl") || name.ends_with(".d.ts") {
            continue;
        }
        let bytes = read(&path)?;
        let bytes = if name.ends_with(".js") { without_types(&bytes) } else { bytes };
        files.insert(name, bytes);
    }
    if !files.contains_key("index.html") {
        return Err(Failure::new(format!("{} has no index.html", terminal::name(&www))));
    }
    let scenarios = root.join("scenarios");
    let mut index = Vec::new();
    for path in source_files(&scenarios)? {
        if path.extension().is_none_or(|extension| extension != "toml") {
            continue;
        }
        let file = page_name(&scenarios, &path)?;
        let bytes = read(&path)?;
        index.push(entry(&file, &bytes)?);
        files.insert(format!("scenarios/{file}"), bytes);
    }
    if index.is_empty() {
        return Err(Failure::new(format!("{} has no scenario (*.toml)", terminal::name(&scenarios))));
    }
    index.sort_by(|a, b| a.file.cmp(&b.file));
    let ids: Vec<&str> = index.iter().map(|entry| entry.id.as_str()).collect();
    let more: Vec<String> = index.iter().flat_map(|entry| entry.more.iter().cloned()).collect();
    texts::add(&mut files, &www.join("texts"), &ids, &more)?;
    let json = serde_json::to_vec(&index).while_doing(|| "writing scenarios/index.json".into())?;
    files.insert("scenarios/index.json".into(), json);
    Ok(files)
}

/// A script without the lines that only tell the type checker something. They stay as empty lines, so that a line has
/// the number that it has in the source; a visit need not carry them.
fn without_types(script: &[u8]) -> Vec<u8> {
    let plain = |line: &[u8]| {
        let text = line.trim_ascii();
        let ends = text.windows(2).filter(|pair| pair == b"*/").count();
        // A whole comment on its line, or a line within one; what begins or ends a longer one is left.
        text == b"// @ts-check"
            || (text.starts_with(b"/** @") && text.ends_with(b"*/") && ends == 1)
            || (text.starts_with(b"* @") && ends == 0)
    };
    let lines: Vec<&[u8]> =
        script.split(|byte| *byte == b'\n').map(|line| if plain(line) { &[][..] } else { line }).collect();
    lines.join(&b'\n')
}

/// Name, size and time of each hand-written file: tells one state of them from another, cheaply.
pub type State = Vec<(PathBuf, u64, Option<SystemTime>)>;

/// The state of the hand-written files now.
pub fn state(root: &Path) -> State {
    ["www", "scenarios"]
        .iter()
        .flat_map(|folder| files_below(&root.join(folder)).unwrap_or_default())
        .map(|path| {
            let facts = fs::metadata(&path).ok();
            let size = facts.as_ref().map_or(0, |facts| facts.len());
            (path, size, facts.and_then(|facts| facts.modified().ok()))
        })
        .collect()
}

/// An empty file that stands in the folder of a page while it is being written. What is broken off half way is known by it:
/// it can be built into again.
pub const UNFINISHED: &str = ".dicrotic-unfinished";

/// The absolute path of `out` if the page may be written there: a new or empty folder, or one that holds an earlier
/// build. Asked before the build, which may take a minute.
pub fn checked_out(root: &Path, out: &Path) -> Result<PathBuf, Failure> {
    let out = std::path::absolute(out).while_doing(|| format!("finding {}", terminal::name(out)))?;
    // A link may lead among the sources as well.
    let there = out.ancestors().find_map(|folder| {
        Some(fs::canonicalize(folder).ok()?.join(out.strip_prefix(folder).unwrap_or(Path::new(""))))
    });
    let root = &fs::canonicalize(root).unwrap_or_else(|_| root.to_path_buf());
    for source in ["src", "www", "scenarios"] {
        let source_folder = root.join(source);
        if out.starts_with(&source_folder) || there.as_ref().is_some_and(|t| t.starts_with(&source_folder)) {
            return Err(Failure::new(format!(
                "{} is in the project's {source}/, which the page is built from; choose a folder elsewhere",
                terminal::name(&out)
            )));
        }
    }
    if out.exists() && !out.is_dir() {
        return Err(Failure::new(format!("{} is not a folder", terminal::name(&out))));
    }
    let taken = out.is_dir()
        && fs::read_dir(&out).while_doing(|| format!("reading {}", terminal::name(&out)))?.next().is_some();
    let ours = |name: &str| out.join(name).is_file();
    if taken && !ours("wasm/dicrotic_bg.wasm") && !ours(UNFINISHED) {
        return Err(Failure::new(format!(
            "{} is not empty and holds no earlier build of the page; choose another folder",
            terminal::name(&out)
        )));
    }
    Ok(out)
}

/// Writes the page to `out`, over an earlier build of it. Each file is whole at any moment; the page's first file and its
/// worker come last, so that what they name is there.
pub fn write(files: &Files, out: &Path) -> Result<(), Failure> {
    let make = |folder: &Path| {
        fs::create_dir_all(folder).while_doing(|| format!("making the folder {}", terminal::name(folder)))
    };
    make(out)?;
    let mark = out.join(UNFINISHED);
    fs::write(&mark, "").while_doing(|| format!("writing {}", terminal::name(&mark)))?;
    let last = |name: &str| name == "index.html" || name == "sw.js";
    let (end, begin): (Vec<_>, Vec<_>) = files.iter().partition(|(name, _)| last(name));
    for (name, bytes) in begin.into_iter().chain(end) {
        let path = out.join(name);
        if let Some(folder) = path.parent() {
            make(folder)?;
        }
        safe_output::write(&[(path, bytes.clone())])?;
    }
    fs::remove_file(&mark).while_doing(|| format!("removing {}", terminal::name(&mark)))
}

/// The files below a folder of sources, without dot files and what is in dot folders.
fn source_files(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    if !folder.is_dir() {
        return Err(Failure::new(format!("the project has no folder {}", terminal::name(folder))));
    }
    let files = files_below(folder).while_doing(|| format!("reading {}", terminal::name(folder)))?;
    let hidden = |path: &PathBuf| {
        let below = path.strip_prefix(folder).unwrap_or(path);
        below.components().any(|part| part.as_os_str().as_encoded_bytes().starts_with(b"."))
    };
    Ok(files.into_iter().filter(|path| !hidden(path)).collect())
}

/// The path below `folder` as the page's addresses have it. Names that would need escapes in an address are refused
/// here, so that the server can refuse every escape.
fn page_name(folder: &Path, path: &Path) -> Result<String, Failure> {
    let below = path.strip_prefix(folder).unwrap_or(path);
    let parts: Option<Vec<&str>> = below.components().map(|part| part.as_os_str().to_str()).collect();
    let name = parts.map(|parts| parts.join("/")).unwrap_or_default();
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_./".contains(&byte);
    if name.is_empty() || !name.bytes().all(plain) {
        return Err(Failure::new(format!(
            "{}: a file of the page may have only the letters A-Z and a-z, digits, '-', '_' and '.' in its name",
            terminal::name(path)
        )));
    }
    Ok(name)
}

fn read(path: &Path) -> Result<Vec<u8>, Failure> {
    fs::read(path).while_doing(|| format!("reading {}", terminal::name(path)))
}

/// The keys of what an experiment says, see `inWords` of the page.
fn experiment_words(id: &str, table: &toml::Table) -> Vec<String> {
    let Some(experiment) = table.get("experiment") else { return Vec::new() };
    let list = |name: &str| experiment.get(name).and_then(toml::Value::as_array).cloned().unwrap_or_default();
    let conditions = list("condition");
    let ids = conditions.iter().filter_map(|c| c.get("id")?.as_str());
    let reasons = 1..=list("reasons").len();
    std::iter::once("question".to_string())
        .chain(reasons.map(|n| format!("reason-{n}")))
        .chain(ids.map(|id| format!("label-{id}")))
        .map(|part| format!("scenario-{id}.{part}"))
        .collect()
}

/// The index shows what the start page lists; the core checks all of it when it is opened.
pub fn entry(file: &str, bytes: &[u8]) -> Result<Entry, Failure> {
    let wrong = |what: String| Failure::new(format!("scenarios/{file}: {what}"));
    let text = std::str::from_utf8(bytes).map_err(|error| wrong(format!("not UTF-8: {error}")))?;
    let table: toml::Table = text.parse().map_err(|error| wrong(format!("not TOML: {error}")))?;
    let field =
        |name: &str| table.get(name).ok_or_else(|| wrong(format!("has no `{name}` at its top level")));
    let id = field("id")?;
    let level = field("level")?;
    // What the core would refuse is named by it when the scenario is opened.
    let words =
        |name: &str| table.get(name).and_then(toml::Value::as_str).unwrap_or_default().trim().to_string();
    Ok(Entry {
        more: experiment_words(id.as_str().unwrap_or_default(), &table),
        file: file.into(),
        id: id.as_str().ok_or_else(|| wrong(format!("`id` must be text, found {id}")))?.into(),
        level: level
            .as_integer()
            .ok_or_else(|| wrong(format!("`level` must be a whole number, found {level}")))?,
        title: words("title"),
        aim: words("aim"),
        help: words("help"),
        path: !(table.contains_key("fault")
            && table.get("name_faults").and_then(toml::Value::as_bool) == Some(true)),
    })
}

#[cfg(test)]
mod tests;
