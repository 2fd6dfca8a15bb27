//! One scale for a whole recording. A change of range in mid-recording changes what a code is worth, but a file has one
//! scale for a signal.
//!
//! The rule: the finest step among the recording's spans, if all values fit into 16 bits with it; otherwise the
//! finest step with which they do. So a recording with one range is written code by code, without any loss, and in
//! every other no value is off by more than half of the written step.

use crate::recording::Recording;

/// What is written: a recording of codes, or plain values, which take the finest scale there is.
#[derive(Clone, Copy, Debug)]
pub enum Samples<'a> {
    /// Codes with what they mean.
    Recording(&'a Recording),
    /// Values at an even rate.
    Values {
        /// Samples a second, Hz.
        rate_hz: f64,
        /// The values.
        values: &'a [f64],
    },
}

impl Samples<'_> {
    /// Samples a second, Hz.
    pub fn rate_hz(&self) -> f64 {
        match self {
            Self::Recording(recording) => recording.rate_hz(),
            Self::Values { rate_hz, .. } => *rate_hz,
        }
    }

    /// Number of samples.
    pub fn len(&self) -> usize {
        match self {
            Self::Recording(recording) => recording.len(),
            Self::Values { values, .. } => values.len(),
        }
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Length, s.
    pub fn duration_s(&self) -> f64 {
        self.len() as f64 / self.rate_hz()
    }

    /// The values.
    pub fn values(&self) -> Vec<f64> {
        match self {
            Self::Recording(recording) => recording.values(0, recording.len()),
            Self::Values { values, .. } => values.to_vec(),
        }
    }
}

/// Value = `code * step + zero`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    /// Value of one unit of code.
    pub step: f64,
    /// Value of code zero.
    pub zero: f64,
    /// Lowest value of the recording.
    pub low: f64,
    /// Highest value.
    pub high: f64,
}

/// The scale for codes from `lowest` to 32767.
pub(super) fn of(samples: &Samples, lowest: i16) -> Scale {
    match samples {
        Samples::Recording(recording) => of_recording(recording, lowest),
        Samples::Values { values, .. } => {
            let ends = values.iter().fold(None, |ends: Option<(f64, f64)>, v| {
                Some(ends.map_or((*v, *v), |(low, high)| (low.min(*v), high.max(*v))))
            });
            let (low, high) = ends.unwrap_or((0.0, 0.0));
            // A flat line has a scale all the same.
            let least = (1e-9 * low.abs().max(high.abs())).max(1e-12);
            let step = ((high - low) / (32767.0 - f64::from(lowest))).max(least);
            Scale { step, zero: low - f64::from(lowest) * step, low, high }
        }
    }
}

fn of_recording(recording: &Recording, lowest: i16) -> Scale {
    let (mut low, mut high, mut finest) = (f64::INFINITY, f64::NEG_INFINITY, f64::INFINITY);
    let spans = recording.spans();
    for (k, span) in spans.iter().enumerate() {
        let end = spans.get(k + 1).map_or(recording.len(), |next| next.start);
        let codes = &recording.codes()[span.start..end];
        let (Some(least), Some(most)) = (codes.iter().min(), codes.iter().max()) else { continue };
        for code in [least, most] {
            let value = span.volts(*code);
            (low, high) = (low.min(value), high.max(value));
        }
        finest = finest.min(span.code_v);
    }
    if !(low <= high && finest.is_finite() && finest > 0.0) {
        return Scale { step: 1.0, zero: 0.0, low: 0.0, high: 0.0 };
    }
    // The zero of the first span that has the finest step: its codes then stay what they are.
    let zero = spans.iter().find(|s| s.code_v == finest).map_or(0.0, |s| s.offset_v);
    let fits = |step: f64, zero: f64| {
        let code = |value: f64| ((value - zero) / step).round();
        code(low) >= f64::from(lowest) && code(high) <= 32767.0
    };
    if fits(finest, zero) {
        return Scale { step: finest, zero, low, high };
    }
    // Moving all codes by a whole number of steps changes no value.
    let middle = zero + (((low + high) / 2.0 - zero) / finest).round() * finest;
    if fits(finest, middle) {
        return Scale { step: finest, zero: middle, low, high };
    }
    let codes = 32767.0 - f64::from(lowest);
    let step = ((high - low) / codes).max(finest);
    // The lowest value gets the lowest code.
    Scale { step, zero: low - f64::from(lowest) * step, low, high }
}

/// The codes on a scale, from `lowest` up.
pub(super) fn codes(samples: &Samples, step: f64, zero: f64, lowest: i16) -> Vec<i16> {
    let code = |value: f64| ((value - zero) / step).round().clamp(f64::from(lowest), 32767.0) as i16;
    let recording = match samples {
        Samples::Recording(recording) => recording,
        Samples::Values { values, .. } => return values.iter().map(|v| code(*v)).collect(),
    };
    let spans = recording.spans();
    let mut k = 0;
    let value = |(at, raw): (usize, &i16)| {
        while spans.get(k + 1).is_some_and(|next| next.start <= at) {
            k += 1;
        }
        code(spans.get(k).map_or(0.0, |s| s.volts(*raw)))
    };
    recording.codes().iter().enumerate().map(value).collect()
}
