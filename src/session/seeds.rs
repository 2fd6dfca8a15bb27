//! A seed for each student of a class, from the assignment's key and the student's own code. Neighbours get different
//! traces, and whoever knows key and code can make anyone's again.
//!
//! `seed = first 8 bytes, high ones first, of SHA-256("dicrotic seed 1\n" key "\n" code "\n" try)`, with key and code
//! [`tidied`](tidy) and the try as decimal digits. A seed that the page writes is the number in decimal digits.

use sha2::{Digest, Sha256};

/// What stands before key and code, so that no other use of the hash gives the same.
const DOMAIN: &str = "dicrotic seed 1";

/// The seed of a student's `attempt`-th try, from 1. For a seed that everybody shares the code is empty.
pub fn seed(key: &str, student: &str, attempt: u32) -> u64 {
    let told = format!("{DOMAIN}\n{}\n{}\n{attempt}", tidy(key), tidy(student));
    let hash = Sha256::digest(told.as_bytes());
    hash[..8].iter().fold(0, |seed, byte| seed << 8 | u64::from(*byte))
}

/// Key or code as it counts: what people type differently without meaning it is taken away. Wide forms of ASCII become
/// ASCII (the part of NFKC that keyboards of East Asia make), all blanks, control characters, joiners and hyphens of any
/// kind fall away, letters become small. Accents stay: é in one character and in two are different codes.
pub fn tidy(code: &str) -> String {
    code.chars()
        .map(|c| match c {
            '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(c) - 0xfee0).unwrap_or(c),
            c => c,
        })
        .filter(|c| !(c.is_whitespace() || c.is_control() || is_joint(*c)))
        .flat_map(char::to_lowercase)
        .collect()
}

/// Hyphens, dashes, and characters without width.
fn is_joint(c: char) -> bool {
    matches!(c, '-' | '_' | '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2010}'..='\u{2015}' | '\u{2060}' | '\u{2212}' | '\u{feff}')
}
