//! Mirrors `src/measure/variability.rs`. Outside values: NeuroKit2 0.2.13 and SciPy 1.17.1 on the same beats.

use dicrotic::math::{TAU, sin};
use dicrotic::measure::variability::{
    VariabilityError, frequency_domain, intervals, mean_rates, time_domain,
};

/// 401 beats over 339 s: 850 ms with 40 ms at 0.1 Hz, 30 ms at 0.25 Hz and noise up to 20 ms from a linear congruential
/// generator, rounded to milliseconds. Python made the same for the outside values.
fn beats() -> Vec<f64> {
    let mut t = vec![0.0];
    let mut s: u64 = 12_345;
    for i in 0..400 {
        s = (1_103_515_245 * s + 12_345) % (1 << 31);
        let noise = s as f64 / f64::from(1u32 << 31) - 0.5;
        let ms = 850.0 + 40.0 * sin(TAU * 0.1 * t[i]) + 30.0 * sin(TAU * 0.25 * t[i]) + 40.0 * noise;
        t.push(((t[i] + ms / 1000.0) * 1000.0).round() / 1000.0);
    }
    t
}

fn close(found: f64, expected: f64, part: f64, what: &str) {
    assert!((found / expected - 1.0).abs() <= part, "{what}: {found} for {expected}");
}

#[test]
fn three_rates_of_a_regular_heart() {
    // 75 bpm, a beat on the window's start: 13 beats in 10 s, of 12 intervals of 0.8 s.
    let t: Vec<f64> = (0..100).map(|i| 0.8 * f64::from(i)).collect();
    let r = mean_rates(&t, 8.0, 18.0).unwrap();
    // HR = 60 N / T, 60 n / dt (arithmetic): counting from one on a beat reads high by up to 60 / T = 6 bpm.
    assert!((r.count_bpm - 78.0).abs() < 1e-9, "{r:?}");
    assert!((r.interval_bpm - 75.0).abs() < 1e-9 && (r.instantaneous_bpm - 75.0).abs() < 1e-9, "{r:?}");
    assert_eq!(mean_rates(&t, 8.1, 8.9), Err(VariabilityError::TooFewIntervals { needed: 1, found: 0 }));
}

#[test]
fn mean_of_rates_exceeds_rate_of_means_by_the_variance() {
    let t = beats();
    let r = mean_rates(&t, 0.0, 1000.0).unwrap();
    let v = time_domain(&intervals(&t).unwrap()).unwrap();
    // Mean of 60 / RR is above 60 / mean(RR) by about HR (SD / mean)^2: the second term of the Taylor series.
    let expected = r.interval_bpm * (v.sdnn_ms / v.mean_ms) * (v.sdnn_ms / v.mean_ms);
    close(r.instantaneous_bpm - r.interval_bpm, expected, 0.05, "bias");
}

#[test]
fn time_domain_agrees_with_neurokit() {
    let v = time_domain(&intervals(&beats()).unwrap()).unwrap();
    assert_eq!((v.count, v.left_out), (400, 0));
    // neurokit2.hrv_time 0.2.13: MeanNN 848.2525, SDNN 37.8419, RMSSD 34.832, pNN50 14.25.
    close(v.mean_ms, 848.2525, 1e-6, "mean");
    close(v.sdnn_ms, 37.8419, 1e-5, "SDNN");
    close(v.rmssd_ms, 34.832, 1e-4, "RMSSD");
    close(v.pnn50_percent, 14.25, 1e-9, "pNN50");
}

#[test]
fn frequency_domain_agrees_with_scipy_and_neurokit() {
    let v = frequency_domain(&intervals(&beats()).unwrap()).unwrap();
    // scipy: CubicSpline(natural) at 4 Hz, detrend, welch(nperseg=480, nfft=512), trapezoids over the bands.
    close(v.lf_ms2, 891.4297369171179, 1e-6, "LF");
    close(v.hf_ms2, 509.7124437736634, 1e-6, "HF");
    close(v.lf_hf, 1.7488875302266609, 1e-6, "LF/HF");
    // neurokit2.hrv_frequency 0.2.13, not normalised, its own interpolation and windows: 873.1, 497.4, 1.755.
    close(v.lf_ms2, 873.06889, 0.05, "LF");
    close(v.hf_ms2, 497.39028, 0.05, "HF");
    close(v.lf_hf, 1.7553, 0.02, "LF/HF");
    // By construction amplitude^2 / 2: 800 and 450 ms^2, and the noise on top.
    assert!(v.lf_ms2 > 800.0 && v.lf_ms2 < 1000.0 && v.hf_ms2 > 450.0 && v.hf_ms2 < 600.0, "{v:?}");
}

#[test]
fn an_early_or_missed_beat_does_not_swell_the_variability() {
    let plain = time_domain(&intervals(&beats()).unwrap()).unwrap();
    let mut t = beats();
    t[100] -= 0.3;
    t.remove(200);
    t.insert(300, t[299] + 0.35);
    let series = intervals(&t).unwrap();
    let v = time_domain(&series).unwrap();
    assert_eq!(v.left_out, 5, "two about the early beat, one for the missed, two for the extra");
    close(v.sdnn_ms, plain.sdnn_ms, 0.02, "SDNN");
    close(v.rmssd_ms, plain.rmssd_ms, 0.03, "RMSSD");
    close(frequency_domain(&series).unwrap().lf_hf, 1.7489, 0.1, "LF/HF");
}

#[test]
fn the_series_is_the_rate_at_each_beat() {
    let series = intervals(&[1.0, 1.5, 2.5]).unwrap();
    assert_eq!(
        series.iter().map(|i| (i.end_s, i.ms, i.bpm)).collect::<Vec<_>>(),
        [(1.5, 500.0, 120.0), (2.5, 1000.0, 60.0)]
    );
    assert!(intervals(&[]).unwrap().is_empty());
}

#[test]
fn too_little_is_said_and_not_made_up() {
    let t = beats();
    let few = intervals(&t[..3]).unwrap();
    assert_eq!(time_domain(&few), Err(VariabilityError::TooFewIntervals { needed: 3, found: 1 }));
    let short = frequency_domain(&intervals(&t[..100]).unwrap());
    assert!(matches!(short, Err(VariabilityError::TooShort { needed_s: 120.0, found_s }) if found_s < 90.0));
    assert_eq!(intervals(&[1.0, 2.0, 2.0]), Err(VariabilityError::NotRising { beat: 3 }));
    assert_eq!(intervals(&[1.0, f64::NAN, 2.0]), Err(VariabilityError::NotRising { beat: 2 }));
    let json = serde_json::to_value(VariabilityError::TooShort { needed_s: 120.0, found_s: 7.0 }).unwrap();
    assert_eq!(json, serde_json::json!({"code": "too_short", "args": {"needed_s": 120.0, "found_s": 7.0}}));
}
