//! The recorder's stages in their order: polarity and zero, the amplifier's high-pass and low-pass, the low-pass before
//! the converter, clip, sample, quantise, then notch and moving average on the numbers. What has been clipped or
//! folded stays so, whatever is filtered afterwards.

use super::converter;
use super::filters::{Average, Memory, Section, average_length};
use super::settings::{BadValue, Change, NOTCH_Q, Settings};
use serde::{Deserialize, Serialize};

/// Time over which [`Change::Zero`] takes the signal's level, s.
const LEVEL_S: f64 = 1.0;

/// The designs that belong to a set of settings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Designs {
    high_pass: Section,
    low_pass: Section,
    anti_alias: Section,
    notch: Section,
}

impl Designs {
    fn of(settings: &Settings) -> Self {
        let analogue = settings.analogue_rate_hz();
        let rate = f64::from(settings.rate_hz);
        let or_pass = |design: Option<Section>| design.unwrap_or(Section::PASS);
        // The filter before the converter acts only where the simulated analogue signal goes beyond the sampling rate.
        let needed = settings.anti_alias && settings.steps_per_sample() > 1;
        Self {
            high_pass: or_pass(
                settings.high_pass_hz.map(|hz| Section::high_pass(settings.high_pass_order, hz, analogue)),
            ),
            low_pass: or_pass(
                settings.low_pass_hz.map(|hz| Section::low_pass(settings.low_pass_order, hz, analogue)),
            ),
            anti_alias: or_pass(needed.then(|| Section::low_pass(2, 0.4 * rate, analogue))),
            notch: or_pass(settings.notch_hz.map(|hz| Section::notch(hz, NOTCH_Q, rate))),
        }
    }

    fn pass_all(&self) -> bool {
        [&self.high_pass, &self.low_pass, &self.anti_alias, &self.notch]
            .iter()
            .all(|design| design.passes_all())
    }
}

/// The recorder.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Recorder {
    settings: Settings,
    designs: Designs,
    high_pass: Memory,
    low_pass: Memory,
    anti_alias: [Memory; 2],
    notch: Memory,
    average: Average,
    /// Analogue steps still to go until the next sample.
    countdown: u32,
    /// Running level of the input, V.
    level_v: f64,
}

impl Recorder {
    /// A recorder with these settings.
    pub fn new(settings: Settings) -> Result<Self, BadValue> {
        settings.check()?;
        let designs = Designs::of(&settings);
        let length = settings.average_ms.map_or(1, |ms| average_length(ms, f64::from(settings.rate_hz)));
        Ok(Self {
            designs,
            high_pass: Memory::default(),
            low_pass: Memory::default(),
            anti_alias: [Memory::default(); 2],
            notch: Memory::default(),
            average: Average::new(length, 0),
            countdown: settings.steps_per_sample(),
            level_v: 0.0,
            settings,
        })
    }

    /// The settings.
    pub fn settings(&self) -> &Settings {
        &self.settings
    }

    /// Turns one setting, or says why it does not go.
    pub fn change(&mut self, change: &Change) -> Result<(), BadValue> {
        let mut next = self.settings.with(change)?;
        if *change == (Change::Zero {}) {
            let sign = if next.inverted { -1.0 } else { 1.0 };
            next.zero_v = (-sign * self.level_v).clamp(-10.0, 10.0);
        }
        if next.steps_per_sample() != self.settings.steps_per_sample() {
            self.countdown = next.steps_per_sample();
        }
        let length = next.average_ms.map_or(1, |ms| average_length(ms, f64::from(next.rate_hz)));
        if length != self.average.length() {
            self.average = Average::new(length, 0);
        }
        let designs = Designs::of(&next);
        // A filter that has just been put in starts at the signal's level and so makes no jump of its own.
        let sign = if next.inverted { -1.0 } else { 1.0 };
        let level = sign * self.level_v + next.zero_v;
        if designs.high_pass != self.designs.high_pass {
            self.high_pass = Memory::settled(&designs.high_pass, level);
        }
        if designs.low_pass != self.designs.low_pass {
            self.low_pass = Memory::settled(&designs.low_pass, level);
        }
        self.designs = designs;
        self.settings = next;
        Ok(())
    }

    /// Takes the analogue input, V, at [`Settings::analogue_rate_hz`], and appends the samples that fall due. The
    /// block is used as work space.
    pub fn run(&mut self, block: &mut [f64], out: &mut Vec<i16>) {
        let s = &self.settings;
        let sign = if s.inverted { -1.0 } else { 1.0 };
        let pull = 1.0 / (LEVEL_S * s.analogue_rate_hz());
        let steps = s.steps_per_sample();
        if steps == 1 && self.designs.pass_all() && self.average.length() == 1 {
            // The usual case in one loop: while the level waits for its last value the converter goes on.
            let (zero_v, range_v, bits) = (s.zero_v, s.range_v, s.bits);
            let mut level_v = self.level_v;
            out.extend(block.iter().map(|x| {
                level_v += (*x - level_v) * pull;
                converter::quantise(sign * *x + zero_v, range_v, bits)
            }));
            self.level_v = level_v;
            self.countdown = 1;
            return;
        }
        for x in block.iter_mut() {
            self.level_v += (*x - self.level_v) * pull;
            *x = sign * *x + s.zero_v;
        }
        self.high_pass.run(&self.designs.high_pass, block);
        self.low_pass.run(&self.designs.low_pass, block);
        for memory in &mut self.anti_alias {
            memory.run(&self.designs.anti_alias, block);
        }
        let (range_v, bits) = (s.range_v, s.bits);
        let plain = self.designs.notch.passes_all() && self.average.length() == 1;
        for x in block.iter() {
            self.countdown -= 1;
            if self.countdown > 0 {
                continue;
            }
            self.countdown = steps;
            let code = converter::quantise(*x, range_v, bits);
            out.push(if plain { code } else { self.after(code) });
        }
    }

    /// The filters behind the converter: they see only its numbers.
    fn after(&mut self, code: i16) -> i16 {
        let notched = self.notch.step(&self.designs.notch, f64::from(code));
        // The average keeps eight more bits, so that it does not round twice.
        let fine = (notched * 256.0).round().clamp(-8_388_608.0, 8_388_607.0) as i32;
        (self.average.step(fine) / 256.0).round().clamp(-32768.0, 32767.0) as i16
    }

    /// How late the recorder's filters show a wave of `hz`, s: phase delay of all stages together.
    pub fn delay_s(&self, hz: f64) -> f64 {
        delay_s(&self.settings, hz)
    }
}

/// How late the filters of these settings show a wave of `hz`, s: the phase delay of all stages together. Negative
/// where a high-pass shows it early.
pub fn delay_s(settings: &Settings, hz: f64) -> f64 {
    use crate::math;
    let d = Designs::of(settings);
    let analogue = settings.analogue_rate_hz();
    let rate = f64::from(settings.rate_hz);
    let phase = |section: &Section, fs: f64| {
        let (re, im) = section.response(hz, fs);
        math::atan2(im, re)
    };
    let sum = phase(&d.high_pass, analogue)
        + phase(&d.low_pass, analogue)
        + 2.0 * phase(&d.anti_alias, analogue)
        + phase(&d.notch, rate);
    let average = settings.average_ms.map_or(0.0, |ms| (average_length(ms, rate) as f64 - 1.0) / 2.0 / rate);
    -sum / (math::TAU * hz) + average
}
