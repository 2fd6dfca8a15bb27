//! Where the window lies, against what the question asks of it.

use super::sheet::Sheet;
use super::task::Field;
use super::verdict::{Finding, Step, Verdict, finding, judge_window, missing, right, short, wrong};
use super::window::{feet, spanned};
use crate::plain::json;

/// How far a given window's length may be off, s: cursors are put by hand.
const GIVEN_S: f64 = 0.5;
/// How far the time of a window's middle may be off, s.
const MIDDLE_S: f64 = 1.0;

/// The window against what the question asks of it.
pub(super) fn window_asked(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
    let Some((a, b)) = window.filter(|(a, b)| b > a) else {
        return missing(Step::Window, "window_missing");
    };
    let seconds = b - a;
    if let Some(asked) = sheet.task.seconds {
        let args = json!({"asked": asked, "seconds": short(seconds)});
        return if (seconds - asked).abs() <= GIVEN_S {
            finding(Step::Window, Verdict::Right, "window_good", json!({"seconds": short(seconds)}))
        } else {
            wrong(Step::Window, "window_not_given", args)
        };
    }
    if let Some(least) = sheet.task.at_least_s
        && seconds + 0.05 < least
    {
        return wrong(Step::Window, "window_short", json!({"seconds": short(seconds), "need": least}));
    }
    let common = judge_window(sheet.criteria, window);
    if common.is_wrong() {
        return common;
    }
    let Some(within) = sheet.task.within_s else {
        return too_long(sheet, seconds).unwrap_or(common);
    };
    let Some(ended) = sheet.exercise_ended_s.filter(|ended| *ended <= 0.5 * (a + b)) else {
        return wrong(Step::Window, "window_no_exercise", json!({}));
    };
    if let Some(finding) = too_long(sheet, seconds) {
        return finding;
    }
    let middle = 0.5 * (a + b) - ended;
    if middle > within {
        return wrong(Step::Window, "window_late", json!({"within": within}));
    }
    common
}

/// A window that is longer than was asked for.
pub(super) fn too_long(sheet: &Sheet, seconds: f64) -> Option<Finding> {
    let most = sheet.task.longest_s.filter(|most| seconds > most + GIVEN_S)?;
    Some(wrong(Step::Window, "window_long", json!({"seconds": short(seconds), "most": most})))
}

/// Both cursors on the same feature of two beats: the finding, and how many intervals lie between them.
pub(super) fn same_features(sheet: &Sheet) -> (Finding, Option<u32>) {
    let Some((a, b)) = sheet.window().filter(|(a, b)| b > a) else {
        return (missing(Step::Window, "window_missing"), None);
    };
    let (peaks, delay_s) = (sheet.reference.peaks, sheet.reference.delay_s);
    // The time from foot to peak is not quite the same in every beat: what is no run of peaks may be one of feet.
    let by_feet = || spanned(&feet(peaks, sheet.landmarks, delay_s), 0.0, a, b);
    let by_peaks = spanned(peaks, delay_s, a, b);
    let strays = |found: &(u32, f64)| found.1 > sheet.criteria.edge_s;
    let by_feet = by_peaks.filter(strays).and_then(|_| by_feet().filter(|found| !strays(found)));
    let Some((spanned, off)) = by_feet.or(by_peaks) else {
        return (missing(Step::Window, "window_missing"), None);
    };
    if off > sheet.criteria.edge_s {
        return (wrong(Step::Window, "window_mixed", json!({})), Some(spanned));
    }
    match sheet.task.n.filter(|n| *n != spanned) {
        Some(asked) => (wrong(Step::Window, "window_other_n", json!({"asked": asked})), Some(spanned)),
        None => {
            let args = json!({"seconds": short(b - a)});
            (finding(Step::Window, Verdict::Right, "window_good", args), Some(spanned))
        }
    }
}

/// The second window, which is to say something that the first does not.
pub(super) fn apart(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
    let judged = judge_window(sheet.criteria, window);
    if judged.is_wrong() {
        return judged;
    }
    match (window, sheet.first_window()) {
        (Some((a, b)), Some((c, d))) => {
            let shared = (b.min(d) - a.max(c)).max(0.0);
            if shared > 0.5 * (b - a).min(d - c) {
                wrong(Step::Window, "window_overlap", json!({}))
            } else {
                judged
            }
        }
        _ => judged,
    }
}

/// The time of the window's middle after the end of exercise.
pub(super) fn middle(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
    let (Some(typed), Some((a, b)), Some(ended)) =
        (sheet.written.get(Field::Middle), window, sheet.exercise_ended_s)
    else {
        return missing(Step::Middle, "middle_missing");
    };
    let off = |t: f64| (typed - t).abs();
    let args = json!({"typed": short(typed)});
    if off(0.5 * (a + b) - ended) <= MIDDLE_S {
        return right(Step::Middle, "middle_right");
    }
    // Two slips may lead to the same time; then none is named.
    let (start, middle) = (off(a - ended), off(0.5 * (a + b)));
    let code = match (start <= MIDDLE_S, middle <= MIDDLE_S) {
        _ if off(-ended) <= start.min(middle) => "middle_wrong",
        (true, true) if (start - middle).abs() < 0.5 * MIDDLE_S => "middle_wrong",
        (true, _) if start <= middle => "middle_start",
        (_, true) => "middle_recording",
        _ => "middle_wrong",
    };
    wrong(Step::Middle, code, args)
}
