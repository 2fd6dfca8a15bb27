//! Which well-known misreading explains what was typed. Count, window, multiplier and rate are asked for separately, so
//! each misreading leaves its signature in one field; marks and cursors add evidence. Only a step that does not hold is explained, the
//! first one that can be goes before the others, and where two explain it about equally well nothing is named: the student is asked to
//! show how they got there.
//!
//! A candidate's distance is 0 for an exact match and 1 at the edge of its tolerance. It is named only if it lies
//! within 1 and the next one is at least half as far again (design default: the match rule of the taxonomy).

mod numbers;
pub mod own;

use super::sheet::Sheet;
use super::task::{Field, Reads};
use super::verdict::{Report, Step, Typed, Verdict};
use super::window::spanned;
use super::window::{Allowed, allowed};
use crate::plain::{json, names};
use serde::Serialize;
use serde_json::Value;

/// A well-known way of getting it wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misreading {
    /// The second bumps were counted as beats.
    BumpsCounted,
    /// Beats were left out: every other one, or small ones.
    BeatsMissed,
    /// One beat too many: both ends of the fence were counted.
    OneTooMany,
    /// One beat too few: intervals were counted.
    OneTooFew,
    /// Marks on spikes that are no beats.
    SpikesCounted,
    /// Breaths were counted, not beats.
    BreathsCounted,
    /// Periods of the power line were counted.
    HumCounted,
    /// The multiplier of another window.
    OtherMultiplier,
    /// The count was given as the rate.
    NotScaled,
    /// Beats a second.
    PerSecond,
    /// Seconds a beat.
    SecondsPerBeat,
    /// Milliseconds taken for seconds, or the reverse.
    Milliseconds,
    /// The window is another than the one between the cursors.
    OtherWindow,
    /// The quotient was turned over.
    TurnedOver,
    /// Rounded before the end.
    RoundedEarly,
    /// Fewer than ten seconds.
    WindowTooShort,
    /// More decimals than a count can carry.
    TooManyDigits,
    /// One interval taken for the mean.
    SingleInterval,
    /// From one feature of the wave to another.
    MixedFeatures,
    /// Where cursor B stands, not how far it is from A.
    TimeAtB,
    /// The length of the whole recording.
    WholeRecording,
    /// The length of the screen.
    ScreenLength,
    /// Minutes where seconds are asked for.
    Minutes,
    /// Squares of the grid, not seconds.
    GridSquares,
    /// The way from the lowest voltage to the highest for a range to one side of zero.
    BothSides,
    /// Where intervals are asked for: the beats at both ends were counted.
    PostsCounted,
    /// Where intervals are asked for: one was left out.
    GapMissed,
    /// None of them stands out: the way to the answer should be shown.
    ShowWork,
}

names! {
    Misreading {
        BumpsCounted => "bumps_counted",
        BeatsMissed => "beats_missed",
        OneTooMany => "one_too_many",
        OneTooFew => "one_too_few",
        SpikesCounted => "spikes_counted",
        BreathsCounted => "breaths_counted",
        HumCounted => "hum_counted",
        OtherMultiplier => "other_multiplier",
        NotScaled => "not_scaled",
        PerSecond => "per_second",
        SecondsPerBeat => "seconds_per_beat",
        Milliseconds => "milliseconds",
        OtherWindow => "other_window",
        TurnedOver => "turned_over",
        RoundedEarly => "rounded_early",
        WindowTooShort => "window_too_short",
        TooManyDigits => "too_many_digits",
        SingleInterval => "single_interval",
        MixedFeatures => "mixed_features",
        TimeAtB => "time_at_b",
        WholeRecording => "whole_recording",
        ScreenLength => "screen_length",
        Minutes => "minutes",
        GridSquares => "grid_squares",
        BothSides => "both_sides",
        PostsCounted => "posts_counted",
        GapMissed => "gap_missed",
        ShowWork => "show_work",
    }
}

/// A candidate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hypothesis {
    /// What it is.
    pub id: Misreading,
    /// The step that it explains.
    pub step: Step,
    /// 0 for an exact match, 1 at the edge of the tolerance.
    pub distance: f64,
    /// Numbers for the words: the student's own, never the true ones.
    pub args: Value,
}

/// What the student left behind.
#[derive(Clone, Debug)]
pub struct Evidence<'a> {
    /// What was put down.
    pub sheet: &'a Sheet<'a>,
    /// How it was judged.
    pub report: &'a Report,
    /// Times of the second bumps that can be seen, s.
    pub bumps: &'a [f64],
    /// Beat marks, s, ascending.
    pub marks: &'a [f64],
    /// Decimals of the rate as typed.
    pub rate_decimals: usize,
    /// Breaths of the subject, 1/min.
    pub breaths_per_min: f64,
    /// Power line frequency as it shows at this sampling rate, Hz.
    pub power_line_shows_hz: f64,
    /// Lengths of the screens on which the recording was made and looked at, s.
    pub screens_s: &'a [f64],
    /// Widths of the grid squares on those screens, s.
    pub squares_s: &'a [f64],
}

/// The numbers of one window, and the steps that they belong to.
#[derive(Clone, Copy, Debug)]
struct Reading {
    window: Option<(f64, f64)>,
    allowed: Option<Allowed>,
    typed: Typed,
    rate_decimals: usize,
    first: bool,
}

impl Reading {
    /// The window's length, s.
    fn length(&self) -> Option<f64> {
        self.window.map(|(a, b)| b - a).filter(|t| *t > 0.0)
    }

    /// A step of this window.
    fn step(&self, step: Step) -> Step {
        match step {
            Step::Window if self.first => Step::Window1,
            Step::Count if self.first => Step::Count1,
            Step::Seconds if self.first => Step::Seconds1,
            Step::Rate if self.first => Step::Rate1,
            step => step,
        }
    }
}

impl<'a> Evidence<'a> {
    /// What lies in the numbers alone.
    pub fn of_numbers(sheet: &'a Sheet<'a>, report: &'a Report) -> Self {
        Self {
            sheet,
            report,
            bumps: &[],
            marks: &[],
            rate_decimals: 0,
            breaths_per_min: 0.0,
            power_line_shows_hz: 0.0,
            screens_s: &[],
            squares_s: &[],
        }
    }
}

impl Evidence<'_> {
    /// Whether it matters where the second bumps are: only where a count is wrong and a mark lies off all peaks. To find
    /// them takes as long as much else of a check.
    pub fn asks_for_bumps(&self) -> bool {
        let asks = |r: &Reading| {
            self.is_wrong(r, Step::Count)
                && r.window.is_some_and(|w| self.marks_in(w).any(|m| !self.on_peak(m)))
        };
        self.readings().iter().any(asks)
    }

    /// The windows that were read.
    fn readings(&self) -> Vec<Reading> {
        let sheet = self.sheet;
        let count_in = |(a, b): (f64, f64)| {
            let (peaks, delay_s) = (sheet.reference.peaks, sheet.reference.delay_s);
            if sheet.task.reads() == Reads::Intervals {
                let n = spanned(peaks, delay_s, a, b)?.0 as usize;
                return Some(Allowed { exact: n, least: n, most: n });
            }
            Some(allowed(peaks, a, b, sheet.criteria.edge_s, delay_s))
        };
        let of = |window: Option<(f64, f64)>, typed, first, rate_decimals| Reading {
            window,
            allowed: window.and_then(count_in),
            typed,
            first,
            rate_decimals,
        };
        let second = of(sheet.window(), sheet.typed, false, self.rate_decimals);
        match sheet.task.windows() {
            0 => Vec::new(),
            1 => vec![second],
            _ => vec![of(sheet.first_window(), sheet.typed_first, true, 0), second],
        }
    }

    /// Whether something was put down for a step and does not hold.
    fn is_wrong(&self, reading: &Reading, step: Step) -> bool {
        let step = reading.step(step);
        self.report.steps.iter().any(|f| f.step == step && f.verdict == Verdict::Wrong)
    }

    /// Whether a step was judged so.
    fn is(&self, reading: &Reading, step: Step, code: &str) -> bool {
        let step = reading.step(step);
        self.report.steps.iter().any(|f| f.step == step && f.code == code)
    }

    fn marks_in(&self, (a, b): (f64, f64)) -> impl Iterator<Item = f64> {
        self.marks.iter().copied().filter(move |m| *m >= a && *m <= b)
    }

    /// Times of the peaks as the recording shows them, s.
    fn shown(&self) -> impl Iterator<Item = (f64, bool)> {
        let delay_s = self.sheet.reference.delay_s;
        self.sheet.reference.peaks.iter().map(move |p| (p.at_s + delay_s, p.sure))
    }

    fn on_peak(&self, t: f64) -> bool {
        self.shown().any(|(at, _)| (at - t).abs() <= NEAR_S)
    }

    fn on_bump(&self, t: f64) -> bool {
        !self.on_peak(t) && self.bumps.iter().any(|x| (x - t).abs() <= NEAR_S)
    }
}

/// Distance within which a mark belongs to a peak or a bump, s.
const NEAR_S: f64 = 0.1;

/// All candidates in order of distance.
pub fn hypotheses(e: &Evidence) -> Vec<Hypothesis> {
    let mut found = Found(Vec::new());
    for reading in e.readings() {
        if e.sheet.task.reads() == Reads::Heights {
            if e.is(&reading, Step::Range, "range_span") {
                found.add(
                    Misreading::BothSides,
                    Step::Range,
                    0.0,
                    json!({"typed": e.sheet.written.get(Field::Range)}),
                );
            }
            continue;
        }
        window(e, &reading, &mut found);
        counting(e, &reading, &mut found);
        numbers::timing(e, &reading, &mut found);
        numbers::scaling(e, &reading, &mut found);
    }
    let mut found = found.0;
    found.sort_by(|a, b| a.distance.total_cmp(&b.distance).then(a.id.cmp(&b.id)));
    found
}

/// The misreading to name, if one stands out: of the first step that does not hold and that one explains. A window that is too
/// short is told by its own step already, and goes last; remarks on what holds come after that.
pub fn named<'a>(candidates: &'a [Hypothesis], report: &Report) -> Option<&'a Hypothesis> {
    let wrong: Vec<Step> = report.steps.iter().filter(|f| f.is_wrong()).map(|f| f.step).collect();
    let late = |step: Step| matches!(step, Step::Window | Step::Window1) && !mixed(candidates, step);
    let first = wrong.iter().copied().filter(|s| !late(*s));
    let last = wrong.iter().copied().filter(|s| late(*s));
    let remarks = candidates.iter().map(|h| h.step).filter(|s| !wrong.contains(s));
    first.chain(last).chain(remarks).find_map(|step| stands_out(candidates, step))
}

/// Whether the cursors of that window stand on two features: that explains what follows from it.
fn mixed(candidates: &[Hypothesis], step: Step) -> bool {
    candidates.iter().any(|h| h.step == step && h.id == Misreading::MixedFeatures)
}

/// The candidate that stands out for a step.
fn stands_out(candidates: &[Hypothesis], step: Step) -> Option<&Hypothesis> {
    let mut of = candidates.iter().filter(|h| h.step == step);
    let first = of.next().filter(|h| h.distance <= 1.0)?;
    match of.find(|h| h.id != first.id) {
        Some(second) if second.distance < 1.5 * first.distance.max(0.4) => None,
        _ => Some(first),
    }
}

/// Candidates as they are found.
struct Found(Vec<Hypothesis>);

impl Found {
    fn add(&mut self, id: Misreading, step: Step, distance: f64, args: Value) {
        if distance.is_finite() && distance <= 1.5 {
            self.0.push(Hypothesis { id, step, distance: distance.max(0.0), args });
        }
    }
}

/// Signatures in where the cursors stand.
fn window(e: &Evidence, r: &Reading, found: &mut Found) {
    let step = r.step(Step::Window);
    if e.is(r, Step::Window, "window_mixed") {
        found.add(Misreading::MixedFeatures, step, 0.0, json!({}));
    }
    let Some(length) = r.length().filter(|t| *t < 10.0 - 0.05) else { return };
    // A window as short as the question asks for is no misreading.
    if e.sheet.task.reads() != Reads::Intervals && e.is_wrong(r, Step::Window) {
        let single = r.typed.count.is_some_and(|n| n <= 2.0);
        let id = if single { Misreading::SingleInterval } else { Misreading::WindowTooShort };
        found.add(id, step, 0.0, json!({"seconds": (length * 10.0).round() / 10.0}));
    }
}

/// Signatures in the count.
fn counting(e: &Evidence, r: &Reading, found: &mut Found) {
    let (Some(count), Some(allowed), Some((a, b))) = (r.typed.count, r.allowed, r.window) else { return };
    if !e.is_wrong(r, Step::Count) {
        return;
    }
    let (least, most) = (allowed.least as f64, allowed.most as f64);
    let length = b - a;
    let args = json!({"count": count});
    let step = r.step(Step::Count);
    let intervals = e.sheet.task.reads() == Reads::Intervals;
    let mut add = |id, distance, args: Value| found.add(id, step, distance, args);
    let inside: Vec<f64> = e.marks_in((a, b)).collect();
    let bumps_marked = inside.iter().filter(|m| e.on_bump(**m)).count() as f64;
    let strays = inside.iter().filter(|m| !e.on_peak(**m) && !e.on_bump(**m)).count() as f64;
    let marked = inside.len() as f64 == count;

    if count == most + 1.0 {
        let distance = if marked && (bumps_marked > 0.0 || strays > 0.0) { 0.8 } else { 0.0 };
        let id = if intervals { Misreading::PostsCounted } else { Misreading::OneTooMany };
        add(id, distance, args.clone());
    }
    // A beat without a mark in the midst of marked ones was missed; at the ends it is a matter of the fence.
    let own: Vec<f64> = e.shown().filter(|(t, sure)| *sure && *t >= a && *t < b).map(|(t, _)| t).collect();
    let midst = own.len().checked_sub(1).map_or(&own[..], |last| &own[last.min(1)..last]);
    let gap = marked && midst.iter().any(|t| !inside.iter().any(|m| (m - t).abs() <= NEAR_S));
    if count == least - 1.0 {
        let id = if intervals { Misreading::GapMissed } else { Misreading::OneTooFew };
        add(id, if gap { 0.8 } else { 0.0 }, args.clone());
        if gap {
            add(Misreading::BeatsMissed, 0.0, args.clone());
        }
    }
    // Few count every bump: from 1.8 to 2 times the beats.
    let doubled = if count < 1.8 * least {
        (1.8 * least - count) / least / 0.1
    } else {
        (count - 2.0 * most) / most / 0.1
    };
    let whole = e.sheet.reference.peaks.len() as f64;
    let whole_off = (count - whole).abs();
    if count > most + 1.0 {
        let by_marks = marked && bumps_marked >= 0.6 * (count - most);
        // Who takes the length of the recording for T has counted the beats of the recording.
        let whole_s = r.typed.seconds.is_some_and(|t| (t - e.sheet.reference.duration_s).abs() <= 0.5);
        if by_marks || !(whole_s && whole_off <= 1.0) {
            add(Misreading::BumpsCounted, if by_marks { 0.0 } else { doubled.max(0.0) }, args.clone());
        }
        if marked && strays >= 0.6 * (count - most) && strays > bumps_marked {
            add(Misreading::SpikesCounted, 0.0, json!({"strays": strays}));
        }
    }
    if count < least - 1.0 {
        let breaths = (count - e.breaths_per_min * length / 60.0).abs() / 1.0;
        let halved = (count - 0.5 * (least + most) / 2.0).abs() / (0.06 * least + 0.5);
        // A tenth of the beats may slip a tired eye; more is every other one, or something else was counted.
        let some = (least - count) / (0.3 * least);
        let unmarked = marked && inside.iter().all(|m| e.on_peak(*m));
        let missed = if unmarked { 0.0 } else { halved.min(0.5 + some) };
        add(Misreading::BeatsMissed, missed, args.clone());
        if !unmarked {
            add(Misreading::BreathsCounted, breaths, args.clone());
        }
    }
    // All beats of the recording, where A and B are round fewer.
    if !intervals && whole > most + 1.0 && whole_off <= 1.0 {
        add(Misreading::WholeRecording, 0.4 * whole_off, args.clone());
    }
    let hum = e.power_line_shows_hz * length;
    if count >= 200.0 * length / 60.0 && e.power_line_shows_hz > 3.5 {
        add(Misreading::HumCounted, (count - hum).abs() / (0.1 * hum), args);
    }
}
