//! What goes to the standard output: results, nothing else.

use std::io::{self, ErrorKind, Write};

use crate::failure::{Failure, While};

/// Writes `text`. A reader that closes early, as `head` does, is not an error.
pub fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        result => result.while_doing(|| "writing the result".into()),
    }
}
