//! Whether a scenario keeps its word: its worked example, taken alone, must earn every point and be ready, and brief, task,
//! criteria and faults must ask for the same.

use super::attempt::Session;
use super::{guide, script};
use crate::assess::rubric::Rubric;
use crate::assess::task::{Reads, TaskSpec};
use crate::plain::json;
use crate::scenario::fault::{self, Fault, Impression};
use crate::scenario::{Scenario, schema::Start};
use serde_json::Value;
use thiserror::Error;

/// What the worked example earns, taken alone.
pub fn of_example(scenario: &Scenario, text: &str) -> Result<Rubric, String> {
    let attempt = guide::example(scenario).ok_or("there is no scripted attempt that passes")?;
    let session = script::replay(text, attempt)?;
    session.check().map(|c| c.rubric.clone()).ok_or_else(|| "nothing was checked".to_string())
}

/// The points that were not given, with their rows.
pub fn missing(rubric: &Rubric) -> Vec<String> {
    let points = rubric.rows.iter().flat_map(|row| row.points.iter().map(move |p| (row.row, p)));
    points.filter(|(_, p)| !p.got).map(|(row, p)| format!("{row}: {}", p.code)).collect()
}

/// Where brief, task, criteria, rubric and faults of a scenario contradict each other.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Contradiction {
    /// The recording that is asked for is shorter than the window.
    #[error(
        "pass.record_s = {record_s}: the recording is shorter than the counting window of {window_s} s that is asked for"
    )]
    RecordingTooShort {
        /// Shortest recording, s.
        record_s: f64,
        /// Window, s.
        window_s: f64,
    },
    /// The longest window is shorter than the shortest.
    #[error("task.longest_s = {longest_s}, pass.window_s = {window_s}: no counting window fits both")]
    NoWindow {
        /// Longest window, s.
        longest_s: f64,
        /// Shortest window, s.
        window_s: f64,
    },
    /// The brief speaks of less time than is asked for.
    #[error("brief: the longest time in it is {stated_s} s, but {field} asks for {asked_s} s")]
    BriefSaysLess {
        /// What asks for it.
        field: &'static str,
        /// Longest time that the brief speaks of, s.
        stated_s: f64,
        /// What is asked for, s.
        asked_s: f64,
    },
    /// Something is wrong with the bench that no `[[fault]]` names.
    #[error("fault: \"{fault}\" is in this scenario, and no [[fault]] names it")]
    Unlisted {
        /// Its name in the catalogue.
        fault: String,
    },
}

impl Contradiction {
    /// The code by which the page knows it, and its arguments.
    pub fn told(&self) -> (&'static str, Value) {
        match self {
            Self::RecordingTooShort { record_s, window_s } => {
                ("recording_too_short", json!({"record": record_s, "window": window_s}))
            }
            Self::NoWindow { longest_s, window_s } => {
                ("no_window", json!({"longest": longest_s, "window": window_s}))
            }
            Self::BriefSaysLess { field, stated_s, asked_s } => {
                let code = if *field == RECORD { "brief_recording" } else { "brief_window" };
                (code, json!({"stated": stated_s, "asked": asked_s}))
            }
            Self::Unlisted { fault } => ("unlisted", json!({"fault": fault})),
        }
    }
}

/// The field that asks for a length of the recording.
const RECORD: &str = "pass.record_s";

/// All of them.
pub fn contradictions(scenario: &Scenario, text: &str) -> Vec<Contradiction> {
    let own = [scenario.task.clone()];
    let tasks = scenario.pool.as_ref().map_or(&own[..], |p| if p.tasks.is_empty() { &own } else { &p.tasks });
    let mut found: Vec<Contradiction> = Vec::new();
    for one in tasks.iter().flat_map(|task| between(scenario, task)) {
        if !found.contains(&one) {
            found.push(one);
        }
    }
    found.extend(unlisted(scenario, text));
    found
}

/// Those between brief, criteria and one question.
fn between(scenario: &Scenario, spec: &TaskSpec) -> Vec<Contradiction> {
    let mut found = Vec::new();
    let pass = &scenario.pass;
    let task = spec.settle(0);
    let question = task.kind.question();
    if let Some(window_s) = (question.holds_s)(spec, pass)
        && window_s > pass.record_s + 1e-9
        && !given_recording(scenario)
    {
        found.push(Contradiction::RecordingTooShort { record_s: pass.record_s, window_s });
    }
    if let Some(longest_s) = task.longest_s.filter(|most| *most + 1e-9 < pass.window_s) {
        found.push(Contradiction::NoWindow { longest_s, window_s: pass.window_s });
    }
    let stated = seconds_in(&scenario.brief);
    let most_stated = stated.iter().copied().fold(0.0, f64::max);
    let asks_record = task.reads() != Reads::Nothing && !given_recording(scenario);
    for (field, asked_s, applies) in [
        (RECORD, pass.record_s, asks_record),
        ("the shortest counting window", pass.window_s, question.brief_says_window),
    ] {
        if applies && !stated.is_empty() && asked_s > most_stated + 1e-9 {
            found.push(Contradiction::BriefSaysLess { field, stated_s: most_stated, asked_s });
        }
    }
    found
}

/// Whether a recording lies there that is to be measured.
fn given_recording(scenario: &Scenario) -> bool {
    let made_before = |steps: &[serde_json::Value]| steps.iter().any(|s| s["do"] == "record");
    made_before(&scenario.before)
        || scenario.possible().iter().any(|f| fault::named(&f.name).is_some_and(Fault::leaves_recording))
}

/// Causes that are at work on a wired bench and stand in no `[[fault]]`: finding and mending them would earn nothing.
fn unlisted(scenario: &Scenario, text: &str) -> Vec<Contradiction> {
    // Of a pool each draw is looked at by itself, see [`super::pools`].
    if scenario.bench.start == Start::Apart || scenario.pool.is_some() {
        return Vec::new();
    }
    let seed = guide::example(scenario).map_or(1, |a| a.seed);
    let Ok(session) = Session::example(text, seed) else { return Vec::new() };
    // The range is tuned at every bench, and an uneven pulse may be what the question is about.
    let about = scenario.task.kind.question().about;
    let tuned = |id: &str| matches!(id, "range_large" | "range_small") || about.contains(&id);
    let listed = |id: &str| session.log.cases.iter().any(|c| c.id == id);
    session
        .log
        .also
        .iter()
        .filter(|id| !tuned(id) && !listed(id))
        .filter(|id| fault::named(id).is_some_and(|f| f.impression != Impression::Paper))
        .map(|id| Contradiction::Unlisted { fault: id.to_string() })
        .collect()
}

/// The times in seconds that a text speaks of, in digits or in words.
fn seconds_in(text: &str) -> Vec<f64> {
    let words: Vec<String> = text
        .split(|c: char| c.is_whitespace() || c == '-')
        .map(|w| w.trim_matches(|c: char| !c.is_alphanumeric()).to_lowercase())
        .filter(|w| !w.is_empty() && w != "\\")
        .collect();
    words
        .windows(2)
        .filter(|w| matches!(w[1].as_str(), "s" | "seconds" | "second" | "minute" | "minutes"))
        // "A second" and the like are figures of speech.
        .filter(|w| w[1].starts_with('m') || number(&w[0]).is_some_and(|n| n > 1.0))
        .filter_map(|w| Some(number(&w[0])? * if w[1].starts_with('m') { 60.0 } else { 1.0 }))
        .collect()
}

fn number(word: &str) -> Option<f64> {
    const WORDS: [(&str, f64); 13] = [
        ("a", 1.0),
        ("one", 1.0),
        ("two", 2.0),
        ("five", 5.0),
        ("ten", 10.0),
        ("fifteen", 15.0),
        ("twenty", 20.0),
        ("thirty", 30.0),
        ("forty", 40.0),
        ("fifty", 50.0),
        ("sixty", 60.0),
        ("half", 0.5),
        ("twenty-five", 25.0),
    ];
    word.parse().ok().or_else(|| WORDS.iter().find(|(w, _)| *w == word).map(|(_, n)| *n))
}

#[cfg(test)]
mod tests {
    use super::seconds_in;

    #[test]
    fn times_are_read_in_digits_and_in_words() {
        assert_eq!(
            seconds_in("record twenty seconds, put A and B 15 s apart, wait a minute."),
            [20.0, 15.0, 60.0]
        );
        assert!(seconds_in("on your marks").is_empty());
    }
}
