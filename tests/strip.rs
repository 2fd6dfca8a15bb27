//! The trace: columns keep every extreme, the live sweep draws each sample once, ticks and labels.

use dicrotic::recording::Recording;
use dicrotic::trace::axes::{Theme, label, step};
use dicrotic::trace::columns::of_recording;
use dicrotic::trace::frame::Frame;
use dicrotic::trace::live::Live;

#[test]
fn a_single_spike_is_never_lost() {
    for at in [0, 1, 17_777, 59_999] {
        let mut codes = vec![0_i16; 60_000];
        codes[at] = 1000;
        let mut recording = Recording::new(1000.0);
        recording.mark_span(1e-3, 0.0, 16);
        recording.push(&codes);
        let frame = Frame::new(700.0, 300.0, 1.0).showing(0.0, 60.0, -2.0, 2.0);
        let columns = of_recording(&recording, &frame);
        assert_eq!(columns.iter().filter(|c| c.max == 1.0).count(), 1, "spike at {at}");
        assert_eq!(columns.len(), frame.columns());
    }
}

#[test]
fn fifty_hertz_on_fifty_columns_a_second_keeps_its_height() {
    // Taking one sample a column would show a straight line here.
    let codes: Vec<i16> =
        (0..20_000).map(|k| (10_000.0 * dicrotic::math::sin(0.314_159_265 * f64::from(k))) as i16).collect();
    let mut recording = Recording::new(1000.0);
    recording.mark_span(1e-4, 0.0, 16);
    recording.push(&codes);
    let frame = Frame::new(1000.0 + 68.0, 300.0, 1.0).showing(0.0, 20.0, -2.0, 2.0);
    assert_eq!(frame.columns(), 1000);
    assert!(of_recording(&recording, &frame).iter().all(|c| c.max - c.min > 1.9));
}

#[test]
fn pieces_of_the_sweep_make_the_whole_sweep() {
    let frame = Frame::new(500.0, 300.0, 1.0).showing(0.0, 2.0, -1.0, 1.0);
    let value = |k: u64| [((k * 7919) % 1000) as i16];
    let (mut whole, mut pieces) = (Live::new(1000.0), Live::new(1000.0));
    let mut columns = std::collections::BTreeMap::new();
    for k in 0..1990 {
        whole.push(&value(k), 1e-3);
        pieces.push(&value(k), 1e-3);
        if k % 16 == 0 || k == 1989 {
            for fresh in pieces.fresh(&frame) {
                columns
                    .entry(fresh.column.x)
                    .and_modify(|c: &mut (f32, f32)| {
                        *c = (c.0.min(fresh.column.min), c.1.max(fresh.column.max));
                    })
                    .or_insert((fresh.column.min, fresh.column.max));
            }
        }
    }
    let all: Vec<_> =
        whole.fresh(&frame).iter().map(|f| (f.column.x, (f.column.min, f.column.max))).collect();
    assert_eq!(all, columns.into_iter().collect::<Vec<_>>());
}

#[test]
fn after_a_full_screen_the_stylus_begins_again_at_the_left() {
    let frame = Frame::new(500.0, 300.0, 1.0).showing(0.0, 1.0, -1.0, 1.0);
    let mut live = Live::new(1000.0);
    for k in 0..1500 {
        live.push(&[k], 1.0);
    }
    assert!((live.stylus(1.0) - 0.5).abs() < 1e-9);
    let fresh = live.fresh(&frame);
    assert_eq!(fresh.iter().filter(|f| f.lifted).count(), 2);
    assert_eq!(fresh.last().map(|f| f.column.last), Some(1499.0));
}

#[test]
fn codes_taken_in_at_once_are_those_taken_in_one_by_one() {
    let codes: Vec<i16> = (0..150_000_i64).map(|k| (k * 7919 % 65_536 - 32_768) as i16).collect();
    // Pieces that fill the ring of a minute just, wrap it, and are longer than it.
    for pieces in [&[1, 59_999, 60_000][..], &[40_000, 40_000, 1], &[100, 61_000], &[0, 150_000]] {
        let (mut one, mut all) = (Live::new(1000.0), Live::new(1000.0));
        let mut rest = &codes[..];
        for n in pieces {
            let (now, later) = rest.split_at(*n);
            now.iter().for_each(|code| one.push(&[*code], 3e-6));
            all.push(now, 3e-6);
            rest = later;
        }
        assert_eq!(all.total(), one.total());
        assert_eq!(all.last(60.0), one.last(60.0), "{pieces:?}");
        assert!(all.last(60.0).len() > 59_999);
    }
}

#[test]
fn grid_steps_are_one_two_five() {
    for (span, most, expected) in [(10.0, 10.0, 1.0), (10.0, 6.0, 2.0), (0.2, 5.0, 0.05), (60.0, 8.0, 10.0)] {
        assert!((step(span, most) - expected).abs() < 1e-12, "{span} over {most}: {}", step(span, most));
    }
    assert_eq!(label(-0.05, 0.05, ','), "\u{2212}0,05");
    assert_eq!(label(20.0, 10.0, '.'), "20");
}

#[test]
fn colours_are_six_digits() {
    assert_eq!(Theme::colour("#ff8000").map(|c| (c.0, c.1, c.2)), Some((255, 128, 0)));
    for bad in ["ff8000", "#ff80", "#gg0000", "#ff80000", "", "#\u{e9}\u{e9}\u{e9}"] {
        assert!(Theme::colour(bad).is_none(), "{bad}");
    }
}
