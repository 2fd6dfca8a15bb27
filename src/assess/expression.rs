//! A number out of a short expression: `+ - * /`, brackets, decimal numbers, names. It is worked out while it is read, so
//! that there is no tree to keep; its length and depth are limited, and every text gives a number or an error.

#[cfg(feature = "desk")]
use std::fmt;

/// Longest expression, characters.
pub const MOST_CHARS: usize = 120;
/// Most signs and brackets within one another.
const MOST_DEPTH: usize = 12;

/// What an expression may name: what was typed for the window, and what is so in it.
pub const NAMES: [&str; 7] = ["n", "t", "multiplier", "rate", "n_true", "t_true", "rate_true"];

/// So many of them are what was typed.
const TYPED: usize = 4;

/// The numbers for [`NAMES`], in their order; NaN for what is not known.
pub type Numbers = [f64; NAMES.len()];

/// Why a text is no expression.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoExpression {
    /// The character, from 1, at which something else was expected.
    pub at: usize,
    /// What was expected.
    pub expected: Expected,
}

/// What was expected where an expression could not be read on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Expected {
    /// Fewer characters.
    Shorter,
    /// Fewer signs and brackets within one another.
    Flatter,
    /// A number, a name or an opening bracket.
    Term,
    /// One of the names.
    Name,
    /// A closing bracket.
    Close,
    /// A sign, or the end.
    Sign,
}

#[cfg(feature = "desk")]
impl fmt::Display for Expected {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            Expected::Shorter => write!(f, "at most {MOST_CHARS} characters"),
            Expected::Flatter => write!(f, "at most {MOST_DEPTH} signs and brackets within one another"),
            Expected::Term => f.write_str("a number, a name or ("),
            Expected::Name => write!(f, "one of {}", NAMES.join(", ")),
            Expected::Close => f.write_str(")"),
            Expected::Sign => f.write_str("+, -, *, / or the end"),
        }
    }
}

/// Whether a true value is named in an expression.
pub fn names_truth(text: &str) -> bool {
    let mut words = text.split(|c: char| !c.is_ascii_alphanumeric() && c != '_');
    words.any(|word| NAMES[TYPED..].iter().any(|name| word.eq_ignore_ascii_case(name)))
}

/// The value of an expression; not a finite number where something in it is not known, or is divided by zero.
pub fn value(text: &str, numbers: &Numbers) -> Result<f64, NoExpression> {
    if text.chars().count() > MOST_CHARS {
        return Err(NoExpression { at: MOST_CHARS + 1, expected: Expected::Shorter });
    }
    let mut reader = Reader { text, at: 0, depth: 0, numbers };
    let value = reader.sum()?;
    match reader.peek() {
        None => Ok(value),
        Some(_) => reader.wrong(Expected::Sign),
    }
}

struct Reader<'a> {
    text: &'a str,
    /// Bytes read so far.
    at: usize,
    depth: usize,
    numbers: &'a Numbers,
}

impl Reader<'_> {
    fn wrong(&self, expected: Expected) -> Result<f64, NoExpression> {
        Err(NoExpression { at: self.text[..self.at].chars().count() + 1, expected })
    }

    /// The next character that is no blank, which is not read yet.
    fn peek(&mut self) -> Option<u8> {
        let rest = &self.text[self.at..];
        self.at += rest.len() - rest.trim_start().len();
        self.text.as_bytes().get(self.at).copied()
    }

    /// What stands from here on as long as it is made of such characters. They are of ASCII, so that it ends between two.
    fn word(&mut self, belongs: fn(&u8) -> bool) -> &str {
        let rest = &self.text[self.at..];
        let word = &rest[..rest.bytes().take_while(belongs).count()];
        self.at += word.len();
        word
    }

    fn sum(&mut self) -> Result<f64, NoExpression> {
        let mut value = self.product()?;
        while let Some(sign @ (b'+' | b'-')) = self.peek() {
            self.at += 1;
            let other = self.product()?;
            value = if sign == b'+' { value + other } else { value - other };
        }
        Ok(value)
    }

    fn product(&mut self) -> Result<f64, NoExpression> {
        let mut value = self.term()?;
        while let Some(sign @ (b'*' | b'/')) = self.peek() {
            self.at += 1;
            let other = self.term()?;
            value = if sign == b'*' { value * other } else { value / other };
        }
        Ok(value)
    }

    fn term(&mut self) -> Result<f64, NoExpression> {
        let first = self.peek();
        let from = self.at;
        match first {
            Some(sign @ (b'-' | b'(')) => {
                if self.depth == MOST_DEPTH {
                    return self.wrong(Expected::Flatter);
                }
                self.at += 1;
                self.depth += 1;
                let value = if sign == b'-' { -self.term()? } else { self.sum()? };
                self.depth -= 1;
                if sign == b'-' {
                    return Ok(value);
                }
                if self.peek() != Some(b')') {
                    return self.wrong(Expected::Close);
                }
                self.at += 1;
                Ok(value)
            }
            Some(b'0'..=b'9' | b'.') => {
                let number = self.word(|b| b.is_ascii_digit() || *b == b'.').parse().ok();
                number.map_or_else(|| self.back(from, Expected::Term), Ok)
            }
            Some(b'a'..=b'z' | b'A'..=b'Z') => {
                let name = self.word(|b| b.is_ascii_alphanumeric() || *b == b'_').to_ascii_lowercase();
                match NAMES.iter().position(|known| *known == name) {
                    Some(k) => Ok(self.numbers[k]),
                    None => self.back(from, Expected::Name),
                }
            }
            _ => self.wrong(Expected::Term),
        }
    }

    /// The error about what began there.
    fn back(&mut self, from: usize, expected: Expected) -> Result<f64, NoExpression> {
        self.at = from;
        self.wrong(expected)
    }
}
