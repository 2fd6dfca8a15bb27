//! What of a scenario fits by itself and not beside the rest is refused with the field's name.

use dicrotic::scenario::{Scenario, fault};

const HEAD: &str = "id = \"q\"\nlevel = 2\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

fn with(more: &str) -> Result<Scenario, String> {
    Scenario::read(&format!("{HEAD}{more}")).map_err(|e| e.to_string())
}

fn faults(names: &[&str]) -> String {
    names.iter().map(|name| format!("[[fault]]\nname = \"{name}\"\n")).collect()
}

#[test]
fn a_window_is_no_longer_than_the_recording_that_is_asked_for() {
    let told = with("[pass]\nwindow_s = 30.0\nrecord_s = 15.0\n").unwrap_err();
    assert!(told.contains("pass.window_s: 30") && told.contains("pass.record_s, 15"), "{told}");
    assert!(with("[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n").is_ok());
}

#[test]
fn who_asks_for_a_fault_has_one_to_name() {
    let naming = "name_faults = true\n[task]\nkind = \"name_fault\"\n";
    let told = with(naming).unwrap_err();
    assert!(told.contains("fault: no fault"), "{told}");
    assert!(with(&format!("{naming}{}", faults(&["moving"]))).is_ok());
    assert!(with(&format!("{naming}one_of = [\"moving\", \"talking\"]\n")).is_ok());
}

#[test]
fn a_fault_that_another_one_undoes_is_refused_and_both_are_named() {
    for pair in
        [["strap_loose", "strap_tight"], ["strap_tight", "strap_loose"], ["range_small", "range_large"]]
    {
        let told = with(&faults(&pair)).unwrap_err();
        assert!(told.contains("fault[0].name") && pair.iter().all(|name| told.contains(name)), "{told}");
    }
    for pair in
        [["strap_loose", "charger_near"], ["power_strip_off", "charger_near"], ["moving", "strap_tight"]]
    {
        assert!(with(&faults(&pair)).is_ok(), "{pair:?}");
    }
}

/// Beside any other fault most can be there: the check tells a contradiction, not a company.
#[test]
fn few_pairs_of_the_catalogue_exclude_one_another() {
    let all: Vec<&str> = fault::all().map(|f| f.id).collect();
    let mut refused = Vec::new();
    for (k, a) in all.iter().enumerate() {
        for b in &all[k + 1..] {
            if with(&faults(&[a, b])).is_err() {
                refused.push(format!("{a} + {b}"));
            }
        }
    }
    println!("{}", refused.join("\n"));
    let pairs = all.len() * (all.len() - 1) / 2;
    assert!(!refused.is_empty() && refused.len() * 20 < pairs, "{} of {pairs}: {refused:#?}", refused.len());
}
