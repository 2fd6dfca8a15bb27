//! The signal for the ear: a click a beat, none for the second bump or for hum, pitch by height; hum as it is.

use dicrotic::math::{PI, exp, sin};
use dicrotic::trace::listen::{Click, Heard, Listener};
use dicrotic::trace::live::Live;

/// A wave with a second bump of a third of its height, one a period, its crest at `crest` of the period; V.
fn pulse(t: f64, period: f64, height: f64) -> f64 {
    let u = t % period;
    let bump = |at: f64, wide: f64, tall: f64| tall * exp(-((u - at) / wide) * ((u - at) / wide));
    height * (bump(0.2, 0.07, 1.0) + bump(0.45, 0.08, 0.33))
}

/// Everything heard of `seconds` of a signal, in calls of a frame's length; clicks with the time of their crest, s.
/// Volts of a code.
const CODE_V: f64 = 1e-5;

fn hear(
    rate_hz: f64,
    seconds: f64,
    range_v: f64,
    signal: impl Fn(f64) -> f64,
) -> (Vec<(f64, f64)>, Vec<f32>) {
    let mut live = Live::new(rate_hz);
    let mut listener = Listener::new(&live);
    let (mut clicks, mut hum) = (Vec::new(), Vec::new());
    let samples = (seconds * rate_hz) as u64;
    for k in 0..samples {
        live.push(&[(signal(k as f64 / rate_hz) / CODE_V).round() as i16], CODE_V);
        if k % 16 == 15 || k + 1 == samples {
            let heard: Heard = listener.hear(&live, range_v);
            assert_eq!(heard.rate_hz, rate_hz);
            hum.extend(&heard.hum);
            let now = live.total() as f64 / rate_hz;
            clicks.extend(heard.clicks.iter().map(|Click { ago_s, height }| (now - ago_s, *height)));
        }
    }
    (clicks, hum)
}

#[test]
fn every_beat_clicks_once_at_its_crest_whatever_rides_on_it() {
    for hum_v in [0.0, 0.005, 0.012] {
        for period in [0.6, 0.8, 1.3] {
            let (clicks, _) = hear(1000.0, 20.0, 0.05, |t| {
                0.01 + pulse(t, period, 0.04) + hum_v * sin(2.0 * PI * 50.0 * t)
            });
            let beats: Vec<f64> = (1..).map(|k| k as f64 * period + 0.2).take_while(|t| *t < 19.8).collect();
            assert_eq!(clicks.len(), beats.len(), "period {period}, hum {hum_v}");
            for ((at, height), beat) in clicks.iter().zip(&beats) {
                // The smoothing is late by some 30 ms, and takes a little off the top.
                assert!((0.0..0.08).contains(&(at - beat)), "{at} for {beat}");
                assert!((0.25..0.42).contains(height), "{height}");
            }
        }
    }
}

#[test]
fn a_taller_pulse_clicks_higher_and_a_bare_line_or_hum_alone_never() {
    let height = |v: f64| {
        let (clicks, _) = hear(1000.0, 10.0, 0.1, |t| pulse(t, 0.8, v));
        clicks.iter().map(|c| c.1).sum::<f64>() / clicks.len() as f64
    };
    assert!(height(0.08) > 1.9 * height(0.04));
    assert_eq!(hear(1000.0, 10.0, 0.1, |_| 0.07).0, []);
    assert_eq!(hear(1000.0, 10.0, 0.1, |t| 0.05 * sin(2.0 * PI * 50.0 * t)).0, []);
}

#[test]
fn a_jerk_of_the_hand_clicks_too_since_it_stands_on_the_trace() {
    let (clicks, _) =
        hear(1000.0, 10.0, 0.1, |t| pulse(t, 1.0, 0.03) + if t > 5.6 && t < 5.75 { 0.06 } else { 0.0 });
    assert_eq!(clicks.len(), 10);
}

#[test]
fn hum_comes_through_at_its_height_and_the_pulse_does_not() {
    let top = |hum: &[f32]| hum[2000..].iter().fold(0.0_f32, |m, v| m.max(v.abs()));
    let (_, hum) = hear(1000.0, 5.0, 0.1, |t| 0.02 * sin(2.0 * PI * 50.0 * t));
    // A second-order Butterworth high-pass at 30 Hz lets 1/sqrt(1 + (30/50)^4) = .941 of 50 Hz through.
    assert!((f64::from(top(&hum)) - 0.2 * 0.941).abs() < 0.004, "{}", top(&hum));
    let (_, rest) = hear(1000.0, 5.0, 0.1, |t| 0.05 + pulse(t, 0.8, 0.04));
    assert!(top(&rest) < 0.02, "{}", top(&rest));
}

#[test]
fn what_was_missed_is_not_made_up_for_and_another_rate_begins_anew() {
    let mut live = Live::new(1000.0);
    let mut listener = Listener::new(&live);
    (0..5000).for_each(|k| live.push(&[k], CODE_V));
    assert_eq!(listener.hear(&live, 0.1).hum.len(), 500);
    assert_eq!(listener.hear(&live, 0.1).hum.len(), 0);
    let mut other = Live::new(200.0);
    (0..50).for_each(|_| other.push(&[0], CODE_V));
    assert_eq!(listener.hear(&other, 0.1), Heard { rate_hz: 200.0, hum: vec![], clicks: vec![] });
    (0..50).for_each(|_| other.push(&[0], CODE_V));
    assert_eq!(listener.hear(&other, 0.1).hum.len(), 50);
}
