//! Whether a window is clean, judged through running attempts against what is known from outside: the same seed without
//! the trouble has the same heart, so that the difference of the two recordings is the movement itself.

mod moved;

use dicrotic::session::{Action, Session};
use moved::{DISTURBS, Drawn, drawn};
use serde_json::{Value, json};

const CLEAN_STRETCH: &str = include_str!("../scenarios/55-the-clean-stretch.toml");
/// What a finding about unrest may be called.
const UNREST: [&str; 4] = ["trace_restless", "trace_spike", "trace_step", "trace_unlike"];

fn act(session: &mut Session, action: Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// The findings about a window of the record that scenario 55 lays on the strip.
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
fn unrest(drawn: &Drawn) -> Option<(&'static str, Value)> {
    let report = &drawn.session.check().unwrap().report;
    report.steps.iter().find(|f| UNREST.contains(&f.code)).map(|f| (f.code, f.args.clone()))
}

#[test]
#[ignore]
fn look() {
    let dir = "/tmp/clean-cache2";
    std::fs::create_dir_all(dir).unwrap();
    let env = |name: &str, or: u64| std::env::var(name).map_or(or, |v| v.parse().unwrap());
    let (first, n) = (env("FIRST", 1), env("N", 2000));
    let half = n.div_ceil(2);
    let run = move |from: u64, n: u64| {
        for seed in from..from + n {
            let d = drawn(seed);
            let recording = &d.session.take().unwrap().recording;
            let take = d.session.take().unwrap();
            let (a, b) = (take.a.unwrap(), take.b.unwrap());
            let c = (a - 2.5).max(0.0);
            let (from, to) = (recording.sample_at(c), recording.sample_at(b + 2.5));
            let bytes: Vec<u8> = recording.codes()[from..to].iter().flat_map(|v| v.to_le_bytes()).collect();
            std::fs::write(format!("{dir}/{seed}.bin"), bytes).unwrap();
            let mains = d.session.chain().unwrap().config().mains.hz;
            let of = |name: &str| {
                let at = d.subject.find(name).unwrap() + name.len() + 3;
                d.subject[at..].split('\n').next().unwrap().parse::<f64>().unwrap()
            };
            let clip = recording.codes()[recording.sample_at(a)..recording.sample_at(b)]
                .iter()
                .filter(|c| dicrotic::recorder::converter::at_limit(**c, 16))
                .count();
            let said = unrest(&d).map_or("-", |s| s.0);
            let text = format!(
                "{} {} {a} {c} {b} {mains} {} {:?} {:.3} {:.3} {:.2} {a:.2} {b:.2} {said}|early {:.1} bpm {:.0} age {:.0} rate {} clip {}",
                d.rate_hz,
                d.moved,
                d.seed,
                d.kind,
                d.severity,
                d.moved,
                d.at_s,
                of("premature_per_min"),
                of("rest_rate_bpm"),
                of("age_years"),
                d.rate_hz,
                clip
            );
            std::fs::write(format!("{dir}/{seed}.txt"), text).unwrap();
        }
    };
    let other = std::thread::spawn(move || run(first + half, n - half));
    run(first, half);
    other.join().unwrap();
}
