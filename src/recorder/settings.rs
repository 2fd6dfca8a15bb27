//! What can be set at the recorder, the choices for each, and changes to them.

use serde::{Deserialize, Serialize};

/// Inputs.
pub const INPUTS: [u8; 3] = [1, 2, 3];
/// Full-scale ranges, V: 1-2-5 steps from +-10 V to +-5 mV.
pub const RANGES_V: [f64; 11] = [10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005];
/// Sampling rates, Hz. The odd ones are there to be met: they fold the power line down to a slow wave.
pub const RATES_HZ: [u32; 14] = [20, 40, 49, 50, 59, 60, 75, 100, 200, 250, 500, 1000, 2000, 4000];
/// Resolutions of the converter, bits.
pub const BITS: [u8; 3] = [8, 12, 16];
/// Corners of the high-pass, Hz; none is direct coupling.
pub const HIGH_PASS_HZ: [f64; 6] = [0.05, 0.1, 0.5, 1.0, 2.0, 7.0];
/// Corners of the low-pass, Hz.
pub const LOW_PASS_HZ: [f64; 9] = [1.0, 2.0, 3.0, 5.0, 10.0, 15.0, 30.0, 50.0, 100.0];
/// Centres of the power line notch, Hz.
pub const NOTCH_HZ: [f64; 2] = [50.0, 60.0];
/// Lengths of the moving average, ms.
pub const AVERAGE_MS: [f64; 4] = [10.0, 17.0, 20.0, 100.0];
/// Factors of the value labels.
pub const SCALES: [f64; 3] = [1.0, 10.0, 1000.0];
/// Resistance of a plain input, ohm (common practice for instruments with a round signal socket).
pub const PLAIN_OHM: f64 = 1e6;
/// Resistance of an input behind a buffer, ohm (common practice: a follower with a field-effect input).
pub const BUFFERED_OHM: f64 = 1e12;
/// The calibrator's square wave: height from low to high, V, and period, s (design defaults).
pub const CALIBRATOR_V: f64 = 0.01;
/// See [`CALIBRATOR_V`].
pub const CALIBRATOR_S: f64 = 1.0;
/// Frequency at which the integral keeps a wave's height, Hz (design default).
pub const INTEGRAL_UNITY_HZ: f64 = 1.0;
/// Frequency under which the integral lets go, Hz (design default): without it a constant would run off the screen.
pub const INTEGRAL_LEAK_HZ: f64 = 0.05;
/// Quality of the power line notch: centre over width at -3 dB.
pub const NOTCH_Q: f64 = 30.0;

/// The recorder's settings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Settings {
    /// Which input is shown and recorded, 1 to 3.
    pub input: u8,
    /// The input's buffer is on: the input then loads a sensor with a million megohm, and otherwise with one.
    pub buffered: bool,
    /// The calibrator's square wave takes the place of what is in the input.
    pub calibrator: bool,
    /// Full-scale range, V: the converter takes -range to +range.
    pub range_v: f64,
    /// Resolution of the converter, bits.
    pub bits: u8,
    /// Sampling rate, Hz.
    pub rate_hz: u32,
    /// Voltage that is added before the converter, V.
    pub zero_v: f64,
    /// Whether the trace is inverted.
    pub inverted: bool,
    /// Corner of the high-pass, Hz.
    pub high_pass_hz: Option<f64>,
    /// Order of the high-pass, 1 or 2.
    pub high_pass_order: u8,
    /// Corner of the low-pass, Hz.
    pub low_pass_hz: Option<f64>,
    /// Order of the low-pass, 1 or 2.
    pub low_pass_order: u8,
    /// Center of the notch filter, Hz.
    pub notch_hz: Option<f64>,
    /// Length of the moving average, ms.
    pub average_ms: Option<f64>,
    /// The running integral is shown and kept instead of the signal.
    pub integral: bool,
    /// Low-pass at 0.4 of the sampling rate before the converter.
    pub anti_alias: bool,
    /// Whether the trace of the chosen input is drawn.
    pub shown: bool,
    /// Factor for the numbers on the axis, for sensors with an amplifier of their own.
    pub scale: f64,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            input: 1,
            buffered: true,
            calibrator: false,
            range_v: 2.0,
            bits: 16,
            rate_hz: 1000,
            zero_v: 0.0,
            inverted: false,
            high_pass_hz: None,
            high_pass_order: 1,
            low_pass_hz: None,
            low_pass_order: 2,
            notch_hz: None,
            average_ms: None,
            integral: false,
            anti_alias: true,
            shown: true,
            scale: 1.0,
        }
    }
}

/// One setting turned.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Change {
    /// Choose the input.
    Input {
        /// One of [`INPUTS`].
        n: u8,
    },
    /// The input's buffer on or off.
    Buffered {
        /// On.
        on: bool,
    },
    /// The calibrator on or off.
    Calibrator {
        /// On.
        on: bool,
    },
    /// The running integral on or off.
    Integral {
        /// On.
        on: bool,
    },
    /// Choose the full-scale range.
    Range {
        /// One of [`RANGES_V`].
        v: f64,
    },
    /// Choose the sampling rate.
    Rate {
        /// One of [`RATES_HZ`].
        hz: u32,
    },
    /// Choose the resolution.
    Bits {
        /// One of [`BITS`].
        n: u8,
    },
    /// Bring the present level of the signal to the middle.
    Zero {},
    /// Take the added voltage away.
    ZeroClear {},
    /// Turn the polarity over or back.
    Invert {
        /// Turned over.
        on: bool,
    },
    /// Choose the high-pass.
    HighPass {
        /// One of [`HIGH_PASS_HZ`], or none.
        hz: Option<f64>,
        /// 1 or 2; as before when absent.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        order: Option<u8>,
    },
    /// Choose the low-pass.
    LowPass {
        /// One of [`LOW_PASS_HZ`], or none.
        hz: Option<f64>,
        /// 1 or 2; as before when absent.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        order: Option<u8>,
    },
    /// Choose the power line notch.
    Notch {
        /// One of [`NOTCH_HZ`], or none.
        hz: Option<f64>,
    },
    /// Choose the moving average.
    Average {
        /// One of [`AVERAGE_MS`], or none.
        ms: Option<f64>,
    },
    /// Draw the trace or not.
    Shown {
        /// Drawn.
        on: bool,
    },
    /// Choose the factor of the labels.
    Scale {
        /// One of [`SCALES`].
        by: f64,
    },
    /// Low-pass before the converter on or off.
    AntiAlias {
        /// On.
        on: bool,
    },
}

/// A value that the recorder cannot be set to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BadValue {
    /// Name of the setting.
    pub field: &'static str,
    /// What it takes.
    pub expected: String,
}

impl Settings {
    /// Checks every value against its choices; the first that does not fit is named.
    pub fn check(&self) -> Result<(), BadValue> {
        let bad = |field, expected: String| Err(BadValue { field, expected });
        let listed = |list: &[f64]| list.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
        if !INPUTS.contains(&self.input) {
            return bad("input", "1, 2, 3".into());
        }
        if !RANGES_V.contains(&self.range_v) {
            return bad("range_v", listed(&RANGES_V));
        }
        if !BITS.contains(&self.bits) {
            return bad("bits", "8, 12, 16".into());
        }
        if !RATES_HZ.contains(&self.rate_hz) {
            return bad("rate_hz", RATES_HZ.map(|r| r.to_string()).join(", "));
        }
        if !SCALES.contains(&self.scale) {
            return bad("scale", listed(&SCALES));
        }
        if !(self.zero_v.is_finite() && self.zero_v.abs() <= 10.0) {
            return bad("zero_v", "a number from -10 to 10".into());
        }
        for (field, value, list) in [
            ("high_pass_hz", self.high_pass_hz, &HIGH_PASS_HZ[..]),
            ("low_pass_hz", self.low_pass_hz, &LOW_PASS_HZ[..]),
            ("notch_hz", self.notch_hz, &NOTCH_HZ[..]),
            ("average_ms", self.average_ms, &AVERAGE_MS[..]),
        ] {
            if value.is_some_and(|v| !list.contains(&v)) {
                return bad(field, format!("none or one of {}", listed(list)));
            }
        }
        for (field, order) in
            [("high_pass_order", self.high_pass_order), ("low_pass_order", self.low_pass_order)]
        {
            if !(1..=2).contains(&order) {
                return bad(field, "1 or 2".into());
            }
        }
        Ok(())
    }

    /// The settings after a change, or what is wrong with it. [`Change::Zero`] needs the signal and is left to
    /// [`super::Recorder::change`].
    pub fn with(&self, change: &Change) -> Result<Settings, BadValue> {
        let mut next = self.clone();
        match *change {
            Change::Input { n } => next.input = n,
            Change::Buffered { on } => next.buffered = on,
            Change::Calibrator { on } => next.calibrator = on,
            Change::Integral { on } => next.integral = on,
            Change::Range { v } => next.range_v = v,
            Change::Rate { hz } => next.rate_hz = hz,
            Change::Bits { n } => next.bits = n,
            Change::Zero {} => {}
            Change::ZeroClear {} => next.zero_v = 0.0,
            Change::Invert { on } => next.inverted = on,
            Change::HighPass { hz, order } => {
                next.high_pass_hz = hz;
                next.high_pass_order = order.unwrap_or(next.high_pass_order);
            }
            Change::LowPass { hz, order } => {
                next.low_pass_hz = hz;
                next.low_pass_order = order.unwrap_or(next.low_pass_order);
            }
            Change::Notch { hz } => next.notch_hz = hz,
            Change::Average { ms } => next.average_ms = ms,
            Change::AntiAlias { on } => next.anti_alias = on,
            Change::Shown { on } => next.shown = on,
            Change::Scale { by } => next.scale = by,
        }
        next.check()?;
        Ok(next)
    }

    /// Volts of one recorder of code as the labels show them.
    pub fn shown_code_v(&self) -> f64 {
        self.scale * super::converter::code_v(self.range_v)
    }

    /// Resistance of the input, ohm.
    pub fn input_ohm(&self) -> f64 {
        if self.buffered { BUFFERED_OHM } else { PLAIN_OHM }
    }

    /// Steps of the simulated analogue signal for one sample: so many that they come at 1 kHz or more.
    pub fn steps_per_sample(&self) -> u32 {
        1000_u32.div_ceil(self.rate_hz)
    }

    /// Rate of the simulated analogue signal, Hz.
    pub fn analogue_rate_hz(&self) -> f64 {
        f64::from(self.rate_hz * self.steps_per_sample())
    }
}
