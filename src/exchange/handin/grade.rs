//! Replays what was handed in and compares it with what it claims.

use super::result::Verdict;
use crate::assess::skill::SKILLS;
use crate::plain::json;
use crate::scenario::assignment::{Seeds, hex};
use crate::scenario::fault;
use crate::session::action::{Action, Page};
use crate::session::attempt::Logged;
use crate::session::compact::{About, Code, CodeError};
use crate::session::{Session, save, seeds, symptom};
use serde::Serialize;
use serde_json::Value;
use sha2::{Digest, Sha256};
use thiserror::Error;

/// What is wrong with something handed in. Serialises as a code with arguments for the page.
#[derive(Clone, Debug, Error, PartialEq, Eq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
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
        field: String,
        /// What the result says.
        claimed: String,
        /// What comes out.
        replayed: String,
    },
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
    pub claims: Option<Verdict>,
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

/// A fault of the scenario, and what became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FaultLeft {
    /// Its name in the catalogue.
    pub id: String,
    /// Whether its cause is gone; a fault that cannot be mended counts as gone when it was named.
    pub cleared: bool,
    /// Whether the student named it.
    pub named: bool,
}

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
    /// Its digest, first eight bytes in hexadecimal digits.
    pub digest: String,
    /// Seed in decimal digits.
    pub seed: String,
    /// Whether the seed is the student's own of this assignment; none where the scenario does not say.
    pub own_seed: Option<bool>,
    /// What does not fit; nothing when it is verified.
    pub doubts: Vec<HandinError>,
    /// What came of it.
    pub verdict: Verdict,
    /// Every judged step: its name and how it went.
    pub steps: Vec<(String, String)>,
    /// The faults of the scenario.
    pub faults: Vec<FaultLeft>,
    /// Points of the rubric, where there is one.
    pub score: Option<f64>,
    /// Whether the rubric calls the student ready: enough points, and no row that was asked for empty.
    pub rubric_ready: bool,
    /// Time at the bench, min.
    pub minutes: f64,
    /// Number of actions.
    pub actions: usize,
    /// Hints asked for.
    pub hints: usize,
    /// Codes of the remarks on the way of working.
    pub process: Vec<String>,
    /// Evidence on each skill, where there is some: pass, fail or none.
    pub skills: Vec<(String, String)>,
    /// Two results with the same mark have the same log under the same seed.
    pub mark: String,
}

impl Graded {
    /// Draws up what came of an attempt that was handed in and replayed.
    pub fn of(handed: &Handed, session: &Session) -> Self {
        let verdict = Verdict::of(session);
        let mut doubts = handed.doubts.clone();
        if let Some(claims) = &handed.claims {
            doubts.extend(difference(claims, &verdict));
        }
        if let Some(claimed) = handed.outcome.filter(|o| *o != session.outcome()) {
            let told =
                |o: u64| format!("{} checks, {}", o / 2, if o % 2 == 1 { "passed" } else { "not passed" });
            doubts.push(HandinError::Differs {
                field: "outcome".into(),
                claimed: told(claimed),
                replayed: told(session.outcome()),
            });
        }
        // A change of the program is the likeliest reason, and no fault of the student's.
        let ours = env!("CARGO_PKG_VERSION");
        if !doubts.is_empty() && handed.program != ours {
            doubts.push(HandinError::OtherProgram { found: handed.program.clone(), ours: ours.into() });
        }
        let view = session.view();
        let check = &view["check"];
        let word = |v: &Value| v.as_str().unwrap_or_default().to_string();
        let steps = |v: &Value| v.as_array().cloned().unwrap_or_default();
        let rubric = &check["rubric"];
        let evidence = session.evidence().unwrap_or_default();
        let scenario = session.scenario();
        let named = |id: &str| view["named"].as_array().is_some_and(|n| n.iter().any(|v| v == id));
        let faults = scenario.map_or(&[][..], |s| &s.fault).iter().filter_map(|f| fault::named(&f.name));
        let log = json!((handed.seed, &handed.log)).to_string();
        Self {
            about: handed.about.clone(),
            program: handed.program.clone(),
            scenario: scenario.map_or_else(String::new, |s| s.id.clone()),
            title: scenario.map_or_else(String::new, |s| s.title.clone()),
            digest: hex(&crate::scenario::assignment::digest(&handed.scenario)[..8]),
            seed: handed.seed.to_string(),
            own_seed: own_seed(handed, session),
            doubts,
            steps: worst(steps(&check["steps"]).iter().map(|s| (word(&s["step"]), word(&s["verdict"])))),
            faults: faults
                .map(|f| FaultLeft {
                    id: f.id.into(),
                    cleared: if f.curable { !symptom::cause_remains(session, f) } else { named(f.id) },
                    named: named(f.id),
                })
                .collect(),
            score: rubric["total"].as_f64(),
            rubric_ready: rubric["ready"].as_bool().unwrap_or(false) && verdict.passed,
            minutes: session.chain().map_or(0.0, |c| c.time_s() / 60.0),
            actions: handed.log.len(),
            hints: handed.log.iter().filter(|l| l.action == Action::Page(Page::Hint {})).count(),
            process: steps(&check["process"]).iter().map(|s| word(&s["code"])).collect(),
            skills: SKILLS
                .into_iter()
                .map(|skill| (skill.to_string(), word(&evidence["skills"][skill]["got"])))
                .filter(|(_, got)| !got.is_empty())
                .collect(),
            mark: hex(&Sha256::digest(log.as_bytes())[..8]),
            verdict,
        }
    }

    /// Whether all of it fits.
    pub fn verified(&self) -> bool {
        self.doubts.is_empty()
    }
}

/// Each step once, with what is worst about it.
fn worst(findings: impl Iterator<Item = (String, String)>) -> Vec<(String, String)> {
    let mut steps: Vec<(String, String)> = Vec::new();
    for (step, verdict) in findings {
        match steps.iter_mut().find(|(known, _)| *known == step) {
            Some((_, so_far)) if so_far == "right" || so_far == "edge" => *so_far = verdict,
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

/// Where a claim and a replay part.
fn difference(claims: &Verdict, replayed: &Verdict) -> Option<HandinError> {
    if claims == replayed {
        return None;
    }
    let (a, b) = (json!(claims), json!(replayed));
    let field = a.as_object()?.keys().find(|key| a[*key] != b[*key])?.clone();
    let short = |v: &Value| v.to_string().chars().take(200).collect::<String>();
    Some(HandinError::Differs { claimed: short(&a[&field]), replayed: short(&b[&field]), field })
}
