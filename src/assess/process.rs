//! How faults were found and mended, judged from the order of what was done. Troubleshooting is taught as: look, test,
//! change one thing, look again (common practice); and a cause that is only filtered away is still there.

use crate::plain::json;
use serde::Serialize;
use serde_json::Value;

/// Something done.
#[derive(Clone, Debug, PartialEq)]
pub struct Deed {
    /// Time since the start, s.
    pub at_s: f64,
    /// Name of the action.
    pub name: String,
    /// The action.
    pub action: Value,
}

/// A fault of the scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Its name.
    pub id: &'static str,
    /// Actions that tell it apart from its look-alikes.
    pub tests: &'static [&'static str],
    /// Actions that mend it.
    pub repairs: Vec<String>,
    /// Whether its cause is still there.
    pub present: bool,
}

/// A remark on the way of working.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Remark {
    /// What was seen, for the page to put into words.
    pub code: &'static str,
    /// Numbers and names for those words.
    pub args: Value,
}

/// Time that a look at the strip takes, s (design default).
const LOOK_S: f64 = 2.0;

/// Actions that change nothing: looking and testing.
const LOOKS: [&str; 16] = [
    "tap_pad",
    "wiggle",
    "ask_still",
    "ask_quiet",
    "ask_finger",
    "press_finger",
    "look_around",
    "rescan",
    "time_base",
    "show",
    "scroll",
    "open_take",
    "name",
    "unname",
    "tell_instructor",
    "mark",
];

/// Actions that belong to recording and measuring, not to mending.
const MEASURING: [&str; 9] =
    ["record", "stop", "cursor", "unmark", "marks_clear", "answer", "check", "reveal", "manoeuvre"];

/// Settings of the strip that every measurement needs: turning them is tuning, not mending.
const TUNING: [&str; 3] = ["range", "zero", "zero_clear"];

/// Name of the action in a step of a script; `None` for a wait.
pub fn deed_name(step: &str) -> Option<String> {
    crate::plain::value(step).ok()?.get("do")?.as_str().map(str::to_string)
}

fn changes(deed: &Deed) -> bool {
    let name = deed.name.as_str();
    !LOOKS.contains(&name) && !MEASURING.contains(&name) && !TUNING.contains(&name)
}

/// Remarks on the way the faults were dealt with; none for a scenario without faults.
pub fn remarks(deeds: &[Deed], cases: &[Case]) -> Vec<Remark> {
    let mut found = Vec::new();
    if cases.is_empty() {
        return found;
    }
    for case in cases {
        // What mended it is the last of the deeds that mend: the ones before may have been tries.
        if let Some(repair) = deeds.iter().rposition(|d| case.repairs.contains(&d.name)) {
            let is_test = |d: &Deed| case.tests.contains(&d.name.as_str());
            let tested = deeds[..repair].iter().any(is_test)
                // Asking somebody to keep still shows by itself whether it was that.
                || (is_test(&deeds[repair]) && !changes(&deeds[repair]));
            let code = if tested { "process_tested" } else { "process_untested" };
            found.push(Remark { code, args: json!({"fault": case.id}) });
        }
        if case.present {
            found.push(Remark { code: "process_cause_remains", args: json!({"fault": case.id}) });
        }
    }
    // Changes made one on top of the other, without a look between them; a part that is dragged on is one change.
    let made: Vec<&Deed> = deeds.iter().filter(|d| changes(d)).collect();
    let blind = made
        .windows(2)
        .filter(|w| w[0].name != w[1].name && w[1].at_s - w[0].at_s < LOOK_S)
        .filter(|w| !deeds.iter().any(|d| !changes(d) && d.at_s > w[0].at_s && d.at_s < w[1].at_s))
        .count();
    if blind > 0 {
        found.push(Remark { code: "process_blind", args: json!({"times": blind}) });
    }
    // Changes that have nothing to do with any fault of the bench; two are let pass (common practice).
    let needless = made
        .iter()
        .filter(|d| !cases.iter().any(|c| c.repairs.contains(&d.name) || c.tests.contains(&d.name.as_str())))
        .map(|d| d.name.as_str())
        .collect::<std::collections::BTreeSet<_>>()
        .len();
    if needless > 2 {
        found.push(Remark { code: "process_needless", args: json!({"actions": needless}) });
    }
    let filtered = deeds.iter().any(|d| {
        matches!(d.name.as_str(), "notch" | "low_pass" | "average" | "high_pass")
            && !d.action.get("hz").or_else(|| d.action.get("ms")).is_none_or(Value::is_null)
    });
    if filtered && cases.iter().any(|c| c.present) {
        found.push(Remark { code: "process_filtered_away", args: json!({}) });
    }
    found
}
