//! A saved log does everything again: the same samples whatever the frames were, and the same debrief to the letter.

use dicrotic::session::action::Refusal;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

/// A small scenario with a pulse, some unrest and a charger near.
const BENCH: &str = r#"
id = "b"
level = 1
title = "t"
aim = "a"
brief = "b"
[subject]
rest_rate_bpm = 70.0
pulse_mv = 40.0
finger_temp_c = 33.0
restlessness = 0.4
[bench]
charger = true
[recorder]
range_v = 0.1
[[attempt]]
name = "plain"
seed = 1
expect = { passed = true }
steps = [
  { wait = 4 }, { do = "record" }, { wait = 18 }, { do = "stop" },
  { do = "cursor", which = "a", t = "@beat+0.3" }, { do = "cursor", which = "b", t = "@beat+16.0" },
  { do = "answer", field = "count", text = "@count" }, { do = "check" },
]
"#;

#[test]
fn after_any_action_blocks_of_any_size_give_the_same_samples() {
    let actions = [
        json!({"do": "charger", "plugged": false}),
        json!({"do": "move", "part": "cable1", "x": 44.0, "y": 66.0}),
        json!({"do": "move", "part": "phone", "x": 60.0, "y": 60.0}),
        json!({"do": "strap", "tightness": 0.1}),
        json!({"do": "strap", "tightness": 0.95}),
        json!({"do": "strap_off"}),
        json!({"do": "sensor_side", "side": "away"}),
        json!({"do": "hand_height", "cm": 30.0}),
        json!({"do": "unplug", "end": "sensor"}),
        json!({"do": "tap_sensor"}),
        json!({"do": "ask_still"}),
        json!({"do": "ask_quiet"}),
        json!({"do": "press_finger"}),
        json!({"do": "wiggle", "end": "sensor"}),
        json!({"do": "swap_cable"}),
        json!({"do": "rest_arm"}),
        json!({"do": "range", "v": 0.02}),
        json!({"do": "zero"}),
        json!({"do": "low_pass", "hz": 10.0}),
        json!({"do": "high_pass", "hz": 0.5}),
        json!({"do": "notch", "hz": 50.0}),
        json!({"do": "average", "ms": 20.0}),
        json!({"do": "rate", "hz": 200}),
        json!({"do": "bits", "n": 8}),
        json!({"do": "manoeuvre", "what": "talk"}),
        json!({"do": "manoeuvre", "what": "laugh"}),
        json!({"do": "manoeuvre", "what": "deep_breath"}),
        json!({"do": "manoeuvre", "what": "stand_up"}),
        json!({"do": "manoeuvre", "what": {"exercise": {"seconds": 10.0, "effort": 0.6}}}),
    ];
    for action in actions {
        let mut whole = Session::new(BENCH, 8).unwrap();
        whole.run_long(777);
        let mut frames = whole.clone();
        act(&mut whole, action.clone()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
        act(&mut frames, action.clone()).unwrap();
        if action["do"] == "unplug" {
            // An open input: heard on the live signal only.
            whole.run_long(2000);
            (0..2000).for_each(|_| frames.run(1));
            assert_eq!(whole.live().unwrap().last(1.5), frames.live().unwrap().last(1.5), "{action}");
            continue;
        }
        for session in [&mut whole, &mut frames] {
            act(session, json!({"do": "record"})).unwrap_or_else(|r| panic!("{action}: {r:?}"));
        }
        whole.run_long(12_000);
        let mut left = 12_000;
        let mut k = 0;
        while left > 0 {
            k += 1;
            let n = (1 + k * 37 % 211).min(left);
            frames.run(n);
            left -= n;
        }
        assert!(whole.recordings()[0].recording == frames.recordings()[0].recording, "{action}");
    }
}

/// An attempt with everything in it: hints, a zoom, a label, two checks.
fn eventful(seed: u64, help: Option<&str>) -> Session {
    let mut s = Session::new(BENCH, seed).unwrap();
    let go = |s: &mut Session, actions: &[Value]| {
        for action in actions {
            act(s, action.clone()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
        }
    };
    if let Some(mode) = help {
        go(&mut s, &[json!({"do": "help", "mode": mode})]);
    }
    go(&mut s, &[json!({"do": "agree"}), json!({"do": "tap_sensor"})]);
    (0..40).for_each(|_| s.advance(0.016));
    go(&mut s, &[json!({"do": "move", "part": "cable1", "x": 44.0, "y": 66.0})]);
    (0..300).for_each(|k| s.advance(0.01 + 0.0003 * f64::from(k % 40)));
    go(&mut s, &[json!({"do": "record"})]);
    (0..1500).for_each(|k| s.advance(0.01 + 0.0003 * f64::from(k % 40)));
    go(&mut s, &[json!({"do": "stop"})]);
    let kept = s.shown_recording_number().unwrap();
    go(
        &mut s,
        &[
            json!({"do": "label", "recording": kept, "text": "rest, seated"}),
            json!({"do": "snap", "on": true}),
            json!({"do": "cursor", "which": "a", "t": 1.03}),
            json!({"do": "zoom", "from_s": 2.0, "to_s": 4.5}),
            json!({"do": "zoom_out"}),
            json!({"do": "cursor", "which": "b", "t": 16.9}),
            json!({"do": "answer", "field": "count", "text": "31"}),
            json!({"do": "answer", "field": "seconds", "text": "15.9"}),
            json!({"do": "answer", "field": "multiplier", "text": "60/15"}),
            json!({"do": "answer", "field": "rate", "text": "124"}),
            json!({"do": "check"}),
            json!({"do": "hint"}),
            json!({"do": "hint"}),
        ],
    );
    s
}

#[test]
fn a_log_replays_to_the_same_debrief() {
    for seed in [1, 9, 20_077] {
        for help in [None, Some("half"), Some("alone")] {
            let mut s = eventful(seed, help);
            for finish in [None, Some("check"), Some("hint")] {
                if let Some(name) = finish {
                    act(&mut s, json!({"do": name})).unwrap();
                }
                let again = Session::restore(&s.save().unwrap()).unwrap();
                let (a, b) = (s.view(), again.view());
                for part in
                    ["check", "hint", "hint_next", "worksheet", "recordings", "cursors", "trace", "task"]
                {
                    assert_eq!(a[part], b[part], "seed {seed}, help {help:?}, {finish:?}: {part}");
                }
                assert_eq!(s.evidence(), again.evidence());
                assert_eq!(s.debrief_hash(), again.debrief_hash());
                assert_eq!(s.debrief_hash().len(), 64);
            }
        }
    }
}

#[test]
fn the_hash_tells_debriefs_apart() {
    let hash = |seed, help| eventful(seed, help).debrief_hash();
    assert_ne!(hash(1, None), hash(2, None));
    assert_ne!(hash(1, None), hash(1, Some("half")));
    assert_eq!(Session::new(BENCH, 1).unwrap().debrief_hash(), "");
}

#[test]
fn an_attempt_saved_before_there_were_hints_is_restored() {
    let saved = json!({
        "version": 3, "scenario": BENCH, "seed": "5", "samples": 21_500,
        "log": [
            {"at": 1000, "action": {"do": "record"}},
            {"at": 21_000, "action": {"do": "stop"}},
            {"at": 21_000, "action": {"do": "cursor", "which": "a", "t": 1.0}},
            {"at": 21_000, "action": {"do": "cursor", "which": "b", "t": 17.0}},
            {"at": 21_000, "action": {"do": "answer", "field": "count", "text": "7"}},
            {"at": 21_000, "action": {"do": "check"}},
        ],
    });
    let s = Session::restore(&saved.to_string()).unwrap();
    assert_eq!(s.check().unwrap().tries, 1);
    assert_eq!(s.view()["help"], "alone");
}
