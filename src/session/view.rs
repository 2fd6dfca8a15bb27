//! What the page may see of an attempt, as JSON. Never the true beats before the check, never the cause of a fault.

use super::action::Mode;
use super::attempt::Session;
use crate::bench::table::{DEPTH_CM, PARTS, WIDTH_CM};
use crate::bench::wiring::{ENDS, SOCKETS, Socket};
use crate::bench::{Bench, table::Part};
use crate::chain::{Chain, Looks};
use crate::plain::json;
use crate::recorder::settings::{
    AVERAGE_MS, BITS, HIGH_PASS_HZ, LOW_PASS_HZ, NOTCH_HZ, RANGES_V, RATES_HZ, SCALES,
};
use crate::scenario::{Scenario, fault};
use crate::strip::frame::TIME_BASES_S;
use serde_json::{Map, Value};

/// Most notes of an opened file that the page is told of.
const MOST_NOTES: usize = 500;

/// What a scenario tells before it is begun.
pub fn brief(scenario: &Scenario) -> Value {
    json!({
        "id": scenario.id, "level": scenario.level, "title": scenario.title, "aim": scenario.aim,
        "brief": scenario.brief, "help": scenario.help, "mains": scenario.mains, "pass": scenario.pass,
        "name_faults": scenario.name_faults, "task": {"kind": scenario.task.kind},
        "worked": super::guide::example(scenario).is_some(),
        "assignment": scenario.assignment,
    })
}

/// The catalogue of faults, for choosing names from: name, first impression, what it is confused with.
pub fn catalogue() -> Value {
    fault::all()
        .map(|f| json!({"id": f.id, "impression": f.impression, "confused_with": f.confused_with, "tests": f.tests.iter().map(|t| t.told()).collect::<Vec<_>>(), "severity": f.severity}))
        .collect()
}

impl Session {
    /// Everything that the page shows.
    pub fn view(&self) -> Value {
        let take = self.take();
        let finished = self.takes().len() - usize::from(self.is_recording());
        let takes: Vec<Value> = self.takes()[..finished]
            .iter()
            .enumerate()
            .map(|(k, t)| {
                json!({
                    "take": k, "duration_s": t.recording.duration_s(), "rate_hz": t.recording.rate_hz(),
                    "label": t.label, "after_s": t.exercise_ended_s.map(|ended| -ended),
                })
            })
            .collect();
        let worksheet: Map<String, Value> = self
            .task
            .fields()
            .iter()
            .map(|field| (field.name().to_string(), json!(self.worksheet.entry(*field))))
            .collect();
        let mut task = json!(self.task);
        task["fields"] = json!(self.task.fields());
        task["optional"] = json!(self.task.optional());
        let value = |t: Option<f64>| take.zip(t).and_then(|(take, t)| take.value_at(t));
        let values = (value(take.and_then(|t| t.a)), value(take.and_then(|t| t.b)));
        let window = take.and_then(|t| t.window());
        let check = self.check().map(|c| {
            let mut shown = json!(c);
            // The counts that the window allows are an answer; only the truth may tell them.
            if let Some(fields) = shown.as_object_mut() {
                fields.remove("allowed");
                fields.insert("over".into(), json!(self.over));
            }
            shown
        });
        json!({
            "revision": self.revision(),
            "named": self.named,
            "task": task,
            "help": self.aid.unwrap_or_default(),
            "helped": self.aid.is_some(),
            "snap": self.snap,
            "agreed": self.agreed,
            "count_shown": self.counts_for_you(),
            "exercise_ended_s": self.exercise_ended_s,
            "hint": self.hint,
            "hint_next": self.hint_next(),
            "hints": self.hints,
            "kind": if self.chain().is_some() { "bench" } else { "recording" },
            "seed": self.seed().to_string(),
            "scenario": self.scenario().map(brief),
            "recording_name": self.recording_name(),
            "bench": self.chain().map(|c| bench(c.bench(), c, self)),
            "link": {"seen": self.chain().is_some_and(Chain::seen)},
            "recorder": self.chain().map(recorder),
            "strip": {
                "mode": self.mode(), "start_s": self.start_s(), "time_base_s": self.time_base_s(),
                "take": self.shown_take, "zoomed": self.before_zoom.is_some(),
            },
            "time_base": {"s": self.time_base_s(), "choices": TIME_BASES_S},
            "recording": {"on": self.is_recording(), "elapsed_s": self.recorded_s()},
            "takes": takes,
            "cursors": {
                "a": take.and_then(|t| t.a), "b": take.and_then(|t| t.b),
                "interval_s": window.map(|(a, b)| b - a),
                "value_a": values.0, "value_b": values.1,
                "amplitude": values.0.zip(values.1).map(|(a, b)| b - a),
                "kept": self.kept.map(|(a, b, take)| {
                    json!({"a": a, "b": b, "interval_s": b - a, "take": take})
                }),
            },
            "marks": take.map_or(&[][..], |t| &t.marks),
            "notes": take.map_or(&[][..], |t| &t.notes[..t.notes.len().min(MOST_NOTES)]),
            "marks_in_window": take.map_or(0, |t| t.marks_in_window()),
            "worksheet": worksheet,
            "over": self.over,
            "check": check,
        })
    }

    /// Whether the strip shows a take.
    pub fn shows_take(&self) -> bool {
        self.mode() == Mode::Take && self.take().is_some()
    }
}

fn recorder(chain: &Chain) -> Value {
    let mut shown = json!(chain.settings());
    if let Some(fields) = shown.as_object_mut() {
        let notches: Vec<f64> =
            NOTCH_HZ.iter().copied().filter(|hz| 2.0 * hz < f64::from(chain.settings().rate_hz)).collect();
        fields.insert(
            "choices".into(),
            json!({
                "range_v": RANGES_V, "time_base_s": TIME_BASES_S, "rate_hz": RATES_HZ, "bits": BITS,
                "high_pass_hz": HIGH_PASS_HZ, "low_pass_hz": LOW_PASS_HZ, "notch_hz": notches,
                "average_ms": AVERAGE_MS, "input": [1, 2, 3, 4], "scale": SCALES,
            }),
        );
    }
    shown
}

fn bench(bench: &Bench, chain: &Chain, session: &Session) -> Value {
    let parts: Vec<Value> = PARTS
        .iter()
        .map(|part| {
            let (at, (w, d)) = (bench.table.at(*part), part.footprint());
            json!({"id": part, "x": at.x, "y": at.y, "w": w, "d": d, "movable": true})
        })
        .collect();
    let sockets: Vec<Value> = SOCKETS
        .iter()
        .map(|socket| {
            let at = bench.socket_point(*socket);
            let charger = *socket == Socket::Outlet4 && bench.wiring.charger_plugged;
            let taken_by = if charger { json!("charger") } else { json!(bench.wiring.end_in(*socket)) };
            json!({
                "id": socket, "part": socket.place().0, "kind": socket.shape(), "x": at.x, "y": at.y,
                "taken_by": taken_by,
            })
        })
        .collect();
    let ends: Vec<Value> = ENDS
        .iter()
        .map(|end| {
            let at = bench.end_point(*end);
            json!({
                "id": end, "lead": end.lead(), "kind": end.shape(), "socket": bench.wiring.socket_of(*end),
                "x": at.x, "y": at.y,
            })
        })
        .collect();
    let strap = &bench.strap;
    let hand = bench.table.at(Part::Hand);
    let finger = bench.table.fingertip();
    let wiring = &bench.wiring;
    json!({
        "table": {"w": WIDTH_CM, "d": DEPTH_CM},
        "parts": parts,
        "sockets": sockets,
        "ends": ends,
        "switches": {"unit": wiring.unit_on, "strip": wiring.strip_on, "lamp": wiring.lamp_on},
        "lamps": {
            "unit": wiring.unit_powered(), "strip": wiring.strip_on,
            "charger": wiring.charger_plugged && wiring.strip_on, "lamp": wiring.lamp_on,
        },
        "charger_plugged": wiring.charger_plugged,
        "strap": {
            "on": strap.on, "tightness": strap.tightness, "place": strap.place, "face": strap.face,
            "feel": strap.feel(), "shaded": strap.shaded, "other_hand": strap.other_hand,
        },
        "hand": {
            "x": hand.x, "y": hand.y, "height_cm": strap.height_cm, "finger_x": finger.x, "finger_y": finger.y,
            "looks": match chain.looks() {
                Looks::Calm => "calm",
                Looks::Moving => "moving",
                Looks::Dusky => "dusky",
            },
        },
        "lead": {
            "points": bench.lead_path().map(|p| [p.x, p.y]), "slack_cm": bench.slack_cm(),
            "handles": bench.lead.handles.map(|p| [p.x, p.y]),
        },
        "voice": chain.voice(),
        "said": session.said,
    })
}
