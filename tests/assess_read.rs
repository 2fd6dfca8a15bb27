//! Fairness from the trace alone: a reader who knows nothing of the truth looks at the recording, and what cannot be seen
//! there is not demanded.

mod students;

use dicrotic::session::Session;
use serde_json::json;
use students::act;

/// Points a second that the reader looks at.
const LOOKS_HZ: f64 = 200.0;
/// Rise of a small early peak, as a share of what the curve spans about it, that the reader takes for a notch wave.
const OVERLOOKED: f64 = 0.2;

fn reach(seconds: f64) -> usize {
    (seconds * LOOKS_HZ).round() as usize
}

/// Lowest and highest value from `before` points before to `after` points after a point.
fn span(curve: &[f64], i: usize, before: usize, after: usize) -> (f64, f64) {
    let near = &curve[i.saturating_sub(before)..=(i + after).min(curve.len() - 1)];
    near.iter().fold((f64::MAX, f64::MIN), |(low, high), v| (low.min(*v), high.max(*v)))
}

/// Times of the beats that a reader with a ruler finds: on the curve smoothed over 60 ms, each point that is the highest
/// within .45 s and stands in the upper half of what a second before and after spans; and each small peak that
/// rises by more than [`OVERLOOKED`] of that span within a quarter of a second.
fn read(values: &[f64], rate_hz: f64) -> Vec<f64> {
    let wide = (0.03 * rate_hz) as usize;
    let step = rate_hz / LOOKS_HZ;
    let curve: Vec<f64> = (0..(values.len() as f64 / step) as usize)
        .map(|k| {
            let at = (k as f64 * step) as usize;
            let near = &values[at.saturating_sub(wide)..=(at + wide).min(values.len() - 1)];
            near.iter().sum::<f64>() / near.len() as f64
        })
        .collect();
    let beat = |i: usize| {
        let (low, high) = span(&curve, i, reach(1.0), reach(1.0));
        let tall = curve[i] >= span(&curve, i, reach(0.45), reach(0.45)).1 && curve[i] > (low + high) / 2.0;
        let small = || {
            curve[i] >= span(&curve, i, reach(0.1), reach(0.1)).1
                && curve[i] - span(&curve, i, reach(0.25), 0).0 > OVERLOOKED * (high - low)
        };
        curve[i] > curve[i - 1] && curve[i] >= curve[i + 1] && (tall || small())
    };
    (1..curve.len() - 1).filter(|i| beat(*i)).map(|i| i as f64 / LOOKS_HZ).collect()
}

/// A small early beat rides on the fall of the beat before and may pass for its notch wave: whether it counts is the
/// reader's own affair. Whatever is demanded must stand out on the trace, filters, breath and movements and all.
#[test]
fn early_beats_that_a_reader_may_overlook_are_not_demanded_and_may_be_counted() {
    println!("scenario              early beats  overlooked  demanded of them");
    for file in ["51-uneven-intervals", "59-a-longer-window"] {
        let path = format!("{}/scenarios/{file}.toml", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).unwrap();
        let (mut early, mut overlooked, mut demanded) = (0, 0, Vec::new());
        for seed in 0..40_u64 {
            let mut session = Session::new(&text, seed).unwrap();
            session.run_long(8000);
            act(&mut session, json!({"do": "record"}));
            session.run_long(45_000);
            act(&mut session, json!({"do": "stop"}));
            let take = session.recordings().last().unwrap();
            let recording = &take.recording;
            let found = read(&recording.values(0, recording.len()), recording.rate_hz());
            let peaks = session.reference_peaks();
            for beat in session.chain().unwrap().truth().iter().filter(|b| b.premature) {
                let at = beat.peak_s - take.start_s;
                if !(1.0..44.0).contains(&at) {
                    continue;
                }
                early += 1;
                let peak = peaks.iter().find(|p| p.at_s == at).expect("a beat that may be counted");
                if !found.iter().any(|t| (t - at - take.delay_s).abs() < 0.12) {
                    overlooked += 1;
                    if peak.sure {
                        demanded.push((seed, at));
                    }
                }
            }
        }
        println!("{file:<22}{early:>11}{overlooked:>12}{:>18}", demanded.len());
        assert!(overlooked > 50 && overlooked < early, "{overlooked} of {early}");
        assert_eq!(demanded, [], "{file}: seeds and times of beats that are demanded and cannot be seen");
    }
}
