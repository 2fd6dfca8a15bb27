//! Replays the scripted attempts of a scenario file and compares what comes out with what the file expects.

use super::action::Action;
use super::attempt::Session;
use crate::assess::window::allowed;
use crate::scenario::Scenario;
use crate::scenario::script::{Attempt, LONGEST_WAIT_S};
use serde_json::Value;

/// Replays one attempt. The message of an error names the step and what went wrong.
pub fn replay(scenario_text: &str, attempt: &Attempt) -> Result<Session, String> {
    let mut session = Session::new(scenario_text, attempt.seed).map_err(|e| e.to_string())?;
    play(&mut session, &attempt.steps).map_err(|e| format!("attempt \"{}\", {e}", attempt.name))?;
    Ok(session)
}

/// Does steps in an attempt. The message of an error names the step and what went wrong.
pub fn play(session: &mut Session, steps: &[Value]) -> Result<(), String> {
    for (k, step) in steps.iter().enumerate() {
        let here = |e: String| format!("step {}: {e}", k + 1);
        if let Some(wait) = step.get("wait") {
            let seconds = wait
                .as_f64()
                .filter(|s| (0.0..=LONGEST_WAIT_S).contains(s))
                .ok_or_else(|| here(format!("wait = {wait}; expected 0 to {LONGEST_WAIT_S} seconds")))?;
            let rate = session.chain().map_or(1000.0, |c| f64::from(c.settings().rate_hz));
            session.run_long((seconds * rate).round() as u64);
            continue;
        }
        let action = Action::from_value(fill_in(step.clone(), session).map_err(here)?).map_err(here)?;
        session.act(&action).map_err(|r| {
            here(format!("refused: {}", serde_json::to_string(&r).unwrap_or_else(|_| format!("{r:?}"))))
        })?;
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
    let take = session.take().ok_or("nothing has been recorded yet")?;
    if name == "beat" {
        return peaks.first().map(|p| p.at_s).ok_or_else(|| "the recording has no beat".into());
    }
    let (a, b) = take.window().ok_or("the cursors are not both there")?;
    let count = allowed(&peaks, a, b, 0.06, take.delay_s).exact as f64;
    let seconds = ((b - a) * 100.0).round() / 100.0;
    match name {
        "count" => Ok(count),
        "seconds" => Ok(seconds),
        "multiplier" => Ok((60.0 / seconds * 100.0).round() / 100.0),
        "rate" => Ok((60.0 * count / seconds).round()),
        _ => Err(format!("there is no @{name}")),
    }
}
