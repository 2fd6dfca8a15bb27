//! The recorder's stages in their order: polarity and zero, the amplifier's high-pass and low-pass, the low-pass before
//! the converter, clip, sample, quantise, then notch, moving average and integral on the numbers. What has been clipped or
//! folded stays so, whatever is filtered afterwards.

use super::converter;
use super::filters::{Average, Memory, Section, average_length};
use super::settings::{BadValue, Change, INTEGRAL_LEAK_HZ, INTEGRAL_UNITY_HZ, NOTCH_Q, Settings};
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
    integral: Section,
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
            integral: or_pass(
                settings.integral.then(|| Section::integral(INTEGRAL_UNITY_HZ, INTEGRAL_LEAK_HZ, rate)),
            ),
        }
    }

    fn pass_all(&self) -> bool {
        [&self.high_pass, &self.low_pass, &self.anti_alias, &self.notch, &self.integral]
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
    integral: Memory,
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
            integral: Memory::default(),
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
        // What lies behind the converter remembers numbers: on another range the same voltage is another number.
        let finer = self.settings.range_v / next.range_v;
        if finer != 1.0 {
            self.notch = self.notch.scaled(finer);
            self.integral = self.integral.scaled(finer);
        }
        if designs.integral != self.designs.integral {
            let passed = if designs.high_pass.passes_all() { level } else { 0.0 };
            self.integral = Memory::settled(&designs.integral, passed / converter::code_v(next.range_v));
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
        let plain = self.designs.notch.passes_all()
            && self.average.length() == 1
            && self.designs.integral.passes_all();
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
        let averaged = self.average.step(fine) / 256.0;
        self.integral.step(&self.designs.integral, averaged).round().clamp(-32768.0, 32767.0) as i16
    }
}

/// Time that a filter is given to settle on a wave that repeats, s: six time constants of the slowest.
const SETTLED_S: f64 = 20.0;

/// What the filters of these settings make of a wave that repeats: one period in, at [`Settings::analogue_rate_hz`], and the
/// same period out. Polarity, clipping and the converter's steps are left out.
pub fn steady(settings: &Settings, period: &[f64]) -> Vec<f64> {
    let rate_hz = settings.analogue_rate_hz();
    // What works on the numbers is worked here at the finer rate: on a wave far below both rates it does the same.
    let fine = Settings { rate_hz: rate_hz as u32, ..settings.clone() };
    let designs = Designs { anti_alias: Designs::of(settings).anti_alias, ..Designs::of(&fine) };
    let length = settings.average_ms.map_or(1, |ms| average_length(ms, rate_hz));
    let sections = [
        designs.high_pass,
        designs.low_pass,
        designs.anti_alias,
        designs.anti_alias,
        designs.notch,
        designs.integral,
    ];
    let mut memories = [Memory::default(); 6];
    let mut average = Average::new(length, 0);
    let periods = (SETTLED_S * rate_hz / period.len() as f64).ceil() as usize + 1;
    let mean = period.iter().sum::<f64>() / period.len() as f64;
    let height = period.iter().fold(f64::MIN_POSITIVE, |top, x| top.max((x - mean).abs()));
    let mut out = vec![0.0; period.len()];
    for _ in 0..periods {
        for (x, y) in period.iter().zip(&mut out) {
            *y = memories.iter_mut().zip(&sections).fold(*x - mean, |y, (memory, s)| memory.step(s, y));
            if length > 1 {
                *y = average.step((*y / height * 1e6) as i32) * height / 1e6;
            }
        }
    }
    out
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
        + phase(&d.notch, rate)
        + phase(&d.integral, rate);
    let average = settings.average_ms.map_or(0.0, |ms| (average_length(ms, rate) as f64 - 1.0) / 2.0 / rate);
    -sum / (math::TAU * hz) + average
}
