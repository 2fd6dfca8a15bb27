//! What can be done in an attempt: one vocabulary for logs, scripts, codes, judgement and page.
//!
//! - [`action`]: one action, as it stands in logs and scripts
//! - [`page`]: the actions on the trace and the worksheet
//! - [`experiment`]: what an experiment asks for and what is said of it
//! - [`field`]: the fields of the worksheet
//! - [`table`]: every action once: its name, its code, its nature, where it shows
//! - [`thing`]: what the hand is on: two changes of one thing are one change
//! - [`tell`]: what can tell one cause from another
//!
//! The actions at the bench, at the recorder and to the subject are declared beside their effects, in
//! [`mod@crate::bench`], [`crate::recorder::settings`] and [`crate::chain`]. [`table`] has a row for each; an action
//! without a row does not compile.

pub mod action;
pub mod experiment;
pub mod field;
pub mod page;
pub mod table;
pub mod tell;
pub mod thing;

pub use action::{Action, Unknown};
pub use experiment::{Direction, MEASURES, Measure};
pub use field::{FIELDS, Field};
pub use page::{Aid, Mode, Page, Which};
pub use table::{Kind, Lane, Nature, Pane, Row, Stage};
pub use tell::Tell;
pub use thing::Thing;
