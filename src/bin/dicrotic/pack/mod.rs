//! `pack`: an assignment and the page that opens it as one file: for a course site (SCORM), or for a double click.
//!
//! | module | what lives there |
//! |---|---|
//! | `manifest` | what a course site reads first |
//! | `single` | all of the page in one HTML file |

mod manifest;
mod single;

use std::io::{Cursor, Write};
use std::path::Path;

use clap::ValueEnum;
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
}

impl Standard {
    fn name(self) -> &'static str {
        match self {
            Self::Scorm12 => "scorm12",
            Self::Scorm2004 => "scorm2004",
        }
    }
}

/// Packs `assignment` into `to`, a `.zip` or an `.html`.
pub fn run(assignment: &Path, to: &Path, standard: Option<Standard>) -> Result<(), Failure> {
    let here = || terminal::name(assignment);
    let text = text_file::read(assignment)?;
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
    let files =
        page(site::build(&project::root()?)?, &told, &text, if alone { "alone" } else { standard.name() })?;
    let bytes = if alone { single::page(&files)? } else { archive(&files, &told, standard)? };
    text_file::write_bytes(to, &bytes)?;
    let (count, kb) = (files.len() + usize::from(!alone), bytes.len().div_ceil(1000));
    let what = match (alone, standard) {
        (true, _) => "one page that opens by a double click",
        (false, Standard::Scorm12) => "SCORM 1.2",
        (false, Standard::Scorm2004) => "SCORM 2004, 4th edition",
    };
    output::print(&format!("{}: \"{}\", {what}, {count} files in {kb} kB\n", terminal::name(to), told.title))
}

/// The page with one scenario, marked as packed. Without the worker that keeps it on a device: a course site's page is
/// not ours to keep.
fn page(mut files: Files, told: &Scenario, text: &str, standard: &str) -> Result<Files, Failure> {
    files.retain(|name, _| {
        !name.starts_with("scenarios/") && name != "sw.js" && !name.ends_with(".webmanifest")
    });
    let entry = site::entry("assignment.toml", text.as_bytes())?;
    let index = serde_json::to_vec(&[entry]).while_doing(|| "writing scenarios/index.json".into())?;
    files.insert("scenarios/index.json".into(), index);
    files.insert("scenarios/assignment.toml".into(), text.as_bytes().to_vec());
    let html = files.get("index.html").map(|b| String::from_utf8_lossy(b).into_owned()).unwrap_or_default();
    let mark = format!(
        "<meta name=\"dicrotic-pack\" content=\"{standard}\" data-scenario=\"{}\">\n</head>",
        escaped(&told.id)
    );
    if html.matches("</head>").count() != 1 {
        return Err(Failure::new("www/index.html must have one </head>"));
    }
    let html = html.replace("</head>", &mark);
    let html: String =
        html.lines().filter(|l| !l.contains("rel=\"manifest\"")).map(|l| format!("{l}\n")).collect();
    files.insert("index.html".into(), html.into_bytes());
    Ok(files)
}

/// The archive with the manifest first, as some course sites want it.
fn archive(files: &Files, told: &Scenario, standard: Standard) -> Result<Vec<u8>, Failure> {
    let doing = || "packing".to_string();
    let names: Vec<&str> = files.keys().map(String::as_str).collect();
    let manifest = manifest::text(told, standard, &names);
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    // No date of its own, so that the same assignment gives the same file.
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    let first = ("imsmanifest.xml", manifest.as_bytes());
    for (name, bytes) in std::iter::once(first).chain(files.iter().map(|(n, b)| (n.as_str(), b.as_slice()))) {
        zip.start_file(name, options).while_doing(doing)?;
        zip.write_all(bytes).while_doing(doing)?;
    }
    Ok(zip.finish().while_doing(doing)?.into_inner())
}

/// Text that may stand between tags and in attributes: without characters that XML forbids (XML 1.0, production 2).
fn escaped(text: &str) -> String {
    text.chars()
        .filter(|c| (!c.is_control() || *c == '\n') && !matches!(c, '\u{fffe}' | '\u{ffff}'))
        .map(|c| match c {
            '&' => "&amp;".to_string(),
            '<' => "&lt;".to_string(),
            '>' => "&gt;".to_string(),
            '"' => "&quot;".to_string(),
            c => c.to_string(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_in_a_manifest_has_no_character_that_xml_forbids() {
        // XML 1.0, production 2: no U+FFFE and U+FFFF, of the control characters only tab and line ends.
        let text = escaped("a\u{fffe}b\u{ffff}c\u{1b}[1m\u{0}<&>\"\u{fffd}\u{1f600}");
        assert_eq!(text, "abc[1m&lt;&amp;&gt;&quot;\u{fffd}\u{1f600}");
    }
}
