//! What an attempt says once it has been checked, in types: for grading, and written down for the page to keep.

use super::attempt::Session;
use super::guide;
use super::own::OwnReading;
use super::view;
use super::worksheet::Field;
use crate::assess::hint::Hint;
use crate::assess::misreading::Misreading;
use crate::assess::rubric::READABLE_S;
use crate::assess::skill::{self, Aid, Attempted, FaultRecord, Judged, Mended, Said};
use crate::assess::task::{Kind, Reads};
use crate::assess::verdict::Step;
use crate::deed::Kind as Deed;
use crate::deed::{Action, Nature, Page};
use crate::plain::{fields, json};
use crate::scenario::Scenario;
use crate::scenario::fault::{self, Impression};
use crate::scenario::pool::Draw;
use crate::scenario::schema::Start;
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;

/// Number of the form in which evidence is kept. The second holds every judged step; the first is read as well.
const FORM: u32 = 2;
/// Names tried beyond those that are there, taken back or not: with more the list was gone through (design default).
const NAMES_BEYOND: usize = 2;
/// Things changed that have nothing to do with any fault: with more the bench was clicked through (design default; remarked on
/// from three).
const NEEDLESS: u64 = 8;

/// What an attempt says of each skill, and of which attempt it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// Name of the scenario.
    pub scenario: String,
    /// Its level, 1 to 9.
    pub level: u8,
    /// Seed.
    pub seed: u64,
    /// How much help there was.
    pub aid: Aid,
    /// What was asked.
    pub kind: Kind,
    /// Whether the last check was passed.
    pub passed: bool,
    /// Number of checks.
    pub tries: u32,
    /// Hints asked for.
    pub hints: u32,
    /// Whether the answer was shown on demand.
    pub revealed: bool,
    /// Whether the attempt has ended.
    pub over: bool,
    /// The misreading that explains what was typed.
    pub misreading: Option<Misreading>,
    /// The same, where it is one of the instructor's own: its name beside those of the built-in ones.
    pub own: Option<String>,
    /// What is said of each skill, in the order of [`skill::SKILLS`].
    pub skills: Vec<(&'static str, Said)>,
    /// Every judged step.
    pub judged: Vec<Judged>,
    /// The faults that were there, once the attempt is over; before that they are nobody's to know.
    pub faults: Vec<FaultRecord>,
    /// Why what was right gives no credit, where it gives none.
    pub no_credit: Option<&'static str>,
    /// Points of the rubric, of twenty.
    pub points: u32,
    /// Whether the rubric calls the student ready.
    pub ready: bool,
}

impl Evidence {
    /// As the page keeps it.
    pub fn told(&self) -> Value {
        let mut skills = self
            .skills
            .iter()
            .map(|(skill, said)| (skill.to_string(), json!({"got": said.got, "code": said.code})));
        json!({
            "v": FORM, "scenario": self.scenario, "level": self.level, "seed": self.seed.to_string(),
            "mode": self.aid, "kind": self.kind, "passed": self.passed, "tries": self.tries, "hints": self.hints,
            "revealed": self.revealed, "over": self.over, "misreading": self.own.clone().or_else(|| self.misreading.map(|m| m.name().into())),
            "skills": fields(&mut skills), "judged": self.judged, "faults": self.faults, "no_credit": self.no_credit,
            "rubric": {"total": self.points, "ready": self.ready},
        })
    }
}

impl Session {
    /// What this attempt says of each skill; nothing before a check.
    pub fn evidence(&self) -> Option<Evidence> {
        let check = self.check()?;
        let scenario = self.scenario()?;
        let did = |kind: Deed| self.log.entries.iter().any(|l| l.action.kind() == kind);
        let faults: Vec<Mended> = scenario
            .fault
            .iter()
            .filter_map(|spec| fault::named(&spec.name))
            // The skill that a fault out of a pool calls for would tell which it is.
            .filter(|_| self.sheet.over || !self.is_pooled())
            .filter_map(|f| {
                let named = scenario.name_faults.then(|| self.is_named(f.id));
                Some(Mended { skill: skill_for(f)?, gone: !check.left.contains(&f.id), named })
            })
            .collect();
        let based = did(Deed::TimeBase).then(|| {
            let views = [self.recording().map_or(0.0, |t| t.view_s), self.trace.time_base_s];
            views.iter().any(|s| (READABLE_S[0]..=READABLE_S[1]).contains(s))
        });
        let attempted = Attempted {
            aid: self.help.aid.unwrap_or_default(),
            wrong: &self.sheet.wrong,
            last: &check.report,
            faults: &faults,
            recorded: did(Deed::Record) && self.trace.recordings.len() > self.trace.recordings_before,
            apart: scenario.bench.start == Start::Apart,
            ranged: did(Deed::Range),
            readable: based,
        };
        let hinted: Vec<Step> = self.help.taken.iter().map(|Hint { step, .. }| *step).collect();
        let misread = check.misreading.as_ref().filter(|m| m.id != Misreading::ShowWork).map(|m| m.step);
        let skills = skill::evidence(&attempted);
        let judged = skill::judged(&attempted, &hinted, misread);
        // With half of it done the bench itself mends what is wrong.
        let tells = self.sheet.over && attempted.aid == Aid::Alone;
        let faults = if tells { self.faults_told(scenario) } else { Vec::new() };
        Some(Evidence {
            scenario: scenario.id.clone(),
            level: scenario.level,
            seed: self.seed(),
            aid: self.help.aid.unwrap_or_default(),
            kind: self.sheet.task.kind,
            passed: check.report.passed,
            tries: check.tries,
            hints: self.help.hints,
            revealed: self.sheet.revealed,
            over: self.sheet.over,
            misreading: check.misreading.as_ref().map(|m| m.id),
            own: check.own.as_ref().map(OwnReading::id),
            skills,
            judged,
            faults,
            no_credit: self.no_credit(),
            points: check.rubric.total,
            ready: check.rubric.ready(),
        })
    }

    /// Whether a fault was named, and nothing that is not there.
    fn is_named(&self, id: &str) -> bool {
        let beside = self.beside();
        let there = |n: &String| self.log.cases.iter().any(|c| c.id == n) || beside.contains(&n.as_str());
        self.sheet.named.iter().any(|n| n == id) && self.sheet.named.iter().all(there)
    }

    /// What became of each fault.
    fn faults_told(&self, scenario: &Scenario) -> Vec<FaultRecord> {
        let Some(check) = self.check() else { return Vec::new() };
        let mends = self.sheet.task.kind.question().mends();
        let faults = scenario.fault.iter().filter_map(|spec| fault::named(&spec.name));
        faults
            .map(|f| FaultRecord {
                id: f.id.into(),
                set: json!(f.impression).as_str().unwrap_or_default().into(),
                of: fault::all().filter(|other| other.impression == f.impression).count() as u32,
                skill: skill_for(f).map(String::from),
                named: scenario.name_faults.then(|| self.is_named(f.id)),
                gone: (mends && f.curable).then(|| !check.left.contains(&f.id)),
                tested: check
                    .process
                    .iter()
                    .any(|r| r.code == "process_tested" && r.args["fault"] == json!(f.id)),
            })
            .collect()
    }

    /// Why what was right gives no credit: two checks with nothing between, the list of names gone through, the bench clicked
    /// through. `None` where somebody thought.
    fn no_credit(&self) -> Option<&'static str> {
        let mut tried: Vec<&str> = Vec::new();
        // Whether something was done since the last check.
        let mut idle = false;
        let mut hasty = false;
        for logged in &self.log.entries {
            let kind = logged.action.kind();
            if let Action::Page(Page::Name { fault }) = &logged.action
                && !tried.contains(&fault.as_str())
            {
                tried.push(fault);
            }
            hasty |= idle && kind == Deed::Check;
            idle = kind == Deed::Check || (idle && matches!(kind.nature(), Nature::Look));
        }
        let there = self.log.cases.len().max(1) + self.log.also.len();
        let check = self.check()?;
        let needless = check.process.iter().find(|r| r.code == "process_needless");
        let scattered = needless.and_then(|r| r.args["actions"].as_u64()).is_some_and(|n| n > NEEDLESS);
        match () {
            () if hasty => Some("hasty"),
            () if tried.len() > there + NAMES_BEYOND => Some("many_names"),
            () if scattered => Some("scattered"),
            () => None,
        }
    }

    /// SHA-256 of the debrief (the check and the hint, as the page sees them) as hexadecimal digits; empty before a check.
    pub fn debrief_hash(&self) -> String {
        if self.sheet.check.is_none() {
            return String::new();
        }
        let text = json!({"check": view::check(self), "hint": view::hint(self)}).to_string();
        Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Faults that the student named, in the words of the catalogue.
    pub fn named(&self) -> &[String] {
        &self.sheet.named
    }

    /// What stands on the worksheet in each field that the question asks for, as typed.
    pub fn typed(&self) -> impl Iterator<Item = (Field, String)> + '_ {
        self.sheet.task.fields().iter().map(|field| (*field, self.sheet.worksheet.entry(*field).text))
    }
}

/// The skills that a scenario asks for, as far as its text tells: of a fault that the seed draws nothing is told. Whether range and
/// time base are to be chosen, or an uncertainty that need not be told is to be, can be seen in its worked example alone.
pub fn calls_for(scenario: &Scenario) -> Vec<&'static str> {
    let question = scenario.task.kind.question();
    let apart = scenario.bench.start == Start::Apart;
    // What a pool has drawn stands there too, and nobody is to be told of it.
    let fixed = scenario.fault.iter().filter(|_| scenario.pool.is_none());
    let of_faults: Vec<&str> =
        fixed.filter_map(|spec| fault::named(&spec.name)).filter_map(skill_for).collect();
    let shown = guide::shown(scenario).map_or(&[][..], |attempt| &attempt.steps);
    let does = |kind: Deed| shown.iter().any(|step| step["do"] == json!(kind.name()));
    let answers = |field: &str| shown.iter().any(|step| step["field"] == json!(field));
    let must = |field: Field| question.fields.contains(&field) && !question.optional.contains(&field);
    let asks = |skill: &str| match skill {
        "wiring" | "link" => apart,
        "range" => question.reads == Reads::Heights || does(Deed::Range),
        "time_base" => does(Deed::TimeBase),
        "recording" => question.reads != Reads::Nothing,
        "window" => matches!(question.reads, Reads::Beats | Reads::Intervals | Reads::Stretch),
        "counting" => matches!(question.reads, Reads::Beats | Reads::Intervals),
        "arithmetic" => must(Field::Rate) || must(Field::Amplitude),
        "uncertainty" => must(Field::Uncertainty) || answers("uncertainty"),
        _ => false,
    };
    skill::SKILLS.into_iter().filter(|s| asks(s) || of_faults.contains(s)).collect()
}

/// The skills that a scenario may ask for beside those, by what its pool draws: in which share of the draws; nothing without a
/// pool.
pub fn may_call_for(scenario: &Scenario) -> BTreeMap<&'static str, f64> {
    let (draws, sure) = (scenario.draws(), calls_for(scenario));
    let share = |skill: &str| {
        let calls = |draw: &&Draw| draw.iter().any(|f| skill_for(f) == Some(skill));
        draws.iter().filter(calls).count() as f64 / draws.len() as f64
    };
    let may = skill::SKILLS.into_iter().filter(|s| !sure.contains(s)).map(|s| (s, share(s)));
    may.filter(|(_, share)| *share > 0.0).collect()
}

/// The skill that a fault calls for.
fn skill_for(f: &fault::Fault) -> Option<&'static str> {
    Some(match (f.id, f.impression) {
        ("window_misread" | "wrong_multiplier", _) => "arithmetic",
        ("noisy_window", _) => "window",
        (_, Impression::NoRecorder) => "link",
        (_, Impression::Flat) => "wiring",
        (_, Impression::Small) => "contact",
        (_, Impression::Cut) => "range",
        (_, Impression::Fuzzy) => "hum",
        (_, Impression::Jumpy | Impression::Wandering) => "motion",
        (_, Impression::Crowded) => "time_base",
        (_, Impression::Paper) => "recording",
        // A wave of another shape has many causes; no one skill stands for them.
        (_, Impression::Misshapen) => return None,
    })
}
