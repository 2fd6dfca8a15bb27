//! Made-up finger pulses whose beats are known, for the tests of `measure`. They are built here from the formula and
//! not from the crate's own generator, as `measure` must not lean on how samples come about.
#![allow(dead_code)] // Each test binary includes the whole file and uses a part of it.

use dicrotic::math::{PI, TAU, exp, sin};
use dicrotic::rng::Stream;

/// Two Gaussians over the phase of a beat, -pi to pi: height, place and width of each.
pub type Shape = [[f64; 3]; 2];

/// "Excellent" beat of Tang et al. 2020 (Sci Rep 10:13883, Table 1).
pub const EXCELLENT: Shape = [[1.0, -1.5161, 0.6303], [0.1999, 0.8186, 1.0225]];
/// A clear notch and second wave (from memory, no source).
pub const NOTCH: Shape = [[1.0, -1.65, 0.52], [0.38, 0.55, 0.62]];
/// A second wave three quarters as high as the first (from memory, no source).
pub const STRONG_SECOND: Shape = [[1.0, -1.65, 0.42], [0.75, 0.45, 0.45]];

/// A pulse one unit high, its beats starting at `starts` (in seconds).
pub fn pulse(starts: &[f64], heights: &[f64], shape: &Shape, rate_hz: f64, seconds: f64) -> Vec<f64> {
    let at = |phase: f64| {
        let wrapped = |[a, place, width]: [f64; 3]| {
            [-TAU, 0.0, TAU]
                .map(|turn| (phase - place + turn) / width)
                .map(|z| a * exp(-0.5 * z * z))
                .iter()
                .sum::<f64>()
        };
        shape.map(wrapped).iter().sum::<f64>()
    };
    let foot = at(-PI);
    let mut beat = 0;
    (0..(seconds * rate_hz) as usize)
        .map(|i| {
            let t = i as f64 / rate_hz;
            while beat + 2 < starts.len() && starts[beat + 1] <= t {
                beat += 1;
            }
            let length = starts[beat + 1] - starts[beat];
            let into = (t - starts[beat]).clamp(0.0, length);
            // The systole keeps its length, about .45 sqrt(RR): the diastole takes up what is left (from memory).
            let systole = 0.45 * length.sqrt();
            let turn = if systole > 0.9 * length {
                into / length
            } else if into < systole {
                0.5 * into / systole
            } else {
                0.5 + 0.5 * (into - systole) / (length - systole)
            };
            heights[beat] * (at(TAU * turn - PI) - foot)
        })
        .collect()
}

/// Starts of beats from a second before zero to two seconds after `seconds`, with respiratory arrhythmia of `breath`
/// (as part of the interval, 15 breaths a minute).
pub fn rhythm(bpm: f64, breath: f64, seconds: f64) -> Vec<f64> {
    let mut starts = vec![-1.0];
    while starts[starts.len() - 1] < seconds + 2.0 {
        let t = starts[starts.len() - 1];
        starts.push(t + 60.0 / bpm * (1.0 + breath * sin(TAU * 0.25 * t)));
    }
    starts
}

/// A regular pulse of `bpm` with shape `shape`, and its beats' starts.
pub fn regular(bpm: f64, shape: &Shape, rate_hz: f64, seconds: f64) -> (Vec<f64>, Vec<f64>) {
    let starts = rhythm(bpm, 0.03, seconds);
    let heights = vec![1.0; starts.len()];
    (pulse(&starts, &heights, shape, rate_hz, seconds), starts)
}

/// Adds nearly normal noise of standard deviation `sd`.
pub fn add_noise(x: &mut [f64], sd: f64, seed: u64) {
    let mut stream = Stream::new(seed, "test noise");
    x.iter_mut().for_each(|v| *v += sd * stream.noise());
}

/// Adds a sine of `pp` peak to peak.
pub fn add_sine(x: &mut [f64], rate_hz: f64, hz: f64, pp: f64) {
    x.iter_mut().enumerate().for_each(|(i, v)| *v += 0.5 * pp * sin(TAU * hz * i as f64 / rate_hz));
}

/// Sensitivity and positive predictive value of `found` against the starts of beats: within 150 ms (Charlton et al.
/// 2022, Physiol. Meas. 43:085007) of the usual delay between both, over all beats more than 0.35 s from the ends.
pub fn score(starts: &[f64], found: &[f64], seconds: f64) -> (f64, f64) {
    let mut delays: Vec<f64> =
        starts.iter().filter_map(|s| found.iter().find(|f| *f >= s).map(|f| f - s)).collect();
    if delays.is_empty() {
        return (0.0, 0.0);
    }
    delays.sort_by(f64::total_cmp);
    let delay = delays[delays.len() / 2];
    let share = |of: &[f64], among: &[f64]| {
        let inside: Vec<f64> = of.iter().copied().filter(|t| (0.35..seconds - 0.35).contains(t)).collect();
        let near = |t: f64| among.iter().any(|a| (a - t).abs() < 0.15);
        inside.iter().filter(|t| near(**t)).count() as f64 / inside.len().max(1) as f64
    };
    let late: Vec<f64> = starts.iter().map(|s| s + delay).collect();
    (share(&late, found), share(found, &late))
}
