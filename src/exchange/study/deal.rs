//! Who rehearses, and in which order each student has the three test forms.
//!
//! Students are put in an order that nobody can foresee without the study's word, and dealt into blocks of twelve: each order of the
//! three forms once in each arm. So the arms differ by one at most in any block, and over each full block every form comes first,
//! second and third equally often, and each comes right before each other equally often (all orders of three, which is the
//! balanced design of Williams 1949 for an odd number). A form that is harder than it should be then changes no test more than
//! another, and no arm more than the other.

use crate::plain::names;
use crate::scenario::digest::hex;
use crate::session::seeds;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

/// An arm of the study.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Arm {
    /// Rehearses between the first and the second test.
    With,
    /// Rehearses after the last test.
    Without,
}

names! {
    Arm {
        With => "with",
        Without => "without",
    }
}

/// Both, in the order of all figures.
pub const ARMS: [Arm; 2] = [Arm::With, Arm::Without];

/// Every order of three forms.
pub const ORDERS: [[usize; 3]; 6] = [[0, 1, 2], [1, 2, 0], [2, 0, 1], [0, 2, 1], [2, 1, 0], [1, 0, 2]];

/// Students in a block.
pub const BLOCK: usize = 2 * ORDERS.len();

/// A student's place in the study.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Placed {
    /// The student's code, as the list has it.
    pub code: String,
    /// Their arm.
    pub arm: Arm,
    /// Which of [`ORDERS`] they have.
    pub order: usize,
}

impl Placed {
    /// The form, from 0, that they have in the first, second or third test.
    pub fn form(&self, occasion: usize) -> usize {
        ORDERS[self.order % ORDERS.len()][occasion % 3]
    }
}

/// A number that only who knows the word can work out: SHA-256 of the use, the word as [it counts](seeds::tidy), and what it is for.
pub fn keyed(use_: &str, word: &str, of: &str) -> String {
    let told = format!("dicrotic study {use_} 1\n{}\n{of}", seeds::tidy(word));
    hex(&Sha256::digest(told.as_bytes()))
}

/// Deals those of `codes` who have no place yet; who has one keeps it, so that students who come late change nobody's. The same
/// word and students give the same places, in whatever order the list has them.
pub fn deal(word: &str, codes: &[String], already: &[Placed]) -> Vec<Placed> {
    let placed: BTreeSet<String> = already.iter().map(|one| seeds::code(&one.code)).collect();
    let mut new: Vec<(String, &String)> = codes
        .iter()
        .filter(|code| !placed.contains(&seeds::code(code)))
        .map(|code| (keyed("order", word, &seeds::code(code)), code))
        .collect();
    new.sort();
    new.dedup_by(|a, b| a.0 == b.0);
    let mut all = already.to_vec();
    for block in new.chunks(BLOCK) {
        // What a block begins with: by chance as well, so that the last of an unfinished one favours no arm and no order.
        let lot = keyed("block", word, &block[0].0);
        let lot = u64::from_str_radix(&lot[..8], 16).unwrap_or_default() as usize;
        let (first, turn) = (lot % 2, lot / 2);
        all.extend(block.iter().enumerate().map(|(k, (_, code))| Placed {
            code: code.to_string(),
            arm: ARMS[(k + first) % 2],
            order: (k / 2 + turn) % ORDERS.len(),
        }));
    }
    all
}
