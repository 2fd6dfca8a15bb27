//! The live trace: the stylus runs from left to right and begins again at the left, over the last screen's trace.
//! The last minute of samples is kept, so that another time base or a resized page can be drawn at once; a frame
//! draws only the columns that are new.

use super::columns::Column;
use super::frame::Frame;

/// Longest stretch kept, s: the longest time base.
pub const KEEP_S: f64 = 60.0;

/// The last samples of the live signal.
#[derive(Clone, Debug)]
pub struct Live {
    rate_hz: f64,
    ring: Vec<f32>,
    total: u64,
    drawn: u64,
}

/// New columns to draw: in sweep order, where `wrapped` tells that the stylus has gone back to the left before this
/// column.
#[derive(Clone, Debug, PartialEq)]
pub struct Fresh {
    /// The column.
    pub column: Column,
    /// It does not join the one before.
    pub lifted: bool,
}

impl Live {
    /// Nothing yet, at `rate_hz` samples a second.
    pub fn new(rate_hz: f64) -> Self {
        Self { rate_hz, ring: vec![0.0; (KEEP_S * rate_hz).ceil() as usize], total: 0, drawn: 0 }
    }

    /// Samples a second, Hz.
    pub fn rate_hz(&self) -> f64 {
        self.rate_hz
    }

    /// Samples taken in since the start.
    pub fn total(&self) -> u64 {
        self.total
    }

    /// Takes in samples: codes of `code_v` volts each.
    pub fn push(&mut self, codes: &[i16], code_v: f64) {
        let n = self.ring.len();
        // More than the ring holds would be written over at once.
        let gone = codes.len().saturating_sub(n);
        self.total += gone as u64;
        let mut rest = &codes[gone..];
        while !rest.is_empty() {
            let at = (self.total % n as u64) as usize;
            let (now, later) = rest.split_at(rest.len().min(n - at));
            for (slot, code) in self.ring[at..].iter_mut().zip(now) {
                *slot = (f64::from(*code) * code_v) as f32;
            }
            self.total += now.len() as u64;
            rest = later;
        }
    }

    /// A sample by its number since the start; `None` when it is gone or has not come yet.
    pub fn sample(&self, k: u64) -> Option<f32> {
        let n = self.ring.len() as u64;
        (k < self.total && k + n >= self.total).then(|| self.ring[(k % n) as usize])
    }

    /// The last `seconds` of samples, oldest first, V.
    pub fn last(&self, seconds: f64) -> Vec<f64> {
        let n = ((seconds * self.rate_hz) as u64).min(self.total).min(self.ring.len() as u64);
        (self.total - n..self.total).filter_map(|k| self.sample(k)).map(f64::from).collect()
    }

    /// Place of a sample in the sweep: (number of the sweep, place from 0 to 1).
    fn place(&self, k: u64, time_base_s: f64) -> (u64, f64) {
        let sweeps = k as f64 / self.rate_hz / time_base_s;
        (sweeps.floor() as u64, sweeps - sweeps.floor())
    }

    /// Place of the stylus, 0 to 1 of the plot's width.
    pub fn stylus(&self, time_base_s: f64) -> f64 {
        self.place(self.total, time_base_s).1
    }

    /// Forgets what has been drawn: the next call of [`Live::fresh`] gives the whole screen.
    pub fn redraw(&mut self) {
        self.drawn = 0;
    }

    /// The columns that have not been drawn, and marks them as drawn. A column that is still filling comes again
    /// with the next call.
    pub fn fresh(&mut self, frame: &Frame) -> Vec<Fresh> {
        let time_base_s = frame.t1 - frame.t0;
        let n = frame.columns();
        let screen = (time_base_s * self.rate_hz).floor().max(1.0) as u64;
        let oldest = self.total.saturating_sub(screen.min(self.ring.len() as u64));
        let mut k = self.drawn.max(oldest);
        let mut out: Vec<Fresh> = Vec::new();
        let mut current: Option<(u64, usize)> = None;
        while k < self.total {
            let Some(v) = self.sample(k) else { break };
            let (sweep, u) = self.place(k, time_base_s);
            let x = ((u * n as f64) as usize).min(n - 1);
            if current == Some((sweep, x)) {
                if let Some(last) = out.last_mut() {
                    last.column.add(v);
                }
            } else {
                let lifted = current.is_none_or(|(s, _)| s != sweep);
                out.push(Fresh { column: Column::start(x, v), lifted });
                current = Some((sweep, x));
            }
            k += 1;
        }
        // The last column may still grow: begin again at its first sample next time.
        if let Some((sweep, x)) = current {
            let mut back = self.total;
            while back > oldest {
                let (s, u) = self.place(back - 1, time_base_s);
                if (s, ((u * n as f64) as usize).min(n - 1)) != (sweep, x) {
                    break;
                }
                back -= 1;
            }
            // One sample earlier, so that the stroke joins.
            self.drawn = back.saturating_sub(1).max(oldest);
        }
        out
    }
}
