//! Mirrors `src/measure/quality.rs`.

mod pulses;

use dicrotic::math::{TAU, sin};
use dicrotic::measure::quality::{Quality, clip_share, clip_share_at, flat_share, hum, pulse_pp, quality};
use pulses::{NOTCH, add_noise, add_sine, regular};

const RATE: f64 = 500.0;

fn clean() -> Vec<f64> {
    regular(72.0, &NOTCH, RATE, 30.0).0
}

fn rated(change: impl Fn(&mut Vec<f64>)) -> Quality {
    let mut x = clean();
    change(&mut x);
    quality(&x, RATE).unwrap()
}

/// Height of the clean pulse from foot to peak.
fn height() -> f64 {
    let x = clean();
    x.iter().copied().fold(f64::MIN, f64::max) - x.iter().copied().fold(f64::MAX, f64::min)
}

#[test]
fn hum_is_measured_as_it_was_added() {
    for (power_line, off) in [(50.0, 0.0), (60.0, 0.0), (50.0, 0.1), (60.0, -0.1), (50.0, 0.5)] {
        for pp in [0.05, 0.1, 0.3, 1.0, 3.0] {
            let mut x = clean();
            add_sine(&mut x, RATE, power_line + off, pp);
            let level = hum(&x, RATE, power_line).unwrap();
            assert!((level.pp / pp - 1.0).abs() < 0.04, "{power_line} + {off} Hz, {pp}: {level:?}");
            // The ratio is to the pulse, which the hum must not swell.
            assert!(
                (level.ratio.unwrap() / (pp / height()) - 1.0).abs() < 0.06,
                "{power_line} + {off} Hz, {pp}: {level:?}"
            );
        }
    }
}

#[test]
fn harmonics_count_and_the_other_power_line_does_not() {
    let mut x = clean();
    // A third harmonic in step with the first flattens the top: the peak is lower than the sum of both.
    for (i, v) in x.iter_mut().enumerate() {
        let turn = TAU * 50.0 * i as f64 / RATE;
        *v += 0.5 * sin(turn) + 0.1 * sin(3.0 * turn);
    }
    let top = (0..10_000).map(|i| TAU * f64::from(i) / 10_000.0).map(|w| 0.5 * sin(w) + 0.1 * sin(3.0 * w));
    let pp = 2.0 * top.fold(f64::MIN, f64::max);
    assert!((hum(&x, RATE, 50.0).unwrap().pp / pp - 1.0).abs() < 0.03);
    assert!(hum(&x, RATE, 60.0).unwrap().pp < 0.02 * pp, "60 Hz in a record with 50 Hz");
    assert!(hum(&clean(), RATE, 50.0).unwrap().ratio.unwrap() < 0.005, "a clean record has no hum");
}

#[test]
fn folded_hum_is_measured_where_it_shows_or_not_at_all() {
    // 50 Hz sampled at 75 Hz shows at 25 Hz; at 49 Hz at 1 Hz (|f - round(f / fs) fs|), which no one can tell from a pulse.
    let (mut x, _) = regular(72.0, &NOTCH, 75.0, 30.0);
    add_sine(&mut x, 75.0, 50.0, 0.4);
    let level = hum(&x, 75.0, 50.0).unwrap();
    assert!((level.shows_at_hz - 25.0).abs() < 1e-9);
    assert!((level.pp / 0.4 - 1.0).abs() < 0.05, "{level:?}");
    for rate in [20.0, 48.0, 49.0, 50.0, 52.0] {
        assert!(hum(&clean(), rate, 50.0).is_none(), "{rate} Hz");
    }
    assert!(hum(&clean(), 59.0, 60.0).is_none());
    for rate in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
        assert!(hum(&clean(), rate, 50.0).is_none());
    }
}

#[test]
fn without_a_pulse_hum_has_no_ratio() {
    let mut x = vec![0.0; 5000];
    add_sine(&mut x, RATE, 50.0, 0.7);
    let level = hum(&x, RATE, 50.0).unwrap();
    assert!((level.pp / 0.7 - 1.0).abs() < 0.01);
    assert!(quality(&x, RATE).unwrap().index < 0.05);
}

#[test]
fn pulse_size_is_foot_to_peak_under_hum_and_drift() {
    let size = |change: &dyn Fn(&mut Vec<f64>)| {
        let mut x = clean();
        change(&mut x);
        pulse_pp(&x, RATE).unwrap() / height()
    };
    assert!((size(&|_| ()) - 1.0).abs() < 0.02);
    assert!((size(&|x| add_sine(x, RATE, 50.0, 3.0)) - 1.0).abs() < 0.03);
    assert!((size(&|x| add_sine(x, RATE, 0.05, 2.0)) - 1.0).abs() < 0.06);
    assert!((size(&|x| x.iter_mut().for_each(|v| *v *= 0.02)) - 0.02).abs() < 0.001);
    assert_eq!(pulse_pp(&[1.0; 5000], RATE), None);
}

#[test]
fn clipping_is_counted_at_the_ends_only() {
    let mut x = clean();
    assert_eq!(clip_share(&x), 0.0);
    let above = x.iter().filter(|v| **v >= 0.8).count() as f64 / x.len() as f64;
    x.iter_mut().for_each(|v| *v = v.min(0.8));
    assert!((clip_share(&x) - above).abs() < 0.002);
    assert!((clip_share_at(&x, -0.8, 0.8) - above).abs() < 1e-12);
    assert_eq!(clip_share_at(&x, -2.0, 2.0), 0.0);
    assert_eq!((clip_share(&[1.0; 100]), clip_share(&[])), (0.0, 0.0));
}

#[test]
fn flat_stretches_are_told_by_their_length() {
    let mut x = clean();
    assert_eq!(flat_share(&x, RATE), 0.0);
    let held = x[3000];
    x[3000..6000].fill(held);
    assert!((flat_share(&x, RATE) - 3000.0 / 15_000.0).abs() < 0.005);
    assert_eq!(flat_share(&[1.0; 500], RATE), 1.0);
}

#[test]
fn the_index_falls_with_every_disturbance() {
    let good = rated(|_| ());
    assert!(good.index > 0.9 && good.beats >= 35, "{good:?}");
    let steps = |name: &str, levels: &[f64], change: &dyn Fn(&mut Vec<f64>, f64), end: f64| {
        let mut last = good.index + 0.02;
        for level in levels {
            let now = rated(|x| change(x, *level));
            assert!(now.index <= last + 0.01, "{name} {level}: {now:?} after {last}");
            last = now.index;
        }
        assert!(last < end, "{name}: {last} at the worst");
    };
    steps("hum", &[0.1, 0.3, 1.0, 3.0], &|x, v| add_sine(x, RATE, 50.0, v), 0.1);
    steps("noise", &[0.05, 0.2, 0.5, 1.5], &|x, v| add_noise(x, v, 3), 0.2);
    steps("clipping", &[0.9, 0.7, 0.4], &|x, v| x.iter_mut().for_each(|y| *y = y.min(v)), 0.05);
    let hold = |x: &mut Vec<f64>, part: f64| {
        let end = (part * x.len() as f64) as usize;
        let held = x[0];
        x[..end].fill(held);
    };
    steps("silence", &[0.1, 0.3, 0.6], &hold, 0.05);
}

#[test]
fn movement_lowers_the_index_and_lost_samples_do_not() {
    let moved = |size: f64| {
        rated(|x| {
            // A hand that does not keep still: many slow waves of no common measure. (One regular wave, as of a tapping
            // foot, would look like a pulse and be rated as one.)
            for k in 0..24 {
                let hz = 0.4 + 0.19 * f64::from(k) + 0.05 * f64::from(k * k % 7);
                add_sine(x, RATE, hz, 0.3 * size);
            }
        })
        .index
    };
    assert!(
        moved(0.3) < 0.98 && moved(1.0) < 0.6 && moved(2.0) < 0.3,
        "{} {} {}",
        moved(0.3),
        moved(1.0),
        moved(2.0)
    );
    let lost = rated(|x| (50..x.len()).step_by(997).for_each(|i| x[i] = f64::NAN));
    assert!(lost.index > 0.9, "{lost:?}");
}

#[test]
fn noise_alone_rates_low_and_nothing_rates_zero() {
    for seed in 0..5 {
        let mut x = vec![0.0; 15_000];
        add_noise(&mut x, 1.0, seed);
        let q = quality(&x, RATE).unwrap();
        assert!(q.index < 0.1, "{q:?}");
    }
    let q = quality(&[2.0; 15_000], RATE).unwrap();
    assert_eq!((q.index, q.beats, q.flat, q.clipped), (0.0, 0, 1.0, 0.0));
    assert!(quality(&clean()[..1000], RATE).is_none(), "two seconds are too few");
    assert!(quality(&clean(), f64::NAN).is_none());
}

#[test]
fn drift_is_how_far_the_feet_wander() {
    let still = rated(|_| ());
    assert!(still.drift_pp < 0.05 * still.pulse_pp, "{still:?}");
    let breath = rated(|x| add_sine(x, RATE, 0.25, 0.6));
    // Feet fall on all phases of a breath: 5th to 95th percentile of a sine is 0.99 of its peak to peak.
    assert!((breath.drift_pp - 0.6).abs() < 0.12, "{breath:?}");
}
