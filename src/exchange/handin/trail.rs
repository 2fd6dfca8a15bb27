//! What was done in a log and with what pauses, so that a log is known again where its times were moved a little, and two beginnings
//! of one try are told from a try that went on.

use super::together::FRAME_S;
use crate::deed::Action;
use crate::recorder::settings::Change;
use crate::session::attempt::Logged;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Room for rounding, s.
const ROUNDING_S: f64 = 1e-6;
/// Times within a recording, which go along where a log is moved.
const TIMES: [&str; 2] = ["t", "start_s"];

/// The deeds of a log without their times, and when they came.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Trail {
    /// When each deed came, s of the bench's time.
    at_s: Vec<f64>,
    /// For each deed the first bytes of a SHA-256 over it and all before it, without their times.
    marks: Vec<u32>,
}

impl Trail {
    /// That of a log, given the rate at its beginning, Hz.
    pub fn of(log: &[Logged], rate_hz: u32) -> Self {
        let mut trail = Self::default();
        let (mut rate_hz, mut last, mut s, mut so_far) = (rate_hz.max(1), 0, 0.0, [0; 32]);
        for Logged { at, action } in log {
            s += at.saturating_sub(last) as f64 / f64::from(rate_hz);
            last = *at;
            let mut told = action.to_value();
            if let Some(fields) = told.as_object_mut() {
                TIMES.iter().for_each(|time| drop(fields.remove(*time)));
            }
            so_far = Sha256::new().chain_update(so_far).chain_update(told.to_string()).finalize().into();
            trail.at_s.push(s);
            trail.marks.push(u32::from_be_bytes([so_far[0], so_far[1], so_far[2], so_far[3]]));
            if let Action::Recorder(Change::Rate { hz }) = action {
                rate_hz = (*hz).max(1);
            }
        }
        trail
    }

    /// Number of deeds.
    pub fn deeds(&self) -> usize {
        self.marks.len()
    }

    /// When the last deed came, s; 0 where there was none.
    pub fn end_s(&self) -> f64 {
        self.at_s.last().copied().unwrap_or(0.0)
    }

    /// The mark of all deeds; logs with other marks have other deeds.
    pub fn mark(&self) -> Option<u32> {
        self.marks.last().copied()
    }

    /// Whether the same was done with the same pauses, to within a frame, whenever it began.
    pub fn is_moved(&self, other: &Self) -> bool {
        self.deeds() == other.deeds() && self.mark() == other.mark() && self.keeps_pace(other, self.deeds())
    }

    /// Whether one can be the other gone on with. The last deed of the shorter one may have been another when it was handed in: of a
    /// drag and of an answer typed anew a log keeps the last.
    pub fn is_continued(&self, other: &Self) -> bool {
        let n = self.deeds().min(other.deeds()).saturating_sub(1);
        n == 0 || (self.marks[n - 1] == other.marks[n - 1] && self.keeps_pace(other, n))
    }

    /// Whether the pauses between so many deeds are the same, to within a frame.
    fn keeps_pace(&self, other: &Self, n: usize) -> bool {
        let pauses = |trail: &Self, k: usize| trail.at_s[k] - trail.at_s[k - 1];
        (1..n).all(|k| (pauses(self, k) - pauses(other, k)).abs() <= FRAME_S + ROUNDING_S)
    }
}
