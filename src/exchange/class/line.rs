//! One line for each student: those of the list, and whoever handed in without standing on it.

use super::care::{Care, Pick};
use super::course::Class;
use super::parts::PartLine;
use super::roster::Entry;
use super::talk::{causes, met};
use super::within;
use crate::assess::rubric::OF;
use crate::assess::verdict::Step;
use crate::exchange::handin::class::once_each;
use crate::exchange::handin::together::{Beside, beside, whose};
use crate::exchange::handin::{Against, Graded, HandinError};
use crate::plain::names;
use crate::session::seeds::{self, tidy};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// Where a student stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum State {
    /// Nothing came in.
    Absent,
    /// Something came in, and nothing of it can be read or verified.
    Unusable,
    /// All that can be used was done on another bench than the one set for them.
    WrongBench,
    /// They tried, and are not ready.
    Tried,
    /// They are ready.
    Ready,
    /// They need not hand in.
    Waived,
}

names! {
    State {
        Absent => "absent",
        Unusable => "unusable",
        WrongBench => "wrong_bench",
        Tried => "tried",
        Ready => "ready",
        Waived => "waived",
    }
}

/// All states, those first who need something.
pub const STATES: [State; 6] =
    [State::Absent, State::Unusable, State::WrongBench, State::Tried, State::Ready, State::Waived];

/// A student's line.
#[derive(Clone, Debug, PartialEq, serde::Serialize)]
pub struct Line {
    /// The code of the list; as it was typed where it stands on none.
    pub code: String,
    /// Name, e-mail address and group, where they are known.
    pub name: String,
    /// See [`Line::name`].
    pub email: String,
    /// See [`Line::name`].
    pub group: String,
    /// Whether they stand on the list.
    pub listed: bool,
    /// Where they stand.
    pub state: State,
    /// Their results: places among those graded, each once.
    pub results: Vec<usize>,
    /// What of theirs could not be used: places among those that failed.
    pub failed: Vec<usize>,
    /// The one that stands for them.
    pub chosen: Option<usize>,
    /// Its points; in a course those of all parts together.
    pub points: Option<u32>,
    /// The most points that there are: twenty, in a course for each part.
    pub of: u32,
    /// In a course, how they stand in each part.
    pub parts: Vec<PartLine>,
    /// Benches on which they did what is needed; in a course the parts in which they are ready.
    pub passes: usize,
    /// Time at the bench over all results, min.
    pub minutes: f64,
    /// The step that went wrong first in the one that stands for them.
    pub first_wrong: Option<Step>,
    /// Faults that are still there in it.
    pub faults_left: Vec<&'static str>,
    /// What explains its first check and its last, where those are not right, see [`crate::exchange::handin::Outcome::explained`].
    pub misreadings: Vec<String>,
    /// Why its trace was not good enough, see [`super::talk::CAUSES`].
    pub trace: Vec<&'static str>,
    /// Codes of what keeps results of theirs from being verified.
    pub doubts: Vec<&'static str>,
    /// Codes of what keeps results of theirs from counting; `late` among them.
    pub against: Vec<&'static str>,
    /// Codes of others who handed in the same log.
    pub copied: Vec<String>,
    /// Codes of others whose cursors and marks stand where theirs do.
    pub alike: Vec<String>,
    /// What stands in their results, whether those count or not, see [`super::talk::met`].
    pub met: Vec<String>,
    /// Codes of what a log made by a program looks like, of one log with [two times](TWO_TIMES), of a try [begun twice](BEGUN_TWICE), of a
    /// result [without times](NO_TIME), and of what is odd about the
    /// [course result](super::within) that results came in.
    pub remarks: Vec<&'static str>,
    /// What was decided for them.
    pub care: Care,
}

/// Code of the remark that a log came in with two begins or ends.
pub const TWO_TIMES: &str = "two_times";

/// Code of what is against a try that there is not, see [`Against::TooManyTries`].
const TOO_MANY_TRIES: &str = "too_many_tries";
/// Code of the remark that one try was begun more than once.
pub const BEGUN_TWICE: &str = "begun_twice";
/// Code of the remark that a result does not say when it was begun or ended.
pub const NO_TIME: &str = "no_time";

/// Time at the bench of those who handed something in, min: quarter, middle, three quarters; `None` where nobody did.
pub fn minutes(lines: &[Line]) -> Option<[f64; 3]> {
    let mut all: Vec<f64> =
        lines.iter().filter(|line| !line.results.is_empty()).map(|line| line.minutes).collect();
    all.sort_by(f64::total_cmp);
    let last = all.len().checked_sub(1)?;
    Some([0.25, 0.5, 0.75].map(|share| all[(last as f64 * share).round() as usize]))
}

/// What was seen of results beside one another, place by place.
pub(super) struct Seen<'a> {
    pub(super) found: &'a [Beside],
    pub(super) within: &'a [Vec<&'static str>],
}

/// Who a line is of, and what is theirs.
#[derive(Default)]
pub(super) struct Own {
    pub(super) entry: Entry,
    pub(super) listed: bool,
    pub(super) results: Vec<usize>,
    pub(super) failed: Vec<usize>,
    /// Until when, s since 1970; 0 for as long as one likes. What comes later counts, and is not preferred to what does not.
    pub(super) due_s: u64,
}

impl Class {
    /// One line a student: those of the list in its order, then whoever handed in beside them.
    pub fn lines(&self) -> Vec<Line> {
        let found = beside(&self.graded);
        let mut all: Vec<Own> = Vec::new();
        let mut by_code: BTreeMap<String, usize> = BTreeMap::new();
        for entry in &self.roster {
            by_code.insert(seeds::code(&entry.code), all.len());
            all.push(Own { entry: entry.clone(), listed: true, ..Own::default() });
        }
        let mut of = |all: &mut Vec<Own>, key: String, code: &str| {
            *by_code.entry(key).or_insert_with(|| {
                all.push(Own { entry: Entry { code: code.into(), ..Entry::default() }, ..Own::default() });
                all.len() - 1
            })
        };
        for (k, graded) in self.graded.iter().enumerate().filter(|(k, _)| found[*k].again.is_none()) {
            let place = of(&mut all, whose(graded), &graded.about.student);
            all[place].results.push(k);
        }
        for (k, failed) in self.failed.iter().enumerate() {
            let code = match seeds::code(&failed.student).is_empty() {
                true => self.named_in(&failed.source.file),
                false => failed.student.clone(),
            };
            if !code.is_empty() {
                let place = of(&mut all, seeds::code(&code), &code);
                all[place].failed.push(k);
            }
        }
        let benches = self.part_benches();
        let within = within::remarks(&self.sources, &self.graded, self.plan.as_ref());
        let seen = Seen { found: &found, within: &within };
        let line = |own: Own| match benches.is_empty() {
            true => self.line(own, &seen),
            false => self.course_line(own, &seen, &benches),
        };
        all.into_iter().map(line).collect()
    }

    /// The student of the list whose code stands in a file's name; of several the longest. Courses put codes into names.
    fn named_in(&self, file: &str) -> String {
        let name = tidy(file);
        let there = self.roster.iter().filter(|entry| {
            let code = seeds::code(&entry.code);
            // Within a longer number or word it is another code.
            code.chars().count() >= 3
                && name.match_indices(&code).any(|(at, _)| {
                    let beside = [name[..at].chars().next_back(), name[at + code.len()..].chars().next()];
                    let [first, last] = [code.chars().next(), code.chars().next_back()];
                    let joins = |a: Option<char>, b: Option<char>| {
                        a.zip(b).is_some_and(|(a, b)| a.is_ascii_digit() && b.is_ascii_digit())
                    };
                    !joins(beside[0], first) && !joins(last, beside[1])
                })
        });
        there
            .max_by_key(|entry| seeds::code(&entry.code).len())
            .map_or_else(String::new, |entry| entry.code.clone())
    }

    /// Whose results these are, each once: as the list spells them, or as they were typed.
    fn codes_of<'a>(&self, results: impl Iterator<Item = &'a usize>) -> Vec<String> {
        let code = |k: &usize| {
            let typed = &self.graded[*k].about.student;
            let code = seeds::code(typed);
            let listed = self.roster.iter().find(|entry| seeds::code(&entry.code) == code);
            listed.map_or_else(|| typed.clone(), |entry| entry.code.clone())
        };
        let all: BTreeSet<String> = results.map(code).collect();
        all.into_iter().collect()
    }

    /// What keeps a result from counting for this student, beside what does so for everybody.
    fn against(&self, graded: &Graded, beside: &Beside, care: &Care) -> Vec<&'static str> {
        let given = |against: &&Against| {
            // Another try that was given lifts the number that there are.
            !matches!(against, Against::TooManyTries { n, of } if *n <= of + care.tries)
        };
        let mut codes: Vec<&'static str> = graded.against.iter().filter(given).map(Against::code).collect();
        // Each beginning of one try is a try.
        let begun_too_often = graded.attempts.is_some_and(|of| beside.nth > of + care.tries);
        if begun_too_often && !codes.contains(&TOO_MANY_TRIES) {
            codes.push(TOO_MANY_TRIES);
        }
        let due_s = if care.until_s > 0 { care.until_s } else { self.terms.due_s };
        if due_s > 0 && graded.about.ended_s > due_s {
            codes.push("late");
        }
        codes
    }

    pub(super) fn line(&self, own: Own, seen: &Seen) -> Line {
        let Seen { found, within } = *seen;
        let Own { entry, listed, results, failed, due_s } = own;
        let Entry { code, name, email, group } = entry;
        let care = self.cares.of(&code);
        let against: Vec<Vec<&'static str>> =
            results.iter().map(|k| self.against(&self.graded[*k], &found[*k], &care)).collect();
        let counts = |i: usize| self.graded[results[i]].verified() && against[i].is_empty();
        let counting: Vec<usize> = (0..results.len()).filter(|i| counts(*i)).map(|i| results[i]).collect();
        let good = |g: &Graded| if self.terms.rubric { g.rubric_ready } else { g.outcome.passed };
        let benches: BTreeSet<_> = counting
            .iter()
            .map(|k| &self.graded[*k])
            .filter(|g| good(g))
            .map(|g| (g.digest, g.seed))
            .collect();
        let due_s = if care.until_s > 0 { care.until_s } else { due_s };
        let chosen = self.chosen(&counting, good, due_s);
        let last_good = chosen.is_some_and(|k| good(&self.graded[k]));
        let ready =
            benches.len() >= self.terms.benches.max(1) && (self.terms.pick == Pick::Best || last_good);
        let elsewhere = |i: usize| {
            let other = |code: &&'static str| ["other_bench", "other_seed"].contains(code);
            self.graded[results[i]].verified() && against[i].iter().any(other)
        };
        let refused = failed.iter().any(|k| self.failed[*k].why == "other_bench");
        let read = |i: usize| self.graded[results[i]].verified();
        let state = if care.waived {
            State::Waived
        } else if ready {
            State::Ready
        } else if (0..results.len()).any(|i| read(i) && !elsewhere(i)) {
            State::Tried
        } else if refused || (0..results.len()).any(elsewhere) {
            State::WrongBench
        } else if !failed.is_empty() || !results.is_empty() {
            State::Unusable
        } else {
            State::Absent
        };
        let of = || results.iter().map(|k| &self.graded[*k]);
        let dated = due_s > 0 || self.terms.due_s > 0;
        let timeless = |g: &Graded| match (g.about.begun_s, g.about.ended_s) {
            (_, 0) => dated,
            (begun_s, _) => begun_s == 0,
        };
        let stands = chosen.map(|k| &self.graded[k]);
        let left = stands.map_or(&[][..], |g| &g.faults).iter().filter(|f| !f.cleared).map(|f| f.id);
        Line {
            listed,
            state,
            chosen,
            points: stands.and_then(|g| g.score),
            of: OF,
            parts: Vec::new(),
            passes: benches.len(),
            minutes: of().fold(0.0, |sum, g| sum + g.minutes), // an empty sum would be -0
            first_wrong: stands.and_then(|g| g.outcome.first_wrong),
            faults_left: left.collect(),
            misreadings: stands.map_or_else(Vec::new, misreadings),
            trace: stands.map_or_else(Vec::new, |g| causes(&g.outcome.codes)),
            doubts: once_each(of().flat_map(|g| &g.doubts).map(HandinError::code)),
            against: once_each(against.concat().into_iter()),
            copied: self.codes_of(results.iter().flat_map(|k| &found[*k].copies)),
            alike: self.codes_of(results.iter().flat_map(|k| &found[*k].alike)),
            met: met(&of().collect::<Vec<_>>()),
            remarks: once_each(
                of().flat_map(|g| &g.remarks)
                    .map(|r| r.code())
                    .chain(results.iter().filter(|k| !found[**k].redated.is_empty()).map(|_| TWO_TIMES))
                    .chain(results.iter().filter(|k| !found[**k].begun.is_empty()).map(|_| BEGUN_TWICE))
                    .chain(of().filter(|g| timeless(g)).map(|_| NO_TIME))
                    .chain(results.iter().flat_map(|k| within[*k].iter().copied())),
            ),
            code,
            name,
            email,
            group,
            results,
            failed,
            care,
        }
    }

    /// Which of those that count stands for a student: the best by what is needed and by points, of equals one that is not late,
    /// of those the earlier; or the last. What comes later has the higher number of try, or ended later.
    fn chosen(&self, counting: &[usize], good: impl Fn(&Graded) -> bool, due_s: u64) -> Option<usize> {
        let later =
            |k: usize| (self.graded[k].about.tries, self.graded[k].about.ended_s, self.graded[k].mark);
        let best = |k: usize| (good(&self.graded[k]), self.graded[k].score.unwrap_or(0));
        let in_time = |k: usize| due_s == 0 || self.graded[k].about.ended_s <= due_s;
        match self.terms.pick {
            Pick::Best => {
                counting.iter().copied().max_by_key(|k| (best(*k), in_time(*k), Reverse(later(*k))))
            }
            Pick::Last => counting.iter().copied().max_by_key(|k| later(*k)),
        }
    }
}

/// What explains the first check and the last one, each once.
fn misreadings(graded: &Graded) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for outcome in graded.first.iter().chain([&graded.outcome]) {
        all.extend(outcome.explained().filter(|m| !all.contains(m)));
    }
    all
}
