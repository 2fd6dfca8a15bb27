//! Replays the scripted attempts of a scenario file and compares what comes out with what the file expects.

use super::action::Action;
use super::attempt::Session;
use crate::assess::task::FIELDS;
use crate::plain::given;
use crate::scenario::Scenario;
use crate::scenario::script::{Attempt, LONGEST_WAIT_S};
use serde_json::Value;

/// Replays one attempt, on the bench [of scripts](Session::example). The message of an error names the step and what went
/// wrong.
pub fn replay(scenario_text: &str, attempt: &Attempt) -> Result<Session, String> {
    let mut session = Session::example(scenario_text, attempt.seed).map_err(|e| e.to_string())?;
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
    for (k, step) in steps.iter().enumerate() {
        let here = |e: String| format!("step {}: {e}", k + 1);
        match prepare(step, session).map_err(here)? {
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
            let (a, seconds) = kept.a.zip(task.seconds).ok_or("no cursor A, or no length is asked for")?;
            return Ok(a + seconds);
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
