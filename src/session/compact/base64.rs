//! base64url without padding (RFC 4648, section 5): letters, digits, `-` and `_`, which mail, addresses and courseware
//! systems leave alone.

const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Why a text cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bad {
    /// A character that is no digit: its place from 0, and the character.
    Character(usize, char),
    /// A length that no bytes have.
    Length,
}

/// Bytes as text.
pub fn write(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 3);
    for three in bytes.chunks(3) {
        let bits =
            three.iter().fold(0_u32, |bits, byte| bits << 8 | u32::from(*byte)) << (8 * (3 - three.len()));
        for k in 0..=three.len() {
            text.push(char::from(DIGITS[(bits >> (18 - 6 * k) & 63) as usize]));
        }
    }
    text
}

/// Text as bytes.
pub fn read(text: &str) -> Result<Vec<u8>, Bad> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    let (mut bits, mut held) = (0_u32, 0);
    for (at, c) in text.chars().enumerate() {
        let digit = u8::try_from(c)
            .ok()
            .and_then(|c| DIGITS.iter().position(|d| *d == c))
            .ok_or(Bad::Character(at, c))?;
        bits = bits << 6 | digit as u32;
        held += 6;
        if held >= 8 {
            held -= 8;
            bytes.push((bits >> held) as u8);
            bits &= (1 << held) - 1;
        }
    }
    // What is left over are the zeros that filled the last digit up.
    if held >= 6 || bits != 0 { Err(Bad::Length) } else { Ok(bytes) }
}
