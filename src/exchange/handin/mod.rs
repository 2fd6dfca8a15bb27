//! What a student hands in and what an instructor makes of it.
//!
//! - [`result`]: the result file
//! - [`bundle`]: the results of a course's parts as one file
//! - [`handed`]: what was handed in, and doing it again
//! - [`grade`]: compares a replay with what was claimed and with what was set, and draws up what came of it
//! - [`error`]: what is wrong with something handed in
//! - [`set`]: what was set, to compare results with
//! - [`together`]: results beside one another: handed in twice, copied, alike
//! - [`remark`]: what a log made by a program looks like
//! - [`class`]: many of them together: who is ready, which faults stayed, which misreadings came
//! - [`table`]: the grades as a table of text
//! - `told`: names out of our own lists, as they come back from another thread
//!
//! A result carries a checksum against accidental change and is verified by replay: what it claims must come out again.
//! That finds damage, mistakes and clumsy forgery. It cannot prove who sat at the screen, nor that a log was made by
//! hand: the page runs on the student's machine.

pub mod bundle;
pub mod class;
pub mod error;
pub mod grade;
pub mod handed;
pub mod otherwise;
pub mod remark;
pub mod result;
pub mod set;
pub mod table;
pub mod together;
mod told;
pub mod trail;

pub use error::HandinError;
pub use grade::{Against, Graded, Outcome};
pub use handed::Handed;
pub use set::{Compared, Set};
