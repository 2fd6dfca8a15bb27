//! Step 3: every local maximum of the conditioned pulse that might be a systolic peak.

use super::condition::Signal;

/// A local maximum.
#[derive(Clone, Copy, Debug)]
pub(super) struct Candidate {
    /// Place in working samples, between them by a parabola.
    pub at: f64,
    /// Height above the lowest point since the last higher maximum, at most [`RISE_S`] back, in units of the local
    /// pulse size.
    pub rise: f64,
}

/// Longest time from the foot of a pulse to its peak that is looked at. Fingers: median 147 ms, tenth slowest 257 ms
/// (measured on the recordings of Neshitov et al. 2021, Sensors 21:6798); a band-pass adds to it.
const RISE_S: f64 = 0.35;

/// Seconds in a block of the local size.
const BLOCK_S: f64 = 0.5;

/// All local maxima, in order.
pub(super) fn candidates(signal: &Signal) -> Vec<Candidate> {
    let y = &signal.pulse;
    let reach = (RISE_S * signal.rate_hz).ceil() as usize;
    let mut found: Vec<Candidate> = Vec::new();
    // Of each maximum its place, height and the lowest point between it and the one before.
    let mut peaks: Vec<(usize, f64, f64)> = Vec::new();
    let mut low = f64::INFINITY;
    for i in 1..y.len().saturating_sub(1) {
        low = low.min(y[i - 1]);
        if !(y[i] > y[i - 1] && y[i] >= y[i + 1]) {
            continue;
        }
        let since = i.saturating_sub(reach);
        let mut dip = low;
        let mut lowest = f64::INFINITY;
        for (at, height, before) in peaks.iter().rev() {
            lowest = lowest.min(dip);
            if *height >= y[i] || *at <= since {
                break;
            }
            dip = *before;
        }
        if peaks.is_empty() {
            lowest = low;
        }
        let floor = y[since..i].iter().copied().fold(f64::INFINITY, f64::min);
        let bend = y[i - 1] - 2.0 * y[i] + y[i + 1];
        let shift = if bend < 0.0 { 0.5 * (y[i - 1] - y[i + 1]) / bend } else { 0.0 };
        found.push(Candidate { at: i as f64 + shift, rise: y[i] - lowest.max(floor) });
        peaks.push((i, y[i], low));
        low = f64::INFINITY;
    }
    let block = BLOCK_S * signal.rate_hz;
    let count = (y.len() as f64 / block) as usize + 1;
    let mut top = vec![0.0f64; count];
    for c in &found {
        let b = (c.at / block) as usize;
        top[b] = top[b].max(c.rise);
    }
    let wide: Vec<f64> = (0..count)
        .map(|b| top[b.saturating_sub(2)..(b + 2).min(count)].iter().copied().fold(0.0, f64::max))
        .collect();
    let mut size = super::condition::median_over(&wide, 6);
    let usual = super::condition::median(&mut size.clone());
    size.iter_mut().for_each(|s| *s = s.max(usual / 8.0).max(f64::MIN_POSITIVE));
    for c in &mut found {
        c.rise /= size[(c.at / block) as usize];
    }
    found
}
