//! The whole signal chain, stage after stage: heart and pulse wave, contact, movement, the sensor's high-pass, hum and
//! noise, the plug, the recorder.
//!
//! [`Config`] is the immutable description, [`Chain`] the running state. What comes out depends on the description,
//! the seed and the changes with the sample at which each was made, and on nothing else: not on the size of the
//! blocks in which it is asked for, nor on the machine. A chain can be saved between any two samples and goes on
//! with the same numbers.
//!
//! - [`config`]: what a run starts from
//! - [`poke`]: what is done without changing the bench, and what comes back
//! - [`condition`]: what is the matter, cause by cause
//! - [`gaps`]: a port that loses the recorder
//! - `late`: by how much the way to the trace moves a peak
//! - `told`: what can be known of a running chain

mod condition;
mod config;
mod gaps;
mod late;
mod poke;
mod told;

pub use config::{Config, Trouble};
pub use poke::{Answer, Looks, Poke, Voice};

use crate::bench::strap::{OtherHand, Strap};
use crate::bench::table::{Part, Point};
use crate::bench::wiring::End;
use crate::bench::{Bench, Change as BenchChange, Refusal};
use crate::physiology::{Body, Manoeuvre, Subject};
use crate::pickup::cable_noise::CableNoise;
use crate::pickup::contact::{self, Contact, Finger};
use crate::pickup::damp::Damp;
use crate::pickup::fan::{self, Fan};
use crate::pickup::field::{self, Hum};
use crate::pickup::light::{self, Flicker};
use crate::pickup::motion::Motion;
use crate::pickup::phone::Phone;
use crate::pickup::plug::Plug;
use crate::pickup::power_line::{Mix, Oscillator};
use crate::pickup::sensor::Kind;
use crate::pickup::shaken::Shaken;
use crate::pickup::sleeve::Sleeve;
use crate::pickup::thumb::Thumb;
use crate::pickup::tremor::Tremor;
use crate::recorder::Recorder;
use crate::recorder::calibrator::Calibrator;
use crate::recorder::filters::{Memory, Section};
use crate::recorder::settings::{BadValue, Change as RecorderChange};
use crate::rng::Stream;
use gaps::Gaps;
use serde::{Deserialize, Serialize};

/// Analogue steps worked at a time.
const BLOCK: usize = 256;
/// Noise of sensor and amplifier at the input, V rms over the simulated band (design default).
const NOISE_V: f64 = 15e-6;
/// What is left of a restless hand after it was asked to keep still.
const STILL_SHARE: f64 = 0.02;
/// Slack below which the cable is taut, cm.
const TAUT_CM: f64 = 8.0;
/// How far an amplifier's zero can be off, V (design default).
const OFFSET_V: f64 = 0.2;
/// What is left of a tremor when the arm rests on a cushion.
const RESTED_SHARE: f64 = 0.1;
/// Temperature of the finger under which the subject calls it cold, degrees C (design default).
pub const COLD_C: f64 = 29.0;
/// How far the breath moves an arm that is not supported, peak to peak in units of the pulse (design default): usual are .05 to
/// .15.
const SWAY: f64 = 1.2;
/// Share of the light that a smear on the sensing side lets through and back: at the least severity that counts, and less at the
/// greatest (design default).
const SMEAR: (f64, f64) = (0.35, 0.25);
/// What of the laptop's voltage a fingertip takes over less than a palm (design default).
const LIGHT_TOUCH: f64 = 0.6;
/// How long a press on the finger lasts, s.
const PRESS_S: f64 = 3.0;

/// How sharply a path bends at its middle point, 0 (straight) to 1 (back on itself).
fn bend(a: Point, b: Point, c: Point) -> f64 {
    let (ux, uy, vx, vy) = (b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y);
    let lengths = crate::math::hypot(ux, uy) * crate::math::hypot(vx, vy);
    if lengths > 0.0 { 0.5 - 0.5 * (ux * vx + uy * vy) / lengths } else { 0.0 }
}

/// The running chain.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Chain {
    config: Config,
    bench: Bench,
    seen: bool,
    samples: u64,
    body: Body,
    finger: Finger,
    pulse_v: f64,
    contact: Contact,
    motion: Motion,
    tremor: Tremor,
    sleeve: Sleeve,
    thumb: Option<Thumb>,
    shaken: Shaken,
    fan: Fan,
    fan_reach: f64,
    damp: Damp,
    cable_noise: CableNoise,
    phone: Phone,
    phone_v: f64,
    light: Flicker,
    flicker: f64,
    sensor_section: Section,
    sensor_memory: Memory,
    noise: Stream,
    hum: Hum,
    hum_open: Hum,
    power_line: Oscillator,
    power_line_open: Oscillator,
    plug: Plug,
    cable_break: Plug,
    gaps: Gaps,
    sighs: Stream,
    /// Steps until the next sigh.
    sigh_left: u64,
    quiet: bool,
    talks: bool,
    /// The arm lies on a cushion.
    rested: bool,
    press_left: f64,
    offset_v: f64,
    calibrator: Calibrator,
    recorder: Recorder,
}

impl Chain {
    /// A chain at the start of a run.
    pub fn new(config: Config, seed: u64) -> Result<Self, BadValue> {
        let recorder = Recorder::new(config.recorder.clone())?;
        let rate = recorder.settings().analogue_rate_hz();
        let touch = config.sensor.touches().draw(&config.subject, seed);
        let mut subject = Subject::draw(&config.subject, seed).through(touch);
        subject.breath_on_hand = SWAY * config.trouble.breath_drift;
        let finger = Finger { systolic_mmhg: subject.systolic_mmhg, diastolic_mmhg: subject.diastolic_mmhg };
        let mut chain = Self {
            bench: config.bench.clone(),
            seen: false,
            samples: 0,
            finger,
            pulse_v: subject.pulse_mv * 1e-3 * config.sensor.sensitivity(),
            sleeve: Sleeve::new(rate, config.trouble.sleeve),
            thumb: (config.trouble.thumb > 0.0)
                .then(|| Thumb::new(rate, config.trouble.thumb, subject.rest_rate_bpm, seed)),
            shaken: Shaken::new(rate, config.trouble.shaken, seed),
            fan: Fan::new(rate, config.trouble.fan, seed),
            fan_reach: 0.0,
            damp: Damp::new(rate, config.trouble.damp, seed),
            contact: Contact::new(rate, config.trouble.slip, seed).through_back(config.sensor.through_back()),
            motion: Motion::new(rate, config.trouble.unrest, seed),
            tremor: Tremor::new(rate, config.trouble.tremor, config.trouble.tapping, seed),
            cable_noise: CableNoise::new(rate, seed),
            phone: Phone::new(rate, seed),
            phone_v: 0.0,
            body: Body::new(subject, seed, rate),
            light: Flicker::new(config.power_line.hz, rate, seed),
            flicker: 0.0,
            sensor_section: Section::PASS, // set below, when all is there that loads the sensor
            sensor_memory: Memory::default(),
            noise: Stream::new(seed, "noise"),
            hum: Hum::default(),
            hum_open: Hum::default(),
            power_line: Oscillator::new(config.power_line.hz, rate, seed),
            power_line_open: Oscillator::new(config.power_line.hz, rate, seed),
            plug: Plug::new(rate, config.trouble.plug_loose, "plug", seed),
            cable_break: Plug::new(rate, 0.0, "lead-break", seed),
            gaps: Gaps::new(&config, seed),
            sighs: Stream::new(seed, "sighs"),
            sigh_left: u64::MAX,
            quiet: config.trouble.sighs == 0.0,
            talks: false,
            rested: false,
            press_left: 0.0,
            offset_v: OFFSET_V * config.trouble.offset,
            calibrator: Calibrator::default(),
            recorder,
            config,
        };
        chain.set_section(rate);
        chain.refresh();
        chain.contact.settle();
        chain.next_sigh();
        // A link that is complete at the start was found before the student sat down.
        chain.seen = chain.link_path();
        Ok(chain)
    }

    /// Takes over the bench as it now is.
    fn refresh(&mut self) {
        self.contact.set(&self.held(), &self.finger);
        self.hum = self.hum_on(&self.bench);
        self.fan_reach = if self.fan.size() > 0.0 && self.config.sensor.kind != Kind::Optical {
            fan::reach(&self.bench)
        } else {
            0.0
        };
        self.phone_v = self.config.trouble.phone * field::phone_spikes_v(&self.bench, &self.config.sensor);
        self.flicker = if self.config.sensor.kind == Kind::Optical && self.bench.strap.on {
            self.clear() * light::flicker(&self.bench)
        } else {
            0.0
        };
        self.hum_open = field::hum_at_open_input(&self.bench, &self.config.power_line);
        self.cable_noise.set_taut(self.bench.strap.on && self.bench.slack_cm() < TAUT_CM);
        // A wire broken inside opens where the cable is bent.
        let path = self.bench.cable_path();
        let bent = bend(path[1], path[2], path[3]).max(bend(path[0], path[1], path[2]));
        let looseness = self.config.trouble.cable_break * (0.3 + 0.7 * bent);
        if looseness != self.cable_break.looseness() {
            self.cable_break.set_looseness(looseness);
        }
        self.seen = self.link_path() && (self.seen || self.config.finds_recorder);
    }

    fn next_sigh(&mut self) {
        self.sigh_left = if self.quiet {
            u64::MAX
        } else {
            // Every 10 to 25 s at full severity.
            let seconds = self.sighs.range(10.0, 25.0) / self.config.trouble.sighs.max(0.05);
            (seconds * self.recorder.settings().analogue_rate_hz()) as u64
        };
    }

    /// Does something at the bench.
    pub fn change_bench(&mut self, change: &BenchChange) -> Result<(), Refusal> {
        self.bench.change(change)?;
        match change {
            BenchChange::Plug { end: End::Sensor, .. } => self.plug.push_home(),
            BenchChange::Move { part: Part::Cable1 | Part::Cable2 | Part::Hand | Part::Recorder, .. } => {
                self.cable_noise.rustle();
            }
            BenchChange::StrapOn {} | BenchChange::Strap { .. } => {
                self.contact.fasten();
                // Whoever fastens the strap needs nobody who holds the sensor.
                self.thumb.iter_mut().for_each(Thumb::let_go);
            }
            BenchChange::StrapOff {} => self.thumb.iter_mut().for_each(Thumb::let_go),
            _ => {}
        }
        self.refresh();
        Ok(())
    }

    /// Turns a setting of the recorder.
    pub fn change_recorder(&mut self, change: &RecorderChange) -> Result<(), BadValue> {
        let before = self.recorder.settings().analogue_rate_hz();
        self.recorder.change(change)?;
        let rate = self.recorder.settings().analogue_rate_hz();
        if rate != before {
            self.body.set_rate(rate);
            self.contact.set_rate(rate);
            self.motion.set_rate(rate);
            self.tremor.set_rate(rate);
            self.sleeve.set_rate(rate);
            self.thumb.iter_mut().for_each(|thumb| thumb.set_rate(rate));
            self.shaken.set_rate(rate);
            self.fan.set_rate(rate);
            self.damp.set_rate(rate);
            self.cable_noise.set_rate(rate);
            self.phone.set_rate(rate);
            self.light.set_rate(rate);
            self.power_line.set_rate(rate);
            self.power_line_open.set_rate(rate);
            self.plug.set_rate(rate);
            self.cable_break.set_rate(rate);
            self.next_sigh();
        }
        self.set_section(rate);
        self.hum = self.hum_on(&self.bench);
        Ok(())
    }

    /// The sensor's own high-pass as it now is.
    fn set_section(&mut self, rate_hz: f64) {
        self.sensor_section = Section::high_pass(1, self.corner_hz(), rate_hz);
    }

    /// Resistance of the input with what leaks beside it, ohm.
    fn input_ohm(&self) -> f64 {
        let own = self.recorder.settings().input_ohm();
        if self.leaks() { self.damp.beside(own) } else { own }
    }

    /// Corner of the high-pass that sensor and input make together, Hz.
    fn corner_hz(&self) -> f64 {
        self.config.sensor.corner_hz(self.input_ohm())
    }

    /// The strap that would press as what holds the sensor does.
    fn held(&self) -> Strap {
        self.thumb.as_ref().map_or_else(|| self.bench.strap.clone(), |thumb| thumb.held(&self.bench.strap))
    }

    /// Share of a light sensor's light that gets through what is on its sensing side.
    fn clear(&self) -> f64 {
        if self.smeared() { SMEAR.0 - SMEAR.1 * self.config.trouble.smear } else { 1.0 }
    }

    /// Hum at the sensor on a bench.
    fn hum_on(&self, bench: &Bench) -> Hum {
        let of = |bench: &Bench| {
            field::hum_at_sensor(bench, &self.config.sensor, self.input_ohm(), &self.config.power_line)
        };
        let all = of(bench);
        let lightly = LIGHT_TOUCH * self.config.trouble.light_touch;
        if lightly == 0.0 || bench.strap.other_hand != OtherHand::Laptop {
            return all;
        }
        let mut without = bench.clone();
        without.strap.other_hand = OtherHand::Lap;
        Hum { body_v: all.body_v - lightly * (all.body_v - of(&without).body_v), ..all }
    }

    /// Runs on for `samples` samples and appends their 16-bit codes, whether or not the computer sees the recorder.
    pub fn fill(&mut self, samples: usize, out: &mut Vec<i16>) {
        let mut left = samples * self.recorder.settings().steps_per_sample() as usize;
        let mut signal = [0.0; BLOCK];
        let mut other = [0.0; BLOCK];
        while left > 0 {
            // A block ends where the subject sighs, so that blocks of any size give the same.
            let n = left.min(BLOCK).min(usize::try_from(self.sigh_left).unwrap_or(usize::MAX).max(1));
            self.analogue(&mut signal[..n], &mut other[..n]);
            self.recorder.run(&mut signal[..n], out);
            left -= n;
            if self.sigh_left != u64::MAX {
                self.sigh_left -= n as u64;
                if self.sigh_left == 0 {
                    self.body.start(Manoeuvre::DeepBreath);
                    self.next_sigh();
                }
            }
        }
        self.samples += samples as u64;
        self.gaps.pass(samples as u64, self.recorder.settings().rate_hz);
    }

    /// Samples for which the link stays as it is by itself. Whoever must know which samples reached the computer
    /// asks for no more than these at a time.
    pub fn steady_samples(&self) -> u64 {
        self.gaps.samples_left(self.recorder.settings().rate_hz)
    }

    /// A light press on the strapped finger: the contact is better for as long as a loose sensor is held down.
    fn press(&mut self, signal: &mut [f64]) {
        let strap = &self.held();
        let dt = 1.0 / self.recorder.settings().analogue_rate_hz();
        let held = Strap { tightness: strap.tightness.max(0.6), ..strap.clone() };
        // What has slipped is held in its place too.
        let now = (self.contact.grip() * contact::gain(strap, &self.finger)).max(1e-3);
        let factor = (contact::gain(&held, &self.finger) / now).clamp(0.2, 20.0);
        for x in signal {
            if self.press_left > 0.0 {
                self.press_left -= dt;
                // In and out over a fifth of a second, with the push itself on top.
                let ramp = (self.press_left.min(PRESS_S - self.press_left) / 0.2).clamp(0.0, 1.0);
                *x = *x * (1.0 + (factor - 1.0) * ramp) + 0.8 * ramp * (1.0 - ramp);
            }
        }
    }

    /// The voltage at the chosen input; `other` is work space of the same length.
    fn analogue(&mut self, signal: &mut [f64], other: &mut [f64]) {
        self.body.fill(signal, other);
        self.sleeve.apply(signal);
        for (x, breath) in signal.iter_mut().zip(other.iter()) {
            *x += breath;
        }
        self.contact.apply(signal);
        let clear = self.clear();
        if clear < 1.0 {
            signal.iter_mut().for_each(|x| *x *= clear);
        }
        if let (Some(thumb), true) = (&mut self.thumb, self.config.sensor.kind != Kind::Optical) {
            thumb.add(signal);
        }
        if self.press_left > 0.0 {
            self.press(signal);
        }
        let strap = &self.bench.strap;
        self.motion.apply(signal, contact::motion_gain(strap.pressure_mmhg()), strap.on);
        self.tremor.apply(signal, strap.on);
        self.shaken.apply(signal, strap.on);
        self.fan.add(signal, self.fan_reach);
        self.cable_noise.apply(signal);
        if self.flicker > 0.0 {
            self.light.add(signal, self.flicker);
        }
        let mut noise = [0.0; BLOCK];
        self.pick_up(signal, &mut noise[..signal.len()]);
        if self.config.trouble.phone > 0.0 {
            self.phone.add(signal, self.phone_v);
        }

        if self.leaks() {
            self.damp.add(signal);
        }

        if self.recorder.settings().calibrator {
            let rate_hz = self.recorder.settings().analogue_rate_hz();
            self.calibrator.fill(signal, rate_hz);
        } else if !self.routed() {
            signal.fill(0.0);
            self.power_line_open.add(signal, &self.hum_open, 0.0);
        } else if self.plug.is_at_work() || self.cable_break.is_at_work() {
            let corner_hz = self.corner_hz();
            // Plug and wire lie in series: where either is open, the input is. Both run on, each by its own draws.
            other.fill(0.0);
            self.power_line_open.add(other, &self.hum_open, 0.0);
            for (x, open) in signal.iter_mut().zip(other.iter()) {
                let (plug, wire) = (self.plug.next_open(), self.cable_break.next_open());
                let charge = self.plug.next_charge(corner_hz) + self.cable_break.next_charge(corner_hz);
                *x = if plug || wire { *open } else { *x + self.pulse_v * charge };
            }
        }
        for (x, noise) in signal.iter_mut().zip(noise) {
            *x += self.offset_v + NOISE_V * noise;
        }
    }

    /// The sensor's high-pass and the hum about it; `noise` gets what amplifier and sensor will add. In one loop, because each of
    /// the three waits for its own last sample, and while one waits the others go on.
    fn pick_up(&mut self, signal: &mut [f64], noise: &mut [f64]) {
        let mix = Mix::new(&self.hum, self.motion.unrest());
        let Self { power_line, sensor_memory, sensor_section, noise: stream, pulse_v, .. } = self;
        let mut at = 0;
        while at < signal.len() {
            let run = at..at + power_line.run(signal.len() - at);
            for (x, noise) in signal[run.clone()].iter_mut().zip(&mut noise[run.clone()]) {
                *x = *pulse_v * sensor_memory.step(sensor_section, *x) + power_line.next(&mix);
                *noise = stream.noise();
            }
            power_line.passed(run.len());
            at = run.end;
        }
    }
}
