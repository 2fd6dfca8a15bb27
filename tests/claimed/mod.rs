//! What the texts of the catalogue of faults say, as figures: a claim is a phrase of a text, a figure from what a student
//! could see of it, and a bound. It is measured on many subjects with every sensor at which the fault is at work, at the
//! mild and at the worst end of its severity; and the same figure must miss the bound on the opposite bench, the one
//! without the fault or with the one that it is confused with.
//!
//! - [`claim`]: the form of a claim
//! - [`shot`]: what is seen, and plain figures of it
//! - [`figures`]: the figures that claims speak of
//! - [`table`]: the claims
//! - [`measured`]: runs them
//! - [`words`]: the English texts
#![allow(dead_code)] // The test and the table of `cargo bench` each use a part of it.

pub mod claim;
pub mod figures;
pub mod measured;
pub mod shot;
pub mod table;
pub mod words;
