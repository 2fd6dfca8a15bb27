//! When the heart beats.
//!
//! Integral pulse frequency modulation: the instantaneous rate is integrated, and a beat falls each time the
//! integral has grown by one. The modulation has zero mean, so the mean rate is exact over the long run, whatever the
//! variability. The bands follow McSharry et al. 2003 (IEEE TBME 50:289): one around 0.1 Hz, one at the breathing
//! rate; a slow drift near 0.02 Hz and a white part from beat to beat are added.
//!
//! A premature beat is an extra beat within a cycle; the regular one that follows is not conducted. So the pause is
//! fully compensatory and the mean rate of the pacemaker is kept.

use super::TICK_S;
use super::oscillator::Oscillator;
use super::subject::Subject;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// A beat of the heart, as it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Onset {
    /// Electrical time of the beat, s.
    pub time_s: f64,
    /// Out of turn.
    pub premature: bool,
    /// The beat after the pause that follows a premature one.
    pub after_pause: bool,
}

/// Heart rhythm: configuration drawn from the subject and running state.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rhythm {
    regular: bool,
    rest_hz: f64,
    /// Relative standard deviations of the instantaneous rate: low-frequency and slow bands.
    low_sd: f64,
    slow_sd: f64,
    /// Peak amplitude of the relative rate for a chest excursion of 1, at gain 1 of the breathing rate.
    breath_gain: f64,
    /// Standard deviation of an interval's white part, in cycles.
    white_sd: f64,
    premature_per_cycle: f64,
    phase: f64,
    threshold: f64,
    early_at: f64,
    blocked: bool,
    paused: bool,
    low: Oscillator,
    slow: Oscillator,
    stream: Stream,
    /// Breaths a minute and the gain that belongs to them: they stay the same for a whole breath.
    breath_known: Option<(f64, f64)>,
}

/// An `early_at` that no phase reaches: no premature beat in this cycle.
const NEVER: f64 = 1e9;

impl Rhythm {
    /// The rhythm of `subject` under `seed`, somewhere in a cycle.
    pub fn new(subject: &Subject, seed: u64) -> Self {
        let mut stream = Stream::new(seed, "physiology.rhythm");
        let rest_hz = subject.rest_rate_bpm / 60.0;
        let rr_ms = 1000.0 / rest_hz;
        // Shares of the variance of the intervals (sum 1): white and slow fixed, the rest split by LF/HF.
        let (white, slow) = (subject.white_share, subject.slow_share);
        let low = (1.0 - white - slow) * subject.lf_hf / (1.0 + subject.lf_hf);
        let high = 1.0 - white - slow - low;
        let sd = subject.sdnn_ms / rr_ms;
        let breath_hz = subject.breaths_per_min / 60.0;
        // An interval averages the rate over one cycle, which weakens fast modulation by a sinc; undo that at rest.
        // A chest excursion of 1 is +-0.5 peak, of variance 1/8.
        let gain = super::breath::arrhythmia_gain(subject.breaths_per_min);
        let breath_gain = sd * high.sqrt() * 8.0_f64.sqrt() / sinc(breath_hz / rest_hz) / gain;
        Self {
            regular: subject.regular,
            rest_hz,
            low_sd: sd * low.sqrt() / sinc(0.1 / rest_hz),
            slow_sd: sd * slow.sqrt(),
            breath_gain,
            white_sd: sd * white.sqrt(),
            premature_per_cycle: subject.premature_per_min / subject.rest_rate_bpm,
            phase: stream.uniform(),
            threshold: 1.0,
            early_at: NEVER,
            blocked: false,
            paused: false,
            low: Oscillator::new(0.1, 0.006, &mut stream),
            slow: Oscillator::new(0.02, 0.01, &mut stream),
            stream,
            breath_known: None,
        }
    }

    /// Gain of the respiratory arrhythmia; a power is worked out anew only where the breathing changes.
    fn gain_at(&mut self, per_min: f64) -> f64 {
        match self.breath_known {
            Some((known, gain)) if known == per_min => gain,
            _ => {
                let gain = super::breath::arrhythmia_gain(per_min);
                self.breath_known = Some((per_min, gain));
                gain
            }
        }
    }

    /// Goes on by one tick that begins at `start_s`, at a mean rate of `rate_hz`; gives the beat that falls in it.
    /// `chest` is the breathing excursion and `per_min` its rate.
    pub fn tick(&mut self, start_s: f64, rate_hz: f64, chest: f64, per_min: f64) -> Option<Onset> {
        let (low, slow) = (self.low.tick(&mut self.stream), self.slow.tick(&mut self.stream));
        let mut rate = rate_hz;
        if !self.regular {
            let quiet = self.quietening(rate_hz);
            let breath = self.breath_gain * self.gain_at(per_min) * chest;
            let modulation = self.low_sd * low + self.slow_sd * slow + breath;
            rate *= 1.0 + (quiet * modulation).clamp(-0.45, 0.6);
        }
        let before = self.phase;
        self.phase += rate * TICK_S;
        if before < self.early_at && self.phase >= self.early_at {
            let time_s = start_s + (self.early_at - before) / rate;
            self.early_at = NEVER;
            self.blocked = true;
            return Some(Onset { time_s, premature: true, after_pause: false });
        }
        if self.phase < self.threshold {
            return None;
        }
        let time_s = start_s + (self.threshold - before) / rate;
        self.phase -= self.threshold;
        let jitter = self.stream.normal() * self.white_sd * self.quietening(rate_hz);
        let early = self.stream.uniform() < self.premature_per_cycle;
        let coupling = self.stream.range(0.55, 0.7);
        self.threshold = if self.regular { 1.0 } else { (1.0 + jitter).clamp(0.8, 1.25) };
        if self.blocked {
            self.blocked = false;
            self.paused = true;
            return None;
        }
        // Not straight after a pause: a run of premature beats is another matter than this bench teaches.
        self.early_at = if early && !self.paused { coupling } else { NEVER };
        let after_pause = std::mem::take(&mut self.paused);
        Some(Onset { time_s, premature: false, after_pause })
    }

    /// Variability falls as the rate rises above rest (vagal withdrawal).
    fn quietening(&self, rate_hz: f64) -> f64 {
        let x = (self.rest_hz / rate_hz).min(1.0);
        x * x
    }
}

/// `sin(pi x) / (pi x)`, kept away from its zeros.
fn sinc(x: f64) -> f64 {
    let a = math::PI * x.clamp(1e-6, 0.5);
    math::sin(a) / a
}
