//! An attempt: a scenario, a seed, and everything that was done, each action stamped with the sample at which it was
//! done. The same three give the same attempt again, to the last bit.
//!
//! - [`action`]: why an action is not done
//! - [`causes`]: which causes are at work
//! - [`kept_recording`]: a recording with its cursors and marks
//! - [`note`]: what is known of a recording, for files
//! - [`worksheet`]: what was typed
//! - [`attempt`]: the running attempt: what is done goes to the part it is for
//! - [`run`]: the world and its clock
//! - [`heard`]: what the recorder gives while somebody listens
//! - [`trace`]: what is shown and recorded
//! - [`sheet`]: the worksheet's state
//! - [`help`]: how much help there is
//! - [`experiment`]: what was expected, tabled and concluded
//! - [`log`]: what was done
//! - [`judging`]: the check
//! - [`evidence`]: what a check says of each skill
//! - [`course`]: what was done, in order
//! - [`hinting`]: hints, and where to look
//! - `opened`: a recording from a file, and how it is shown
//! - [`own`]: what the instructor wrote of their own: misreadings and hints
//! - [`guide`]: worked and half-finished examples
//! - [`truth`]: what is so, and its one reader
//! - [`view`]: what the page may see of it
//! - [`overview`]: what can be said of the trace without counting
//! - [`steps`]: where the work stands, for orientation
//! - [`readiness`]: whether a scenario keeps its word
//! - `right`: the right answer to each field of the worksheet
//! - [`regrade`]: judging by other criteria
//! - [`pools`]: whether all that a pool draws can be found
//! - [`save`]: save and restore by replay
//! - [`compact`]: an attempt as one line of text
//! - [`seeds`]: a seed for each student of a class
//! - [`fairness`]: how many students with a right method a way of grading would fail
//! - [`still`]: a clean recording with a window, for a question on paper
//! - [`symptom`]: the figure in which each fault shows
//! - [`tell`]: a way of making each test of the catalogue
//! - [`walk`]: whether a fault shows, stays and goes
//! - [`script`]: replays the scripted attempts of a scenario file

pub mod action;
pub mod attempt;
mod causes;
pub mod compact;
pub mod course;
pub mod evidence;
pub mod experiment;
pub mod fairness;
pub mod guide;
pub mod heard;
mod help;
pub mod hinting;
pub mod judging;
pub mod kept_recording;
pub mod log;
pub mod note;
mod opened;
pub mod overview;
pub mod own;
pub mod pools;
pub mod readiness;
pub mod regrade;
mod right;
mod run;
pub mod save;
pub mod script;
pub mod seeds;
mod sheet;
pub mod steps;
pub mod still;
pub mod symptom;
pub mod tell;
pub mod trace;
pub mod truth;
pub mod view;
pub mod walk;
pub mod worksheet;

pub use action::{Action, Refusal};
pub use attempt::Session;
