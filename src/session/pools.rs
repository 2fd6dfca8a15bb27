//! Whether all that a pool draws can be found: each member shows on its bench, is told from every other, goes under its
//! remedy, and the worked example finds, names and mends it; where nothing is wrong, nothing shows.

use super::attempt::Session;
use super::walk::{Walk, shows};
use super::{guide, readiness, script, tell};
use crate::deed::Tell;
use crate::plain::json;
use crate::scenario::Scenario;
use crate::scenario::fault::{AtWork, Fault, Symptom};
use crate::scenario::pool::Pool;
use crate::scenario::schema::{FaultSpec, Severity};
use serde_json::Value;

/// Seeds on which a pool is tried.
pub const SEEDS: [u64; 2] = [3, 4];
/// Looks at a fault that comes and goes.
const LOOKS: u32 = 4;
/// Watched before a test, and after it, s.
const BEFORE_S: f64 = 20.0;
const AFTER_S: f64 = 6.0;

/// What is wrong with one draw of a scenario's pool on one seed, in words; nothing where it can be found.
pub fn flaws(scenario: &Scenario, text: &str, draw: &[&'static Fault], seed: u64) -> Vec<String> {
    let trial = Trial { scenario, text, seed };
    let mut found = match draw {
        [] => trial.nothing(),
        [fault] => trial.single(fault),
        several => trial.several(several),
    };
    found.extend(trial.example(draw));
    let names: Vec<&str> = draw.iter().map(|f| f.id).collect();
    let what = if names.is_empty() { "nothing".into() } else { names.join(" and ") };
    found.iter_mut().for_each(|flaw| *flaw = format!("pool, {what}, seed {seed}: {flaw}"));
    found
}

/// A draw as a scenario lists it, each fault at a severity of its own range from 0, its mildest, to 1.
fn specs(draw: &[&'static Fault], at: Option<f64>) -> Vec<FaultSpec> {
    let severity = |f: &Fault| at.map(|u| Severity::Fixed(f.severity.0 + u * (f.severity.1 - f.severity.0)));
    draw.iter().map(|f| FaultSpec { name: f.id.into(), severity: severity(f) }).collect()
}

struct Trial<'a> {
    scenario: &'a Scenario,
    text: &'a str,
    seed: u64,
}

impl Trial<'_> {
    fn members(&self) -> Vec<&'static Fault> {
        self.scenario.pool.as_ref().map_or_else(Vec::new, Pool::members)
    }

    fn begin(&self, draw: &[&'static Fault], at: Option<f64>) -> Result<Session, String> {
        Session::example_with(self.text, self.seed, &specs(draw, at)).map_err(|e| e.to_string())
    }

    /// The same after a while.
    fn watched(&self, draw: &[&'static Fault]) -> Result<Session, String> {
        let mut session = self.begin(draw, None)?;
        script::play(&mut session, &[json!({"wait": BEFORE_S})])?;
        Ok(session)
    }

    /// Causes at work beside those of the draw and those that it brings.
    fn beside(&self, session: &Session, draw: &[&'static Fault]) -> Vec<String> {
        let brought = |id: &str| draw.iter().any(|f| f.id == id || f.brings.contains(&id));
        let others = self.members().into_iter().filter(|g| matches!(g.at_work, AtWork::Is(_)));
        // Where there is no recording yet there is none with every draw.
        let counts = |g: &&Fault| g.symptom != Symptom::NothingSaved && !brought(g.id);
        let others = others.filter(counts).filter(|g| session.is_at_work(g));
        let told = |id: &str| format!("{id} is at work as well");
        let members = others.map(|g| told(g.id)).collect::<Vec<_>>();
        let tuned = |id: &str| matches!(id, "range_large" | "range_small") || brought(id);
        let also = session.log.also.iter().filter(|id| !tuned(id)).map(|id| told(id));
        let mut all: Vec<String> = members.into_iter().chain(also).collect();
        all.sort();
        all.dedup();
        all
    }

    fn nothing(&self) -> Vec<String> {
        let session = match self.watched(&[]) {
            Ok(session) => session,
            Err(why) => return vec![why],
        };
        let shown = |f: &&Fault| {
            f.symptom != Symptom::NothingSaved
                && !matches!(f.symptom, Symptom::Finding(_))
                && shows(&session, f.symptom)
        };
        let mut found: Vec<String> = self
            .members()
            .iter()
            .filter(|f| shown(f))
            .map(|f| format!("{} shows all the same", f.id))
            .collect();
        found.extend(self.beside(&session, &[]));
        found
    }

    fn several(&self, draw: &[&'static Fault]) -> Vec<String> {
        let session = match self.begin(draw, None) {
            Ok(session) => session,
            Err(why) => return vec![why],
        };
        let hidden = |f: &&&Fault| matches!(f.at_work, AtWork::Is(_)) && !session.is_at_work(f);
        let mut found: Vec<String> =
            draw.iter().filter(hidden).map(|f| format!("{} is not at work", f.id)).collect();
        found.extend(self.beside(&session, draw));
        found
    }

    fn single(&self, fault: &'static Fault) -> Vec<String> {
        let mut found = Vec::new();
        let ends: &[f64] = if fault.severity.0 < fault.severity.1 { &[0.0, 1.0] } else { &[1.0] };
        for at in ends {
            match Walk::of(&|| self.begin(&[fault], Some(*at)), fault, LOOKS) {
                Ok(walk) if walk.good(fault) => {}
                Ok(walk) => found.push(format!("severity {at} of its range: {walk}")),
                Err(why) => found.push(why),
            }
        }
        match self.begin(&[fault], None) {
            Ok(session) => found.extend(self.beside(&session, &[fault])),
            Err(why) => found.push(why),
        }
        if self.seed == SEEDS[0] {
            let later = self.members().into_iter().skip_while(|g| g.id != fault.id).skip(1);
            for other in later {
                match self.told_apart(fault, other) {
                    Ok(true) => {}
                    Ok(false) => found.push(format!("no test of the two tells it from {}", other.id)),
                    Err(why) => found.push(why),
                }
            }
        }
        found
    }

    /// Whether a test of one of two faults shows what the other does not: something else is to be seen on the bench or in the
    /// settings, the subject answers otherwise, or one of their figures is above 1 on one bench alone.
    fn told_apart(&self, one: &'static Fault, other: &'static Fault) -> Result<bool, String> {
        let (a, b) = (self.watched(&[one])?, self.watched(&[other])?);
        let mut tests: Vec<Tell> = Vec::new();
        for test in one.tests.iter().chain(other.tests) {
            if !tests.contains(test) {
                tests.push(*test);
            }
        }
        for test in tests {
            if seen_after(&a, test, [one, other]) != seen_after(&b, test, [one, other]) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// The worked example with this draw.
    fn example(&self, draw: &[&'static Fault]) -> Vec<String> {
        let Some(attempt) = guide::example(self.scenario) else {
            return vec!["there is no scripted attempt that passes".into()];
        };
        let attempt = crate::scenario::script::Attempt { seed: self.seed, ..attempt.clone() };
        let session = match script::replay_with(self.text, &attempt, &specs(draw, None)) {
            Ok(session) => session,
            Err(why) => return vec![why],
        };
        let Some(check) = session.check() else { return vec!["nothing was checked".into()] };
        let missing = readiness::missing(&check.rubric);
        if check.report.passed && check.rubric.ready() && missing.is_empty() {
            return Vec::new();
        }
        let wrong: Vec<&str> = check.report.steps.iter().filter(|f| f.is_wrong()).map(|f| f.code).collect();
        vec![format!(
            "the worked example is wrong in [{}] and misses [{}]",
            wrong.join(", "),
            missing.join(", ")
        )]
    }
}

/// What is to be seen after a test.
fn seen_after(session: &Session, test: Tell, faults: [&Fault; 2]) -> Option<(Value, Vec<bool>)> {
    let mut session = session.clone();
    let made = tell::ways(test, &session);
    // What cannot be done on one bench and can on the other tells as well.
    script::play(&mut session, &made).ok()?;
    script::play(&mut session, &[json!({"wait": AFTER_S})]).ok()?;
    let view = session.view();
    let seen = json!({
        "bench": view["bench"], "recorder": view["recorder"], "link": view["link"], "time_base": view["time_base"],
        "trace": view["trace"]["mode"], "recordings": view["recordings"], "worksheet": view["worksheet"],
    });
    Some((seen, faults.iter().map(|f| shows(&session, f.symptom)).collect()))
}
