//! For the page: an assignment packed for a course site, from the page's own files; and other files that become one.

use super::{fail, scenario_fail};
use crate::exchange::NamedFile;
use crate::exchange::package::{self, Files, PackageError, Standard};
use crate::exchange::zip::{self, Item};
use crate::plain::json;
use crate::scenario::digest::handed_out;
use std::collections::BTreeMap;
use wasm_bindgen::prelude::*;

fn package_fail(error: &PackageError) -> JsValue {
    match error {
        PackageError::Scenario(error) => scenario_fail(error),
        PackageError::Index => fail("not_found", json!({"what": "index.html"})),
    }
}

/// The files of a package, which the page packs one by one before they become one file.
#[wasm_bindgen]
pub struct Package {
    files: Files,
    packed: BTreeMap<String, Vec<u8>>,
    first: String,
}

impl Package {
    /// Files of which the first stays the first.
    pub(super) fn of(files: Vec<NamedFile>) -> Self {
        let first = files.first().map(|(name, _)| name.clone()).unwrap_or_default();
        Self { files: files.into_iter().collect(), packed: BTreeMap::new(), first }
    }
}

#[wasm_bindgen]
impl Package {
    /// The page's files with a scenario, given its text, for the site of a standard.
    #[wasm_bindgen(constructor)]
    pub fn new(
        names: Vec<String>,
        contents: Vec<js_sys::Uint8Array>,
        toml: &str,
        standard: &str,
    ) -> Result<Package, JsValue> {
        let all: Files =
            names.into_iter().zip(contents).map(|(name, bytes)| (name, bytes.to_vec())).collect();
        let standard = Standard::named(standard).ok_or_else(|| package_fail(&PackageError::Index))?;
        let toml = handed_out(toml);
        let mut files = package::page(all, &toml, standard.name()).map_err(|e| package_fail(&e))?;
        let manifest = package::manifest(&files, &toml, standard).map_err(|e| package_fail(&e))?;
        let first = standard.manifest().to_string();
        files.insert(first.clone(), manifest.into_bytes());
        Ok(Self { files, packed: BTreeMap::new(), first })
    }

    /// The names of its files.
    pub fn names(&self) -> Vec<String> {
        self.files.keys().cloned().collect()
    }

    /// What a file of it holds.
    pub fn file(&self, name: &str) -> Option<Vec<u8>> {
        self.files.get(name).cloned()
    }

    /// Takes a file as a raw deflate.
    pub fn pack(&mut self, name: &str, packed: Vec<u8>) {
        self.packed.insert(name.into(), packed);
    }

    /// All of it as one file, the manifest first; nothing if it is too large for the format.
    pub fn archive(&self) -> Option<Vec<u8>> {
        let first = self.files.get_key_value(&self.first);
        let rest = self.files.iter().filter(|(name, _)| **name != self.first);
        let items: Vec<Item> = first
            .into_iter()
            .chain(rest)
            .map(|(name, bytes)| Item { name, bytes, packed: self.packed.get(name).map(Vec::as_slice) })
            .collect();
        zip::write(&items)
    }
}
