//! What was concluded, against what this subject's body did in the same counting windows, within what windows of their number
//! and length can tell; and what is to be said of the way there.

use super::contrast::{Contrast, Reading};
use crate::deed::Direction;
use crate::plain::json;
use serde_json::Value;

/// From so many standard deviations on a difference may be called one (design default; common practice is 2).
pub const MAY_SHOW: f64 = 1.5;
/// Up to so many "no difference" may be said.
pub const MAY_HIDE: f64 = 2.5;

/// What is to be said of a conclusion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// There is a difference, in the direction that was said.
    Shown,
    /// These windows show none, as was said.
    NoneShown,
    /// There is one that these windows show, and none was seen.
    Missed,
    /// One was seen that these windows do not show.
    Overclaimed,
    /// There is one, in the other direction.
    Opposite,
}

impl Outcome {
    /// Its name for the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Shown => "shown",
            Self::NoneShown => "none_shown",
            Self::Missed => "missed",
            Self::Overclaimed => "overclaimed",
            Self::Opposite => "opposite",
        }
    }

    /// Whether it was rightly concluded.
    pub fn is_right(self) -> bool {
        matches!(self, Self::Shown | Self::NoneShown)
    }
}

/// Judges a conclusion: `truth` is the difference in the body itself. Whoever claims one is held against `least`, what windows of
/// this number and length are expected to leave open; whoever sees none against `u`, in which the table's own spread is as well.
pub fn conclusion(said: Direction, truth: f64, u: f64, least: f64) -> Outcome {
    let size = truth.abs() / least;
    let up = match said {
        Direction::Same if truth.abs() <= MAY_HIDE * u => return Outcome::NoneShown,
        Direction::Same => return Outcome::Missed,
        Direction::Up => truth > 0.0,
        Direction::Down => truth < 0.0,
    };
    match (size >= MAY_SHOW, up) {
        (true, true) => Outcome::Shown,
        (true, false) => Outcome::Opposite,
        (false, _) => Outcome::Overclaimed,
    }
}

/// A row of the table as far as remarks need it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// The condition's number.
    pub condition: usize,
    /// Length of the window, s.
    pub seconds: f64,
    /// When it was recorded, s.
    pub at_s: f64,
    /// The measure that is asked for first.
    pub reading: Option<Reading>,
}

/// A remark: its code, and numbers for the page's words.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Its code.
    pub code: &'static str,
    /// Its numbers.
    pub args: Value,
}

/// Codes of all remarks.
pub const REMARKS: [&str; 6] = ["short", "once", "order", "regression", "spread", "one_subject"];

/// What is to be said of the way there: windows shorter than `window_s`, conditions measured fewer than `repeats` times, all of
/// one condition before all of the other, a first window out of line, windows of one condition that differ by more than the
/// conditions do, and always that one subject is no population.
pub fn remarks(
    rows: &[Seen],
    last: usize,
    window_s: f64,
    repeats: u32,
    contrast: Option<&Contrast>,
) -> Vec<Remark> {
    let mut found = Vec::new();
    let mut say = |code, args| found.push(Remark { code, args });
    let of = |condition: usize| rows.iter().filter(move |r| r.condition == condition);
    let shortest = rows.iter().map(|r| r.seconds).fold(f64::INFINITY, f64::min);
    if shortest + 0.5 < window_s {
        // One beat more or less in T seconds is 60/T.
        let one = |s: f64| (600.0 / s).round() / 10.0;
        say(
            "short",
            json!({"s": shortest.round(), "asked": window_s, "u": one(shortest), "u_asked": one(window_s)}),
        );
    }
    if [0, last].iter().any(|c| (of(*c).count() as u32) < repeats) {
        say("once", json!({"asked": repeats}));
    }
    let (first_ends, last_begins) = (
        of(0).map(|r| r.at_s).fold(f64::NEG_INFINITY, f64::max),
        of(last).map(|r| r.at_s).fold(f64::INFINITY, f64::min),
    );
    if of(0).count() > 1 && of(last).count() > 1 && first_ends < last_begins {
        say("order", json!({}));
    }
    let readings: Vec<Reading> = of(0).filter_map(|r| r.reading).collect();
    if let [first, later @ ..] = &readings[..]
        && later.len() > 1
    {
        let mean = later.iter().map(|r| r.value).sum::<f64>() / later.len() as f64;
        if (first.value - mean).abs() > 2.0 * first.u.max(later[0].u) {
            say("regression", json!({}));
        }
    }
    if let Some(contrast) = contrast {
        let range = |condition: usize| {
            let values = || of(condition).filter_map(|r| r.reading).map(|r| r.value);
            values().fold(f64::NEG_INFINITY, f64::max) - values().fold(f64::INFINITY, f64::min)
        };
        if range(0).max(range(last)) > contrast.difference.value.abs() {
            say("spread", json!({}));
        }
    }
    say("one_subject", json!({}));
    found
}
