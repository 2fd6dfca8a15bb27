//! What was done in order, short enough to be read: runs of the same thing are one entry, and the place where the first
//! wrong step was done is marked.

use super::attempt::Session;
use crate::assess::process::Done;
use crate::assess::verdict::Step;
use crate::deed::{Action, Field, Kind, Lane, Page};
use serde::Serialize;
use serde_json::{Map, Value};

/// An entry.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Entry {
    /// Time since the start of the last of the run, s.
    pub t_s: f64,
    /// Name of the action.
    #[serde(rename = "do")]
    pub name: &'static str,
    /// What kind of thing it is.
    pub what: Lane,
    /// How often in a row.
    pub times: u32,
    /// Fields of the last of the run.
    pub args: Map<String, Value>,
    /// Number in the log of the last of the run.
    pub log: usize,
    /// The recording that was recorded or shown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recording: Option<usize>,
    /// Time in that recording, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_recording_s: Option<f64>,
    /// The first step that went wrong, where it was done here.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wrong: Option<Step>,
}

/// The field that tells two actions of one name apart: another plug is another entry.
const KEYS: [&str; 11] =
    ["end", "part", "which", "field", "id", "recording", "fault", "what", "measure", "condition", "row"];

fn same(a: &Entry, name: &str, args: &Map<String, Value>) -> bool {
    a.name == name && KEYS.iter().all(|k| a.args.get(*k) == args.get(*k))
}

/// The course of an attempt from its deeds.
pub fn of(session: &Session, deeds: &[Done], first_wrong: Option<Step>) -> Vec<Entry> {
    let mut entries: Vec<Entry> = Vec::new();
    let mut recordings = session.trace.recordings_before;
    let mut shown = recordings.checked_sub(1);
    let mut recording: Option<f64> = None;
    let fault = first_wrong.and_then(|step| place(session, deeds, step));
    for (log, deed) in deeds.iter().enumerate() {
        let args = deed.action.fields();
        match deed.kind() {
            Kind::Record => {
                // The recording before may have ended by itself.
                recordings += usize::from(recording.is_some());
                recording = Some(deed.at_s);
                shown = Some(recordings);
            }
            Kind::OpenRecording => {
                shown = args.get("recording").and_then(Value::as_u64).map(|k| k as usize).or(shown)
            }
            _ => {}
        }
        let at_recording_s =
            args.get("t").and_then(Value::as_f64).or(recording.map(|since| deed.at_s - since));
        let lane = deed.kind().lane();
        let measuring = matches!(lane, Lane::Measure | Lane::Record) || recording.is_some();
        if deed.kind() == Kind::Stop
            && let Some(since) = recording.take()
        {
            // Under a second nothing is kept.
            recordings += usize::from(deed.at_s - since >= 1.0);
        }
        let entry = Entry {
            t_s: tenth(deed.at_s),
            name: deed.kind().name(),
            what: lane,
            times: 1,
            args,
            log,
            recording: shown.filter(|_| measuring),
            at_recording_s: at_recording_s.filter(|_| measuring).map(|t| (t * 100.0).round() / 100.0),
            wrong: first_wrong.filter(|_| fault == Some(log)),
        };
        match entries.last_mut() {
            Some(last) if last.wrong.is_none() && same(last, entry.name, &entry.args) => {
                *last = Entry { times: last.times + 1, ..entry };
            }
            _ => entries.push(entry),
        }
    }
    entries
}

/// Log entry in which a step was done.
fn place(session: &Session, deeds: &[Done], step: Step) -> Option<usize> {
    let last = |kinds: &[Kind]| deeds.iter().rposition(|d| kinds.contains(&d.kind()));
    let answer = |field: Field| {
        deeds
            .iter()
            .rposition(|d| matches!(&d.action, Action::Page(Page::Answer { field: f, .. }) if *f == field))
    };
    match step {
        Step::Name => last(&[Kind::Name, Kind::Unname]),
        Step::Trace => {
            let short = session.sheet.wrong.iter().any(|(_, code)| *code == "trace_short");
            if short { last(&[Kind::Stop]) } else { last(&[Kind::Record]) }
        }
        Step::Window => last(&[Kind::Cursor]),
        Step::Window1 => last(&[Kind::KeepWindow]).or_else(|| last(&[Kind::Cursor])),
        Step::Count => answer(Field::Count).or_else(|| last(&[Kind::Mark, Kind::Unmark])),
        Step::Count1 | Step::Seconds1 | Step::Rate1 => {
            crate::assess::hint::field(step).and_then(answer).or_else(|| last(&[Kind::KeepWindow]))
        }
        _ => crate::assess::hint::field(step).and_then(answer),
    }
}

fn tenth(x: f64) -> f64 {
    (x * 10.0).round() / 10.0
}
