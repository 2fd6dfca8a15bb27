//! WaveForm DataBase records: a header of text (`.hea`), samples (`.dat`) and MIT annotations (`.atr`), as the WFDB
//! Applications Guide describes them in header(5), signal(5) and annot(5) (from memory).
//!
//! Written: one signal in format 16 with its initial value and checksum; beat marks as normal beats, all other notes
//! as comments with their text. WFDB allows one annotation a sample: the notes of a sample are joined by `; `, and a
//! beat or a text for which there is no room goes to the next free sample.
//!
//! Read: one signal in format 8, 16, 61, 80, 160 or 212 of a record of one segment, with its annotations. The value that
//! each format keeps for a missing sample is filled in by a straight line, and noted.

mod annotations;
mod header;
mod reader;
mod samples;
mod writer;

pub use header::is_header;
pub use reader::{companions, read};
pub use writer::write;

/// The code of a missing sample in format 16. No sample is written with it.
const MISSING: i16 = i16::MIN;
