//! Skills: what one attempt says of each, and what a row of attempts says of its mastery. A skill is mastered with two passes
//! in a row on different seeds; it is proposed again after three to seven days (mastery and spacing as in practice
//! testing: Dunlosky 2013; design default for the days). Help fades with each success and comes back after two
//! failures in a row. Times come in as arguments, in milliseconds.

use super::verdict::{Report, Step, Verdict};
pub use crate::deed::Aid;
use crate::plain;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;

/// The skills, in the order in which they are needed.
pub const SKILLS: [&str; 12] = [
    "wiring",
    "link",
    "contact",
    "range",
    "time_base",
    "hum",
    "motion",
    "recording",
    "window",
    "counting",
    "arithmetic",
    "uncertainty",
];

const DAY_MS: f64 = 86_400_000.0;
/// A mastered skill is proposed again after this long, and should have been done by then.
const RETEST_MS: [f64; 2] = [3.0 * DAY_MS, 7.0 * DAY_MS];

/// What an attempt says of a skill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Got {
    /// It was shown.
    Pass,
    /// It was wanting.
    Fail,
    /// Nothing.
    None,
}

/// What an attempt says of a skill, with the code that it rests on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Said {
    /// Pass, fail or nothing.
    pub got: Got,
    /// The code of the judgement that it rests on.
    pub code: Option<&'static str>,
}

/// A fault of the scenario and what became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mended {
    /// The skill that it calls for.
    pub skill: &'static str,
    /// Whether its cause is gone.
    pub gone: bool,
    /// Whether it was named, where names were asked for.
    pub named: Option<bool>,
}

/// What is known of an attempt.
#[derive(Clone, Debug)]
pub struct Attempted<'a> {
    /// Help.
    pub aid: Aid,
    /// Codes that were wrong in any check, in their order: a step put right at the second try was wanting at the first.
    pub wrong: &'a [(Step, &'static str)],
    /// The last check.
    pub last: &'a Report,
    /// Faults.
    pub faults: &'a [Mended],
    /// A recording was recorded by the student.
    pub recorded: bool,
    /// The bench was to be wired.
    pub apart: bool,
    /// The student chose the range.
    pub ranged: bool,
    /// The time base was one to measure at; `None` when the student never chose one.
    pub readable: Option<bool>,
}

/// What the attempt says of each skill, in the order of [`SKILLS`].
pub fn evidence(a: &Attempted) -> Vec<(&'static str, Said)> {
    SKILLS.iter().map(|skill| (*skill, said(a, skill))).collect()
}

fn said(a: &Attempted, skill: &str) -> Said {
    const NONE: Said = Said { got: Got::None, code: None };
    let pass = |code| Said { got: Got::Pass, code: Some(code) };
    let fail = |code| Said { got: Got::Fail, code: Some(code) };
    let measuring = matches!(skill, "window" | "counting" | "arithmetic" | "uncertainty");
    if a.aid == Aid::Shown || (a.aid == Aid::Half && !measuring) {
        return NONE;
    }
    let wrong_with = |codes: &[&str]| a.wrong.iter().find(|(_, c)| codes.contains(c)).map(|(_, c)| fail(c));
    let of_trace = a.last.steps.iter().any(|f| f.step == Step::Trace && f.verdict == Verdict::Right);
    // A fault that calls for this skill decides before anything else.
    let called: Vec<&Mended> = a.faults.iter().filter(|m| m.skill == skill).collect();
    if called.iter().any(|m| !m.gone) {
        return fail("process_cause_remains");
    }
    if called.iter().any(|m| m.named == Some(false)) {
        return fail("name_wrong");
    }
    let mended = (!called.is_empty()).then(|| pass("mended"));
    let steps = |steps: &[Step]| {
        let bad = a.wrong.iter().find(|(s, _)| steps.contains(s)).map(|(_, c)| fail(c));
        let good =
            a.last.steps.iter().find(|f| steps.contains(&f.step) && f.verdict.holds()).map(|f| pass(f.code));
        bad.or(good).unwrap_or(NONE)
    };
    match skill {
        "wiring" | "link" if a.apart => {
            if a.recorded {
                pass("linked")
            } else {
                fail("trace_none")
            }
        }
        "range" => wrong_with(&[
            "trace_small",
            "trace_tall",
            "trace_clipped",
            "range_wrong",
            "range_span",
            "range_unit",
        ])
        .or(mended)
        .or_else(|| (a.ranged && of_trace).then(|| pass("trace_good")))
        .unwrap_or(NONE),
        "time_base" => match a.readable {
            Some(true) => pass("view"),
            Some(false) => fail("view"),
            None => mended.unwrap_or(NONE),
        },
        "hum" => wrong_with(&["trace_hum"]).or(mended).unwrap_or(NONE),
        "motion" => wrong_with(&["trace_restless", "trace_spike", "trace_step", "trace_unlike"])
            .or(mended)
            .unwrap_or(NONE),
        "recording" => wrong_with(&["trace_short", "trace_none", "trace_foreign"])
            .or(mended)
            .or_else(|| a.recorded.then(|| pass("long")))
            .unwrap_or(NONE),
        "window" => steps(&[Step::Window, Step::Window1]),
        "counting" => steps(&[Step::Count, Step::Count1]),
        "arithmetic" => steps(&[
            Step::Seconds,
            Step::Multiplier,
            Step::Rate,
            Step::Seconds1,
            Step::Rate1,
            Step::Middle,
            Step::Amplitude,
        ]),
        // It may be a remark only; then it is not among the wrong ones.
        "uncertainty" => match a.last.steps.iter().find(|f| f.step == Step::Uncertainty) {
            Some(f) if f.verdict == Verdict::Right => steps(&[Step::Uncertainty]),
            Some(f) => fail(f.code),
            None => NONE,
        },
        _ => mended.unwrap_or(NONE),
    }
}

/// A record of a finished check, as the page keeps it.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct Record {
    /// The scenario's name.
    #[serde(default)]
    pub scenario: String,
    /// The seed in decimal digits.
    pub seed: String,
    /// Help.
    #[serde(default)]
    pub mode: Aid,
    /// Whether the last check was passed.
    pub passed: bool,
    /// When, ms since 1970.
    pub at_ms: f64,
    /// What was said of each skill.
    #[serde(default)]
    pub skills: BTreeMap<String, SkillRecord>,
    /// The rubric's outcome.
    #[serde(default)]
    pub rubric: RubricRecord,
}

/// What a record says of a skill.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct SkillRecord {
    /// Pass, fail or nothing.
    pub got: Got,
}

/// What a record says of the rubric.
#[derive(Clone, Copy, Debug, Default, PartialEq, Deserialize)]
pub struct RubricRecord {
    /// Whether it was good enough.
    #[serde(default)]
    pub ready: bool,
}

/// How far a skill is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Never tried.
    New,
    /// Tried, last time in vain.
    Practising,
    /// Passed once since the last failure.
    Once,
    /// Passed twice in a row on different seeds.
    Ready,
    /// The same, some days ago: time for a retest.
    Due,
}

/// A skill in the map.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Standing {
    /// How far it is.
    pub state: State,
    /// Passes so far.
    pub passes: u32,
    /// Failures so far.
    pub fails: u32,
    /// Last evidence, ms since 1970.
    pub last_ms: Option<f64>,
    /// When a retest is proposed from, ms since 1970.
    pub retest_from_ms: Option<f64>,
    /// When it should have been done by.
    pub retest_to_ms: Option<f64>,
    /// Help proposed for the next time.
    pub help: Aid,
}

/// The skill map.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Map {
    /// Each skill.
    pub skills: BTreeMap<&'static str, Standing>,
    /// Help proposed for the next attempt as a whole.
    pub help: Aid,
    /// How often the rubric was good enough.
    pub readiness: Readiness,
}

/// How often the rubric was good enough, on different seeds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Readiness {
    /// Often enough.
    pub ready: bool,
    /// How often.
    pub times: usize,
    /// How often it needs to be.
    pub need: usize,
}

/// Help that fades: a step less after each success, a step more after two failures in a row.
#[derive(Clone, Copy, Debug, Default)]
struct Fading {
    level: u8,
    failures: u8,
}

impl Fading {
    fn pass(&mut self) {
        self.level = (self.level + 1).min(2);
        self.failures = 0;
    }

    fn fail(&mut self) {
        self.failures += 1;
        if self.failures == 2 {
            self.level = self.level.saturating_sub(1);
            self.failures = 0;
        }
    }

    fn seen(&mut self) {
        self.level = self.level.max(1);
    }

    fn aid(self) -> Aid {
        [Aid::Shown, Aid::Half, Aid::Alone][usize::from(self.level.min(2))]
    }
}

/// Reads a history: a list of records. Records that cannot be read are left out.
pub fn read(history: &str) -> Result<Vec<Record>, String> {
    let list: Vec<Value> = plain::from_json(history).map_err(|e| e.to_string())?;
    let mut records: Vec<Record> = list
        .into_iter()
        .filter_map(|v| plain::from_value::<Record>(v).ok())
        .filter(|r| r.at_ms.is_finite())
        .collect();
    records.sort_by(|x, y| x.at_ms.total_cmp(&y.at_ms));
    Ok(records)
}

/// The skill map at `now_ms`, from records in order of time.
pub fn map(records: &[Record], now_ms: f64) -> Map {
    let skills = SKILLS.iter().map(|skill| (*skill, standing(records, skill, now_ms))).collect();
    let mut whole = Fading::default();
    let mut ready: Vec<(&str, &str)> = Vec::new();
    for record in records {
        match (record.mode, record.passed) {
            (Aid::Shown, _) => whole.seen(),
            (_, true) => whole.pass(),
            (_, false) => whole.fail(),
        }
        let seed = (record.scenario.as_str(), record.seed.as_str());
        if record.rubric.ready && !ready.contains(&seed) {
            ready.push(seed);
        }
    }
    let readiness = Readiness { ready: ready.len() >= 2, times: ready.len(), need: 2 };
    Map { skills, help: whole.aid(), readiness }
}

fn standing(records: &[Record], skill: &str, now_ms: f64) -> Standing {
    let mut fading = Fading::default();
    let (mut passes, mut fails, mut last_ms) = (0, 0, None);
    // Seeds of the passes since the last failure.
    let mut run: Vec<(&str, &str)> = Vec::new();
    for record in records {
        if record.mode == Aid::Shown {
            fading.seen();
            continue;
        }
        match record.skills.get(skill).map_or(Got::None, |s| s.got) {
            Got::None => continue,
            Got::Pass => {
                passes += 1;
                fading.pass();
                let seed = (record.scenario.as_str(), record.seed.as_str());
                if !run.contains(&seed) {
                    run.push(seed);
                }
            }
            Got::Fail => {
                fails += 1;
                fading.fail();
                run.clear();
            }
        }
        last_ms = Some(record.at_ms);
    }
    let mastered = run.len() >= 2;
    let retest = last_ms.filter(|_| mastered).map(|at: f64| RETEST_MS.map(|d| at + d));
    let state = match (last_ms, run.len()) {
        (None, _) => State::New,
        (_, 0) => State::Practising,
        (_, 1) => State::Once,
        _ if retest.is_some_and(|[from, _]| now_ms >= from) => State::Due,
        _ => State::Ready,
    };
    Standing {
        state,
        passes,
        fails,
        last_ms,
        retest_from_ms: retest.map(|r| r[0]),
        retest_to_ms: retest.map(|r| r[1]),
        help: fading.aid(),
    }
}
