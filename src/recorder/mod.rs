//! The recorder unit: amplifier, filters, converter.
//!
//! - [`settings`]: what can be set, and the choices
//! - [`filters`]: designs and the running filters
//! - [`converter`]: range, clipping, quantising
//! - [`mod@unit`]: the stages in their order: filters of the amplifier, clip, sample, quantise, filters behind the converter

pub mod converter;
pub mod filters;
pub mod settings;
pub mod unit;

pub use settings::{Change, Settings};
pub use unit::Unit;
