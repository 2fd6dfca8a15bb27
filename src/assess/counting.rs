//! The count against the window. The peaks in it decide; who counts feet, or begins with zero on a beat, may come to another number
//! by a method that is as right, and is told so.

use super::Criteria;
use super::verdict::{Finding, Reference, Step, Verdict, finding};
use super::window::{Allowed, allowed, feet, from_zero};
use crate::measure::landmarks::Landmarks;
use crate::plain::json;

/// Which counts a window allows, by each method.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Counts {
    /// Peaks.
    pub peaks: Allowed,
    /// Feet, where they are known.
    pub feet: Option<Allowed>,
    /// Peaks after the one that cursor A stands on.
    pub zero: Option<Allowed>,
}

impl Counts {
    /// The counts of a window.
    pub fn of(
        reference: &Reference,
        landmarks: &[Landmarks],
        (a, b): (f64, f64),
        criteria: &Criteria,
    ) -> Self {
        let (edge, delay) = (criteria.edge_s, reference.delay_s);
        let feet = feet(reference.peaks, landmarks, delay);
        Self {
            peaks: allowed(reference.peaks, a, b, edge, delay),
            zero: from_zero(reference.peaks, &feet, (a, b), edge, delay),
            feet: (!feet.is_empty()).then(|| allowed(&feet, a, b, edge, 0.0)),
        }
    }
}

/// The number of beats in a window.
pub(super) fn judge_count(count: Option<f64>, found: Option<Counts>) -> Finding {
    let (Some(count), Some(found)) = (count, found) else {
        let code = if count.is_none() { "count_missing" } else { "count_unplaced" };
        return finding(Step::Count, Verdict::Missing, code, json!({}));
    };
    let of = |verdict, code, args| finding(Step::Count, verdict, code, args);
    let peaks = found.peaks;
    // Where more beats are unsure than sure, no count can be told right from wrong; the trace comes first.
    if peaks.mostly_unsure() {
        return of(Verdict::Missing, "count_unsure", json!({}));
    }
    if count == peaks.exact as f64 {
        return of(Verdict::Right, "count_right", json!({}));
    }
    let zero = found.zero.filter(|z| z.holds(count));
    if zero.is_some_and(|z| count == z.exact as f64) {
        return of(Verdict::Right, "count_from_zero", json!({}));
    }
    if peaks.holds(count) {
        return of(Verdict::Edge, "count_edge", json!({}));
    }
    if zero.is_some() {
        return of(Verdict::Right, "count_from_zero", json!({}));
    }
    if found.feet.is_some_and(|f| f.holds(count)) {
        return of(Verdict::Right, "count_feet", json!({}));
    }
    let (least, most) = (peaks.least as f64, peaks.most as f64);
    let by = if count > most { count - most } else { count - least };
    let code = if by.abs() <= 1.0 {
        return of(Verdict::Wrong, "count_off_by", json!({}));
    } else if count >= 1.8 * least && count <= 2.0 * most + 1.0 {
        // Bumps counted as beats, or every other beat: within a tenth, since few count all of the bumps.
        "count_double"
    } else if count >= 0.5 * least - 1.0 && count <= 0.5 * most + 1.0 {
        "count_half"
    } else {
        "count_other"
    };
    of(Verdict::Wrong, code, json!({"typed": count}))
}

/// The number of intervals between the cursors; `asked` when they do not stand as far apart as was asked.
pub(super) fn judge_intervals(count: Option<f64>, spanned: Option<u32>, asked: Option<u32>) -> Finding {
    let of = |verdict, code, args| finding(Step::Count, verdict, code, args);
    let (Some(count), Some(spanned)) = (count, spanned.map(f64::from)) else {
        let code = if count.is_none() { "count_missing" } else { "count_unplaced" };
        return of(Verdict::Missing, code, json!({}));
    };
    let wrong = |code| of(Verdict::Wrong, code, json!({"typed": count}));
    if count == spanned {
        of(Verdict::Right, "count_right", json!({}))
    } else if asked.is_some_and(|n| count == f64::from(n)) {
        // The number that was asked for; where B has to go is told already.
        of(Verdict::Note, "count_waits", json!({}))
    } else if count == spanned + 1.0 {
        wrong("count_posts")
    } else if count == spanned - 1.0 {
        wrong("count_gaps_short")
    } else if (count - 2.0 * spanned).abs() <= 0.1 * spanned + 1.0 {
        wrong("count_double")
    } else if (count - 0.5 * spanned).abs() <= 1.0 {
        wrong("count_half")
    } else {
        wrong("count_other")
    }
}
