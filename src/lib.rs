//! Dicrotic simulates the signal chain of a finger-pulse bench, measures what it records and judges how it was
//! measured.
//!
//! The map, in the order in which modules may import each other (never upward):
//!
//! | module | what lives there |
//! |---|---|
//! | [`math`], [`units`], [`rng`] | arithmetic that gives the same bits everywhere; checked quantities; seeded streams |
//! | [`unseen`] | characters that act without being seen, in texts of others |
//! | [`plain`] | values that came in as TOML or JSON, from which structures are read |
//! | [`physiology`] | the subject: rhythm (owner of the true beats), breathing, pulse wave, manoeuvres |
//! | [`mod@bench`] | the table: parts, plugs, the sensor's cable, the strap |
//! | [`pickup`] | what gets in between skin and input: contact, movement, hum, a loose plug |
//! | [`recorder`] | amplifier, filters, converter |
//! | [`chain`] | all stages in their order, running |
//! | [`deed`] | what can be done: one vocabulary for logs, scripts, judgement and page |
//! | [`recording`] | samples, their settings, minima and maxima at every scale |
//! | [`trace`] | from time base and range to pixels |
//! | [`dsp`] | filters and transforms over whole records, for [`measure`] |
//! | [`measure`] | beats, variability and quality of a recording, without knowing the heart |
//! | [`fingertip`] | one's own pulse: colors of a fingertip on a camera in, a rate or a reason out; taps |
//! | [`assess`] | how it was measured, judged step by step |
//! | [`experiment`] | conditions, a table of measurements, what it can show |
//! | [`scenario`] | scenario files |
//! | [`session`] | an attempt: actions, log, replay |
//! | [`exchange`] | files that others read and write |

pub mod assess;
pub mod bench;
pub mod chain;
pub mod deed;
pub mod dsp;
pub mod exchange;
pub mod experiment;
pub mod fingertip;
pub mod math;
pub mod measure;
pub mod physiology;
pub mod pickup;
pub mod plain;
pub mod recorder;
pub mod recording;
pub mod rng;
pub mod scenario;
pub mod session;
pub mod trace;
pub mod units;
pub mod unseen;
#[cfg(target_family = "wasm")]
pub mod web;
