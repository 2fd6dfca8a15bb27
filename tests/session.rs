//! Attempts: what is refused and when, that a log does it all again, and what the page may see.

use dicrotic::session::action::Refusal;
use dicrotic::session::{Action, Session};
use serde_json::json;

const FIRST: &str = include_str!("../scenarios/01-first-wiring.toml");
const HUM: &str = include_str!("../scenarios/02-hum-on-the-trace.toml");

fn act(session: &mut Session, action: serde_json::Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

fn ready() -> Session {
    let mut session = Session::new(HUM, 5).unwrap();
    for action in [json!({"do": "range", "v": 0.1}), json!({"do": "record"})] {
        act(&mut session, action).unwrap();
    }
    session.run_long(20_000);
    act(&mut session, json!({"do": "stop"})).unwrap();
    session
}

#[test]
fn nothing_is_recorded_without_a_link_and_a_sensor_in_the_input() {
    let mut session = Session::new(FIRST, 1).unwrap();
    assert_eq!(act(&mut session, json!({"do": "record"})), Err(Refusal::NoLink {}));
    let mut session = Session::new(HUM, 1).unwrap();
    act(&mut session, json!({"do": "input", "n": 3})).unwrap();
    assert_eq!(act(&mut session, json!({"do": "record"})), Err(Refusal::NothingInInput { input: 3 }));
    act(&mut session, json!({"do": "plug", "end": "sensor", "socket": "in3"})).unwrap();
    act(&mut session, json!({"do": "record"})).unwrap();
}

#[test]
fn a_refusal_changes_nothing() {
    let mut session = Session::new(FIRST, 1).unwrap();
    let before = session.view();
    for action in [
        json!({"do": "plug", "end": "sensor", "socket": "recorder_inlet"}),
        json!({"do": "move", "part": "recorder", "x": -5, "y": 10}),
        json!({"do": "strap", "tightness": 0.5}),
        json!({"do": "range", "v": 0.3}),
        json!({"do": "zero"}),
        json!({"do": "stop"}),
        json!({"do": "cursor", "which": "a", "t": 1.0}),
        json!({"do": "mark", "t": 1.0}),
        json!({"do": "open_recording", "recording": 0}),
        json!({"do": "check"}),
        json!({"do": "reveal"}),
        json!({"do": "show", "mode": "recording"}),
        json!({"do": "time_base", "s": 7}),
    ] {
        assert!(act(&mut session, action.clone()).is_err(), "{action}");
        assert_eq!(session.view(), before, "{action}");
    }
    assert!(session.log().is_empty());
}

#[test]
fn unknown_actions_are_named() {
    for (action, part) in [
        (json!({"do": "dance"}), "dance"),
        (json!({"do": "range"}), "v"),
        (json!({"do": "range", "v": "big"}), "range"),
        (json!({"do": "strap_on", "extra": 1}), "extra"),
        (json!(7), "do"),
        (json!({"to": 1}), "do"),
    ] {
        let error = Action::from_value(action.clone()).unwrap_err().to_string();
        assert!(error.contains(part), "{action}: {error}");
    }
}

#[test]
fn a_short_recording_is_not_kept_and_a_lost_link_ends_one() {
    let mut session = Session::new(HUM, 1).unwrap();
    act(&mut session, json!({"do": "record"})).unwrap();
    session.run_long(500);
    assert_eq!(act(&mut session, json!({"do": "stop"})), Err(Refusal::TooShort {}));
    assert!(session.recordings().is_empty() && !session.is_recording());

    act(&mut session, json!({"do": "record"})).unwrap();
    session.run_long(5000);
    assert_eq!(act(&mut session, json!({"do": "rate", "hz": 100})), Err(Refusal::Recording { what: "rate" }));
    act(&mut session, json!({"do": "switch", "id": "recorder", "on": false})).unwrap();
    session.run_long(100);
    assert!(!session.is_recording());
    assert_eq!(session.recordings().len(), 1);
    assert!((session.recordings()[0].recording.duration_s() - 5.0).abs() < 0.01);
}

#[test]
fn the_truth_stays_hidden_until_it_may_be_seen() {
    let mut session = ready();
    act(&mut session, json!({"do": "cursor", "which": "a", "t": 1.0})).unwrap();
    act(&mut session, json!({"do": "cursor", "which": "b", "t": 17.0})).unwrap();
    for (field, text) in [("count", "7"), ("seconds", "16"), ("multiplier", "3.75"), ("rate", "26")] {
        act(&mut session, json!({"do": "answer", "field": field, "text": text})).unwrap();
    }
    act(&mut session, json!({"do": "check"})).unwrap();
    let view = session.view();
    assert_eq!(view["check"]["passed"], false);
    assert_eq!(view["check"]["truth"], json!(null));
    assert_eq!(view["check"].get("allowed"), None);
    act(&mut session, json!({"do": "check"})).unwrap();
    let view = session.view();
    assert!(view["check"]["truth"]["record_rate"].as_f64().unwrap() > 40.0);
    assert_eq!(view["check"]["truth"]["source"], "heart");
    assert_eq!(act(&mut session, json!({"do": "check"})), Err(Refusal::AttemptOver {}));
    assert!(act(&mut session, json!({"do": "answer", "field": "rate", "text": "9"})).is_err());
}

#[test]
fn revealing_ends_the_attempt() {
    let mut session = ready();
    assert!(act(&mut session, json!({"do": "reveal"})).is_err(), "not before a check");
    act(&mut session, json!({"do": "check"})).unwrap();
    act(&mut session, json!({"do": "reveal"})).unwrap();
    assert!(session.view()["check"]["truth"].is_object());
    assert_eq!(act(&mut session, json!({"do": "reveal"})), Err(Refusal::AttemptOver {}));
}

#[test]
fn a_saved_attempt_restores_to_the_same_state_and_samples() {
    let mut session = ready();
    act(&mut session, json!({"do": "cursor", "which": "a", "t": 1.5})).unwrap();
    act(&mut session, json!({"do": "mark", "t": 2.5})).unwrap();
    act(&mut session, json!({"do": "tap_sensor"})).unwrap();
    session.run_long(1234);
    let restored = Session::restore(&session.save().unwrap()).unwrap();
    let (mut a, mut b) = (session.view(), restored.view());
    // The count of changes is of no meaning across a restore.
    a["revision"] = json!(0);
    b["revision"] = json!(0);
    assert_eq!(a, b);
    assert_eq!(session.samples(), restored.samples());
    assert!(session.recordings()[0].recording == restored.recordings()[0].recording);
    assert_eq!(session.save(), restored.save());
}

#[test]
fn frames_of_any_length_make_the_same_recording() {
    let mut whole = Session::new(HUM, 9).unwrap();
    act(&mut whole, json!({"do": "record"})).unwrap();
    let mut frames = whole.clone();
    whole.run_long(7000);
    let mut k = 0_u32;
    while frames.samples() < 7000 {
        k += 1;
        let left = (7000 - frames.samples()) as f64 / 1000.0;
        frames.advance((0.003 + 0.0007 * f64::from(k % 40)).min(left + 1e-9));
    }
    assert!(whole.recordings()[0].recording == frames.recordings()[0].recording);
}

#[test]
fn damaged_saves_are_refused_with_a_reason() {
    let good = ready().save().unwrap();
    for (text, part) in [
        (String::new(), "not a saved attempt"),
        (good[..good.len() / 2].to_string(), "not a saved attempt"),
        (good.replacen("\"version\":3", "\"version\":99", 1), "form 99"),
        (good.replacen("\"seed\":\"5\"", "\"seed\":\"-5\"", 1), "seed"),
        (good.replacen("level = 1", "level = 77", 1).replacen("level = 2", "level = 77", 1), "level"),
        (good.replacen("\"at\":20000", "\"at\":999999999999", 1), "at most"),
        (good.replacen("\"v\":0.1", "\"v\":0.3", 1), "refused"),
    ] {
        let error = Session::restore(&text).unwrap_err().to_string();
        assert!(error.contains(part), "expected {part}: {error}");
    }
}

#[test]
fn an_opened_recording_has_no_bench_and_says_who_compares() {
    let values: Vec<f64> = (0..3000)
        .map(|k| {
            let u = (f64::from(k) / 100.0 * 1.25) % 1.0;
            dicrotic::math::exp(-0.5 * ((u - 0.3) / 0.08) * ((u - 0.3) / 0.08))
        })
        .collect();
    let mut session = Session::of_recording("r.csv", 100.0, &values);
    let view = session.view();
    assert_eq!(view["kind"], "recording");
    assert_eq!(view["bench"], json!(null));
    assert_eq!(act(&mut session, json!({"do": "record"})), Err(Refusal::NoBench {}));
    assert_eq!(act(&mut session, json!({"do": "tap_sensor"})), Err(Refusal::NoBench {}));
    act(&mut session, json!({"do": "cursor", "which": "a", "t": 2.0})).unwrap();
    act(&mut session, json!({"do": "cursor", "which": "b", "t": 18.0})).unwrap();
    for (field, text) in [("count", "20"), ("seconds", "16"), ("multiplier", "3.75"), ("rate", "75")] {
        act(&mut session, json!({"do": "answer", "field": field, "text": text})).unwrap();
    }
    act(&mut session, json!({"do": "check"})).unwrap();
    let check = &session.view()["check"];
    assert_eq!(check["passed"], true, "{check}");
    assert_eq!(check["truth"]["source"], "detector");
    assert!((check["truth"]["record_rate"].as_f64().unwrap() - 75.0).abs() < 0.5);
}

fn with_faults(extra: &str) -> String {
    format!(
        "id = \"f\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\nname_faults = true\n\
         before = [{{ wait = 2 }}, {{ do = \"time_base\", s = 5 }}]\n\
         [subject]\npulse_mv = 40\nrestlessness = 0.1\nfinger_temp_c = 33\n[recorder]\nrange_v = 0.1\n{extra}"
    )
}

#[test]
fn what_happened_before_belongs_to_the_scenario_and_comes_back_with_it() {
    let text = with_faults("[[fault]]\nname = \"strap_loose\"\n");
    let mut session = Session::new(&text, 4).unwrap();
    assert_eq!(session.samples(), 2000);
    assert!(session.log().is_empty());
    assert_eq!(session.time_base_s(), 5.0);
    act(&mut session, json!({"do": "name", "fault": "strap_loose"})).unwrap();
    session.run_long(500);
    let restored = Session::restore(&session.save().unwrap()).unwrap();
    assert_eq!(restored.samples(), 2500);
    assert_eq!(restored.view()["named"], json!(["strap_loose"]));
}

#[test]
fn severities_are_drawn_from_the_seed_and_the_cause_stays_hidden() {
    let text = with_faults("[[fault]]\nname = \"strap_loose\"\nseverity = [0.2, 0.9]\n");
    let tightness = |seed| {
        let view = Session::new(&text, seed).unwrap().view();
        assert!(!view.to_string().contains("strap_loose"), "the view tells the fault");
        view["bench"]["strap"]["tightness"].as_f64().unwrap()
    };
    assert_eq!(tightness(1), tightness(1));
    assert!((tightness(1) - tightness(2)).abs() > 1e-6);
    for seed in 0..20 {
        assert!((0.42 - 0.27 * 0.9..=0.42 - 0.27 * 0.2).contains(&tightness(seed)));
    }
}

#[test]
fn only_names_of_the_catalogue_are_taken_and_they_can_be_taken_back() {
    let mut session = Session::new(&with_faults("[[fault]]\nname = \"moving\"\n"), 1).unwrap();
    assert!(act(&mut session, json!({"do": "name", "fault": "gremlins"})).is_err());
    for fault in ["moving", "moving", "strap_loose"] {
        act(&mut session, json!({"do": "name", "fault": fault})).unwrap();
    }
    act(&mut session, json!({"do": "unname", "fault": "strap_loose"})).unwrap();
    assert_eq!(session.view()["named"], json!(["moving"]));
}

#[test]
fn a_line_of_why_is_kept_until_the_check_and_judged_by_nothing() {
    let run = |why: Option<&str>| {
        let mut session = Session::new(&with_faults("[[fault]]\nname = \"moving\"\n"), 1).unwrap();
        if let Some(text) = why {
            act(&mut session, json!({"do": "explain", "text": "hm"})).unwrap();
            act(&mut session, json!({"do": "explain", "text": format!("  {text} ")})).unwrap();
            assert_eq!(session.view()["explained"], text, "the last line counts");
        }
        act(&mut session, json!({"do": "name", "fault": "strap_loose"})).unwrap();
        act(&mut session, json!({"do": "record"})).unwrap();
        session.run(20_000);
        act(&mut session, json!({"do": "stop"})).unwrap();
        act(&mut session, json!({"do": "check"})).unwrap();
        session
    };
    let (mut with, without) = (run(Some("it stops when I ask")), run(None));
    let judged = |session: &Session| {
        let check = &session.view()["check"];
        let (points, ready) = (&check["rubric"]["got"], &check["rubric"]["ready"]);
        json!([check["steps"], check["passed"], check["process"], check["reading"], points, ready])
    };
    assert_eq!(judged(&with), judged(&without), "what was written is judged");
    assert!(
        judged(&with)[0].as_array().unwrap().len() > 2 && judged(&with)[4].is_number(),
        "{}",
        judged(&with)
    );
    assert_eq!(act(&mut with, json!({"do": "explain", "text": "now I know"})), Err(Refusal::NotAsked {}));
    assert_eq!(with.view()["explained"], "it stops when I ask");
    let again = Session::restore(&with.save().unwrap()).unwrap();
    assert_eq!(again.view()["explained"], "it stops when I ask");
    let mut long = Session::new(&with_faults(""), 1).unwrap();
    act(&mut long, json!({"do": "explain", "text": "é".repeat(500)})).unwrap();
    assert_eq!(long.view()["explained"].as_str().unwrap().chars().count(), 160);
    assert!(act(&mut long, json!({"do": "explain", "text": "x".repeat(5000)})).is_err());
}

#[test]
fn somebody_elses_take_is_found_out() {
    let mut session = Session::new(&with_faults("[[fault]]\nname = \"others_file\"\n"), 1).unwrap();
    assert_eq!(session.recordings().len(), 1);
    act(&mut session, json!({"do": "check"})).unwrap();
    assert!(session.view()["check"]["steps"].to_string().contains("trace_foreign"));
    assert!(session.view()["check"]["truth"].is_null());
    act(&mut session, json!({"do": "reveal"})).unwrap();
    assert_eq!(session.view()["check"]["truth"]["faults"], json!(["others_file"]));
}

#[test]
fn a_link_that_drops_out_ends_the_recording_at_the_same_sample_in_blocks_of_any_size() {
    let text = with_faults("[[fault]]\nname = \"port_drops\"\nseverity = 1.0\n");
    let mut whole = Session::new(&text, 2).unwrap();
    while act(&mut whole, json!({"do": "record"})).is_err() {
        whole.run(100);
    }
    let mut pieces = whole.clone();
    whole.run(60_000);
    for _ in 0..60_000 / 7 + 1 {
        pieces.run(7);
    }
    assert!(!whole.is_recording(), "no drop-out within a minute");
    assert_eq!(whole.recordings().len(), pieces.recordings().len());
    assert!(whole.recordings()[0].recording == pieces.recordings()[0].recording);
}

#[test]
fn marks_on_the_second_bumps_are_named_for_what_they_are() {
    let mut session = ready();
    act(&mut session, json!({"do": "cursor", "which": "a", "t": 1.03})).unwrap();
    act(&mut session, json!({"do": "cursor", "which": "b", "t": 17.0})).unwrap();
    let count = 2 * session.reference_peaks().iter().filter(|p| (1.03..17.0).contains(&p.at_s)).count();
    for (field, text) in [
        ("count", count.to_string()),
        ("seconds", "16".into()),
        ("multiplier", "3.75".into()),
        ("rate", (count * 60 / 16).to_string()),
    ] {
        act(&mut session, json!({"do": "answer", "field": field, "text": text})).unwrap();
    }
    act(&mut session, json!({"do": "check"})).unwrap();
    assert_eq!(session.view()["check"]["misreading"]["id"], "bumps_counted");
}

#[test]
fn a_replay_in_steps_of_any_length_is_the_same_replay() {
    use dicrotic::session::save::{Replay, replay};
    let mut session = ready();
    act(&mut session, json!({"do": "show", "mode": "live"})).unwrap();
    act(&mut session, json!({"do": "record"})).unwrap();
    session.run_long(12_345);
    act(&mut session, json!({"do": "stop"})).unwrap();
    session.run_long(777);
    let (log, samples) = (session.log().to_vec(), session.samples());
    let whole = replay(HUM, 5, samples, &log).unwrap();
    assert_eq!(whole.save(), session.save());
    for step in [1, 1500, 5000, 1_000_000] {
        let mut replay = Replay::new(HUM, 5, samples, &log).unwrap();
        while !replay.step(&log, step).unwrap() {}
        assert_eq!(replay.session().save(), session.save(), "steps of {step}");
        assert_eq!(replay.session().recordings(), session.recordings());
    }
}
