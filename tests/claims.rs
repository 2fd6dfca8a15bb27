//! What the catalogue's texts say can be measured on the bench: `tests/claimed/table.rs` has the claims, `cargo bench
//! --bench claims` prints their figures.

mod claimed;

use claimed::claim::{Does, Opposite};
use claimed::{measured, table, words};
use dicrotic::scenario::fault;
use std::collections::BTreeSet;

#[test]
fn every_claim_quotes_a_text_that_stands() {
    let words = words::english();
    for claim in table::claims() {
        let text = words.get(&claim.key()).unwrap_or_else(|| panic!("there is no {}", claim.key()));
        assert!(
            text.contains(claim.phrase),
            "{}: \"{}\" does not stand in \"{text}\"",
            claim.key(),
            claim.phrase
        );
        assert!(!claim.phrase.is_empty());
    }
}

#[test]
fn every_fault_has_a_claim_about_what_is_seen() {
    let claims = table::claims();
    let with: BTreeSet<&str> = claims.iter().filter(|c| c.field == "seen").map(|c| c.fault).collect();
    let without: Vec<&str> = fault::all().map(|f| f.id).filter(|id| !with.contains(id)).collect();
    assert!(without.is_empty(), "{without:?}");
    // A test does something, or is a look or a question at what is there.
    assert!(claims.iter().filter(|c| c.field == "remedy").all(|c| !matches!(c.course.does, Does::Steps(_))));
    // What a text says without "often" holds always.
    assert!(claims.iter().all(|c| c.least_share == 1.0 || c.phrase.contains("often")));
}

#[test]
fn of_two_faults_that_are_confused_a_claim_about_one_fails_on_the_other() {
    let mut told = BTreeSet::new();
    for claim in table::claims() {
        for opposite in &claim.opposites {
            if let Opposite::Fault(other) = opposite {
                told.extend([(claim.fault, *other), (other, claim.fault)]);
            }
        }
    }
    let pairs = fault::all().flat_map(|f| f.confused_with.iter().map(|other| (f.id, *other)));
    let untold: Vec<_> = pairs.filter(|pair| !told.contains(pair)).collect();
    assert!(untold.is_empty(), "{untold:?}");
}

#[test]
fn every_claim_holds_on_its_bench_and_fails_on_the_opposite_one() {
    let rows = measured::rows(&[table::claims(), table::gone_by_remedy()].concat());
    let wrong: Vec<String> = rows.iter().filter(|r| !(r.holds() && r.tells())).map(|r| r.line()).collect();
    assert!(wrong.is_empty(), "{} of {}\n{}", wrong.len(), rows.len(), wrong.join("\n"));
}
