//! What can be read off a recording, whoever made it: nothing here knows how the samples came about.
//!
//! | module | what lives there |
//! |---|---|
//! | [`detect`] | finds the beats |

pub mod detect;
