//! `pack`: an assignment and the page that opens it as one file: for a course site (SCORM or cmi5), or for a double click.
//!
//! | module | what lives there |
//! |---|---|
//! | `single` | all of the page in one HTML file |
//! | `built` | a page that was built before |

mod built;
mod single;

use std::io::{Cursor, Write};
use std::path::{Path, PathBuf};

use clap::ValueEnum;
use dicrotic::exchange::package;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::digest::handed_out;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

use crate::failure::{Failure, While};
use crate::site::{self, Files};
use crate::{output, project, same_file, terminal, text_file};

/// The standard of the course site.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Standard {
    /// SCORM 1.2, which every course site reads
    Scorm12,
    /// SCORM 2004, 4th edition: tells passed from completed, and has room for longer attempts
    Scorm2004,
    /// cmi5: statements go to a record store; no limit to an attempt's length
    Cmi5,
}

impl Standard {
    fn known(self) -> package::Standard {
        match self {
            Self::Scorm12 => package::Standard::Scorm12,
            Self::Scorm2004 => package::Standard::Scorm2004,
            Self::Cmi5 => package::Standard::Cmi5,
        }
    }
}

/// Packs `assignment` into `to`, a `.zip` or an `.html`, with the page of the folder `page`, or else one made from the sources.
pub fn run(
    assignment: &Path,
    to: &Path,
    standard: Option<Standard>,
    page: Option<&Path>,
) -> Result<(), Failure> {
    let here = || terminal::name(assignment);
    let text = text_file::read(assignment, text_file::SCENARIO)?;
    Scenario::read(&text).while_doing(here)?;
    let text = handed_out(&text);
    let told = Scenario::read(&text).while_doing(here)?;
    let ending = to.extension().map(|e| e.to_string_lossy().to_lowercase()).unwrap_or_default();
    let alone = match (ending.as_str(), standard) {
        ("zip", _) => false,
        ("html", None) => true,
        ("html", Some(_)) => {
            return Err(Failure::new(
                "--standard belongs to a .zip: an .html stands by itself, without a course site",
            ));
        }
        _ => {
            let name = terminal::name(to);
            return Err(Failure::new(format!("--to {name}: expected a name that ends in .zip or .html")));
        }
    };
    same_file::refuse_overlap([assignment], &[to])?;
    let standard = standard.unwrap_or(Standard::Scorm12);
    let way = if alone { "alone" } else { standard.known().name() };
    let page = match page {
        Some(folder) => {
            let files = built::page(folder)?;
            let read: Vec<PathBuf> = files.keys().map(|name| folder.join(name)).collect();
            same_file::refuse_overlap(read.iter().map(PathBuf::as_path), &[to])?;
            // What stands in that folder is put up with the page, for everybody.
            if same_file::lies_in(to, folder) {
                let (to, folder) = (terminal::name(to), terminal::name(folder));
                return Err(Failure::new(format!(
                    "--to {to}: this is in the folder of the page, {folder}; choose another one"
                )));
            }
            files
        }
        None => from_sources()?,
    };
    let files = package::page(page, &text, way).while_doing(here)?;
    let bytes = if alone { single::page(&files)? } else { archive(&files, &text, standard)? };
    text_file::write_bytes(to, &bytes)?;
    let (count, kb) = (files.len() + usize::from(!alone), bytes.len().div_ceil(1000));
    let what = match (alone, standard) {
        (true, _) => "one page that opens by a double click",
        (false, Standard::Scorm12) => "SCORM 1.2",
        (false, Standard::Scorm2004) => "SCORM 2004, 4th edition",
        (false, Standard::Cmi5) => "cmi5",
    };
    output::print(&format!("{}: \"{}\", {what}, {count} files in {kb} kB\n", terminal::name(to), told.title))
}

/// The page made from the sources, which is told, because it may take a minute and a compiler.
fn from_sources() -> Result<Files, Failure> {
    let root = project::root().map_err(|why| {
        Failure::new(format!("{why}; or give a page that was built before with --page FOLDER"))
    })?;
    let sources = terminal::name(&root);
    terminal::say(&format!(
        "making the page from the sources in {sources} (--page FOLDER takes one that was built before)"
    ));
    site::build(&root)
}

/// The archive with the manifest first, as some course sites want it.
fn archive(files: &Files, text: &str, standard: Standard) -> Result<Vec<u8>, Failure> {
    let doing = || "packing".to_string();
    let manifest = package::manifest(files, text, standard.known()).while_doing(doing)?;
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    // No date of its own, so that the same assignment gives the same file.
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    let first = (standard.known().manifest(), manifest.as_bytes());
    for (name, bytes) in std::iter::once(first).chain(files.iter().map(|(n, b)| (n.as_str(), b.as_slice()))) {
        zip.start_file(name, options).while_doing(doing)?;
        zip.write_all(bytes).while_doing(doing)?;
    }
    Ok(zip.finish().while_doing(doing)?.into_inner())
}
