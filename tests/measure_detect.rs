//! Mirrors `src/measure/detect`. Scores on recordings of real fingers are made by `tests/reference/detector.py`.

mod pulses;

use dicrotic::measure::detect::{Options, Polarity, detect, detect_with};
use dicrotic::rng::Stream;
use pulses::{EXCELLENT, NOTCH, STRONG_SECOND, Shape, add_noise, add_sine, pulse, regular, rhythm, score};

const SECONDS: f64 = 60.0;

/// Asserts that all beats are found and nothing else.
fn all_found(case: &str, x: &[f64], starts: &[f64], rate_hz: f64) {
    at_least(1.0, case, x, starts, rate_hz);
}

fn at_least(share: f64, case: &str, x: &[f64], starts: &[f64], rate_hz: f64) {
    let (sensitivity, predictivity) = score(starts, &detect(x, rate_hz), SECONDS);
    assert!(
        sensitivity >= share && predictivity >= share,
        "{case}: found {sensitivity:.3} of the beats, {predictivity:.3} of what was found are beats"
    );
}

#[test]
fn every_beat_at_every_sampling_rate() {
    for rate in [20.0, 25.0, 49.0, 50.0, 59.0, 100.0, 125.0, 199.0, 250.0, 1000.0, 4000.0] {
        for (name, shape) in [("excellent", EXCELLENT), ("notch", NOTCH), ("strong second", STRONG_SECOND)] {
            let (x, starts) = regular(72.0, &shape, rate, SECONDS);
            all_found(&format!("{name} at {rate} Hz"), &x, &starts, rate);
        }
    }
}

#[test]
fn every_beat_from_the_slowest_to_the_fastest_heart() {
    for bpm in [32.0, 40.0, 50.0, 60.0, 75.0, 90.0, 110.0, 130.0, 150.0, 180.0, 200.0, 215.0] {
        let (x, starts) = regular(bpm, &EXCELLENT, 100.0, SECONDS);
        all_found(&format!("{bpm} bpm"), &x, &starts, 100.0);
    }
}

#[test]
fn the_size_and_place_of_the_trace_do_not_matter() {
    let (x, _) = regular(72.0, &NOTCH, 200.0, SECONDS);
    let plain = detect(&x, 200.0);
    for (gain, offset) in [(1e-6, 0.0), (0.02, -3.0), (1e4, 1e6)] {
        let other: Vec<f64> = x.iter().map(|v| gain * v + offset).collect();
        let found = detect(&other, 200.0);
        assert_eq!(found.len(), plain.len(), "gain {gain}, offset {offset}");
        for (a, b) in found.iter().zip(&plain) {
            assert!((a - b).abs() < 1e-5, "gain {gain}, offset {offset}: {a} for {b}");
        }
    }
}

#[test]
fn peaks_are_where_the_trace_is_highest() {
    for rate in [50.0, 100.0, 1000.0] {
        let (x, _) = regular(72.0, &EXCELLENT, rate, SECONDS);
        let (fine, _) = regular(72.0, &EXCELLENT, 4000.0, SECONDS);
        for t in detect(&x, rate).into_iter().filter(|t| (1.0..SECONDS - 1.0).contains(t)) {
            let (from, to) = (((t - 0.2) * 4000.0) as usize, ((t + 0.2) * 4000.0) as usize);
            let top = (from..to).max_by(|a, b| fine[*a].total_cmp(&fine[*b])).unwrap() as f64 / 4000.0;
            // 5 ms is a quarter of a sample at 50 Hz: the parabola through the samples does better than they do.
            assert!((t - top).abs() < 0.005, "{rate} Hz: {t} for {top}");
        }
    }
}

#[test]
fn breath_hum_and_noise_larger_than_the_pulse() {
    let rate = 250.0;
    let (x, starts) = regular(80.0, &NOTCH, rate, SECONDS);
    let with = |add: &dyn Fn(&mut Vec<f64>)| {
        let mut y = x.clone();
        add(&mut y);
        y
    };
    all_found("50 Hz at three times the pulse", &with(&|y| add_sine(y, rate, 50.03, 3.0)), &starts, rate);
    all_found("60 Hz at three times the pulse", &with(&|y| add_sine(y, rate, 59.98, 3.0)), &starts, rate);
    all_found("breath at twice the pulse", &with(&|y| add_sine(y, rate, 0.25, 2.0)), &starts, rate);
    // Four beats to a breath: the beat itself must not be taken for a part of the larger wave.
    all_found("breath of four beats", &with(&|y| add_sine(y, rate, 80.0 / 240.0, 1.5)), &starts, rate);
    all_found("noise of a quarter", &with(&|y| add_noise(y, 0.25, 1)), &starts, rate);
    all_found(
        "drift",
        &with(&|y| y.iter_mut().enumerate().for_each(|(i, v)| *v += 1e-3 * i as f64)),
        &starts,
        rate,
    );
}

#[test]
fn coarse_steps_still_hold_the_beats() {
    let (mut x, starts) = regular(66.0, &NOTCH, 200.0, SECONDS);
    // Three levels over the pulse: range far too large.
    x.iter_mut().for_each(|v| *v = (3.0 * *v).round());
    all_found("three levels", &x, &starts, 200.0);
    let (mut x, starts) = regular(66.0, &NOTCH, 200.0, SECONDS);
    // Cut off at half of the height: range far too small.
    x.iter_mut().for_each(|v| *v = v.min(0.5));
    all_found("clipped at half height", &x, &starts, 200.0);
}

#[test]
fn premature_beats_fading_and_irregular_hearts() {
    let rate = 100.0;
    let mut starts = rhythm(70.0, 0.03, SECONDS);
    let mut heights = vec![1.0; starts.len()];
    // Every ninth beat comes early by a third and is small; the pause after it is long.
    for i in (6..starts.len() - 1).step_by(9) {
        starts[i] -= 0.33 * (starts[i] - starts[i - 1]);
        heights[i] = 0.45;
        heights[i + 1] = 1.1;
    }
    let x = pulse(&starts, &heights, &NOTCH, rate, SECONDS);
    all_found("premature", &x, &starts, rate);

    let starts = rhythm(70.0, 0.03, SECONDS);
    // A deep gasp takes four fifths of the pulse within a few beats.
    let dip = |t: f64| {
        1.0 - 0.8 * ((t - 25.0) / 4.0).max(0.0) * dicrotic::math::exp(1.0 - ((t - 25.0) / 4.0).max(0.0))
    };
    let heights: Vec<f64> = starts.iter().map(|t| dip(*t)).collect();
    all_found("gasp", &pulse(&starts, &heights, &NOTCH, rate, SECONDS), &starts, rate);

    let mut stream = Stream::new(5, "irregular");
    let mut starts = vec![-1.0];
    while starts[starts.len() - 1] < SECONDS + 2.0 {
        starts.push(
            starts[starts.len() - 1] + 0.75 * dicrotic::math::exp(0.18 * stream.normal().clamp(-2.5, 2.5)),
        );
    }
    let heights = vec![1.0; starts.len()];
    at_least(0.97, "irregular", &pulse(&starts, &heights, &EXCELLENT, rate, SECONDS), &starts, rate);
}

#[test]
fn knocks_cost_few_beats_and_none_after_them() {
    let rate = 100.0;
    let (mut x, starts) = regular(75.0, &NOTCH, rate, SECONDS);
    for k in 0..6 {
        let from = 500 + 900 * k;
        // A tenth of a second at fifteen times the pulse, up and down in turn.
        x[from..from + 10].iter_mut().for_each(|v| *v += if k % 2 == 0 { 15.0 } else { -15.0 });
    }
    at_least(0.9, "six knocks", &x, &starts, rate);
}

#[test]
fn silence_holds_no_beats() {
    let rate = 100.0;
    let (mut x, starts) = regular(75.0, &NOTCH, rate, SECONDS);
    let held = x[2000];
    x[2000..3000].iter_mut().for_each(|v| *v = held);
    let found = detect(&x, rate);
    let inside = found.iter().filter(|t| (21.0..29.0).contains(*t)).count();
    assert_eq!(inside, 0, "beats in a flat stretch");
    let kept: Vec<f64> = starts.iter().copied().filter(|s| !(19.0..30.5).contains(s)).collect();
    assert!(score(&kept, &found, SECONDS).0 == 1.0);
}

#[test]
fn polarity_can_be_told_or_found() {
    for shape in [EXCELLENT, NOTCH] {
        let (x, _) = regular(72.0, &shape, 100.0, SECONDS);
        let down: Vec<f64> = x.iter().map(|v| -v).collect();
        let up = detect(&x, 100.0);
        for polarity in [Polarity::Down, Polarity::Auto] {
            let found = detect_with(&down, 100.0, &Options { polarity });
            assert_eq!(found.len(), up.len(), "{polarity:?}");
            for (a, b) in found.iter().zip(&up) {
                assert!((a - b).abs() < 1e-3, "{polarity:?}: {a} for {b}");
            }
        }
        assert_eq!(detect_with(&x, 100.0, &Options { polarity: Polarity::Auto }), up);
    }
}

#[test]
fn odd_input_gives_nothing_or_beats_but_no_panic() {
    let (x, _) = regular(72.0, &NOTCH, 100.0, SECONDS);
    assert!(detect(&[], 100.0).is_empty());
    assert!(detect(&x[..150], 100.0).is_empty(), "a second and a half");
    assert!(detect(&vec![3.3; 6000], 100.0).is_empty(), "flat");
    assert!(detect(&vec![f64::NAN; 6000], 100.0).is_empty(), "not a number");
    for rate in [f64::NAN, 0.0, -100.0, f64::INFINITY, 1.0] {
        assert!(detect(&x, rate).is_empty(), "rate {rate}");
    }
    // A few lost samples cost nothing.
    let mut holes = x.clone();
    (100..6000).step_by(777).for_each(|i| holes[i] = f64::NAN);
    holes[0] = f64::INFINITY;
    assert_eq!(detect(&holes, 100.0).len(), detect(&x, 100.0).len());
    // Numbers at the edge of what a double holds, every short length, and rates that divide nothing.
    let huge: Vec<f64> = x.iter().map(|v| v * 1e300).collect();
    let mut found = 0;
    for n in [200, 201, 202, 203, 250, 301, 5999] {
        for rate in [8.0, 9.7, 33.3, 99.99, 100.0, 100.01] {
            found += detect(&x[..n], rate).len() + detect(&huge[..n], rate).len();
        }
    }
    assert!(found > 100, "{found}");
}

#[test]
fn the_same_samples_give_the_same_bits() {
    let (mut x, _) = regular(72.0, &STRONG_SECOND as &Shape, 333.0, SECONDS);
    add_noise(&mut x, 0.2, 7);
    let bits = |found: Vec<f64>| found.into_iter().map(f64::to_bits).collect::<Vec<_>>();
    assert_eq!(bits(detect(&x, 333.0)), bits(detect(&x, 333.0)));
    let hash = bits(detect(&x, 333.0)).iter().fold(0u64, |h, b| dicrotic::rng::mix(h ^ b));
    println!("hash of the beat times: {hash:016x}");
}
