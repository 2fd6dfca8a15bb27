//! Where the work stands: the ticks follow the bench, the recording and the worksheet; what comes next gives nothing away.

mod shipped;

use dicrotic::scenario::Scenario;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};
use shipped::scenarios;

fn act(session: &mut Session, action: Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// The steps that are not done, in order.
fn open(session: &Session) -> Vec<String> {
    let told = session.told_steps();
    let steps = told["steps"].as_array().unwrap();
    steps.iter().filter(|s| s["done"] == false).map(|s| s["step"].as_str().unwrap().to_string()).collect()
}

/// Lets time pass in pieces that the page would take.
fn run(session: &mut Session, seconds: f64) {
    for _ in 0..(seconds / 0.2).ceil() as usize {
        session.advance(0.2);
    }
}

fn next(session: &Session) -> String {
    session.told_steps()["next"].as_str().unwrap_or("nothing").to_string()
}

#[test]
fn every_worked_example_ends_with_every_step_done_and_says_so_on_the_way() {
    let mut ended = 0;
    for (name, text) in scenarios() {
        let Some(mut lab) = Session::worked(&text).unwrap() else { continue };
        let mut before_check = Vec::new();
        while let Some(step) = lab.worked_next() {
            if step["action"]["do"] == "answer" || step["action"]["do"] == "name" {
                before_check = open(&lab);
            }
            if let Some(wait) = step["wait_s"].as_f64() {
                run(&mut lab, wait);
            }
        }
        if !open(&lab).is_empty() {
            eprintln!("{name}: {:?} {}", open(&lab), next(&lab));
        }
        // Where the pool drew that nothing is wrong nothing is named, and the step stays open: a tick would tell it.
        let nothing = text.contains("\n[pool]") && lab.view()["named"] == json!([]);
        assert!(
            before_check.is_empty()
                || before_check == ["check"]
                || (nothing && before_check == ["name", "check"]),
            "{name}: {before_check:?} before the check"
        );
        ended += 1;
    }
    assert!(ended >= 60, "{ended}");
}

#[test]
fn wiring_by_hand_is_led_one_thing_at_a_time_and_a_tick_goes_when_the_bench_is_no_longer_so() {
    let text =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/01-first-wiring.toml"))
            .unwrap();
    let mut lab = Session::new(&text, 5).unwrap();
    assert_eq!(open(&lab), ["power", "sensor", "adjust", "record", "measure", "check"]);
    for (code, deed) in [
        ("power_recorder_end", json!({"do": "plug", "end": "power_recorder", "socket": "recorder_inlet"})),
        ("power_outlet_end", json!({"do": "plug", "end": "power_wall", "socket": "outlet2"})),
        ("power_recorder_switch", json!({"do": "switch", "id": "recorder", "on": true})),
        ("power_data_recorder", json!({"do": "plug", "end": "data_recorder", "socket": "recorder_data"})),
        ("power_data_computer", json!({"do": "plug", "end": "data_computer", "socket": "port1"})),
        ("power_sensor_cable", json!({"do": "plug", "end": "sensor", "socket": "in1"})),
    ] {
        assert_eq!(next(&lab), code);
        act(&mut lab, deed);
    }
    run(&mut lab, 3.0);
    assert_eq!(next(&lab), "sensor_caution");
    act(&mut lab, json!({"do": "agree"}));
    assert_eq!(next(&lab), "sensor_on");
    act(&mut lab, json!({"do": "strap_on"}));
    act(&mut lab, json!({"do": "strap", "tightness": 0.05}));
    assert_eq!(next(&lab), "sensor_loose");
    act(&mut lab, json!({"do": "strap", "tightness": 0.72}));
    run(&mut lab, 8.0);
    assert_eq!(next(&lab), "adjust_small");
    act(&mut lab, json!({"do": "switch", "id": "recorder", "on": false}));
    assert_eq!(next(&lab), "power_recorder_switch", "what was done is undone");
}

#[test]
fn where_something_is_to_be_named_the_next_step_is_said_in_general() {
    let general = [
        "power_any",
        "sensor_caution",
        "sensor_on",
        "adjust_any",
        "record",
        "record_on",
        "measure_open",
        "measure_cursors",
        "measure_blanks",
        "measure_foot_and_peak",
        "measure_beat_to_beat",
        "measure_height",
        "measure_intervals",
        "name",
        "check",
        "check_again",
        "nothing",
    ];
    let mut met = 0;
    for (name, text) in scenarios() {
        if !Scenario::read(&text).unwrap().name_faults {
            continue;
        }
        let mut lab = Session::new(&text, 7).unwrap();
        run(&mut lab, 12.0);
        assert!(general.contains(&next(&lab).as_str()), "{name}: {}", next(&lab));
        met += 1;
    }
    assert!(met >= 30, "{met}");
}

/// A bench that is wired and on whose finger the sensor sits, the caution agreed to, at a range.
fn ready_at(seed: u64, range_v: f64) -> Session {
    let scenario = scenarios().into_iter().find(|(name, _)| name.contains("rest-pulse")).unwrap().1;
    let mut lab = Session::new(&scenario, seed).unwrap();
    act(&mut lab, json!({"do": "agree"}));
    if !lab.view()["bench"]["strap"]["on"].as_bool().unwrap() {
        act(&mut lab, json!({"do": "strap_on"}));
        act(&mut lab, json!({"do": "strap", "tightness": 0.72}));
    }
    act(&mut lab, json!({"do": "range", "v": range_v}));
    run(&mut lab, 12.0);
    lab
}

/// What the line says of a range never sends anybody to and fro: over every range from large to small it goes on to smaller
/// ones while the pulse is small, and from there no advice leads back to a range that was called too large.
#[test]
fn the_advice_about_the_range_does_not_contradict_itself() {
    const RANGES_V: [f64; 6] = [1.0, 0.5, 0.2, 0.1, 0.05, 0.02];
    let mut fits = 0;
    for seed in 1..=24 {
        let told: Vec<String> = RANGES_V.iter().map(|v| next(&ready_at(seed, *v))).collect();
        let last_small = told.iter().rposition(|code| code == "adjust_small").map_or(0, |k| k + 1);
        assert!(
            told[..last_small].iter().all(|code| code == "adjust_small"),
            "seed {seed}: {told:?} at {RANGES_V:?} V"
        );
        let after = told.get(last_small).map(String::as_str);
        assert!(
            matches!(after, Some("record" | "adjust_zero" | "adjust_restless"))
                || last_small == RANGES_V.len(),
            "seed {seed}: sent from a small pulse to {after:?}: {told:?}"
        );
        fits += usize::from(after == Some("record"));
    }
    assert!(fits >= 16, "{fits} of 24 can record where they are sent");
}

#[test]
fn a_recording_that_lies_there_is_to_be_made_again_and_a_second_one_is_not_to_be_opened_while_it_runs() {
    let mut lab = ready_at(3, 0.01);
    act(&mut lab, json!({"do": "record"}));
    run(&mut lab, 22.0);
    assert_eq!(next(&lab), "adjust_clipped");
    act(&mut lab, json!({"do": "stop"}));
    assert_eq!(next(&lab), "kept_clipped");
    act(&mut lab, json!({"do": "range", "v": 0.1}));
    assert_eq!(next(&lab), "kept_clipped", "a new range does not change what was recorded");
    act(&mut lab, json!({"do": "show", "mode": "live"}));
    // Where the trace is good, a recording lies there to be opened; while another is made, that one is not to be opened.
    let fits = [0.1, 0.05, 0.02].into_iter().any(|v| {
        act(&mut lab, json!({"do": "range", "v": v}));
        run(&mut lab, 10.0);
        next(&lab) == "measure_open"
    });
    assert!(fits, "{}", next(&lab));
    act(&mut lab, json!({"do": "record"}));
    run(&mut lab, 3.0);
    assert_eq!(next(&lab), "record_on");
}

#[test]
fn a_live_trace_with_too_few_seconds_is_waited_for_and_a_flat_one_at_a_large_range_is_small() {
    let lab = {
        let scenario = scenarios().into_iter().find(|(name, _)| name.contains("rest-pulse")).unwrap().1;
        let mut lab = Session::new(&scenario, 4).unwrap();
        act(&mut lab, json!({"do": "agree"}));
        lab.advance(0.2);
        lab
    };
    assert!(["adjust_wait", "sensor_on", "power_not_seen"].contains(&next(&lab).as_str()), "{}", next(&lab));
    assert_eq!(next(&ready_at(4, 10.0)), "adjust_small");
}

#[test]
fn what_is_to_be_measured_is_said_in_the_words_of_the_question() {
    let of = |part: &str| scenarios().into_iter().find(|(name, _)| name.contains(part)).unwrap().1;
    for (part, cursors) in
        [("56-", "measure_foot_and_peak"), ("57-", "measure_beat_to_beat"), ("54-", "measure_cursors")]
    {
        let mut lab = Session::new(&of(part), 5).unwrap();
        act(&mut lab, json!({"do": "help", "mode": "half"}));
        act(&mut lab, json!({"do": "agree"}));
        assert_eq!(next(&lab), cursors, "{part}");
    }
}
