//! The claims of the catalogue's texts, each with its worst figure: `cargo bench --bench claims` prints the table,
//! `-- WORD` only the lines of faults whose name holds the word.

#[path = "../claimed/mod.rs"]
mod claimed;

use claimed::{measured, table};

fn main() {
    // Cargo adds `--bench` of its own.
    let word = std::env::args().skip(1).find(|a| !a.starts_with("--")).unwrap_or_default();
    let claims: Vec<_> = table::claims().into_iter().filter(|c| c.fault.contains(&word)).collect();
    let rows = measured::rows(&claims);
    rows.iter().for_each(|row| println!("{}", row.line()));
    let good = rows.iter().filter(|r| r.holds() && r.tells()).count();
    println!("{good} of {} claims hold on {} subjects and fail on the opposite bench", rows.len(), measured::SUBJECTS);
}
