//! Mirrors `src/dsp`. Outside values: SciPy 1.17.1 and NumPy 2.2.0, as named beside each.

use dicrotic::dsp::section::{BUTTERWORTH_2, BUTTERWORTH_4, Section};
use dicrotic::dsp::{fft, resample, zero_phase};
use dicrotic::math::{TAU, cos, sin};
use std::f64::consts::FRAC_1_SQRT_2;

/// Pseudo-random numbers that Python makes alike: a linear congruential generator, -0.5 to 0.5.
fn lcg(seed: u64, count: usize) -> Vec<f64> {
    let mut s = seed;
    (0..count)
        .map(|_| {
            s = (1_103_515_245 * s + 12_345) % (1 << 31);
            s as f64 / f64::from(1u32 << 31) - 0.5
        })
        .collect()
}

fn close(found: f64, expected: f64, part: f64, what: &str) {
    assert!((found - expected).abs() <= part * expected.abs().max(1e-12), "{what}: {found} for {expected}");
}

#[test]
fn two_records_filtered_at_once_come_out_as_each_alone() {
    let high = [Section::high_pass(0.5, 100.0, BUTTERWORTH_2)];
    let low = BUTTERWORTH_4.map(|q| Section::low_pass(15.0, 100.0, q));
    for n in [0, 1, 2, 3, 50, 101, 1000] {
        for (x_pad, y_pad) in [(0, 0), (100, 200), (200, 100), (7, 0)] {
            let (x, y) = (lcg(5, n), lcg(6, n));
            let (mut both_x, mut both_y) = (x.clone(), y.clone());
            zero_phase::filter_both((&high, &mut both_x, x_pad), (&low, &mut both_y, y_pad));
            let (mut alone_x, mut alone_y) = (x.clone(), y.clone());
            zero_phase::filter(&high, &mut alone_x, x_pad);
            zero_phase::filter(&low, &mut alone_y, y_pad);
            assert_eq!((both_x, both_y), (alone_x, alone_y), "{n} samples, {x_pad} and {y_pad} about them");
        }
    }
}

#[test]
fn butterworth_sections_have_the_magnitudes_of_scipy() {
    // scipy.signal.butter(n, fc, kind, fs=fs, output="sos") through sosfreqz at these frequencies.
    let hz = [0.2, 0.5, 1.0, 4.0, 8.0, 15.0, 30.0, 49.0];
    let low = [
        0.9999998207,
        0.9999929935,
        0.9998878025,
        0.9719257469,
        FRAC_1_SQRT_2,
        0.2461172304,
        0.03477776799,
        6.510704523e-05,
    ];
    let high = [
        0.1579692157,
        FRAC_1_SQRT_2,
        0.9701706571,
        0.9998804644,
        0.9999929935,
        0.9999995482,
        0.9999999915,
        1.0,
    ];
    let fourth =
        [1.0, 1.0, 0.9999999998, 0.9999883011, 0.9969576208, FRAC_1_SQRT_2, 0.05380920143, 0.005284465985];
    for (i, f) in hz.iter().enumerate() {
        close(Section::low_pass(8.0, 100.0, BUTTERWORTH_2).gain(*f, 100.0), low[i], 1e-6, "low-pass");
        close(Section::high_pass(0.5, 100.0, BUTTERWORTH_2).gain(*f, 100.0), high[i], 1e-6, "high-pass");
        let gain: f64 =
            BUTTERWORTH_4.iter().map(|q| Section::low_pass(15.0, 250.0, *q).gain(*f, 250.0)).product();
        close(gain, fourth[i], 1e-6, "fourth order");
    }
}

#[test]
fn forward_and_backward_is_scipys_sosfiltfilt() {
    // scipy.signal.sosfiltfilt(butter(2, 8, fs=100), sin(2 pi 3 t) + t^2, padtype="odd", padlen=100), samples 0, 10, ...
    let expected = [1.2490009027e-16, 0.943887319618, 0.249999999995, 1.0, 2.24999999947, 3.77271868541];
    let mut x: Vec<f64> =
        (0..200).map(|i| f64::from(i) / 100.0).map(|t| sin(TAU * 3.0 * t) + t * t).collect();
    zero_phase::filter(&[Section::low_pass(8.0, 100.0, BUTTERWORTH_2)], &mut x, 100);
    for (i, e) in [0, 10, 50, 100, 150, 199].into_iter().zip(expected) {
        assert!((x[i] - e).abs() < 1e-9, "sample {i}: {} for {e}", x[i]);
    }
    // A constant is kept whatever the length, and nothing too short is touched.
    for n in 0..6 {
        let mut x = vec![4.0; n];
        zero_phase::filter(&[Section::low_pass(8.0, 100.0, BUTTERWORTH_2)], &mut x, 50);
        assert!(x.iter().all(|v| (v - 4.0).abs() < 1e-12), "{n} samples: {x:?}");
    }
}

#[test]
fn the_fast_transform_is_the_slow_one() {
    for n in [1usize, 2, 4, 8, 64, 512] {
        let (re, im) = (lcg(3, n), lcg(4, n));
        let (mut a, mut b) = (re.clone(), im.clone());
        assert!(fft::forward(&mut a, &mut b));
        for k in 0..n {
            let term = |i: usize| {
                let w = -TAU * (k * i % n) as f64 / n as f64;
                (re[i] * cos(w) - im[i] * sin(w), re[i] * sin(w) + im[i] * cos(w))
            };
            let (r, i) = (0..n).map(term).fold((0.0, 0.0), |s, t| (s.0 + t.0, s.1 + t.1));
            assert!((a[k] - r).abs() < 1e-10 && (b[k] - i).abs() < 1e-10, "{n}: bin {k}");
        }
    }
    let mut odd = [1.0, 2.0, 3.0];
    assert!(!fft::forward(&mut odd, &mut [0.0; 3]));
    assert_eq!(odd, [1.0, 2.0, 3.0]);
}

#[test]
fn welchs_spectrum_is_scipys() {
    let x: Vec<f64> =
        lcg(1, 2000).iter().enumerate().map(|(i, v)| v + sin(TAU * 0.1 * i as f64 / 4.0)).collect();
    let density = fft::welch(&x, 4.0, 400);
    // scipy.signal.welch(x, 4, nperseg=400, nfft=512, detrend="constant"): bins 0, 1, 13, 100, 256.
    let expected = [0.00639031189871, 0.0316153022393, 32.3450960331, 0.0478580765021, 0.0125284779559];
    assert_eq!(density.step_hz, 0.0078125);
    for (k, e) in [0, 1, 13, 100, 256].into_iter().zip(expected) {
        close(density.power[k], e, 1e-9, "bin");
    }
    // All the power of a sine of amplitude one is one half (Parseval).
    close(density.band(0.05, 0.15), 0.5, 0.01, "band");
    assert_eq!(density.band(0.3, 0.2), 0.0);
    assert_eq!(density.band(5.0, 9.0), 0.0);
}

#[test]
fn splines_and_cubics_go_through_their_points() {
    let (t, y) = ([0.0, 1.0, 1.5, 3.0, 4.2], [1.0, -2.0, 0.5, 4.0, 0.0]);
    let at = [0.0, 0.3, 1.2, 2.7, 4.0, 4.2];
    // scipy.interpolate.CubicSpline(t, y, bc_type="natural")(at)
    let expected = [1.0, -0.659537037, -1.20886772, 4.15466667, 0.86659808, 0.0];
    for (v, e) in resample::spline(&t, &y, &at).iter().zip(expected) {
        assert!((v - e).abs() < 1e-7, "{v} for {e}");
    }
    assert!(resample::spline(&[1.0], &[1.0], &at).is_empty());
    let line: Vec<f64> = (0..9).map(f64::from).collect();
    for at in [0.0, 0.25, 1.0, 4.6, 7.99, 8.0] {
        assert!((resample::linear(&line, at) - at).abs() < 1e-12);
        if (1.0..=7.0).contains(&at) {
            assert!((resample::cubic(&line, at) - at).abs() < 1e-12);
        }
    }
    assert_eq!((resample::linear(&[], 3.0), resample::cubic(&[], 3.0)), (0.0, 0.0));
    assert_eq!((resample::linear(&[2.0], 3.0), resample::cubic(&[2.0], -3.0)), (2.0, 2.0));
}

#[test]
fn lower_rates_keep_slow_waves_and_lose_hum() {
    let wave = |hz: f64| (0..1000).map(|i| cos(TAU * hz * f64::from(i) / 200.0)).collect::<Vec<f64>>();
    let size = |x: &[f64]| x.iter().fold(0.0f64, |m, v| m.max(v.abs()));
    // Halved to 100 Hz: cos^2(pi f / fs) in front.
    let (slow, fast) = (resample::halve(&wave(2.0)), resample::halve(&wave(90.0)));
    assert_eq!(slow.len(), 500);
    close(size(&slow[1..499]), cos(TAU * 0.005) * cos(TAU * 0.005), 1e-3, "2 Hz");
    assert!(size(&fast[1..499]) < 0.026, "90 Hz would alias to 10 Hz: {}", size(&fast[1..499]));
    // Means over four samples have a zero at the new rate.
    assert!(size(&resample::average_down(&wave(50.0), 4)) < 1e-12);
    for n in 0..8 {
        assert_eq!(resample::halve(&vec![1.0; n]), vec![1.0; n.div_ceil(2)], "{n}");
    }
    assert_eq!(resample::held(&[f64::NAN, 1.0, f64::INFINITY, 2.0])[..], [1.0, 1.0, 1.0, 2.0]);
}
