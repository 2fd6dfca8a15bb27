//! The rubric of a pre-lab: rows of points (common practice; a design default, not a published scale), each point with its
//! evidence. What an attempt asks is known before it begins ([`asked`]) and shown then; the points given ([`fill_in`]) are
//! points of that list and of nothing else. A row that cannot apply, such as dealing with faults on a bench that has none, is
//! left out, and the rest is scaled to twenty, so that nobody loses or wins by the choice of the scenario. What may be left out
//! costs nothing. Ready is who passes the check with sixteen points or more and no row at zero, working alone.

pub mod points;

pub use points::PointOf;

use super::Criteria;
use super::process::{Done, Remark};
use super::skill::Aid;
use super::task::{Field, Task};
use super::verdict::{Report, Step};
use crate::deed::{Kind as Deed, Nature};
use points::How;
use serde::Serialize;

/// Points of the whole rubric.
pub const OF: u32 = 20;
/// Points from which on one is ready.
pub const READY: u32 = 16;
/// Time bases at which single beats can be seen, s a screen (common practice: some five to forty beats).
pub const READABLE_S: [f64; 2] = [5.0, 30.0];
/// Lowest sampling rate that keeps the shape of a pulse, Hz (common practice).
pub const RATE_HZ: f64 = 100.0;

/// A point.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Point {
    /// What it is given for.
    pub code: &'static str,
    /// Whether it is given.
    pub got: bool,
    /// The log entry that it rests on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub log: Option<usize>,
    /// The time of that entry, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_s: Option<f64>,
    /// The code of the judgement that it rests on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub evidence: Option<&'static str>,
}

/// A row of points.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Its name.
    pub row: &'static str,
    /// Points given.
    pub got: u32,
    /// Points there are.
    pub of: u32,
    /// Whether it can apply.
    pub applies: bool,
    /// The points.
    pub points: Vec<Point>,
}

/// The filled-in rubric.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rubric {
    /// Points of twenty, scaled.
    pub total: u32,
    /// Twenty.
    pub of: u32,
    /// Points given.
    pub got: u32,
    /// Points that could be given.
    pub possible: u32,
    /// Whether there is anything to give points for: who only watches is not scored.
    pub scored: bool,
    /// What bars from being ready; nothing who passed with sixteen or more, no row at zero, alone and without being shown
    /// the answer.
    pub bar: Option<Bar>,
    /// The rows.
    pub rows: Vec<Row>,
}

impl Rubric {
    /// Whether nothing bars from being ready.
    pub fn ready(&self) -> bool {
        self.bar.is_none()
    }
}

/// What bars from being ready.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bar {
    /// The check is not passed.
    Check,
    /// The answer was shown.
    Shown,
    /// It was watched or found half done.
    Help,
    /// A row has no point.
    Row,
    /// There are too few points.
    Points,
}

/// What an attempt is about, as far as it decides which points there are. Known before it begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terms {
    /// What was asked.
    pub task: Task,
    /// How much help there is.
    pub aid: Aid,
    /// Whether there is a bench at all.
    pub bench: bool,
    /// Whether a recording of one's own is asked for.
    pub records: bool,
    /// Whether the bench has faults.
    pub faults: bool,
    /// Whether they are to be named.
    pub names: bool,
    /// Whether they are to be mended.
    pub mends: bool,
    /// Whether one of them is to be told to the instructor: nobody mends an irregular pulse.
    pub tells: bool,
}

/// A row of what is asked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AskedRow {
    /// Its name.
    pub row: &'static str,
    /// Codes of its points; none where it does not apply.
    pub points: Vec<&'static str>,
}

/// What an attempt asks.
pub fn asked(t: &Terms) -> Vec<AskedRow> {
    let row = |(row, points): (&'static str, Vec<PointOf>)| AskedRow {
        row,
        points: points.iter().map(|point| point.code).collect(),
    };
    rows(t).into_iter().map(row).collect()
}

/// The rows with the points that there are; none where a row does not apply.
fn rows(t: &Terms) -> [(&'static str, Vec<PointOf>); 7] {
    let watched = t.aid == Aid::Shown;
    let by_hand = t.bench && t.records && t.aid == Aid::Alone;
    let with_faults = t.bench && t.faults && !watched;
    let faults = [
        (points::NAMED, t.names),
        (points::TESTED, true),
        (points::ONE_CHANGE, true),
        (points::MENDED, t.mends),
        (points::TOLD, t.tells),
    ];
    let faults: Vec<PointOf> =
        faults.into_iter().filter_map(|(point, there)| there.then_some(point)).collect();
    let uncertain = t.task.asks(Field::Uncertainty) && !t.task.optional().contains(&Field::Uncertainty);
    let where_it_applies =
        |applies: bool, points: &[PointOf]| if applies { points.to_vec() } else { Vec::new() };
    [
        ("setup", where_it_applies(by_hand, points::SETUP)),
        ("signal", where_it_applies(by_hand, points::SIGNAL)),
        ("faults", where_it_applies(with_faults, &faults)),
        ("recording", where_it_applies(by_hand, points::RECORDING)),
        ("measurement", where_it_applies(!watched, t.task.kind.question().points)),
        ("uncertainty", where_it_applies(uncertain && !watched, points::UNCERTAINTY)),
        // Who measures what lies there already puts no sensor on anybody.
        ("safety", where_it_applies(by_hand || with_faults, points::SAFETY)),
    ]
}

/// What the points are given for.
#[derive(Clone, Debug)]
pub struct Facts<'a> {
    /// What the attempt is about.
    pub terms: Terms,
    /// What must be reached.
    pub criteria: &'a Criteria,
    /// Everything done, in the order of the log.
    pub done: &'a [Done],
    /// The judged steps.
    pub report: &'a Report,
    /// Remarks on how faults were dealt with.
    pub process: &'a [Remark],
    /// Whether the sensor's cable is in the input that is shown.
    pub routed: bool,
    /// Whether the strap is on and neither loose nor tight.
    pub strapped: bool,
    /// Sampling rate of the recording, Hz.
    pub rate_hz: f64,
    /// Time base when it was recorded, and now, s a screen.
    pub views_s: [f64; 2],
    /// Length of the measured take, s.
    pub recording_s: f64,
    /// Whether the answer was shown on demand.
    pub revealed: bool,
}

impl Facts<'_> {
    /// The point for something done.
    fn deed(&self, code: &'static str, kind: Deed) -> Point {
        let log = self.done.iter().rposition(|d| d.kind() == kind);
        let at_s = log.map(|k| (self.done[k].at_s * 10.0).round() / 10.0);
        Point { code, got: log.is_some(), log, at_s, evidence: None }
    }

    /// The point for something done before something else.
    fn before(&self, code: &'static str, kind: Deed, other: Deed) -> Point {
        let first = |kind: Deed| self.done.iter().position(|d| d.kind() == kind);
        match (first(kind), first(other)) {
            (Some(k), Some(late)) if k > late => Point { got: false, ..self.deed(code, kind) },
            _ => self.deed(code, kind),
        }
    }

    /// The point for something that is so.
    fn fact(&self, code: &'static str, got: bool) -> Point {
        Point { code, got, log: None, at_s: None, evidence: None }
    }

    /// The point for a trace without certain findings.
    fn clean(&self, code: &'static str, against: &[&'static str]) -> Point {
        let of_trace = || self.report.steps.iter().filter(|f| f.step == Step::Trace);
        let found = of_trace().find(|f| against.contains(&f.code));
        let evidence = found.or_else(|| of_trace().next()).map(|f| f.code);
        Point { evidence, ..self.fact(code, found.is_none() && evidence.is_some()) }
    }

    /// The point for steps that are right.
    fn right(&self, code: &'static str, steps: &[Step]) -> Point {
        let mut of = self.report.steps.iter().filter(|f| steps.contains(&f.step)).peekable();
        let there = of.peek().is_some();
        let mut evidence = None;
        let mut got = there;
        for finding in of {
            let good = finding.verdict.holds();
            if evidence.is_none() || (got && !good) {
                evidence = Some(finding.code);
            }
            got &= good;
        }
        Point { evidence, ..self.fact(code, got) }
    }

    /// The point for no remark of one kind; another kind may be wanted.
    fn remarks(&self, code: &'static str, wanted: Option<&'static str>, against: &'static str) -> Point {
        let has = |c: &str| self.process.iter().any(|r| r.code == c);
        let got = !has(against) && wanted.is_none_or(has);
        let evidence = if has(against) { Some(against) } else { wanted.filter(|c| has(c)) };
        Point { evidence, ..self.fact(code, got) }
    }

    /// A point, given or not.
    fn point(&self, PointOf { code, how }: PointOf) -> Point {
        let readable = |s: &f64| (READABLE_S[0]..=READABLE_S[1]).contains(s);
        match how {
            How::Done(deed) => self.deed(code, deed),
            How::Before(deed, other) => self.before(code, deed, other),
            How::Routed => self.fact(code, self.routed),
            How::Strapped => self.fact(code, self.strapped),
            How::Without(findings) => self.clean(code, findings),
            How::View => {
                let shown = self.clean(code, &[]);
                let got = self.rate_hz >= RATE_HZ && self.views_s.iter().any(readable);
                Point { got: shown.got && got, ..shown }
            }
            How::Right(steps) => self.right(code, steps),
            // Where there is only a name to find, a test that led to none showed nothing to whoever made it.
            How::Tested => {
                let tested = self.remarks(code, Some("process_tested"), "process_untested");
                let led_on = self.terms.mends || self.right(code, &[Step::Name]).got;
                Point { got: tested.got && led_on, ..tested }
            }
            // Who has only to name what is wrong, and tries nothing, has not worked one change at a time.
            How::OneChange => {
                let one = self.remarks(code, None, "process_blind");
                let tries = |d: &Done| {
                    matches!(d.kind().nature(), Nature::Change | Nature::Test | Nature::Tune | Nature::Look)
                };
                Point { got: one.got && (self.terms.mends || self.done.iter().any(tries)), ..one }
            }
            How::Mended => self.remarks(code, None, "process_cause_remains"),
            How::Long => self.fact(code, self.recording_s + 1e-6 >= self.criteria.record_s),
        }
    }
}

/// Fills in the rubric.
pub fn fill_in(f: &Facts) -> Rubric {
    let row = |(row, points): (&'static str, Vec<PointOf>)| {
        let points: Vec<Point> = points.into_iter().map(|point| f.point(point)).collect();
        let got = points.iter().filter(|p| p.got).count() as u32;
        Row { row, got, of: points.len() as u32, applies: !points.is_empty(), points }
    };
    let rows: Vec<Row> = rows(&f.terms).into_iter().map(row).collect();
    let got: u32 = rows.iter().map(|r| r.got).sum();
    let possible: u32 = rows.iter().map(|r| r.of).sum();
    // Rounded down: a point counts when it is whole.
    let total = (OF * got).checked_div(possible).unwrap_or(0);
    let zero = rows.iter().any(|r| r.applies && r.got == 0);
    let bars = [
        (Bar::Check, !f.report.passed),
        (Bar::Shown, f.revealed),
        (Bar::Help, f.terms.aid != Aid::Alone),
        (Bar::Row, zero),
        (Bar::Points, total < READY),
    ];
    let bar = bars.into_iter().find_map(|(bar, there)| there.then_some(bar));
    Rubric { total, of: OF, got, possible, scored: possible > 0, bar, rows }
}
