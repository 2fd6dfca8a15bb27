//! An attempt as it was handed in, and doing it again.

use super::error::HandinError;
use super::grade::Graded;
use super::result::{Claim, Said};
use super::set::{One, Set, bench_mark};
use crate::scenario::digest::{digest, hex};
use crate::session::attempt::Logged;
use crate::session::compact::{About, Code, WHOLE_BYTES};
use crate::session::{Session, save};

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
    /// What a result file says besides.
    pub said: Option<Said>,
    /// What a code claims, see [`Code::outcome`].
    pub outcome: Option<u64>,
    /// The first bytes of the whole digest by which a code was judged.
    pub whole: Option<[u8; WHOLE_BYTES]>,
    /// What is wrong with it already before the replay.
    pub doubts: Vec<HandinError>,
}

impl Handed {
    /// What a code hands in. Its scenario is one of those set; else `scenario_of` finds the text that the code
    /// [is of](Code::is_of).
    pub fn of_code(
        text: &str,
        set: &Set,
        scenario_of: impl FnOnce(&Code) -> Option<String>,
    ) -> Result<Self, HandinError> {
        let code = Code::read(text)?;
        let Some(scenario) = set.text_of(&code).map(str::to_string).or_else(|| scenario_of(&code)) else {
            let digest = hex(&code.scenario);
            return Err(if set.is_empty() {
                HandinError::ScenarioMissing { digest }
            } else {
                HandinError::OtherBench { digest }
            });
        };
        let Code { seed, samples, outcome, program, about, log, whole, .. } = code;
        let (outcome, whole, claims, said, doubts) = (Some(outcome), Some(whole), None, None, Vec::new());
        Ok(Self { about, program, scenario, seed, samples, log, claims, said, outcome, whole, doubts })
    }

    /// The one of those set whose bench this has.
    pub(super) fn one<'a>(&self, set: &'a Set) -> Option<&'a One> {
        set.of_bench(&bench_mark(&self.scenario))
    }

    /// Whether it was judged by these very words and criteria.
    pub(super) fn is_whole(&self, one: &One) -> bool {
        match self.whole {
            Some(start) => one.whole[..WHOLE_BYTES] == start,
            None => one.whole == digest(&self.scenario),
        }
    }

    /// Begins to do it again, piece by piece. What was set judges: a file's attempt runs by its own criteria and is judged
    /// by those set as well; a code has none but those at hand.
    pub fn begin(&self, set: &Set) -> Result<save::Replay, HandinError> {
        let mut replay = save::Replay::new(&self.scenario, self.seed, self.samples, &self.log)
            .map_err(|e| HandinError::Replay { found: e.to_string() })?;
        if let Some(one) = self.one(set).filter(|one| !self.is_whole(one)) {
            match self.whole {
                Some(_) => replay.be_loose(),
                None => replay.judge_by(one.terms.clone()),
            }
        }
        Ok(replay)
    }

    /// Does it all again, without asking what was set.
    pub fn replay(&self) -> Result<Session, HandinError> {
        save::replay(&self.scenario, self.seed, self.samples, &self.log)
            .map_err(|e| HandinError::Replay { found: e.to_string() })
    }

    /// Replays it and draws up what came of it, without asking what was set.
    pub fn grade(&self) -> Result<Graded, HandinError> {
        self.grade_by(&Set::default())
    }

    /// Replays it, compares it with what was set, and draws up what came of it.
    pub fn grade_by(&self, set: &Set) -> Result<Graded, HandinError> {
        let mut replay = self.begin(set)?;
        while !replay.step(&self.log, u64::MAX).map_err(|e| HandinError::Replay { found: e.to_string() })? {}
        Ok(Graded::of(self, &mut replay, set))
    }
}
