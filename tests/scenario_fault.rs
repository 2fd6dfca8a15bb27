//! The catalogue of faults: every one shows in its figure, stays under a vain remedy, goes under the right one.

use dicrotic::pickup::sensor::Kind as SensorKind;
use dicrotic::scenario::fault::{self, Fault, Symptom};
use dicrotic::session::script::play;
use dicrotic::session::symptom::measure;
use dicrotic::session::walk::Walk;
use dicrotic::session::{Session, symptom};
use dicrotic::trace::frame::TIME_BASES_S;
use serde_json::{Value, json};

/// A calm bench of known size; the fault's name follows.
fn bench(faults: &str) -> String {
    format!(
        "id = \"walk\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
         [subject]\nage_years = 24\nrest_rate_bpm = 68\npulse_mv = 40\nrestlessness = 0\nfinger_temp_c = 33\n\
         systolic_mmhg = 120\ndiastolic_mmhg = 78\npremature_per_min = 0\nsdnn_ms = 35\n\
         [recorder]\nrange_v = 0.05\n{faults}"
    )
}

fn with(fault: &Fault, severity: f64) -> String {
    bench(&format!("[[fault]]\nname = \"{}\"\nseverity = {severity}\n", fault.id))
}

fn steps(list: &[&str]) -> Vec<Value> {
    list.iter().map(|s| serde_json::from_str(s).unwrap()).collect()
}

fn wait(session: &mut Session, seconds: f64) {
    play(session, &[json!({"wait": seconds})]).unwrap();
}

const SEEDS: [u64; 2] = [3, 4];

/// What pictures of a fault are made from: a time base that the page has, the sensor that it needs, a deed that mends it.
#[test]
fn the_catalogue_tells_how_a_fault_is_shown() {
    let told = dicrotic::session::view::catalogue();
    for (fault, told) in fault::all().zip(told.as_array().unwrap()) {
        if let Some(seconds) = told["shown_s"].as_f64() {
            assert!(TIME_BASES_S.contains(&seconds), "{}: {seconds} s", fault.id);
        }
        // A trace on which nothing is to be seen has no time base of its own: mistakes of the paper work, and those that a check
        // or the time base itself tells.
        let on_paper = matches!(fault.symptom, Symptom::Finding(_) | Symptom::NothingSaved);
        let by_screen = matches!(fault.symptom, Symptom::FewBeats | Symptom::ManyBeats);
        assert_eq!(told["shown_s"].is_null(), on_paper || by_screen, "{}", fault.id);
        assert!(told["mends"]["do"].is_string(), "{}: {}", fault.id, told["mends"]);
    }
    let optical: Vec<&str> =
        fault::all().filter(|f| f.sensor() == Some(SensorKind::Optical)).map(|f| f.id).collect();
    assert_eq!(optical, ["room_light", "light_sensor_dirty"]);
}

#[test]
fn there_are_at_least_forty_faults_and_their_names_resolve() {
    let ids: Vec<&str> = fault::all().map(|f| f.id).collect();
    assert!(ids.len() >= 40, "{}", ids.len());
    let mut unique = ids.clone();
    unique.sort_unstable();
    unique.dedup();
    assert_eq!(unique.len(), ids.len());
    for fault in fault::all() {
        for other in fault.confused_with {
            assert!(ids.contains(other) && *other != fault.id, "{}: {other}", fault.id);
        }
        assert!(
            !fault.tests.is_empty() && !fault.remedy.is_empty() && !fault.vain.is_empty(),
            "{}",
            fault.id
        );
        let (low, high) = fault.severity;
        assert!((0.0..=1.0).contains(&low) && (low..=1.0).contains(&high), "{}", fault.id);
    }
}

#[test]
fn every_fault_shows_stays_under_a_vain_remedy_and_goes_under_the_right_one() {
    let mut wrong = Vec::new();
    for fault in fault::all() {
        for seed in SEEDS {
            for severity in [fault.severity.0, fault.severity.1] {
                let text = with(fault, severity);
                let begin = || Session::new(&text, seed).map_err(|e| e.to_string());
                let walk = Walk::of(&begin, fault, 1).unwrap_or_else(|e| panic!("{}: {e}", fault.id));
                if !walk.good(fault) {
                    wrong.push(format!("{} (severity {severity}, seed {seed}): {walk}", fault.id));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_bench_without_faults_shows_none() {
    let mut wrong = Vec::new();
    for seed in SEEDS {
        let mut session = Session::new(&bench(""), seed).unwrap();
        wait(&mut session, 20.0);
        play(&mut session, &[json!({"do": "record"}), json!({"wait": 20}), json!({"do": "stop"})]).unwrap();
        for fault in fault::all() {
            let figure = measure(&session, fault.symptom);
            if figure >= 1.0 {
                wrong.push(format!("{} (seed {seed}): {figure:.2}", fault.id));
            }
            assert!(!symptom::cause_remains(&session, fault), "{}", fault.id);
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_port_drops_as_often_at_every_sampling_rate() {
    let fault = fault::named("port_drops").unwrap();
    let losses = |hz: u32| {
        let mut session = Session::new(&with(fault, 1.0), 9).unwrap();
        play(&mut session, &[json!({"do": "rate", "hz": hz})]).unwrap();
        let (mut losses, mut before) = (0, true);
        for _ in 0..4 * 600 {
            wait(&mut session, 0.25);
            let seen = session.chain().unwrap().seen();
            losses += u32::from(before && !seen);
            before = seen;
        }
        losses
    };
    let at = [20, 49, 100, 1000].map(losses);
    assert!(at[3] >= 40, "{at:?}");
    // The times are drawn in seconds: looked at every quarter of a second they are the same losses.
    assert!(at.iter().all(|n| n.abs_diff(at[3]) <= 2), "{at:?}");
}

#[test]
fn a_slower_rate_mends_no_port() {
    let fault = fault::named("port_drops").unwrap();
    for seed in 1..=16 {
        for hz in [1000, 100, 20] {
            let mut session = Session::new(&with(fault, 0.6), seed).unwrap();
            play(&mut session, &[json!({"do": "rate", "hz": hz})]).unwrap();
            wait(&mut session, 10.0);
            assert!(session.is_at_work(fault), "seed {seed} at {hz} Hz");
        }
    }
}

#[test]
fn an_arm_that_rests_rests_no_more_for_being_asked_twice() {
    let fault = fault::named("trembling").unwrap();
    let after = |times: usize| {
        let mut session = Session::new(&with(fault, 1.0), 3).unwrap();
        for _ in 0..times {
            play(&mut session, &[json!({"do": "rest_arm"})]).unwrap();
        }
        wait(&mut session, 10.0);
        session.live().unwrap().last(5.0)
    };
    let (once, twice): (Vec<f64>, Vec<f64>) = (after(1), after(2));
    assert_eq!(once, twice);
}

#[test]
fn a_fault_that_comes_with_another_may_be_named_and_need_not() {
    let naming = |names: &[&str]| {
        let text = with(fault::named("wrong_notch").unwrap(), 1.0)
            .replace("level = 1", "level = 1\nname_faults = true");
        let mut session = Session::new(&text, 3).unwrap();
        for name in names {
            play(&mut session, &[json!({"do": "name", "fault": name})]).unwrap();
        }
        wait(&mut session, 3.0);
        play(&mut session, &[json!({"do": "record"}), json!({"wait": 20}), json!({"do": "stop"})]).unwrap();
        session.preview().unwrap().0.steps[0].code
    };
    assert_eq!(naming(&["wrong_notch"]), "name_right");
    assert_eq!(naming(&["wrong_notch", "cable_on_power_strip"]), "name_right");
    assert_eq!(naming(&["cable_on_power_strip"]), "name_partly");
    assert_eq!(naming(&["wrong_notch", "charger_near"]), "name_partly");
}

#[test]
fn the_notch_is_not_put_right_by_who_never_touched_it() {
    let fault = fault::named("wrong_notch").unwrap();
    let mut session = Session::new(&with(fault, 1.0), 3).unwrap();
    play(
        &mut session,
        &steps(&[
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 66}"#,
            r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#,
            r#"{"wait": 15}"#,
        ]),
    )
    .unwrap();
    assert!(session.is_at_work(fault));
    assert!(!session.is_at_work(fault::named("cable_on_power_strip").unwrap()));
}

#[test]
fn a_strap_that_the_subject_calls_snug_is_not_too_loose() {
    let fault = fault::named("strap_loose").unwrap();
    for tightness in [0.48, 0.56, 0.65, 0.72, 0.8] {
        let mut session = Session::new(&with(fault, 0.5), 3).unwrap();
        play(&mut session, &[json!({"do": "strap", "tightness": tightness}), json!({"wait": 15})]).unwrap();
        let strap = &session.chain().unwrap().bench().strap;
        let snug = strap.feel() == dicrotic::bench::strap::Feel::Snug;
        assert!(snug && !session.is_at_work(fault), "{tightness}");
    }
}
