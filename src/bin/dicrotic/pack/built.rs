//! A page that was built before (`dicrotic build --out FOLDER`), read back from its folder: packing then needs neither the sources nor
//! a compiler.

use std::fs;
use std::path::Path;

use crate::failure::{Failure, While};
use crate::site::{Files, LIST, UNFINISHED, WORKER};
use crate::{handed_in, terminal};

/// Largest file of a page, bytes.
const MOST_BYTES: u64 = 64 << 20;

/// The files of the page in a folder, as its own list names them.
pub fn page(folder: &Path) -> Result<Files, Failure> {
    let named = || format!("--page {}", terminal::name(folder));
    let none = |why: String| Failure::new(format!("{}: {why}", named()));
    if folder.join(UNFINISHED).exists() {
        return Err(none("the page in it is unfinished: build it again with `dicrotic build --out`".into()));
    }
    let root = fs::canonicalize(folder).while_doing(named)?;
    let file = |name: &str| {
        let path = fs::canonicalize(root.join(name)).map_err(|e| e.to_string())?;
        if !path.starts_with(&root) {
            return Err("leads out of the folder: not read".to_string());
        }
        handed_in::plain_bytes(&path, MOST_BYTES, "a file of a page")
    };
    let list = file(LIST).map_err(|why| {
        none(format!(
            "no built page, its {LIST} cannot be read ({why}): `dicrotic build --out FOLDER` makes one"
        ))
    })?;
    let names: Vec<String> = serde_json::from_slice(&list)
        .map_err(|e| none(format!("{LIST} is no list of a page's files: {e}")))?;
    let mut files = Files::from([(LIST.to_string(), list)]);
    for name in names.iter().map(String::as_str).chain([WORKER]) {
        let bytes = file(name).map_err(|why| none(format!("\"{}\": {why}", terminal::one_line(name))))?;
        files.insert(name.into(), bytes);
    }
    Ok(files)
}
