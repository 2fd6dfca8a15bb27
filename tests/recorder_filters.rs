//! Filters: corner gains, notch depth, and that blocks, single samples and settled starts agree.

use dicrotic::math;
use dicrotic::recorder::filters::{Average, Memory, Section, average_response};

fn gain(section: &Section, hz: f64, rate: f64) -> f64 {
    let (re, im) = section.response(hz, rate);
    math::hypot(re, im)
}

#[test]
fn butterworth_corners_are_3_db_down() {
    // Definition of a Butterworth filter: gain 1/sqrt 2 at the corner for every order.
    for rate in [1000.0, 4000.0] {
        for hz in [0.5, 5.0, 30.0, 100.0] {
            for order in [1, 2] {
                for section in [Section::low_pass(order, hz, rate), Section::high_pass(order, hz, rate)] {
                    let g = gain(&section, hz, rate);
                    assert!((g - 0.5_f64.sqrt()).abs() < 1e-9, "{order} {hz} {rate}: {g}");
                }
            }
        }
    }
}

#[test]
fn a_first_order_low_pass_of_30_hz_hardly_touches_the_power_line() {
    // First-order magnitude 1/sqrt(1 + (f/fc)^2): -5.8 dB at 50 Hz, -7.0 dB at 60 Hz (any circuits text).
    let section = Section::low_pass(1, 30.0, 4000.0);
    for (hz, expected) in [(50.0, -5.77), (60.0, -6.99)] {
        let db = 20.0 * math::log10(gain(&section, hz, 4000.0));
        assert!((db - expected).abs() < 0.1, "{hz} Hz: {db} dB");
    }
}

#[test]
fn the_notch_takes_its_own_power_line_and_leaves_the_other() {
    let section = Section::notch(60.0, 30.0, 1000.0);
    assert!(gain(&section, 60.0, 1000.0) < 1e-9);
    assert!(gain(&section, 50.0, 1000.0) > 0.98);
    assert!((gain(&section, 1.2, 1000.0) - 1.0).abs() < 1e-3);
}

#[test]
fn a_notch_above_half_the_rate_has_nothing_to_take() {
    assert!(Section::notch(50.0, 30.0, 100.0).passes_all());
    assert!(Section::notch(50.0, 30.0, 49.0).passes_all());
}

#[test]
fn twenty_milliseconds_of_average_null_50_hz() {
    // An average over whole periods of a wave is zero (arithmetic).
    let (re, im) = average_response(20, 50.0, 1000.0);
    assert!(math::hypot(re, im) < 1e-12);
    let (re, im) = average_response(20, 60.0, 1000.0);
    assert!(math::hypot(re, im) > 0.1);
}

#[test]
fn the_running_average_is_the_mean_of_the_last_samples() {
    let input: Vec<i32> = (0..200).map(|k| (k * 7919) % 1000 - 500).collect();
    let mut average = Average::new(17, 0);
    for (k, x) in input.iter().enumerate() {
        let y = average.step(*x);
        if k >= 16 {
            let naive = input[k - 16..=k].iter().sum::<i32>() as f64 / 17.0;
            assert!((y - naive).abs() < 1e-12);
        }
    }
}

#[test]
fn a_sine_comes_out_as_the_response_says() {
    let section = Section::low_pass(2, 10.0, 1000.0);
    let (hz, rate) = (12.0, 1000.0);
    let mut memory = Memory::default();
    let mut peak: f64 = 0.0;
    for k in 0..5000 {
        let y = memory.step(&section, math::sin(math::TAU * hz * f64::from(k) / rate));
        if k > 2000 {
            peak = peak.max(y.abs());
        }
    }
    assert!((peak - gain(&section, hz, rate)).abs() < 2e-3, "{peak}");
}

#[test]
fn a_settled_filter_stays_at_its_level() {
    for section in [Section::low_pass(2, 5.0, 1000.0), Section::high_pass(1, 0.1, 1000.0)] {
        let mut memory = Memory::settled(&section, 3.0);
        let first = memory.step(&section, 3.0);
        for _ in 0..2000 {
            assert!((memory.step(&section, 3.0) - first).abs() < 1e-9);
        }
    }
}

#[test]
fn a_step_through_the_high_pass_falls_to_5_percent_in_three_time_constants() {
    // e^-3 = 4.98 %: 3 tau = 3 / (2 pi f), .05 Hz 9.5 s, .1 Hz 4.8 s, .5 Hz .95 s (first-order decay, any circuits
    // text).
    for (hz, seconds) in [(0.05, 9.55), (0.1, 4.77), (0.5, 0.955)] {
        let section = Section::high_pass(1, hz, 1000.0);
        let mut memory = Memory::default();
        let mut at = 0.0;
        for k in 0..20_000 {
            if memory.step(&section, 1.0) > 0.05 {
                at = f64::from(k) / 1000.0;
            }
        }
        assert!((at - seconds).abs() / seconds < 0.01, "{hz} Hz: {at} s");
    }
}
