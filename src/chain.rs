//! The whole signal chain, stage after stage: heart and pulse wave, contact, movement, the pad's high-pass, hum and
//! noise, the plug, the recorder unit.
//!
//! [`Config`] is the immutable description, [`Chain`] the running state. What comes out depends on the description,
//! the seed and the changes with the sample at which each was made, and on nothing else: not on the size of the
//! blocks in which it is asked for, nor on the machine. A chain can be saved between any two samples and goes on
//! with the same numbers.

use crate::bench::{Bench, Change as BenchChange, Refusal, table::Part, wiring::End};
use crate::physiology::{Beat, Body, Manoeuvre, Subject, SubjectSpec};
use crate::pickup::contact::{self, Contact, Finger};
use crate::pickup::field::{self, Hum, Mains};
use crate::pickup::lead_noise::LeadNoise;
use crate::pickup::light::{self, Flicker};
use crate::pickup::mains::Oscillator;
use crate::pickup::motion::Motion;
use crate::pickup::pad::{Kind, Pad};
use crate::pickup::phone::Phone;
use crate::pickup::plug::Plug;
use crate::pickup::tremor::Tremor;
use crate::recorder::filters::{Memory, Section};
use crate::recorder::settings::{BadValue, Change as RecorderChange};
use crate::recorder::{Settings, Unit};
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Analogue steps worked at a time.
const BLOCK: usize = 256;
/// Noise of pad and amplifier at the input, V rms over the simulated band (design default).
const NOISE_V: f64 = 15e-6;
/// What is left of a restless hand after it was asked to keep still.
const STILL_SHARE: f64 = 0.02;
/// Slack below which the lead is taut, cm.
const TAUT_CM: f64 = 8.0;

/// Everything that a run starts from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Config {
    /// The subject, as far as it is laid down; the rest is drawn from the seed.
    pub subject: SubjectSpec,
    /// The mains of the region.
    pub mains: Mains,
    /// The pad.
    pub pad: Pad,
    /// What the subject and the things about do by themselves.
    pub trouble: Trouble,
    /// The computer looks for the unit by itself. Otherwise it must be told to look after each break of the link.
    pub finds_unit: bool,
    /// The bench at the start.
    pub bench: Bench,
    /// The recorder's settings at the start.
    pub recorder: Settings,
}

/// Troubles that no part of the bench holds, each with its severity from 0 (none) to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Trouble {
    /// How restless the hand is, until the subject is asked to keep still.
    pub unrest: f64,
    /// How strongly the hand trembles.
    pub tremor: f64,
    /// How strongly a foot or a finger taps, until the subject is asked to keep still.
    pub tapping: f64,
    /// How fast the strap slips, until it is strapped on anew: at 1 within some ten seconds.
    pub slip: f64,
    /// How badly the pad's plug sits, until it is pushed home.
    pub plug_loose: f64,
    /// How busy the telephone is.
    pub phone: f64,
}

impl Trouble {
    /// Names the first severity that is not from 0 to 1.
    pub fn check(&self) -> Result<(), (&'static str, f64)> {
        let all = [
            ("unrest", self.unrest),
            ("tremor", self.tremor),
            ("tapping", self.tapping),
            ("slip", self.slip),
            ("plug_loose", self.plug_loose),
            ("phone", self.phone),
        ];
        match all.into_iter().find(|(_, v)| !(v.is_finite() && (0.0..=1.0).contains(v))) {
            Some(bad) => Err(bad),
            None => Ok(()),
        }
    }
}

/// Something done to the subject, the pad or a plug, without changing the bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Poke {
    /// Tap the pad.
    TapPad {},
    /// Ask the subject to keep the hand still.
    AskStill {},
    /// Wiggle a plug.
    Wiggle {
        /// The plug.
        end: End,
    },
    /// Let the computer look for the unit.
    Rescan {},
}

/// How the subject answers a request.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// "All right, I'll keep still."
    WillKeepStill,
    /// "I am keeping still."
    AmStill,
}

/// How the hand looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Looks {
    /// At rest.
    Calm,
    /// It moves.
    Moving,
    /// The fingertip is dusky.
    Dusky,
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
    lead_noise: LeadNoise,
    phone: Phone,
    phone_v: f64,
    light: Flicker,
    flicker: f64,
    twitches: u32,
    pad_section: Section,
    pad_memory: Memory,
    noise: Stream,
    hum: Hum,
    hum_open: Hum,
    mains: Oscillator,
    mains_open: Oscillator,
    plug: Plug,
    unit: Unit,
}

impl Chain {
    /// A chain at the start of a run.
    pub fn new(config: Config, seed: u64) -> Result<Self, BadValue> {
        let unit = Unit::new(config.recorder.clone())?;
        let rate = unit.settings().analogue_rate_hz();
        let subject = Subject::draw(&config.subject, seed);
        let finger = Finger { systolic_mmhg: subject.systolic_mmhg, diastolic_mmhg: subject.diastolic_mmhg };
        let mut chain = Self {
            bench: config.bench.clone(),
            seen: false,
            samples: 0,
            finger,
            pulse_v: subject.pulse_mv * 1e-3 * config.pad.sensitivity(),
            body: Body::new(subject, seed, rate),
            contact: Contact::new(rate, config.trouble.slip, seed),
            motion: Motion::new(rate, config.trouble.unrest, seed),
            tremor: Tremor::new(rate, config.trouble.tremor, config.trouble.tapping, seed),
            lead_noise: LeadNoise::new(rate, seed),
            phone: Phone::new(rate, seed),
            phone_v: 0.0,
            light: Flicker::new(config.mains.hz, rate, seed),
            flicker: 0.0,
            twitches: 0,
            pad_section: Section::high_pass(1, config.pad.corner_hz(), rate),
            pad_memory: Memory::default(),
            noise: Stream::new(seed, "noise"),
            hum: Hum::default(),
            hum_open: Hum::default(),
            mains: Oscillator::new(config.mains.hz, rate, seed),
            mains_open: Oscillator::new(config.mains.hz, rate, seed),
            plug: Plug::new(rate, config.trouble.plug_loose, seed),
            unit,
            config,
        };
        chain.refresh();
        chain.contact.settle();
        // A link that is complete at the start was found before the student sat down.
        chain.seen = chain.link_path();
        Ok(chain)
    }

    /// Takes over the bench as it now is.
    fn refresh(&mut self) {
        self.contact.set(&self.bench.strap, &self.finger);
        self.hum = field::hum_at_pad(&self.bench, &self.config.pad, &self.config.mains);
        self.phone_v = self.config.trouble.phone * field::phone_spikes_v(&self.bench, &self.config.pad);
        self.flicker = if self.config.pad.kind == Kind::Optical && self.bench.strap.on {
            light::flicker(&self.bench)
        } else {
            0.0
        };
        self.hum_open = field::hum_at_open_input(&self.bench, &self.config.mains);
        self.seen = self.link_path() && (self.seen || self.config.finds_unit);
    }

    fn link_path(&self) -> bool {
        self.bench.wiring.unit_powered() && self.bench.wiring.data_path()
    }

    /// Does something at the bench.
    pub fn change_bench(&mut self, change: &BenchChange) -> Result<(), Refusal> {
        self.bench.change(change)?;
        match change {
            BenchChange::Plug { end: End::Pad, .. } => self.plug.set_looseness(0.0),
            BenchChange::Move { part: Part::Lead1 | Part::Lead2 | Part::Hand | Part::Unit, .. } => {
                self.lead_noise.rustle();
            }
            BenchChange::StrapOn {} | BenchChange::Strap { .. } => self.contact.fasten(),
            _ => {}
        }
        self.refresh();
        Ok(())
    }

    /// Turns a setting of the recorder.
    pub fn change_recorder(&mut self, change: &RecorderChange) -> Result<(), BadValue> {
        let before = self.unit.settings().analogue_rate_hz();
        self.unit.change(change)?;
        let rate = self.unit.settings().analogue_rate_hz();
        if rate != before {
            self.body.set_rate(rate);
            self.contact.set_rate(rate);
            self.motion.set_rate(rate);
            self.tremor.set_rate(rate);
            self.lead_noise.set_rate(rate);
            self.phone.set_rate(rate);
            self.light.set_rate(rate);
            self.mains.set_rate(rate);
            self.mains_open.set_rate(rate);
            self.plug.set_rate(rate);
            self.pad_section = Section::high_pass(1, self.config.pad.corner_hz(), rate);
        }
        Ok(())
    }

    /// Does something to the subject, the pad or a plug.
    pub fn poke(&mut self, poke: &Poke) -> Option<Answer> {
        match poke {
            Poke::TapPad {} => self.motion.tap(),
            Poke::AskStill {} => {
                let restless = self.motion.unrest() > STILL_SHARE || self.tremor.taps();
                self.motion.set_unrest(self.config.trouble.unrest * STILL_SHARE);
                self.tremor.set(self.config.trouble.tremor, 0.0);
                return Some(if restless { Answer::WillKeepStill } else { Answer::AmStill });
            }
            Poke::Wiggle { end } => {
                if *end == End::Pad {
                    self.plug.wiggle();
                }
            }
            Poke::Rescan {} => self.seen = self.link_path(),
        }
        None
    }

    /// Lets the subject begin a manoeuvre.
    pub fn start(&mut self, manoeuvre: Manoeuvre) {
        self.body.start(manoeuvre);
    }

    /// Runs on for `samples` samples and appends their 16-bit codes, whether or not the computer sees the unit.
    pub fn fill(&mut self, samples: usize, out: &mut Vec<i16>) {
        let mut left = samples * self.unit.settings().steps_per_sample() as usize;
        let mut signal = [0.0; BLOCK];
        let mut other = [0.0; BLOCK];
        while left > 0 {
            let n = left.min(BLOCK);
            self.analogue(&mut signal[..n], &mut other[..n]);
            self.unit.run(&mut signal[..n], out);
            left -= n;
        }
        self.samples += samples as u64;
    }

    /// The voltage at the chosen input; `other` is work space of the same length.
    fn analogue(&mut self, signal: &mut [f64], other: &mut [f64]) {
        self.body.fill(signal, other);
        for (x, breath) in signal.iter_mut().zip(other.iter()) {
            *x += breath;
        }
        self.contact.apply(signal);
        let strap = &self.bench.strap;
        self.motion.apply(signal, contact::motion_gain(strap.pressure_mmhg()), strap.on);
        self.tremor.apply(signal, strap.on);
        // A lead without slack passes each twitch of the hand on to the pad.
        if self.motion.twitches() != self.twitches {
            self.twitches = self.motion.twitches();
            if self.bench.slack_cm() < TAUT_CM {
                self.lead_noise.tug();
            }
        }
        self.lead_noise.apply(signal);
        if self.flicker > 0.0 {
            self.light.add(signal, self.flicker);
        }
        for x in signal.iter_mut() {
            *x = self.pulse_v * self.pad_memory.step(&self.pad_section, *x);
        }
        self.mains.add(signal, &self.hum, self.motion.unrest());
        if self.config.trouble.phone > 0.0 {
            self.phone.add(signal, self.phone_v);
        }

        let routed = self.bench.wiring.pad_input() == Some(self.unit.settings().input);
        if !routed {
            signal.fill(0.0);
            self.mains_open.add(signal, &self.hum_open, 0.0);
        } else if self.plug.looseness() > 0.0 {
            other.fill(0.0);
            self.mains_open.add(other, &self.hum_open, 0.0);
            for (x, open) in signal.iter_mut().zip(other.iter()) {
                if self.plug.next_open() {
                    *x = *open;
                }
            }
        }
        for x in signal.iter_mut() {
            *x += NOISE_V * self.noise.noise();
        }
    }

    /// The bench as it now is.
    pub fn bench(&self) -> &Bench {
        &self.bench
    }

    /// The recorder's settings as they now are.
    pub fn settings(&self) -> &Settings {
        self.unit.settings()
    }

    /// What the run started from.
    pub fn config(&self) -> &Config {
        &self.config
    }

    /// Whether the computer sees the unit.
    pub fn seen(&self) -> bool {
        self.seen
    }

    /// Whether the pad's plug is in the input that is shown.
    pub fn routed(&self) -> bool {
        self.bench.wiring.pad_input() == Some(self.unit.settings().input)
    }

    /// How the hand looks to somebody who looks at it.
    pub fn looks(&self) -> Looks {
        if self.motion.unrest() > 0.1 || self.tremor.taps() {
            Looks::Moving
        } else if self.contact.dusky() {
            Looks::Dusky
        } else {
            Looks::Calm
        }
    }

    /// Samples made since the start.
    pub fn samples(&self) -> u64 {
        self.samples
    }

    /// Time since the start, s.
    pub fn time_s(&self) -> f64 {
        self.body.time_s()
    }

    /// The true beats so far. For the assessment alone.
    pub fn truth(&self) -> &[Beat] {
        self.body.beats()
    }

    /// How late the recorder's filters show a wave of `hz`, s.
    pub fn delay_s(&self, hz: f64) -> f64 {
        self.unit.delay_s(hz)
    }
}

/// SHA-256 of the first `samples` codes of a scenario under a seed, as hexadecimal digits: the check that two
/// machines make the same signal. Codes are hashed as little-endian 16-bit numbers.
pub fn fingerprint(config: Config, seed: u64, samples: u64) -> Result<String, BadValue> {
    use sha2::{Digest, Sha256};
    let mut chain = Chain::new(config, seed)?;
    let mut hash = Sha256::new();
    let mut codes = Vec::new();
    let mut left = samples;
    while left > 0 {
        let piece = left.min(4096);
        codes.clear();
        chain.fill(piece as usize, &mut codes);
        for code in &codes {
            hash.update(code.to_le_bytes());
        }
        left -= piece;
    }
    Ok(hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect())
}
