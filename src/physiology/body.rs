//! The whole subject, stepped together: fills blocks of samples and owns the true beat times.

use super::TICK_S;
use super::baseline::Baseline;
use super::breath::Breathing;
use super::effects::Effects;
use super::manoeuvre::{Manoeuvre, limit};
use super::oscillator::Oscillator;
use super::rhythm::{Onset, Rhythm};
use super::shape::{SECOND_WITHIN_S, Variation};
use super::subject::Subject;
use super::unrest::Unrest;
use super::wave::{CHUNK, Search, Second, Wave};
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// A true beat.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Beat {
    /// Time of the systolic maximum of the pulse wave, s since the start.
    pub peak_s: f64,
    /// Time of the foot: the lowest point before the upstroke, s.
    pub foot_s: f64,
    /// Notch and second bump, where the beat has them. A bump higher than 1 tops the peak; the peak stays the systolic
    /// one.
    pub second: Option<Second>,
    /// Time since the peak of the beat before, s.
    pub interval_s: f64,
    /// Height of the beat, in units of the mean resting beat.
    pub amplitude: f64,
    /// Out of turn.
    pub premature: bool,
    /// Raises a maximum of its own in the wave that nobody would take for the notch of the beat before. A premature beat
    /// may be too weak to (pulse deficit): whoever counts it and whoever does not are both right.
    pub detectable: bool,
}

impl Beat {
    /// Whether who counts must have it. A premature beat is small and comes on the fall of the beat before: on the recorded
    /// trace, with filters, breath and movements on it, even one that raises a maximum may pass for a notch wave.
    pub fn must_be_counted(&self) -> bool {
        self.detectable && !self.premature
    }
}

/// Before time 0 the body has lived for this long, so that nothing starts up at the start.
const BEFORE_S: f64 = 16.0;
/// Height of the maximum above the lowest point before it, in units of the resting beat, for a beat to be seen.
const SEEN: f64 = 0.05;
/// The same for a premature beat, which comes while the beat before is still falling: a lower one looks like that beat's
/// notch wave. A design value.
const SEEN_EARLY: f64 = 0.2;

/// The subject's body: configuration and running state. A copy saved and restored goes on with the same bits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    subject: Subject,
    rate_hz: f64,
    /// Time of sample 0 of the present rate, and number of samples since.
    origin_s: f64,
    filled: u64,
    tick: i64,
    /// First sample (in the count of `filled`) after the present tick.
    tick_end: u64,
    baseline_before: f64,
    baseline_now: f64,
    /// What the coupling holds back of the baseline, and how far it follows in a tick.
    slow_baseline: f64,
    baseline_coupling: f64,
    unit: f64,
    mean: f64,
    last_onset_s: f64,
    interval_s: f64,
    last_peak_s: f64,
    /// From the ejection's centre to the peak, in the last beat that showed one.
    crest_s: f64,
    known: usize,
    beats: Vec<Beat>,
    wave: Wave,
    rhythm: Rhythm,
    breathing: Breathing,
    baseline: Baseline,
    unrest: Unrest,
    effects: Effects,
    height_slow: Oscillator,
    reflection_slow: Oscillator,
    stream: Stream,
}

impl Body {
    /// A body at quiet rest in the midst of its life, at `rate_hz` samples a second (drawn into 20 to 20 000).
    pub fn new(subject: Subject, seed: u64, rate_hz: f64) -> Self {
        let rate_hz = limit(rate_hz, 20.0, 20_000.0);
        let rest_s = 60.0 / subject.rest_rate_bpm;
        let (height, mean) = subject.shape.steady_height_and_mean(&subject.touch, rest_s);
        let mut stream = Stream::new(seed, "physiology.heights");
        let before = (BEFORE_S * rate_hz).round();
        let origin_s = -before / rate_hz;
        let mut body = Self {
            rate_hz,
            origin_s,
            filled: 0,
            tick: (origin_s / TICK_S).floor() as i64 - 1,
            tick_end: 0,
            baseline_before: 0.0,
            baseline_now: 0.0,
            slow_baseline: 0.0,
            baseline_coupling: 1.0 - math::exp(-subject.touch.coupling_per_s() * TICK_S),
            unit: 1.0 / height,
            mean,
            last_onset_s: origin_s - rest_s,
            interval_s: rest_s,
            last_peak_s: origin_s,
            crest_s: 0.0,
            known: 0,
            beats: Vec::new(),
            wave: Wave::coupled(subject.shape.run_off_s, subject.touch.coupling_per_s(), 1.0 / rate_hz),
            rhythm: Rhythm::new(&subject, seed),
            breathing: Breathing::new(seed),
            baseline: Baseline::new(&subject, seed),
            unrest: Unrest::new(subject.restlessness, seed),
            effects: Effects::new(seed),
            height_slow: Oscillator::new(0.03, 0.03, &mut stream),
            reflection_slow: Oscillator::new(0.0, 0.02, &mut stream),
            stream,
            subject,
        };
        let mut bin = [[0.0; CHUNK]; 2];
        let [a, b] = &mut bin;
        let mut left = before as usize;
        while left > 0 {
            let n = left.min(CHUNK);
            body.fill(&mut a[..n], &mut b[..n]);
            left -= n;
        }
        body.beats.retain(|b| b.peak_s >= 0.0);
        body.known = 0;
        body.regrid(0.0);
        body
    }

    /// The analogue step changes; time goes on. Drawn into 20 to 20 000 Hz.
    pub fn set_rate(&mut self, rate_hz: f64) {
        let rate_hz = limit(rate_hz, 20.0, 20_000.0);
        if rate_hz != self.rate_hz {
            let now_s = self.time_s();
            self.rate_hz = rate_hz;
            self.regrid(now_s);
            self.wave.set_step(1.0 / rate_hz, now_s);
        }
    }

    /// Asks the subject to do something, from now on. Parameters out of range are drawn to its ends; see
    /// [`Manoeuvre::check`] for refusing them.
    pub fn start(&mut self, m: Manoeuvre) {
        if m == Manoeuvre::DeepBreath {
            self.breathing.begin_breath();
        }
        self.effects.start(m.limited(), self.time_s());
    }

    /// The next samples. `pulse`: 1 is the peak-to-peak height of the subject's mean resting beat on a warm finger at
    /// the best strap, around a mean of 0. `breath`: the slow baseline in the same unit. Both the same length; how the
    /// samples are split into blocks changes nothing.
    pub fn fill(&mut self, pulse: &mut [f64], breath: &mut [f64]) {
        let total = pulse.len().min(breath.len());
        let mut done = 0;
        while done < total {
            while self.filled >= self.tick_end {
                self.step();
            }
            let n = ((self.tick_end - self.filled) as usize).min(total - done).min(CHUNK);
            let out = &mut pulse[done..done + n];
            self.wave.fill(out);
            let (unit, mean) = (self.unit, self.mean);
            for o in out {
                *o = (*o - mean) * unit;
            }
            let slope = (self.baseline_now - self.baseline_before) / TICK_S;
            // Counted from the tick's own start, so that the split into blocks does not matter.
            let start = self.origin_s - self.tick as f64 * TICK_S;
            // Whole numbers below 2^53: their sum as such is the same, and small ones become fractions faster.
            let filled = self.filled as f64;
            for (k, b) in breath[done..done + n].iter_mut().enumerate() {
                let t = start + (filled + f64::from(k as u16)) / self.rate_hz;
                *b = self.baseline_before + slope * t;
            }
            self.filled += n as u64;
            done += n;
        }
        let now_s = self.time_s();
        while self.beats.get(self.known).is_some_and(|b| b.peak_s < now_s) {
            self.known += 1;
        }
    }

    /// The truth: all beats whose peaks lie in the samples filled so far, in order.
    pub fn beats(&self) -> &[Beat] {
        &self.beats[..self.known]
    }

    /// Time of the next sample, s since the start.
    pub fn time_s(&self) -> f64 {
        self.origin_s + self.filled as f64 / self.rate_hz
    }

    /// Who this is.
    pub fn subject(&self) -> &Subject {
        &self.subject
    }

    /// Temperature of the finger now, degrees C.
    pub fn finger_temp_c(&self) -> f64 {
        self.subject.finger_temp_c + self.effects.warmer_c(&self.subject, self.time_s())
    }

    /// Counts samples from `now_s` on.
    fn regrid(&mut self, now_s: f64) {
        self.origin_s = now_s;
        self.filled = 0;
        self.tick_end = self.first_sample_at((self.tick + 1) as f64 * TICK_S);
    }

    /// Number of the first sample at or after `time_s`.
    fn first_sample_at(&self, time_s: f64) -> u64 {
        // A hair early, so that a tick that falls on a sample by arithmetic is not missed by rounding.
        ((time_s - self.origin_s) * self.rate_hz - 1e-6).ceil().max(0.0) as u64
    }

    /// One slow step: everything but the wave.
    fn step(&mut self) {
        self.tick += 1;
        let start_s = self.tick as f64 * TICK_S;
        self.tick_end = self.first_sample_at(start_s + TICK_S);
        let demand = self.effects.demand(&self.subject, start_s);
        let movement = self.breathing.tick(demand.breathing);
        self.baseline_before = self.baseline_now;
        let stir = self.unrest.tick();
        // The coupling takes from the wander what it takes from the pulse.
        let wander = self.baseline.tick(movement.chest, &demand) + stir.baseline;
        self.slow_baseline += self.baseline_coupling * (wander - self.slow_baseline);
        // A hand that is moved as a whole moves the sensor whatever the tissue lets go.
        self.baseline_now = wander - self.slow_baseline + self.baseline.sway();
        let slow = self.height_slow.tick(&mut self.stream);
        let tone = self.reflection_slow.tick(&mut self.stream);
        let onset = self.rhythm.tick(start_s, demand.rate_bpm / 60.0, movement.chest, movement.per_min);
        if let Some(onset) = onset {
            let s = &self.subject;
            let height = demand.height
                * stir.contact
                * s.warmth()
                * (1.0 - s.breath_on_height * movement.chest)
                * math::exp(s.height_slow_sd * slow);
            self.launch(onset, height, tone);
        }
    }

    /// Sends a beat on its way and notes its true peak.
    fn launch(&mut self, onset: Onset, height: f64, tone: f64) {
        let interval = onset.time_s - self.last_onset_s;
        self.last_onset_s = onset.time_s;
        // Systole follows the running rate more than the single interval.
        self.interval_s += 0.4 * (interval.clamp(0.25, 2.5) - self.interval_s);
        let s = &self.subject;
        let (a, b, c) = (self.stream.normal(), self.stream.normal(), self.stream.uniform());
        let mut amplitude = height * (1.0 + s.height_beat_sd * a).max(0.2);
        if onset.premature {
            amplitude *= 0.4 * c;
        } else if onset.after_pause {
            // Post-beat pressure amplitude +9.8 +- 5.4 % in controls (PMC2290033).
            amplitude *= 1.1;
        }
        let v = Variation {
            stretch: self.interval_s.sqrt(),
            amplitude,
            reflection: math::exp(0.05 * tone + 0.015 * b),
        };
        let now_s = self.time_s();
        let bumps = s.shape.bumps_through(&s.touch, onset.time_s, v);
        for bump in bumps {
            self.wave.launch(bump, now_s);
        }
        let [ejection, late, ..] = bumps;
        let from_s = ejection.centre_s - 2.5 * ejection.width_s;
        let peak = self.wave.look_ahead(
            now_s,
            Search {
                // From its peak on the beat before falls until this one rises, so that the lowest point is the foot.
                foot_s: self.last_peak_s.max(now_s),
                from_s,
                to_s: late.centre_s + 1.5 * late.width_s,
                // Not into the rise of the next beat.
                second_s: ejection.centre_s
                    + ((SECOND_WITHIN_S + 0.04) * v.stretch).min(self.interval_s - 0.17 * v.stretch),
            },
        );
        let least = if onset.premature { SEEN_EARLY } else { SEEN };
        let detectable = peak.inside && peak.rise * self.unit > least;
        if detectable && !onset.premature {
            self.crest_s = peak.time_s - ejection.centre_s;
        }
        // A beat that is not seen has its peak where one would be.
        let peak_s = if detectable { peak.time_s } else { ejection.centre_s + self.crest_s };
        self.beats.push(Beat {
            peak_s,
            foot_s: if detectable { peak.foot_s } else { ejection.centre_s - 2.5 * ejection.width_s },
            second: peak.second.filter(|_| detectable),
            interval_s: peak_s - self.last_peak_s,
            amplitude: amplitude.max(0.0),
            premature: onset.premature,
            detectable,
        });
        self.last_peak_s = peak_s;
    }
}
