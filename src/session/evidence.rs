//! What an attempt says once it has been checked, in types: for grading, and written down for the page to keep.

use super::attempt::Session;
use super::own::OwnReading;
use super::view;
use super::worksheet::Field;
use crate::assess::misreading::Misreading;
use crate::assess::rubric::READABLE_S;
use crate::assess::skill::{self, Aid, Attempted, Mended, Said};
use crate::assess::task::Kind;
use crate::deed::Kind as Deed;
use crate::plain::{fields, json};
use crate::scenario::fault::{self, Impression};
use crate::scenario::schema::Start;
use serde_json::Value;
use sha2::{Digest, Sha256};

/// Number of the form in which evidence is kept.
const FORM: u32 = 1;

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
            "skills": fields(&mut skills), "rubric": {"total": self.points, "ready": self.ready},
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
            .filter(|_| self.sheet.over || !self.from_pool())
            .filter_map(|f| {
                let named = scenario.name_faults.then(|| self.sheet.named.iter().any(|n| n == f.id));
                Some(Mended { skill: skill_for(f)?, gone: !check.left.contains(&f.id), named })
            })
            .collect();
        let based = did(Deed::TimeBase).then(|| {
            let views = [self.recording().map_or(0.0, |t| t.view_s), self.trace.time_base_s];
            views.iter().any(|s| (READABLE_S[0]..=READABLE_S[1]).contains(s))
        });
        let skills = skill::evidence(&Attempted {
            aid: self.help.aid.unwrap_or_default(),
            wrong: &self.sheet.wrong,
            last: &check.report,
            faults: &faults,
            recorded: did(Deed::Record) && self.trace.recordings.len() > self.trace.recordings_before,
            apart: scenario.bench.start == Start::Apart,
            ranged: did(Deed::Range),
            readable: based,
        });
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
            points: check.rubric.total,
            ready: check.rubric.ready(),
        })
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
