//! A recording: codes at an even rate, the settings under which each stretch was taken, and a pyramid of minima and
//! maxima, so that a screen of any length is drawn in the same time.

use serde::{Deserialize, Serialize};

/// Samples in a bucket of the pyramid's lowest level, and how many buckets make one of the next.
const BASE: usize = 64;
const FAN: usize = 8;

/// From where on codes mean which volts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Span {
    /// First sample.
    pub start: usize,
    /// Volts of one unit of code.
    pub code_v: f64,
    /// Volts of code zero.
    pub offset_v: f64,
    /// Resolution of the converter, bits.
    pub bits: u8,
}

impl Span {
    /// What a code means, V.
    pub fn volts(&self, code: i16) -> f64 {
        f64::from(code) * self.code_v + self.offset_v
    }
}

/// Lowest and highest value of a stretch, V.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extent {
    /// Lowest.
    pub min: f32,
    /// Highest.
    pub max: f32,
}

impl Extent {
    const EMPTY: Extent = Extent { min: f32::INFINITY, max: f32::NEG_INFINITY };

    fn with(self, other: Extent) -> Extent {
        Extent { min: self.min.min(other.min), max: self.max.max(other.max) }
    }
}

/// A recording in memory.
#[derive(Clone, Debug, PartialEq)]
pub struct Recording {
    rate_hz: f64,
    codes: Vec<i16>,
    spans: Vec<Span>,
    levels: Vec<Vec<Extent>>,
}

impl Recording {
    /// An empty recording at `rate_hz` samples a second (above zero).
    pub fn new(rate_hz: f64) -> Self {
        Self { rate_hz, codes: Vec::new(), spans: Vec::new(), levels: vec![Vec::new()] }
    }

    /// A recording of given values, V, put into 16-bit codes over their own range: to within half of 1/65534 of it.
    pub fn of_values(rate_hz: f64, values: &[f64]) -> Self {
        let (low, high) =
            values.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
        let (low, high) = if low <= high { (low, high) } else { (0.0, 0.0) };
        let offset_v = low / 2.0 + high / 2.0;
        let half = (high / 2.0 - low / 2.0).max(1e-12);
        let code_v = half / 32767.0;
        let mut made = Self::new(rate_hz);
        made.mark_span(code_v, offset_v, 16);
        let codes: Vec<i16> = values.iter().map(|v| ((v - offset_v) / code_v).round() as i16).collect();
        made.push(&codes);
        made
    }

    /// The same codes with another meaning: `(sign * value + add) * by` of each value, where `sign` is 1 or -1. No value is rounded anew,
    /// unless one lies at the very end of the codes, which reach one step farther down than up.
    pub fn turned(&self, sign: f64, add: f64, by: f64) -> Self {
        let mut made = Self::new(self.rate_hz);
        self.stretches(0, self.codes.len(), |span, codes| {
            made.mark_span(by * span.code_v, by * (sign * span.offset_v + add), span.bits);
            if sign < 0.0 {
                made.push(&codes.iter().map(|code| code.saturating_neg()).collect::<Vec<_>>());
            } else {
                made.push(codes);
            }
        });
        made
    }

    /// Samples a second, Hz.
    pub fn rate_hz(&self) -> f64 {
        self.rate_hz
    }

    /// Number of samples.
    pub fn len(&self) -> usize {
        self.codes.len()
    }

    /// Whether nothing has been recorded.
    pub fn is_empty(&self) -> bool {
        self.codes.is_empty()
    }

    /// Length, s.
    pub fn duration_s(&self) -> f64 {
        self.codes.len() as f64 / self.rate_hz
    }

    /// From the next sample on, codes mean other volts. Repeating the meaning in force adds nothing.
    pub fn mark_span(&mut self, code_v: f64, offset_v: f64, bits: u8) {
        let span = Span { start: self.codes.len(), code_v, offset_v, bits };
        if let Some(last) = self.spans.last_mut() {
            if (last.code_v, last.offset_v, last.bits) == (code_v, offset_v, bits) {
                return;
            }
            if last.start == span.start {
                *last = span;
                return;
            }
        }
        self.spans.push(span);
    }

    /// Appends codes. A span must have been marked before the first.
    pub fn push(&mut self, codes: &[i16]) {
        debug_assert!(!self.spans.is_empty(), "a span comes before the first code");
        for &code in codes {
            self.codes.push(code);
            if self.codes.len().is_multiple_of(BASE) {
                let extent = self.scan(self.codes.len() - BASE, self.codes.len());
                self.raise(0, extent);
            }
        }
    }

    fn raise(&mut self, level: usize, extent: Extent) {
        self.levels[level].push(extent);
        let filled = self.levels[level].len();
        if filled.is_multiple_of(FAN) {
            let joined = joined(&self.levels[level][filled - FAN..]);
            if self.levels.len() == level + 1 {
                self.levels.push(Vec::new());
            }
            self.raise(level + 1, joined);
        }
    }

    /// The codes.
    pub fn codes(&self) -> &[i16] {
        &self.codes
    }

    /// The spans, by first sample.
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }

    /// The span in force at a sample.
    pub fn span_at(&self, sample: usize) -> Option<&Span> {
        self.spans[..self.spans.partition_point(|s| s.start <= sample)].last()
    }

    /// Value of a sample, V; `None` past the end.
    pub fn volts(&self, sample: usize) -> Option<f64> {
        let code = *self.codes.get(sample)?;
        self.span_at(sample).map(|span| span.volts(code))
    }

    /// Values of the samples from `from` to before `to` (cut to the recording's end), V.
    pub fn values(&self, from: usize, to: usize) -> Vec<f64> {
        let to = to.min(self.codes.len());
        let mut out = Vec::with_capacity(to.saturating_sub(from));
        self.stretches(from, to, |span, codes| out.extend(codes.iter().map(|code| span.volts(*code))));
        out
    }

    /// The sample nearest to a time, s, within the recording or one past its end.
    pub fn sample_at(&self, time_s: f64) -> usize {
        let at = (time_s * self.rate_hz).round();
        if at > 0.0 { (at as usize).min(self.codes.len()) } else { 0 }
    }

    /// Visits the stretches of `from` to before `to` that mean the same volts.
    fn stretches(&self, from: usize, to: usize, mut visit: impl FnMut(&Span, &[i16])) {
        let mut at = from;
        while at < to {
            let k = self.spans.partition_point(|s| s.start <= at);
            let Some(span) = k.checked_sub(1).map(|k| &self.spans[k]) else { return };
            let end = self.spans.get(k).map_or(to, |next| next.start.min(to));
            visit(span, &self.codes[at..end]);
            at = end;
        }
    }

    fn scan(&self, from: usize, to: usize) -> Extent {
        let mut extent = Extent::EMPTY;
        // Volts follow codes evenly, so that the outermost codes are the outermost values; whole numbers are compared faster.
        self.stretches(from, to, |span, codes| {
            let (low, high) = codes.iter().fold((i16::MAX, i16::MIN), |(l, h), c| (l.min(*c), h.max(*c)));
            for code in [low, high] {
                let v = span.volts(code) as f32;
                extent = extent.with(Extent { min: v, max: v });
            }
        });
        extent
    }

    /// Lowest and highest value of the samples from `from` to before `to`; `None` when there are none.
    pub fn extent(&self, from: usize, to: usize) -> Option<Extent> {
        let to = to.min(self.codes.len());
        if from >= to {
            return None;
        }
        // The whole buckets between them, and the samples before and behind those.
        let (mut first, mut end) = (from.div_ceil(BASE), to / BASE);
        if first >= end {
            return Some(self.scan(from, to));
        }
        let mut extent = self.scan(from, first * BASE).with(self.scan(end * BASE, to));
        for level in &self.levels {
            let (up, down) = (first.div_ceil(FAN), end / FAN);
            if up >= down {
                return Some(joined(&level[first..end]).with(extent));
            }
            extent = extent.with(joined(&level[first..up * FAN])).with(joined(&level[down * FAN..end]));
            (first, end) = (up, down);
        }
        Some(extent)
    }
}

fn joined(extents: &[Extent]) -> Extent {
    extents.iter().fold(Extent::EMPTY, |a, b| a.with(*b))
}
