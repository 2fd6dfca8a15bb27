//! What a student hands in and what an instructor makes of it.
//!
//! - [`result`]: the result file
//! - [`grade`]: replays what was handed in and compares it with what it claims
//! - [`set`]: what was set, to compare results with
//! - [`together`]: results beside one another: handed in twice, copied, alike
//! - [`remark`]: what a log made by a program looks like
//! - [`class`]: many of them together: who is ready, which faults stayed, which misreadings came
//! - [`table`]: the grades as a table of text
//!
//! A result carries a checksum against accidental change and is verified by replay: what it claims must come out again.
//! That finds damage, mistakes and clumsy forgery. It cannot prove who sat at the screen, nor that a log was made by
//! hand: the page runs on the student's machine.

pub mod class;
pub mod grade;
pub mod remark;
pub mod result;
pub mod set;
pub mod table;
pub mod together;

pub use grade::{Against, Graded, Handed, HandinError, Outcome};
pub use set::{Compared, Set};
