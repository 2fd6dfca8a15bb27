//! Save and restore. A saved attempt is the scenario, the seed and the log; it is restored by doing it all again,
//! which gives the same samples.

use super::action::{Action, Page, Refusal};
use super::attempt::{Logged, MOST_ACTIONS, Session};
use super::judging::Checked;
use super::regrade::Terms;
use crate::chain::Chain;
use crate::deed::table::Pane;
use crate::plain;
use crate::recorder::settings::Change;
use crate::scenario::ScenarioError;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Version of the form in which attempts are saved.
pub const VERSION: u32 = 3;
/// Longest time of a bench, simulated s: there the world stands still, and what goes on longer is not replayed. It is what
/// a replay costs: a signal of 20 samples a second is worked out as finely as one of a thousand.
pub const MOST_BENCH_S: f64 = 6.0 * 3600.0;
/// Most samples of an attempt, which is what they take of memory: six hours at 1 kHz, less above.
pub const MOST_SAMPLES: u64 = 6 * 3600 * 1000;
/// Longest text of a saved attempt that is read, bytes: more than the most actions take.
pub const MOST_BYTES: usize = 8 << 20;

/// Samples that pass at once.
const PIECE: u64 = 1024;
/// By how much parts of a sample may add up over an attempt, s.
const SLACK_S: f64 = 1.0;

/// A saved attempt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Saved {
    /// [`VERSION`] when it was saved.
    pub version: u32,
    /// Text of the scenario file.
    pub scenario: String,
    /// Seed, in decimal digits: JavaScript's numbers do not hold all of them.
    pub seed: String,
    /// Samples made when it was saved.
    pub samples: u64,
    /// What was done.
    pub log: Vec<Logged>,
}

/// Why a saved attempt cannot be restored.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum RestoreError {
    /// The text is not a saved attempt.
    #[error("not a saved attempt: {0}")]
    Form(String),
    /// It was saved by another version.
    #[error("saved in form {found}, this is form {VERSION}")]
    Version {
        /// The version that it names.
        found: u32,
    },
    /// The seed is no number.
    #[error("seed: \"{0}\" is not a whole number from 0 to 18446744073709551615")]
    Seed(String),
    /// Its scenario is not usable.
    #[error("scenario: {0}")]
    Scenario(#[from] ScenarioError),
    /// It is longer than may be replayed.
    #[error("{what}: {found}, at most {most}")]
    TooLong {
        /// What is too long.
        what: &'static str,
        /// How long.
        found: u64,
        /// How long it may be.
        most: u64,
    },
    /// The samples at which things were done do not ascend.
    #[error("log entry {entry}: sample {at} comes before the one of the entry before it")]
    Order {
        /// Number of the entry, from 0.
        entry: usize,
        /// Its sample.
        at: u64,
    },
    /// An action is refused that was done when it was saved.
    #[error("log entry {entry}: refused ({refusal:?})")]
    Refused {
        /// Number of the entry, from 0.
        entry: usize,
        /// Why.
        refusal: Refusal,
    },
}

/// Samples that a bench has left at its present rate, before it stands still.
pub(super) fn samples_left(chain: &Chain) -> u64 {
    let seconds = (MOST_BENCH_S - chain.time_s()).max(0.0);
    let by_time = (seconds * f64::from(chain.settings().rate_hz)) as u64;
    by_time.min(MOST_SAMPLES.saturating_sub(chain.samples()))
}

/// Reads a seed from decimal digits.
pub fn seed(text: &str) -> Result<u64, RestoreError> {
    text.trim().parse().map_err(|_| RestoreError::Seed(text.chars().take(40).collect()))
}

/// Does a log again: a scenario's text, a seed, the samples at the end, what was done.
pub fn replay(scenario: &str, seed: u64, samples: u64, log: &[Logged]) -> Result<Session, RestoreError> {
    let mut replay = Replay::new(scenario, seed, samples, log)?;
    while !replay.step(log, u64::MAX)? {}
    Ok(replay.session)
}

/// A replay that can be done piece by piece, so that a page does not stand still meanwhile.
#[derive(Clone, Debug)]
pub struct Replay {
    session: Session,
    entry: usize,
    samples: u64,
    /// Whether it is known how long the bench will run.
    weighed: bool,
    loose: bool,
    first: Option<Checked>,
}

impl Replay {
    /// Begins to do `log` again; the same log is given to each [`Replay::step`].
    pub fn new(scenario: &str, seed: u64, samples: u64, log: &[Logged]) -> Result<Self, RestoreError> {
        if log.len() > MOST_ACTIONS {
            let (found, most) = (log.len() as u64, MOST_ACTIONS as u64);
            return Err(RestoreError::TooLong { what: "log entries", found, most });
        }
        let end = log.iter().map(|l| l.at).max().unwrap_or(0).max(samples);
        if end > MOST_SAMPLES {
            return Err(RestoreError::TooLong { what: "samples", found: end, most: MOST_SAMPLES });
        }
        Ok(Self {
            session: Session::new(scenario, seed)?,
            entry: 0,
            samples,
            weighed: false,
            loose: false,
            first: None,
        })
    }

    /// Has it judged by other criteria at the end.
    pub fn judge_by(&mut self, terms: Terms) {
        self.session.judge_by(terms);
    }

    /// Passes over what was done on the worksheet and is refused now: by other criteria the attempt ends elsewhere.
    pub fn be_loose(&mut self) {
        self.loose = true;
    }

    /// At the end: puts what the other criteria come to in the place of what the check came to; whether it was passed before.
    pub fn take_others(&mut self) -> Option<bool> {
        self.session.take_others()
    }

    /// Goes on for about so many samples, at least some thousand; true when all is done.
    pub fn step(&mut self, log: &[Logged], samples: u64) -> Result<bool, RestoreError> {
        let mut left = samples.max(PIECE);
        while let Some(logged) = log.get(self.entry) {
            let entry = self.entry;
            // Help that sets a bench up comes first of all and may leave another rate.
            let help = matches!(logged.action, Action::Page(Page::Help { .. }));
            if !help || logged.at != self.session.samples() {
                self.weigh(log)?;
            }
            let wait = logged
                .at
                .checked_sub(self.session.samples())
                .ok_or(RestoreError::Order { entry, at: logged.at })?;
            if !self.run(wait, &mut left) {
                return Ok(false);
            }
            match self.session.act(&logged.action) {
                Ok(()) | Err(Refusal::TooShort {}) => {}
                Err(_) if self.loose && logged.action.kind().row().pane == Pane::Sheet => {}
                Err(refusal) => return Err(RestoreError::Refused { entry, refusal }),
            }
            self.entry += 1;
            if self.first.is_none() {
                self.first = self.session.check().cloned();
            }
        }
        self.weigh(log)?;
        let wait = self.samples.saturating_sub(self.session.samples());
        Ok(self.run(wait, &mut left))
    }

    /// Refuses at once what would run longer than a bench may, by the rates that the log sets.
    fn weigh(&mut self, log: &[Logged]) -> Result<(), RestoreError> {
        if self.weighed {
            return Ok(());
        }
        self.weighed = true;
        let Some(chain) = self.session.chain() else { return Ok(()) };
        let (mut told_s, mut rate_hz, mut at) =
            (chain.time_s(), f64::from(chain.settings().rate_hz), chain.samples());
        for logged in &log[self.entry..] {
            told_s += logged.at.saturating_sub(at) as f64 / rate_hz;
            at = at.max(logged.at);
            if let Action::Recorder(Change::Rate { hz }) = logged.action {
                rate_hz = f64::from(hz).max(1.0);
            }
        }
        told_s += self.samples.saturating_sub(at) as f64 / rate_hz;
        if told_s > MOST_BENCH_S + SLACK_S {
            let (found, most) = (told_s as u64, MOST_BENCH_S as u64);
            return Err(RestoreError::TooLong { what: "simulated seconds", found, most });
        }
        Ok(())
    }

    /// Lets `wait` samples pass, or as many as are left; true if it was all of them. The pieces are those of
    /// [`Session::run_long`], so that where a step ends makes no difference.
    fn run(&mut self, wait: u64, left: &mut u64) -> bool {
        let piece = if *left >= wait { wait } else { *left / PIECE * PIECE };
        self.session.run_long(piece);
        *left = left.saturating_sub(piece.max(1));
        piece == wait
    }

    /// What the first check came to, by the scenario's own criteria.
    pub fn first_check(&self) -> Option<&Checked> {
        self.first.as_ref()
    }

    /// The attempt as far as it is.
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// The attempt as far as it is, to go on with.
    pub fn into_session(self) -> Session {
        self.session
    }
}

impl Session {
    /// The attempt as it can be stored; `None` for a recording, which is its own file.
    pub fn save(&self) -> Option<String> {
        let saved = Saved {
            version: VERSION,
            scenario: self.scenario_text()?.to_string(),
            seed: self.seed().to_string(),
            samples: self.samples(),
            log: self.log().to_vec(),
        };
        Some(plain::given(&saved).to_string())
    }

    /// Does a saved attempt again.
    pub fn restore(text: &str) -> Result<Self, RestoreError> {
        if text.len() > MOST_BYTES {
            let (found, most) = (text.len() as u64, MOST_BYTES as u64);
            return Err(RestoreError::TooLong { what: "bytes", found, most });
        }
        let saved: Saved = plain::from_json(text).map_err(|e| RestoreError::Form(e.to_string()))?;
        if saved.version != VERSION {
            return Err(RestoreError::Version { found: saved.version });
        }
        replay(&saved.scenario, seed(&saved.seed)?, saved.samples, &saved.log)
    }

    /// Lets many samples pass, in pieces that keep memory small. The pieces are no longer than a frame's, so that a
    /// recording ends at its limit as it did live.
    pub fn run_long(&mut self, samples: u64) {
        let mut left = samples;
        while left > 0 {
            let piece = left.min(PIECE);
            self.run(piece as usize);
            left -= piece;
        }
    }
}
