//! The way of working, judged from the order of what was done.

use dicrotic::assess::process::{Case, Deed, remarks};
use serde_json::{Value, json};

fn case(present: bool) -> Case {
    Case { id: "strap_loose", tests: &["press_finger", "tap_pad"], repairs: vec!["strap".into()], present }
}

fn deeds(list: &[(f64, Value)]) -> Vec<Deed> {
    list.iter()
        .map(|(at_s, action)| Deed {
            at_s: *at_s,
            name: action["do"].as_str().unwrap().into(),
            action: action.clone(),
        })
        .collect()
}

fn codes(list: &[(f64, Value)], present: bool) -> Vec<&'static str> {
    remarks(&deeds(list), &[case(present)]).iter().map(|r| r.code).collect()
}

#[test]
fn a_test_before_the_repair_is_seen() {
    let tested = [(1.0, json!({"do": "press_finger"})), (6.0, json!({"do": "strap", "tightness": 0.7}))];
    assert_eq!(codes(&tested, false), ["process_tested"]);
    let after = [(1.0, json!({"do": "strap", "tightness": 0.7})), (6.0, json!({"do": "press_finger"}))];
    assert_eq!(codes(&after, false), ["process_untested"]);
    let never = [(1.0, json!({"do": "strap", "tightness": 0.7}))];
    assert_eq!(codes(&never, false), ["process_untested"]);
}

#[test]
fn asking_is_test_and_remedy_in_one_but_turning_a_setting_is_not() {
    let with = |name: &str, deed: &str| {
        let case =
            Case { id: "x", tests: &["ask_still", "invert"], repairs: vec![name.into()], present: false };
        remarks(&deeds(&[(1.0, json!({"do": deed}))]), &[case])[0].code
    };
    assert_eq!(with("ask_still", "ask_still"), "process_tested");
    assert_eq!(with("invert", "invert"), "process_untested");
    // Turned to see what comes, turned back, turned again: the first was the test.
    let case = Case { id: "x", tests: &["invert"], repairs: vec!["invert".into()], present: false };
    let twice = deeds(&[(1.0, json!({"do": "invert"})), (5.0, json!({"do": "invert"}))]);
    assert_eq!(remarks(&twice, &[case])[0].code, "process_tested");
}

#[test]
fn a_cause_that_is_still_there_is_told_and_filtering_it_away_too() {
    let filtered = [(1.0, json!({"do": "low_pass", "hz": 10.0}))];
    assert_eq!(codes(&filtered, true), ["process_cause_remains", "process_filtered_away"]);
    // Taking a filter out hides nothing.
    assert_eq!(codes(&[(1.0, json!({"do": "low_pass", "hz": null}))], true), ["process_cause_remains"]);
}

#[test]
fn changes_on_top_of_each_other_are_blind_unless_one_looks_between_them() {
    let blind = [(1.0, json!({"do": "strap"})), (1.5, json!({"do": "move"}))];
    assert!(codes(&blind, false).contains(&"process_blind"));
    let slow = [(1.0, json!({"do": "strap"})), (4.0, json!({"do": "move"}))];
    assert!(!codes(&slow, false).contains(&"process_blind"));
    let looked =
        [(1.0, json!({"do": "strap"})), (1.2, json!({"do": "tap_pad"})), (1.5, json!({"do": "move"}))];
    assert!(!codes(&looked, false).contains(&"process_blind"));
    // A drag is one change.
    let drag = [(1.0, json!({"do": "move"})), (1.3, json!({"do": "move"})), (1.6, json!({"do": "move"}))];
    assert!(!codes(&drag, false).contains(&"process_blind"));
}

#[test]
fn more_than_two_needless_kinds_of_change_are_told() {
    let two = [(1.0, json!({"do": "move"})), (9.0, json!({"do": "switch"})), (19.0, json!({"do": "strap"}))];
    assert!(!codes(&two, false).contains(&"process_needless"));
    let three = [
        (1.0, json!({"do": "move"})),
        (9.0, json!({"do": "switch"})),
        (19.0, json!({"do": "plug"})),
        (29.0, json!({"do": "strap"})),
    ];
    assert!(codes(&three, false).contains(&"process_needless"));
}

#[test]
fn without_faults_there_is_nothing_to_say() {
    assert!(remarks(&deeds(&[(1.0, json!({"do": "move"}))]), &[]).is_empty());
}
