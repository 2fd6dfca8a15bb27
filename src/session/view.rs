//! What the page may see of an attempt, as JSON. Never the true beats before the check, never the cause of a fault.
//!
//! Every field is listed by its name, also of what is within: a new field of a structure is not shown until it is listed here.
//!
//! - [`mod@bench`]: the table and the recorder
//! - [`mod@check`]: a check, which holds the truth
//! - `experiment`: the experiment's table

mod bench;
mod check;
mod experiment;

use super::action::Mode;
use super::attempt::Session;
use super::judging::MOST_CHECKS;
use super::kept_recording::KeptRecording;
use super::note::Note;
use super::worksheet::Field;
use crate::assess::task::Task;
use crate::chain::Chain;
use crate::plain::{self, fields, json, put};
use crate::scenario::assignment::Assignment;
use crate::scenario::{Scenario, fault};
use crate::trace::frame::TIME_BASES_S;
use serde_json::Value;

/// Most notes of an opened file that the page is told of.
const MOST_NOTES: usize = 500;

/// What a scenario tells before it is begun.
pub fn brief(scenario: &Scenario) -> Value {
    json!({
        "id": scenario.id, "level": scenario.level, "title": scenario.title, "aim": scenario.aim,
        "brief": scenario.brief, "help": scenario.help, "power_line": scenario.power_line, "pass": scenario.pass,
        "name_faults": scenario.name_faults, "task": {"kind": scenario.task.kind},
        "worked": super::guide::shown(scenario).is_some(), "skills": super::evidence::calls_for(scenario),
        "may_ask": super::evidence::may_call_for(scenario),
        "assignment": scenario.assignment.as_ref().map(assignment),
        "experiment": scenario.experiment.as_ref().map(experiment::asked),
    })
}

/// What the page is told of an assignment; never the word.
fn assignment(assignment: &Assignment) -> Value {
    let Assignment { key, seeds, attempts, opening, closing, study, .. } = assignment;
    json!({
        "key": key, "seeds": seeds, "attempts": attempts, "opening": opening, "closing": closing, "study": study,
    })
}

/// The catalogue of faults, for choosing names from: name, first impression, what it is confused with, what tells it apart, the
/// first action that mends it, how severe it may be, the sensor that it
/// needs, and how it is shown best: seconds of trace, range, from the start, with the filters off.
pub fn catalogue() -> Value {
    fault::all()
        .map(|f| {
            let tests: Vec<_> = f.tests.iter().map(|t| t.told()).collect();
            let mends = f.remedy.first().and_then(|step| plain::value(step).ok());
            json!({"id": f.id, "impression": f.impression, "confused_with": f.confused_with, "tests": tests, "mends": mends, "severity": f.severity, "sensor": f.sensor(), "shown_s": f.shown_s(), "shown_range_v": f.shown_range_v(), "shown_fresh": f.shown_fresh(), "shown_bare": f.shown_bare()})
        })
        .collect()
}

impl Session {
    /// Everything that the page shows.
    pub fn view(&self) -> Value {
        let kept = self.recording();
        let finished = self.recordings().len() - usize::from(self.is_recording());
        let recordings: Vec<Value> = self.recordings()[..finished]
            .iter()
            .enumerate()
            .map(|(k, t)| {
                json!({
                    "recording": k, "duration_s": t.recording.duration_s(), "rate_hz": t.recording.rate_hz(),
                    "label": t.label, "after_s": t.exercise_ended_s.map(|ended| -ended),
                })
            })
            .collect();
        let mut sheet = self.sheet.task.fields().iter().map(|f| (f.name().to_string(), entry(self, *f)));
        let value = |t: Option<f64>| kept.zip(t).and_then(|(kept, t)| kept.value_at(t));
        let values = (value(kept.and_then(|t| t.a)), value(kept.and_then(|t| t.b)));
        let window = kept.and_then(|t| t.window());
        json!({
            "revision": self.revision(),
            "named": self.sheet.named,
            "explained": self.sheet.explained,
            "task": task(&self.sheet.task, self.scenario()),
            "help": self.help.aid.unwrap_or_default(),
            "helped": self.help.aid.is_some(),
            "snap": self.trace.snap,
            "agreed": self.help.agreed,
            "count_shown": self.counts_for_you(),
            "exercise_ended_s": self.run.exercise_ended_s,
            "hint": hint(self),
            "hint_next": self.hint_next(),
            "hints": self.help.hints,
            "hints_taken": self.help.taken.iter().map(check::hint).collect::<Vec<_>>(),
            "checks": {"done": self.sheet.check.as_ref().map_or(0, |c| c.tries), "most": MOST_CHECKS, "window": self.opened().map_or(1, |opened| opened.window)},
            "asked": self.asked().into_iter().map(|r| json!({"row": r.row, "points": r.points})).collect::<Vec<_>>(),
            "kind": if self.chain().is_some() { "bench" } else { "recording" },
            "seed": self.seed().to_string(),
            "scenario": self.scenario().map(brief),
            "recording_name": self.recording_name(),
            "bench": self.chain().map(|c| bench::bench(c, self)),
            "link": {"seen": self.chain().is_some_and(Chain::seen)},
            "recorder": self.chain().map(bench::recorder),
            "display": self.display(),
            "trace": {
                "mode": self.mode(), "start_s": self.start_s(), "time_base_s": self.time_base_s(),
                "recording": self.trace.shown_recording, "zoomed": self.trace.before_zoom.is_some(),
            },
            "time_base": {"s": self.time_base_s(), "choices": TIME_BASES_S},
            "recording": {"on": self.is_recording(), "elapsed_s": self.recorded_s()},
            "recordings": recordings,
            "cursors": {
                "a": kept.and_then(|t| t.a), "b": kept.and_then(|t| t.b),
                "interval_s": window.map(|(a, b)| b - a),
                "value_a": values.0, "value_b": values.1,
                "amplitude": values.0.zip(values.1).map(|(a, b)| b - a),
                "kept": self.sheet.kept.map(|(a, b, kept)| {
                    json!({"a": a, "b": b, "interval_s": b - a, "recording": kept})
                }),
            },
            "marks": kept.map_or(&[][..], |t| &t.marks),
            "notes": kept.map_or_else(|| json!([]), notes),
            "marks_in_window": kept.map_or(0, |t| t.marks_in_window()),
            "worksheet": fields(&mut sheet),
            "over": self.sheet.over,
            "check": check(self),
            "experiment": experiment::experiment(self),
        })
    }

    /// Whether the trace shows a recording.
    pub fn shows_recording(&self) -> bool {
        self.mode() == Mode::Recording && self.recording().is_some()
    }
}

/// The last check; null before.
pub(super) fn check(session: &Session) -> Value {
    session.check().map(|c| check::check(c, session.sheet.over, session.is_pooled())).unwrap_or_default()
}

/// The last hint; null before.
pub(super) fn hint(session: &Session) -> Value {
    session.help.hint.as_ref().map(check::hint).unwrap_or_default()
}

/// A field of the worksheet.
fn entry(session: &Session, field: Field) -> Value {
    let entry = session.sheet.worksheet.entry(field);
    json!({
        "text": entry.text, "value": entry.value, "problem": entry.problem, "quotient": entry.quotient,
    })
}

/// What is asked.
fn task(task: &Task, scenario: Option<&Scenario>) -> Value {
    let mut shown = json!({
        "kind": task.kind, "reads": task.reads(), "windows": task.windows(),
        "fields": task.fields(), "optional": task.optional(),
        "needs": scenario.map_or_else(Vec::new, |s| task.needs(&s.pass, s.name_faults)),
    });
    put(&mut shown, "seconds", task.seconds);
    put(&mut shown, "n", task.n);
    put(&mut shown, "longest_s", task.longest_s);
    put(&mut shown, "within_s", task.within_s);
    put(&mut shown, "at_least_s", task.at_least_s);
    shown
}

/// The notes that came with an opened file, as many as the page is told of.
fn notes(kept: &KeptRecording) -> Value {
    let told = |n: &Note| json!({"at_s": n.at_s, "length_s": n.length_s, "text": n.text});
    kept.notes.iter().take(MOST_NOTES).map(told).collect()
}
