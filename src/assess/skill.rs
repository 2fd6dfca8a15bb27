//! Skills: what one attempt says of each, and the record of it that is kept. What a row of records says of its mastery is told
//! by [`super::learner`].

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

/// The skill that a step of the measurement shows.
fn measured(step: Step) -> Option<&'static str> {
    Some(match step {
        Step::Window | Step::Window1 => "window",
        Step::Count | Step::Count1 => "counting",
        Step::Seconds
        | Step::Multiplier
        | Step::Rate
        | Step::Seconds1
        | Step::Rate1
        | Step::Middle
        | Step::Amplitude => "arithmetic",
        Step::Uncertainty => "uncertainty",
        _ => return None,
    })
}

/// A judged step of an attempt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Judged {
    /// The skill that it shows.
    pub skill: String,
    /// The code of the judgement.
    pub code: String,
    /// Whether it was right.
    pub right: bool,
    /// Whether it had been told before that it is wrong, or a hint had been given.
    #[serde(default)]
    pub told: bool,
    /// Whether a well-known misreading explains it.
    #[serde(default)]
    pub misread: bool,
}

/// Every judged step of the attempt: each step of the measurement, wrong in any check and right in the last one, and what each
/// other skill rests on. `hinted`: the steps that a hint was about; `misread`: the step that a well-known misreading explains.
pub fn judged(a: &Attempted, hinted: &[Step], misread: Option<Step>) -> Vec<Judged> {
    let mut found = Vec::new();
    for skill in SKILLS {
        let got = said(a, skill);
        if got.got == Got::None {
            continue;
        }
        let of = |step: Step| measured(step) == Some(skill);
        let step = |code: &str, right, told, misread| Judged {
            skill: skill.into(),
            code: code.into(),
            right,
            told,
            misread,
        };
        let before = found.len();
        for (k, (wrong, code)) in a.wrong.iter().enumerate() {
            // Wrong in both checks is wrong once.
            if of(*wrong) && !a.wrong[..k].iter().any(|(earlier, _)| earlier == wrong) {
                found.push(step(code, false, false, misread == Some(*wrong)));
            }
        }
        for f in a.last.steps.iter().filter(|f| of(f.step)) {
            let told = hinted.contains(&f.step) || a.wrong.iter().any(|(wrong, _)| *wrong == f.step);
            match f.verdict {
                Verdict::Right | Verdict::Edge => found.push(step(f.code, true, told, false)),
                // How sure a rate is may be a remark only; it is judged all the same.
                Verdict::Note if f.step == Step::Uncertainty => found.push(step(f.code, false, false, false)),
                _ => {}
            }
        }
        if found.len() == before
            && let Some(code) = got.code
        {
            found.push(step(code, got.got == Got::Pass, hinted.contains(&Step::Trace), false));
        }
    }
    found
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
    /// Every judged step; none in a record of the first form.
    #[serde(default)]
    pub judged: Vec<Judged>,
    /// The faults that were there, once the attempt is over.
    #[serde(default)]
    pub faults: Vec<FaultRecord>,
    /// Why its right steps give no credit, where they give none.
    #[serde(default)]
    pub no_credit: Option<String>,
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

/// What a record says of a fault.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FaultRecord {
    /// Its name.
    pub id: String,
    /// The set of faults that look like it at first.
    pub set: String,
    /// How many they are, itself among them.
    #[serde(default)]
    pub of: u32,
    /// The skill that it calls for.
    #[serde(default)]
    pub skill: Option<String>,
    /// Whether it was named and nothing else was, where names were asked for.
    #[serde(default)]
    pub named: Option<bool>,
    /// Whether its cause is gone, where it was to be mended.
    #[serde(default)]
    pub gone: Option<bool>,
    /// Whether it was told apart by a test.
    #[serde(default)]
    pub tested: bool,
}

/// What a record says of the rubric.
#[derive(Clone, Copy, Debug, Default, PartialEq, Deserialize)]
pub struct RubricRecord {
    /// Whether it was good enough.
    #[serde(default)]
    pub ready: bool,
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
