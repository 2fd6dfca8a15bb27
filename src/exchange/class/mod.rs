//! A class: who is on its list, what came in, what the instructor decided, and what is made of it.
//!
//! - [`roster`], [`table`]: the list of students; rows and cells of a table
//! - [`care`]: what the instructor decided, and by what the class is judged
//! - [`course`]: the class itself
//! - [mod@line], [`parts`]: one line a student; how each part of a course stands in it
//! - [`talk`]: what to talk about, groups, what changed
//! - [`gradebook`], [`answers`]: what goes out again: rows for a course site, the answer key
//! - [`items`]: how each item did: what was wrong in which scenario
//! - [`saved`]: a class as a file, and back
//!
//! Nothing that is in a saved class is believed but what was handed in, the list, and what was decided: all grades come out
//! of a replay.

pub mod answers;
pub mod care;
pub mod course;
pub mod gradebook;
pub mod items;
pub mod line;
pub mod parts;
pub mod roster;
pub mod saved;
pub mod table;
pub mod talk;
pub mod within;

pub use care::{Care, Pick, Terms};
pub use course::{Class, Failed, Source};
pub use line::{Line, State, minutes};
