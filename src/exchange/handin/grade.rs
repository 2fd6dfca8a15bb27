//! Compares the replay of what was handed in with what it claims and with what was set, and draws up what came of it.

use super::error::{HandinError, Name};
use super::handed::Handed;
use super::otherwise::otherwise;
use super::remark::{self, Remark};
use super::result::{Claim, Said};
use super::set::{BenchMark, Compared, Set, bench_mark};
use super::told;
use super::trail::Trail;
use crate::assess::misreading::Misreading;
use crate::assess::own::PREFIX;
use crate::assess::skill::Got;
use crate::assess::verdict::{Step, Verdict};
use crate::plain::json;
use crate::scenario::assignment::{Assignment, Seeds};
use crate::scenario::fault;
use crate::session::action::{Action, Page};
use crate::session::compact::About;
use crate::session::judging::Checked;
use crate::session::{Session, save, seeds, symptom};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use sha2::{Digest, Sha256};
use thiserror::Error;

/// What came of an attempt. A replay must come to the same.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Outcome {
    /// Number of checks.
    pub tries: u32,
    /// Whether the last check was passed.
    pub passed: bool,
    /// The first step that went wrong.
    pub first_wrong: Option<Step>,
    /// Codes of the judged steps.
    pub codes: Vec<String>,
    /// The misreading that explains what was typed.
    pub misreading: Option<Misreading>,
    /// The name of the instructor's own misreading that explains it; then no other is named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub own: Option<String>,
}

impl Outcome {
    /// What came of an attempt.
    pub fn of(session: &Session) -> Self {
        session.check().map_or_else(Self::default, Self::of_check)
    }

    /// What explains what was typed, by its name; those of the instructor's own have a [prefix](PREFIX).
    pub fn explained(&self) -> Option<String> {
        let own = self.own.as_ref().map(|name| format!("{PREFIX}{name}"));
        own.or_else(|| self.misreading.map(|m| m.name().into()))
    }

    /// What came of a check.
    pub fn of_check(check: &Checked) -> Self {
        Self {
            tries: check.tries,
            passed: check.report.passed,
            first_wrong: check.report.first_wrong,
            codes: check.report.steps.iter().map(|s| s.code.into()).collect(),
            misreading: check.misreading.as_ref().map(|m| m.id),
            own: check.own.as_ref().map(|own| own.name.clone()),
        }
    }
}

/// A fault of the scenario, and what became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FaultLeft {
    /// Its name in the catalogue.
    #[serde(deserialize_with = "told::fault")]
    pub id: Name,
    /// Whether its cause is gone; a fault that cannot be mended counts as gone when it was named.
    pub cleared: bool,
    /// Whether the student named it.
    pub named: bool,
}

/// The first bytes of a SHA-256.
pub type Mark = [u8; 8];

/// What keeps a result from counting although it may well verify.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Against {
    /// Its bench is not the one that was set.
    #[error("not the scenario that was assigned")]
    OtherBench,
    /// The seed does not come from the assignment's key and the student's code.
    #[error("not the scenario of this student ID")]
    OtherSeed,
    /// It is a try that the student does not have.
    #[error("attempt {n} of {of}: more attempts than allowed")]
    TooManyTries {
        /// Which try.
        n: u32,
        /// How many there are.
        of: u32,
    },
    /// Misreadings of its own told what is right.
    #[error("it had misreadings that were not assigned and that tell the right answer")]
    ToldTruth,
}

impl Against {
    /// The code by which the page and a class's summary know it.
    pub const fn code(&self) -> &'static str {
        match self {
            Against::OtherBench => "other_bench",
            Against::OtherSeed => "other_seed",
            Against::TooManyTries { .. } => "too_many_tries",
            Against::ToldTruth => "told_truth",
        }
    }

    /// The arguments that go with the code.
    pub fn args(&self) -> Value {
        match self {
            Against::TooManyTries { n, of } => json!({"n": n, "of": of}),
            _ => json!({}),
        }
    }
}

/// What came of something handed in. All of it comes from the replay but `about` and `program`. As JSON it goes from one
/// thread or machine to another; it is never believed from a file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Graded {
    /// Who and when, as told by the page.
    pub about: About,
    /// Version of the program that wrote it.
    pub program: String,
    /// Name of the scenario.
    pub scenario: String,
    /// Its heading.
    pub title: String,
    /// The first bytes of its bench digest.
    pub digest: BenchMark,
    /// How it stands to what was set.
    pub compared: Compared,
    /// Whether it passed by the criteria of its own time, where those set now are others.
    pub passed_before: Option<bool>,
    /// What keeps it from counting.
    pub against: Vec<Against>,
    /// What a log made by a program looks like.
    pub remarks: Vec<Remark>,
    /// Where cursors and marks were put last, s.
    pub touched: Vec<f64>,
    /// Seed.
    pub seed: u64,
    /// Whether the seed is the student's own of this assignment; none where the scenario does not say.
    pub own_seed: Option<bool>,
    /// What does not fit; nothing when it is verified.
    pub doubts: Vec<HandinError>,
    /// What came of it.
    pub outcome: Outcome,
    /// What the first check came to, where there were more.
    pub first: Option<Outcome>,
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
    pub process: Vec<String>,
    /// Evidence on each skill; nothing before a check.
    #[serde(deserialize_with = "told::skills")]
    pub skills: Vec<(Name, Got)>,
    /// Two results with the same mark have the same log under the same seed.
    pub mark: Mark,
    /// What the student answered last when asked whether the result may be used in a study; none where nothing was answered.
    #[serde(default)]
    pub consent: Option<bool>,
    /// What was done with what pauses.
    pub trail: Trail,
    /// Tries that there are by what was set, or else by its own text, where they are counted.
    pub attempts: Option<u32>,
}

impl Graded {
    /// Draws up what came of an attempt that was handed in and replayed to its end.
    pub fn of(handed: &Handed, replay: &mut save::Replay, set: &Set) -> Self {
        let own_try = own_try(handed, replay.session());
        let doubts = doubts(handed, replay.session(), set, own_try);
        let one = handed.one(set);
        let compared = match one {
            None if set.is_empty() => Compared::Nothing,
            None => Compared::Other,
            Some(one) if handed.is_whole(one) => Compared::Same,
            Some(_) => Compared::Changed,
        };
        let passed_before = match (compared, handed.outcome) {
            (Compared::Changed, Some(claimed)) => Some(claimed % 2 == 1),
            _ => replay.take_others(),
        };
        let first = replay.first_check().map(Outcome::of_check);
        let session = replay.session();
        let outcome = Outcome::of(session);
        let (check, scenario) = (session.check(), session.scenario());
        let named = |id: &str| session.named().iter().any(|n| n == id);
        let faults = scenario.map_or(&[][..], |s| &s.fault).iter().filter_map(|f| fault::named(&f.name));
        let (other_words, told_truth) = one.map_or((None, None), |one| otherwise(handed, one));
        let own_attempts = || scenario.and_then(|s| s.assignment.as_ref()).and_then(|a| a.attempts);
        let attempts = one.map_or_else(own_attempts, |one| one.attempts);
        let trail = Trail::of(&handed.log, scenario.map_or(0, |s| s.recorder.rate_hz));
        let log = json!((handed.seed, &handed.log)).to_string();
        let mut mark = Mark::default();
        mark.copy_from_slice(&Sha256::digest(log.as_bytes())[..8]);
        Self {
            about: handed.about.clone(),
            program: handed.program.clone(),
            scenario: scenario.map_or_else(String::new, |s| s.id.clone()),
            title: scenario.map_or_else(String::new, |s| s.title.clone()),
            digest: bench_mark(&handed.scenario),
            compared,
            passed_before,
            against: against(compared, own_try, attempts).chain(told_truth).collect(),
            remarks: remark::remarks(handed, session).into_iter().chain(other_words).collect(),
            touched: remark::touched(&handed.log),
            seed: handed.seed,
            own_seed: own_try.map(|n| n.is_some()),
            doubts,
            steps: check.map_or_else(Vec::new, |c| worst(c.report.steps.iter().map(|s| (s.step, s.verdict)))),
            faults: faults
                .map(|f| FaultLeft {
                    id: f.id,
                    cleared: if f.curable { !symptom::cause_remains(session, f) } else { named(f.id) },
                    named: named(f.id),
                })
                .collect(),
            score: check.map(|c| c.rubric.total),
            rubric_ready: check.is_some_and(|c| c.rubric.ready() && c.report.passed),
            minutes: minutes(session, &trail),
            actions: handed.log.len(),
            hints: handed.log.iter().filter(|l| l.action == Action::Page(Page::Hint {})).count(),
            process: check.map_or_else(Vec::new, |c| c.process.iter().map(|r| r.code.into()).collect()),
            skills: session
                .evidence()
                .map_or_else(Vec::new, |e| e.skills.iter().map(|(skill, said)| (*skill, said.got)).collect()),
            mark,
            consent: handed.log.iter().rev().find_map(|logged| match logged.action {
                Action::Page(Page::Consent { given }) => Some(given),
                _ => None,
            }),
            trail,
            attempts,
            first: first.filter(|first| first.tries < outcome.tries),
            outcome,
        }
    }

    /// Whether all of it fits.
    pub fn verified(&self) -> bool {
        self.doubts.is_empty()
    }

    /// Whether it counts towards being ready: it is verified, and nothing is against it.
    pub fn counts(&self) -> bool {
        self.verified() && self.against.is_empty()
    }

    /// Whether the criteria set now have turned the verdict: what it was.
    pub fn turned(&self) -> Option<bool> {
        self.passed_before.filter(|before| *before != self.outcome.passed)
    }
}

/// What does not fit: before the replay, and by what came out of it.
fn doubts(handed: &Handed, session: &Session, set: &Set, own_try: Option<Option<u32>>) -> Vec<HandinError> {
    let mut doubts = handed.doubts.clone();
    if let Some(claims) = &handed.claims {
        doubts.extend(difference(claims, &Claim::of(&Outcome::of(session))));
    }
    if let Some(said) = &handed.said {
        doubts.extend(other_said(said, &Said::of(session)));
    }
    // Which try it is follows from the seed, where that is the student's.
    if let Some(n) = own_try.flatten().filter(|n| handed.about.tries != *n) {
        doubts.push(HandinError::Differs {
            field: "try",
            claimed: handed.about.tries.to_string(),
            replayed: n.to_string(),
        });
    }
    // By other criteria than its own a code may well come to something else.
    let own_criteria = handed.one(set).is_none_or(|one| handed.is_whole(one));
    if let Some(claimed) = handed.outcome.filter(|o| own_criteria && *o != session.outcome()) {
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
            Some((_, so_far)) if so_far.holds() => *so_far = verdict,
            Some(_) => {}
            None => steps.push((step, verdict)),
        }
    }
    steps
}

/// Most tries that a seed is looked for among.
const MOST_TRIES: u32 = 99;

/// Which try of the student's the seed is of by the assignment's key; `Some(None)` where it is none of them, nothing where
/// the scenario is no assignment.
fn own_try(handed: &Handed, session: &Session) -> Option<Option<u32>> {
    let Assignment { key, seeds, .. } = session.scenario()?.assignment.as_ref()?;
    let student = match seeds {
        Seeds::Each => handed.about.student.as_str(),
        Seeds::Same => "",
    };
    Some((1..=MOST_TRIES).find(|n| seeds::seed(key, student, *n) == handed.seed))
}

/// What keeps a result from counting, given how many tries there are.
fn against(
    compared: Compared,
    own_try: Option<Option<u32>>,
    attempts: Option<u32>,
) -> impl Iterator<Item = Against> {
    let too_many = own_try.flatten().zip(attempts).filter(|(n, of)| n > of);
    [
        (compared == Compared::Other).then_some(Against::OtherBench),
        (own_try == Some(None)).then_some(Against::OtherSeed),
        too_many.map(|(n, of)| Against::TooManyTries { n, of }),
    ]
    .into_iter()
    .flatten()
}

/// So long the bench may go on after the last deed of a log and be the student's time, s.
const IDLE_S: f64 = 600.0;

/// Time at the bench, min: without what it went on for by itself after the last deed, where that is long.
fn minutes(session: &Session, trail: &Trail) -> f64 {
    let all_s = session.chain().map_or(0.0, |c| c.time_s());
    let s = if all_s - trail.end_s() > IDLE_S { trail.end_s() } else { all_s };
    s / 60.0
}

/// Where a file says something else than the replay, besides the verdict: the first such field.
fn other_said(said: &Said, replayed: &Said) -> Option<HandinError> {
    let differs = |field, claimed: &Value, replayed: &Value| HandinError::Differs {
        field,
        claimed: short(claimed),
        replayed: short(replayed),
    };
    let pairs = [
        ("scenario_id", json!(said.scenario_id), json!(replayed.scenario_id)),
        ("answers", json!(said.answers), json!(replayed.answers)),
        ("named", json!(said.named), json!(replayed.named)),
    ];
    pairs.iter().find(|(_, a, b)| a != b).map(|(field, a, b)| differs(field, a, b))
}

/// The start of a value as text.
fn short(value: &Value) -> String {
    value.to_string().chars().take(200).collect()
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
