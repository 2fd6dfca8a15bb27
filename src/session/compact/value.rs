//! Numbers, words and texts as bytes. The first byte says what follows:
//!
//! | byte | what |
//! |---|---|
//! | 0, 1, 2 | null, false, true |
//! | 3 | text: its length, UTF-8 |
//! | 4 | a word of [`super::table::WORDS`]: its number |
//! | 5 | a number as it is: eight bytes, IEEE 754, low ones first |
//! | 6 | anything else: its JSON as text |
//! | 7 | nothing: the field is left out |
//! | 8 to 14 | a decimal with 0 to 6 places: its digits as a whole number, sign in the lowest bit |
//! | 16 to 255 | the whole number 0 to 239 |

use super::CodeError;
use super::table::WORDS;
use serde_json::Value;

const NULL: u8 = 0;
const FALSE: u8 = 1;
const TRUE: u8 = 2;
const TEXT: u8 = 3;
const WORD: u8 = 4;
const RAW: u8 = 5;
const JSON: u8 = 6;
const NONE: u8 = 7;
const DECIMAL: u8 = 8;
/// Most decimal places that are written as digits.
const MOST_PLACES: u8 = 6;
const SMALL: u8 = 16;

/// Adds a whole number, seven bits a byte, low ones first.
pub fn put_whole(bytes: &mut Vec<u8>, mut number: u64) {
    while number > 0x7f {
        bytes.push(number as u8 | 0x80);
        number >>= 7;
    }
    bytes.push(number as u8);
}

/// Adds a text with its length.
pub fn put_text(bytes: &mut Vec<u8>, text: &str) {
    put_whole(bytes, text.len() as u64);
    bytes.extend(text.as_bytes());
}

/// Adds a value.
pub fn put(bytes: &mut Vec<u8>, value: &Value) {
    match value {
        Value::Null => bytes.push(NULL),
        Value::Bool(on) => bytes.push(if *on { TRUE } else { FALSE }),
        Value::String(text) => match WORDS.iter().position(|word| word == text) {
            Some(k) => {
                bytes.push(WORD);
                put_whole(bytes, k as u64);
            }
            None => {
                bytes.push(TEXT);
                put_text(bytes, text);
            }
        },
        Value::Number(number) => put_number(bytes, number),
        other => {
            bytes.push(JSON);
            put_text(bytes, &other.to_string());
        }
    }
}

/// Adds the mark of a field that is left out.
pub fn put_none(bytes: &mut Vec<u8>) {
    bytes.push(NONE);
}

fn put_number(bytes: &mut Vec<u8>, number: &serde_json::Number) {
    let exact = number.as_f64().unwrap_or_default();
    if let Some(small) = number.as_u64().or(whole(exact)).filter(|n| *n < u64::from(u8::MAX - SMALL) + 1) {
        bytes.push(SMALL + small as u8);
        return;
    }
    match (0..=MOST_PLACES).find_map(|places| digits(exact, places).map(|d| (places, d))) {
        Some((places, digits)) => {
            bytes.push(DECIMAL + places);
            put_whole(bytes, digits);
        }
        None => {
            bytes.push(RAW);
            bytes.extend(exact.to_le_bytes());
        }
    }
}

/// A number that is whole and not below zero, nor the zero with a sign.
fn whole(v: f64) -> Option<u64> {
    (v.is_sign_positive() && v < 1e15 && v == v.floor()).then_some(v as u64)
}

/// The digits of a number with so many decimal places, sign in the lowest bit; none if it would not come back exactly.
fn digits(v: f64, places: u8) -> Option<u64> {
    let size = v.abs();
    let digits = (size * power(places)).round();
    let exact = digits < 1e15 && digits / power(places) == size && (v != 0.0 || v.is_sign_positive());
    exact.then(|| (digits as u64) << 1 | u64::from(v < 0.0))
}

fn power(places: u8) -> f64 {
    [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6][usize::from(places.min(MOST_PLACES))]
}

/// Takes bytes apart.
pub struct Reader<'a> {
    bytes: &'a [u8],
}

impl<'a> Reader<'a> {
    /// A reader of these bytes.
    pub fn new(bytes: &'a [u8]) -> Self {
        Self { bytes }
    }

    /// Whether nothing is left.
    pub fn is_empty(&self) -> bool {
        self.bytes.is_empty()
    }

    fn take(&mut self, n: usize) -> Result<&'a [u8], CodeError> {
        let (taken, rest) = self.bytes.split_at_checked(n).ok_or(CodeError::Damaged)?;
        self.bytes = rest;
        Ok(taken)
    }

    /// The next byte.
    pub fn byte(&mut self) -> Result<u8, CodeError> {
        self.take(1).map(|b| b[0])
    }

    /// The next whole number.
    pub fn whole(&mut self) -> Result<u64, CodeError> {
        let mut number = 0_u64;
        for shift in (0..64).step_by(7) {
            let byte = self.byte()?;
            let part = u64::from(byte & 0x7f);
            if shift == 63 && part > 1 {
                break;
            }
            number |= part << shift;
            if byte < 0x80 {
                return Ok(number);
            }
        }
        Err(CodeError::Content("a whole number of more than 64 bits".into()))
    }

    /// The next text.
    pub fn text(&mut self) -> Result<String, CodeError> {
        let length = usize::try_from(self.whole()?).map_err(|_| CodeError::Damaged)?;
        let bytes = self.take(length)?;
        String::from_utf8(bytes.to_vec()).map_err(|_| CodeError::Content("a text that is not UTF-8".into()))
    }

    /// The next value, or none for a field that is left out.
    pub fn field(&mut self) -> Result<Option<Value>, CodeError> {
        if self.bytes.first() == Some(&NONE) {
            self.byte()?;
            return Ok(None);
        }
        self.value().map(Some)
    }

    /// The next value.
    pub fn value(&mut self) -> Result<Value, CodeError> {
        let content = |what: &str| CodeError::Content(what.into());
        Ok(match self.byte()? {
            NULL => Value::Null,
            FALSE => Value::Bool(false),
            TRUE => Value::Bool(true),
            TEXT => Value::from(self.text()?),
            WORD => {
                let k = usize::try_from(self.whole()?).unwrap_or(usize::MAX);
                Value::from(*WORDS.get(k).ok_or_else(|| content("a word that this version does not know"))?)
            }
            RAW => {
                let mut eight = [0; 8];
                eight.copy_from_slice(self.take(8)?);
                let number = serde_json::Number::from_f64(f64::from_le_bytes(eight));
                Value::Number(number.ok_or_else(|| content("a number that is none"))?)
            }
            JSON => crate::plain::value(&self.text()?).map_err(|e| CodeError::Content(e.to_string()))?,
            kind if (DECIMAL..=DECIMAL + MOST_PLACES).contains(&kind) => {
                let number = self.whole()?;
                let size = (number >> 1) as f64 / power(kind - DECIMAL);
                let (places, sign) = (kind - DECIMAL, if number & 1 == 1 { -1.0 } else { 1.0 });
                // A whole number stays one: a sampling rate is no decimal.
                if places == 0 && sign > 0.0 { Value::from(number >> 1) } else { Value::from(sign * size) }
            }
            kind if kind >= SMALL => Value::from(kind - SMALL),
            kind => return Err(content(&format!("a value of kind {kind}"))),
        })
    }
}
