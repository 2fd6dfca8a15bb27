//! What can be read off a recording, whoever made it: nothing here knows how the samples came about.
//!
//! | module | what lives there |
//! |---|---|
//! | [`detect`] | finds the beats |
//! | [`movement`] | how far the line goes beside the beats, and where |
//! | [`quality`] | how clean a stretch is: hum, clipping, drift, likeness of beats |
//! | [`variability`] | rates by three methods, and how much the intervals vary |
//! | [`landmarks`] | foot, peak, notch and second wave of a beat |

pub mod detect;
pub mod landmarks;
pub mod movement;
pub mod quality;
pub mod variability;
