//! The fields of the worksheet.

use serde::{Deserialize, Serialize};

/// A field of the worksheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// Beats (or intervals) counted, N.
    Count,
    /// Length of the window, T, s.
    Seconds,
    /// Multiplier, 60/T, 1/min.
    Multiplier,
    /// Rate, beats/min.
    Rate,
    /// Uncertainty of the rate, beats/min.
    Uncertainty,
    /// Time from the end of exercise to the middle of the window, s.
    Middle,
    /// Full-scale range to one side, mV.
    Range,
    /// Height of a beat from foot to peak, mV.
    Amplitude,
    /// Beats counted in the first of two windows.
    #[serde(rename = "count_1")]
    Count1,
    /// Length of the first of two windows, s.
    #[serde(rename = "seconds_1")]
    Seconds1,
    /// Rate of the first of two windows, beats/min.
    #[serde(rename = "rate_1")]
    Rate1,
}

/// All fields, in no particular order.
pub const FIELDS: [Field; 11] = [
    Field::Count,
    Field::Seconds,
    Field::Multiplier,
    Field::Rate,
    Field::Uncertainty,
    Field::Middle,
    Field::Range,
    Field::Amplitude,
    Field::Count1,
    Field::Seconds1,
    Field::Rate1,
];

impl Field {
    /// Its name in logs, scripts and views.
    pub fn name(self) -> &'static str {
        match self {
            Field::Count => "count",
            Field::Seconds => "seconds",
            Field::Multiplier => "multiplier",
            Field::Rate => "rate",
            Field::Uncertainty => "uncertainty",
            Field::Middle => "middle",
            Field::Range => "range",
            Field::Amplitude => "amplitude",
            Field::Count1 => "count_1",
            Field::Seconds1 => "seconds_1",
            Field::Rate1 => "rate_1",
        }
    }

    /// Whether it is read in millivolts.
    pub fn in_millivolts(self) -> bool {
        matches!(self, Field::Range | Field::Amplitude)
    }
}
