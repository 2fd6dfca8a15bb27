//! `replay`: does a saved attempt again and prints the hash of its debrief, to compare machines by. The page's core has its
//! twin.

use std::path::Path;

use dicrotic::session::Session;

use crate::failure::Failure;
use crate::{output, terminal, text_file};

/// Prints the hash of the debrief; fails where nothing was checked.
pub fn run(file: &Path) -> Result<(), Failure> {
    let text = text_file::read(file, text_file::ATTEMPT)?;
    let session =
        Session::restore(&text).map_err(|e| Failure::new(format!("{}: {e}", terminal::name(file))))?;
    let hash = session.debrief_hash();
    if hash.is_empty() {
        return Err(Failure::new(format!("{}: nothing was checked in this attempt", terminal::name(file))));
    }
    output::print(&format!("{hash}\n"))
}
