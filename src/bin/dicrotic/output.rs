//! What goes to the standard output: results, nothing else.

use std::io::{self, ErrorKind, Write};

use crate::failure::{Failure, While};
use crate::terminal;

/// Writes `text`. A reader that closes early, as `head` does, is not an error.
pub fn print(text: &str) -> Result<(), Failure> {
    put(&terminal::harmless(text)).map(|_| ())
}

/// Writes a line of data as it is, at once; whether anybody still reads.
pub fn line(text: &str) -> Result<bool, Failure> {
    put(&format!("{text}\n"))
}

fn put(text: &str) -> Result<bool, Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(false),
        result => result.map(|()| true).while_doing(|| "writing the result".into()),
    }
}
