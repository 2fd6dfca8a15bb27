//! Recordings: codes and volts, spans, and the pyramid against the plain way.

use dicrotic::recording::Recording;

fn noise(n: usize) -> Vec<i16> {
    let mut x = 1_u32;
    (0..n)
        .map(|_| {
            x = x.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (x >> 16) as u16 as i16
        })
        .collect()
}

#[test]
fn the_pyramid_tells_what_a_scan_tells() {
    let codes = noise(20_011);
    let mut recording = Recording::new(1000.0);
    recording.mark_span(1e-3, 0.0, 16);
    for piece in codes.chunks(997) {
        recording.push(piece);
        recording.mark_span(if recording.len().is_multiple_of(2) { 1e-3 } else { 2e-3 }, 0.0, 16);
    }
    let mut k = 12_345_usize;
    for _ in 0..600 {
        k = (k * 48_271) % 2_147_483_647;
        let (a, b) = (k % 20_011, (k / 20_011) % 20_100);
        let (from, to) = (a.min(b), a.max(b));
        let found = recording.extent(from, to);
        let values = recording.values(from, to);
        let plain = values
            .iter()
            .map(|v| *v as f32)
            .fold(None, |m: Option<(f32, f32)>, v| Some(m.map_or((v, v), |(l, h)| (l.min(v), h.max(v)))));
        assert_eq!(found.map(|e| (e.min, e.max)), plain, "{from}..{to}");
    }
}

#[test]
fn a_change_of_range_changes_the_volts_of_later_codes_only() {
    let mut recording = Recording::new(100.0);
    recording.mark_span(1.0, 0.0, 16);
    recording.push(&[1, 2]);
    recording.mark_span(10.0, 0.0, 16);
    recording.push(&[1, 2]);
    assert_eq!(recording.values(0, 9), vec![1.0, 2.0, 10.0, 20.0]);
    assert_eq!(recording.volts(4), None);
    assert_eq!(recording.spans().len(), 2);
}

#[test]
fn values_come_back_to_within_half_a_code() {
    let values: Vec<f64> = (0..500).map(|k| 512.0 + f64::from((k * 37) % 101)).collect();
    let recording = Recording::of_values(100.0, &values);
    for (back, value) in recording.values(0, 500).iter().zip(&values) {
        assert!((back - value).abs() <= 0.5 * 100.0 / 65_534.0 + 1e-9);
    }
}

#[test]
fn constant_and_empty_recordings_are_no_trouble() {
    assert_eq!(Recording::of_values(100.0, &[3.0; 10]).values(0, 10), vec![3.0; 10]);
    assert!(Recording::of_values(100.0, &[]).extent(0, 10).is_none());
}
