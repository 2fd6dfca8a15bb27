//! Replays what was handed in and compares it with what it claims.

use super::result::Claim;
use crate::assess::misreading::Misreading;
use crate::assess::skill::Got;
use crate::assess::verdict::{Step, Verdict};
use crate::plain::json;
use crate::scenario::assignment::{Seeds, hex};
use crate::scenario::fault;
use crate::session::action::{Action, Page};
use crate::session::attempt::Logged;
use crate::session::compact::{About, Code, CodeError};
use crate::session::{Session, save, seeds, symptom};
use serde_json::Value;
use sha2::{Digest, Sha256};
use thiserror::Error;

/// What is wrong with something handed in. To the page it is a code with arguments.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum HandinError {
    /// Longer than any result.
    #[error("{bytes} bytes; a result has at most {most}")]
    TooLong {
        /// How long it is.
        bytes: usize,
        /// How long it may be.
        most: usize,
    },
    /// Something else, or cut short.
    #[error("not a result file: {found}")]
    NoResult {
        /// What was found.
        found: String,
    },
    /// Written by another version.
    #[error("result form {found}; this version reads form {}", super::result::VERSION)]
    Version {
        /// Which.
        found: u64,
    },
    /// A code that cannot be read.
    #[error("{found}")]
    Code {
        /// Why.
        found: String,
    },
    /// A code whose scenario is not at hand.
    #[error("the code belongs to a scenario that is not at hand (digest {digest})")]
    ScenarioMissing {
        /// The first eight bytes of its digest.
        digest: String,
    },
    /// The checksum does not fit.
    #[error("the checksum does not fit: the file was changed after it was written")]
    Changed {},
    /// The scenario's digest does not fit its text.
    #[error("the scenario's text does not fit its digest")]
    OtherScenario {},
    /// It cannot be done again.
    #[error("it cannot be replayed: {found}")]
    Replay {
        /// Why.
        found: String,
    },
    /// It was made by another version of the program, which may judge otherwise.
    #[error("it was made by version {found}, this is version {ours}: grade it with that one")]
    OtherProgram {
        /// The version that made it.
        found: String,
        /// This version.
        ours: String,
    },
    /// What comes out of a replay is not what it claims.
    #[error("a replay comes out otherwise: {field} is {replayed}, the result says {claimed}")]
    Differs {
        /// Where.
        field: &'static str,
        /// What the result says.
        claimed: String,
        /// What comes out.
        replayed: String,
    },
}

impl HandinError {
    /// The code by which the page and a class's summary know it.
    pub const fn code(&self) -> &'static str {
        match self {
            HandinError::TooLong { .. } => "too_long",
            HandinError::NoResult { .. } => "no_result",
            HandinError::Version { .. } => "version",
            HandinError::Code { .. } => "code",
            HandinError::ScenarioMissing { .. } => "scenario_missing",
            HandinError::Changed {} => "changed",
            HandinError::OtherScenario {} => "other_scenario",
            HandinError::Replay { .. } => "replay",
            HandinError::OtherProgram { .. } => "other_program",
            HandinError::Differs { .. } => "differs",
        }
    }

    /// The arguments that go with the code.
    pub fn args(&self) -> Value {
        match self {
            HandinError::TooLong { bytes, most } => json!({"bytes": bytes, "most": most}),
            HandinError::NoResult { found } | HandinError::Code { found } | HandinError::Replay { found } => {
                json!({"found": found})
            }
            HandinError::Version { found } => json!({"found": found}),
            HandinError::ScenarioMissing { digest } => json!({"digest": digest}),
            HandinError::Changed {} | HandinError::OtherScenario {} => json!({}),
            HandinError::OtherProgram { found, ours } => json!({"found": found, "ours": ours}),
            HandinError::Differs { field, claimed, replayed } => {
                json!({"field": field, "claimed": claimed, "replayed": replayed})
            }
        }
    }
}

impl From<CodeError> for HandinError {
    fn from(error: CodeError) -> Self {
        HandinError::Code { found: error.to_string() }
    }
}

/// An attempt as it was handed in.
#[derive(Clone, Debug, PartialEq)]
pub struct Handed {
    /// Who and when, as told by the page.
    pub about: About,
    /// Version of the program that wrote it.
    pub program: String,
    /// Text of the scenario.
    pub scenario: String,
    /// Seed.
    pub seed: u64,
    /// Samples at the end.
    pub samples: u64,
    /// What was done.
    pub log: Vec<Logged>,
    /// What a result file claims.
    pub claims: Option<Claim>,
    /// What a code claims, see [`Code::outcome`].
    pub outcome: Option<u64>,
    /// What is wrong with it already before the replay.
    pub doubts: Vec<HandinError>,
}

impl Handed {
    /// What a code hands in; `scenario_of` finds a scenario's text that the code [is of](Code::is_of).
    pub fn of_code(
        text: &str,
        scenario_of: impl FnOnce(&Code) -> Option<String>,
    ) -> Result<Self, HandinError> {
        let code = Code::read(text)?;
        let Some(scenario) = scenario_of(&code) else {
            return Err(HandinError::ScenarioMissing { digest: hex(&code.scenario) });
        };
        let Code { seed, samples, outcome, program, about, log, .. } = code;
        let (outcome, claims, doubts) = (Some(outcome), None, Vec::new());
        Ok(Self { about, program, scenario, seed, samples, log, claims, outcome, doubts })
    }

    /// Begins to do it again, piece by piece.
    pub fn begin(&self) -> Result<save::Replay, HandinError> {
        save::Replay::new(&self.scenario, self.seed, self.samples, &self.log)
            .map_err(|e| HandinError::Replay { found: e.to_string() })
    }

    /// Does it all again.
    pub fn replay(&self) -> Result<Session, HandinError> {
        save::replay(&self.scenario, self.seed, self.samples, &self.log)
            .map_err(|e| HandinError::Replay { found: e.to_string() })
    }

    /// Replays it and draws up what came of it.
    pub fn grade(&self) -> Result<Graded, HandinError> {
        Ok(Graded::of(self, &self.replay()?))
    }
}

/// What came of an attempt. A replay must come to the same.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// Number of checks.
    pub tries: u32,
    /// Whether the last check was passed.
    pub passed: bool,
    /// The first step that went wrong.
    pub first_wrong: Option<Step>,
    /// Codes of the judged steps.
    pub codes: Vec<&'static str>,
    /// The misreading that explains what was typed.
    pub misreading: Option<Misreading>,
}

impl Outcome {
    /// What came of an attempt.
    pub fn of(session: &Session) -> Self {
        session.check().map_or_else(Self::default, |check| Self {
            tries: check.tries,
            passed: check.report.passed,
            first_wrong: check.report.first_wrong,
            codes: check.report.steps.iter().map(|s| s.code).collect(),
            misreading: check.misreading.as_ref().map(|m| m.id),
        })
    }
}

/// A fault of the scenario, and what became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaultLeft {
    /// Its name in the catalogue.
    pub id: &'static str,
    /// Whether its cause is gone; a fault that cannot be mended counts as gone when it was named.
    pub cleared: bool,
    /// Whether the student named it.
    pub named: bool,
}

/// The first bytes of a SHA-256.
pub type Mark = [u8; 8];

/// What came of something handed in. All of it comes from the replay but `about` and `program`.
#[derive(Clone, Debug, PartialEq)]
pub struct Graded {
    /// Who and when, as told by the page.
    pub about: About,
    /// Version of the program that wrote it.
    pub program: String,
    /// Name of the scenario.
    pub scenario: String,
    /// Its heading.
    pub title: String,
    /// Its digest.
    pub digest: Mark,
    /// Seed.
    pub seed: u64,
    /// Whether the seed is the student's own of this assignment; none where the scenario does not say.
    pub own_seed: Option<bool>,
    /// What does not fit; nothing when it is verified.
    pub doubts: Vec<HandinError>,
    /// What came of it.
    pub outcome: Outcome,
    /// Every judged step, and what is worst about it.
    pub steps: Vec<(Step, Verdict)>,
    /// The faults of the scenario.
    pub faults: Vec<FaultLeft>,
    /// Points of the rubric, of twenty; none before a check.
    pub score: Option<u32>,
    /// Whether the rubric calls the student ready: enough points, and no row that was asked for empty.
    pub rubric_ready: bool,
    /// Time at the bench, min.
    pub minutes: f64,
    /// Number of actions.
    pub actions: usize,
    /// Hints asked for.
    pub hints: usize,
    /// Codes of the remarks on the way of working.
    pub process: Vec<&'static str>,
    /// Evidence on each skill; nothing before a check.
    pub skills: Vec<(&'static str, Got)>,
    /// Two results with the same mark have the same log under the same seed.
    pub mark: Mark,
}

impl Graded {
    /// Draws up what came of an attempt that was handed in and replayed.
    pub fn of(handed: &Handed, session: &Session) -> Self {
        let outcome = Outcome::of(session);
        let (check, scenario) = (session.check(), session.scenario());
        let named = |id: &str| session.named().iter().any(|n| n == id);
        let faults = scenario.map_or(&[][..], |s| &s.fault).iter().filter_map(|f| fault::named(&f.name));
        let log = json!((handed.seed, &handed.log)).to_string();
        let mut digest = Mark::default();
        digest.copy_from_slice(&crate::scenario::assignment::digest(&handed.scenario)[..8]);
        let mut mark = Mark::default();
        mark.copy_from_slice(&Sha256::digest(log.as_bytes())[..8]);
        Self {
            about: handed.about.clone(),
            program: handed.program.clone(),
            scenario: scenario.map_or_else(String::new, |s| s.id.clone()),
            title: scenario.map_or_else(String::new, |s| s.title.clone()),
            digest,
            seed: handed.seed,
            own_seed: own_seed(handed, session),
            doubts: doubts(handed, session, &outcome),
            steps: check.map_or_else(Vec::new, |c| worst(c.report.steps.iter().map(|s| (s.step, s.verdict)))),
            faults: faults
                .map(|f| FaultLeft {
                    id: f.id,
                    cleared: if f.curable { !symptom::cause_remains(session, f) } else { named(f.id) },
                    named: named(f.id),
                })
                .collect(),
            score: check.map(|c| c.rubric.total),
            rubric_ready: check.is_some_and(|c| c.rubric.ready && c.report.passed),
            minutes: session.chain().map_or(0.0, |c| c.time_s() / 60.0),
            actions: handed.log.len(),
            hints: handed.log.iter().filter(|l| l.action == Action::Page(Page::Hint {})).count(),
            process: check.map_or_else(Vec::new, |c| c.process.iter().map(|r| r.code).collect()),
            skills: session
                .evidence()
                .map_or_else(Vec::new, |e| e.skills.iter().map(|(skill, said)| (*skill, said.got)).collect()),
            mark,
            outcome,
        }
    }

    /// Whether all of it fits.
    pub fn verified(&self) -> bool {
        self.doubts.is_empty()
    }
}

/// What does not fit: before the replay, and by what came out of it.
fn doubts(handed: &Handed, session: &Session, outcome: &Outcome) -> Vec<HandinError> {
    let mut doubts = handed.doubts.clone();
    if let Some(claims) = &handed.claims {
        doubts.extend(difference(claims, &Claim::of(outcome)));
    }
    if let Some(claimed) = handed.outcome.filter(|o| *o != session.outcome()) {
        let told = |o: u64| format!("{} checks, {}", o / 2, if o % 2 == 1 { "passed" } else { "not passed" });
        doubts.push(HandinError::Differs {
            field: "outcome",
            claimed: told(claimed),
            replayed: told(session.outcome()),
        });
    }
    // A change of the program is the likeliest reason, and no fault of the student's.
    let ours = env!("CARGO_PKG_VERSION");
    if !doubts.is_empty() && handed.program != ours {
        doubts.push(HandinError::OtherProgram { found: handed.program.clone(), ours: ours.into() });
    }
    doubts
}

/// Each step once, with what is worst about it.
fn worst(findings: impl Iterator<Item = (Step, Verdict)>) -> Vec<(Step, Verdict)> {
    let mut steps: Vec<(Step, Verdict)> = Vec::new();
    for (step, verdict) in findings {
        match steps.iter_mut().find(|(known, _)| *known == step) {
            Some((_, so_far)) if matches!(so_far, Verdict::Right | Verdict::Edge) => *so_far = verdict,
            Some(_) => {}
            None => steps.push((step, verdict)),
        }
    }
    steps
}

/// Whether the seed belongs to the student by the assignment's key.
fn own_seed(handed: &Handed, session: &Session) -> Option<bool> {
    let assignment = session.scenario()?.assignment.as_ref()?;
    let student = match assignment.seeds {
        Seeds::Each => handed.about.student.as_str(),
        Seeds::Same => "",
    };
    let most = assignment.attempts.unwrap_or(99);
    Some((1..=most).any(|n| seeds::seed(&assignment.key, student, n) == handed.seed))
}

/// Where a claim and a replay part: the first of their fields by its name.
fn difference(claims: &Claim, replayed: &Claim) -> Option<HandinError> {
    let fields = |c: &Claim| {
        [
            ("codes", json!(c.codes)),
            ("first_wrong", json!(c.first_wrong)),
            ("misreading", json!(c.misreading)),
            ("passed", json!(c.passed)),
            ("tries", json!(c.tries)),
        ]
    };
    let short = |v: &Value| v.to_string().chars().take(200).collect::<String>();
    let pairs = fields(claims).into_iter().zip(fields(replayed));
    pairs
        .filter(|(a, b)| a != b)
        .map(|((field, claimed), (_, replayed))| HandinError::Differs {
            field,
            claimed: short(&claimed),
            replayed: short(&replayed),
        })
        .next()
}
