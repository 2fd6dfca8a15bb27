//! Mirrors `src/measure/landmarks.rs`.

mod pulses;

use dicrotic::measure::detect::detect;
use dicrotic::measure::landmarks::{Landmarks, mean_beat, of_beats};
use pulses::{EXCELLENT, NOTCH, Shape, add_noise, add_sine, regular};

/// Landmarks of a clean mean beat at 4 kHz, on which filters and steps leave no trace, to compare with.
fn fine(shape: &Shape) -> Landmarks {
    let (x, _) = regular(72.0, shape, 4000.0, 30.0);
    mean_beat(&x, 4000.0, &detect(&x, 4000.0)).unwrap().landmarks
}

#[test]
fn landmarks_are_where_the_formula_has_them() {
    // A regular 75 bpm: systole 0.45 sqrt(0.8) = 0.4025 s takes the first half of the phase.
    let starts: Vec<f64> = (0..40).map(|i| -1.0 + 0.8 * f64::from(i)).collect();
    let heights = vec![1.0; starts.len()];
    let x = pulses::pulse(&starts, &heights, &NOTCH, 1000.0, 28.0);
    // Three beats of the formula at 1/100 ms, cut from the lowest point before the middle one to that after it.
    let three = pulses::pulse(&starts[..5], &heights, &NOTCH, 100_000.0, 2.0);
    let low = |from: f64, to: f64| {
        let (from, to) = ((from * 1e5) as usize, (to * 1e5) as usize);
        (from..to).min_by(|a, b| three[*a].total_cmp(&three[*b])).unwrap()
    };
    let foot = three[low(0.3, 0.7)];
    let one: Vec<f64> = three[low(0.3, 0.7)..=low(1.1, 1.5)].iter().map(|v| v - foot).collect();
    let top = (0..one.len()).max_by(|a, b| one[*a].total_cmp(&one[*b])).unwrap();
    let dip = (top + 1..one.len()).find(|i| one[*i] < one[i + 1]).unwrap();
    let second = (dip + 1..one.len()).find(|i| one[*i] > one[i + 1]).unwrap();
    let at = |i: usize| i as f64 / 100.0;
    let mean = mean_beat(&x, 1000.0, &detect(&x, 1000.0)).unwrap();
    let l = mean.landmarks;
    assert!(
        mean.beats > 25 && mean.values.len().abs_diff(801) <= 2,
        "{} beats, {} ms",
        mean.beats,
        mean.values.len()
    );
    assert!((l.crest_ms - at(top)).abs() < 4.0, "crest {} for {}", l.crest_ms, at(top));
    assert!((l.height / one[top] - 1.0).abs() < 0.01, "height {} for {}", l.height, one[top]);
    // The notch as the sharpest bend lies near the lowest point, not on it.
    let notch = l.notch_after_foot_ms.unwrap();
    assert!((notch - at(dip)).abs() < 25.0, "notch {notch} for {}", at(dip));
    let (s, part) = (1000.0 * l.second_s.unwrap(), l.second_part.unwrap());
    assert!((s - at(second)).abs() < 6.0, "second wave {s} for {}", at(second));
    assert!((part / (one[second] / one[top]) - 1.0).abs() < 0.02, "second wave {part}");
    let above = one.iter().filter(|v| **v >= 0.5 * one[top]).count();
    assert!((l.width50_ms - at(above)).abs() < 4.0, "width {} for {}", l.width50_ms, at(above));
    let rise = |p: f64| one.iter().position(|v| *v >= p * one[top]).unwrap();
    assert!((l.rise_ms - (at(rise(0.9)) - at(rise(0.1)))).abs() < 3.0, "rise {}", l.rise_ms);
}

#[test]
fn the_mean_beat_survives_noise_hum_and_drift() {
    for shape in [NOTCH, EXCELLENT] {
        let reference = fine(&shape);
        let (mut x, _) = regular(72.0, &shape, 250.0, 60.0);
        add_noise(&mut x, 0.05, 9);
        add_sine(&mut x, 250.0, 50.0, 0.2);
        add_sine(&mut x, 250.0, 0.21, 0.5);
        let l = mean_beat(&x, 250.0, &detect(&x, 250.0)).unwrap().landmarks;
        assert!((l.crest_ms - reference.crest_ms).abs() < 25.0, "{l:?} for {reference:?}");
        assert!((l.rise_ms - reference.rise_ms).abs() < 10.0, "{l:?} for {reference:?}");
        assert!((l.width50_ms - reference.width50_ms).abs() < 15.0, "{l:?} for {reference:?}");
        assert!((l.height / reference.height - 1.0).abs() < 0.05, "{l:?} for {reference:?}");
        if shape == NOTCH {
            let notch = |l: &Landmarks| l.notch_after_foot_ms.unwrap();
            assert!((notch(&l) - notch(&reference)).abs() < 15.0, "{l:?} for {reference:?}");
            assert!(
                (l.second_part.unwrap() - reference.second_part.unwrap()).abs() < 0.04,
                "{l:?} for {reference:?}"
            );
        } else {
            // The published beat has a shoulder where others have a second wave.
            assert!(l.second_s.is_none() && reference.second_s.is_none(), "{l:?} for {reference:?}");
        }
    }
}

#[test]
fn landmarks_of_each_beat_stand_in_order() {
    let (x, starts) = regular(72.0, &NOTCH, 200.0, 30.0);
    let beats = detect(&x, 200.0);
    let found = of_beats(&x, 200.0, &beats);
    assert!(found.len() + 2 >= beats.len(), "{} of {}", found.len(), beats.len());
    for l in &found {
        let (notch, second) = (l.notch_s.unwrap(), l.second_s.unwrap());
        assert!(l.foot_s < l.peak_s && l.peak_s < notch && notch < second, "{l:?}");
        assert!(l.notch_part.unwrap() < l.second_part.unwrap() && l.second_part.unwrap() < 1.0, "{l:?}");
        // The formula is lowest a little before one beat passes into the next.
        let nearest = starts.iter().map(|s| (s - l.foot_s).abs()).fold(f64::MAX, f64::min);
        assert!(nearest < 0.08, "{l:?} is {nearest} s from a start");
        assert!(beats.iter().any(|b| (b - l.peak_s).abs() < 0.02), "{l:?}");
    }
}

#[test]
fn too_little_gives_nothing() {
    let (x, _) = regular(72.0, &NOTCH, 200.0, 30.0);
    assert!(mean_beat(&x, 200.0, &[1.0, 1.8, 2.6]).is_none(), "two intervals");
    assert!(mean_beat(&[1.0; 6000], 200.0, &detect(&x, 200.0)).is_none(), "a flat line under beats");
    assert!(of_beats(&[1.0; 6000], 200.0, &detect(&x, 200.0)).is_empty());
    assert!(of_beats(&x, 200.0, &[]).is_empty() && of_beats(&[], 200.0, &[1.0, 2.0]).is_empty());
    // Beats that lie outside of the recording.
    assert!(of_beats(&x, 200.0, &[-5.0, -4.0, 100.0, 101.0]).is_empty());
    assert!(mean_beat(&x, 200.0, &[-5.0, -4.0, -3.0, 100.0, 101.0, 102.0]).is_none());
}
