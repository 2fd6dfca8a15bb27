//! An assignment and the page that opens it as the files of a package for a course site. The command line and the page make the
//! same: each brings the page's files, and whoever has a packer packs them.
//!
//! - `manifest`: what a course site reads first, in the two forms of SCORM
//! - `structure`: the same for cmi5

mod manifest;
mod structure;

use std::collections::BTreeMap;

use crate::plain::json;
use crate::scenario::{Scenario, ScenarioError};
use thiserror::Error;

/// Files by path.
pub type Files = BTreeMap<String, Vec<u8>>;

/// So many points of 100 pass: sixteen of the rubric's twenty. `www/js/course/lms.js` says the same.
pub const MASTERY: u8 = 80;
/// What the page may ask, as its policy says it, and what it may ask where its course site is one of cmi5. Where that keeps
/// its records is told to the page only when it is opened; of what this allows, `www/js/course/launch.js` then keeps that one
/// place. A record over a bare connection can be kept only where the page itself comes from.
const CONNECT: [&str; 2] = ["connect-src 'self';", "connect-src 'self' https:;"];

/// The standard of the course site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standard {
    /// SCORM 1.2.
    Scorm12,
    /// SCORM 2004, 4th edition.
    Scorm2004,
    /// cmi5, Quartz, 1st edition.
    Cmi5,
}

impl Standard {
    /// By its name.
    pub fn named(name: &str) -> Option<Self> {
        [Self::Scorm12, Self::Scorm2004, Self::Cmi5].into_iter().find(|one| one.name() == name)
    }

    /// Its name in the page's mark.
    pub fn name(self) -> &'static str {
        match self {
            Self::Scorm12 => "scorm12",
            Self::Scorm2004 => "scorm2004",
            Self::Cmi5 => "cmi5",
        }
    }

    /// The name of the file that a site of it reads first, at the root of the package.
    pub fn manifest(self) -> &'static str {
        match self {
            Self::Scorm12 | Self::Scorm2004 => "imsmanifest.xml",
            Self::Cmi5 => "cmi5.xml",
        }
    }
}

/// Why files cannot be packed.
#[derive(Debug, Error, PartialEq)]
pub enum PackageError {
    /// The page has no first file, or one that cannot be marked.
    #[error("index.html must be there, in UTF-8, with one <head> and one policy of {}", CONNECT[0])]
    Index,
    /// The scenario cannot be used.
    #[error(transparent)]
    Scenario(#[from] ScenarioError),
}

/// The files of the page with one scenario, given its text as it is handed out, marked as packed for `way`: the name of a
/// standard, or `alone`. Without the worker that keeps the page on a device: a course site's page is not ours to keep.
pub fn page(mut files: Files, toml: &str, way: &str) -> Result<Files, PackageError> {
    let told = Scenario::read(toml)?;
    files.retain(|name, _| {
        !name.starts_with("scenarios/")
            && name != "sw.js"
            && name != "files.json"
            && !name.ends_with(".webmanifest")
    });
    let entry = json!({
        "file": "assignment.toml", "id": told.id, "level": told.level, "title": told.title.trim(), "aim": told.aim.trim(),
        "help": told.help,
    });
    files.insert("scenarios/index.json".into(), format!("[{entry}]").into_bytes());
    files.insert("scenarios/assignment.toml".into(), toml.as_bytes().to_vec());
    let html = files.remove("index.html").and_then(|bytes| String::from_utf8(bytes).ok());
    let fits = |html: &String| ["<head>", CONNECT[0]].iter().all(|one| html.matches(one).count() == 1);
    let html = html.filter(fits).ok_or(PackageError::Index)?;
    // Before any script, which asks for it.
    let mark = format!(
        "<head>\n<meta name=\"dicrotic-pack\" content=\"{way}\" data-scenario=\"{}\">",
        escaped(&told.id)
    );
    let html = html.replace("<head>", &mark);
    let html = if way == Standard::Cmi5.name() { html.replace(CONNECT[0], CONNECT[1]) } else { html };
    let html: String =
        html.lines().filter(|l| !l.contains("rel=\"manifest\"")).map(|l| format!("{l}\n")).collect();
    files.insert("index.html".into(), html.into_bytes());
    Ok(files)
}

/// The manifest of a package with these files.
pub fn manifest(files: &Files, toml: &str, standard: Standard) -> Result<String, PackageError> {
    let told = Scenario::read(toml)?;
    let names: Vec<&str> = files.keys().map(String::as_str).collect();
    Ok(match standard {
        Standard::Scorm12 => manifest::text(&told, toml, false, &names),
        Standard::Scorm2004 => manifest::text(&told, toml, true, &names),
        Standard::Cmi5 => structure::text(&told, toml),
    })
}

/// Text that may stand between tags and in attributes: without characters that XML forbids (XML 1.0, production 2).
pub(super) fn escaped(text: &str) -> String {
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

    fn packed(way: &str, html: &str) -> Result<String, PackageError> {
        let toml = include_str!("../../../scenarios/04-rest-pulse.toml");
        let files = Files::from([("index.html".to_string(), html.as_bytes().to_vec())]);
        page(files, toml, way).map(|files| String::from_utf8(files["index.html"].clone()).expect("text"))
    }

    #[test]
    fn the_page_may_ask_other_places_in_a_package_for_cmi5_alone() {
        let html = include_str!("../../../www/index.html");
        for way in ["scorm12", "scorm2004", "alone"] {
            let page = packed(way, html).expect("a page");
            assert!(page.contains(CONNECT[0]) && !page.contains("https:;"), "{way}");
        }
        let page = packed("cmi5", html).expect("a page");
        assert!(page.contains(CONNECT[1]) && !page.contains(CONNECT[0]));
        let bare = html.replace("connect-src", "x-src");
        assert_eq!(packed("cmi5", &bare), Err(PackageError::Index));
    }

    #[test]
    fn text_in_a_manifest_has_no_character_that_xml_forbids() {
        // XML 1.0, production 2: no U+FFFE and U+FFFF, of the control characters only tab and line ends.
        let text = escaped("a\u{fffe}b\u{ffff}c\u{1b}[1m\u{0}<&>\"\u{fffd}\u{1f600}");
        assert_eq!(text, "abc[1m&lt;&amp;&gt;&quot;\u{fffd}\u{1f600}");
    }
}
