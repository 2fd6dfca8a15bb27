//! What the tests of the physiology share: running a body, and statistics of intervals.
#![allow(dead_code, reason = "each test file uses a part")]

use dicrotic::math;
use dicrotic::physiology::{Body, Subject, SubjectSpec};

/// A perfectly still subject of 25 years at 60 beats/min, all else drawn.
pub fn still() -> SubjectSpec {
    SubjectSpec {
        age_years: Some(25.0),
        rest_rate_bpm: Some(60.0),
        restlessness: Some(0.0),
        ..SubjectSpec::default()
    }
}

/// A body drawn from `spec`.
pub fn body(spec: &SubjectSpec, seed: u64, rate_hz: f64) -> Body {
    spec.check().expect("a subject that can be");
    Body::new(Subject::draw(spec, seed), seed, rate_hz)
}

/// Runs for a number of samples and gives pulse and baseline.
pub fn run(body: &mut Body, samples: usize) -> (Vec<f64>, Vec<f64>) {
    let (mut pulse, mut breath) = (vec![0.0; samples], vec![0.0; samples]);
    body.fill(&mut pulse, &mut breath);
    (pulse, breath)
}

/// Peak times and the intervals that end there, of the beats from `from_s` to `to_s`.
pub fn intervals(body: &Body, from_s: f64, to_s: f64) -> Vec<(f64, f64)> {
    let beats = body.beats().iter().skip(1).filter(|b| b.peak_s >= from_s && b.peak_s < to_s);
    beats.map(|b| (b.peak_s, b.interval_s)).collect()
}

/// Mean rate of the beats from `from_s` to `to_s`, beats/min: 60 over the mean interval.
pub fn rate_bpm(body: &Body, from_s: f64, to_s: f64) -> f64 {
    60.0 / mean(&intervals(body, from_s, to_s).iter().map(|x| x.1).collect::<Vec<_>>())
}

/// Arithmetic mean.
pub fn mean(x: &[f64]) -> f64 {
    x.iter().sum::<f64>() / x.len() as f64
}

/// Standard deviation.
pub fn sd(x: &[f64]) -> f64 {
    let m = mean(x);
    (x.iter().map(|v| (v - m) * (v - m)).sum::<f64>() / x.len() as f64).sqrt()
}

/// Root mean square of successive differences.
pub fn rmssd(x: &[f64]) -> f64 {
    (x.windows(2).map(|w| (w[1] - w[0]) * (w[1] - w[0])).sum::<f64>() / (x.len() - 1) as f64).sqrt()
}

/// Power spectral density of intervals (unit of the intervals squared per hertz) by averaged periodograms of the
/// tachogram, in segments of 256 beats with a Hann window: frequencies and densities up to half the mean rate. A
/// tachogram needs no interpolation, which would weaken the upper band (Task Force 1996 allows both).
pub fn spectrum(intervals: &[(f64, f64)]) -> (Vec<f64>, Vec<f64>) {
    const N: usize = 256;
    let even: Vec<f64> = intervals.iter().map(|r| r.1).collect();
    let hz = 1.0 / mean(&even);
    let window: Vec<f64> = (0..N).map(|i| 0.5 - 0.5 * math::cos(math::TAU * i as f64 / N as f64)).collect();
    let power = window.iter().map(|w| w * w).sum::<f64>() * hz;
    let bins = N / 2;
    let mut density = vec![0.0; bins];
    let segments: Vec<&[f64]> = even.windows(N).step_by(N / 2).collect();
    for segment in &segments {
        let m = mean(segment);
        for (j, d) in density.iter_mut().enumerate() {
            let (mut re, mut im) = (0.0, 0.0);
            let step = math::TAU * j as f64 / N as f64;
            let (c, s) = (math::cos(step), math::sin(step));
            let (mut x, mut y) = (1.0, 0.0);
            for (v, w) in segment.iter().zip(&window) {
                re += (v - m) * w * x;
                im -= (v - m) * w * y;
                (x, y) = (x * c - y * s, x * s + y * c);
            }
            *d += 2.0 * (re * re + im * im) / power / segments.len() as f64;
        }
    }
    ((0..bins).map(|j| j as f64 * hz / N as f64).collect(), density)
}

/// Power between two frequencies.
pub fn band(spectrum: &(Vec<f64>, Vec<f64>), low_hz: f64, high_hz: f64) -> f64 {
    let step = spectrum.0[1] - spectrum.0[0];
    spectrum
        .0
        .iter()
        .zip(&spectrum.1)
        .filter(|(f, _)| **f >= low_hz && **f < high_hz)
        .map(|(_, d)| d * step)
        .sum()
}

/// Frequency of the highest density between two frequencies.
pub fn top(spectrum: &(Vec<f64>, Vec<f64>), low_hz: f64, high_hz: f64) -> f64 {
    let inside = spectrum.0.iter().zip(&spectrum.1).filter(|(f, _)| **f >= low_hz && **f < high_hz);
    *inside.max_by(|a, b| a.1.total_cmp(b.1)).expect("a band").0
}
