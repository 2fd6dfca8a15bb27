//! The converter: its step, its limits, its noise.

use dicrotic::math;
use dicrotic::recorder::converter::{at_limit, code_v, lsb_v, quantise};

#[test]
fn one_step_is_twice_the_range_over_two_to_the_bits() {
    // LSB = 2 R / 2^bits (definition of a bipolar converter).
    assert!((lsb_v(10.0, 12) - 20.0 / 4096.0).abs() < 1e-15);
    // A 10 mV pulse on +-10 V: 2 levels at 12 bits, 0.13 of one at 8, 33 at 16 (worked from the definition).
    for (bits, levels) in [(12, 2.0), (8, 0.13), (16, 33.0)] {
        let found = 0.010 / lsb_v(10.0, bits);
        assert!((found - levels).abs() / levels < 0.03, "{bits} bits: {found}");
    }
}

#[test]
fn codes_lie_within_half_a_step_of_the_value() {
    for bits in [8, 12, 16] {
        for k in -900..=900 {
            let volts = f64::from(k) * 1e-3;
            let back = f64::from(quantise(volts, 1.0, bits)) * code_v(1.0);
            assert!((back - volts).abs() <= 0.5 * lsb_v(1.0, bits) + 1e-12, "{bits} bits, {volts} V: {back}");
        }
    }
}

#[test]
fn beyond_the_range_it_clips_at_the_ends() {
    for bits in [8, 12, 16] {
        assert!(at_limit(quantise(1.2, 1.0, bits), bits));
        assert!(at_limit(quantise(-1.2, 1.0, bits), bits));
        assert!(!at_limit(quantise(0.97, 1.0, bits), bits));
        assert!(!at_limit(quantise(-0.97, 1.0, bits), bits));
    }
    assert_eq!(quantise(f64::MAX, 1.0, 16), i16::MAX);
    assert_eq!(quantise(f64::MIN, 1.0, 16), i16::MIN);
}

#[test]
fn rounding_noise_is_a_step_over_root_twelve() {
    // Quantisation noise LSB / sqrt 12 (Bennett 1948, Bell Syst. Tech. J. 27:446).
    let n = 20_000;
    let sum: f64 = (0..n)
        .map(|k| {
            let volts = 0.7 * math::sin(0.618_034 * f64::from(k));
            let error = f64::from(quantise(volts, 1.0, 8)) * code_v(1.0) - volts;
            error * error
        })
        .sum();
    let rms = (sum / f64::from(n)).sqrt();
    assert!((rms / (lsb_v(1.0, 8) / 12.0_f64.sqrt()) - 1.0).abs() < 0.03, "{rms}");
}
