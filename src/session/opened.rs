//! A recording that was opened from a file: its own samples, and how they are shown. Range, zero, polarity and filters are ways of
//! looking at it. The file's samples are kept; what is drawn, counted on, saved and judged comes from those that are shown.
//!
//! The stages stand in the order of the recorder's: zero and polarity, high-pass, low-pass, notch, integral, with its designs
//! ([`crate::recorder::filters`]). They are causal, as on the bench, so that a filter shows the pulse as late here as there; cursors
//! and marks go with it.

use super::action::Refusal;
use super::attempt::Session;
use super::kept_recording::KeptRecording;
use super::run::World;
use super::trace::ROOM;
use crate::math;
use crate::measure::detect::detect;
use crate::recorder::filters::{Memory, Section};
use crate::recorder::settings::{
    Change, HIGH_PASS_HZ, INTEGRAL_LEAK_HZ, INTEGRAL_UNITY_HZ, LOW_PASS_HZ, NOTCH_HZ, NOTCH_Q, SCALES,
    Settings,
};
use crate::recording::{Extent, Recording};
use serde_json::{Map, Value};

/// The core of a first visit cannot open files, and carries none of this.
const HERE: bool = cfg!(any(feature = "desk", not(target_family = "wasm")));
/// Frequency for which the delay of the filters is taken, Hz: 72 beats a minute, as on the bench.
const PULSE_HZ: f64 = 1.2;
/// By what part the detector's count may change with a filter until it is taken for the detector's own error (design default).
const ALIKE: f64 = 0.1;
/// How far a filter may move a beat, s, to be looked for there.
const FARTHEST_S: f64 = 0.4;
/// How long a filter runs over the mirrored beginning before it starts, in time constants: what is left of a step then is under a
/// thousandth of it.
const WARM_UP: f64 = 8.0;
/// How long the notch runs over the beginning before it starts, s; a whole number of its periods, so that hum goes on without a break.
const NOTCH_WARM_UP_S: f64 = 2.0;
/// Smallest range that is offered, as a part of the recording's own height.
const FINEST: f64 = 0.01;
/// Most ranges that are offered.
const MOST_RANGES: usize = 24;

/// An opened recording.
#[derive(Clone, Debug)]
pub(super) struct Opened {
    /// Name of its file.
    pub(super) name: String,
    /// Unit of its values; empty where the file tells none.
    pub(super) unit: String,
    /// Beats that the detector finds in what is shown, s.
    pub(super) detected: Vec<f64>,
    /// The file's samples and the beats in them, while others are shown.
    file: Option<(Recording, Vec<f64>)>,
    /// Polarity, filters and scale; of the rest nothing is used.
    settings: Settings,
    /// Half of what the screen shows, before the scale, in the recording's unit; 0 is the whole height of what is shown.
    range: f64,
    /// What is added to the file's values, in their unit.
    zero: f64,
    /// How late the filters show the beats, s; below zero where a high-pass shows them early.
    late_s: f64,
    /// Counts up whenever other samples are shown.
    version: u32,
    /// Which window is read, from 1.
    pub(super) window: u32,
}

impl Opened {
    pub(super) fn new(name: &str, detected: Vec<f64>) -> Self {
        Self {
            name: name.to_string(),
            unit: String::new(),
            detected,
            file: None,
            settings: Settings::default(),
            range: 0.0,
            zero: 0.0,
            late_s: 0.0,
            version: 0,
            window: 1,
        }
    }

    /// Whether the file's own samples are shown.
    fn is_plain(&self) -> bool {
        self.zero == 0.0 && self.settings == Settings::default()
    }

    /// The filters that are on, in their order, each with its corner or centre, Hz.
    fn filters(&self, rate_hz: f64) -> impl Iterator<Item = (f64, Section, bool)> + use<> {
        let s = &self.settings;
        [
            s.high_pass_hz.map(|hz| (hz, Section::high_pass(s.high_pass_order, hz, rate_hz), false)),
            s.low_pass_hz.map(|hz| (hz, Section::low_pass(s.low_pass_order, hz, rate_hz), false)),
            s.notch_hz.map(|hz| (hz, Section::notch(hz, NOTCH_Q, rate_hz), true)),
            s.integral.then(|| {
                let section = Section::integral(INTEGRAL_UNITY_HZ, INTEGRAL_LEAK_HZ, rate_hz);
                (INTEGRAL_LEAK_HZ, section, false)
            }),
        ]
        .into_iter()
        .flatten()
    }

    /// Looks for the beats of what is shown, and for how late they are. A filter changes no heart: where the detector finds another
    /// number of beats behind it, those before it count, as late as the filters show a wave of the heart's frequency.
    fn find(&mut self, file: &Recording, found: &[f64], shown: &Recording) {
        let rate_hz = file.rate_hz();
        let upright = if self.settings.inverted {
            let turned = file.turned(-1.0, 0.0, 1.0);
            detect(&turned.values(0, turned.len()), rate_hz)
        } else {
            found.to_vec()
        };
        if self.filters(rate_hz).next().is_none() {
            (self.detected, self.late_s) = (upright, 0.0);
            return;
        }
        let seen = detect(&shown.values(0, shown.len()), rate_hz);
        let (before, behind) = (upright.len() as f64, seen.len() as f64);
        let late_s = moved(&upright, &seen).filter(|_| (behind - before).abs() <= ALIKE * before);
        self.detected = match late_s {
            Some(_) => seen,
            None => {
                let by_s = self.delay_s(rate_hz);
                let on = |t: &f64| (0.0..=file.duration_s()).contains(t);
                upright.iter().map(|t| t + by_s).filter(on).collect()
            }
        };
        self.late_s = late_s.unwrap_or_else(|| self.delay_s(rate_hz));
    }

    /// How late the filters show a wave of the heart's frequency, s; below zero where a high-pass shows it early.
    fn delay_s(&self, rate_hz: f64) -> f64 {
        let phase = |section: Section| {
            let (re, im) = section.response(PULSE_HZ, rate_hz);
            math::atan2(im, re)
        };
        let sum: f64 = self.filters(rate_hz).map(|(_, section, _)| phase(section)).sum();
        -sum / (math::TAU * PULSE_HZ)
    }

    /// What is shown of the file's samples.
    fn shown(&self, file: &Recording) -> Recording {
        let s = &self.settings;
        let sign = if s.inverted { -1.0 } else { 1.0 };
        let rate_hz = file.rate_hz();
        if self.filters(rate_hz).next().is_none() {
            return file.turned(sign, sign * self.zero, s.scale);
        }
        let mut values = file.values(0, file.len());
        values.iter_mut().for_each(|v| *v *= sign);
        for (hz, section, notch) in self.filters(rate_hz) {
            run(&section, hz, notch, rate_hz, &mut values);
        }
        // A constant passes a high-pass no more than it does on the bench.
        let zero = if s.high_pass_hz.is_some() || s.integral { 0.0 } else { sign * self.zero };
        Recording::of_values(rate_hz, &values).turned(1.0, zero, s.scale)
    }

    /// The ranges that are offered for what is shown, from the tallest: 0, the whole height, and steps of 1, 2 and 5 times a power of
    /// ten, as long as something of the recording is on the screen.
    fn ranges(&self, shown: &Recording) -> Vec<f64> {
        let Some(Extent { min, max }) = shown.extent(0, shown.len()) else { return vec![0.0] };
        let (low, high) = (f64::from(min) / self.settings.scale, f64::from(max) / self.settings.scale);
        let farthest = low.abs().max(high.abs());
        let nearest = if low <= 0.0 && high >= 0.0 { 0.0 } else { low.abs().min(high.abs()) };
        let least = nearest.max(FINEST * (high - low));
        let mut found = Vec::new();
        // The last step of a power of ten that is no smaller than the farthest value.
        let mut power = -30;
        while power < 40 && decimal(5, power) < farthest {
            power += 1;
        }
        'powers: while power > -30 && found.len() < MOST_RANGES {
            for digit in [5, 2, 1] {
                let step = decimal(digit, power);
                let next = if digit == 1 {
                    decimal(5, power - 1)
                } else {
                    decimal(if digit == 5 { 2 } else { 1 }, power)
                };
                if next >= farthest {
                    continue;
                }
                if step <= least {
                    break 'powers;
                }
                found.push(step);
            }
            power -= 1;
        }
        // By what they show, the tallest first, so that the next one is always the smaller one: of a recording far from zero the whole
        // height is less than any range about zero.
        let whole = found.iter().take_while(|v| 2.0 * **v >= (1.0 + 2.0 * ROOM) * (high - low)).count();
        found.insert(whole, 0.0);
        found
    }

    /// What is otherwise than in the file, as a note in a saved file tells it; `None` where nothing is.
    pub(super) fn note(&self) -> Option<Map<String, Value>> {
        if !HERE {
            return None;
        }
        let s = &self.settings;
        let mut told = Map::new();
        let mut put = |name: &str, value: Value, is: bool| {
            if is {
                told.insert(name.to_string(), value);
            }
        };
        put("inverted", s.inverted.into(), s.inverted);
        put("zero", self.zero.into(), self.zero != 0.0);
        put("high_pass_hz", s.high_pass_hz.into(), s.high_pass_hz.is_some());
        put("high_pass_order", s.high_pass_order.into(), s.high_pass_hz.is_some());
        put("low_pass_hz", s.low_pass_hz.into(), s.low_pass_hz.is_some());
        put("low_pass_order", s.low_pass_order.into(), s.low_pass_hz.is_some());
        put("notch_hz", s.notch_hz.into(), s.notch_hz.is_some());
        put("integral", true.into(), s.integral);
        put("scale", s.scale.into(), s.scale != 1.0);
        (!told.is_empty()).then_some(told)
    }
}

/// `digit` times ten to the power, as it is written.
fn decimal(digit: u32, power: i32) -> f64 {
    format!("{digit}e{power}").parse().unwrap_or(f64::INFINITY)
}

/// Runs a filter over all values. It starts as if the signal had gone on before the beginning, so that no step of its own shows: a
/// high-pass or low-pass over the mirrored beginning, from its mean; the notch over the beginning's own first periods.
fn run(section: &Section, hz: f64, notch: bool, rate_hz: f64, values: &mut [f64]) {
    let warm = if notch {
        let periods = (NOTCH_WARM_UP_S * hz).round();
        (periods / hz * rate_hz).round() as usize
    } else {
        (WARM_UP / (math::TAU * hz) * rate_hz).ceil() as usize
    };
    let warm = warm.min(values.len());
    let mean = values[..warm].iter().sum::<f64>() / warm.max(1) as f64;
    let mut memory = Memory::settled(section, if mean.is_finite() { mean } else { 0.0 });
    for k in 0..warm {
        memory.step(section, values[if notch { k } else { warm - 1 - k }]);
    }
    memory.run(section, values);
}

impl Session {
    /// The opened recording, if this is none of a bench.
    pub(super) fn opened(&self) -> Option<&Opened> {
        match &self.run.world {
            World::File(opened) => Some(opened),
            World::Bench { .. } => None,
        }
    }

    /// Tells the unit of an opened recording's values, as its file has it.
    pub fn with_unit(mut self, unit: &str) -> Self {
        if let World::File(opened) = &mut self.run.world {
            opened.unit = unit.to_string();
        }
        self
    }

    /// Unit of an opened recording's values; empty where it is not known, and on the bench.
    pub fn unit(&self) -> &str {
        self.opened().map_or("", |opened| &opened.unit)
    }

    /// Counts up whenever other samples of an opened recording are shown.
    pub fn shown_version(&self) -> u32 {
        self.opened().map_or(0, |opened| opened.version)
    }

    /// Half of what the screen shows of an opened recording; `None` for its whole height, and on the bench.
    pub(super) fn opened_range(&self) -> Option<f64> {
        self.opened().filter(|opened| opened.range > 0.0).map(|opened| opened.range * opened.settings.scale)
    }

    /// Changes how an opened recording is shown, or says why not.
    pub(super) fn look_otherwise(&mut self, change: &Change) -> Result<(), Refusal> {
        if !HERE {
            return Err(Refusal::NoBench {});
        }
        let (start_s, time_base_s) = (self.trace.start_s, self.trace.time_base_s);
        let World::File(opened) = &mut self.run.world else { return Err(Refusal::NoBench {}) };
        let Some(kept) = self.trace.recordings.first_mut() else { return Err(Refusal::NoRecording {}) };
        let rate_hz = kept.recording.rate_hz();
        match *change {
            Change::Range { v } => {
                let offered = opened.ranges(&kept.recording);
                if !offered.contains(&v) {
                    let expected = offered.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
                    return Err(Refusal::BadValue { field: "range_v", expected });
                }
                opened.range = v;
                return Ok(());
            }
            Change::HighPass { hz: Some(hz), .. }
            | Change::LowPass { hz: Some(hz), .. }
            | Change::Notch { hz: Some(hz) }
                if 2.0 * hz >= rate_hz =>
            {
                return Err(Refusal::AboveHalfRate { hz, half_hz: rate_hz / 2.0 });
            }
            Change::Zero {}
            | Change::ZeroClear {}
            | Change::Invert { .. }
            | Change::HighPass { .. }
            | Change::LowPass { .. }
            | Change::Notch { .. }
            | Change::Integral { .. }
            | Change::Scale { .. } => {}
            _ => return Err(Refusal::NoBench {}),
        }
        let settings = opened.settings.with(change)?;
        let filters = |s: &Settings| {
            let passes = (s.high_pass_hz, s.high_pass_order, s.low_pass_hz, s.low_pass_order);
            (s.inverted, passes, s.notch_hz, s.integral)
        };
        let same_form = filters(&settings) == filters(&opened.settings);
        let late_s = opened.late_s;
        opened.settings = settings;
        // Which order a filter that is off would have is no way of looking.
        let s = &mut opened.settings;
        let plain = Settings::default();
        s.high_pass_order = if s.high_pass_hz.is_some() { s.high_pass_order } else { plain.high_pass_order };
        s.low_pass_order = if s.low_pass_hz.is_some() { s.low_pass_order } else { plain.low_pass_order };

        let (file, found) = match opened.file.take() {
            Some(file) => file,
            None => (kept.recording.clone(), opened.detected.clone()),
        };
        match change {
            Change::Zero {} => {
                let (from, to) = (file.sample_at(start_s), file.sample_at(start_s + time_base_s));
                let seen = file.values(from, to);
                opened.zero = -(seen.iter().sum::<f64>() / seen.len().max(1) as f64);
            }
            Change::ZeroClear {} => opened.zero = 0.0,
            _ => {}
        }
        if opened.is_plain() {
            (kept.recording, opened.detected, opened.late_s) = (file, found, 0.0);
        } else {
            kept.recording = opened.shown(&file);
            if !same_form {
                opened.find(&file, &found, &kept.recording);
            }
            opened.file = Some((file, found));
        }
        opened.version += 1;
        // What stood on a beat goes with it.
        go_with(kept, opened.late_s - late_s);
        self.trace.found = None;
        Ok(())
    }

    /// Goes on to another window of an opened recording: blanks and marks are emptied, cursors stay.
    pub(super) fn another_window(&mut self) -> Result<(), Refusal> {
        let World::File(opened) = &mut self.run.world else { return Err(Refusal::NotAsked {}) };
        if !HERE {
            return Err(Refusal::NotAsked {});
        }
        if self.sheet.check.is_none() {
            return Err(Refusal::NotChecked {});
        }
        opened.window += 1;
        let task = self.sheet.task;
        self.sheet = super::sheet::Sheet { task, ..Default::default() };
        self.help = super::help::Help { aid: self.help.aid, agreed: self.help.agreed, ..Default::default() };
        self.measured()?.marks.clear();
        Ok(())
    }

    /// How an opened recording is shown, and what can be chosen.
    pub(super) fn display(&self) -> Option<Value> {
        use crate::plain::json;
        let opened = self.opened().filter(|_| HERE)?;
        let kept = self.recording()?;
        let s = &opened.settings;
        let fits = |list: &[f64]| -> Vec<f64> {
            list.iter().copied().filter(|hz| 2.0 * hz < kept.recording.rate_hz()).collect()
        };
        Some(json!({
            "unit": opened.unit, "range_v": opened.range, "zero_v": opened.zero, "inverted": s.inverted,
            "high_pass_hz": s.high_pass_hz, "high_pass_order": s.high_pass_order, "low_pass_hz": s.low_pass_hz,
            "low_pass_order": s.low_pass_order, "notch_hz": s.notch_hz, "integral": s.integral, "scale": s.scale,
            "as_in_file": opened.is_plain(),
            "choices": {
                "range_v": opened.ranges(&kept.recording), "high_pass_hz": fits(&HIGH_PASS_HZ),
                "low_pass_hz": fits(&LOW_PASS_HZ), "notch_hz": fits(&NOTCH_HZ), "scale": SCALES,
            },
        }))
    }
}

/// By how much beats have moved: the middle one of the ways from each to the nearest one behind the filters; `None` where most have none.
fn moved(before: &[f64], behind: &[f64]) -> Option<f64> {
    let way = |t: &f64| {
        let at = behind.partition_point(|b| b < t);
        let near = &behind[at.saturating_sub(1)..(at + 1).min(behind.len())];
        near.iter()
            .map(|b| b - t)
            .min_by(|x, y| x.abs().total_cmp(&y.abs()))
            .filter(|d| d.abs() <= FARTHEST_S)
    };
    let mut ways: Vec<f64> = before.iter().filter_map(way).collect();
    ways.sort_by(f64::total_cmp);
    if 2 * ways.len() > before.len() { ways.get(ways.len() / 2).copied() } else { None }
}

/// Moves cursors and marks by `by_s`, as far as the recording goes; what lies between the cursors stays as long as it was.
fn go_with(kept: &mut KeptRecording, by_s: f64) {
    let end_s = kept.recording.duration_s();
    let ends: Vec<f64> = [kept.a, kept.b].into_iter().flatten().collect();
    let first = ends.iter().copied().fold(f64::INFINITY, f64::min);
    let last = ends.iter().copied().fold(0.0, f64::max);
    if !ends.is_empty() {
        let shift = by_s.clamp(-first, (end_s - last).max(-first));
        kept.a = kept.a.map(|t| t + shift);
        kept.b = kept.b.map(|t| t + shift);
    }
    kept.marks.iter_mut().for_each(|t| *t = (*t + by_s).clamp(0.0, end_s));
}
