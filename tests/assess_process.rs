//! The way of working, judged on the bench itself: every fault of the catalogue, at both ends of its severity, tested as its
//! text says, mended as one naturally would, and walked about in vain.

use dicrotic::bench::look::SPOTS;
use dicrotic::deed::{Kind, Nature, Tell};
use dicrotic::scenario::fault::{self, Fault};
use dicrotic::session::{Action, Session, script, tell};
use serde_json::{Value, json};
use students::{Draws, act, wait};

mod students;

fn bench(fault: &Fault, severity: f64) -> Session {
    let text = format!(
        "id = \"walk\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
         [subject]\nage_years = 24\nrest_rate_bpm = 68\npulse_mv = 40\nrestlessness = 0\nfinger_temp_c = 33\n\
         systolic_mmhg = 120\ndiastolic_mmhg = 78\npremature_per_min = 0\nsdnn_ms = 35\n\
         [recorder]\nrange_v = 0.05\n[[fault]]\nname = \"{}\"\nseverity = {severity}\n",
        fault.id
    );
    Session::new(&text, 5).unwrap_or_else(|e| panic!("{}: {e}", fault.id))
}

fn ends(fault: &Fault) -> Vec<f64> {
    if fault.severity.0 == fault.severity.1 {
        vec![fault.severity.0]
    } else {
        vec![fault.severity.0, fault.severity.1]
    }
}

/// What the remarks say of one fault: its codes; and the codes of all.
fn said(session: &Session, id: &str) -> Vec<&'static str> {
    session
        .way_of_working()
        .iter()
        .filter(|r| r.args.get("fault").is_none_or(|f| f == id))
        .map(|r| r.code)
        .collect()
}

fn steps(list: &[&str]) -> Vec<Value> {
    list.iter().map(|s| serde_json::from_str(s).unwrap()).collect()
}

#[test]
fn the_catalogues_tests_made_as_their_texts_say_count_as_tests() {
    let mut wrong = Vec::new();
    for fault in fault::all() {
        for severity in ends(fault) {
            for tell in fault.tests {
                let mut session = bench(fault, severity);
                wait(&mut session, 6.0);
                let doing = tell::ways(*tell, &session);
                assert!(!doing.is_empty(), "no way of doing {tell:?}");
                for step in doing {
                    if let Some(seconds) = step["wait"].as_f64() {
                        wait(&mut session, seconds);
                        continue;
                    }
                    let did = Action::from_value(step.clone()).unwrap();
                    if let Err(why) = session.act(&did) {
                        wrong.push(format!("{} {tell:?}: {why:?}", fault.id));
                    }
                    wait(&mut session, 0.2);
                }
                wait(&mut session, 3.0);
                // Mended in a hurry, with something else changed at once, so that the mending itself shows nothing.
                for step in steps(fault.remedy).iter().filter(|s| s.get("do").is_some()) {
                    let _ = session.act(&Action::from_value(step.clone()).unwrap());
                }
                let _ = session.act(&Action::from_value(json!({"do": "bits", "n": 12})).unwrap());
                let codes = said(&session, fault.id);
                if !codes.contains(&"process_tested") {
                    wrong.push(format!("{} ({severity}), {tell:?}: {codes:?}", fault.id));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn the_natural_reversal_counts_as_a_test() {
    let mut wrong = Vec::new();
    for fault in fault::all().filter(|f| f.curable) {
        for severity in ends(fault) {
            let mut session = bench(fault, severity);
            wait(&mut session, 12.0);
            let mut before = None;
            for step in steps(fault.remedy) {
                // One thing at a time, with a look between.
                let thing = Action::from_value(step.clone()).ok().map(|a| a.thing());
                if before.is_some() && thing.is_some() && thing != before {
                    wait(&mut session, 4.0);
                }
                before = thing.or(before);
                script::play(&mut session, &[step]).unwrap_or_else(|e| panic!("{} remedy: {e}", fault.id));
            }
            wait(&mut session, 6.0);
            if fault.id == "wrong_multiplier" || fault.id == "window_misread" {
                // What was worked out from the slip is worked out again.
                act(&mut session, json!({"do": "answer", "field": "multiplier", "text": "60/15"}));
            }
            let codes = said(&session, fault.id);
            if !codes.contains(&"process_tested") || codes.contains(&"process_cause_remains") {
                wrong.push(format!("{} ({severity}): {codes:?}", fault.id));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Two ways of hum at once: whichever is found and mended first, with a look between, both were shown.
#[test]
fn two_faults_may_be_mended_in_either_order() {
    for part in ["02-hum-on-the-trace", "46-two-at-once-c"] {
        let path = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios"))
            .unwrap()
            .map(|e| e.unwrap().path())
            .find(|p| p.file_name().unwrap().to_string_lossy().starts_with(part))
            .unwrap_or_else(|| panic!("no scenario {part}"));
        let text = std::fs::read_to_string(path).unwrap();
        let faults = dicrotic::scenario::Scenario::read(&text).unwrap().fault;
        let listed: Vec<&str> = faults.iter().map(|f| f.name.as_str()).collect();
        let all = [
            vec![json!({"do": "charger", "plugged": false})],
            vec![
                json!({"do": "move", "part": "cable1", "x": 44, "y": 66}),
                json!({"do": "move", "part": "cable2", "x": 66, "y": 70}),
            ],
        ];
        for seed in 500..506 {
            for order in [[0, 1], [1, 0]] {
                let mut session = Session::new(&text, seed).unwrap();
                wait(&mut session, 6.0);
                for k in order {
                    all[k].iter().for_each(|step| act(&mut session, step.clone()));
                    wait(&mut session, 5.0);
                }
                for id in ["charger_near", "cable_on_power_strip"].iter().filter(|id| listed.contains(id)) {
                    let codes = said(&session, id);
                    assert!(codes.contains(&"process_tested"), "{part}, {seed}, {order:?}: {id} {codes:?}");
                }
            }
        }
    }
}

/// A trace drawn out and together again at once was not looked at.
#[test]
fn a_stretch_without_a_look_tells_nothing() {
    let fault = fault::named("phone_near").unwrap();
    let stretched = |pause: f64| {
        let mut session = bench(fault, 1.0);
        wait(&mut session, 5.0);
        act(&mut session, json!({"do": "time_base", "s": 0.5}));
        wait(&mut session, pause);
        act(&mut session, json!({"do": "time_base", "s": 10}));
        act(&mut session, json!({"do": "move", "part": "phone", "x": 150, "y": 70}));
        act(&mut session, json!({"do": "shade", "on": true}));
        wait(&mut session, 5.0);
        said(&session, "phone_near").contains(&"process_tested")
    };
    assert!(!stretched(0.0) && !stretched(0.4));
    assert!(stretched(2.0));
}

#[test]
fn a_cure_made_in_a_hurry_is_no_test() {
    for (id, cure, other) in [
        ("strap_loose", json!({"do": "strap", "tightness": 0.7}), json!({"do": "shade", "on": true})),
        ("charger_near", json!({"do": "charger", "plugged": false}), json!({"do": "notch", "hz": 50})),
        ("hand_low", json!({"do": "hand_height", "cm": 0}), json!({"do": "strap", "tightness": 0.6})),
    ] {
        let fault = fault::named(id).unwrap();
        let mut session = bench(fault, fault.severity.1);
        wait(&mut session, 5.0);
        act(&mut session, cure);
        wait(&mut session, 0.8);
        act(&mut session, other);
        wait(&mut session, 8.0);
        assert!(said(&session, id).contains(&"process_untested"), "{id}");
    }
}

/// Things that a hand may do at the bench and at the recorder.
fn anything(draws: &mut Draws) -> Value {
    let mut pick = |list: &[&str]| list[(draws.next() * list.len() as f64) as usize].to_string();
    let end = pick(&["power_recorder", "power_wall", "data_recorder", "data_computer", "sensor"]);
    let at = SPOTS[(draws.next() * SPOTS.len() as f64) as usize];
    let (u, v) = (draws.next(), draws.next());
    let far = json!([{"x": 150.0, "y": 20.0}, {"x": 140.0, "y": 80.0}]);
    let to = &far[(u * 2.0) as usize];
    [
        json!({"do": "wiggle", "end": end}),
        json!({"do": "look", "at": at}),
        json!({"do": "move", "part": "phone", "x": to["x"], "y": to["y"]}),
        json!({"do": "move", "part": "lamp", "x": 14.0, "y": 20.0 + 40.0 * u}),
        json!({"do": "switch", "id": "lamp", "on": u < 0.5}),
        json!({"do": "shade", "on": u < 0.5}),
        json!({"do": "other_hand", "on": if u < 0.5 { "lap" } else { "case" }}),
        json!({"do": "strap", "tightness": 0.5 + 0.3 * u}),
        json!({"do": "sensor_place", "place": if u < 0.5 { "middle" } else { "pulp" }}),
        json!({"do": "hand_height", "cm": (20.0 * u).round()}),
        json!({"do": "bits", "n": if u < 0.5 { 12 } else { 16 }}),
        json!({"do": "notch", "hz": if u < 0.5 { Value::Null } else { json!(50.0) }}),
        json!({"do": "low_pass", "hz": if u < 0.5 { Value::Null } else { json!(30.0) }}),
        json!({"do": "average", "ms": if u < 0.5 { Value::Null } else { json!(10.0) }}),
        json!({"do": "anti_alias", "on": u < 0.5}),
        json!({"do": "integral", "on": u < 0.5}),
        json!({"do": "ask_finger"}),
        json!({"do": "ask_still"}),
        json!({"do": "press_finger"}),
        json!({"do": "tap_sensor"}),
        json!({"do": "rescan"}),
        json!({"do": "rest_arm"}),
        json!({"do": "swap_cable"}),
        json!({"do": "scale", "by": if u < 0.5 { 1 } else { 10 }}),
    ][(v * 24.0) as usize]
        .clone()
}

/// A walk of deeds that can neither tell nor mend a fault, each with the pause after it; `None` where it mended after all.
fn vain_walk(fault: &Fault, draws: &mut Draws) -> Vec<(Action, f64)> {
    let repairs: Vec<Action> = fault
        .remedy
        .iter()
        .filter_map(|s| Action::from_value(serde_json::from_str(s).unwrap()).ok())
        .collect();
    let mut walk = Vec::new();
    while walk.len() < 6 {
        let action = Action::from_value(anything(draws)).unwrap();
        let far = Some(dicrotic::bench::table::Point { x: -500.0, y: -500.0 });
        let tells = fault.tests.iter().any(|t| t.is(&action, far));
        let mends = repairs.iter().any(|r| r.thing() == action.thing());
        if !tells && !mends {
            walk.push((action, 0.3 + 3.7 * draws.next()));
        }
    }
    walk
}

/// Walks; with `papers` help, labels, zooms, hints, notes and consent come between. Says what is remarked on, and whether the
/// cause is still there.
fn walked(fault: &Fault, severity: f64, walk: &[(Action, f64)], papers: bool) -> (Vec<&'static str>, bool) {
    let mut session = bench(fault, severity);
    if papers {
        act(&mut session, json!({"do": "help", "mode": "alone"}));
        act(&mut session, json!({"do": "agree"}));
    }
    wait(&mut session, 5.0);
    let takes = session.recordings().len();
    for (action, pause) in walk {
        let _ = session.act(action);
        if papers {
            for paper in [
                json!({"do": "name", "fault": "moving"}),
                json!({"do": "snap", "on": true}),
                json!({"do": "label", "recording": 0, "text": "pair 4"}),
                json!({"do": "hint"}),
                json!({"do": "unname", "fault": "moving"}),
                json!({"do": "agree"}),
            ] {
                // Where there is no recording there is nothing to label, and before a check no hint.
                let _ = session.act(&Action::from_value(paper).unwrap());
            }
            // Where a look at a recording is no test of this fault it may be zoomed in passing.
            let seen = |t: &Tell| matches!(t, Tell::Stretch | Tell::Does(Kind::Show | Kind::OpenRecording));
            if takes > 0 && !fault.tests.iter().any(seen) {
                for look in [
                    json!({"do": "open_recording", "recording": 0}),
                    json!({"do": "zoom", "from_s": 0.5, "to_s": 2.0}),
                    json!({"do": "zoom_out"}),
                ] {
                    act(&mut session, look);
                }
            }
        }
        wait(&mut session, *pause);
    }
    (said(&session, fault.id), session.is_at_work(fault))
}

#[test]
fn walking_about_in_vain_is_no_test_and_papers_between_change_nothing() {
    let mut wrong = Vec::new();
    let (mut walks, mut mended) = (0, 0);
    for (k, fault) in fault::all().enumerate() {
        for severity in ends(fault) {
            let mut draws = Draws(77 + k as u64);
            let mut done = 0;
            for _ in 0..40 {
                if done == 10 {
                    break;
                }
                let walk = vain_walk(fault, &mut draws);
                let (plain, at_work) = walked(fault, severity, &walk, false);
                if !at_work {
                    // Chance has mended it: that may be seen, and is no walk in vain.
                    mended += 1;
                    continue;
                }
                done += 1;
                walks += 1;
                if !plain.iter().any(|c| matches!(*c, "process_untested" | "process_needless")) {
                    wrong.push(format!("{} ({severity}): {plain:?} for {walk:?}", fault.id));
                }
                let (papers, _) = walked(fault, severity, &walk, true);
                if papers != plain {
                    wrong.push(format!("{} ({severity}): {plain:?}, with papers {papers:?}", fault.id));
                }
            }
            assert_eq!(done, 10, "{} ({severity})", fault.id);
        }
    }
    println!("{walks} walks in vain; {mended} more mended by chance");
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn arguments_count_and_not_names() {
    let untested = |id: &str, deed: Value| {
        let fault = fault::named(id).unwrap();
        let mut session = bench(fault, fault.severity.1);
        wait(&mut session, 5.0);
        act(&mut session, deed.clone());
        wait(&mut session, 4.0);
        assert!(said(&session, id).contains(&"process_untested"), "{id}: {deed}");
    };
    untested("plug_half_in", json!({"do": "wiggle", "end": "power_wall"}));
    untested("cable_on_power_strip", json!({"do": "move", "part": "phone", "x": 20, "y": 80}));
    // A nudge tells nothing.
    untested("cable_on_power_strip", json!({"do": "move", "part": "cable1", "x": 50, "y": 12}));
    untested("sensor_upside_down", json!({"do": "look", "at": "recorder"}));
    untested("recorder_off", json!({"do": "look", "at": "sensor"}));
}

#[test]
fn a_flawless_run_with_papers_is_flawless() {
    let text = include_str!("../scenarios/19-small-pulse-d.toml");
    let scenario = dicrotic::scenario::Scenario::read(text).unwrap();
    let mut attempt = dicrotic::session::guide::example(&scenario).unwrap().clone();
    let papers = [
        json!({"do": "label", "recording": 0, "text": "pair 4"}),
        json!({"do": "snap", "on": true}),
        json!({"do": "zoom", "from_s": 1.0, "to_s": 6.0}),
        json!({"do": "zoom_out"}),
    ];
    let stop = attempt.steps.iter().position(|s| s["do"] == "stop").unwrap();
    attempt.steps.splice(stop + 1..stop + 1, papers);
    attempt.steps.insert(0, json!({"do": "help", "mode": "alone"}));
    let session = script::replay(text, &attempt).unwrap();
    let check = session.check().unwrap();
    let codes: Vec<&str> = check.process.iter().map(|r| r.code).collect();
    assert_eq!(codes, ["process_tested"]);
    assert!(check.rubric.ready() && check.rubric.total == 20, "{:?}", check.rubric);
}

#[test]
fn a_cause_that_is_only_filtered_away_is_told() {
    let fault = fault::named("cable_on_power_strip").unwrap();
    let mut session = bench(fault, 1.0);
    wait(&mut session, 5.0);
    act(&mut session, json!({"do": "notch", "hz": 50}));
    wait(&mut session, 5.0);
    let codes = said(&session, "cable_on_power_strip");
    assert!(
        codes.contains(&"process_cause_remains") && codes.contains(&"process_filtered_away"),
        "{codes:?}"
    );
    let mut session = bench(fault, 1.0);
    wait(&mut session, 5.0);
    // Taking a filter out hides nothing.
    act(&mut session, json!({"do": "low_pass", "hz": null}));
    assert!(!said(&session, "cable_on_power_strip").contains(&"process_filtered_away"));
}

#[test]
fn changes_on_top_of_each_other_are_blind_unless_one_looks_between_them() {
    let fault = fault::named("strap_loose").unwrap();
    let blind = |between: Option<Value>, pause: f64| {
        let mut session = bench(fault, 1.0);
        wait(&mut session, 5.0);
        act(&mut session, json!({"do": "strap", "tightness": 0.3}));
        wait(&mut session, pause / 2.0);
        if let Some(between) = between {
            act(&mut session, between);
        }
        wait(&mut session, pause / 2.0);
        act(&mut session, json!({"do": "shade", "on": true}));
        said(&session, "strap_loose").contains(&"process_blind")
    };
    assert!(blind(None, 0.6));
    assert!(!blind(None, 3.0));
    assert!(!blind(Some(json!({"do": "tap_sensor"})), 0.6));
    // Consent is no look.
    assert!(blind(Some(json!({"do": "agree"})), 0.6));
    // A strap pulled in steps is one change.
    let mut session = bench(fault, 1.0);
    for k in 0..5 {
        act(&mut session, json!({"do": "strap", "tightness": 0.2 + 0.1 * f64::from(k)}));
        wait(&mut session, 0.3);
    }
    assert!(!said(&session, "strap_loose").contains(&"process_blind"));
}

#[test]
fn every_action_has_one_name_one_number_and_a_nature() {
    let mut numbers: Vec<u8> = Kind::ALL.iter().map(|k| k.row().number).collect();
    numbers.sort_unstable();
    numbers.dedup();
    assert_eq!(numbers.len(), Kind::ALL.len());
    for kind in Kind::ALL {
        assert_eq!(Kind::named(kind.name()), Some(*kind));
        assert_eq!(Kind::numbered(u64::from(kind.row().number)), Some(*kind));
    }
    for (name, nature) in [("help", Nature::Paper), ("zoom", Nature::Look), ("range", Nature::Tune)] {
        assert_eq!(Kind::named(name).unwrap().nature(), nature);
    }
}
