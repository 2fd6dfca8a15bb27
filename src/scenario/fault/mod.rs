//! The catalogue of faults: what can be wrong at a finger-pulse bench.
//!
//! Each entry holds together what belongs to one fault: how it comes about in the model, how severe it may be, what
//! it looks like at first, what it is confused with, which tests tell it apart, what mends it and what does not. The
//! words for cause, symptom, test and remedy stand with the page's texts under the entry's name.
//!
//! - [`entry`]: the form of an entry
//! - [`powerless`], [`silent`], [`screen`], [`skin`], [`noise`], [`subject`], [`paper`], [`around`], [`body`]: the entries

mod around;
mod body;
pub mod entry;
mod noise;
mod paper;
mod powerless;
mod screen;
mod silent;
mod skin;
mod subject;

pub use entry::{AtWork, Fault, Impression, Scene, Situation, Symptom};

/// All faults.
pub fn all() -> impl Iterator<Item = &'static Fault> {
    [
        powerless::FAULTS,
        silent::FAULTS,
        screen::FAULTS,
        skin::FAULTS,
        noise::FAULTS,
        subject::FAULTS,
        paper::FAULTS,
        around::FAULTS,
        body::FAULTS,
    ]
    .into_iter()
    .flatten()
}

/// A fault by its name.
pub fn named(id: &str) -> Option<&'static Fault> {
    all().find(|f| f.id == id)
}
