//! Still charts of a recording, on any plotters backend: the page's canvas, SVG, PNG.
//!
//! Each chart has its own file, in two parts: what is shown is worked out first, from samples or beat times, and may
//! fail with a [`ChartError`]; drawing it needs only that, a [`Look`] and words, as no word of a chart comes from here
//! (unit symbols apart).
//!
//! | module | what lives there |
//! |---|---|
//! | [`trace`] | a stretch of the recording over time |
//! | [`rate`] | the instantaneous rate over time, with its mean |
//! | [`spectrum`], [`lines`] | how much of the stretch lies at which frequency; which lines in it are pulse or power line |
//! | [`beat`] | the mean beat with its landmarks, and how single beats spread about it |
//! | [`table`] | measurements by condition or over time, with a curve |
//! | [`look`] | the two themes, lettering and scale |
//! | `pen` | lines, notes and dots in the chart's look |
//! | `paper` | the sheet: size, heading, the plot's place |
//! | [`error`] | why a chart cannot be drawn |
//! | `file`, `raster` | a chart as a file: SVG and PNG, on native targets |

pub mod beat;
pub mod error;
#[cfg(not(target_family = "wasm"))]
pub mod file;
pub mod lines;
pub mod look;
mod paper;
mod pen;
#[cfg(not(target_family = "wasm"))]
pub mod raster;
pub mod rate;
pub mod spectrum;
pub mod table;
pub mod trace;

pub use error::ChartError;
pub use look::Look;
pub use paper::Heading;
