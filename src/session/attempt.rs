//! The running attempt: it lets the world run on, does what is asked, and has the worksheet judged.

use super::action::{Action, Mode, Page, Refusal};
use super::causes::cases_of;
use super::experiment::Lab;
use super::help::Help;
use super::kept_recording::KeptRecording;
use super::log::Log;
pub use super::log::Logged;
use super::note::Note;
use super::opened::Opened;
use super::run::Run;
pub(super) use super::run::{World, peaks_of};
use super::sheet::Sheet;
use super::trace::Trace;
pub use super::trace::{LONGEST_RECORDING_S, SNAP_S};
use crate::assess::skill::Aid;
use crate::chain::Chain;
use crate::measure;
use crate::physiology::Manoeuvre;
use crate::recorder::converter;
use crate::recording::Recording;
use crate::scenario::schema::FaultSpec;
use crate::scenario::{Scenario, ScenarioError, digest};
use crate::trace::live::Live;

/// Most actions in an attempt.
pub const MOST_ACTIONS: usize = 20_000;
/// Longest text of an answer that is taken down, characters.
pub const MOST_TEXT: usize = 1000;

/// The running attempt.
#[derive(Clone, Debug)]
pub struct Session {
    pub(super) run: Run,
    pub(super) trace: Trace,
    pub(super) sheet: Sheet,
    pub(super) lab: Lab,
    pub(super) help: Help,
    pub(super) log: Log,
    pub(super) revision: u64,
}

impl Session {
    /// An attempt at a scenario, given as the text of its file. What is drawn comes from the seed; of an assigned bench
    /// from the seed and the bench, see [`digest::heart`].
    pub fn new(scenario_text: &str, seed: u64) -> Result<Self, ScenarioError> {
        Self::begin(scenario_text, seed, false, None)
    }

    /// The bench on which scripts are played: where it is an assigned one its heart is no student's.
    pub fn example(scenario_text: &str, seed: u64) -> Result<Self, ScenarioError> {
        Self::begin(scenario_text, seed, true, None)
    }

    /// The same with `faults` in the place of those that the seed draws from the scenario's pool.
    pub fn example_with(scenario_text: &str, seed: u64, faults: &[FaultSpec]) -> Result<Self, ScenarioError> {
        Self::begin(scenario_text, seed, true, Some(faults))
    }

    fn begin(
        scenario_text: &str,
        seed: u64,
        example: bool,
        faults: Option<&[FaultSpec]>,
    ) -> Result<Self, ScenarioError> {
        let scenario = Scenario::read(scenario_text)?;
        let assignment = scenario.assignment.as_ref();
        let heart = if example && assignment.is_some() {
            digest::heart(scenario_text, seed, true)
        } else {
            scenario.heart(scenario_text, seed)
        };
        let closed = assignment.is_some_and(|a| !example && !a.is_own_file());
        let scenario = scenario.drawn_with(heart, faults);
        let situation = scenario.situation(heart)?;
        let chain = Chain::new(situation.config, heart)
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        let live = Live::new(f64::from(chain.settings().rate_hz));
        let task = scenario.task.settle(heart);
        let world = World::Bench {
            scenario: Box::new(scenario),
            text: scenario_text.to_string(),
            chain: Box::new(chain),
            live,
        };
        let mut session = Self::with(world, seed, Vec::new(), Mode::Live, situation.time_base_s);
        session.log.cases = session.scenario().map_or_else(Vec::new, cases_of);
        session.sheet.task = task;
        if situation.foreign_recording {
            session.leave_foreign_recording(crate::rng::mix(heart))?;
        }
        super::script::play(&mut session, &situation.before)
            .map_err(|e| ScenarioError::at("before", e, "steps that can be done"))?;
        // What happened before the student came is part of the scenario, not of the attempt.
        session.log.entries.clear();
        session.log.trail.clear();
        session.lab = Lab::default();
        session.run.losses.clear();
        session.trace.recordings_before = session.trace.recordings.len();
        session.log.also = session.other_causes();
        session.run.closed = closed;
        session.run.unattended_s = session.time_s();
        Ok(session)
    }

    /// Leaves a recording of another bench's subject on the table, and shows it.
    fn leave_foreign_recording(&mut self, other_seed: u64) -> Result<(), ScenarioError> {
        let Some(scenario) = self.scenario() else { return Ok(()) };
        let mut config = scenario.config()?;
        config.bench = crate::bench::Bench::wired();
        let mut chain = Chain::new(config, other_seed)
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        let rate = chain.settings().rate_hz;
        let mut codes = Vec::new();
        chain.fill(2 * rate as usize, &mut codes);
        let start_s = chain.time_s();
        codes.clear();
        chain.fill(25 * rate as usize, &mut codes);
        let mut kept = KeptRecording::new(f64::from(rate), start_s);
        kept.recording.mark_span(converter::code_v(chain.settings().range_v), 0.0, chain.settings().bits);
        kept.recording.push(&codes);
        kept.foreign = Some(peaks_of(&chain, start_s, kept.recording.duration_s()));
        self.trace.recordings.push(kept);
        self.show_recording(0);
        Ok(())
    }

    /// A recording of a real pulse on the same trace: its values, V or any unit, at `rate_hz`.
    pub fn of_recording(name: &str, rate_hz: f64, values: &[f64]) -> Self {
        Self::of_annotated(name, rate_hz, values, &[])
    }

    /// The same with the notes of its file: its beats become beat marks, its cursors cursors.
    pub fn of_annotated(name: &str, rate_hz: f64, values: &[f64], notes: &[Note]) -> Self {
        let world = World::File(Box::new(Opened::new(name, measure::detect::detect(values, rate_hz))));
        let mut kept = KeptRecording::of(Recording::of_values(rate_hz, values), 0.0);
        kept.annotate(notes);
        let mut made = Self::with(world, 0, vec![kept], Mode::Recording, 10.0);
        made.trace.shown_recording = Some(0);
        made
    }

    fn with(world: World, seed: u64, recordings: Vec<KeptRecording>, mode: Mode, time_base_s: f64) -> Self {
        Self {
            run: Run::new(world, seed),
            trace: Trace::new(recordings, mode, time_base_s),
            sheet: Sheet::default(),
            lab: Lab::default(),
            help: Help::default(),
            log: Log::default(),
            revision: 1,
        }
    }

    /// Counts up whenever something but the running time has changed.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Does an action, or says why not; then nothing has changed. What is done goes into the log.
    pub fn act(&mut self, action: &Action) -> Result<(), Refusal> {
        if self.log.entries.len() >= MOST_ACTIONS {
            return Err(Refusal::LogFull { most: MOST_ACTIONS });
        }
        if self.help.worked.as_ref().is_some_and(|w| !w.acting) && !action.kind().only_looks() {
            return Err(Refusal::WorkedExample {});
        }
        if let Action::Page(page) = action {
            self.experiment_allows(page)?;
        }
        let (at, before, now_s) = (self.samples(), self.before(action), self.time_s());
        let done = match action {
            Action::Bench(change) => self.bench(|chain| chain.change_bench(change).map_err(Refusal::from)),
            Action::Recorder(change) => self.recorder(change),
            Action::Poke(poke) => {
                self.run.said = None;
                self.bench(|chain| Ok(chain.poke(poke))).map(|said| self.run.said = said)
            }
            Action::Page(page) => self.page(page),
        };
        // A recording under a second is thrown away, and that too belongs to the attempt's course.
        if done.is_ok() || done == Err(Refusal::TooShort {}) {
            self.notice(action, now_s);
            self.note(Logged { at, action: action.clone() }, before);
            self.revision += 1;
        }
        done
    }

    fn page(&mut self, page: &Page) -> Result<(), Refusal> {
        match *page {
            Page::Agree {} => self.help.agreed = true,
            // The log holds it, and who asks for it reads it there.
            Page::Consent { .. } => {}
            Page::Help { mode } => {
                if !self.log.entries.is_empty() {
                    return Err(Refusal::TooLate {});
                }
                self.chain().ok_or(Refusal::NoBench {})?;
                self.help.aid = Some(mode);
                if mode == Aid::Half {
                    self.set_up();
                }
            }
            Page::Hint {} => self.give_hint()?,
            Page::Manoeuvre { ref what } => {
                let what = *what;
                let now_s = self.bench(|chain| {
                    chain.start(what);
                    Ok(chain.time_s())
                })?;
                if let Manoeuvre::Exercise { seconds, .. } = what {
                    self.run.exercise_ended_s = Some(now_s + seconds);
                }
            }
            Page::LetPass { s } => self.let_pass(s)?,
            Page::Answer { .. }
            | Page::KeepWindow {}
            | Page::KeepClear {}
            | Page::Name { .. }
            | Page::Unname { .. }
            | Page::Explain { .. }
            | Page::Check {}
            | Page::AnotherWindow {}
            | Page::Reveal {} => self.on_sheet(page)?,
            Page::Predict { .. }
            | Page::AddRow { .. }
            | Page::RowNote { .. }
            | Page::RemoveRow { .. }
            | Page::Conclude { .. } => self.on_experiment(page)?,
            Page::TimeBase { .. }
            | Page::Show { .. }
            | Page::Record {}
            | Page::Stop {}
            | Page::OpenRecording { .. }
            | Page::Scroll { .. }
            | Page::Cursor { .. }
            | Page::Mark { .. }
            | Page::Unmark { .. }
            | Page::MarksClear {}
            | Page::Zoom { .. }
            | Page::ZoomOut {}
            | Page::Snap { .. }
            | Page::Label { .. } => self.on_power_strip(page)?,
        }
        Ok(())
    }
}
