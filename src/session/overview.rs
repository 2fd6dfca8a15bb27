//! What can be said of the visible stretch without counting its beats: for those who listen to the trace rather than
//! look at it.

use super::attempt::Session;
use crate::assess::trace::{self, Trace};
use crate::recording::Recording;
use serde::Serialize;

/// Whether there is a trace.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Nothing to see.
    NoData,
    /// A line without a pulse.
    Flat,
    /// A trace.
    Trace,
}

/// How thick the hum makes the trace, against the pulse: the steps .1, .3 and 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fuzz {
    /// None to be seen.
    None,
    /// Mild.
    Mild,
    /// Clear.
    Clear,
    /// As large as the pulse, or larger.
    Heavy,
}

/// How tall the pulse stands on the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Height {
    /// Under 5 % of the screen.
    Tiny,
    /// Under 30 %.
    Small,
    /// 30 to 80 %.
    Good,
    /// Up to the whole screen.
    Tall,
    /// Beyond it.
    Over,
}

/// What can be said of the visible stretch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Overview {
    /// Whether there is a trace.
    pub state: State,
    /// Its length, s.
    pub seconds: f64,
    /// Hum.
    pub fuzz: Fuzz,
    /// Samples at the ends of the range.
    pub clipped: bool,
    /// The line wanders by more than half a pulse.
    pub drift: bool,
    /// Height of the pulse.
    pub height: Height,
}

impl Session {
    /// What can be said of the visible stretch.
    pub fn overview(&self) -> Overview {
        let power_line_hz = self.chain().map_or(50.0, |c| c.config().power_line.hz);
        let seconds = self.time_base_s().max(4.0);
        if self.shows_recording() {
            let Some(kept) = self.recording() else { return Overview::nothing() };
            let (a, b) = (self.start_s(), (self.start_s() + seconds).min(kept.recording.duration_s()));
            return Overview::of(&kept.recording, a, b, power_line_hz);
        }
        let Some(recording) = self.on_screen(seconds) else { return Overview::nothing() };
        Overview::of(&recording, 0.0, recording.duration_s(), power_line_hz)
    }

    /// The last seconds of the live trace, as they would be recorded; `None` where no samples arrive.
    pub(super) fn on_screen(&self, seconds: f64) -> Option<Recording> {
        let (live, chain) = (self.live()?, self.chain()?);
        if !chain.seen() || live.total() == 0 {
            return None;
        }
        let values = live.last(seconds);
        let code_v = chain.settings().shown_code_v();
        let mut recording = Recording::new(live.rate_hz());
        recording.mark_span(code_v, 0.0, chain.settings().bits);
        recording.push(&values.iter().map(|v| (v / code_v).round() as i16).collect::<Vec<_>>());
        Some(recording)
    }
}

impl Overview {
    fn nothing() -> Self {
        Self {
            state: State::NoData,
            seconds: 0.0,
            fuzz: Fuzz::None,
            clipped: false,
            drift: false,
            height: Height::Tiny,
        }
    }

    fn of(recording: &Recording, a: f64, b: f64, power_line_hz: f64) -> Self {
        let Some(Trace { hum_ratio, clip_share, fill, pulse_v, .. }) =
            trace::look(recording, a, b, power_line_hz)
        else {
            return Self::nothing();
        };
        let (from, to) = (recording.sample_at(a), recording.sample_at(b));
        // The level of each second; a pulse has no say in it beyond a fraction of its height.
        let second = (recording.rate_hz() as usize).max(1);
        let levels: Vec<f64> = recording
            .values(from, to)
            .chunks_exact(second)
            .map(|c| c.iter().sum::<f64>() / c.len() as f64)
            .collect();
        let low = levels.iter().copied().fold(f64::INFINITY, f64::min);
        let high = levels.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        Self {
            state: if fill < 0.002 { State::Flat } else { State::Trace },
            seconds: b - a,
            fuzz: match hum_ratio {
                r if r < 0.1 => Fuzz::None,
                r if r < 0.3 => Fuzz::Mild,
                r if r < 1.0 => Fuzz::Clear,
                _ => Fuzz::Heavy,
            },
            clipped: clip_share > 0.0,
            drift: high - low > 0.5 * pulse_v,
            height: match fill {
                f if f < 0.05 => Height::Tiny,
                f if f < 0.3 => Height::Small,
                f if f <= 0.8 => Height::Good,
                f if f <= 1.0 && clip_share == 0.0 => Height::Tall,
                _ => Height::Over,
            },
        }
    }
}
