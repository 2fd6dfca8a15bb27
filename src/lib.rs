//! Dicrotic simulates the signal chain of a finger-pulse bench, measures what it records and judges how it was
//! measured.
//!
//! The map, in the order in which modules may import each other (never upward):
//!
//! | module | what lives there |
//! |---|---|
//! | [`math`], [`units`], [`rng`] | arithmetic that gives the same bits everywhere; checked quantities; seeded streams |
//! | [`dsp`] | filters and transforms for whole records |
//! | [`measure`] | what can be read off a recording |
//! | [`exchange`] | files in and out |

pub mod dsp;
pub mod exchange;
pub mod math;
pub mod measure;
pub mod rng;
pub mod units;
