//! The running attempt: it lets the world run on, does what is asked, and has the worksheet judged.

use super::action::{Action, Mode, Page, Refusal, Which};
use super::note::{Note, Start};
use super::take::Take;
use super::worksheet::{Field, Worksheet};
use crate::assess::Criteria;
use crate::assess::misreading::{self, Evidence, Hypothesis};
use crate::assess::process::{self, Deed, Remark};
use crate::assess::trace::{self, Trace};
use crate::assess::verdict::{self, Reference, Report};
use crate::assess::window::{Peak, interval_rate};
use crate::chain::{Answer, Chain};
use crate::measure::{self, landmarks};
use crate::recorder::converter;
use crate::recording::Recording;
use crate::scenario::{Scenario, ScenarioError, fault};
use crate::strip::frame::TIME_BASES_S;
use crate::strip::live::Live;
use serde::{Deserialize, Serialize};

/// Most actions in an attempt.
pub const MOST_ACTIONS: usize = 20_000;
/// Longest take, s: two hours.
pub const LONGEST_TAKE_S: f64 = 7200.0;
/// Longest step of the world in one call of [`Session::advance`], s: a page that slept does not catch up.
const LONGEST_STEP_S: f64 = 0.25;
/// Shortest recording that is kept, s.
const SHORTEST_TAKE_S: f64 = 1.0;

/// An action with the sample before which it was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Logged {
    /// Samples made since the start.
    pub at: u64,
    /// What was done.
    pub action: Action,
}

/// The outcome of a check.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Checked {
    /// Number of this check, from 1.
    #[serde(rename = "try")]
    pub tries: u32,
    /// The judged steps.
    #[serde(flatten)]
    pub report: Report,
    /// The well-known misreading that explains what was typed, where one stands out.
    pub misreading: Option<Hypothesis>,
    /// How the faults were found and mended.
    pub process: Vec<Remark>,
    /// Figures of the measured stretch.
    pub trace: Option<Trace>,
    /// The true figures, once they may be shown.
    pub truth: Option<Truth>,
}

/// The true figures.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Truth {
    /// Where the figures come from.
    pub source: Source,
    /// The faults that the scenario put into the bench.
    pub faults: Vec<String>,
    /// Rate in the student's window, beats/min.
    pub window_rate: Option<f64>,
    /// Rate over the whole record, beats/min.
    pub record_rate: Option<f64>,
    /// Beats in the student's window.
    pub beats_in_window: Option<usize>,
    /// Beats of the record, s from its start, as the recorder shows them.
    pub beat_times: Vec<f64>,
}

/// Where true figures come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// The simulated heart.
    Heart,
    /// The project's own detector, for recordings whose heart nobody knows.
    Detector,
}

/// What stands behind an attempt.
#[derive(Clone, Debug)]
enum World {
    Bench { scenario: Box<Scenario>, text: String, chain: Box<Chain>, live: Live },
    File { name: String, detected: Vec<f64> },
}

/// The running attempt.
#[derive(Clone, Debug)]
pub struct Session {
    world: World,
    seed: u64,
    log: Vec<Logged>,
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
        let scenario = Scenario::read(scenario_text)?;
        let situation = scenario.situation(seed)?;
        let chain = Chain::new(situation.config, seed)
            .map_err(|e| ScenarioError::at(format!("recorder.{}", e.field), "another value", e.expected))?;
        let live = Live::new(f64::from(chain.settings().rate_hz));
        let world = World::Bench {
            scenario: Box::new(scenario),
            text: scenario_text.to_string(),
            chain: Box::new(chain),
            live,
        };
        let mut session = Self::with(world, seed, Vec::new(), Mode::Live, situation.time_base_s);
        if situation.foreign_take {
            session.leave_foreign_take()?;
        }
        super::script::play(&mut session, &situation.before)
            .map_err(|e| ScenarioError::at("before", e, "steps that can be done"))?;
        // What happened before the student came is part of the scenario, not of the attempt.
        session.log.clear();
        session.losses.clear();
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
        take.foreign = Some(peaks_of(&chain, &take));
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
            let room = 0.06 * (high - low).max(1e-9);
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

    /// Lets `seconds` pass, at most a quarter of a second a call; parts of a sample are kept for the next call.
    pub fn advance(&mut self, seconds: f64) {
        let Some(rate) = self.chain().map(|c| f64::from(c.settings().rate_hz)) else { return };
        if !(seconds.is_finite() && seconds > 0.0) {
            return;
        }
        self.owed_s += seconds.min(LONGEST_STEP_S);
        let n = (self.owed_s * rate).floor();
        self.owed_s -= n / rate;
        self.run(n as usize);
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
            for code in &self.codes {
                live.push((f64::from(*code) * code_v) as f32);
            }
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
        let at = self.samples();
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
            self.note(Logged { at, action: action.clone() });
            self.revision += 1;
        }
        done
    }

    /// Writes an action into the log. A drag sends many of a kind in a row; of those that leave no trace of the way
    /// (a cursor, a scroll, a part moved again before the next sample) only the last is kept.
    fn note(&mut self, logged: Logged) {
        use crate::bench::Change;
        let replaces = self.log.last().is_some_and(|last| match (&last.action, &logged.action) {
            (Action::Page(Page::Cursor { which: a, .. }), Action::Page(Page::Cursor { which: b, .. })) => {
                a == b
            }
            (Action::Page(Page::Scroll { .. }), Action::Page(Page::Scroll { .. })) => true,
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
            _ => self.log.push(logged),
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
                // Zooming a take keeps its middle.
                let middle = self.start_s + self.time_base_s / 2.0;
                self.time_base_s = s;
                if self.mode == Mode::Take {
                    self.scroll_to(middle - s / 2.0);
                }
            }
            Page::Show { mode } => match (mode, self.chain().is_some()) {
                (_, false) => return Err(Refusal::NoBench {}),
                (Mode::Take, true) => {
                    if self.take().is_none() {
                        return Err(Refusal::NoTake {});
                    }
                    self.mode = Mode::Take;
                }
                (mode, true) => self.mode = mode,
            },
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
                self.worksheet.set(field, text);
            }
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
                self.bench(|chain| {
                    chain.start(what);
                    Ok(())
                })?;
            }
        }
        Ok(())
    }

    fn record(&mut self) -> Result<(), Refusal> {
        let World::Bench { chain, .. } = &self.world else { return Err(Refusal::NoBench {}) };
        if self.recording {
            return Err(Refusal::Recording { what: "record" });
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

    fn show_take(&mut self, take: usize) {
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

    /// The beats of the shown take that its measurement is judged against. The one reader of the truth.
    pub fn reference_peaks(&self) -> Vec<Peak> {
        let Some(take) = self.take() else { return Vec::new() };
        match &self.world {
            World::Bench { chain, .. } => take.foreign.clone().unwrap_or_else(|| peaks_of(chain, take)),
            World::File { detected, .. } => detected.iter().map(|t| Peak { at_s: *t, sure: true }).collect(),
        }
    }

    /// What must be reached.
    pub fn criteria(&self) -> Criteria {
        self.scenario().map_or_else(Criteria::default, |s| s.pass.clone())
    }

    /// What a check would find now; it counts as no try.
    pub fn preview(&self) -> Option<(Report, Option<Trace>)> {
        let take = self.take()?;
        let peaks = self.reference_peaks();
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        let window = take.window();
        let duration_s = take.recording.duration_s();
        let (a, b) = window.unwrap_or((0.0, duration_s));
        // A real recording has its own unit, range and mains: its trace is not judged.
        let trace = self.chain().and_then(|_| trace::look(&take.recording, a, b, mains_hz));
        let reference = Reference { peaks: &peaks, delay_s: take.delay_s, duration_s };
        let typed = self.worksheet.typed();
        let mut report = verdict::judge(&self.criteria(), trace.as_ref(), window, &typed, &reference);
        if take.foreign.is_some() {
            report.prepend(verdict::foreign());
        }
        if let Some(named) = self.judge_names() {
            report.prepend(named);
        }
        Some((report, trace))
    }

    /// Whether the faults that were named are those of the scenario, where it asks for names.
    fn judge_names(&self) -> Option<verdict::Finding> {
        let scenario = self.scenario().filter(|s| s.name_faults)?;
        let there: Vec<&str> = scenario.fault.iter().map(|f| f.name.as_str()).collect();
        Some(verdict::names(&there, &self.named))
    }

    fn judge(&mut self) -> Result<(), Refusal> {
        if self.over {
            return Err(Refusal::AttemptOver {});
        }
        let (report, trace) = self.preview().ok_or(Refusal::NoTake {})?;
        let process = self.process();
        let misreading = if report.passed { None } else { self.misreading() };
        let tries = self.check.as_ref().map_or(0, |c| c.tries) + 1;
        let show = report.passed || tries >= 2;
        let truth = show.then(|| self.truth());
        self.over = show;
        self.check = Some(Checked { tries, report, misreading, process, trace, truth });
        Ok(())
    }

    /// The misreading that explains what was typed, if one stands out.
    fn misreading(&self) -> Option<Hypothesis> {
        let take = self.take()?;
        let window = take.window()?;
        let peaks = self.reference_peaks();
        let recording = &take.recording;
        let times: Vec<f64> = peaks.iter().map(|p| p.at_s + take.delay_s).collect();
        let values = recording.values(0, recording.len());
        let bumps: Vec<f64> = landmarks::of_beats(&values, recording.rate_hz(), &times)
            .iter()
            .filter_map(|beat| beat.second_s)
            .collect();
        let typed = self.worksheet.typed();
        let rate_text = self.worksheet.entry(Field::Rate).text;
        let decimals =
            rate_text.split(['.', ',']).nth(1).map_or(0, |d| d.chars().filter(char::is_ascii_digit).count());
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        let (a, b) = window;
        let found = misreading::hypotheses(&Evidence {
            peaks: &peaks,
            bumps: &bumps,
            marks: &take.marks,
            window,
            allowed: crate::assess::window::allowed(&peaks, a, b, self.criteria().edge_s, take.delay_s),
            count: typed.count,
            seconds: typed.seconds,
            multiplier: typed.multiplier,
            rate: typed.rate,
            rate_decimals: decimals,
            breaths_per_min: self.chain().map_or(15.0, Chain::breaths_per_min),
            mains_shows_hz: (mains_hz - (mains_hz / recording.rate_hz()).round() * recording.rate_hz()).abs(),
        });
        misreading::named(&found).cloned()
    }

    /// What was done, with its time. A sample's length changes with the sampling rate.
    fn deeds(&self) -> Vec<Deed> {
        use crate::recorder::settings::Change;
        let mut rate = self.chain().map_or(1000.0, |c| f64::from(c.config().recorder.rate_hz));
        let (mut at, mut at_s) = (0, 0.0);
        self.log
            .iter()
            .map(|logged| {
                at_s += (logged.at - at) as f64 / rate;
                at = logged.at;
                if let Action::Recorder(Change::Rate { hz }) = logged.action {
                    rate = f64::from(hz);
                }
                Deed { at_s, name: logged.action.name(), action: logged.action.to_value() }
            })
            .collect()
    }

    /// How the faults of the scenario were found and mended, from the log.
    fn process(&self) -> Vec<Remark> {
        let Some(scenario) = self.scenario() else { return Vec::new() };
        let deeds = self.deeds();
        let faults: Vec<process::Case> = scenario
            .fault
            .iter()
            .filter_map(|spec| fault::named(&spec.name))
            .map(|f| process::Case {
                id: f.id,
                tests: f.tests,
                repairs: f.remedy.iter().filter_map(|r| process::deed_name(r)).collect(),
                present: f.curable && super::symptom::cause_remains(self, f),
            })
            .collect();
        process::remarks(&deeds, &faults)
    }

    fn reveal(&mut self) -> Result<(), Refusal> {
        // The true rate is an answer to a check, never a way round it.
        let truth = self.truth();
        let check = self.check.as_mut().ok_or(Refusal::NotChecked {})?;
        check.truth = Some(truth);
        self.over = true;
        Ok(())
    }

    fn truth(&self) -> Truth {
        let peaks = self.reference_peaks();
        let window = self.take().and_then(Take::window);
        let (delay_s, duration_s) = self.take().map_or((0.0, 0.0), |t| (t.delay_s, t.recording.duration_s()));
        let check = window.map(|(a, b)| {
            crate::assess::window::allowed(&peaks, a, b, self.criteria().edge_s, delay_s).exact
        });
        Truth {
            source: if self.chain().is_some() { Source::Heart } else { Source::Detector },
            faults: self
                .scenario()
                .map_or_else(Vec::new, |s| s.fault.iter().map(|f| f.name.clone()).collect()),
            window_rate: window.and_then(|(a, b)| interval_rate(&peaks, a - delay_s, b - delay_s)),
            record_rate: interval_rate(&peaks, 0.0, duration_s),
            beats_in_window: check,
            beat_times: peaks.iter().map(|p| p.at_s + delay_s).collect(),
        }
    }
}

/// The true beats within a take.
fn peaks_of(chain: &Chain, take: &Take) -> Vec<Peak> {
    let inside = |p: &Peak| p.at_s >= 0.0 && p.at_s <= take.recording.duration_s();
    chain
        .truth()
        .iter()
        .map(|beat| Peak { at_s: beat.peak_s - take.start_s, sure: beat.detectable })
        .filter(inside)
        .collect()
}

fn in_take(field: &'static str, t: f64, take: &Take) -> Result<(), Refusal> {
    let max = take.recording.duration_s();
    if t.is_finite() && (0.0..=max).contains(&t) {
        Ok(())
    } else {
        Err(Refusal::OutOfRange { field, min: 0.0, max })
    }
}
