//! The world behind an attempt: the bench and its live trace, or an opened recording. It lets time pass.

use super::action::Refusal;
use super::attempt::Session;
use super::heard::Piece;
use super::opened::Opened;
use super::save::{MOST_SAMPLES, samples_left};
use super::trace::LONGEST_RECORDING_S;
use crate::assess::window::Peak;
use crate::chain::{Answer, Chain, Looks};
use crate::deed::page::LET_PASS_S;
use crate::scenario::Scenario;
use crate::trace::live::Live;

/// Longest step of the world in one call of [`Session::advance`], s: a page that slept does not catch up.
const LONGEST_STEP_S: f64 = 0.25;

/// What stands behind an attempt.
#[derive(Clone, Debug)]
pub(super) enum World {
    Bench { scenario: Box<Scenario>, text: String, chain: Box<Chain>, live: Live },
    File(Box<Opened>),
}

/// The world and its clock.
#[derive(Clone, Debug)]
pub(super) struct Run {
    pub(super) world: World,
    pub(super) seed: u64,
    /// Whether scripts are told no right value: an assigned bench in somebody else's hands than the instructor's.
    pub(super) closed: bool,
    /// Time that passed before the student came, or while the bench set itself up, s.
    pub(super) unattended_s: f64,
    /// What the subject answered last.
    pub(super) said: Option<Answer>,
    /// End of the last exercise on the world's clock, s.
    pub(super) exercise_ended_s: Option<f64>,
    /// The samples at which the link was lost.
    pub(super) losses: Vec<u64>,
    /// What was heard since somebody began to listen.
    pub(super) heard: Option<Vec<Piece>>,
    /// Time that has passed and is no whole sample yet, s.
    owed_s: f64,
    /// The samples made last.
    pub(super) codes: Vec<i16>,
    seen_before: bool,
    looks_before: Option<Looks>,
}

impl Run {
    /// A world at its start.
    pub(super) fn new(world: World, seed: u64) -> Self {
        Self {
            world,
            seed,
            closed: false,
            unattended_s: 0.0,
            said: None,
            exercise_ended_s: None,
            losses: Vec::new(),
            heard: None,
            owed_s: 0.0,
            codes: Vec::new(),
            seen_before: false,
            looks_before: None,
        }
    }
}

impl Session {
    /// The scenario, unless a recording is shown.
    pub fn scenario(&self) -> Option<&Scenario> {
        match &self.run.world {
            World::Bench { scenario, .. } => Some(scenario),
            World::File(_) => None,
        }
    }

    /// The scenario file's text, unless a recording is shown.
    pub fn scenario_text(&self) -> Option<&str> {
        match &self.run.world {
            World::Bench { text, .. } => Some(text),
            World::File(_) => None,
        }
    }

    /// Name of the recording that is shown.
    pub fn recording_name(&self) -> Option<&str> {
        match &self.run.world {
            World::File(opened) => Some(&opened.name),
            World::Bench { .. } => None,
        }
    }

    /// The chain, unless a recording is shown.
    pub fn chain(&self) -> Option<&Chain> {
        match &self.run.world {
            World::Bench { chain, .. } => Some(chain),
            World::File(_) => None,
        }
    }

    /// The live samples, unless a recording is shown.
    pub fn live(&self) -> Option<&Live> {
        match &self.run.world {
            World::Bench { live, .. } => Some(live),
            World::File(_) => None,
        }
    }

    /// The live samples, for drawing what is new.
    pub fn live_mut(&mut self) -> Option<&mut Live> {
        match &mut self.run.world {
            World::Bench { live, .. } => Some(live),
            World::File(_) => None,
        }
    }

    /// The seed.
    pub fn seed(&self) -> u64 {
        self.run.seed
    }

    /// The world's clock, s.
    pub(super) fn time_s(&self) -> f64 {
        self.chain().map_or(0.0, Chain::time_s)
    }

    /// Time that passed while the student was there, s.
    pub fn attended_s(&self) -> f64 {
        self.time_s() - self.run.unattended_s
    }

    /// Samples made since the start.
    pub fn samples(&self) -> u64 {
        self.chain().map_or(0, Chain::samples)
    }

    /// Lets `seconds` pass, at most a quarter of a second a call; parts of a sample are kept for the next call.
    pub fn advance(&mut self, seconds: f64) {
        let Some(rate) = self.chain().map(|c| f64::from(c.settings().rate_hz)) else { return };
        if !(seconds.is_finite() && seconds > 0.0) {
            return;
        }
        self.run.owed_s += seconds.min(LONGEST_STEP_S);
        let n = (self.run.owed_s * rate).floor();
        self.run.owed_s -= n / rate;
        // Longer than this an attempt could not be taken up again: the world stands still.
        let n = n.min(self.chain().map_or(0, samples_left) as f64);
        // A worked example waits as long as its script says, so that it always comes out the same.
        let left = self.help.worked.as_ref().map_or(u64::MAX, |w| w.until.saturating_sub(self.samples()));
        self.run((n as usize).min(usize::try_from(left).unwrap_or(usize::MAX)));
    }

    /// Lets exactly `n` samples pass.
    pub fn run(&mut self, n: usize) {
        let mut left = n;
        while left > 0 {
            let World::Bench { chain, .. } = &self.run.world else { return };
            let piece = left.min(usize::try_from(chain.steady_samples()).unwrap_or(usize::MAX).max(1));
            self.run_steady(piece);
            left -= piece;
        }
    }

    /// Waits for `s` seconds at once: what wears off or warms up does so meanwhile, as if one had sat there.
    pub(super) fn let_pass(&mut self, s: u32) -> Result<(), Refusal> {
        if !LET_PASS_S.contains(&s) {
            let expected = LET_PASS_S.map(|s| s.to_string()).join(", ");
            return Err(Refusal::BadValue { field: "s", expected });
        }
        if self.trace.recording {
            return Err(Refusal::Recording { what: "let_pass" });
        }
        let chain = self.chain().ok_or(Refusal::NoBench {})?;
        let samples = u64::from(s) * u64::from(chain.settings().rate_hz);
        if samples_left(chain) < samples {
            return Err(Refusal::WorldOver { most: MOST_SAMPLES });
        }
        self.run_long(samples);
        Ok(())
    }

    /// Lets samples pass during which the link stays as it is.
    fn run_steady(&mut self, n: usize) {
        let World::Bench { chain, live, .. } = &mut self.run.world else { return };
        self.run.codes.clear();
        let seen = chain.seen();
        chain.fill(n, &mut self.run.codes);
        if seen {
            let settings = chain.settings();
            let code_v = settings.shown_code_v();
            live.push(&self.run.codes, code_v);
            if self.trace.recording
                && let Some(kept) = self.trace.recordings.last_mut()
            {
                kept.recording.mark_span(code_v, 0.0, settings.bits);
                kept.recording.push(&self.run.codes);
            }
        }
        self.hear(seen);
        let World::Bench { chain, .. } = &self.run.world else { return };
        let (seen, looks) = (chain.seen(), chain.looks());
        if self.trace.recording && (!seen || self.recorded_s() >= LONGEST_RECORDING_S) {
            // Whatever the reason for the end, what is there is kept.
            let _ = self.stop();
        }
        if seen != self.run.seen_before || Some(looks) != self.run.looks_before {
            if self.run.seen_before && !seen {
                let at = self.samples();
                self.run.losses.push(at);
            }
            self.run.seen_before = seen;
            self.run.looks_before = Some(looks);
            self.revision += 1;
        }
    }

    /// The samples at which the link was lost.
    pub(super) fn losses(&self) -> &[u64] {
        &self.run.losses
    }

    /// How often the link was lost within the last 30 s.
    pub fn losses_lately(&self) -> u32 {
        let Some(chain) = self.chain() else { return 0 };
        let since = self.samples().saturating_sub(30 * u64::from(chain.settings().rate_hz));
        self.run.losses.iter().filter(|at| **at >= since).count() as u32
    }

    pub(super) fn bench<T>(
        &mut self,
        act: impl FnOnce(&mut Chain) -> Result<T, Refusal>,
    ) -> Result<T, Refusal> {
        match &mut self.run.world {
            World::Bench { chain, .. } => act(chain),
            World::File(_) => Err(Refusal::NoBench {}),
        }
    }

    pub(super) fn recorder(&mut self, change: &crate::recorder::settings::Change) -> Result<(), Refusal> {
        use crate::recorder::settings::Change;
        let World::Bench { chain, live, .. } = &mut self.run.world else {
            return self.look_otherwise(change);
        };
        let fixed = match change {
            Change::Rate { .. } => Some("rate"),
            Change::Bits { .. } => Some("bits"),
            Change::Input { .. } => Some("input"),
            // What is recorded is of one source from its start to its end.
            Change::Calibrator { .. } => Some("calibrator"),
            _ => None,
        };
        if let (true, Some(what)) = (self.trace.recording, fixed) {
            return Err(Refusal::Recording { what });
        }
        if *change == (Change::Zero {}) && !chain.seen() {
            return Err(Refusal::NoLink {});
        }
        chain.change_recorder(change)?;
        let rate = f64::from(chain.settings().rate_hz);
        if rate != live.rate_hz() {
            *live = Live::new(rate);
            self.run.owed_s = 0.0;
            self.hear_anew();
        }
        Ok(())
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
