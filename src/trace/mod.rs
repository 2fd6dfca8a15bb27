//! The trace: from time base and range to columns of pixels.
//!
//! - [`frame`]: which stretch of time and which volts the trace shows, and where that lies in pixels
//! - [`live`]: the last screen of live samples, drawn as a sweep, only what is new
//! - [`listen`]: the live signal for the ear
//! - [`columns`]: lowest and highest value of each column of pixels
//! - [`axes`]: grid, ticks and labels, on any plotters backend
//! - [`charts`]: still charts of a recording, on any plotters backend

pub mod axes;
pub mod charts;
pub mod columns;
pub mod frame;
pub mod listen;
pub mod live;
pub mod svg;
