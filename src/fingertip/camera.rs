//! A camera that is running: frames come in, and what they say now is asked for from time to time.

use super::channels::Mixture;
use super::even::RATE_HZ;
use super::light::Light;
use super::reading::{self, AROUND_S, Reading};
use super::refusal::Refusal;
use super::series::{Series, usual_step};
use super::trace::{self, Trace};
use super::verdict;
use serde::{Deserialize, Serialize};

/// Seconds that a rate is told of.
pub const WINDOW_S: f64 = 10.0;
/// Seconds in which the light itself is looked at.
const NOW_S: f64 = 2.0;

/// What the person at the camera can do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quality {
    /// Cover the lens with the finger.
    NoFinger,
    /// More light is needed.
    TooDark,
    /// Less light is needed.
    TooBright,
    /// The blood is pressed out, or nearly.
    PressLess,
    /// Finger and camera must be still.
    HoldStill,
    /// Not enough has been seen.
    Wait,
    /// A rate is told.
    Good,
}

/// What the last seconds say.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct State {
    /// Frames taken so far.
    pub frames: usize,
    /// Frames that were ignored, and frames that should lie between those that came, since the start.
    pub dropped: usize,
    /// Beginning of the last seconds, on the frames' clock.
    pub from_s: f64,
    /// Their end.
    pub to_s: f64,
    /// Frames a second in them.
    pub fps: f64,
    /// What can be done.
    pub quality: Quality,
    /// Beats a minute in them.
    pub bpm: Option<f64>,
    /// Why no rate is told; nothing too while there are not seconds enough.
    pub refused: Option<Refusal>,
}

/// The frames so far.
#[derive(Clone, Debug, Default)]
pub struct Camera {
    series: Series,
    carrier: Option<Mixture>,
}

impl Camera {
    /// Adds a frame; see [`Series::push`].
    pub fn push(&mut self, t_s: f64, colors: [f64; 3]) -> bool {
        self.series.push(t_s, colors)
    }

    /// All frames.
    pub fn series(&self) -> &Series {
        &self.series
    }

    /// What the last [`WINDOW_S`] say.
    pub fn state(&mut self) -> State {
        let frames = self.series.frames();
        let step = usual_step(frames).unwrap_or(0.0);
        let first = frames.first().map_or(0.0, |f| f.t_s);
        let to_s = frames.last().map_or(0.0, |f| f.t_s + step.min(reading::LONGEST_GAP_S));
        let from_s = (to_s - WINDOW_S).max(first);
        let count = self.series.between(from_s, to_s).len();
        let missing: f64 =
            frames.windows(2).map(|w| ((w[1].t_s - w[0].t_s) / step.max(1e-6)).round() - 1.0).sum();
        let mut state = State {
            frames: frames.len(),
            dropped: self.series.ignored() + missing.max(0.0) as usize,
            from_s,
            to_s,
            fps: if to_s > from_s { count as f64 / (to_s - from_s) } else { 0.0 },
            quality: Quality::Wait,
            bpm: None,
            refused: None,
        };
        let now = self.series.between(to_s - NOW_S, to_s);
        let hopeless = if now.is_empty() { None } else { verdict::hopeless(&Light::of(now)) };
        if let Some(why) = hopeless {
            state.quality = quality(why);
        }
        // Half a step short is as long as the frames allow.
        if to_s - first < WINDOW_S - 0.5 * step {
            return state;
        }
        let read = reading::read(&self.series, to_s - WINDOW_S, to_s);
        self.carrier = read.mixture.or(self.carrier);
        match read.rate {
            _ if hopeless.is_some() => state.refused = hopeless,
            Ok(bpm) => (state.quality, state.bpm) = (Quality::Good, Some(bpm)),
            Err(why) => (state.quality, state.refused) = (quality(why), Some(why)),
        }
        state
    }

    /// The pulse of the last seconds, at [`RATE_HZ`], up to the last frame; from the last gap on, if there was one.
    pub fn trace(&self, seconds: f64) -> Trace {
        let Some(last) = self.series.frames().last() else { return Trace::default() };
        let seconds = if seconds.is_finite() { seconds.clamp(0.0, reading::LONGEST_S) } else { WINDOW_S };
        let frames = self.series.between(last.t_s - seconds - AROUND_S, f64::INFINITY);
        let mut trace = trace::traces(frames, self.carrier).pop().unwrap_or_default();
        let more = trace.values.len().saturating_sub((seconds * RATE_HZ) as usize);
        trace.from_s = trace.at_s(more);
        trace.values.drain(..more);
        trace
    }

    /// All consecutive windows; see [`reading::windows`].
    pub fn windows(&self, window_s: f64) -> Vec<Reading> {
        reading::windows(&self.series, window_s)
    }

    /// All beats; see [`super::beats::beats`].
    pub fn beats(&self) -> Vec<f64> {
        super::beats::beats(&self.series, WINDOW_S)
    }

    /// The whole pulse as a table of text, `t_s,finger_pulse`, with times from the first frame; over gaps nothing stands.
    pub fn recording(&self) -> String {
        let frames = self.series.frames();
        let first = frames.first().map_or(0.0, |f| f.t_s);
        let mut text = String::from("t_s,finger_pulse\n");
        for trace in trace::traces(frames, self.usual_carrier()) {
            for (i, value) in trace.values.iter().enumerate() {
                text.push_str(&format!("{:.3},{value:.4}\n", trace.at_s(i) - first));
            }
        }
        text
    }

    /// The frames as a table of text, `t_s,red,green,blue`.
    pub fn csv(&self) -> String {
        let mut text = String::from("t_s,red,green,blue\n");
        for frame in self.series.frames() {
            let [red, green, blue] = frame.colors;
            text.push_str(&format!("{:.4},{red:.3},{green:.3},{blue:.3}\n", frame.t_s));
        }
        text
    }

    /// The mixture that carried the pulse most often.
    fn usual_carrier(&self) -> Option<Mixture> {
        let carriers: Vec<Mixture> = self.windows(WINDOW_S).iter().filter_map(|w| w.mixture).collect();
        let count = |m: &Mixture| carriers.iter().filter(|c| *c == m).count();
        carriers.iter().max_by_key(|m| count(m)).copied().or(self.carrier)
    }
}

fn quality(why: Refusal) -> Quality {
    match why {
        Refusal::TooDark => Quality::TooDark,
        Refusal::TooBright => Quality::TooBright,
        Refusal::NoFinger => Quality::NoFinger,
        Refusal::Weak => Quality::PressLess,
        Refusal::Gap => Quality::Wait,
        Refusal::Moving | Refusal::Unsteady | Refusal::Disagree => Quality::HoldStill,
    }
}
