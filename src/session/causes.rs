//! Which causes are at work: the faults of the scenario, those that come with them, and any other of the catalogue.

use super::action::Mode;
use super::attempt::Session;
use super::script;
use crate::assess::process::{Case, Done};
use crate::bench::table::{Part, Point};
use crate::deed::{Action, Kind, Thing};
use crate::scenario::Scenario;
use crate::scenario::fault::{self, AtWork, Fault, Impression, Scene};

/// What was so just before an action.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Before {
    /// Causes at work: a bit for each of the log’s cases.
    pub(super) causes: u32,
    /// Where the part stood that is moved.
    pub(super) from: Option<Point>,
    /// Whether the trace was to be seen running.
    pub(super) live: bool,
}

/// The faults of a scenario and those that come with them.
pub(super) fn cases_of(scenario: &Scenario) -> Vec<&'static Fault> {
    let mut cases: Vec<&'static Fault> = Vec::new();
    let named = scenario.fault.iter().filter_map(|spec| fault::named(&spec.name));
    for f in named.clone().chain(named.flat_map(|f| f.brings).filter_map(|id| fault::named(id))) {
        if !cases.iter().any(|c| c.id == f.id) {
            cases.push(f);
        }
    }
    cases
}

impl Session {
    /// The bench as causes are looked for in it.
    fn scene(&self) -> Option<Scene<'_>> {
        Some(Scene {
            chain: self.chain()?,
            time_base_s: self.trace.unzoomed_s(),
            held: self.trace.mode == Mode::Paused,
            own_recordings: self.trace.recordings.len().saturating_sub(self.trace.recordings_before),
        })
    }

    /// Whether the cause of a fault is there now, whatever filters and settings leave of it on the trace.
    pub fn is_at_work(&self, f: &Fault) -> bool {
        match f.at_work {
            AtWork::Is(at_work) => self.scene().is_some_and(|scene| at_work(&scene)),
            AtWork::Found(code) => {
                self.preview().is_some_and(|(report, _)| report.steps.iter().any(|s| s.code == code))
            }
        }
    }

    /// Whether what is wrong is drawn from a pool: then nothing may tell, before the attempt is over, whether anything is.
    pub(super) fn is_pooled(&self) -> bool {
        self.scenario().is_some_and(|s| s.pool.is_some())
    }

    /// What is so before an action. What only a check can find counts as there.
    pub(super) fn before(&self, action: &Action) -> Before {
        let scene = self.scene();
        let causes = self.log.cases.iter().enumerate().filter(|(_, f)| match f.at_work {
            AtWork::Is(at_work) => scene.is_some_and(|s| at_work(&s)),
            AtWork::Found(_) => true,
        });
        let from = match action {
            Action::Bench(crate::bench::Change::Move { part, .. }) => self.chain().map(|c| match part {
                Part::Cable1 => c.bench().cable.handles[0],
                Part::Cable2 => c.bench().cable.handles[1],
                part => c.bench().table.at(*part),
            }),
            _ => None,
        };
        let live = self.trace.mode == Mode::Live && self.chain().is_some_and(|c| c.settings().shown);
        Before { causes: causes.map(|(k, _)| 1 << k).sum(), from, live }
    }

    /// Names of all faults of the catalogue whose cause is there when the attempt begins, beside those of the scenario.
    pub(super) fn other_causes(&self) -> Vec<&'static str> {
        let Some(scene) = self.scene() else { return Vec::new() };
        fault::all()
            .filter(|f| !self.log.cases.iter().any(|c| c.id == f.id))
            // Before anything was done, what has not been recorded or written yet is no fault.
            .filter(|f| f.impression != Impression::Paper)
            .filter(|f| matches!(f.at_work, AtWork::Is(at_work) if at_work(&scene)))
            .map(|f| f.id)
            .collect()
    }

    /// Faults whose cause was at work when the attempt began, beside those that the scenario names.
    pub(super) fn beside(&self) -> Vec<&'static str> {
        let listed = |id: &str| self.scenario().is_some_and(|s| s.fault.iter().any(|f| f.name == id));
        self.log
            .cases
            .iter()
            .map(|f| f.id)
            .filter(|id| !listed(id))
            .chain(self.log.also.iter().copied())
            .collect()
    }

    /// The faults as the way of working is judged by them.
    pub(super) fn cases_judged(&self) -> Vec<Case> {
        let mends = self.sheet.task.kind.question().mends();
        self.log
            .cases
            .iter()
            .map(|f| Case {
                id: f.id,
                tests: f.tests,
                repairs: f.remedy.iter().filter_map(|step| repair(step)).collect(),
                present: self.is_at_work(f),
                to_mend: f.curable && mends,
                paper: f.impression == Impression::Paper,
            })
            .collect()
    }

    /// What was done, with its time and what was so before. A sample's length changes with the sampling rate.
    pub(super) fn done(&self) -> Vec<Done> {
        use crate::recorder::settings::Change;
        let mut rate = self.chain().map_or(1000.0, |c| f64::from(c.config().recorder.rate_hz));
        let (mut at, mut at_s) = (0, 0.0);
        let nothing = Before { causes: 0, from: None, live: false };
        self.log
            .entries
            .iter()
            .enumerate()
            .map(|(k, logged)| {
                at_s += (logged.at - at) as f64 / rate;
                at = logged.at;
                match logged.action {
                    Action::Recorder(Change::Rate { hz }) => rate = f64::from(hz),
                    Action::Page(super::action::Page::Help { .. }) => {
                        rate = self.help.rate_after_setup.map_or(rate, f64::from);
                    }
                    _ => {}
                }
                let Before { causes, from, live } = self.log.trail.get(k).copied().unwrap_or(nothing);
                Done { at_s, action: logged.action.clone(), causes, from, live }
            })
            .collect()
    }
}

/// Kind and thing of a remedy's step; `None` for a wait.
fn repair(step: &str) -> Option<(Kind, Thing)> {
    let action = script::sample(step)?;
    Some((action.kind(), action.thing()))
}
