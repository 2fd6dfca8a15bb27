//! How far a rate that was counted in a window can be trusted, against what the student put down.

use super::sheet::Sheet;
use super::task::{Field, Reads};
use super::verdict::{Finding, Step, Verdict, finding, missing, short};
use crate::plain::json;

/// Standard deviation of a count in a window put down without looking at the beats, in counts: 1 / sqrt 6 (two edges, each
/// uniform over one interval).
pub const SD_COUNT: f64 = 0.408_248_290_463_863;

/// How far apart the lowest and the highest uncertainty lie that a count in `seconds` supports, beats/min. The lower is the
/// standard deviation 0.41 x 60/T of a count in a window put down without looking (1/sqrt 6 counts), the higher one whole
/// count, 60/T; where two windows were compared and differ by more, that difference. Both are rounded outwards to
/// whole beats, as one would write them.
pub fn supported(seconds: f64, difference: Option<f64>) -> (f64, f64) {
    let count = 60.0 / seconds;
    let low = SD_COUNT * count;
    let low = if low >= 1.0 { low.floor() } else { 0.8 * low };
    (low, count.max(difference.unwrap_or(0.0)).ceil())
}

/// The uncertainty as typed; a remark where it need not be given.
pub(super) fn uncertainty(sheet: &Sheet, required: bool) -> Option<Finding> {
    let bad = if required { Verdict::Wrong } else { Verdict::Note };
    let Some(typed) = sheet.written.get(Field::Uncertainty) else {
        return required.then(|| missing(Step::Uncertainty, "uncertainty_missing"));
    };
    let lengths = [sheet.cursors, sheet.first.filter(|_| required)];
    let shortest = lengths.iter().flatten().map(|(a, b)| (b - a).abs()).fold(f64::INFINITY, f64::min);
    if !(shortest.is_finite() && shortest > 0.0) {
        return required.then(|| missing(Step::Uncertainty, "uncertainty_missing"));
    }
    let difference = sheet.typed.rate.zip(sheet.typed_first.rate).map(|(x, y)| (x - y).abs());
    let (low, high) = supported(shortest, difference.filter(|_| required));
    let args = json!({"typed": short(typed), "seconds": short(shortest)});
    let of = |verdict, code| Some(finding(Step::Uncertainty, verdict, code, args));
    // Timing a run of intervals does better than a count: to within the reading of two cursors.
    let low = if sheet.task.reads() == Reads::Intervals { 0.05 } else { low };
    if typed + 1e-9 < low {
        of(bad, "uncertainty_small")
    } else if typed > high + 1e-9 {
        of(bad, "uncertainty_large")
    } else {
        of(Verdict::Right, "uncertainty_right")
    }
}
