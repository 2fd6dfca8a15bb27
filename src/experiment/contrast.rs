//! The mean of a condition, and the difference of two, each with its uncertainty (one standard deviation).

use crate::deed::Measure;

/// A value with its uncertainty, one standard deviation, in the same unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The value.
    pub value: f64,
    /// The uncertainty.
    pub u: f64,
}

/// How far a resting body differs from itself, from one counting window to the next, whoever counts: one standard deviation of a
/// window of `seconds` about its own mean. The rate wanders by some 2 beats/min from one quarter of a minute to the next and
/// averages out over longer ones; heights by a twentieth and swings by a quarter (design defaults, held against the simulated
/// subjects in `tests/experiment_protocols.rs`).
pub fn by_itself(measure: Measure, value: f64, seconds: f64) -> f64 {
    match measure {
        Measure::Rate => 1.8 * (15.0 / seconds).sqrt(),
        Measure::Amplitude => 0.05 * value.abs() * (15.0 / seconds).sqrt(),
        Measure::Swing => 0.25 * value.abs() * (30.0 / seconds).sqrt().min(1.5),
    }
}

/// The mean of readings of one condition; each comes with the length of its window, s. Its uncertainty is the greatest of what
/// the single windows leave, what they differ among each other, and what a body differs from itself; `None` of none.
pub fn mean(measure: Measure, readings: &[(Reading, f64)]) -> Option<Reading> {
    let expected = expected(measure, readings)?;
    let k = readings.len() as f64;
    let squares: f64 =
        readings.iter().map(|(r, _)| (r.value - expected.value) * (r.value - expected.value)).sum();
    let spread = if readings.len() > 1 { (squares / (k - 1.0) / k).sqrt() } else { 0.0 };
    Some(Reading { u: expected.u.max(spread), ..expected })
}

/// The same with the uncertainty that windows of this number and length are expected to leave, whatever they happen to differ
/// among each other: two that agree by chance are not surer than that, two that do not are not always less sure.
pub fn expected(measure: Measure, readings: &[(Reading, f64)]) -> Option<Reading> {
    let k = readings.len() as f64;
    if readings.is_empty() {
        return None;
    }
    let value = readings.iter().map(|(r, _)| r.value).sum::<f64>() / k;
    let over = |sum: f64| sum.sqrt() / k;
    let counted = over(readings.iter().map(|(r, _)| r.u * r.u).sum());
    let own = |seconds: f64| by_itself(measure, value, seconds);
    let natural = over(readings.iter().map(|(_, s)| own(*s) * own(*s)).sum());
    Some(Reading { value, u: counted.max(natural) })
}

/// Two conditions beside each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contrast {
    /// The first one's mean.
    pub first: Reading,
    /// The last one's.
    pub last: Reading,
    /// The last less the first.
    pub difference: Reading,
    /// What windows of their number and length are expected to leave open in the difference.
    pub expected_u: f64,
}

impl Contrast {
    /// Compares the readings of two conditions; `None` where one has none.
    pub fn of(measure: Measure, first: &[(Reading, f64)], last: &[(Reading, f64)]) -> Option<Self> {
        let both = |a: f64, b: f64| (a * a + b * b).sqrt();
        let expected_u = both(expected(measure, first)?.u, expected(measure, last)?.u);
        let (first, last) = (mean(measure, first)?, mean(measure, last)?);
        let difference = Reading { value: last.value - first.value, u: both(first.u, last.u) };
        Some(Self { first, last, difference, expected_u })
    }
}
