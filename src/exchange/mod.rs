//! What comes in from other tools and what goes out to them.
//!
//! | module | what lives there |
//! |---|---|
//! | [`csv`] | recordings as tables of text: reader and writer |

pub mod csv;
