//! Advice that can be followed: what a hint says is done on the same bench, and then holds.

use dicrotic::session::{Session, script};
use serde_json::{Value, json};
use students::{act, wait};

mod students;

const REST: &str = include_str!("../scenarios/04-rest-pulse.toml");
const SOON_AFTER: &str = include_str!("../scenarios/61-soon-after-exercise.toml");
const AFTER: &str = include_str!("../scenarios/50-after-exercise.toml");

/// Records and puts the cursors about a stretch in the middle.
fn record(session: &mut Session, seconds: f64) {
    act(session, json!({"do": "record"}));
    wait(session, seconds);
    act(session, json!({"do": "stop"}));
    act(session, json!({"do": "cursor", "which": "a", "t": 1.3}));
    act(session, json!({"do": "cursor", "which": "b", "t": seconds - 1.4}));
}

fn codes(session: &Session) -> Vec<&'static str> {
    session.check().unwrap().report.steps.iter().map(|f| f.code).collect()
}

/// The answer that the last rung of the hints gives for the first step that does not hold.
fn answer(session: &mut Session) -> (String, Value) {
    for _ in 0..5 {
        act(session, json!({"do": "hint"}));
    }
    let hint = session.view()["hint"].clone();
    assert_eq!(hint["rung"], json!("answer"), "{hint}");
    (hint["code"].as_str().unwrap().to_string(), hint["args"]["value"].clone())
}

/// A recording that is small on the screen: the range that the hint names, set as it says, holds the next one.
#[test]
fn the_range_that_a_hint_names_suits() {
    let (mut followed, mut wrong) = (0, Vec::new());
    for seed in 2000..2060 {
        let mut session = Session::new(REST, seed).unwrap();
        wait(&mut session, 8.0);
        act(&mut session, json!({"do": "zero"}));
        act(&mut session, json!({"do": "range", "v": 0.5}));
        wait(&mut session, 2.0);
        record(&mut session, 33.0);
        act(&mut session, json!({"do": "check"}));
        if !codes(&session).contains(&"trace_small") {
            continue;
        }
        act(&mut session, json!({"do": "check"}));
        let (code, value) = answer(&mut session);
        if code != "trace_size" {
            // Something else is spoken of first.
            continue;
        }
        let millivolts = value.as_f64().unwrap_or_else(|| panic!("seed {seed}: no range is named"));
        let mut session = Session::new(REST, seed).unwrap();
        wait(&mut session, 50.0);
        act(&mut session, json!({"do": "range", "v": millivolts / 1000.0}));
        act(&mut session, json!({"do": "zero"}));
        wait(&mut session, 2.0);
        record(&mut session, 33.0);
        act(&mut session, json!({"do": "check"}));
        followed += 1;
        let bad = ["trace_small", "trace_clipped", "trace_tall"];
        if let Some(code) = codes(&session).iter().find(|c| bad.contains(c)) {
            wrong.push((seed, millivolts, *code));
        }
    }
    println!("{followed} followed, {wrong:?}");
    // The next half minute is another one: a movement may have been in the first or be in the second. (1 of 56 cut off and 5
    // small when this was written; by the height of the pulse alone it had been 17 of 58 cut off.)
    let cut = wrong.iter().filter(|(.., code)| *code != "trace_small").count();
    assert!(
        followed >= 30 && cut * 20 <= followed && wrong.len() * 8 <= followed,
        "{followed} followed: {wrong:?}"
    );
}

/// An uncertainty is written with the sign that the page itself writes.
#[test]
fn an_uncertainty_may_be_typed_with_its_sign() {
    let mut session = Session::new(REST, 5).unwrap();
    for text in ["4", "\u{b1}4", "\u{b1} 4", "+-4", "+/- 4 beats/min"] {
        act(&mut session, json!({"do": "answer", "field": "uncertainty", "text": text}));
        assert_eq!(session.view()["worksheet"]["uncertainty"]["value"], json!(4.0), "{text}");
    }
}

#[test]
fn a_time_may_be_typed_as_a_clock_shows_it() {
    let mut session = Session::new(SOON_AFTER, 5).unwrap();
    for (text, seconds) in [("0:13", 13.0), ("1:05", 65.0), ("13", 13.0), ("26/2", 13.0)] {
        act(&mut session, json!({"do": "answer", "field": "middle", "text": text}));
        assert_eq!(session.view()["worksheet"]["middle"]["value"], json!(seconds), "{text}");
    }
    // In the multiplier's field a colon divides.
    act(&mut session, json!({"do": "answer", "field": "multiplier", "text": "60:15"}));
    assert_eq!(session.view()["worksheet"]["multiplier"]["value"], json!(4.0));
}

/// The brief asks for a short window after exercise; a minute mixes fast beats with slow ones.
#[test]
fn a_long_window_after_exercise_is_told() {
    let after = |length: f64| {
        let steps = [
            json!({"do": "range", "v": 0.1}),
            json!({"wait": 3}),
            json!({"do": "record"}),
            json!({"wait": 64}),
            json!({"do": "stop"}),
            json!({"do": "cursor", "which": "a", "t": "@beat+0.3"}),
            json!({"do": "cursor", "which": "b", "t": format!("@beat+{}", 0.3 + length)}),
            json!({"do": "answer", "field": "count", "text": "@count"}),
            json!({"do": "answer", "field": "seconds", "text": "@seconds"}),
            json!({"do": "answer", "field": "multiplier", "text": "@multiplier"}),
            json!({"do": "answer", "field": "rate", "text": "@rate"}),
            json!({"do": "check"}),
        ];
        let mut session = Session::new(AFTER, 196).unwrap();
        script::play(&mut session, &steps).unwrap();
        codes(&session).contains(&"window_long")
    };
    assert!(after(50.0));
    assert!(!after(11.0));
}

/// Slips that are made of right numbers: what they are told is what was done.
#[test]
fn numbers_of_the_whole_recording_are_told_as_such() {
    let text =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/54-given-window.toml"))
            .unwrap();
    let mut named = Vec::new();
    for seed in 301..313 {
        let mut session = Session::new(&text, seed).unwrap();
        wait(&mut session, 5.0);
        act(&mut session, json!({"do": "record"}));
        wait(&mut session, 30.0);
        act(&mut session, json!({"do": "stop"}));
        let seconds = session.view()["task"]["seconds"].as_f64().unwrap();
        act(&mut session, json!({"do": "cursor", "which": "a", "t": 2.1}));
        act(&mut session, json!({"do": "cursor", "which": "b", "t": 2.1 + seconds}));
        let beats = session.reference_peaks().len();
        let rate = (60.0 * beats as f64 / 30.0).round();
        for (field, typed) in [
            ("count", format!("{beats}")),
            ("seconds", "30".into()),
            ("multiplier", "2".into()),
            ("rate", format!("{rate}")),
        ] {
            act(&mut session, json!({"do": "answer", "field": field, "text": typed}));
        }
        act(&mut session, json!({"do": "check"}));
        let id = session.check().unwrap().misreading.as_ref().map(|m| m.id.name());
        named.push((seed, seconds, id));
    }
    assert!(named.iter().all(|(.., id)| *id == Some("whole_recording")), "{named:?}");
}

/// With the right multiplier on the sheet a slip of the pen in the rate is no other multiplier.
#[test]
fn a_slip_in_the_rate_is_not_called_another_multiplier() {
    let mut named = Vec::new();
    for off in [-9.0, -5.0, 4.0, 5.0, 7.0] {
        let steps = [
            json!({"wait": 8}),
            json!({"do": "zero"}),
            json!({"do": "range", "v": 0.1}),
            json!({"wait": 3}),
            json!({"do": "record"}),
            json!({"wait": 34}),
            json!({"do": "stop"}),
            json!({"do": "cursor", "which": "a", "t": "@beat+0.3"}),
            json!({"do": "cursor", "which": "b", "t": "@beat+17.2"}),
            json!({"do": "answer", "field": "count", "text": "@count"}),
            json!({"do": "answer", "field": "seconds", "text": "@seconds"}),
            json!({"do": "answer", "field": "multiplier", "text": "@multiplier"}),
        ];
        let mut session = Session::new(REST, 41).unwrap();
        script::play(&mut session, &steps).unwrap();
        let value = |s: &Session, field: &str| s.view()["worksheet"][field]["value"].as_f64().unwrap();
        let right = (60.0 * value(&session, "count") / value(&session, "seconds")).round();
        let count = value(&session, "count");
        let typed = right + off;
        // A number that is a common multiplier times the count would rightly be told as that.
        if [2.0, 3.0, 4.0, 6.0].iter().any(|k| (k * count - typed).abs() <= 0.5) {
            continue;
        }
        act(&mut session, json!({"do": "answer", "field": "rate", "text": format!("{typed}")}));
        act(&mut session, json!({"do": "check"}));
        named.push((typed, session.check().unwrap().misreading.as_ref().map(|m| m.id.name())));
    }
    assert!(
        named.len() >= 3 && named.iter().all(|(_, id)| id.is_none_or(|id| id != "other_multiplier")),
        "{named:?}"
    );
}

/// A pulse of two per cent of the screen: no count is called right or near there.
#[test]
fn a_count_on_a_trace_that_shows_no_beats_is_not_judged() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/44-two-at-once-a.toml");
    // At the worst of both: half as cold, the beats can still be seen.
    let text = std::fs::read_to_string(folder).unwrap().replace("severity = [0.2, 0.8]", "severity = 1.0");
    let mut judged = Vec::new();
    for seed in 171..=180 {
        let mut session = Session::new(&text, seed).unwrap();
        act(&mut session, json!({"do": "strap", "tightness": 0.6}));
        wait(&mut session, 5.0);
        record(&mut session, 20.0);
        for (field, typed) in [("count", "13"), ("seconds", "17.3"), ("multiplier", "3.47"), ("rate", "45")] {
            act(&mut session, json!({"do": "answer", "field": field, "text": typed}));
        }
        act(&mut session, json!({"do": "check"}));
        let peaks = session.reference_peaks();
        let unsure = peaks.iter().filter(|p| !p.sure).count();
        judged.push((
            seed,
            peaks.len(),
            unsure,
            codes(&session).into_iter().find(|c| c.starts_with("count_")),
        ));
    }
    println!("{judged:?}");
    let hidden = judged.iter().filter(|(_, all, unsure, _)| 2 * unsure > *all + 4);
    assert!(hidden.clone().count() > 0, "{judged:?}");
    assert!(hidden.clone().all(|(.., code)| *code == Some("count_unsure")), "{judged:?}");
}
