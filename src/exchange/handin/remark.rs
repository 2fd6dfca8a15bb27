//! What a log made by a program looks like. Remarks are told beside a result and fail nothing: a log can look so by chance,
//! and one that does not may be made all the same.

use crate::deed::{Action, Page};
use crate::exchange::handin::Handed;
use crate::plain::json;
use crate::session::Session;
use crate::session::attempt::Logged;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// The page's clock may be so much behind the bench's, s: it is told in whole seconds.
const CLOCK_S: f64 = 3.0;
/// Least share of the simulated time that must have passed on the page's clock: a slow machine makes it more, never less.
const CLOCK_SHARE: f64 = 0.8;
/// From so many deeds on a share of them without any time between is told (design default: on the page two deeds come in
/// one frame at the end of a drag, and else a frame apart at least).
const LEAST_DEEDS: usize = 10;
const SHARE_AT_ONCE: f64 = 0.5;

/// A remark on how a log came about.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Remark {
    /// Window, answers and check came at one moment of the bench's time.
    AllAtOnce,
    /// Begin and end by the page's clock are nearer than the time at the bench.
    Clock {
        /// Between begin and end, s.
        told_s: f64,
        /// Time at the bench, s.
        bench_s: f64,
    },
    /// Most deeds came without any time between them.
    NoPause {
        /// Deeds at the same moment as the one before.
        n: usize,
        /// Deeds in all.
        of: usize,
    },
    /// Its own misreadings, hints, criteria or number of tries are not those set; of a code perhaps other words alone.
    OtherWords,
}

impl Remark {
    /// The code by which the page and the table know it.
    pub const fn code(&self) -> &'static str {
        match self {
            Remark::AllAtOnce => "all_at_once",
            Remark::Clock { .. } => "clock",
            Remark::NoPause { .. } => "no_pause",
            Remark::OtherWords => "other_words",
        }
    }

    /// The arguments that go with the code.
    pub fn args(&self) -> Value {
        match self {
            Remark::AllAtOnce | Remark::OtherWords => json!({}),
            Remark::Clock { told_s, bench_s } => json!({"told_s": told_s, "bench_s": bench_s}),
            Remark::NoPause { n, of } => json!({"n": n, "of": of}),
        }
    }
}

impl std::fmt::Display for Remark {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        match self {
            Remark::AllAtOnce => write!(f, "counting window, answers and check at one moment"),
            Remark::Clock { told_s, bench_s } => {
                write!(f, "{told_s:.0} s on the clock for an attempt of {bench_s:.0} s")
            }
            Remark::NoPause { n, of } => write!(f, "{n} of {of} actions without any time between them"),
            Remark::OtherWords => write!(f, "other misreadings, hints or criteria than those assigned"),
        }
    }
}

/// The remarks on an attempt that was handed in and replayed.
pub fn remarks(handed: &Handed, session: &Session) -> Vec<Remark> {
    [all_at_once(&handed.log), clock(handed, session), no_pause(&handed.log)].into_iter().flatten().collect()
}

fn all_at_once(log: &[Logged]) -> Option<Remark> {
    let check = log.iter().rev().find(|l| matches!(l.action, Action::Page(Page::Check {})))?;
    let before = || log.iter().filter(|l| l.at <= check.at);
    let last = |is: fn(&Page) -> bool| {
        before().filter(|l| matches!(&l.action, Action::Page(page) if is(page))).map(|l| l.at).max()
    };
    let first = |is: fn(&Page) -> bool| {
        before().filter(|l| matches!(&l.action, Action::Page(page) if is(page))).map(|l| l.at).min()
    };
    let window = last(|page| matches!(page, Page::Cursor { .. } | Page::KeepWindow {}))?;
    let answers = first(|page| matches!(page, Page::Answer { .. }))?;
    (window == check.at && answers == check.at).then_some(Remark::AllAtOnce)
}

fn clock(handed: &Handed, session: &Session) -> Option<Remark> {
    let about = &handed.about;
    if about.begun_s == 0 || about.ended_s == 0 {
        return None;
    }
    let told_s = about.ended_s.saturating_sub(about.begun_s) as f64;
    let bench_s = session.attended_s();
    (told_s + CLOCK_S < CLOCK_SHARE * bench_s).then_some(Remark::Clock { told_s, bench_s })
}

/// Deeds before the world first runs do not count: where motion is not wanted it waits to be started.
fn no_pause(log: &[Logged]) -> Option<Remark> {
    let begun = log.first()?.at;
    let at: Vec<u64> = log.iter().map(|l| l.at).filter(|at| *at > begun).collect();
    let n = at.windows(2).filter(|two| two[0] == two[1]).count();
    let of = at.len();
    (of >= LEAST_DEEDS && n as f64 >= SHARE_AT_ONCE * of as f64).then_some(Remark::NoPause { n, of })
}

/// Where cursors and marks were put last, s: the cursors first, then what was marked, ascending. Only what was put by a deed.
pub fn touched(log: &[Logged]) -> Vec<f64> {
    let (mut cursors, mut marks): ([Option<f64>; 2], Vec<f64>) = ([None; 2], Vec::new());
    for logged in log {
        let Action::Page(page) = &logged.action else { continue };
        match page {
            Page::Cursor { which, t } => cursors[*which as usize] = *t,
            Page::Mark { t } => marks.push(*t),
            Page::MarksClear {} => marks.clear(),
            _ => {}
        }
    }
    marks.sort_by(f64::total_cmp);
    match cursors {
        [Some(a), Some(b)] => [a, b].into_iter().chain(marks).collect(),
        _ => marks,
    }
}
