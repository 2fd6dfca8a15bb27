//! The rubric of a pre-lab: twenty points in seven rows (common practice; a design default, not a published scale), each
//! point with its evidence. A row that cannot apply, such as dealing with faults on a bench that has none or a set-up that
//! the bench did by itself, is left out and the rest is scaled to twenty, so that nobody loses or wins by the choice
//! of the scenario. Ready is who reaches sixteen with no row at zero, working alone.

use super::process::{Deed, Remark};
use super::skill::Aid;
use super::task::{Field, Kind, Task};
use super::verdict::{Report, Step, Verdict};
use serde::Serialize;

/// Points of the whole rubric.
pub const OF: u32 = 20;
/// Points from which on one is ready.
pub const READY: u32 = 16;
/// Length of a take that a pre-lab asks for, s.
pub const LONG_S: f64 = 60.0;

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
    /// Sixteen or more, no row at zero, alone and without being shown the answer.
    pub ready: bool,
    /// The rows.
    pub rows: Vec<Row>,
}

/// What the points are given for.
#[derive(Clone, Debug)]
pub struct Facts<'a> {
    /// Everything done, in the order of the log.
    pub deeds: &'a [Deed],
    /// The judged steps.
    pub report: &'a Report,
    /// Remarks on how faults were dealt with.
    pub process: &'a [Remark],
    /// What was asked.
    pub task: Task,
    /// How much help there was.
    pub aid: Aid,
    /// Whether there is a bench at all.
    pub bench: bool,
    /// Whether the pad's lead is in the input that is shown.
    pub routed: bool,
    /// Whether the strap is on and neither loose nor tight.
    pub strapped: bool,
    /// Sampling rate of the take, Hz.
    pub rate_hz: f64,
    /// Time base when it was recorded, and now, s a screen.
    pub views_s: [f64; 2],
    /// Length of the measured take, s.
    pub take_s: f64,
    /// What is written on it.
    pub label: &'a str,
    /// Number of faults in the scenario.
    pub faults: usize,
    /// Whether they were to be named.
    pub names: bool,
    /// Whether the answer was shown on demand.
    pub revealed: bool,
}

impl Facts<'_> {
    /// The point for something done.
    fn deed(&self, code: &'static str, name: &str) -> Point {
        let log = self.deeds.iter().rposition(|d| d.name == name);
        let at_s = log.map(|k| (self.deeds[k].at_s * 10.0).round() / 10.0);
        Point { code, got: log.is_some(), log, at_s, evidence: None }
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
            let good = matches!(finding.verdict, Verdict::Right | Verdict::Edge);
            if evidence.is_none() || (got && !good) {
                evidence = Some(finding.code);
            }
            got &= good;
        }
        Point { evidence, ..self.fact(code, got) }
    }

    /// The point for remarks of one kind, or for none of another.
    fn remarks(&self, code: &'static str, wanted: Option<&'static str>, against: &'static str) -> Point {
        let has = |c: &str| self.process.iter().any(|r| r.code == c);
        let got = !has(against) && wanted.is_none_or(has);
        let evidence = if has(against) { Some(against) } else { wanted.filter(|c| has(c)) };
        Point { evidence, ..self.fact(code, got) }
    }
}

fn row(row: &'static str, applies: bool, points: Vec<Point>) -> Row {
    let points = if applies { points } else { Vec::new() };
    let got = points.iter().filter(|p| p.got).count() as u32;
    Row { row, got, of: points.len() as u32, applies: !points.is_empty(), points }
}

/// Fills in the rubric.
pub fn fill_in(f: &Facts) -> Rubric {
    let recorded = f.deeds.iter().any(|d| d.name == "record");
    let by_hand = f.bench && f.aid == Aid::Alone && recorded;
    let traced = f.report.steps.iter().any(|s| s.step == Step::Trace);
    let all = |list: &[&Step]| list.iter().map(|s| **s).collect::<Vec<_>>();
    let [recording_view, view] = f.views_s;
    let readable = |s: f64| (5.0..=10.0).contains(&s);
    let shown = f.clean("view", &[]);
    let shown = Point {
        got: shown.got && f.rate_hz >= 100.0 && (readable(recording_view) || readable(view)),
        ..shown
    };
    let mut faults = vec![
        f.remarks("tested", Some("process_tested"), "process_untested"),
        f.remarks("one_change", None, "process_blind"),
        f.remarks("mended", None, "process_cause_remains"),
    ];
    if f.names {
        faults.insert(0, f.right("named", &[Step::Name]));
    }
    let long = match f.task.kind {
        // A window that has to be short needs no long record.
        Kind::AfterExercise => f.clean("long", &["trace_short"]),
        _ => f.fact("long", f.take_s + 1e-6 >= LONG_S),
    };
    let labelled = Point { got: !f.label.trim().is_empty(), ..f.deed("labelled", "label") };
    let measured = match f.task.kind {
        Kind::NameFault => Vec::new(),
        Kind::CleanStretch => vec![f.right("clean_window", &[Step::Window, Step::Trace])],
        Kind::ReadRange => vec![
            f.right("clean_window", &[Step::Window]),
            f.right("range_read", &[Step::Range]),
            f.right("height_read", &[Step::Amplitude]),
        ],
        _ => vec![
            f.right("clean_window", &all(&[&Step::Window, &Step::Window1])),
            f.right("exact_count", &all(&[&Step::Count, &Step::Count1])),
            f.right("units", &all(&[&Step::Seconds, &Step::Seconds1])),
            f.right("formula", &all(&[&Step::Multiplier, &Step::Rate, &Step::Rate1])),
        ],
    };
    let rows = vec![
        row(
            "setup",
            by_hand,
            vec![
                f.deed("linked", "record"),
                f.fact("socket", f.routed),
                f.fact("strap", f.strapped),
                f.deed("tap_test", "tap_pad"),
            ],
        ),
        row(
            "signal",
            by_hand && traced,
            vec![
                f.clean("size", &["trace_small", "trace_tall"]),
                f.clean("hum", &["trace_hum"]),
                f.clean("unclipped", &["trace_clipped"]),
                shown,
            ],
        ),
        row("faults", f.bench && f.faults > 0 && f.aid == Aid::Alone, faults),
        row("recording", by_hand, vec![labelled, long]),
        row("measurement", f.aid != Aid::Shown, measured),
        row(
            "uncertainty",
            f.task.asks(Field::Uncertainty),
            vec![f.right("uncertainty", &[Step::Uncertainty])],
        ),
        row("safety", f.bench, vec![f.deed("caution", "agree")]),
    ];
    let got: u32 = rows.iter().map(|r| r.got).sum();
    let possible: u32 = rows.iter().map(|r| r.of).sum();
    // Rounded down: a point counts when it is whole.
    let total = (OF * got).checked_div(possible).unwrap_or(0);
    let zero = rows.iter().any(|r| r.applies && r.got == 0);
    let ready = total >= READY && !zero && f.aid == Aid::Alone && !f.revealed;
    Rubric { total, of: OF, got, possible, ready, rows }
}
