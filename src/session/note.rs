//! Notes about a recording: what lies where in it, in the words of the log, so that a file tells what happened while it was
//! recorded. The texts are the actions' own names with their values (`range v=0.1`), not prose.

use super::action::{Action, Page};
use super::attempt::{Logged, Session};
use super::kept_recording::KeptRecording;
use super::opened::Opened;
use crate::recorder::Settings;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Text of a beat mark.
pub const BEAT: &str = "beat";
/// Text of cursor A.
pub const CURSOR_A: &str = "cursor a";
/// Text of cursor B.
pub const CURSOR_B: &str = "cursor b";
/// Text of the interval between the cursors.
pub const WINDOW: &str = "window";
/// Text of a stretch without values, over which a straight line was drawn.
pub const MISSING: &str = "missing";
/// Beginning of a text that tells how an opened recording was shown when it was saved: the samples are those.
pub const SHOWN: &str = "shown";
/// Text of the end of a recording that came because the computer lost the recorder.
const LINK_LOST: &str = "link_lost";
/// How soon after a recording's last sample a loss of the link was its end, samples: the longest piece that is run at once.
const LOSS_REACH: u64 = 1024;
/// Moves of one part that follow each other within this time are one drag, s.
const DRAG_S: f64 = 1.0;

/// One note.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Note {
    /// Where it lies or begins, s from the recording's first sample.
    pub at_s: f64,
    /// How long what it tells of lasts, s; none for an instant.
    pub length_s: Option<f64>,
    /// What it says.
    pub text: String,
}

impl Note {
    /// A note of an instant.
    pub fn new(at_s: f64, text: impl Into<String>) -> Self {
        Self { at_s, length_s: None, text: text.into() }
    }

    /// A note of a stretch.
    pub fn lasting(at_s: f64, length_s: f64, text: impl Into<String>) -> Self {
        Self { at_s, length_s: Some(length_s), text: text.into() }
    }
}

/// Puts notes in the order of their times; notes of one instant keep theirs. The one place that sorts them: a sort of each
/// reader's and writer's own would be a good part of the page's core.
#[inline(never)]
pub fn in_order(notes: &mut [Note]) {
    notes.sort_by(|a, b| a.at_s.total_cmp(&b.at_s));
}

/// How a recording that was recorded at the bench began.
#[derive(Clone, Debug, PartialEq)]
pub struct Start {
    /// Samples made since the attempt's start.
    pub sample: u64,
    /// The recorder's settings then.
    pub settings: Settings,
}

impl Session {
    /// All that is known of a recording, by time: beat marks, cursors and the interval between them, the settings at its
    /// start, what was done at the bench and the recorder meanwhile, and the notes that came with its file.
    pub fn notes(&self, kept: &KeptRecording) -> Vec<Note> {
        let mut notes: Vec<Note> = kept.marks.iter().map(|t| Note::new(*t, BEAT)).collect();
        notes.extend(kept.a.map(|t| Note::new(t, CURSOR_A)));
        notes.extend(kept.b.map(|t| Note::new(t, CURSOR_B)));
        notes.extend(kept.window().filter(|(a, b)| a < b).map(|(a, b)| Note::lasting(a, b - a, WINDOW)));
        if let Some(start) = &kept.start {
            notes.push(settings(&start.settings));
            notes.extend(events(self.log(), start, kept));
            let end = start.sample + kept.recording.len() as u64;
            if self.losses().iter().any(|at| (end..=end + LOSS_REACH).contains(at)) {
                notes.push(Note::new(kept.recording.duration_s(), LINK_LOST));
            }
        }
        if let Some(shown) = self.opened().and_then(Opened::note) {
            notes.push(Note::new(0.0, told(SHOWN, &Value::Object(shown))));
        }
        notes.extend(kept.notes.iter().cloned());
        in_order(&mut notes);
        notes
    }
}

/// A note of the recorder's settings at the start of a recording.
pub fn settings(settings: &Settings) -> Note {
    Note::new(0.0, told("settings", &crate::plain::given(settings)))
}

/// What was done at the bench, the recorder and the subject during a recording.
fn events(log: &[Logged], start: &Start, kept: &KeptRecording) -> Vec<Note> {
    let end = start.sample + kept.recording.len() as u64;
    let rate = kept.recording.rate_hz();
    let mut out: Vec<Note> = Vec::new();
    let mut moving: Option<Value> = None;
    for logged in log.iter().filter(|l| (start.sample..=end).contains(&l.at)) {
        if matches!(&logged.action, Action::Page(page) if !matches!(page, Page::Manoeuvre { .. })) {
            continue;
        }
        let value = logged.action.to_value();
        let note = Note::new((logged.at - start.sample) as f64 / rate, told(logged.action.name(), &value));
        // Of a drag only its end is told.
        let part = (logged.action.name() == "move").then(|| value["part"].clone());
        let same = part.is_some() && part == moving;
        match out.last_mut() {
            Some(last) if same && note.at_s - last.at_s < DRAG_S => *last = note,
            _ => out.push(note),
        }
        moving = part;
    }
    out
}

/// A name and the values that belong to it: `name key=value key=value`.
fn told(name: &str, value: &Value) -> String {
    let mut text = name.to_string();
    for (key, value) in value.as_object().into_iter().flatten() {
        match value {
            _ if key == "do" => {}
            Value::Null => {}
            Value::String(words) => text = format!("{text} {key}={words}"),
            other => text = format!("{text} {key}={other}"),
        }
    }
    text
}
