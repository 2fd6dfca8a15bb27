//! The verdict for each kind of question. What the kinds have in common is judged in [`super::verdict`]; what a kind
//! asks beyond that is judged here.

use super::Criteria;
use super::arithmetic::{Span, judge_multiplier, judge_rate, judge_seconds};
use super::counting::{Counts, judge_count, judge_intervals};
use super::task::{Field, Kind, Task};
use super::trace::Trace;
use super::verdict::{
    Finding, Reference, Report, Step, Typed, Verdict, finding, judge_plausible, judge_trace, judge_window,
    short,
};
use super::window::{Peak, allowed, feet};
use crate::measure::landmarks::Landmarks;
use crate::plain::json;
use serde_json::Value;

/// Standard deviation of a count in a window put down without looking at the beats, in counts: 1 / sqrt 6 (two edges, each
/// uniform over one interval).
pub const SD_COUNT: f64 = 0.408_248_290_463_863;
/// How far a given window's length may be off, s: cursors are put by hand.
const GIVEN_S: f64 = 0.5;
/// How far the time of a window's middle may be off, s.
const MIDDLE_S: f64 = 1.0;

/// Everything that a student has put down.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// What is asked.
    pub task: Task,
    /// What must be reached.
    pub criteria: &'a Criteria,
    /// The measured stretch, where it is judged at all.
    pub trace: Option<&'a Trace>,
    /// Cursor A and cursor B, s.
    pub cursors: Option<(f64, f64)>,
    /// The first of two windows, s.
    pub first: Option<(f64, f64)>,
    /// What was typed for the window.
    pub typed: Typed,
    /// What was typed for the first of two windows.
    pub typed_first: Typed,
    /// Uncertainty of the rate as typed, beats/min.
    pub uncertainty: Option<f64>,
    /// Time from the end of exercise to the window's middle as typed, s.
    pub middle: Option<f64>,
    /// Full-scale range as typed, mV.
    pub range_mv: Option<f64>,
    /// Height of a beat as typed, mV.
    pub amplitude_mv: Option<f64>,
    /// What it is judged against.
    pub reference: Reference<'a>,
    /// The beats' landmarks: for the height of a beat, and for who counts feet. May be empty where neither matters.
    pub landmarks: &'a [Landmarks],
    /// Values at cursor A and cursor B, V.
    pub values: Option<(f64, f64)>,
    /// Full-scale range to one side, V.
    pub range_v: f64,
    /// End of the exercise, s from the take's start (before it: negative).
    pub exercise_ended_s: Option<f64>,
}

impl Sheet<'_> {
    /// The window between the cursors in order of time, s.
    pub fn window(&self) -> Option<(f64, f64)> {
        self.cursors.map(|(a, b)| (a.min(b), a.max(b)))
    }

    /// The first of two windows in order of time, s.
    pub fn first_window(&self) -> Option<(f64, f64)> {
        self.first.map(|(a, b)| (a.min(b), a.max(b)))
    }

    /// The windows in which feet may explain what the peaks do not: only there landmarks matter to a count or an interval.
    pub fn asks_for_feet(&self) -> Vec<(f64, f64)> {
        let (peaks, delay_s) = (self.reference.peaks, self.reference.delay_s);
        if self.task.kind == Kind::Intervals {
            let off = |(a, b): &(f64, f64)| {
                spanned(peaks, delay_s, *a, *b).is_some_and(|s| s.1 > self.criteria.edge_s)
            };
            return self.window().filter(off).into_iter().collect();
        }
        let both =
            [(self.window(), self.typed.count), (self.first_window(), self.typed_first.count)].into_iter();
        let asks = |(window, count): (Option<(f64, f64)>, Option<f64>)| {
            let ((a, b), count) = window.zip(count)?;
            let found = allowed(peaks, a, b, self.criteria.edge_s, delay_s);
            let near = count + 2.0 >= found.least as f64 && count <= found.most as f64 + 2.0;
            (near && count != found.exact as f64).then_some((a, b))
        };
        both.filter(|_| self.task.counts()).filter_map(asks).collect()
    }
}

/// Judges what was put down.
pub fn judge(sheet: &Sheet) -> Report {
    let window = sheet.window();
    let found = window.map(|w| count_in(sheet, w));
    let mut steps = Vec::new();
    if let Some(trace) = sheet.trace {
        let all = judge_trace(sheet.criteria, trace, sheet.reference.duration_s);
        steps.extend(fitting(sheet.task.kind, all, trace));
    }
    let typed = &sheet.typed;
    match sheet.task.kind {
        Kind::NameFault => {}
        Kind::CleanStretch => steps.push(judge_window(sheet.criteria, window)),
        Kind::ReadRange => {
            steps.push(foot_to_peak(sheet));
            steps.push(range(sheet));
            steps.push(amplitude(sheet));
        }
        Kind::Intervals => {
            let (at, spanned) = same_features(sheet);
            let asked = sheet.task.n.filter(|_| at.code == "window_other_n");
            steps.push(at);
            steps.push(judge_intervals(typed.count, spanned, asked));
            steps.extend(numbers(sheet, typed, window, spanned.map(f64::from)));
            steps.extend(uncertainty(sheet, false));
            steps.extend(plausible(sheet, &steps, window));
        }
        Kind::Compare => {
            let (first, typed_first) = (sheet.first_window(), &sheet.typed_first);
            steps.push(judge_window(sheet.criteria, first).about(Step::Window1));
            let in_first = first.map(|w| count_in(sheet, w));
            steps.push(judge_count(typed_first.count, in_first).about(Step::Count1));
            steps.extend(
                numbers(sheet, typed_first, first, in_first.map(|c| c.peaks.exact as f64)).into_iter().map(
                    |f| {
                        let step = if f.step == Step::Seconds { Step::Seconds1 } else { Step::Rate1 };
                        f.about(step)
                    },
                ),
            );
            steps.push(apart(sheet, window));
            steps.push(judge_count(typed.count, found));
            steps.extend(numbers(sheet, typed, window, found.map(|c| c.peaks.exact as f64)));
            steps.extend(uncertainty(sheet, true));
        }
        Kind::OwnWindow | Kind::GivenWindow | Kind::Irregular | Kind::AfterExercise => {
            steps.push(window_asked(sheet, window));
            steps.push(judge_count(typed.count, found));
            steps.extend(numbers(sheet, typed, window, found.map(|c| c.peaks.exact as f64)));
            if sheet.task.kind == Kind::AfterExercise {
                steps.push(middle(sheet, window));
            }
            steps.extend(uncertainty(sheet, false));
            // After exercise the rate of the whole record is no yardstick for a window of it.
            if sheet.task.kind != Kind::AfterExercise {
                steps.extend(plausible(sheet, &steps, window));
            }
        }
    }
    let countable = sheet.task.counts() && sheet.task.kind != Kind::Intervals;
    Report::of(steps, found.map(|c| c.peaks).filter(|_| countable))
}

fn count_in(sheet: &Sheet, window: (f64, f64)) -> Counts {
    Counts::of(&sheet.reference, sheet.landmarks, window, sheet.criteria)
}

/// T, the multiplier where it is asked for, and the rate.
fn numbers(sheet: &Sheet, typed: &Typed, window: Option<(f64, f64)>, beats: Option<f64>) -> Vec<Finding> {
    let length = window.map(|(a, b)| b - a);
    let span = Span { length, beats: beats.or(typed.count).unwrap_or(1.0) };
    let seconds = judge_seconds(typed, span);
    let hold = seconds.verdict == Verdict::Right;
    let multiplier = sheet.task.asks(Field::Multiplier).then(|| judge_multiplier(typed, hold, span));
    let rate = judge_rate(typed, hold, span);
    [Some(seconds), multiplier, Some(rate)].into_iter().flatten().collect()
}

/// The rate against the whole record, once every step to it holds.
fn plausible(sheet: &Sheet, steps: &[Finding], window: Option<(f64, f64)>) -> Option<Finding> {
    let measured = [Step::Count, Step::Seconds, Step::Multiplier, Step::Rate];
    let holds = |f: &Finding| matches!(f.verdict, Verdict::Right | Verdict::Edge);
    let all = steps.iter().filter(|f| measured.contains(&f.step)).all(holds);
    let ((a, b), rate) = window.zip(sheet.typed.rate).filter(|_| all)?;
    judge_plausible(rate, b - a, &sheet.reference)
}

/// Who is only asked for a stretch, or for a height, has not chosen the range or the length of the record.
fn fitting(kind: Kind, mut all: Vec<Finding>, trace: &Trace) -> Vec<Finding> {
    let left_out: &[&str] = match kind {
        Kind::CleanStretch => &["trace_short", "trace_small", "trace_tall"],
        Kind::ReadRange => &["trace_short"],
        Kind::NameFault => return Vec::new(),
        _ => return all,
    };
    all.retain(|f| !left_out.contains(&f.code));
    if all.is_empty() {
        let args = json!({"ratio": short(trace.hum_ratio), "fill": short(trace.fill)});
        all.push(finding(Step::Trace, Verdict::Right, "trace_good", args));
    }
    all
}

fn wrong(step: Step, code: &'static str, args: Value) -> Finding {
    finding(step, Verdict::Wrong, code, args)
}

fn right(step: Step, code: &'static str) -> Finding {
    finding(step, Verdict::Right, code, json!({}))
}

fn missing(step: Step, code: &'static str) -> Finding {
    finding(step, Verdict::Missing, code, json!({}))
}

/// The window against what the question asks of it.
fn window_asked(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
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
    if sheet.task.kind != Kind::AfterExercise {
        return too_long(sheet, seconds).unwrap_or(common);
    }
    let Some(ended) = sheet.exercise_ended_s.filter(|ended| *ended <= 0.5 * (a + b)) else {
        return wrong(Step::Window, "window_no_exercise", json!({}));
    };
    if let Some(finding) = too_long(sheet, seconds) {
        return finding;
    }
    let middle = 0.5 * (a + b) - ended;
    match sheet.task.within_s.filter(|within| middle > *within) {
        Some(within) => wrong(Step::Window, "window_late", json!({"within": within})),
        None => common,
    }
}

/// A window that is longer than was asked for.
fn too_long(sheet: &Sheet, seconds: f64) -> Option<Finding> {
    let most = sheet.task.longest_s.filter(|most| seconds > most + GIVEN_S)?;
    Some(wrong(Step::Window, "window_long", json!({"seconds": short(seconds), "most": most})))
}

/// How many intervals lie between two places, and how far the second is from the feature that the first is on, s.
pub fn spanned(peaks: &[Peak], delay_s: f64, a: f64, b: f64) -> Option<(u32, f64)> {
    let peaks: Vec<f64> = peaks.iter().filter(|p| p.sure).map(|p| p.at_s + delay_s).collect();
    let nearest =
        |t: f64| (0..peaks.len()).min_by(|x, y| (peaks[*x] - t).abs().total_cmp(&(peaks[*y] - t).abs()));
    // The same feature lies equally far from the peak of its own beat.
    let i = nearest(a)?;
    let from = a - peaks[i];
    let j = nearest(b - from)?;
    Some((j.saturating_sub(i) as u32, (b - from - peaks[j]).abs()))
}

/// Both cursors on the same feature of two beats: the finding, and how many intervals lie between them.
fn same_features(sheet: &Sheet) -> (Finding, Option<u32>) {
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
fn apart(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
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
fn middle(sheet: &Sheet, window: Option<(f64, f64)>) -> Finding {
    let (Some(typed), Some((a, b)), Some(ended)) = (sheet.middle, window, sheet.exercise_ended_s) else {
        return missing(Step::Middle, "middle_missing");
    };
    let off = |t: f64| (typed - t).abs();
    let args = json!({"typed": short(typed)});
    if off(0.5 * (a + b) - ended) <= MIDDLE_S {
        return right(Step::Middle, "middle_right");
    }
    // Two slips may lead to the same time; then none is named.
    let (start, take) = (off(a - ended), off(0.5 * (a + b)));
    let code = match (start <= MIDDLE_S, take <= MIDDLE_S) {
        _ if off(-ended) <= start.min(take) => "middle_wrong",
        (true, true) if (start - take).abs() < 0.5 * MIDDLE_S => "middle_wrong",
        (true, _) if start <= take => "middle_start",
        (_, true) => "middle_take",
        _ => "middle_wrong",
    };
    wrong(Step::Middle, code, args)
}

/// The range to one side of zero, in millivolts.
fn range(sheet: &Sheet) -> Finding {
    let Some(typed) = sheet.range_mv else { return missing(Step::Range, "range_missing") };
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
fn foot_to_peak(sheet: &Sheet) -> Finding {
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
fn amplitude(sheet: &Sheet) -> Finding {
    let (Some(typed), Some((low, high))) = (sheet.amplitude_mv, sheet.values) else {
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
fn uncertainty(sheet: &Sheet, required: bool) -> Option<Finding> {
    let bad = if required { Verdict::Wrong } else { Verdict::Note };
    let Some(typed) = sheet.uncertainty else {
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
    let low = if sheet.task.kind == Kind::Intervals { 0.05 } else { low };
    if typed + 1e-9 < low {
        of(bad, "uncertainty_small")
    } else if typed > high + 1e-9 {
        of(bad, "uncertainty_large")
    } else {
        of(Verdict::Right, "uncertainty_right")
    }
}
