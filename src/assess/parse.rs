//! What was typed, as numbers. A field that cannot be read costs nothing and is explained.

use serde::{Deserialize, Serialize};

/// Longest text that is looked at, characters.
pub const MOST_CHARACTERS: usize = 40;

/// Why a text is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Problem {
    /// Nothing was typed.
    Empty,
    /// No number can be read.
    NotANumber,
    /// A point and a comma, or several: it is not clear which one is the decimal sign.
    TwoSigns,
    /// Below zero.
    Negative,
    /// Longer than a number needs to be.
    TooLong,
    /// Divided by zero.
    DividedByZero,
}

/// Reads a number as people type it: decimal point or comma, blanks around it, a trailing unit that the field asks
/// for anyway. A quotient such as `60/15` is worked out.
pub fn number(text: &str) -> Result<f64, Problem> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Problem::Empty);
    }
    if text.chars().count() > MOST_CHARACTERS {
        return Err(Problem::TooLong);
    }
    let text = without_recorder(without_plus_minus(text));
    if let Some((top, low)) = text.split_once(['/', ':', '\u{00f7}']) {
        let (top, low) = (plain(top.trim())?, plain(without_recorder(low.trim()))?);
        if low == 0.0 {
            return Err(Problem::DividedByZero);
        }
        return Ok(top / low);
    }
    plain(text)
}

/// Without a plus-minus sign in front, as an uncertainty is written.
fn without_plus_minus(text: &str) -> &str {
    let signs = ["\u{00b1}", "+/-", "+-", "+\u{2212}", "+/\u{2212}"];
    signs.iter().find_map(|sign| text.strip_prefix(sign)).map_or(text, str::trim_start)
}

/// Reads a time in seconds; `1:05` and `0:13` are minutes and seconds.
pub fn seconds(text: &str) -> Result<f64, Problem> {
    let clock = |text: &str| {
        let (minutes, rest) = text.trim().split_once(':')?;
        let digits =
            |s: &str, most: usize| (1..=most).contains(&s.len()) && s.bytes().all(|b| b.is_ascii_digit());
        let whole = rest.split(['.', ',']).next()?;
        let fits = digits(minutes, 2) && whole.len() == 2 && digits(whole, 2);
        fits.then(|| Some(60.0 * plain(minutes).ok()? + plain(rest).ok()?)).flatten()
    };
    clock(text).map_or_else(|| number(text), Ok)
}

/// Units that may stand behind a number, longest first.
const UNITS: [&str; 12] = [
    "beats per minute",
    "beats/min",
    "beats / min",
    "seconds",
    "/min",
    "beats",
    "bpm",
    "min-1",
    "sec",
    "min\u{207b}\u{00b9}",
    "s",
    "x",
];

fn without_recorder(text: &str) -> &str {
    let text = text.trim_start_matches(['\u{00d7}', 'x', 'X', '=', '~', '\u{2248}']).trim();
    let found = UNITS.iter().find_map(|unit| {
        let cut = text.len().checked_sub(unit.len())?;
        (text.is_char_boundary(cut) && text[cut..].eq_ignore_ascii_case(unit)).then(|| text[..cut].trim_end())
    });
    // "s" alone is no number with a unit.
    match found {
        Some(rest) if !rest.is_empty() => rest,
        _ => text,
    }
}

fn plain(text: &str) -> Result<f64, Problem> {
    let text = text.replace('\u{2212}', "-");
    let digits = text.strip_prefix('-').unwrap_or(&text);
    let digits = digits.strip_prefix('+').unwrap_or(digits);
    let known = digits.chars().all(|c| c.is_ascii_digit() || c == '.' || c == ',');
    if !known || !digits.chars().any(|c| c.is_ascii_digit()) {
        return Err(Problem::NotANumber);
    }
    if digits.chars().filter(|c| *c == '.' || *c == ',').count() > 1 {
        return Err(Problem::TwoSigns);
    }
    let value: f64 = digits.replace(',', ".").parse().map_err(|_| Problem::NotANumber)?;
    if text.starts_with('-') && value != 0.0 {
        return Err(Problem::Negative);
    }
    Ok(value)
}

/// Whether a number was typed as a quotient, as `60/15`.
pub fn is_quotient(text: &str) -> bool {
    text.contains(['/', ':', '\u{00f7}']) && number(text).is_ok() && !number_has_unit_slash(text)
}

/// The stroke may be that of a unit, as in `4 /min`.
fn number_has_unit_slash(text: &str) -> bool {
    !without_recorder(text.trim()).contains(['/', ':', '\u{00f7}'])
}

/// Reads a voltage in millivolts: `100`, `100 mV`, `0.1 V`, with a plus-minus sign in front or without.
pub fn millivolts(text: &str) -> Result<f64, Problem> {
    let bare = text.trim().trim_start_matches(['\u{00b1}', '+', '-', '\u{2212}', '/']).trim();
    let ends = |unit: &str| {
        let cut = bare.len().checked_sub(unit.len())?;
        (bare.is_char_boundary(cut) && bare[cut..].eq_ignore_ascii_case(unit)).then(|| bare[..cut].trim_end())
    };
    match (ends("mV"), ends("V")) {
        (Some(rest), _) if !rest.is_empty() => number(rest),
        (None, Some(rest)) if !rest.is_empty() => Ok(1000.0 * number(rest)?),
        _ => number(bare),
    }
}
