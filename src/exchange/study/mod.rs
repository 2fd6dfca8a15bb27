//! A study of a class: whether rehearsal at the bench changes what students can do. Half of the class, drawn by lot, rehearses
//! between a first and a second test; a third test comes later. Everybody may rehearse in the end.
//!
//! - [`forms`]: three test forms out of pools, as hard as each other
//! - [`deal`]: who is in which arm, and in which order each student has the forms
//! - [`plan`]: the study as the instructor keeps it
//! - [`came`]: what came in: whose it is, whether it may be used, what each test came to
//! - [`rows`]: the anonymous table, and back
//! - [`effect`], [`distribution`]: effects with their intervals

pub mod came;
pub mod deal;
pub mod distribution;
pub mod effect;
pub mod forms;
pub mod plan;
pub mod rows;

/// Fewest people of whom a figure is told, where nobody asks for more: with fewer, who knows the class knows the people (common
/// practice of official statistics, where 3 to 10 are in use).
pub const LEAST: usize = 5;
