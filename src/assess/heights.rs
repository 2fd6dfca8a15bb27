//! The range and the height of a beat, as they are read off the trace.

use super::sheet::Sheet;
use super::task::Field;
use super::verdict::{Finding, Step, missing, right, short, wrong};
use crate::plain::json;

/// The range to one side of zero, in millivolts.
pub(super) fn range(sheet: &Sheet) -> Finding {
    let Some(typed) = sheet.written.get(Field::Range) else { return missing(Step::Range, "range_missing") };
    let is = |factor: f64| (typed / (1000.0 * sheet.range_v * factor) - 1.0).abs() <= 0.01;
    let args = json!({"typed": short(typed)});
    if is(1.0) {
        right(Step::Range, "range_right")
    } else if is(2.0) {
        wrong(Step::Range, "range_span", args)
    } else if is(0.001) || is(1000.0) {
        wrong(Step::Range, "range_unit", args)
    } else {
        wrong(Step::Range, "range_wrong", args)
    }
}

/// Cursor A at a foot, cursor B at the peak of the same beat, give or take a tenth of its height.
pub(super) fn foot_to_peak(sheet: &Sheet) -> Finding {
    let (Some((a, b)), Some((low, high))) = (sheet.cursors, sheet.values) else {
        return missing(Step::Window, "window_missing");
    };
    let near = |x: f64, t: f64| (x - t).abs() <= 0.12;
    let Some(beat) = sheet
        .landmarks
        .iter()
        .min_by(|x, y| (x.peak_s - b).abs().total_cmp(&(y.peak_s - b).abs()))
        .filter(|beat| near(beat.peak_s, b))
    else {
        return wrong(Step::Window, "window_not_peak", json!({}));
    };
    if !(near(beat.foot_s, a) && high - low >= 0.9 * beat.height) {
        return wrong(Step::Window, "window_not_foot", json!({}));
    }
    right(Step::Window, "window_foot_peak")
}

/// The height between the cursors in millivolts, whatever they stand on: where they should stand is judged by itself.
pub(super) fn amplitude(sheet: &Sheet) -> Finding {
    let (Some(typed), Some((low, high))) = (sheet.written.get(Field::Amplitude), sheet.values) else {
        return missing(Step::Amplitude, "amplitude_missing");
    };
    let height = 1000.0 * (high - low).abs();
    let args = json!({"typed": short(typed)});
    // Two figures off a readout, or an eye on the grid: five in a hundred.
    let is = |factor: f64| (typed - height * factor).abs() <= 0.05 * height * factor;
    if is(1.0) {
        right(Step::Amplitude, "amplitude_right")
    } else if is(0.001) || is(1000.0) {
        wrong(Step::Amplitude, "amplitude_unit", args)
    } else {
        wrong(Step::Amplitude, "amplitude_wrong", args)
    }
}
