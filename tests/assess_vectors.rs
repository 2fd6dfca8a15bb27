//! Misreadings from their signatures, over windows, rates and subjects: how often each is named right, how often nothing is said,
//! and what it is taken for otherwise.

mod common_records;

use common_records::{LENGTH_S, Record, record};
use dicrotic::assess::misreading::{Evidence, Misreading, hypotheses, named};
use dicrotic::assess::window::allowed;
use dicrotic::rng::Stream;
use std::collections::BTreeMap;

/// What one student did in one window.
#[derive(Clone)]
struct Sheet {
    window: (f64, f64),
    marks: Vec<f64>,
    count: f64,
    seconds: f64,
    multiplier: f64,
    rate: f64,
    decimals: usize,
    off: Option<f64>,
}

fn rounded(x: f64, digits: i32) -> f64 {
    let by: f64 = (0..digits).map(|_| 10.0).product();
    (x * by).round() / by
}

/// The numbers that follow from a count in a window, worked out right.
fn sheet(window: (f64, f64), count: f64) -> Sheet {
    let seconds = rounded(window.1 - window.0, 1);
    let multiplier = rounded(60.0 / seconds, 2);
    let rate = (60.0 * count / seconds).round();
    Sheet { window, marks: Vec::new(), count, seconds, multiplier, rate, decimals: 0, off: None }
}

fn name(record: &Record, s: &Sheet) -> Option<Misreading> {
    let (a, b) = s.window;
    let evidence = Evidence {
        peaks: &record.peaks,
        bumps: &record.bumps,
        marks: &s.marks,
        window: s.window,
        allowed: allowed(&record.peaks, a, b, 0.06, 0.0),
        count: Some(s.count),
        seconds: Some(s.seconds),
        multiplier: Some(s.multiplier),
        rate: Some(s.rate),
        rate_decimals: s.decimals,
        breaths_per_min: record.breaths_per_min,
        mains_shows_hz: 50.0,
        features_off_s: s.off,
    };
    named(&hypotheses(&evidence)).map(|h| h.id)
}

/// What goes wrong in each way; `None` where it cannot happen in that window.
type Way = (&'static str, Misreading, fn(&Record, (f64, f64), &mut Stream) -> Option<Sheet>);

fn inside(times: impl Iterator<Item = f64>, (a, b): (f64, f64)) -> Vec<f64> {
    times.filter(|t| *t >= a && *t < b).collect()
}

fn beats(r: &Record, w: (f64, f64)) -> Vec<f64> {
    inside(r.peaks.iter().filter(|p| p.sure).map(|p| p.at_s), w)
}

fn marked(w: (f64, f64), mut marks: Vec<f64>) -> Sheet {
    marks.sort_by(f64::total_cmp);
    Sheet { marks: marks.clone(), ..sheet(w, marks.len() as f64) }
}

fn with_multiplier(s: Sheet, k: f64) -> Sheet {
    Sheet { multiplier: k, rate: (s.count * k).round(), ..s }
}

const USUAL: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];

const WAYS: [Way; 26] = [
    ("M1 bumps, marked", Misreading::BumpsCounted, |r, w, _| {
        let (p, b) = (beats(r, w), inside(r.bumps.iter().copied(), w));
        (b.len() * 10 >= p.len() * 8).then(|| marked(w, [p, b].concat()))
    }),
    ("M1 bumps, counted only", Misreading::BumpsCounted, |r, w, s| {
        let n = beats(r, w).len() as f64;
        Some(sheet(w, (n * s.range(1.85, 2.0)).round()))
    }),
    ("M2 every other, marked", Misreading::BeatsMissed, |r, w, _| {
        Some(marked(w, beats(r, w).into_iter().step_by(2).collect()))
    }),
    ("M2 every other, counted only", Misreading::BeatsMissed, |r, w, _| {
        Some(sheet(w, (beats(r, w).len() as f64 / 2.0).round()))
    }),
    ("M2 one in six missed, marked", Misreading::BeatsMissed, |r, w, _| {
        let all = beats(r, w);
        let left: Vec<f64> = all.iter().enumerate().filter(|(k, _)| k % 6 != 3).map(|(_, t)| *t).collect();
        (left.len() + 2 <= all.len()).then(|| marked(w, left))
    }),
    ("M3 one too many", Misreading::OneTooMany, |r, w, _| {
        Some(sheet(w, allowed(&r.peaks, w.0, w.1, 0.06, 0.0).most as f64 + 1.0))
    }),
    ("M4 one too few", Misreading::OneTooFew, |r, w, _| {
        Some(sheet(w, allowed(&r.peaks, w.0, w.1, 0.06, 0.0).least as f64 - 1.0))
    }),
    ("M5 another multiplier", Misreading::OtherMultiplier, |r, w, s| {
        let right = 60.0 / (w.1 - w.0);
        let k = USUAL[1 + (s.uniform() * 5.0) as usize];
        // The whole number nearest to the right one is rounding, and nobody can tell the two apart.
        let apart = (k / right - 1.0).abs() > 0.03 && (k - right).abs() > 0.5;
        apart.then(|| with_multiplier(sheet(w, beats(r, w).len() as f64), k))
    }),
    ("M5 another multiplier in the rate", Misreading::OtherMultiplier, |r, w, s| {
        let right = 60.0 / (w.1 - w.0);
        let k = USUAL[1 + (s.uniform() * 5.0) as usize];
        let from = sheet(w, beats(r, w).len() as f64);
        ((k / right - 1.0).abs() > 0.03 && (k - right).abs() > 0.5)
            .then(|| Sheet { rate: (from.count * k).round(), ..from })
    }),
    ("M6 count given as rate", Misreading::NotScaled, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        ((60.0 / (w.1 - w.0) - 1.0).abs() > 0.05).then_some(Sheet { rate: from.count, ..from })
    }),
    ("M6 beats a second", Misreading::PerSecond, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        Some(Sheet { rate: rounded(from.count / from.seconds, 2), decimals: 2, ..from })
    }),
    ("M6 seconds a beat", Misreading::SecondsPerBeat, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        Some(Sheet { rate: rounded(from.seconds / from.count, 2), decimals: 2, ..from })
    }),
    ("M7 milliseconds in the window", Misreading::Milliseconds, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        Some(Sheet { seconds: 1000.0 * from.seconds, ..from })
    }),
    ("M7 milliseconds in the rate", Misreading::Milliseconds, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        Some(Sheet { rate: rounded(from.rate / 1000.0, 3), decimals: 3, ..from })
    }),
    ("M8 another window claimed", Misreading::OtherWindow, |r, w, s| {
        let claimed = [10.0, 15.0, 20.0, 30.0, 60.0][(s.uniform() * 5.0) as usize];
        let k = 60.0 / claimed;
        let off = (claimed / (w.1 - w.0) - 1.0).abs() > 0.02 && (claimed - (w.1 - w.0)).abs() > 0.25;
        off.then(|| Sheet { seconds: claimed, ..with_multiplier(sheet(w, beats(r, w).len() as f64), k) })
    }),
    ("M9 multiplier upside down", Misreading::TurnedOver, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        let k = rounded(from.seconds / 60.0, 3);
        ((k - 1.0).abs() > 0.1).then(|| with_multiplier(from, k))
    }),
    ("M9 rate upside down", Misreading::TurnedOver, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        ((w.1 - w.0) / 60.0 < 0.9).then(|| Sheet {
            rate: rounded(from.count * from.seconds / 60.0, 1),
            decimals: 1,
            ..from
        })
    }),
    ("M10 spikes marked", Misreading::SpikesCounted, |r, w, s| {
        let mut marks = beats(r, w);
        let near = |t: f64| {
            r.peaks.iter().any(|p| (p.at_s - t).abs() < 0.14) || r.bumps.iter().any(|b| (b - t).abs() < 0.14)
        };
        let mut strays = 0;
        for _ in 0..400 {
            let t = s.range(w.0, w.1);
            if strays < 4 && !near(t) && !marks.iter().any(|m| (m - t).abs() < 0.05) {
                marks.push(t);
                strays += 1;
            }
        }
        (strays == 4).then(|| marked(w, marks))
    }),
    ("M11 breaths counted", Misreading::BreathsCounted, |r, w, _| {
        Some(sheet(w, (r.breaths_per_min * (w.1 - w.0) / 60.0).round().max(1.0)))
    }),
    ("M12 hum counted", Misreading::HumCounted, |_, w, s| {
        Some(sheet(w, (50.0 * (w.1 - w.0) * s.range(0.97, 1.03)).round()))
    }),
    ("M13 whole multiplier", Misreading::RoundedEarly, |r, w, _| {
        let right = 60.0 / (w.1 - w.0);
        let k = right.round();
        // Where the whole number is one that people know by heart it may be that, too.
        ((k / right - 1.0).abs() > 0.02 && !USUAL.contains(&k))
            .then(|| with_multiplier(sheet(w, beats(r, w).len() as f64), k))
    }),
    ("M13 rounded interval", Misreading::RoundedEarly, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        let interval = rounded(from.seconds / from.count, 1);
        let rate = (60.0 / interval).round();
        ((rate - from.rate).abs() > 1.5).then_some(Sheet { rate, ..from })
    }),
    ("M14 window under ten seconds", Misreading::WindowTooShort, |r, (a, _), s| {
        let w = (a, a + s.range(4.0, 9.5));
        let n = beats(r, w).len() as f64;
        (n > 2.0).then(|| sheet(w, n))
    }),
    ("M15 too many digits", Misreading::TooManyDigits, |r, w, _| {
        let from = sheet(w, beats(r, w).len() as f64);
        Some(Sheet { rate: rounded(60.0 * from.count / from.seconds, 3), decimals: 3, ..from })
    }),
    ("M16 one interval", Misreading::SingleInterval, |r, w, _| {
        let all = beats(r, w);
        let (x, y) = (*all.first()?, *all.get(1)?);
        let from = sheet((x - 0.01, y + 0.01), 1.0);
        Some(Sheet {
            seconds: rounded(y - x + 0.02, 2),
            rate: (60.0 / (y - x)).round(),
            multiplier: rounded(60.0 / (y - x + 0.02), 1),
            ..from
        })
    }),
    ("M17 from peak to foot", Misreading::MixedFeatures, |r, w, _| {
        // Timed intervals: A on a peak, B on a foot, a rise of some 0.15 s before a peak.
        let all = beats(r, w);
        let (x, y) = (*all.first()?, all.last()? - 0.15);
        (all.len() > 9).then(|| Sheet { off: Some(0.15), ..sheet((x, y), (all.len() - 1) as f64) })
    }),
];

#[test]
fn every_misreading_is_named_from_its_signature_over_windows_rates_and_subjects() {
    let mut stream = Stream::new(5, "ways");
    // Name of the way: right, nothing said, taken for another.
    let mut table: BTreeMap<&str, (u32, u32, BTreeMap<String, u32>)> = BTreeMap::new();
    let windows = [10.0, 11.0, 13.0, 13.4, 15.0, 17.2, 20.0, 25.0, 30.0, 41.3, 60.0];
    for step in 0..15 {
        let bpm = 40.0 + 10.0 * f64::from(step);
        for seed in 0..3 {
            let record = record(bpm, 35.0, 0.0, 100 * seed + step as u64, true);
            for length in windows {
                let a = stream.range(1.0, LENGTH_S - length - 3.0);
                for (what, expected, make) in &WAYS {
                    let Some(sheet) = make(&record, (a, a + length), &mut stream) else { continue };
                    let row = table.entry(what).or_default();
                    match name(&record, &sheet) {
                        Some(found) if found == *expected => row.0 += 1,
                        None => row.1 += 1,
                        Some(other) => *row.2.entry(format!("{other:?}")).or_default() += 1,
                    }
                }
            }
        }
    }
    println!("{:<36}{:>6}{:>8}{:>9}{:>8}  taken for", "misreading", "cases", "named", "nothing", "other");
    let mut poor = Vec::new();
    for (what, (right, nothing, others)) in &table {
        let other: u32 = others.values().sum();
        let all = right + nothing + other;
        let share = |n: u32| 100.0 * f64::from(n) / f64::from(all);
        println!(
            "{what:<36}{all:>6}{:>7.1}%{:>8.1}%{:>7.1}%  {others:?}",
            share(*right),
            share(*nothing),
            share(other)
        );
        if all < 40 || share(*right) < 80.0 || share(other) > 3.0 {
            poor.push(*what);
        }
    }
    assert_eq!(table.len(), WAYS.len(), "a way that never happened");
    assert!(poor.is_empty(), "{poor:?}");
}
