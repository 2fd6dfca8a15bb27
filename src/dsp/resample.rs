//! From one sampling rate to another.

/// Means of runs of `by` samples; a last, shorter run is left out unless it is the only one. Sample `i` of the result
/// stands for the time of sample `by * i + (by - 1) / 2`. The mean of a run has zeros at multiples of the new rate, so
/// that what would alias onto zero frequency is gone.
pub fn average_down(x: &[f64], by: usize) -> Vec<f64> {
    let by = by.max(1);
    if by == 1 {
        return x.to_vec();
    }
    let scale = 1.0 / by as f64;
    x.chunks_exact(by).map(|run| run.iter().sum::<f64>() * scale).collect()
}

/// Every second sample, each with a quarter of both neighbours: `cos^2 (pi f / rate)` in front of the decimation, so
/// that what would alias onto low frequencies is weak. Sample `i` of the result stands for the time of sample `2 i`.
pub fn halve(x: &[f64]) -> Vec<f64> {
    let Some((first, last)) = x.first().zip(x.last()) else { return Vec::new() };
    let mut y = Vec::with_capacity(x.len() / 2 + 1);
    y.push(0.5 * (first + x.get(1).unwrap_or(first)));
    // Windows of the odd samples and what lies on both sides: 1, 2, 3; 3, 4, 5; ...
    y.extend(x.get(1..).unwrap_or(&[]).windows(3).step_by(2).map(|w| 0.25 * (w[0] + w[2]) + 0.5 * w[1]));
    if x.len() > 1 && x.len() % 2 == 1 {
        y.push(0.5 * (x[x.len() - 2] + last));
    }
    y
}

/// The value at `at` (in samples, from 0) on the straight lines between samples; the end samples beyond the ends.
pub fn linear(x: &[f64], at: f64) -> f64 {
    let last = x.len().saturating_sub(1);
    let at = at.clamp(0.0, last as f64);
    let i = (at as usize).min(last.saturating_sub(1));
    if last == 0 { x.first().copied().unwrap_or(0.0) } else { x[i] + (at - i as f64) * (x[i + 1] - x[i]) }
}
