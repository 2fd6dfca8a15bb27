//! What comes in from other tools and what goes out to them.
//!
//! | module | what lives there |
//! |---|---|
//! | [`csv`] | recordings as tables of text: reader and writer |
//! | [`qr`] | a link as a picture that a telephone reads |
//! | [`handin`] | what students hand in: result files, grading by replay, a class |

pub mod csv;
pub mod handin;
pub mod qr;
