//! Step 2: every local maximum of the conditioned pulse, each of which might be a systolic peak.

use super::condition::{Signal, median, median_over};

/// A local maximum.
#[derive(Clone, Copy, Debug)]
pub(super) struct Candidate {
    /// Place in working samples, between them by a parabola.
    pub at: f64,
    /// Height above the lowest point since the last higher maximum, at most [`RISE_S`] back, against the size of the
    /// pulses around.
    pub rise: f64,
}

/// All maxima, and how large the pulse is where.
pub(super) struct Candidates {
    /// In order.
    pub peaks: Vec<Candidate>,
    /// Working samples in a block.
    block: f64,
    /// Usual rise of a pulse about each block.
    size: Vec<f64>,
}

impl Candidates {
    /// Usual rise of a pulse about a working sample; above zero.
    pub fn size_at(&self, sample: f64) -> f64 {
        self.size[((sample / self.block) as usize).min(self.size.len() - 1)]
    }
}

/// Longest time from the foot of a pulse to its peak that is looked at. Fingers: median 147 ms, the slowest tenth
/// above 257 ms (measured on the recordings of Neshitov et al. 2021, Sensors 21:6798); a band-pass adds to it.
const RISE_S: f64 = 0.35;

/// Seconds in a block of the usual size.
const BLOCK_S: f64 = 0.5;

/// Finds all local maxima and measures them.
pub(super) fn candidates(signal: &Signal) -> Candidates {
    let y = &signal.pulse;
    let mut peaks = maxima(y, (RISE_S * signal.rate_hz).ceil() as usize);
    let block = BLOCK_S * signal.rate_hz;
    let count = (y.len() as f64 / block) as usize + 1;
    let mut top = vec![0.0f64; count];
    for c in &peaks {
        let b = (c.at / block) as usize;
        top[b] = top[b].max(c.rise);
    }
    // The highest rise in each two seconds is that of a pulse or of a disturbance; the median over four seconds more
    // is that of a pulse, as long as disturbances are shorter than pulses are.
    let wide: Vec<f64> = (0..count)
        .map(|b| top[b.saturating_sub(2)..(b + 2).min(count)].iter().copied().fold(0.0, f64::max))
        .collect();
    let mut size = median_over(&wide, 4);
    // Where the pulse is gone there is nothing to measure by: an eighth of the usual is taken to be noise.
    let usual = median(&mut size.clone());
    size.iter_mut().for_each(|s| *s = s.max(usual / 8.0).max(f64::MIN_POSITIVE));
    for c in &mut peaks {
        c.rise /= size[(c.at / block) as usize];
    }
    Candidates { peaks, block, size }
}

/// Local maxima with their rises in the unit of `y`.
fn maxima(y: &[f64], reach: usize) -> Vec<Candidate> {
    let mut found = Vec::new();
    // Of each maximum its place, its height and the lowest point between it and the one before.
    let mut past: Vec<(usize, f64, f64)> = Vec::new();
    let mut low = f64::INFINITY;
    for i in 1..y.len().saturating_sub(1) {
        low = low.min(y[i - 1]);
        if !(y[i] > y[i - 1] && y[i] >= y[i + 1]) {
            continue;
        }
        let since = i.saturating_sub(reach);
        let (mut lowest, mut dip) = (low, low);
        for (at, height, before) in past.iter().rev() {
            lowest = lowest.min(dip);
            if *height >= y[i] || *at <= since {
                break;
            }
            dip = *before;
        }
        let floor = y[since..i].iter().copied().fold(f64::INFINITY, f64::min);
        let bend = y[i - 1] - 2.0 * y[i] + y[i + 1];
        let shift = if bend < 0.0 { 0.5 * (y[i - 1] - y[i + 1]) / bend } else { 0.0 };
        found.push(Candidate { at: i as f64 + shift, rise: y[i] - lowest.max(floor) });
        past.push((i, y[i], low));
        low = f64::INFINITY;
    }
    found
}
