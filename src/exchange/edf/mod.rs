//! European Data Format: 16-bit samples in records of equal length under a header of ASCII fields (Kemp et al. 1992),
//! and EDF+, which adds a signal of annotations (Kemp & Olivan 2003; the text of both is at edfplus.info).
//!
//! Written: EDF+C with one signal and its annotations. No date and no names go into the header. The scale is the
//! rule of [`super::scale`]; its ends are rounded outward to the eight characters of their fields, and the samples are
//! put to the scale as it stands there, so that no value is off by more than half of the written step. The last
//! record is filled up with the last value; the annotation `end` tells where the recording ends.
//!
//! Read: EDF and EDF+C; one signal of any of them, chosen by label or number.

mod annotations;
mod fields;
mod reader;
mod writer;

pub use reader::{is_edf, read};
pub use writer::write;

/// Bytes of the fixed part of the header, and of each signal's part.
const HEADER: usize = 256;
/// Largest record that the standard recommends, bytes.
const MOST_RECORD: usize = 61_440;
/// Label of a signal of annotations.
const ANNOTATIONS: &str = "EDF Annotations";
/// Text of our own annotation at the end of the last sample.
const END: &str = "end";
