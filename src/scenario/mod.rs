//! Scenarios: what a student finds on the bench, what is to be reached, and scripted attempts with their expected
//! results.
//!
//! - [`fault`]: the catalogue of faults
//! - [`compose`]: a scenario as a file that a person can read and edit
//! - [`schema`]: the file's tables
//! - [`check`]: what must hold in each of them
//! - [`pool`]: what a seed draws a bench from
//! - `drawn`: from scenario and seed to what stands on the table
//! - [`text`]: a file's text as a plain value, and the place of a part in it
//! - [`error`]: what is wrong with a file, and where
//! - [`assignment`]: what makes a scenario an assignment
//! - [`digest`]: what is handed out, and which bench it is
//! - `fields`: a schema and a table of all fields, for the command line
//! - [`plan`]: a course of several assignments
//! - [`moment`]: days and moments
//! - `together`: what fits by itself and not beside the rest
//! - [`script`]: scripted attempts as they stand in the file; they are replayed by [`crate::session`]

pub mod assignment;
pub mod check;
pub mod compose;
pub mod digest;
mod drawn;
pub mod error;
pub mod fault;
#[cfg(feature = "schema")]
pub mod fields;
pub mod moment;
pub mod plan;
pub mod pool;
pub mod schema;
pub mod script;
pub mod text;
mod together;

pub use error::ScenarioError;
pub use schema::Scenario;
