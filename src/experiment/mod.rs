//! An experiment: the same subject under two or more conditions, a table of counting windows, and what the table can show.
//!
//! - [`spec`]: the `[experiment]` table of a scenario file
//! - [`row`]: what is worked out of one counting window
//! - [`contrast`]: the mean of a condition, and the difference of two, each with its uncertainty
//! - [`fit`]: a recovery as one exponential, with an interval for its time constant
//! - [`judge`]: what was concluded, against what this subject's body did in the same windows

pub mod contrast;
pub mod fit;
pub mod judge;
pub mod row;
pub mod spec;

pub use contrast::{Contrast, Reading};
pub use row::Measured;
pub use spec::{Condition, Spec};
