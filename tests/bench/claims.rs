//! The claims of the catalogue's texts, each with its worst figure: `cargo bench --bench claims` prints the table,
//! `-- WORD` only those of faults whose name holds the word, with every figure.

#[path = "../claimed/mod.rs"]
mod claimed;

use claimed::{measured, table};

fn main() {
    // Cargo adds `--bench` of its own.
    let word = std::env::args().skip(1).find(|a| !a.starts_with("--")).unwrap_or_default();
    let claims: Vec<_> = table::claims()
        .into_iter()
        .chain(table::gone_by_remedy())
        .filter(|c| c.fault.contains(&word))
        .collect();
    let rows = measured::rows(&claims);
    for row in &rows {
        println!("{}", row.line());
        if !word.is_empty() {
            println!("{}", row.figures());
        }
    }
    let good = rows.iter().filter(|r| r.holds() && r.tells()).count();
    println!(
        "{good} of {} claims hold on {} subjects and fail on the opposite bench",
        rows.len(),
        measured::SUBJECTS
    );
}
