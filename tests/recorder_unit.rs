//! The recorder's stages together: folding at slow sampling, the filter before the converter, zero, polarity, changes.

use dicrotic::math;
use dicrotic::recorder::device::delay_s;
use dicrotic::recorder::settings::{Change, RATES_HZ};
use dicrotic::recorder::{Recorder, Settings};

/// Half a minute of a sine of `hz` and 0.5 V through a recorder, V.
fn through(settings: Settings, hz: f64) -> Vec<f64> {
    let rate = settings.analogue_rate_hz();
    let range = settings.range_v;
    let mut recorder = Recorder::new(settings).unwrap();
    let mut out = Vec::new();
    let steps = (30.0 * rate) as usize;
    let mut block: Vec<f64> =
        (0..steps).map(|k| 0.5 * math::sin(math::TAU * hz * k as f64 / rate + 0.3)).collect();
    recorder.run(&mut block, &mut out);
    out.iter().map(|c| f64::from(*c) * range / 32768.0).collect()
}

fn plain(rate_hz: u32) -> Settings {
    Settings { rate_hz, range_v: 1.0, anti_alias: false, ..Settings::default() }
}

/// Amplitude of the wave of `hz` in samples at `rate`.
fn line(values: &[f64], hz: f64, rate: f64) -> f64 {
    let (c, s) = values.iter().enumerate().fold((0.0, 0.0), |(c, s), (k, v)| {
        let angle = math::TAU * hz * k as f64 / rate;
        (c + v * math::cos(angle), s + v * math::sin(angle))
    });
    2.0 * math::hypot(c, s) / values.len() as f64
}

#[test]
fn power_line_folds_to_where_the_sampling_theorem_says() {
    // |f - round(f / fs) fs| (sampling theorem; any signal-processing text). At 49 Hz, 50 Hz becomes 1 Hz: 60 a minute.
    for rate_hz in RATES_HZ {
        let rate = f64::from(rate_hz);
        for power_line in [50.0, 60.0] {
            let folded = (power_line - (power_line / rate).round() * rate).abs();
            let values = through(plain(rate_hz), power_line);
            if folded == 0.0 || (folded - rate / 2.0).abs() < 1e-9 {
                // At a whole multiple it stands still; at half the rate its size depends on the phase.
                continue;
            }
            let found = line(&values, folded, rate);
            assert!((found - 0.5).abs() < 0.01, "{power_line} Hz at {rate_hz} Hz: {found} V at {folded} Hz");
        }
    }
    let still = through(plain(50), 50.0);
    assert!(still.iter().all(|v| (v - still[0]).abs() < 1e-3));
}

#[test]
fn the_filter_before_the_converter_keeps_most_of_it_out() {
    let settings = Settings { anti_alias: true, ..plain(49) };
    assert!(line(&through(settings, 50.0), 1.0, 49.0) < 0.06);
    // And behind the converter it is too late: a notch of 50 Hz does not exist at 49 samples a second.
    let notched = Settings { notch_hz: Some(50.0), ..plain(49) };
    assert!(line(&through(notched, 50.0), 1.0, 49.0) > 0.45);
}

#[test]
fn zero_brings_the_level_to_the_middle_and_polarity_turns_it_over() {
    let mut recorder = Recorder::new(Settings { range_v: 1.0, ..Settings::default() }).unwrap();
    let run = |recorder: &mut Recorder| {
        let (mut block, mut out) = (vec![0.4; 8000], Vec::new());
        recorder.run(&mut block, &mut out);
        f64::from(out[out.len() - 1]) / 32768.0
    };
    assert!((run(&mut recorder) - 0.4).abs() < 1e-3);
    recorder.change(&Change::Invert { on: true }).unwrap();
    assert!((run(&mut recorder) + 0.4).abs() < 1e-3);
    recorder.change(&Change::Zero {}).unwrap();
    assert!(run(&mut recorder).abs() < 2e-3);
    recorder.change(&Change::ZeroClear {}).unwrap();
    assert!((run(&mut recorder) + 0.4).abs() < 1e-3);
}

#[test]
fn impossible_values_are_refused_with_their_name() {
    let mut recorder = Recorder::new(Settings::default()).unwrap();
    let before = recorder.clone();
    for (change, field) in [
        (Change::Range { v: 0.3 }, "range_v"),
        (Change::Range { v: f64::NAN }, "range_v"),
        (Change::Rate { hz: 48 }, "rate_hz"),
        (Change::Bits { n: 10 }, "bits"),
        (Change::Input { n: 0 }, "input"),
        (Change::LowPass { hz: Some(4.0), order: None }, "low_pass_hz"),
        (Change::HighPass { hz: Some(0.1), order: Some(3) }, "high_pass_order"),
        (Change::Notch { hz: Some(55.0) }, "notch_hz"),
        (Change::Average { ms: Some(-1.0) }, "average_ms"),
        (Change::Scale { by: 0.0 }, "scale"),
    ] {
        assert_eq!(recorder.change(&change).unwrap_err().field, field);
        assert!(recorder == before, "{change:?} left something behind");
    }
}

#[test]
fn the_low_pass_shows_the_pulse_late_as_the_table_says() {
    // Second-order Butterworth, phase delay near the pulse's fundamental: about 221 ms at 1 Hz, 49 at 5, 24 at 10
    // (worked from the transfer function; the design's table measures peaks, which lie within a few ms).
    for (hz, ms) in [(10.0, 23.0), (5.0, 46.0)] {
        let delay = delay_s(&Settings { low_pass_hz: Some(hz), ..Settings::default() }, 1.2) * 1e3;
        assert!((delay - ms).abs() < 3.0, "{hz} Hz: {delay} ms");
    }
    assert_eq!(delay_s(&Settings::default(), 1.2), 0.0);
    assert!(delay_s(&Settings { high_pass_hz: Some(0.5), ..Settings::default() }, 1.2) < 0.0);
}
