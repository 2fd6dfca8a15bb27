//! From one sampling rate to another, and over gaps.

use std::borrow::Cow;

/// The samples with each that is not a number replaced by the last one that was (the first one, at the start); borrowed
/// where all are numbers.
pub fn held(x: &[f64]) -> Cow<'_, [f64]> {
    // Exponents of infinities and of what is no number are all ones: one more makes the sign bit. All at once and not up
    // to the first, which is several times as fast where there is none.
    const EXPONENT: u64 = 0x7ff << 52;
    let carried = x.iter().fold(0, |c, v| c | ((v.to_bits() & EXPONENT) + (1 << 52)));
    if carried >> 63 == 0 {
        return Cow::Borrowed(x);
    }
    let mut last = x.iter().copied().find(|v| v.is_finite()).unwrap_or(0.0);
    x.iter()
        .map(|v| {
            last = if v.is_finite() { *v } else { last };
            last
        })
        .collect()
}

/// Means of runs of `by` samples; a last, shorter run is left out unless it is the only one. Sample `i` of the result
/// stands for the time of sample `by * i + (by - 1) / 2`. The mean of a run has zeros at multiples of the new rate, so
/// that what would alias onto zero frequency is gone.
pub fn average_down(x: &[f64], by: usize) -> Vec<f64> {
    let by = by.max(1);
    if by == 1 {
        return x.to_vec();
    }
    let scale = 1.0 / by as f64;
    if by == 2 {
        return x.chunks_exact(2).map(|run| (run[0] + run[1]) * scale).collect();
    }
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

/// The value at `at` (in samples, from 0) on the cubic through the four samples around it (Catmull & Rom 1974); the end
/// samples beyond the ends.
pub fn cubic(x: &[f64], at: f64) -> f64 {
    let Some(last) = x.len().checked_sub(1) else { return 0.0 };
    let at = at.clamp(0.0, last as f64);
    let i = at as usize;
    let t = at - i as f64;
    let (b, c) = (x[i], x[(i + 1).min(last)]);
    let (a, d) = (x[i.saturating_sub(1)], x[(i + 2).min(last)]);
    let slopes = (0.5 * (c - a), 0.5 * (d - b));
    let (t2, t3) = (t * t, t * t * t);
    b * (2.0 * t3 - 3.0 * t2 + 1.0)
        + slopes.0 * (t3 - 2.0 * t2 + t)
        + c * (3.0 * t2 - 2.0 * t3)
        + slopes.1 * (t3 - t2)
}

/// Values at `at` (rising) of the natural cubic spline through the points `(t, y)`; `t` must rise and have the length
/// of `y`. Fewer than two points give no values; beyond the ends the end pieces go on.
pub fn spline(t: &[f64], y: &[f64], at: &[f64]) -> Vec<f64> {
    let n = t.len();
    if n < 2 || y.len() != n {
        return Vec::new();
    }
    // Second derivatives from the tridiagonal system (de Boor, A Practical Guide to Splines, ch. IV), by elimination.
    let mut bend = vec![0.0; n];
    let mut upper = vec![0.0; n];
    for i in 1..n - 1 {
        let (before, after) = (t[i] - t[i - 1], t[i + 1] - t[i]);
        let right = 6.0 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
        let pivot = 2.0 * (before + after) - before * upper[i - 1];
        upper[i] = after / pivot;
        bend[i] = (right - before * bend[i - 1]) / pivot;
    }
    for i in (1..n - 1).rev() {
        bend[i] -= upper[i] * bend[i + 1];
    }
    let mut i = 0;
    at.iter()
        .map(|at| {
            while i + 2 < n && t[i + 1] <= *at {
                i += 1;
            }
            let h = t[i + 1] - t[i];
            let (a, b) = ((t[i + 1] - at) / h, (at - t[i]) / h);
            a * y[i]
                + b * y[i + 1]
                + ((a * a * a - a) * bend[i] + (b * b * b - b) * bend[i + 1]) * h * h / 6.0
        })
        .collect()
}
