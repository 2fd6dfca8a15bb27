//! Replays the scripted attempts of a scenario file and compares what comes out with what the file expects.

use super::action::Action;
use super::attempt::Session;
use super::guide::{LOOK_S, MOST_CHANGES};
use super::tell;
use crate::assess::task::FIELDS;
use crate::bench::look::Spot;
use crate::deed::{Kind, Tell};
use crate::plain::{given, json};
use crate::scenario::Scenario;
use crate::scenario::fault::{self, Fault};
use crate::scenario::pool::Pool;
use crate::scenario::schema::FaultSpec;
use crate::scenario::script::{Attempt, LONGEST_WAIT_S};
use serde_json::Value;
use std::collections::VecDeque;

/// Replays one attempt, on the bench [of scripts](Session::example). The message of an error names the step and what went
/// wrong.
pub fn replay(scenario_text: &str, attempt: &Attempt) -> Result<Session, String> {
    let mut session = Session::example(scenario_text, attempt.seed).map_err(|e| e.to_string())?;
    play(&mut session, &attempt.steps).map_err(|e| format!("attempt \"{}\", {e}", attempt.name))?;
    Ok(session)
}

/// The same with `faults` in the place of those that the seed draws from the scenario's pool.
pub fn replay_with(scenario_text: &str, attempt: &Attempt, faults: &[FaultSpec]) -> Result<Session, String> {
    let mut session =
        Session::example_with(scenario_text, attempt.seed, faults).map_err(|e| e.to_string())?;
    play(&mut session, &attempt.steps).map_err(|e| format!("attempt \"{}\", {e}", attempt.name))?;
    Ok(session)
}

/// The same on a seed of its own, with what the recorder gave in it ([`Session::heard`]): the whole of it, or `until_s` seconds.
pub fn listened(scenario_text: &str, attempt: &Attempt, seed: u64, until_s: f64) -> Result<Session, String> {
    let mut session = Session::example(scenario_text, seed).map_err(|e| e.to_string())?;
    session.listen();
    play_until(&mut session, &attempt.steps, until_s)
        .map_err(|e| format!("attempt \"{}\", {e}", attempt.name))?;
    Ok(session)
}

/// A step with its terms worked out.
pub enum Prepared {
    /// Let time pass.
    Wait {
        /// How long, s.
        seconds: f64,
        /// The same in samples at the present rate.
        samples: u64,
    },
    /// Do something.
    Act(Action),
}

/// A window of one's own is longer by this than the shortest, s.
const OWN_S: f64 = 1.2;
/// Time between two things that are mended, and after a test, s: one looks what it did.
const BETWEEN_S: f64 = 4.0;
/// Tests that a script makes where nothing is wrong.
const ON_NOTHING: [Tell; 4] = [
    Tell::Look(Spot::Sensor),
    Tell::Look(Spot::Cable),
    Tell::Look(Spot::Subject),
    Tell::Does(Kind::TapSensor),
];

/// The steps that a step stands for; `None` where it stands for itself. See [`Attempt::steps`].
pub(super) fn expand(step: &Value, session: &Session) -> Result<Option<Vec<Value>>, String> {
    let (what, fault) = (step["do"].as_str().unwrap_or_default(), step["fault"].as_str().unwrap_or_default());
    let term = if what == "name" { fault } else { what };
    if !term.starts_with('@') {
        return Ok(None);
    }
    if session.run.closed {
        return Err(format!("\"{term}\": an assigned bench tells nothing"));
    }
    let scenario = session.scenario().ok_or("there is no bench")?;
    let faults: Vec<&Fault> = scenario.fault.iter().filter_map(|spec| fault::named(&spec.name)).collect();
    let wait = || json!({"wait": BETWEEN_S});
    let steps = match (what, term) {
        ("name", "@faults") => faults.iter().map(|f| json!({"do": "name", "fault": f.id})).collect(),
        ("name", "@other") => {
            let named = |f: &&&Fault| !faults.iter().any(|g| g.id == f.id || g.brings.contains(&f.id));
            let members = scenario.pool.as_ref().map_or_else(Vec::new, Pool::members);
            let other = members.iter().find(named).ok_or("there is no other fault in a pool")?;
            vec![json!({"do": "name", "fault": other.id})]
        }
        ("@test", _) => {
            // What only looks or asks leaves the bench as it was.
            let gentle = |t: &&Tell| matches!(t, Tell::Look(_) | Tell::Wiggle(_) | Tell::Stretch);
            let first = |f: &Fault| f.tests.iter().find(gentle).or(f.tests.first()).copied();
            let tests: Vec<Tell> = if faults.is_empty() {
                ON_NOTHING.to_vec()
            } else {
                faults.iter().filter_map(|f| first(f)).collect()
            };
            tests.into_iter().flat_map(|t| tell::ways(t, session).into_iter().chain([wait()])).collect()
        }
        ("@mend", _) => {
            let mut thing = None;
            let mut steps = Vec::new();
            for step in faults.iter().flat_map(|f| f.remedy).filter_map(|s| crate::plain::value(s).ok()) {
                // One thing at a time, with a look between.
                let next = Action::from_value(step.clone()).ok().map(|a| a.thing());
                if next.is_some() && thing.is_some() && next != thing {
                    steps.push(wait());
                }
                thing = next.or(thing);
                steps.push(step);
            }
            steps.push(wait());
            steps
        }
        ("@fit", _) => {
            let left = step["left"].as_u64().unwrap_or(MOST_CHANGES as u64);
            match session.better_range().filter(|_| left > 0) {
                Some(v) => vec![
                    json!({"do": "range", "v": v}),
                    json!({"wait": LOOK_S}),
                    json!({"do": "@fit", "left": left - 1}),
                ],
                None => Vec::new(),
            }
        }
        _ => return Err(format!("there is no {term}")),
    };
    Ok(Some(steps))
}

/// The action of a step of the catalogue, whose terms and texts do not matter; `None` for a wait.
pub(super) fn sample(step: &str) -> Option<Action> {
    Action::from_value(crate::plain::value(step).ok()?).ok()
}

/// Works out the terms of a step as the attempt stands.
pub fn prepare(step: &Value, session: &Session) -> Result<Prepared, String> {
    if let Some(wait) = step.get("wait") {
        let seconds = wait
            .as_f64()
            .filter(|s| (0.0..=LONGEST_WAIT_S).contains(s))
            .ok_or_else(|| format!("wait = {wait}; expected 0 to {LONGEST_WAIT_S} seconds"))?;
        let rate = session.chain().map_or(1000.0, |c| f64::from(c.settings().rate_hz));
        return Ok(Prepared::Wait { seconds, samples: (seconds * rate).round() as u64 });
    }
    Action::from_value(fill_in(step.clone(), session)?).map(Prepared::Act).map_err(|e| e.to_string())
}

/// Does steps in an attempt. The message of an error names the step and what went wrong.
pub fn play(session: &mut Session, steps: &[Value]) -> Result<(), String> {
    play_until(session, steps, f64::INFINITY)
}

/// The same, and no further than so many seconds from now.
fn play_until(session: &mut Session, steps: &[Value], until_s: f64) -> Result<(), String> {
    let end_s = session.time_s() + until_s;
    let mut queue: VecDeque<(usize, Value)> = steps.iter().cloned().enumerate().collect();
    while let Some((k, step)) = queue.pop_front() {
        let here = |e: String| format!("step {}: {e}", k + 1);
        if let Some(others) = expand(&step, session).map_err(here)? {
            others.into_iter().rev().for_each(|step| queue.push_front((k, step)));
            continue;
        }
        match prepare(&step, session).map_err(here)? {
            Prepared::Wait { seconds, samples } => {
                let left_s = end_s - session.time_s();
                if left_s < seconds {
                    session.run_long((samples as f64 * left_s / seconds).round() as u64);
                    return Ok(());
                }
                session.run_long(samples);
            }
            Prepared::Act(action) => {
                session.act(&action).map_err(|r| here(format!("refused: {}", given(&r))))?
            }
        }
    }
    Ok(())
}

/// Replays all attempts of a scenario; one message for each that does not end as expected.
pub fn replay_all(scenario: &Scenario, text: &str) -> Vec<String> {
    scenario.attempt.iter().filter_map(|attempt| judge(text, attempt).err()).collect()
}

fn judge(text: &str, attempt: &Attempt) -> Result<(), String> {
    let session = replay(text, attempt)?;
    let name = &attempt.name;
    let check = session.check().ok_or_else(|| format!("attempt \"{name}\": nothing was checked"))?;
    let codes: Vec<&str> =
        check.report.steps.iter().map(|f| f.code).chain(check.process.iter().map(|r| r.code)).collect();
    if check.report.passed != attempt.expect.passed {
        let (found, expected) = (check.report.passed, attempt.expect.passed);
        return Err(format!(
            "attempt \"{name}\": passed = {found}, expected {expected} (found {}; trace {:?})",
            codes.join(", "),
            check.trace
        ));
    }
    match attempt.expect.codes.iter().find(|code| !codes.contains(&code.as_str())) {
        Some(code) => {
            Err(format!("attempt \"{name}\": expected the code {code}, found {}", codes.join(", ")))
        }
        None => Ok(()),
    }
}

/// Puts right values in the place of `@count` and its like.
fn fill_in(mut step: Value, session: &Session) -> Result<Value, String> {
    let Some(fields) = step.as_object_mut() else { return Err("a step is a table".into()) };
    for (name, value) in fields.iter_mut() {
        let Some(term) = value.as_str().filter(|s| s.starts_with('@')) else { continue };
        if session.run.closed {
            return Err(format!("\"{term}\": an assigned bench tells no right value"));
        }
        let number = work_out(&term[1..], session)?;
        *value = if name == "text" { Value::from(plain(number)) } else { Value::from(number) };
    }
    Ok(step)
}

/// A number as a student would write it: up to three decimals.
fn plain(x: f64) -> String {
    let text = format!("{x:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

/// Works out `name`, `name+x`, `name-x` or `name*x`.
fn work_out(term: &str, session: &Session) -> Result<f64, String> {
    let at = term.find(['+', '-', '*']).unwrap_or(term.len());
    let (name, rest) = term.split_at(at);
    let base = right_value(name, session)?;
    let Some(sign) = rest.chars().next() else { return Ok(base) };
    let by: f64 = rest[1..].parse().map_err(|_| format!("\"@{term}\": no number after {sign}"))?;
    Ok(match sign {
        '+' => base + by,
        '-' => base - by,
        _ => base * by,
    })
}

fn right_value(name: &str, session: &Session) -> Result<f64, String> {
    let peaks = session.reference_peaks();
    let kept = session.recording().ok_or("nothing has been recorded yet")?;
    let first = || peaks.first().ok_or_else(|| "the recording has no beat".to_string());
    let task = &session.sheet.task;
    match name {
        "beat" => return first().map(|p| p.at_s),
        // As the recorder shows it: where a cursor on the peak would stand.
        "peak" => return first().map(|p| p.at_s + kept.delay_s),
        // The peak as many intervals later as are asked for.
        "last" => {
            let n = task.n.ok_or("the question asks for no number of intervals")? as usize;
            let sure: Vec<f64> = peaks.iter().filter(|p| p.sure).map(|p| p.at_s + kept.delay_s).collect();
            return sure.get(n).copied().ok_or_else(|| "the recording has too few beats".into());
        }
        // The end of a window of the asked length that begins at cursor A.
        "end" => {
            let a = kept.a.ok_or("there is no cursor A")?;
            // Where the length is the student's own, a little more than the shortest.
            return Ok(a + task.seconds.unwrap_or(session.criteria().window_s + OWN_S));
        }
        "foot" | "top" => {
            let beats = session.landmarks(&peaks);
            let beat = beats.get(1).ok_or("the recording has no whole beat")?;
            return Ok(if name == "foot" { beat.foot_s } else { beat.peak_s });
        }
        _ => {}
    }
    let field = FIELDS.into_iter().find(|field| field.name() == name);
    let field = field.ok_or_else(|| format!("there is no @{name}"))?;
    session.right(field).ok_or_else(|| format!("@{name}: the kept and its cursors do not say it"))
}
