//! How many students with a right method a way of grading would fail.
//!
//! A student of the right method lays a window of the asked length anywhere on a clean record, counts the beats whose
//! peak lies in it, and multiplies by 60/T. Hand and eye put a cursor, or see a beat against it, a few hundredths of a
//! second off. Three ways of grading are compared on the same students: ours, which counts the beats in the student's
//! own window and holds none against them that lies at its edge; and two naive ones, which hold the rate against the
//! record's mean, or the count against the mean count, within a tolerance.

use super::attempt::{Session, peaks_of};
use crate::assess::window::{allowed, interval_rate};
use crate::rng::Stream;
use crate::scenario::ScenarioError;
use serde::Serialize;

/// How far the eye takes a beat beside a cursor for one on its other side, s, standard deviation (design default).
const EYE_S: f64 = 0.02;
/// Lowest and highest tolerance that is tried, beats/min.
pub const TOLERANCES_BPM: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];
/// Shortest record whose mean the naive way holds a rate against, s.
const MINUTE_S: f64 = 60.0;
/// Most students in one call.
pub const MOST_STUDENTS: u32 = 1000;

/// How many of so many students were failed.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Fairness {
    /// Students tried.
    pub students: u32,
    /// Students whose bench shows no beats to count; they are in none of the other numbers.
    pub without: u32,
    /// Failed by counting within the student's own window, edges allowed.
    pub own_window: u32,
    /// Failed by holding the count against the exact one, edges not allowed.
    pub exact_count: u32,
    /// Failed by holding the rate against the record's mean, for each of [`TOLERANCES_BPM`].
    pub record_mean: [u32; TOLERANCES_BPM.len()],
}

/// Tries students `first` up to `first + students` of a scenario, each with a seed and a window of their own. The window
/// has the length that the scenario asks for, or `window_s`.
pub fn fairness(
    text: &str,
    first: u64,
    students: u32,
    window_s: Option<f64>,
) -> Result<Fairness, ScenarioError> {
    let mut found = Fairness::default();
    for k in 0..u64::from(students.min(MOST_STUDENTS)) {
        let seed = crate::rng::mix(first + k);
        let mut session = Session::new(text, seed)?;
        let criteria = session.criteria();
        let length = window_s.unwrap_or(criteria.window_s).clamp(1.0, 600.0);
        let record = criteria.record_s.max(length + 3.0).max(MINUTE_S);
        let settle = 2.0;
        let Some(chain) = session.chain() else { continue };
        let rate = f64::from(chain.settings().rate_hz);
        session.run_long(((settle + record + 1.0) * rate) as u64);
        let peaks = session.chain().map(|c| peaks_of(c, settle, record)).unwrap_or_default();
        found.students += 1;
        let Some(mean) = interval_rate(&peaks, 0.0, record) else {
            found.without += 1;
            continue;
        };
        let mut draws = Stream::new(seed, "fairness");
        let a = draws.range(0.0, record - length);
        let b = a + length;
        let mut seen = 0_u32;
        for peak in peaks.iter().filter(|p| p.sure) {
            let eye = EYE_S * draws.normal();
            seen += u32::from(peak.at_s + eye >= a && peak.at_s + eye < b);
        }
        let counts = allowed(&peaks, a, b, criteria.edge_s, 0.0);
        let seen = seen as usize;
        found.own_window += u32::from(!(counts.least..=counts.most).contains(&seen));
        found.exact_count += u32::from(seen != counts.exact);
        let rate = (60.0 * seen as f64 / length).round();
        for (failed, tolerance) in found.record_mean.iter_mut().zip(TOLERANCES_BPM) {
            *failed += u32::from((rate - mean).abs() > tolerance);
        }
    }
    Ok(found)
}
