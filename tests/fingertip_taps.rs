//! Mirrors `src/fingertip/taps.rs`.

use dicrotic::fingertip::Taps;
use dicrotic::fingertip::taps::{MOST_TAPS, count};

fn tapped(times: &[f64]) -> Taps {
    let mut taps = Taps::default();
    times.iter().for_each(|t| assert!(taps.tap(*t), "{t}"));
    taps
}

#[test]
fn the_rate_is_that_of_the_intervals() {
    let sum = tapped(&[1.0, 1.8, 2.6, 3.4, 4.2]).sum(0.0, 10.0);
    assert_eq!((sum.n, sum.missed, sum.doubled), (5, 0, 0));
    assert!((sum.rate_bpm.unwrap() - 75.0).abs() < 1e-9 && (sum.mean_ms.unwrap() - 800.0).abs() < 1e-9);
    assert!(sum.sd_ms.unwrap() < 1e-6);
    // A hand that never errs still scatters by the usual 30 ms a tap: 2 * sqrt(2) * .03 s of 3.2 s.
    let expected = 75.0 * 2.0 * 2.0_f64.sqrt() * 0.03 / 3.2;
    assert!((sum.uncertainty_bpm.unwrap() - expected).abs() < 1e-9, "{sum:?}");
}

#[test]
fn a_longer_tapping_is_surer() {
    let taps = tapped(&(0..41).map(|k| 0.9 * f64::from(k) + 0.02 * f64::from(k % 3)).collect::<Vec<_>>());
    let (short, long) = (taps.sum(0.0, 5.0), taps.sum(0.0, 40.0));
    assert!(long.uncertainty_bpm.unwrap() < 0.3 * short.uncertainty_bpm.unwrap(), "{short:?} {long:?}");
}

#[test]
fn missed_and_doubled_taps_are_told() {
    let missed = tapped(&[0.0, 1.0, 2.0, 4.0, 5.0, 8.0, 9.0]).sum(0.0, 10.0);
    assert_eq!((missed.missed, missed.doubled), (3, 0));
    // The true rate, 60, lies within what is told.
    assert!((missed.rate_bpm.unwrap() - 60.0).abs() < missed.uncertainty_bpm.unwrap(), "{missed:?}");
    let doubled = tapped(&[0.0, 1.0, 1.2, 2.0, 3.0, 4.0]).sum(0.0, 10.0);
    assert_eq!((doubled.missed, doubled.doubled), (0, 1));
    assert!((doubled.rate_bpm.unwrap() - 60.0).abs() < doubled.uncertainty_bpm.unwrap(), "{doubled:?}");
}

#[test]
fn too_few_taps_have_no_rate() {
    for times in [&[][..], &[1.0]] {
        let sum = tapped(times).sum(0.0, 10.0);
        assert_eq!((sum.n, sum.rate_bpm, sum.uncertainty_bpm, sum.mean_ms), (times.len(), None, None, None));
    }
    assert_eq!(tapped(&[1.0, 2.0]).sum(0.0, 10.0).sd_ms, None);
    assert_eq!(tapped(&[1.0, 2.0, 3.0]).sum(1.5, 3.0).n, 2);
}

#[test]
fn a_tap_that_is_none_is_left_out_and_the_last_can_be_taken_back() {
    let mut taps = tapped(&[1.0, 2.0]);
    for t in [2.0, 1.0, f64::NAN, f64::INFINITY] {
        assert!(!taps.tap(t), "{t}");
    }
    taps.undo();
    assert_eq!(taps.sum(0.0, 10.0).n, 1);
    taps.undo();
    taps.undo();
    assert_eq!(taps.sum(0.0, 10.0).n, 0);
    let mut many = Taps::default();
    assert_eq!((0..MOST_TAPS + 5).filter(|k| many.tap(*k as f64)).count(), MOST_TAPS);
}

#[test]
fn a_silent_count_tells_its_step() {
    let counted = count(18, 15.0).unwrap();
    assert_eq!((counted.rate_bpm, counted.step_bpm), (72.0, 4.0));
    for seconds in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(count(18, seconds), None);
    }
}
