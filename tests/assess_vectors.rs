//! Misreadings from their signatures, over windows, rates and subjects: how often each is named right, how often nothing is said,
//! and what it is taken for otherwise. Only answers that are judged wrong are looked at: one that a misreading makes and that is right all
//! the same has nothing to be named.

mod common_records;

use common_records::{LENGTH_S, Record, record, sheet as empty};
use dicrotic::assess::Criteria;
use dicrotic::assess::asked::judge;
use dicrotic::assess::misreading::{Evidence, Misreading, hypotheses, named};
use dicrotic::assess::sheet::{Sheet as Put, Written};
use dicrotic::assess::task::{Field, Kind, Task};
use dicrotic::assess::verdict::{Report, Typed};
use dicrotic::assess::window::allowed;
use dicrotic::rng::Stream;
use dicrotic::trace::axes;
use std::collections::BTreeMap;

/// What one student did in one window.
#[derive(Clone)]
struct Sheet {
    kind: Kind,
    window: Option<(f64, f64)>,
    marks: Vec<f64>,
    count: f64,
    seconds: f64,
    multiplier: f64,
    rate: f64,
    decimals: usize,
    range_mv: Option<f64>,
}

/// What lies around: how long the recording is, and how many seconds a screen holds.
#[derive(Clone, Copy)]
struct Around {
    duration_s: f64,
    screen_s: f64,
}

fn rounded(x: f64, digits: i32) -> f64 {
    let by: f64 = (0..digits).map(|_| 10.0).product();
    (x * by).round() / by
}

/// The numbers that follow from a count in a window, worked out right.
fn sheet(window: (f64, f64), count: f64) -> Sheet {
    let seconds = rounded(window.1 - window.0, 1);
    Sheet {
        kind: Kind::OwnWindow,
        window: Some(window),
        marks: Vec::new(),
        count,
        seconds,
        multiplier: rounded(60.0 / seconds, 2),
        rate: (60.0 * count / seconds).round(),
        decimals: 0,
        range_mv: None,
    }
}

/// The same with another T, and what follows from it.
fn with_seconds(s: Sheet, seconds: f64) -> Sheet {
    let multiplier = rounded(60.0 / seconds, 2);
    Sheet { seconds, multiplier, rate: (60.0 * s.count / seconds).round(), ..s }
}

/// What a time reads as: to a hundredth, a tenth or a whole second.
fn read(t: f64, s: &mut Stream) -> f64 {
    rounded(t, (s.uniform() * 3.0) as i32)
}

fn judged(record: &Record, s: &Sheet, around: Around) -> (Report, Option<Misreading>) {
    let window_s = if s.kind == Kind::Intervals { 5.0 } else { 10.0 };
    let criteria = Criteria { window_s, record_s: 1.0, ..Criteria::default() };
    let typed = Typed {
        count: Some(s.count),
        seconds: Some(s.seconds),
        multiplier: Some(s.multiplier).filter(|_| s.kind == Kind::OwnWindow),
        rate: Some(s.rate),
    };
    let mut put: Put = empty(s.kind, &criteria, record, around.duration_s);
    put.task = Task { kind: s.kind, ..Task::default() };
    put.cursors = s.window;
    put.typed = typed;
    put.written =
        Written::default().with(Field::Range, s.range_mv).with(Field::Amplitude, s.range_mv.map(|_| 40.0));
    put.values = s.range_mv.map(|_| (-0.01, 0.03));
    let report = judge(&put);
    let squares_s = [5.0, 10.0, 14.0].map(|most| axes::step(around.screen_s, most));
    let evidence = Evidence {
        sheet: &put,
        report: &report,
        bumps: &record.bumps,
        marks: &s.marks,
        rate_decimals: s.decimals,
        breaths_per_min: record.breaths_per_min,
        power_line_shows_hz: 50.0,
        screens_s: &[around.screen_s],
        squares_s: &squares_s,
    };
    let name = named(&hypotheses(&evidence), &report).map(|h| h.id);
    (report, name)
}

/// What goes wrong in each way; `None` where it cannot happen in that window.
type Way = (&'static str, Misreading, fn(&Record, (f64, f64), Around, &mut Stream) -> Option<Sheet>);

fn inside(times: impl Iterator<Item = f64>, (a, b): (f64, f64)) -> Vec<f64> {
    times.filter(|t| *t >= a && *t < b).collect()
}

fn beats(r: &Record, w: (f64, f64)) -> Vec<f64> {
    inside(r.peaks.iter().filter(|p| p.sure).map(|p| p.at_s), w)
}

fn counted(r: &Record, w: (f64, f64)) -> Sheet {
    sheet(w, beats(r, w).len() as f64)
}

fn marked(w: (f64, f64), mut marks: Vec<f64>) -> Sheet {
    marks.sort_by(f64::total_cmp);
    Sheet { marks: marks.clone(), ..sheet(w, marks.len() as f64) }
}

fn with_multiplier(s: Sheet, k: f64) -> Sheet {
    Sheet { multiplier: k, rate: (s.count * k).round(), ..s }
}

/// From the first peak of a window to its last: intervals timed, and how many there are.
fn timed(r: &Record, w: (f64, f64)) -> Option<(Sheet, f64)> {
    let all = beats(r, w);
    let (first, last) = (*all.first()?, *all.last()?);
    let n = all.len() as f64 - 1.0;
    (n >= 4.0).then(|| (Sheet { kind: Kind::Intervals, ..sheet((first, last), n) }, n))
}

const USUAL: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];

const WAYS: [Way; 39] = [
    ("M1 bumps, marked", Misreading::BumpsCounted, |r, w, _, _| {
        let (p, b) = (beats(r, w), inside(r.bumps.iter().copied(), w));
        (b.len() * 10 >= p.len() * 8).then(|| marked(w, [p, b].concat()))
    }),
    ("M1 bumps, counted only", Misreading::BumpsCounted, |r, w, _, s| {
        let n = beats(r, w).len() as f64;
        Some(sheet(w, (n * s.range(1.85, 2.0)).round()))
    }),
    ("M2 every other, marked", Misreading::BeatsMissed, |r, w, _, _| {
        Some(marked(w, beats(r, w).into_iter().step_by(2).collect()))
    }),
    ("M2 every other, counted only", Misreading::BeatsMissed, |r, w, _, _| {
        Some(sheet(w, (beats(r, w).len() as f64 / 2.0).round()))
    }),
    ("M2 one in six missed, marked", Misreading::BeatsMissed, |r, w, _, _| {
        let all = beats(r, w);
        let left: Vec<f64> = all.iter().enumerate().filter(|(k, _)| k % 6 != 3).map(|(_, t)| *t).collect();
        (left.len() + 2 <= all.len()).then(|| marked(w, left))
    }),
    ("M3 one too many", Misreading::OneTooMany, |r, w, _, _| {
        Some(sheet(w, allowed(&r.peaks, w.0, w.1, 0.06, 0.0).most as f64 + 1.0))
    }),
    ("M4 one too few", Misreading::OneTooFew, |r, w, _, _| {
        Some(sheet(w, allowed(&r.peaks, w.0, w.1, 0.06, 0.0).least as f64 - 1.0))
    }),
    ("M5 another multiplier", Misreading::OtherMultiplier, |r, w, _, s| {
        let right = 60.0 / (w.1 - w.0);
        let k = USUAL[1 + (s.uniform() * 5.0) as usize];
        // The whole number nearest to the right one is rounding, and nobody can tell the two apart.
        let apart = (k / right - 1.0).abs() > 0.03 && (k - right).abs() > 0.5;
        apart.then(|| with_multiplier(counted(r, w), k))
    }),
    ("M5 another multiplier in the rate", Misreading::OtherMultiplier, |r, w, _, s| {
        let right = 60.0 / (w.1 - w.0);
        let k = USUAL[1 + (s.uniform() * 5.0) as usize];
        let from = counted(r, w);
        ((k / right - 1.0).abs() > 0.03 && (k - right).abs() > 0.5)
            .then(|| Sheet { rate: (from.count * k).round(), ..from })
    }),
    ("M6 count given as rate", Misreading::NotScaled, |r, w, _, _| {
        let from = counted(r, w);
        ((60.0 / (w.1 - w.0) - 1.0).abs() > 0.05).then_some(Sheet { rate: from.count, ..from })
    }),
    ("M6 beats a second", Misreading::PerSecond, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { rate: rounded(from.count / from.seconds, 2), decimals: 2, ..from })
    }),
    ("M6 seconds a beat", Misreading::SecondsPerBeat, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { rate: rounded(from.seconds / from.count, 2), decimals: 2, ..from })
    }),
    ("M7 milliseconds in the window", Misreading::Milliseconds, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { seconds: 1000.0 * from.seconds, ..from })
    }),
    ("M7 milliseconds in the rate", Misreading::Milliseconds, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { rate: rounded(from.rate / 1000.0, 3), decimals: 3, ..from })
    }),
    ("M8 another window claimed", Misreading::OtherWindow, |r, w, around, s| {
        let claimed = [10.0, 15.0, 20.0, 30.0, 60.0][(s.uniform() * 5.0) as usize];
        // Who claims just what the screen or the recording holds, or where B stands, has written what those misreadings write.
        let other = [around.screen_s, around.duration_s, w.1].iter().any(|t| (t - claimed).abs() <= 0.5);
        (!other).then(|| with_seconds(counted(r, w), claimed))
    }),
    ("M9 multiplier upside down", Misreading::TurnedOver, |r, w, _, _| {
        let from = counted(r, w);
        let k = rounded(from.seconds / 60.0, 3);
        ((k - 1.0).abs() > 0.1).then(|| with_multiplier(from, k))
    }),
    ("M9 rate upside down", Misreading::TurnedOver, |r, w, _, _| {
        let from = counted(r, w);
        ((w.1 - w.0) / 60.0 < 0.9).then(|| Sheet {
            rate: rounded(from.count * from.seconds / 60.0, 1),
            decimals: 1,
            ..from
        })
    }),
    ("M10 spikes marked", Misreading::SpikesCounted, |r, w, _, s| {
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
    ("M11 breaths counted", Misreading::BreathsCounted, |r, w, _, _| {
        Some(sheet(w, (r.breaths_per_min * (w.1 - w.0) / 60.0).round().max(1.0)))
    }),
    ("M12 hum counted", Misreading::HumCounted, |_, w, _, s| {
        Some(sheet(w, (50.0 * (w.1 - w.0) * s.range(0.97, 1.03)).round()))
    }),
    ("M13 whole multiplier", Misreading::RoundedEarly, |r, w, _, _| {
        let right = 60.0 / (w.1 - w.0);
        let k = right.round();
        // Where the whole number is one that people know by heart it may be that, too.
        ((k / right - 1.0).abs() > 0.02 && !USUAL.contains(&k)).then(|| with_multiplier(counted(r, w), k))
    }),
    ("M13 rounded interval", Misreading::RoundedEarly, |r, w, _, _| {
        let from = counted(r, w);
        let interval = rounded(from.seconds / from.count, 1);
        let rate = (60.0 / interval).round();
        ((rate - from.rate).abs() > 1.5).then_some(Sheet { rate, ..from })
    }),
    ("M14 window under ten seconds", Misreading::WindowTooShort, |r, (a, _), _, s| {
        let w = (a, a + s.range(4.0, 9.5));
        let n = beats(r, w).len() as f64;
        (n > 2.0).then(|| sheet(w, n))
    }),
    ("M15 too many digits", Misreading::TooManyDigits, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { rate: rounded(60.0 * from.count / from.seconds, 3), decimals: 3, ..from })
    }),
    ("M16 one interval", Misreading::SingleInterval, |r, w, _, _| {
        let all = beats(r, w);
        let (x, y) = (*all.first()?, *all.get(1)?);
        let window = (x - 0.01, y - 0.1);
        Some(with_seconds(sheet(window, 1.0), rounded(window.1 - window.0, 2)))
    }),
    ("M17 from peak to foot", Misreading::MixedFeatures, |r, w, _, _| {
        // Timed intervals: A on a peak, B on a foot, a rise of some 0.15 s before a peak.
        let (from, n) = timed(r, w)?;
        let (a, b) = from.window?;
        let crest = r.landmarks.iter().find(|l| (l.peak_s - b).abs() < 0.05)?.crest_ms / 1000.0;
        Some(Sheet { kind: Kind::Intervals, ..sheet((a, b - crest), n) })
    }),
    ("M18 time at B", Misreading::TimeAtB, |r, w, _, s| Some(with_seconds(counted(r, w), read(w.1, s)))),
    ("M18 time at B, multiplier of the window", Misreading::TimeAtB, |r, w, _, s| {
        Some(Sheet { seconds: read(w.1, s), ..counted(r, w) })
    }),
    ("M19 whole recording", Misreading::WholeRecording, |r, w, around, s| {
        Some(with_seconds(counted(r, w), read(around.duration_s, s)))
    }),
    ("M19 whole recording, its beats counted", Misreading::WholeRecording, |r, _, around, s| {
        let all = beats(r, (0.0, around.duration_s)).len() as f64;
        Some(Sheet {
            window: None,
            ..with_seconds(sheet((0.0, around.duration_s), all), read(around.duration_s, s))
        })
    }),
    ("M20 length of the screen", Misreading::ScreenLength, |r, w, around, _| {
        Some(with_seconds(counted(r, w), around.screen_s))
    }),
    ("M21 minutes", Misreading::Minutes, |r, w, _, _| {
        let from = counted(r, w);
        Some(Sheet { seconds: rounded((w.1 - w.0) / 60.0, 2), ..from })
    }),
    ("M21 minutes, and the multiplier from them", Misreading::Minutes, |r, w, _, _| {
        Some(with_seconds(counted(r, w), rounded((w.1 - w.0) / 60.0, 2)))
    }),
    ("M22 squares of the grid", Misreading::GridSquares, |r, w, around, s| {
        let most = [5.0, 10.0, 14.0][(s.uniform() * 3.0) as usize];
        let square = axes::step(around.screen_s, most);
        let squares = (2.0 * (w.1 - w.0) / square).round() / 2.0;
        // As many squares as a usual window has seconds may as well be a claim to such a window: nothing is named then.
        let other = [6.0, 10.0, 15.0, 20.0, 30.0, 60.0, around.screen_s].contains(&squares);
        ((square - 1.0).abs() > 1e-6 && !other).then(|| with_seconds(counted(r, w), squares))
    }),
    ("M23 range from edge to edge", Misreading::BothSides, |r, w, _, _| {
        Some(Sheet { kind: Kind::ReadRange, range_mv: Some(200.0), ..counted(r, w) })
    }),
    ("M24 posts for gaps", Misreading::PostsCounted, |r, w, _, _| {
        let (from, n) = timed(r, w)?;
        Some(Sheet { rate: (60.0 * (n + 1.0) / from.seconds).round(), count: n + 1.0, ..from })
    }),
    ("M25 one gap missed", Misreading::GapMissed, |r, w, _, _| {
        let (from, n) = timed(r, w)?;
        Some(Sheet { rate: (60.0 * (n - 1.0) / from.seconds).round(), count: n - 1.0, ..from })
    }),
    ("M26 intervals, time at B", Misreading::TimeAtB, |r, w, _, s| {
        let (from, n) = timed(r, w)?;
        let b = read(from.window?.1, s);
        Some(Sheet { seconds: b, rate: (60.0 * n / b).round(), ..from })
    }),
    ("M26 intervals, bumps counted", Misreading::BumpsCounted, |r, w, _, _| {
        let (from, n) = timed(r, w)?;
        Some(Sheet { rate: (120.0 * n / from.seconds).round(), count: 2.0 * n, ..from })
    }),
];

const DRAWS: u32 = 1000;

#[test]
fn every_misreading_is_named_from_its_signature_over_windows_rates_and_subjects() {
    let mut stream = Stream::new(5, "ways");
    let records: Vec<Record> = (0..15)
        .map(|step| record(40.0 + 10.0 * f64::from(step), 35.0, 0.0, 700 + step as u64, true))
        .collect();
    println!(
        "{:<42}{:>6}{:>7}{:>8}{:>9}{:>8}  taken for",
        "misreading", "draws", "right", "named", "nothing", "other"
    );
    let mut poor = Vec::new();
    for (what, expected, make) in &WAYS {
        let (mut tries, mut right, mut named, mut nothing) = (0_u32, 0, 0, 0);
        let mut others: BTreeMap<String, u32> = BTreeMap::new();
        while named + nothing + others.values().sum::<u32>() < DRAWS {
            tries += 1;
            assert!(tries < 200 * DRAWS, "{what}: hardly ever happens");
            let record = &records[(tries as usize) % records.len()];
            // The lengths that labs use, and any other.
            let usual = [10.0, 15.0, 20.0, 25.0, 30.0, 60.0][(stream.uniform() * 6.0) as usize];
            let length = if stream.uniform() < 0.3 { usual } else { stream.range(10.0, 60.0) };
            let a = stream.range(1.0, LENGTH_S - length - 4.0);
            let around = Around {
                duration_s: rounded(stream.range(a + length + 1.0, LENGTH_S), 2),
                screen_s: [5.0, 10.0, 20.0, 30.0][(stream.uniform() * 4.0) as usize],
            };
            let Some(sheet) = make(record, (a, a + length), around, &mut stream) else { continue };
            let (report, name) = judged(record, &sheet, around);
            let remark = *expected == Misreading::TooManyDigits;
            if !remark && (report.passed || report.steps.iter().all(|f| !f.is_wrong())) {
                right += 1;
                continue;
            }
            match name {
                Some(found) if found == *expected => named += 1,
                None => nothing += 1,
                Some(other) => *others.entry(format!("{other:?}")).or_default() += 1,
            }
        }
        let other: u32 = others.values().sum();
        let share = |n: u32| 100.0 * f64::from(n) / f64::from(DRAWS);
        println!(
            "{what:<42}{DRAWS:>6}{right:>7}{:>7.1}%{:>8.1}%{:>7.1}%  {others:?}",
            share(named),
            share(nothing),
            share(other)
        );
        if share(named) < 95.0 || other > 0 {
            poor.push(*what);
        }
    }
    assert!(poor.is_empty(), "{poor:?}");
}
