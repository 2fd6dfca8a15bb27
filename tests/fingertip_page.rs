//! What the page shows of one's own pulse beside the reading itself: one rate for all, taps as a trace, two rates compared.

use dicrotic::exchange::{self, NamedFile, Options};
use dicrotic::fingertip::{Camera, Taps, compare};
use dicrotic::measure::detect;

/// A finger whose pulse rises in a sixth of the beat, at 30 frames a second.
fn finger(bpm: f64, seconds: f64) -> Camera {
    let mut camera = Camera::default();
    for k in 0..(30.0 * seconds) as usize {
        let t = k as f64 / 30.0;
        let u = (t * bpm / 60.0).fract();
        let wave = if u < 0.16 { u / 0.16 } else { (1.0 - u) / 0.84 };
        // No two frames of a real camera are alike.
        let grain = 0.02 * (((k * 7919) % 101) as f64 / 50.0 - 1.0);
        camera.push(t, [200.0 - 1.5 * wave + grain, 60.0 - 1.4 * wave + grain, 42.0 - 0.9 * wave + grain]);
    }
    camera
}

#[test]
fn all_frames_have_one_rate_and_it_is_not_further_off_than_told() {
    for bpm in [50.0, 72.0, 120.0] {
        let whole = finger(bpm, 30.0).whole();
        let (read, off) = (whole.bpm.expect("a rate"), whole.uncertainty_bpm.expect("how far it may be off"));
        assert!((read - bpm).abs() <= off, "{read} ± {off}, true {bpm}");
        assert!(off < 2.0, "{off}");
        assert!((whole.beats as f64 - bpm / 2.0).abs() <= 2.0, "{} beats at {bpm}", whole.beats);
        assert_eq!((whole.from_s, whole.refused), (0.0, None));
    }
}

#[test]
fn without_a_pulse_there_is_a_reason_and_no_rate() {
    let mut flat = Camera::default();
    for k in 0..900 {
        flat.push(f64::from(k) / 30.0, [200.0, 60.0, 42.0]);
    }
    for whole in [Camera::default().whole(), flat.whole()] {
        assert!(
            whole.bpm.is_none() && whole.uncertainty_bpm.is_none() && whole.refused.is_some(),
            "{whole:?}"
        );
    }
}

#[test]
fn taps_open_as_a_recording_in_which_the_detector_finds_each_where_it_was() {
    let mut taps = Taps::default();
    let mut t = 3.2;
    let mut all = Vec::new();
    for k in 0..30 {
        all.push(t);
        taps.tap(t);
        t += 0.8 + 0.03 * f64::from((k * 7) % 5 - 2);
    }
    let text = taps.recording().expect("a table");
    let files: Vec<NamedFile> = vec![("taps.csv".into(), text.into_bytes())];
    let read =
        exchange::import(&files, &Options { rate_hz: None, channel: None }).expect("it opens").recorded;
    assert_eq!(read.rate_hz, 100.0);
    let beats = detect::detect(&read.values, read.rate_hz);
    assert_eq!(beats.len(), all.len());
    for (beat, tap) in beats.iter().zip(&all) {
        let at = beat - 0.5 + all[0];
        assert!((at - tap).abs() < 0.03, "{at} s, tapped at {tap} s");
    }
}

#[test]
fn too_few_taps_and_too_long_ones_make_no_recording() {
    let mut taps = Taps::default();
    assert_eq!(taps.recording(), None);
    taps.tap(1.0);
    assert_eq!(taps.recording(), None);
    taps.tap(2.0);
    assert!(taps.recording().is_some());
    taps.tap(1e6);
    assert_eq!(taps.recording(), None);
}

#[test]
fn rates_agree_within_what_both_may_be_off() {
    let near = compare(72.0, 2.0, 75.0, 1.0);
    assert!(near.within && (near.difference_bpm - 3.0).abs() < 1e-12);
    assert!(!compare(75.0, 1.0, 71.0, 2.0).within);
}
