//! The running attempt: it lets the world run on, does what is asked, and has the worksheet judged.

use super::action::{Action, Mode, Page, Refusal, Which};
use super::causes::{Before, cases_of};
use super::guide::Worked;
use super::judging::Checked;
use super::note::{Note, Start};
use super::save::MOST_SAMPLES;
use super::take::{LONGEST_LABEL, Take};
use super::worksheet::Worksheet;
use crate::assess::hint::{Hint, Rung};
use crate::assess::skill::Aid;
use crate::assess::task::{Kind, Task};
use crate::assess::verdict::Step;
use crate::assess::window::Peak;
use crate::chain::{Answer, Chain};
use crate::measure;
use crate::physiology::Manoeuvre;
use crate::recorder::converter;
use crate::recording::Recording;
use crate::scenario::{Scenario, ScenarioError, fault};
use crate::strip::frame::TIME_BASES_S;
use crate::strip::live::Live;
use serde::{Deserialize, Serialize};

/// Most actions in an attempt.
pub const MOST_ACTIONS: usize = 20_000;
/// Longest text of an answer that is taken down, characters.
pub const MOST_TEXT: usize = 1000;
/// Longest take, s: two hours.
pub const LONGEST_TAKE_S: f64 = 7200.0;
/// Longest step of the world in one call of [`Session::advance`], s: a page that slept does not catch up.
const LONGEST_STEP_S: f64 = 0.25;
/// Shortest recording that is kept, s.
const SHORTEST_TAKE_S: f64 = 1.0;
/// How far a cursor jumps to a peak, s.
pub const SNAP_S: f64 = 0.35;
/// Shortest stretch that the strip is zoomed to, s.
const NARROWEST_S: f64 = 0.2;

/// An action with the sample before which it was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Logged {
    /// Samples made since the start.
    pub at: u64,
    /// What was done.
    pub action: Action,
}

/// What stands behind an attempt.
#[derive(Clone, Debug)]
pub(super) enum World {
    Bench { scenario: Box<Scenario>, text: String, chain: Box<Chain>, live: Live },
    File { name: String, detected: Vec<f64> },
}

/// The running attempt.
#[derive(Clone, Debug)]
pub struct Session {
    pub(super) world: World,
    seed: u64,
    pub(super) log: Vec<Logged>,
    /// What was so before each entry of the log.
    pub(super) trail: Vec<Before>,
    /// The faults of the scenario and those that come with them.
    pub(super) cases: Vec<&'static fault::Fault>,
    /// Other faults whose cause is there as well.
    pub(super) also: Vec<&'static str>,
    pub(super) takes: Vec<Take>,
    pub(super) recording: bool,
    pub(super) mode: Mode,
    pub(super) shown_take: Option<usize>,
    pub(super) start_s: f64,
    pub(super) time_base_s: f64,
    pub(super) worksheet: Worksheet,
    pub(super) check: Option<Checked>,
    pub(super) over: bool,
    pub(super) said: Option<Answer>,
    pub(super) named: Vec<String>,
    /// What is asked.
    pub(super) task: Task,
    /// The first of two windows: its ends and its take.
    pub(super) kept: Option<(f64, f64, usize)>,
    /// End of the last exercise on the world's clock, s.
    pub(super) exercise_ended_s: Option<f64>,
    /// How much help was asked for.
    pub(super) aid: Option<Aid>,
    /// The sampling rate when the set-up was done by the bench.
    pub(super) rate_after_setup: Option<u32>,
    pub(super) snap: bool,
    pub(super) agreed: bool,
    /// What was shown before the zoom: left edge and time base, s.
    pub(super) before_zoom: Option<(f64, f64)>,
    pub(super) hint: Option<Hint>,
    /// Where on the ladder one is, and on whose.
    pub(super) rung: Option<(Step, &'static str, Rung)>,
    pub(super) hints: u32,
    pub(super) revealed: bool,
    /// Codes that were wrong in any check.
    pub(super) wrong: Vec<(Step, &'static str)>,
    /// Takes that lay there before the student came.
    pub(super) takes_before: usize,
    pub(super) worked: Option<Worked>,
    /// Peaks that the detector found in a take: its number, its length in samples, the times.
    pub(super) found: Option<(usize, usize, Vec<f64>)>,
    owed_s: f64,
    codes: Vec<i16>,
    revision: u64,
    seen_before: bool,
    losses: Vec<u64>,
    looks_before: Option<crate::chain::Looks>,
}

impl Session {
    /// An attempt at a scenario, given as the text of its file.
    pub fn new(scenario_text: &str, seed: u64) -> Result<Self, ScenarioError> {
        let scenario = Scenario::read(scenario_text)?.drawn(seed);
        let situation = scenario.situation(seed)?;
        let chain = Chain::new(situation.config, seed)
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        let live = Live::new(f64::from(chain.settings().rate_hz));
        let task = scenario.task.settle(seed);
        let world = World::Bench {
            scenario: Box::new(scenario),
            text: scenario_text.to_string(),
            chain: Box::new(chain),
            live,
        };
        let mut session = Self::with(world, seed, Vec::new(), Mode::Live, situation.time_base_s);
        session.cases = session.scenario().map_or_else(Vec::new, cases_of);
        session.task = task;
        if situation.foreign_take {
            session.leave_foreign_take()?;
        }
        super::script::play(&mut session, &situation.before)
            .map_err(|e| ScenarioError::at("before", e, "steps that can be done"))?;
        // What happened before the student came is part of the scenario, not of the attempt.
        session.log.clear();
        session.trail.clear();
        session.losses.clear();
        session.takes_before = session.takes.len();
        session.also = session.other_causes();
        Ok(session)
    }

    /// Leaves a recording of another bench's subject on the table, and shows it.
    fn leave_foreign_take(&mut self) -> Result<(), ScenarioError> {
        let Some(scenario) = self.scenario() else { return Ok(()) };
        let other_seed = crate::rng::mix(self.seed);
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
        let mut take = Take::new(f64::from(rate), start_s);
        take.recording.mark_span(converter::code_v(chain.settings().range_v), 0.0, chain.settings().bits);
        take.recording.push(&codes);
        take.foreign = Some(peaks_of(&chain, start_s, take.recording.duration_s()));
        self.takes.push(take);
        self.show_take(0);
        Ok(())
    }

    /// A recording of a real pulse on the same strip: its values, V or any unit, at `rate_hz`.
    pub fn of_recording(name: &str, rate_hz: f64, values: &[f64]) -> Self {
        Self::of_annotated(name, rate_hz, values, &[])
    }

    /// The same with the notes of its file: its beats become beat marks, its cursors cursors.
    pub fn of_annotated(name: &str, rate_hz: f64, values: &[f64], notes: &[Note]) -> Self {
        let world =
            World::File { name: name.to_string(), detected: measure::detect::detect(values, rate_hz) };
        let mut take = Take::of(Recording::of_values(rate_hz, values), 0.0);
        take.annotate(notes);
        let mut made = Self::with(world, 0, vec![take], Mode::Take, 10.0);
        made.shown_take = Some(0);
        made
    }

    fn with(world: World, seed: u64, takes: Vec<Take>, mode: Mode, time_base_s: f64) -> Self {
        Self {
            world,
            seed,
            log: Vec::new(),
            trail: Vec::new(),
            cases: Vec::new(),
            also: Vec::new(),
            takes,
            recording: false,
            mode,
            shown_take: None,
            start_s: 0.0,
            time_base_s,
            worksheet: Worksheet::default(),
            check: None,
            over: false,
            said: None,
            named: Vec::new(),
            task: Task::default(),
            kept: None,
            exercise_ended_s: None,
            aid: None,
            rate_after_setup: None,
            snap: false,
            agreed: false,
            before_zoom: None,
            hint: None,
            rung: None,
            hints: 0,
            revealed: false,
            wrong: Vec::new(),
            takes_before: 0,
            worked: None,
            found: None,
            owed_s: 0.0,
            codes: Vec::new(),
            revision: 1,
            seen_before: false,
            losses: Vec::new(),
            looks_before: None,
        }
    }

    /// The scenario, unless a recording is shown.
    pub fn scenario(&self) -> Option<&Scenario> {
        match &self.world {
            World::Bench { scenario, .. } => Some(scenario),
            World::File { .. } => None,
        }
    }

    /// The scenario file's text, unless a recording is shown.
    pub fn scenario_text(&self) -> Option<&str> {
        match &self.world {
            World::Bench { text, .. } => Some(text),
            World::File { .. } => None,
        }
    }

    /// Name of the recording that is shown.
    pub fn recording_name(&self) -> Option<&str> {
        match &self.world {
            World::File { name, .. } => Some(name),
            World::Bench { .. } => None,
        }
    }

    /// The chain, unless a recording is shown.
    pub fn chain(&self) -> Option<&Chain> {
        match &self.world {
            World::Bench { chain, .. } => Some(chain),
            World::File { .. } => None,
        }
    }

    /// The live samples, unless a recording is shown.
    pub fn live(&self) -> Option<&Live> {
        match &self.world {
            World::Bench { live, .. } => Some(live),
            World::File { .. } => None,
        }
    }

    /// The live samples, for drawing what is new.
    pub fn live_mut(&mut self) -> Option<&mut Live> {
        match &mut self.world {
            World::Bench { live, .. } => Some(live),
            World::File { .. } => None,
        }
    }

    /// The seed.
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// Everything done so far.
    pub fn log(&self) -> &[Logged] {
        &self.log
    }

    /// Counts up whenever something but the running time has changed.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Samples made since the start.
    pub fn samples(&self) -> u64 {
        self.chain().map_or(0, Chain::samples)
    }

    /// The take that is shown.
    pub fn take(&self) -> Option<&Take> {
        self.shown_take.and_then(|k| self.takes.get(k))
    }

    /// All takes.
    pub fn takes(&self) -> &[Take] {
        &self.takes
    }

    /// What the strip shows.
    pub fn mode(&self) -> Mode {
        self.mode
    }

    /// Number of the take that is shown.
    pub fn shown_take_number(&self) -> Option<usize> {
        self.shown_take
    }

    /// Whether the live signal is held still.
    pub fn is_held(&self) -> bool {
        self.mode == Mode::Hold
    }

    /// Volts at the bottom and the top of the strip: the full-scale range, or for an opened recording its own
    /// lowest and highest value with a little room.
    pub fn value_range(&self) -> (f64, f64) {
        if let Some(chain) = self.chain() {
            let range = chain.settings().range_v * chain.settings().scale;
            return (-range, range);
        }
        let extent = self.take().and_then(|t| t.recording.extent(0, t.recording.len()));
        extent.map_or((-1.0, 1.0), |e| {
            let (low, high) = (f64::from(e.min), f64::from(e.max));
            // A flat line far from zero wants room that its own size does not swallow.
            let room = 0.06 * (high - low).max(1e-9).max(1e-6 * low.abs().max(high.abs()));
            (low - room, high + room)
        })
    }

    /// Time base, s a screen.
    pub fn time_base_s(&self) -> f64 {
        self.time_base_s
    }

    /// Time at the left edge of a shown take, s.
    pub fn start_s(&self) -> f64 {
        self.start_s
    }

    /// Whether a recording is being made.
    pub fn is_recording(&self) -> bool {
        self.recording
    }

    /// Length of the recording that is being made, s.
    pub fn recorded_s(&self) -> f64 {
        if self.recording { self.takes.last().map_or(0.0, |t| t.recording.duration_s()) } else { 0.0 }
    }

    /// The last check.
    pub fn check(&self) -> Option<&Checked> {
        self.check.as_ref()
    }

    /// The peak nearest to `t` s of the shown take, as the detector finds it (never the true one); `None` where none is within
    /// [`SNAP_S`].
    pub fn snap_to(&mut self, t: f64) -> Option<f64> {
        let shown = self.shown_take?;
        let take = self.takes.get(shown)?;
        let length = take.recording.len();
        if self.found.as_ref().is_none_or(|(k, n, _)| (*k, *n) != (shown, length)) {
            let (values, rate) = (take.recording.values(0, length), take.recording.rate_hz());
            let beats = measure::detect::detect(&values, rate);
            // The detector's beats bring one near; the highest point of the wave is where one would put the cursor.
            let mut peaks: Vec<f64> =
                measure::landmarks::of_beats(&values, rate, &beats).iter().map(|l| l.peak_s).collect();
            // A beat without one after it has no landmarks.
            peaks.extend(
                beats
                    .iter()
                    .filter(|b| !peaks.iter().any(|p| (p - **b).abs() < 0.2))
                    .copied()
                    .collect::<Vec<_>>(),
            );
            self.found = Some((shown, length, peaks));
        }
        let (_, _, peaks) = self.found.as_ref()?;
        let nearest = peaks.iter().copied().min_by(|x, y| (x - t).abs().total_cmp(&(y - t).abs()))?;
        ((nearest - t).abs() <= SNAP_S).then_some(nearest)
    }

    /// Lets `seconds` pass, at most a quarter of a second a call; parts of a sample are kept for the next call.
    pub fn advance(&mut self, seconds: f64) {
        let Some(rate) = self.chain().map(|c| f64::from(c.settings().rate_hz)) else { return };
        if !(seconds.is_finite() && seconds > 0.0) {
            return;
        }
        self.owed_s += seconds.min(LONGEST_STEP_S);
        let n = (self.owed_s * rate).floor();
        self.owed_s -= n / rate;
        // Longer than this an attempt could not be taken up again: the world stands still.
        let n = n.min(MOST_SAMPLES.saturating_sub(self.samples()) as f64);
        // A worked example waits as long as its script says, so that it always comes out the same.
        let left = self.worked.as_ref().map_or(u64::MAX, |w| w.until.saturating_sub(self.samples()));
        self.run((n as usize).min(usize::try_from(left).unwrap_or(usize::MAX)));
    }

    /// Lets exactly `n` samples pass.
    pub fn run(&mut self, n: usize) {
        let mut left = n;
        while left > 0 {
            let World::Bench { chain, .. } = &self.world else { return };
            let piece = left.min(usize::try_from(chain.steady_samples()).unwrap_or(usize::MAX).max(1));
            self.run_steady(piece);
            left -= piece;
        }
    }

    /// Lets samples pass during which the link stays as it is.
    fn run_steady(&mut self, n: usize) {
        let World::Bench { chain, live, .. } = &mut self.world else { return };
        self.codes.clear();
        let seen = chain.seen();
        chain.fill(n, &mut self.codes);
        if seen {
            let settings = chain.settings();
            let code_v = settings.shown_code_v();
            live.push(&self.codes, code_v);
            if self.recording
                && let Some(take) = self.takes.last_mut()
            {
                take.recording.mark_span(code_v, 0.0, settings.bits);
                take.recording.push(&self.codes);
            }
        }
        let (seen, looks) = (chain.seen(), chain.looks());
        if self.recording && (!seen || self.recorded_s() >= LONGEST_TAKE_S) {
            // Whatever the reason for the end, what is there is kept.
            let _ = self.stop();
        }
        if seen != self.seen_before || Some(looks) != self.looks_before {
            if self.seen_before && !seen {
                let at = self.samples();
                self.losses.push(at);
            }
            self.seen_before = seen;
            self.looks_before = Some(looks);
            self.revision += 1;
        }
    }

    /// The samples at which the link was lost.
    pub(super) fn losses(&self) -> &[u64] {
        &self.losses
    }

    /// How often the link was lost within the last 30 s.
    pub fn losses_lately(&self) -> u32 {
        let Some(chain) = self.chain() else { return 0 };
        let since = self.samples().saturating_sub(30 * u64::from(chain.settings().rate_hz));
        self.losses.iter().filter(|at| **at >= since).count() as u32
    }

    /// Does an action, or says why not; then nothing has changed. What is done goes into the log.
    pub fn act(&mut self, action: &Action) -> Result<(), Refusal> {
        if self.log.len() >= MOST_ACTIONS {
            return Err(Refusal::LogFull { most: MOST_ACTIONS });
        }
        if self.worked.as_ref().is_some_and(|w| !w.acting) && !looks_only(action) {
            return Err(Refusal::WorkedExample {});
        }
        let (at, before) = (self.samples(), self.before(action));
        let done = match action {
            Action::Bench(change) => self.bench(|chain| chain.change_bench(change).map_err(Refusal::from)),
            Action::Recorder(change) => self.recorder(change),
            Action::Poke(poke) => {
                self.said = None;
                self.bench(|chain| Ok(chain.poke(poke))).map(|said| self.said = said)
            }
            Action::Page(page) => self.page(page),
        };
        // A recording under a second is thrown away, and that too belongs to the attempt's course.
        if done.is_ok() || done == Err(Refusal::TooShort {}) {
            self.note(Logged { at, action: action.clone() }, before);
            self.revision += 1;
        }
        done
    }

    /// Writes an action into the log. A drag sends many of a kind in a row; of those that leave no trace of the way
    /// (a cursor, a scroll, a part moved again before the next sample) only the last is kept.
    fn note(&mut self, logged: Logged, before: Before) {
        use crate::bench::Change;
        let replaces = self.log.last().is_some_and(|last| match (&last.action, &logged.action) {
            (Action::Page(Page::Cursor { which: a, .. }), Action::Page(Page::Cursor { which: b, .. })) => {
                a == b
            }
            (Action::Page(Page::Scroll { .. }), Action::Page(Page::Scroll { .. })) => true,
            (Action::Page(Page::Label { take: a, .. }), Action::Page(Page::Label { take: b, .. })) => a == b,
            (Action::Page(Page::Answer { field: a, .. }), Action::Page(Page::Answer { field: b, .. })) => {
                a == b
            }
            (Action::Bench(Change::Move { part: a, .. }), Action::Bench(Change::Move { part: b, .. })) => {
                a == b && last.at == logged.at
            }
            _ => false,
        });
        match self.log.last_mut() {
            Some(last) if replaces => *last = logged,
            _ => {
                self.log.push(logged);
                self.trail.push(before);
            }
        }
    }

    fn bench<T>(&mut self, act: impl FnOnce(&mut Chain) -> Result<T, Refusal>) -> Result<T, Refusal> {
        match &mut self.world {
            World::Bench { chain, .. } => act(chain),
            World::File { .. } => Err(Refusal::NoBench {}),
        }
    }

    fn recorder(&mut self, change: &crate::recorder::settings::Change) -> Result<(), Refusal> {
        use crate::recorder::settings::Change;
        let World::Bench { chain, live, .. } = &mut self.world else { return Err(Refusal::NoBench {}) };
        let fixed = match change {
            Change::Rate { .. } => Some("rate"),
            Change::Bits { .. } => Some("bits"),
            Change::Input { .. } => Some("input"),
            _ => None,
        };
        if let (true, Some(what)) = (self.recording, fixed) {
            return Err(Refusal::Recording { what });
        }
        if *change == (Change::Zero {}) && !chain.seen() {
            return Err(Refusal::NoLink {});
        }
        chain.change_recorder(change)?;
        let rate = f64::from(chain.settings().rate_hz);
        if rate != live.rate_hz() {
            *live = Live::new(rate);
            self.owed_s = 0.0;
        }
        Ok(())
    }

    fn page(&mut self, page: &Page) -> Result<(), Refusal> {
        match *page {
            Page::TimeBase { s } => {
                if !TIME_BASES_S.contains(&s) {
                    let expected = TIME_BASES_S.map(|t| t.to_string()).join(", ");
                    return Err(Refusal::BadValue { field: "time_base", expected });
                }
                self.before_zoom = None;
                // Zooming a take keeps its middle.
                let middle = self.start_s + self.time_base_s / 2.0;
                self.time_base_s = s;
                if self.mode == Mode::Take {
                    self.scroll_to(middle - s / 2.0);
                }
            }
            Page::Show { mode } => {
                if self.chain().is_none() {
                    return Err(Refusal::NoBench {});
                }
                if mode == Mode::Take && self.take().is_none() {
                    return Err(Refusal::NoTake {});
                }
                if mode != Mode::Take {
                    self.leave_zoom();
                }
                self.mode = mode;
            }
            Page::Record {} => self.record()?,
            Page::Stop {} => self.stop()?,
            Page::OpenTake { take } => {
                // The take that is being made is shown live, not opened.
                let finished = self.takes.len() - usize::from(self.recording);
                if take >= finished {
                    return Err(Refusal::NoTake {});
                }
                self.show_take(take);
            }
            Page::Scroll { start_s } => {
                if self.mode != Mode::Take {
                    return Err(Refusal::NoTake {});
                }
                self.scroll_to(start_s);
            }
            Page::Cursor { which, t } => {
                let take = self.measured()?;
                if let Some(t) = t {
                    in_take("t", t, take)?;
                }
                match which {
                    Which::A => take.a = t,
                    Which::B => take.b = t,
                }
            }
            Page::Mark { t } => {
                let take = self.measured()?;
                in_take("t", t, take)?;
                if !take.mark(t) {
                    let max = super::take::MOST_MARKS as f64;
                    return Err(Refusal::OutOfRange { field: "marks", min: 0.0, max });
                }
            }
            Page::Unmark { t } => self.measured()?.unmark(t),
            Page::MarksClear {} => self.measured()?.marks.clear(),
            Page::Answer { field, ref text } => {
                if self.over {
                    return Err(Refusal::AttemptOver {});
                }
                if text.chars().count() > MOST_TEXT {
                    return Err(Refusal::TextTooLong { max: MOST_TEXT });
                }
                if !self.task.asks(field) {
                    let asked: Vec<&str> = self.task.fields().iter().map(|f| f.name()).collect();
                    return Err(Refusal::BadValue { field: "field", expected: asked.join(", ") });
                }
                self.worksheet.set(field, text);
            }
            Page::KeepWindow {} => {
                if self.over {
                    return Err(Refusal::AttemptOver {});
                }
                if self.task.kind != Kind::Compare {
                    return Err(Refusal::NotAsked {});
                }
                let shown = self.shown_take.ok_or(Refusal::NoTake {})?;
                let (a, b) = self.take().and_then(Take::window).ok_or(Refusal::NoWindow {})?;
                let again = self.kept.replace((a, b, shown)).is_some();
                self.worksheet.keep_first(again);
            }
            Page::KeepClear {} => self.kept = None,
            Page::Zoom { from_s, to_s } => self.zoom(from_s, to_s)?,
            Page::ZoomOut {} => {
                if self.before_zoom.is_none() {
                    return Err(Refusal::NotZoomed {});
                }
                self.leave_zoom();
            }
            Page::Snap { on } => self.snap = on,
            Page::Label { take, ref text } => {
                let finished = self.takes.len() - usize::from(self.recording);
                let take = self.takes[..finished].get_mut(take).ok_or(Refusal::NoTake {})?;
                if text.chars().count() > MOST_TEXT {
                    return Err(Refusal::TextTooLong { max: MOST_TEXT });
                }
                take.label = text.chars().take(LONGEST_LABEL).collect();
            }
            Page::Agree {} => self.agreed = true,
            Page::Help { mode } => {
                if !self.log.is_empty() {
                    return Err(Refusal::TooLate {});
                }
                self.chain().ok_or(Refusal::NoBench {})?;
                self.aid = Some(mode);
                if mode == Aid::Half {
                    self.set_up();
                }
            }
            Page::Hint {} => self.give_hint()?,
            Page::Name { ref fault } => {
                if self.over {
                    return Err(Refusal::AttemptOver {});
                }
                if fault::named(fault).is_none() {
                    return Err(Refusal::BadValue {
                        field: "fault",
                        expected: "a name of the catalogue".into(),
                    });
                }
                if self.named.len() >= 4 {
                    return Err(Refusal::OutOfRange { field: "faults", min: 0.0, max: 4.0 });
                }
                if !self.named.contains(fault) {
                    self.named.push(fault.clone());
                }
            }
            Page::Unname { ref fault } => self.named.retain(|f| f != fault),
            Page::Check {} => self.judge()?,
            Page::Reveal {} => {
                if self.over {
                    return Err(Refusal::AttemptOver {});
                }
                self.reveal()?;
            }
            Page::Manoeuvre { ref what } => {
                let what = *what;
                let now_s = self.bench(|chain| {
                    chain.start(what);
                    Ok(chain.time_s())
                })?;
                if let Manoeuvre::Exercise { seconds, .. } = what {
                    self.exercise_ended_s = Some(now_s + seconds);
                }
            }
        }
        Ok(())
    }

    fn record(&mut self) -> Result<(), Refusal> {
        let World::Bench { chain, .. } = &self.world else { return Err(Refusal::NoBench {}) };
        if self.recording {
            return Err(Refusal::Recording { what: "record" });
        }
        if chain.samples() >= MOST_SAMPLES {
            return Err(Refusal::WorldOver { most: MOST_SAMPLES });
        }
        if !chain.seen() {
            return Err(Refusal::NoLink {});
        }
        if !chain.routed() {
            return Err(Refusal::NothingInInput { input: chain.settings().input });
        }
        let mut take = Take::new(f64::from(chain.settings().rate_hz), chain.time_s());
        // The pulse's energy lies around its fundamental; 1.2 Hz is 72 beats a minute.
        take.delay_s = chain.delay_s(1.2);
        take.start = Some(Start { sample: chain.samples(), settings: chain.settings().clone() });
        take.exercise_ended_s = self.exercise_ended_s.map(|ended| ended - take.start_s);
        self.leave_zoom();
        take.view_s = self.time_base_s;
        self.takes.push(take);
        self.recording = true;
        self.mode = Mode::Live;
        Ok(())
    }

    fn stop(&mut self) -> Result<(), Refusal> {
        if !self.recording {
            return Err(Refusal::NotRecording {});
        }
        self.recording = false;
        self.revision += 1;
        let last = self.takes.len() - 1;
        if self.takes[last].recording.duration_s() < SHORTEST_TAKE_S {
            self.takes.pop();
            return Err(Refusal::TooShort {});
        }
        self.show_take(last);
        Ok(())
    }

    /// Shows a stretch of the take over the whole strip.
    fn zoom(&mut self, from_s: f64, to_s: f64) -> Result<(), Refusal> {
        if self.mode != Mode::Take {
            return Err(Refusal::NoTake {});
        }
        let take = self.take().ok_or(Refusal::NoTake {})?;
        in_take("from_s", from_s, take)?;
        in_take("to_s", to_s, take)?;
        if to_s - from_s < NARROWEST_S - 1e-9 {
            return Err(Refusal::TooNarrow { least: NARROWEST_S });
        }
        self.before_zoom.get_or_insert((self.start_s, self.time_base_s));
        self.time_base_s = to_s - from_s;
        self.start_s = from_s;
        Ok(())
    }

    /// Back to what was shown before the zoom.
    fn leave_zoom(&mut self) {
        if let Some((start_s, time_base_s)) = self.before_zoom.take() {
            self.time_base_s = time_base_s;
            self.scroll_to(start_s);
        }
    }

    fn show_take(&mut self, take: usize) {
        self.leave_zoom();
        self.shown_take = Some(take);
        self.mode = Mode::Take;
        self.scroll_to(0.0);
    }

    fn scroll_to(&mut self, start_s: f64) {
        let most = self.take().map_or(0.0, |t| (t.recording.duration_s() - self.time_base_s).max(0.0));
        self.start_s = if start_s.is_finite() { start_s.clamp(0.0, most) } else { 0.0 };
    }

    /// The take that is measured, for changing its cursors and marks.
    fn measured(&mut self) -> Result<&mut Take, Refusal> {
        if self.mode != Mode::Take {
            return Err(Refusal::NoTake {});
        }
        let shown = self.shown_take.ok_or(Refusal::NoTake {})?;
        self.takes.get_mut(shown).ok_or(Refusal::NoTake {})
    }
}

/// The true beats of a stretch of the bench's time, s from its start.
pub(super) fn peaks_of(chain: &Chain, start_s: f64, duration_s: f64) -> Vec<Peak> {
    let inside = |p: &Peak| p.at_s >= 0.0 && p.at_s <= duration_s;
    chain
        .truth()
        .iter()
        .map(|beat| Peak { at_s: beat.peak_s - start_s, sure: beat.must_be_counted() })
        .filter(inside)
        .collect()
}

/// What may be done while a worked example plays: looking.
fn looks_only(action: &Action) -> bool {
    matches!(
        action,
        Action::Page(Page::Scroll { .. } | Page::TimeBase { .. } | Page::Zoom { .. } | Page::ZoomOut {})
    )
}

fn in_take(field: &'static str, t: f64, take: &Take) -> Result<(), Refusal> {
    let max = take.recording.duration_s();
    if t.is_finite() && (0.0..=max).contains(&t) {
        Ok(())
    } else {
        Err(Refusal::OutOfRange { field, min: 0.0, max })
    }
}
