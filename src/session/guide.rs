//! Help by doing: the worked example, which plays the scenario's first passing scripted attempt step by step, and the
//! half-finished one, in which the bench does the set-up up to the recording and leaves the measuring to the student.

use super::action::{Action, Page};
use super::attempt::Session;
use super::script::{Prepared, expand, prepare};
use crate::assess::skill::Aid;
use crate::assess::{range, trace};
use crate::deed::{Kind, Nature};
use crate::measure::quality;
use crate::plain::json;
use crate::recorder::settings::{Change, RANGES_V};
use crate::scenario::script::Attempt;
use crate::scenario::{Scenario, ScenarioError};
use serde_json::Value;
use std::collections::VecDeque;

/// A worked example under way.
#[derive(Clone, Debug)]
pub(super) struct Worked {
    steps: VecDeque<Ahead>,
    /// Samples up to which the present step lasts.
    pub(super) until: u64,
    /// Whether the example itself is acting.
    pub(super) acting: bool,
}

/// A step of a worked example that is still to come.
#[derive(Clone, Debug)]
struct Ahead {
    step: Value,
    /// Steps of the script that are left after it, with the parts of one that is done in several deeds.
    left: f64,
    /// How much of a step of the script it is.
    part: f64,
}

/// Stretch of the live signal by which a range is chosen, s.
pub(super) const LOOK_S: f64 = 5.0;
/// Most changes of the range before a recording, and most recordings.
pub(super) const MOST_CHANGES: usize = 10;
const MOST_RECORDINGS: usize = 6;
/// Share of the range that the signal may reach: a deep breath still fits.
const ROOM: f64 = 0.8;

/// The attempt that shows how it is done.
pub fn example(scenario: &Scenario) -> Option<&Attempt> {
    scenario.attempt.iter().find(|a| a.expect.passed)
}

/// The same where students may watch it: an assigned bench shows none of itself unless its assignment says so.
pub fn shown(scenario: &Scenario) -> Option<&Attempt> {
    example(scenario).filter(|_| scenario.assignment.as_ref().is_none_or(|a| a.worked))
}

impl Session {
    /// A worked example of a scenario, on the seed of its script; `None` where there is none to be watched.
    pub fn worked(text: &str) -> Result<Option<Self>, ScenarioError> {
        let scenario = Scenario::read(text)?;
        let Some(attempt) = shown(&scenario) else { return Ok(None) };
        let mut session = Session::example(text, attempt.seed)?;
        let shown = Action::Page(Page::Help { mode: Aid::Shown });
        session
            .act(&shown)
            .map_err(|r| ScenarioError::at("attempt", format!("{r:?}"), "steps that can be done"))?;
        let until = session.samples();
        let of = attempt.steps.len();
        let ahead =
            |(k, step): (usize, &Value)| Ahead { step: step.clone(), left: (of - 1 - k) as f64, part: 1.0 };
        let steps = attempt.steps.iter().enumerate().map(ahead).collect();
        session.help.worked = Some(Worked { steps, until, acting: false });
        Ok(Some(session))
    }

    /// Whether this is a worked example.
    pub fn is_worked(&self) -> bool {
        self.help.worked.is_some()
    }

    /// Does the next step of the worked example: `action`, or `wait_s` to let it run on for, how many steps of the script are
    /// `remaining` (with a fraction within a step that takes several deeds), and the stage it belongs to as `code`. `None` at the
    /// end.
    pub fn worked_next(&mut self) -> Option<Value> {
        let until = self.help.worked.as_ref()?.until;
        self.run_long(until.saturating_sub(self.samples()));
        let Ahead { step, left: remaining, .. } = loop {
            let ahead = self.help.worked.as_mut()?.steps.pop_front()?;
            let Some(others) = expand(&ahead.step, self).ok()? else { break ahead };
            let part = ahead.part / others.len() as f64;
            let worked = self.help.worked.as_mut()?;
            // The last of them ends where the step would have ended.
            for (after, step) in others.into_iter().rev().enumerate() {
                worked.steps.push_front(Ahead { step, left: ahead.left + part * after as f64, part });
            }
        };
        match prepare(&step, self).ok()? {
            Prepared::Wait { seconds, samples } => {
                let until = self.samples() + samples;
                if let Some(worked) = self.help.worked.as_mut() {
                    worked.until = until;
                }
                Some(json!({
                    "action": null, "wait_s": seconds, "remaining": remaining, "code": "wait",
                    "args": {"seconds": seconds},
                }))
            }
            Prepared::Act(action) => {
                self.set_acting(true);
                let done = self.act(&action);
                self.set_acting(false);
                done.ok()?;
                let told = action.to_value();
                let mut args = told.clone();
                if let Some(fields) = args.as_object_mut() {
                    fields.remove("do");
                }
                Some(json!({"action": told, "remaining": remaining, "code": action.stage(), "args": args}))
            }
        }
    }

    fn set_acting(&mut self, acting: bool) {
        if let Some(worked) = self.help.worked.as_mut() {
            worked.acting = acting;
        }
    }

    /// Does the set-up in the student's stead. None of it goes into the log: the same scenario and seed do it again.
    pub(super) fn set_up(&mut self) {
        let began_s = self.time_s();
        let steps = self.scenario().and_then(shown).map_or_else(Vec::new, |a| a.steps.clone());
        let name =
            |step: &Value| step.get("do").and_then(Value::as_str).map(str::to_string).unwrap_or_default();
        let measuring = |step: &Value| {
            let of = Kind::named(&name(step));
            of.is_some_and(|k| matches!(k.nature(), Nature::Measure | Nature::Paper) && k != Kind::Record)
        };
        // Where something is wrong, or may be, finding it is what there is to learn: the bench goes no further than to the
        // first test or change.
        let to_find = !self.log.cases.is_empty() || self.is_pooled();
        let searching = |step: &Value| {
            name(step).starts_with('@')
                || Kind::named(&name(step)).is_some_and(|k| to_find && k.nature() != Nature::Paper)
        };
        let first_search = steps.iter().position(|s| searching(s) || name(s) == "record");
        let last_stop = steps.iter().rposition(|s| name(s) == "stop").map(|k| k + 1);
        // Nobody records an experiment before the student has said what they expect.
        let to_expect = self.experiment().is_some();
        let end = first_search
            .filter(|_| to_find || to_expect)
            .or(last_stop)
            .or_else(|| steps.iter().position(measuring))
            .unwrap_or(0);
        let (log, trail) = (core::mem::take(&mut self.log.entries), core::mem::take(&mut self.log.trail));
        // Consent and notes are nobody else's to give.
        let paper = |step: &&Value| Kind::named(&name(step)).is_some_and(|k| k.nature() == Nature::Paper);
        for step in steps[..end].iter().filter(|s| !paper(s)) {
            if name(step) == "record" {
                self.fit_range();
            }
            match prepare(step, self) {
                Ok(Prepared::Wait { samples, .. }) => self.run_long(samples),
                // On another seed a step may not be called for; what it was to bring about is looked after below.
                Ok(Prepared::Act(action)) => drop(self.act(&action)),
                Err(_) => {}
            }
        }
        if to_expect {
            self.fit_range();
        }
        self.take_again();
        (self.log.entries, self.log.trail) = (log, trail);
        self.run.unattended_s += self.time_s() - began_s;
        self.help.rate_after_setup = self.chain().map(|c| c.settings().rate_hz);
    }

    /// Lets so many seconds pass.
    pub(super) fn pass(&mut self, seconds: f64) {
        let rate = self.chain().map_or(1000.0, |c| f64::from(c.settings().rate_hz));
        self.run_long((seconds * rate).round() as u64);
    }

    fn set_range(&mut self, v: f64) {
        drop(self.act(&Action::Recorder(Change::Range { v })));
        self.pass(LOOK_S);
    }

    /// Chooses the smallest range in which the live signal has room.
    pub(super) fn fit_range(&mut self) {
        for _ in 0..MOST_CHANGES {
            if self.live_reach().is_none() {
                return self.pass(LOOK_S);
            }
            match self.better_range() {
                Some(v) => self.set_range(v),
                None => return,
            }
        }
    }

    /// The range to try next for the live signal; `None` where the present one is the smallest that has room, or nothing is
    /// to be seen.
    pub(super) fn better_range(&self) -> Option<f64> {
        let (reach, pulse) = self.live_reach()?;
        let now = self.chain()?.settings().range_v;
        let best = if reach >= 0.98 * now {
            RANGES_V.iter().copied().filter(|v| *v > now * 1.01).min_by(f64::total_cmp)
        } else {
            range::fitting(reach * range::ROOM / ROOM, pulse)
        };
        best.filter(|v| (v / now - 1.0).abs() > 1e-6)
    }

    /// How far the live signal reaches from zero, and the height of its pulse, V.
    fn live_reach(&self) -> Option<(f64, f64)> {
        let live = self.live()?;
        let values: Vec<f64> = live.last(LOOK_S);
        if (values.len() as f64) < 3.0 * live.rate_hz() {
            return None;
        }
        let reach = values.iter().map(|v| v.abs()).fold(0.0, f64::max);
        Some((reach, quality::pulse_pp(&values, live.rate_hz()).unwrap_or(0.0)))
    }

    /// Records once more where the recording came out cut off or small, with another range.
    fn take_again(&mut self) {
        let power_line_hz = self.chain().map_or(50.0, |c| c.config().power_line.hz);
        for _ in 1..MOST_RECORDINGS {
            let criteria = self.criteria();
            let Some(kept) =
                self.recording().filter(|_| self.trace.recordings.len() > self.trace.recordings_before)
            else {
                return;
            };
            let duration_s = kept.recording.duration_s();
            let Some(look) = trace::look(&kept.recording, 0.0, duration_s, power_line_hz) else { return };
            let cut = look.clip_share > criteria.clip_share || look.fill > criteria.fill_max;
            let small = look.fill < criteria.fill_min && look.smaller_range_fits;
            let Some(now) = self.chain().map(|c| c.settings().range_v) else { return };
            let next = match (cut, small) {
                (true, _) => RANGES_V.iter().copied().filter(|v| *v > now * 1.01).min_by(f64::total_cmp),
                (_, true) => RANGES_V.iter().copied().filter(|v| *v < now / 1.01).max_by(f64::total_cmp),
                _ => return,
            };
            let Some(next) = next else { return };
            if small {
                drop(self.act(&Action::Recorder(Change::Zero {})));
            }
            self.set_range(next);
            if self.act(&Action::Page(Page::Record {})).is_err() {
                return;
            }
            let failed = self.trace.recordings.len() - 2;
            self.pass(duration_s);
            drop(self.act(&Action::Page(Page::Stop {})));
            if failed >= self.trace.recordings_before && !self.is_recording() {
                self.trace.recordings.remove(failed);
                self.trace.shown_recording = self.trace.recordings.len().checked_sub(1);
            }
        }
    }
}
