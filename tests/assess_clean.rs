//! Whether a window is clean, judged through running attempts against what is known from outside: the same seed without
//! the trouble has the same heart, so that the difference of the two recordings is the movement itself.

mod moved;

use dicrotic::rng::Stream;
use dicrotic::session::{Action, Session};
use moved::{DISTURBS, Drawn, Kind, drawn};
use serde_json::{Value, json};

const CLEAN_STRETCH: &str = include_str!("../scenarios/55-the-clean-stretch.toml");
/// What a finding about unrest may be called.
const UNREST: [&str; 4] = ["trace_restless", "trace_spike", "trace_step", "trace_unlike"];

fn act(session: &mut Session, action: Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// The findings about a window of the record that scenario 55 lays on the trace.
fn found(seed: u64, a: f64, b: f64) -> Vec<(&'static str, Value)> {
    let mut session = Session::new(CLEAN_STRETCH, seed).unwrap();
    act(&mut session, json!({"do": "cursor", "which": "a", "t": a}));
    act(&mut session, json!({"do": "cursor", "which": "b", "t": b}));
    act(&mut session, json!({"do": "check"}));
    let report = &session.check().unwrap().report;
    report.steps.iter().map(|f| (f.code, f.args.clone())).collect()
}

/// Windows with eight seconds of fidgeting in them, and with a spike nearly twice as tall as the pulse, are not clean; the
/// finding names a place inside the window and before the subject was asked to keep still (at 14 s of the record).
#[test]
fn fidgeting_in_part_of_the_window_is_noticed_and_placed() {
    for (seed, a, b) in [(33, 6.0, 24.0), (853_328_025, 12.0, 30.0)] {
        let found = found(seed, a, b);
        let Some((code, args)) = found.iter().find(|(code, _)| UNREST.contains(code)) else {
            panic!("seed {seed}, {a} to {b} s: {found:?}")
        };
        let (from, to) = (args["from_s"].as_f64().unwrap(), args["to_s"].as_f64().unwrap());
        assert!(a <= from && from < to && to <= b && from < 14.5, "seed {seed}: {code} {args}");
        assert!(args["height"].as_f64().unwrap() > DISTURBS, "seed {seed}: {code} {args}");
    }
}

/// What the check says of unrest in a drawn window.
fn unrest(drawn: &Drawn) -> Option<&'static str> {
    let report = &drawn.session.check().unwrap().report;
    report.steps.iter().map(|f| f.code).find(|code| UNREST.contains(code))
}

/// What became of drawn windows, two at a time.
fn all(seeds: std::ops::Range<u64>, draw: fn(u64) -> Drawn) -> Vec<(Drawn, Option<&'static str>)> {
    let middle = seeds.start + (seeds.end - seeds.start) / 2;
    let run = move |seeds: std::ops::Range<u64>| {
        seeds.map(draw).map(|d| (unrest(&d), d)).map(|(said, d)| (d, said)).collect::<Vec<_>>()
    };
    let end = seeds.end;
    let other = std::thread::spawn(move || run(middle..end));
    let mut all = run(seeds.start..middle);
    all.extend(other.join().unwrap());
    all
}

/// A number of the environment, for looking at other seeds than the suite does.
fn given(name: &str, or: u64) -> u64 {
    std::env::var(name).map_or(or, |v| v.parse().unwrap())
}

/// Windows over all kinds and sizes of movement, subjects, sensors, ranges and sampling rates: how many are judged otherwise
/// than the movement itself says, without any grey zone. With hands that rest or are restless to every degree: of the seeds
/// 1 to 2,000, with which the judgement was tuned, 15 of 1,167 (1.3 %); of 5,001 to 7,000 and 20,001 to 22,000, looked at once,
/// 35 of 2,323 (1.5 %). With tapping, trembling, talking, taps on the sensor and loose wires as well: 2.2 %, and 3.1 % and 2.7 % of those
/// looked at once; most of these lie within a tenth of a beat of the limit.
#[test]
fn windows_are_judged_by_the_movement_that_is_in_them() {
    let (first, n) = (given("CLEAN_FIRST", 1), given("CLEAN_N", 300));
    let all = all(first..first + n, drawn);
    let mut kinds = std::collections::BTreeMap::<Kind, [u32; 3]>::new();
    let (mut missed, mut wrongly, mut apart, mut near) = (0, 0, 0, 0);
    for (d, said) in &all {
        let moved = d.moved >= DISTURBS;
        let found = kinds.entry(d.kind).or_default();
        found[0] += 1;
        found[1] += u32::from(moved && said.is_none());
        found[2] += u32::from(!moved && said.is_some());
        missed += u32::from(moved && said.is_none());
        wrongly += u32::from(!moved && said.is_some());
        // A tenth of a beat to either side is a matter of taste.
        let grey = (d.moved - DISTURBS).abs() < 0.1;
        near += u32::from(grey);
        apart += u32::from(!grey && moved != said.is_some());
        if moved != said.is_some() {
            let Drawn { seed, kind, severity, moved, at_s, .. } = d;
            println!("seed {seed}: {kind:?} {severity:.2}, moved {moved:.2} at {at_s:.1} s, said {said:?}");
        }
    }
    kinds.iter().for_each(|(kind, [n, a, b])| println!("{kind:?}: {n}, missed {a}, wrongly {b}"));
    let share = |n: u32| 100.0 * f64::from(n) / all.len() as f64;
    println!("{} windows: missed {missed}, wrongly {wrongly}, {:.2} %", all.len(), share(missed + wrongly));
    println!("{near} within 0.1 of the limit; of all, {:.2} % judged otherwise beyond it", share(apart));
    let hand = [Kind::Still, Kind::Unrest, Kind::UnrestThenStill].map(|kind| kinds[&kind]);
    let [n, otherwise] = hand.iter().fold([0, 0], |[n, o], [k, a, b]| [n + k, o + a + b]);
    println!("hands at rest and restless: {otherwise} of {n}");
    assert!(n > 100 && f64::from(otherwise) <= 0.03 * f64::from(n), "hands: {otherwise} of {n}");
    assert!(kinds.len() >= 8, "{kinds:?}");
    assert!(share(missed + wrongly) < 3.5 && share(apart) < 2.5, "judged otherwise");
}

/// Subjects of all ages at rest, some with early beats, hearts from 45 to 140: what they cannot help is not held against
/// them. A shift of the finger larger than a third of a beat is movement, and left out here. Of 507 others, looked at once,
/// 12 were called restless (3 of 257 up to 95 beats/min): mostly fast hearts whose rate swings.
#[test]
fn subjects_at_rest_are_not_called_restless() {
    let (first, n) = (given("CLEAN_FIRST", 1), given("CLEAN_N", 150));
    let still = |seed| moved::of_kind(seed, Kind::Still, &mut Stream::new(seed, "at rest"));
    let all = all(first..first + n, still);
    let quiet: Vec<_> = all.iter().filter(|(d, _)| d.moved < 0.3).collect();
    let called: Vec<_> = quiet.iter().filter(|(_, said)| said.is_some()).collect();
    for (d, said) in &called {
        println!("seed {}: {said:?}\n{}", d.seed, d.subject);
    }
    let calm: Vec<_> = quiet.iter().filter(|(d, _)| d.bpm <= 95.0).collect();
    let calm_called = calm.iter().filter(|(_, said)| said.is_some()).count();
    println!(
        "{} at rest, {} called; up to 95 beats/min {}, {calm_called} called",
        quiet.len(),
        called.len(),
        calm.len()
    );
    assert!(quiet.len() as f64 > 0.85 * n as f64 && calm.len() as f64 > 0.3 * n as f64);
    assert!(
        calm_called as f64 <= 0.02 * calm.len() as f64,
        "hearts up to 95: {calm_called} of {}",
        calm.len()
    );
    assert!(called.len() as f64 <= 0.03 * quiet.len() as f64, "{} of {}", called.len(), quiet.len());
}
