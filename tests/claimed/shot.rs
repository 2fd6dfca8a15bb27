//! What a student could see: the last seconds of the live trace, and what the page shows of bench and screen.

use dicrotic::math;
use dicrotic::measure::landmarks::{MeanBeat, mean_beat};
use dicrotic::measure::quality::Quality;
use dicrotic::measure::{detect, quality};
use dicrotic::pickup::sensor::Kind;
use dicrotic::recorder::filters::{Memory, Section};
use dicrotic::session::Session;
use serde_json::Value;
use std::sync::OnceLock;

/// What a claim's figure is worked out from.
pub struct Seen<'a> {
    /// The same subject with the same sensor at a bench without a fault, at the same time as `shown`.
    pub usual: &'a Shot,
    /// The same at the time of `then`.
    pub usual_then: &'a dyn Fn() -> &'a Shot,
    /// The bench as it is found.
    pub shown: &'a Shot,
    /// The bench after something was done.
    pub then: &'a Shot,
}

impl Seen<'_> {
    /// The second look in the place of the first.
    pub fn afterwards(&self) -> Self {
        Self { usual: (self.usual_then)(), usual_then: self.usual_then, shown: self.then, then: self.then }
    }

    /// How the bench would be then, had there been no fault and nothing been done.
    pub fn usual_then(&self) -> &Shot {
        (self.usual_then)()
    }
}

/// A look.
pub struct Shot {
    /// What stands on the axis, V.
    pub values: Vec<f64>,
    pub rate_hz: f64,
    /// Full scale, V, and what the numbers on the axis are multiplied by.
    pub range_v: f64,
    pub scale: f64,
    pub power_line_hz: f64,
    /// Breaths of the subject a minute: who looks at the chest can count them.
    pub breaths_per_min: f64,
    /// Times at which the computer lost the recorder during the look.
    pub losses: u32,
    /// The sensor measures with light.
    pub light: bool,
    /// Samples that came to the computer since the start.
    pub samples: u64,
    /// The shown recording, V.
    pub recorded: Vec<f64>,
    /// What the page shows.
    pub view: Value,
    beats: OnceLock<Vec<f64>>,
    mean: OnceLock<Option<MeanBeat>>,
    quality: OnceLock<Option<Quality>>,
}

impl Shot {
    /// The last `seconds` of a running bench.
    pub fn take(session: &Session, seconds: f64, losses: u32) -> Self {
        let (live, chain) = (session.live().unwrap(), session.chain().unwrap());
        Self {
            values: live.last(seconds),
            rate_hz: live.rate_hz(),
            range_v: chain.settings().range_v,
            scale: chain.settings().scale,
            power_line_hz: chain.config().power_line.hz,
            breaths_per_min: chain.breaths_per_min(),
            losses,
            light: chain.config().sensor.kind == Kind::Optical,
            samples: live.total(),
            recorded: session
                .recording()
                .map_or_else(Vec::new, |kept| kept.recording.values(0, kept.recording.len())),
            view: session.view(),
            beats: OnceLock::new(),
            mean: OnceLock::new(),
            quality: OnceLock::new(),
        }
    }

    /// Something on the page, as 1 where it is there or on and 0 otherwise.
    pub fn is(&self, pointer: &str, value: impl Into<Value>) -> f64 {
        f64::from(u8::from(self.view.pointer(pointer).unwrap_or(&Value::Null) == &value.into()))
    }

    /// A number on the page.
    pub fn number(&self, pointer: &str) -> f64 {
        self.view.pointer(pointer).and_then(Value::as_f64).unwrap_or(f64::NAN)
    }

    /// Peaks, s from the beginning of the look.
    pub fn beats(&self) -> &[f64] {
        self.beats.get_or_init(|| detect::detect(&self.values, self.rate_hz))
    }

    pub fn mean(&self) -> Option<&MeanBeat> {
        self.mean.get_or_init(|| mean_beat(&self.values, self.rate_hz, self.beats())).as_ref()
    }

    fn quality(&self) -> Option<Quality> {
        *self.quality.get_or_init(|| quality::quality_of(&self.values, self.rate_hz, self.beats()))
    }

    /// Height of a beat, V: the median from foot to peak; 0 where there is none.
    pub fn height(&self) -> f64 {
        self.quality().map_or(0.0, |q| q.pulse_pp)
    }

    /// How far the feet of the beats wander, V.
    pub fn drift(&self) -> f64 {
        self.quality().map_or(0.0, |q| q.drift_pp)
    }

    /// How much alike the beats are, -1 to 1.
    pub fn likeness(&self) -> f64 {
        self.quality().map_or(0.0, |q| q.likeness)
    }

    /// Highest minus lowest, V.
    pub fn spread(&self) -> f64 {
        let (low, high) = self.values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
        (high - low).max(0.0)
    }

    /// The value below which a share of the trace lies, V.
    pub fn part(&self, share: f64) -> f64 {
        part(&self.values, share)
    }

    /// Share of samples at an end of the range.
    pub fn at_ends(&self) -> f64 {
        let end = 0.9995 * self.range_v * self.scale;
        let there = self.values.iter().filter(|v| v.abs() >= end).count();
        there as f64 / self.values.len().max(1) as f64
    }

    /// Hum of the power line, peak to peak, V.
    pub fn hum(&self) -> f64 {
        quality::hum_alone(&self.values, self.rate_hz, self.power_line_hz).map_or(0.0, |h| h.0)
    }

    /// Median interval between beats, s.
    pub fn interval(&self) -> f64 {
        part(&self.intervals(), 0.5)
    }

    pub fn intervals(&self) -> Vec<f64> {
        self.beats().windows(2).map(|w| w[1] - w[0]).collect()
    }

    /// Height of each beat, V: highest less lowest from one peak to the next.
    pub fn heights(&self) -> Vec<f64> {
        let at = |t: f64| ((t * self.rate_hz) as usize).min(self.values.len());
        self.beats()
            .windows(2)
            .map(|w| {
                let run = &self.values[at(w[0])..at(w[1])];
                part(run, 1.0) - part(run, 0.0)
            })
            .collect()
    }

    /// The trace between two frequencies, without the first seconds, in which slow filters settle, V. Second-order filters,
    /// twice each.
    pub fn band(&self, low_hz: f64, high_hz: f64) -> Vec<f64> {
        let mut out = self.values.clone();
        let first = out.first().copied().unwrap_or(0.0);
        out.iter_mut().for_each(|v| *v -= first);
        let mut run = |section: Section| {
            let mut memory = Memory::default();
            out.iter_mut().for_each(|v| *v = memory.step(&section, *v));
        };
        if low_hz > 0.0 {
            (0..2).for_each(|_| run(Section::high_pass(2, low_hz, self.rate_hz)));
        }
        if high_hz < 0.45 * self.rate_hz {
            (0..2).for_each(|_| run(Section::low_pass(2, high_hz, self.rate_hz)));
        }
        let settle_s = if low_hz < 1.0 { 4.0 } else { 1.0 };
        out.drain(..((settle_s * self.rate_hz) as usize).min(out.len() / 2));
        out
    }

    /// Root mean square of a band, V.
    pub fn rms(&self, low_hz: f64, high_hz: f64) -> f64 {
        rms(&self.band(low_hz, high_hz))
    }

    /// Amplitude of one frequency, V: the median of stretches of 0.4 s under a Hann window.
    pub fn line(&self, hz: f64) -> f64 {
        let n = ((0.4 * self.rate_hz) as usize).max(8);
        let levels: Vec<f64> = self
            .values
            .chunks_exact(n)
            .map(|chunk| {
                let mean = chunk.iter().sum::<f64>() / n as f64;
                let (c, s) = chunk.iter().enumerate().fold((0.0, 0.0), |(c, s), (k, v)| {
                    let angle = math::TAU * hz * k as f64 / self.rate_hz;
                    let v = (v - mean) * (1.0 - math::cos(math::TAU * k as f64 / n as f64));
                    (c + v * math::cos(angle), s + v * math::sin(angle))
                });
                2.0 * math::hypot(c, s) / n as f64
            })
            .collect();
        part(&levels, 0.5)
    }

    /// How far the trace goes within `ms`, V, at each place.
    pub fn steps(&self, ms: f64) -> Vec<f64> {
        let n = ((ms * self.rate_hz / 1000.0) as usize).max(1);
        self.values.windows(n + 1).map(|w| w[n] - w[0]).collect()
    }

    /// Places, at least 50 ms apart, where it goes further than `v` within 8 ms.
    pub fn jumps(&self, v: f64) -> f64 {
        let (steps, apart) = (self.steps(8.0), (0.05 * self.rate_hz) as usize);
        let (mut k, mut count) = (0, 0);
        while k < steps.len() {
            if steps[k].abs() > v {
                count += 1;
                k += apart;
            }
            k += 1;
        }
        f64::from(count)
    }

    /// Steepest falls over steepest rises, over 40 ms; below 1 for a pulse that points up.
    pub fn steepness(&self) -> f64 {
        let steps = self.steps(40.0);
        -part(&steps, 0.02) / part(&steps, 0.98).max(1e-12)
    }
}

/// The value below which a share of some lies; 0 of none.
pub fn part(values: &[f64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    let at = (share * values.len().saturating_sub(1) as f64).round() as usize;
    if sorted.is_empty() { 0.0 } else { *sorted.select_nth_unstable_by(at, f64::total_cmp).1 }
}

pub fn rms(values: &[f64]) -> f64 {
    (values.iter().map(|v| v * v).sum::<f64>() / values.len().max(1) as f64).sqrt()
}
