//! A seed for each student of a class, from the assignment's key and the student's own code. Neighbours get different
//! traces, and whoever knows key and code can make anyone's again.
//!
//! `seed = first 8 bytes, high ones first, of SHA-256("dicrotic seed 1\n" key "\n" code "\n" try)`, with the key
//! [`tidied`](tidy), the student's code [as it counts](code) and the try as decimal digits. A seed that the page writes is the number in decimal digits.

use crate::unseen;
use sha2::{Digest, Sha256};

/// What stands before key and code, so that no other use of the hash gives the same.
const DOMAIN: &str = "dicrotic seed 1";
/// So many characters of a student's code count.
pub const MOST_CODE: usize = 60;
/// Most characters of it that are kept, with those that do not count.
const MOST_TYPED: usize = 200;

/// The seed of a student's `attempt`-th try, from 1. For a seed that everybody shares the code is empty.
pub fn seed(key: &str, student: &str, attempt: u32) -> u64 {
    let told = format!("{DOMAIN}\n{}\n{}\n{attempt}", tidy(key), code(student));
    let hash = Sha256::digest(told.as_bytes());
    hash[..8].iter().fold(0, |seed, byte| seed << 8 | u64::from(*byte))
}

/// Key or code as it counts: what people type differently without meaning it is taken away. Wide forms of ASCII become
/// ASCII (the part of NFKC that keyboards of East Asia make), all blanks, control characters, hyphens of any kind and
/// whatever [nobody sees](unseen::is_ignored) fall away, letters become small. Accents stay: é in one character and in two are different codes.
pub fn tidy(code: &str) -> String {
    code.chars().flat_map(tidied).collect()
}

/// What a character of a code counts as.
fn tidied(c: char) -> impl Iterator<Item = char> {
    let c = match c {
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(c) - 0xfee0).unwrap_or(c),
        c => c,
    };
    Some(c)
        .filter(|c| !(c.is_whitespace() || c.is_control() || is_joint(*c)))
        .into_iter()
        .flat_map(char::to_lowercase)
}

/// A student's code as it is kept: as it was typed, without blanks and unseen characters at its ends, up to as many characters as count, and with blanks in the place of what [acts](unseen::acts) unseen. What a longer one
/// goes on with does not count anywhere: seed, result and list are made from what this leaves. Doing it again changes nothing.
pub fn kept(typed: &str) -> String {
    let blank = |c: char| c.is_whitespace() || unseen::is_ignored(c);
    let mut counted = 0;
    let within = |c: &char| {
        counted += tidied(*c).count();
        counted <= MOST_CODE
    };
    let typed = unseen::without(typed);
    let kept: String = typed.trim_matches(blank).chars().take(MOST_TYPED).take_while(within).collect();
    kept.trim_end_matches(blank).into()
}

/// A student's code as it counts: what is [kept] of it, [tidied](tidy).
pub fn code(typed: &str) -> String {
    tidy(&kept(typed))
}

/// Hyphens, dashes, and characters that nobody sees.
fn is_joint(c: char) -> bool {
    matches!(c, '-' | '_' | '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{fe63}') || unseen::is_ignored(c)
}
