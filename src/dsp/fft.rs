//! A small power-of-two Fourier transform.

use crate::math;

/// Transforms `re + i im` in place: `X[k] = sum x[n] e^(-2 pi i k n / N)` (radix 2, decimation in time; Cooley & Tukey
/// 1965). Both slices must have the same power-of-two length; anything else is left as it is and gives `false`.
pub fn forward(re: &mut [f64], im: &mut [f64]) -> bool {
    let n = re.len();
    if n != im.len() || !n.is_power_of_two() {
        return false;
    }
    let shift = usize::BITS - n.trailing_zeros();
    for i in 0..n {
        let j = if n == 1 { 0 } else { i.reverse_bits() >> shift };
        if i < j {
            re.swap(i, j);
            im.swap(i, j);
        }
    }
    let (cos, sin): (Vec<f64>, Vec<f64>) =
        (0..n / 2).map(|k| math::TAU * k as f64 / n as f64).map(|w| (math::cos(w), -math::sin(w))).unzip();
    let mut half = 1;
    while half < n {
        let stride = n / (2 * half);
        for start in (0..n).step_by(2 * half) {
            for k in 0..half {
                let (a, b) = (start + k, start + k + half);
                let (c, s) = (cos[k * stride], sin[k * stride]);
                let (tr, ti) = (re[b] * c - im[b] * s, re[b] * s + im[b] * c);
                (re[b], im[b]) = (re[a] - tr, im[a] - ti);
                (re[a], im[a]) = (re[a] + tr, im[a] + ti);
            }
        }
        half *= 2;
    }
    true
}

/// One-sided power spectral density.
#[derive(Clone, Debug, PartialEq)]
pub struct Density {
    /// Step between the frequencies, in Hz; the first is 0.
    pub step_hz: f64,
    /// Power a hertz, in the square of the signal's unit over Hz.
    pub power: Vec<f64>,
}

impl Density {
    /// Power between two frequencies, by trapezoids between the bins and straight lines to the edges.
    pub fn band(&self, low_hz: f64, high_hz: f64) -> f64 {
        let at = |hz: f64| super::resample::linear(&self.power, hz / self.step_hz);
        let top = self.step_hz * self.power.len().saturating_sub(1) as f64;
        let (low, high) = (low_hz.max(0.0), high_hz.min(top));
        if high <= low {
            return 0.0;
        }
        let mut edges = vec![low];
        let (a, b) = ((low / self.step_hz) as usize + 1, (high / self.step_hz).ceil() as usize);
        edges.extend((a..b).map(|k| k as f64 * self.step_hz));
        edges.push(high);
        edges.windows(2).map(|e| 0.5 * (e[1] - e[0]) * (at(e[0]) + at(e[1]))).sum()
    }
}

/// Welch's spectrum (Welch 1967, IEEE Trans. Audio Electroacoust. 15:70): segments of `segment` samples overlapping by
/// half, each without its mean, under a Hann window, padded with zeros to a power of two of at least `segment`. A
/// record shorter than a segment is one segment.
pub fn welch(x: &[f64], rate_hz: f64, segment: usize) -> Density {
    let segment = segment.clamp(1, x.len().max(1));
    let size = segment.next_power_of_two().max(2);
    let window: Vec<f64> =
        (0..segment).map(|i| 0.5 - 0.5 * math::cos(math::TAU * i as f64 / segment as f64)).collect();
    let scale = 1.0 / (rate_hz * window.iter().map(|w| w * w).sum::<f64>().max(f64::MIN_POSITIVE));
    let mut power = vec![0.0; size / 2 + 1];
    let (mut re, mut im) = (vec![0.0; size], vec![0.0; size]);
    let mut count = 0.0;
    let mut start = 0;
    while start + segment <= x.len() {
        let run = &x[start..start + segment];
        let mean = run.iter().sum::<f64>() / segment as f64;
        re.fill(0.0);
        im.fill(0.0);
        for ((r, v), w) in re.iter_mut().zip(run).zip(&window) {
            *r = (v - mean) * w;
        }
        forward(&mut re, &mut im);
        for (k, p) in power.iter_mut().enumerate() {
            let sides = if k == 0 || k == size / 2 { 1.0 } else { 2.0 };
            *p += sides * scale * (re[k] * re[k] + im[k] * im[k]);
        }
        count += 1.0;
        start += (segment / 2).max(1);
    }
    if count > 0.0 {
        power.iter_mut().for_each(|p| *p /= count);
    }
    Density { step_hz: rate_hz / size as f64, power }
}
