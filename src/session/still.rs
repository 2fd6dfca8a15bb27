//! A still: a clean recording with a window between A and B, what there is to be counted in it, and the rates to which well-known
//! misreadings lead. It is made on a bench of its own, with the scenario's subject and power line and nothing that is wrong; every
//! reading is held against the house's own judge, so that what stands here as right passes there, and what stands here as a misreading
//! is named so there.

use super::action::{Action, Page, Refusal, Which};
use super::attempt::Session;
use super::kept_recording::KeptRecording;
use super::right::hundredth;
use super::worksheet::Field;
use crate::assess::asked;
use crate::assess::misreading::{Misreading, named};
use crate::plain::json;
use crate::recording::Recording;
use crate::rng::{Stream, mix};
use crate::scenario::text::value_of;
use crate::scenario::{Scenario, ScenarioError, compose};
use thiserror::Error;

/// Lengths of the window, s. They divide a minute, so that its multiplier is a whole number.
pub const WINDOWS_S: [f64; 4] = [10.0, 12.0, 15.0, 20.0];
/// First and last place of A, s, and the step between places, which is that of the small marks of the time axis.
const A_S: (f64, f64, f64) = (2.0, 6.0, 0.5);
/// So much is recorded behind the last place of B, s, and up to [`MORE_S`] whole seconds more.
const BEHIND_S: f64 = 2.0;
const MORE_S: usize = 2;
/// Nearest distance of a beat to A and B, s: nobody is to wonder on which side of them it lies (design default).
pub const CLEAR_S: f64 = 0.12;
/// So long the trace is left to settle, s, and up to a second more, so that windows do not all begin with the same part of a beat.
const SETTLE_S: f64 = 5.0;
/// Most recordings until one is clean and has a window with clear ends.
const MOST_RECORDINGS: u64 = 40;
/// Share of the beats whose second bump must be seen, if counting all bumps is to be a reading.
const BUMPS_SHARE: f64 = 0.9;
/// Multipliers of other windows: of 30, 20, 15 and 10 s.
const MULTIPLIERS: [f64; 4] = [2.0, 3.0, 4.0, 6.0];

/// What somebody puts down who reads the still in some way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Beats counted.
    pub count: f64,
    /// Length of the window, s.
    pub seconds: f64,
    /// Multiplier, 1/min.
    pub multiplier: f64,
    /// Rate, whole beats/min.
    pub rate: f64,
}

impl Reading {
    /// A count over a time, rightly worked out.
    fn of(count: f64, seconds: f64) -> Self {
        Self { count, seconds, multiplier: hundredth(60.0 / seconds), rate: (60.0 * count / seconds).round() }
    }
}

/// A misreading and what it leads to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slip {
    /// Which one.
    pub id: Misreading,
    /// What is put down then.
    pub reading: Reading,
}

/// A still.
#[derive(Clone, Debug)]
pub struct Still {
    session: Session,
    /// Name of the scenario.
    pub scenario: String,
    /// Its title.
    pub title: String,
    /// Cursor A, s from the recording's start.
    pub a_s: f64,
    /// Cursor B, s from the recording's start.
    pub b_s: f64,
    /// Length of the recording, s.
    pub duration_s: f64,
    /// What is right: all beats between A and B, in the time from A to B.
    pub right: Reading,
    /// How far a rate may be off and is still right, beats/min.
    pub tolerance_bpm: f64,
    /// What misreadings lead to, each of them once.
    pub slips: Vec<Slip>,
}

/// Why there is no still.
#[derive(Debug, Error, PartialEq)]
pub enum StillError {
    /// The scenario cannot be used.
    #[error(transparent)]
    Scenario(#[from] ScenarioError),
    /// No recording of this subject was clean and had a window with clear ends.
    #[error("subject: none of {recordings} recordings shows a pulse that is clean enough to count")]
    Unclear {
        /// Takes that were made.
        recordings: u64,
    },
}

/// A still of a scenario, given as the text of its file.
pub fn still(scenario: &str, seed: u64) -> Result<Still, StillError> {
    let text = clean(scenario)?;
    for k in 0..MOST_RECORDINGS {
        let heart = mix(mix(seed) ^ k);
        let mut draws = Stream::new(heart, "still");
        let length = WINDOWS_S[pick(&mut draws, WINDOWS_S.len())];
        let Some(session) = recorded(&text, heart, length, &mut draws)? else { continue };
        if let Some(still) = laid(session, length, &mut draws) {
            return Ok(still);
        }
    }
    Err(StillError::Unclear { recordings: MOST_RECORDINGS })
}

/// One of `n`.
fn pick(draws: &mut Stream, n: usize) -> usize {
    ((draws.uniform() * n as f64) as usize).min(n.saturating_sub(1))
}

/// Puts a list into an order that is drawn.
pub fn shuffle<T>(list: &mut [T], draws: &mut Stream) {
    for k in (1..list.len()).rev() {
        list.swap(k, pick(draws, k + 1));
    }
}

/// The scenario's subject and power line at a bench at which nothing is wrong.
fn clean(scenario: &str) -> Result<String, ScenarioError> {
    let told = Scenario::read(scenario)?;
    let all = value_of(scenario).unwrap_or_default();
    let mut subject = all.get("subject").filter(|s| s.is_object()).cloned().unwrap_or_else(|| json!({}));
    // A warm hand that rests, and no beat of which nobody can say whether it is one.
    subject["finger_temp_c"] = json!(33.0);
    subject["restlessness"] = json!(0.0);
    subject["premature_per_min"] = json!(0.0);
    let value = json!({
        "id": told.id, "level": told.level, "title": told.title, "aim": told.aim, "brief": told.brief,
        "power_line": all.get("power_line"), "subject": subject,
        "recorder": {"range_v": 0.05}, "pass": {"record_s": 15.0, "window_s": 10.0},
    });
    compose::of_json(&value.to_string())
}

/// A recording that holds a window of that length; nothing where it is not clean.
fn recorded(
    text: &str,
    heart: u64,
    length: f64,
    draws: &mut Stream,
) -> Result<Option<Session>, ScenarioError> {
    let mut session = Session::example(text, heart)?;
    session.pass(SETTLE_S + draws.uniform());
    session.fit_range();
    let duration_s = A_S.1 + length + BEHIND_S + pick(draws, MORE_S + 1) as f64;
    if session.act(&Action::Page(Page::Record {})).is_err() {
        return Ok(None);
    }
    session.pass(duration_s);
    let stopped = session.act(&Action::Page(Page::Stop {})).is_ok();
    let whole = session.recording().is_some_and(|t| (t.recording.duration_s() - duration_s).abs() < 1e-6);
    Ok(Some(session).filter(|_| stopped && whole))
}

/// Lays a window with clear ends; nothing where there is none, or where the trace in it is not a good one.
fn laid(mut session: Session, length: f64, draws: &mut Stream) -> Option<Still> {
    let (first, last, step) = A_S;
    let mut places: Vec<f64> =
        (0..=((last - first) / step) as u32).map(|k| first + step * f64::from(k)).collect();
    shuffle(&mut places, draws);
    let peaks = session.reference_peaks();
    let delay_s = session.recording()?.delay_s;
    if peaks.iter().any(|p| !p.sure) {
        return None;
    }
    let tops =
        tops(&session.recording()?.recording, &peaks.iter().map(|p| p.at_s).collect::<Vec<_>>(), delay_s);
    let clear = |t: f64| {
        peaks.iter().all(|p| [0.0, delay_s].iter().all(|d| (p.at_s + d - t).abs() >= CLEAR_S))
            && tops.iter().all(|top| (top - t).abs() >= CLEAR_S)
    };
    for a in places.into_iter().filter(|a| clear(*a) && clear(*a + length)) {
        let b = a + length;
        session.put_cursors(a, b).ok()?;
        let right = Reading::of(session.right(Field::Count)?, length);
        // Whoever looks for the highest point of each beat, be it the second wave, finds as many.
        if tops.iter().filter(|t| **t >= a && **t < b).count() as f64 != right.count {
            continue;
        }
        if right.count < 4.0 || session.right(Field::Rate) != Some(right.rate) {
            continue;
        }
        // Whoever counts feet, or begins with zero on a beat, comes to the same number here.
        let fence = [(Misreading::OneTooMany, 1.0), (Misreading::OneTooFew, -1.0)];
        let fence = fence.map(|(id, more)| Slip { id, reading: Reading::of(right.count + more, length) });
        if !fence.iter().all(|slip| session.names(slip)) {
            continue;
        }
        // All of it, the trace too.
        session.put_down(&right).ok()?;
        if !session.preview()?.0.passed {
            continue;
        }
        let mut slips = others(&session, &right, (a, b), draws);
        slips.retain(|slip| session.names(slip));
        slips.splice(0..0, fence);
        let told = session.scenario()?;
        return Some(Still {
            scenario: told.id.clone(),
            title: told.title.trim().to_string(),
            a_s: a,
            b_s: b,
            duration_s: session.recording()?.recording.duration_s(),
            tolerance_bpm: asked::rate_tolerance(length),
            right,
            slips: once_each(slips),
            session,
        });
    }
    None
}

/// Where each beat is highest on the paper, s: from a little before its peak to as much before the next one. In some subjects that
/// is the second wave.
fn tops(recording: &Recording, peaks_s: &[f64], delay_s: f64) -> Vec<f64> {
    const BEFORE_S: f64 = 0.2;
    let starts: Vec<usize> =
        peaks_s.iter().map(|t| recording.sample_at((t + delay_s - BEFORE_S).max(0.0))).collect();
    let ends = starts.iter().skip(1).copied().chain([recording.len()]);
    let highest = |(from, to): (usize, usize)| {
        let codes = recording.codes().get(from..to)?;
        let at = (0..codes.len()).max_by_key(|k| (codes[*k], core::cmp::Reverse(*k)))?;
        Some((from + at) as f64 / recording.rate_hz())
    };
    starts.iter().copied().zip(ends).filter_map(highest).collect()
}

/// The first of each misreading.
fn once_each(mut slips: Vec<Slip>) -> Vec<Slip> {
    let mut seen = Vec::new();
    slips.retain(|slip| {
        let new = !seen.contains(&slip.id);
        seen.push(slip.id);
        new
    });
    slips
}

/// Readings that go wrong in other ways than at the fence.
fn others(session: &Session, right: &Reading, (a, b): (f64, f64), draws: &mut Stream) -> Vec<Slip> {
    let (n, length) = (right.count, right.seconds);
    let peaks = session.reference_peaks();
    let bumps = session.bumps(&peaks, (a, b)).into_iter().filter(|t| *t >= a && *t < b).count() as f64;
    let whole_s = session.recording().map_or(length, |t| t.recording.duration_s());
    let mut found = Vec::new();
    let mut add = |id, reading| found.push(Slip { id, reading });
    if bumps >= BUMPS_SHARE * n {
        add(Misreading::BumpsCounted, Reading::of(n + bumps, length));
    }
    add(Misreading::BeatsMissed, Reading::of((0.5 * n).ceil(), length));
    let mut multipliers = MULTIPLIERS;
    shuffle(&mut multipliers, draws);
    for multiplier in multipliers {
        add(Misreading::OtherMultiplier, Reading { multiplier, rate: n * multiplier, ..*right });
    }
    add(Misreading::NotScaled, Reading { rate: n, ..*right });
    add(Misreading::TimeAtB, Reading::of(n, b));
    add(Misreading::WholeRecording, Reading::of(n, whole_s));
    found
}

impl Session {
    fn put_cursors(&mut self, a: f64, b: f64) -> Result<(), Refusal> {
        for (which, t) in [(Which::A, a), (Which::B, b)] {
            self.act(&Action::Page(Page::Cursor { which, t: Some(t) }))?;
        }
        Ok(())
    }

    /// Fills in the worksheet.
    fn put_down(&mut self, reading: &Reading) -> Result<(), Refusal> {
        let Reading { count, seconds, multiplier, rate } = *reading;
        let fields = [
            (Field::Count, count),
            (Field::Seconds, seconds),
            (Field::Multiplier, multiplier),
            (Field::Rate, rate),
        ];
        for (field, value) in fields {
            self.act(&Action::Page(Page::Answer { field, text: value.to_string() }))?;
        }
        Ok(())
    }

    /// Whether the judge, looking at the numbers alone, names the misreading of a slip.
    fn names(&mut self, slip: &Slip) -> bool {
        if self.put_down(&slip.reading).is_err() {
            return false;
        }
        let Some(report) = self.with_sheet(None, asked::judge) else { return false };
        let candidates = self.candidates(&report).unwrap_or_default();
        named(&candidates, &report).is_some_and(|h| h.id == slip.id)
    }
}

impl Still {
    /// The attempt that it was made in, with A and B on its recording.
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// The recording.
    pub fn recording(&self) -> Option<&KeptRecording> {
        self.session.recording()
    }
}
