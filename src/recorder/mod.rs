//! The recorder: amplifier, filters, converter.
//!
//! - [`settings`]: what can be set, and the choices
//! - [`filters`]: designs and the running filters
//! - [`converter`]: range, clipping, quantising
//! - [`calibrator`]: a known square wave in the place of the input
//! - [`device`]: the stages in their order: filters of the amplifier, clip, sample, quantise, filters behind the converter

pub mod calibrator;
pub mod converter;
pub mod device;
pub mod filters;
pub mod settings;

pub use device::Recorder;
pub use settings::{Change, Settings};
