//! What can be read off a recording, whoever made it: nothing here knows how the samples came about.
//!
//! | module | what lives there |
//! |---|---|
//! | [`detect`] | finds the beats |
//! | [`quality`] | how clean a stretch is: hum, clipping, drift, likeness of beats |

pub mod detect;
pub mod quality;
