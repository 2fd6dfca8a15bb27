//! The rule that stood before: two passes in a row on different seeds, a retest after three to seven days, the skill that is due
//! first, then the one that goes wrong, then what is new. Kept to be compared with.

pub use dicrotic::assess::learner::standing::State;
use dicrotic::assess::skill::{Aid, Got, Record, SKILLS};
use std::collections::BTreeMap;

const DAY_MS: f64 = 86_400_000.0;
const RETEST_MS: f64 = 3.0 * DAY_MS;

#[derive(Clone, Copy, Debug)]
pub struct Standing {
    pub state: State,
    passes: i32,
    fails: i32,
}

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

/// How each skill stands, and the help that is proposed.
pub fn map(records: &[Record], now_ms: f64) -> (Vec<Standing>, Aid) {
    let skills = SKILLS.iter().map(|skill| standing(records, skill, now_ms)).collect();
    let mut whole = Fading::default();
    for record in records {
        match (record.mode, record.passed) {
            (Aid::Shown, _) => whole.seen(),
            (_, true) => whole.pass(),
            (_, false) => whole.fail(),
        }
    }
    (skills, whole.aid())
}

fn standing(records: &[Record], skill: &str, now_ms: f64) -> Standing {
    let (mut passes, mut fails, mut last_ms) = (0, 0, f64::NEG_INFINITY);
    let mut run: Vec<(&str, &str)> = Vec::new();
    for record in records.iter().filter(|r| r.mode != Aid::Shown) {
        match record.skills.get(skill).map_or(Got::None, |s| s.got) {
            Got::None => continue,
            Got::Pass => {
                passes += 1;
                let seed = (record.scenario.as_str(), record.seed.as_str());
                if !run.contains(&seed) {
                    run.push(seed);
                }
            }
            Got::Fail => {
                fails += 1;
                run.clear();
            }
        }
        last_ms = record.at_ms;
    }
    let state = match run.len() {
        _ if passes + fails == 0 => State::New,
        0 => State::Practising,
        1 => State::Once,
        _ if now_ms >= last_ms + RETEST_MS => State::Due,
        _ => State::Ready,
    };
    Standing { state, passes, fails }
}

/// Where each skill was met, from the plainest to the hardest: a kind of question, or how an id begins.
const MEETS: [(&str, &[&str]); 12] = [
    ("wiring", &["first-wiring", "whole-bench"]),
    ("link", &["no-recorder", "first-wiring"]),
    ("contact", &["small-pulse", "odd-wave", "first-wiring"]),
    ("range", &["kind:read_range", "out-of-sight", "first-wiring"]),
    ("time_base", &["out-of-sight", "thick-trace", "slow-waves"]),
    ("hum", &["hum-on-the-trace", "thick-trace"]),
    ("motion", &["loose-and-restless", "kind:clean_part", "spikes-and-gaps", "slow-waves"]),
    ("recording", &["rest-pulse", "first-wiring"]),
    (
        "window",
        &["kind:given_window", "kind:clean_part", "kind:irregular", "kind:after_exercise", "rest-pulse"],
    ),
    ("counting", &["rest-pulse", "kind:given_window", "kind:intervals"]),
    ("arithmetic", &["kind:intervals", "kind:given_window", "rest-pulse"]),
    ("uncertainty", &["kind:compare", "kind:irregular", "rest-pulse"]),
];

/// The scenario that was proposed: for the skill that comes first the one tried least, plainest first; `None` when all are
/// ready. `benches`: ids with their kinds.
pub fn next(
    standings: &[Standing],
    benches: &[(String, String)],
    tried: &BTreeMap<String, u32>,
) -> Option<usize> {
    let rank = |s: &Standing| match s.state {
        State::Due => 0,
        State::Practising => 1,
        State::Once => 2,
        State::New => 3,
        State::Ready => 9,
    };
    let worth = |s: &Standing| rank(s) * 1000 - (s.fails - s.passes);
    let (skill, _) = SKILLS
        .iter()
        .zip(standings)
        .filter(|(_, s)| s.state != State::Ready)
        .min_by_key(|(_, s)| worth(s))?;
    let ways = MEETS.iter().find(|(name, _)| name == skill)?.1;
    let fits = |way: &str| -> Vec<usize> {
        let is = |(id, kind): &(String, String)| match way.strip_prefix("kind:") {
            Some(asked) => kind == asked,
            None => id.starts_with(way),
        };
        (0..benches.len()).filter(|k| is(&benches[*k])).collect()
    };
    let all = ways.iter().flat_map(|way| fits(way));
    all.min_by_key(|k| tried.get(&benches[*k].0).copied().unwrap_or(0))
}
