//! How faults were found and mended, judged from what happened. Troubleshooting is taught as: look, test, change one thing,
//! look again (common practice); and a cause that is only filtered away is still there.
//!
//! A cause was tested when something that can tell it apart was done while it was at work, or when a reversal was seen: one
//! thing was changed, nothing else about it, and the cause went with it while the trace ran. Looking, tuning, help and notes
//! are no tinkering.

use crate::bench::table::Point;
use crate::deed::{Action, Kind, Nature, Tell, Thing};
use crate::plain::json;
use serde::Serialize;
use serde_json::Value;

/// Something done, with what was so just before it.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// Time since the start, s.
    pub at_s: f64,
    /// The action.
    pub action: Action,
    /// Causes at work before it: the bit of a [`Case`] is its place in the list of cases.
    pub causes: u32,
    /// Where the part stood before, if one was moved.
    pub from: Option<Point>,
    /// Whether the trace was to be seen running.
    pub live: bool,
}

impl Done {
    /// Which action it was.
    pub fn kind(&self) -> Kind {
        self.action.kind()
    }

    fn nature(&self) -> Nature {
        self.kind().nature()
    }

    /// Whether it does something to the trace that one should look at before the next.
    fn alters(&self) -> bool {
        matches!(self.nature(), Nature::Change | Nature::Tune)
    }
}

/// A fault of the scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Its name.
    pub id: &'static str,
    /// What tells it apart from its look-alikes.
    pub tests: &'static [Tell],
    /// Kinds of action that mend it, and what each is done to.
    pub repairs: Vec<(Kind, Thing)>,
    /// Whether its cause is still there at the end.
    pub present: bool,
    /// Whether it is to be mended; else it is only to be found.
    pub to_mend: bool,
    /// Whether it is a slip on paper, which shows by itself when it is put right.
    pub paper: bool,
}

/// A remark on the way of working.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Remark {
    /// What was seen, for the page to put into words.
    pub code: &'static str,
    /// Numbers and names for those words.
    pub args: Value,
}

/// How long the trace must run undisturbed before and after a change so that one can see what it did, s: a few beats (design
/// default).
pub const LOOK_S: f64 = 2.5;
/// How long a trace that was drawn out must stand so that one can read the distance of its waves, s (design default).
const STRETCH_S: f64 = 1.5;
/// Changes within this time without a look between them are made blind, s (design default).
const BLIND_S: f64 = 2.0;
/// Things changed that have nothing to do with any fault: two are let pass (common practice).
const NEEDLESS: usize = 2;

/// Remarks on the way the faults were dealt with by the time `end_s`; none for a scenario without faults.
pub fn remarks(done: &[Done], cases: &[Case], end_s: f64) -> Vec<Remark> {
    let mut found = Vec::new();
    if cases.is_empty() {
        return found;
    }
    for (k, case) in cases.iter().enumerate() {
        let code = if tested(done, case, 1 << k, end_s) { "process_tested" } else { "process_untested" };
        found.push(Remark { code, args: json!({"fault": case.id}) });
        if case.present && case.to_mend {
            found.push(Remark { code: "process_cause_remains", args: json!({"fault": case.id}) });
        }
    }
    found.extend(careless(done, cases));
    if filters(done) && cases.iter().any(|c| c.present && c.to_mend) {
        found.push(Remark { code: "process_filtered_away", args: json!({}) });
    }
    found
}

/// Tests and looks after which one may say that nothing is wrong (design default): so many different ones.
const ENOUGH: usize = 3;

/// Remarks where nothing was wrong and that was to be found out: the same codes as where something was.
pub fn remarks_on_nothing(done: &[Done]) -> Vec<Remark> {
    let mut tests: Vec<(Kind, Thing, String)> = Vec::new();
    for d in done.iter().filter(|d| matches!(d.nature(), Nature::Test | Nature::Look | Nature::Tune)) {
        // A look at another place is another look.
        let test = (d.kind(), d.action.thing(), d.action.to_value().to_string());
        if !tests.contains(&test) {
            tests.push(test);
        }
    }
    let code = if tests.len() >= ENOUGH { "process_tested" } else { "process_untested" };
    let mut found = vec![Remark { code, args: json!({}) }];
    found.extend(careless(done, &[]));
    found
}

/// Remarks on changes made without a look, and on those that have nothing to do with any fault.
fn careless(done: &[Done], cases: &[Case]) -> Vec<Remark> {
    let mut found = Vec::new();
    let (blind, needless) = (blind(done), needless(done, cases));
    if blind > 0 {
        found.push(Remark { code: "process_blind", args: json!({"times": blind}) });
    }
    if needless > NEEDLESS {
        found.push(Remark { code: "process_needless", args: json!({"actions": needless}) });
    }
    found
}

/// Whether a cause was tested before it was mended, or shown by the mending itself.
fn tested(done: &[Done], case: &Case, bit: u32, end_s: f64) -> bool {
    let at_work = |d: &Done| d.causes & bit != 0 || case.paper;
    // A test is made while the cause is there: afterwards it tells nothing.
    let mended = mended_at(done, case, bit);
    let before = mended.unwrap_or(done.len());
    let starts = drag_starts(done);
    let tells = |k: usize| {
        let from = done[starts[k]].from;
        let is = |t: &Tell| {
            t.is(&done[k].action, from) && (*t != Tell::Stretch || case.paper || stood(done, k, end_s))
        };
        at_work(&done[starts[k]]) && case.tests.iter().any(is)
    };
    if (0..before).any(tells) {
        return true;
    }
    let Some(mend) = mended else { return false };
    case.paper || (tells(mend) && done[mend].nature() == Nature::Test) || reversal_seen(done, mend, end_s)
}

/// Whether one could look at what was drawn out: nothing else was altered or drawn otherwise for a while.
fn stood(done: &[Done], k: usize, end_s: f64) -> bool {
    let other = |d: &&Done| d.alters() || d.nature() == Nature::Test || Tell::Stretch.is(&d.action, None);
    let next_s = done[k + 1..].iter().find(other).map_or(end_s, |d| d.at_s);
    next_s - done[k].at_s >= STRETCH_S
}

/// The deed that mended a cause: the last that belongs to its remedy before it was gone for good.
fn mended_at(done: &[Done], case: &Case, bit: u32) -> Option<usize> {
    if case.present {
        return None;
    }
    let repairs = |d: &Done| {
        let (kind, thing) = (d.kind(), d.action.thing());
        case.repairs.iter().any(|(k, t)| *t == thing && (*k == kind || thing != Thing::Other(kind)))
    };
    if case.paper {
        return done.iter().rposition(repairs);
    }
    let last = done.iter().rposition(|d| d.causes & bit != 0)?;
    let alters = |d: &Done| matches!(d.nature(), Nature::Change | Nature::Tune | Nature::Test | Nature::Look);
    done[..=last].iter().rposition(repairs).or_else(|| done[..=last].iter().rposition(alters))
}

/// For each deed the one that a drag began with: moves of one part that follow each other are one.
fn drag_starts(done: &[Done]) -> Vec<usize> {
    let mut starts: Vec<usize> = Vec::with_capacity(done.len());
    for (k, d) in done.iter().enumerate() {
        let goes_on = k > 0 && d.kind() == Kind::Move && d.action.thing() == done[k - 1].action.thing();
        starts.push(if goes_on { starts[k - 1] } else { k });
    }
    starts
}

/// Whether one could see that the mending mended: the trace ran for a few beats before and after, and nothing else was
/// altered meanwhile.
fn reversal_seen(done: &[Done], mend: usize, end_s: f64) -> bool {
    let thing = done[mend].action.thing();
    let other = |d: &&Done| d.alters() && d.action.thing() != thing;
    let same = |d: &&Done| d.action.thing() == thing;
    // The first of the run of deeds at this thing that ends with the mending.
    let run_began = done[..=mend].iter().rev().take_while(|d| same(d) || !d.alters()).filter(same).last();
    let began_s = run_began.map_or(done[mend].at_s, |d| d.at_s);
    let disturbed_s = done[..mend].iter().filter(other).map(|d| d.at_s).rfind(|t| *t <= began_s);
    let next_s = done[mend + 1..].iter().find(other).map_or(end_s, |d| d.at_s);
    let ran_before = began_s - disturbed_s.unwrap_or(0.0) >= LOOK_S;
    let ran_after = next_s - done[mend].at_s >= LOOK_S;
    let seen = done.get(mend + 1).is_none_or(|d| d.live || d.at_s - done[mend].at_s >= LOOK_S);
    ran_before && ran_after && seen
}

/// Changes made one on top of the other, without a look between them.
fn blind(done: &[Done]) -> usize {
    let made: Vec<&Done> = done.iter().filter(|d| d.nature() == Nature::Change).collect();
    // What is done on a recording tells nothing of what a change did.
    let looks = |d: &&Done| {
        d.nature() == Nature::Test
            || matches!(d.kind(), Kind::TimeBase | Kind::Look | Kind::Show | Kind::Record | Kind::Manoeuvre)
    };
    let looked = |from: f64, to: f64| done.iter().filter(looks).any(|d| d.at_s > from && d.at_s < to);
    made.windows(2)
        .filter(|w| w[0].action.thing() != w[1].action.thing())
        .filter(|w| w[1].at_s - w[0].at_s < BLIND_S && !looked(w[0].at_s, w[1].at_s))
        .count()
}

/// Things changed that have nothing to do with any fault of the bench.
fn needless(done: &[Done], cases: &[Case]) -> usize {
    let starts = drag_starts(done);
    let mut things: Vec<Thing> = Vec::new();
    for (k, d) in done.iter().enumerate() {
        let from = done[starts[k]].from;
        let thing = d.action.thing();
        let belongs = |c: &Case| {
            c.repairs.iter().any(|(_, t)| *t == thing)
                || c.tests.iter().any(|t| t.is(&d.action, from.map(|_| Point { x: -1e3, y: -1e3 })))
        };
        if d.nature() == Nature::Change && !cases.iter().any(belongs) && !things.contains(&thing) {
            things.push(thing);
        }
    }
    things.len()
}

/// Whether a filter was set, and not only taken out.
fn filters(done: &[Done]) -> bool {
    use crate::recorder::settings::Change;
    done.iter().any(|d| {
        matches!(
            d.action,
            Action::Recorder(
                Change::Notch { hz: Some(_) }
                    | Change::LowPass { hz: Some(_), .. }
                    | Change::HighPass { hz: Some(_), .. }
                    | Change::Average { ms: Some(_) }
            )
        )
    })
}
