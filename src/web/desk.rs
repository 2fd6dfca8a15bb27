//! What a visit needs only at times: opening and writing files, composing and handing out, grading a class. The page loads a
//! core that has these beside all the rest when one of them is first wanted; the core of the first visit is built without.

use super::hand::handin_fail;
use super::{Lab, fail, scenario_fail};
use crate::assess::kind::KINDS;
use crate::exchange::handin::bundle;
use crate::exchange::handin::{Graded, Handed, HandinError, Set, result};
use crate::exchange::{self, Format, NamedFile, Options, Outgoing, Samples, glance, qr, zip};
use crate::plain::{self, json};
use crate::scenario::digest::{hashed, hex};
use crate::scenario::plan::{Plan, is_plan};
use crate::scenario::{Scenario, compose, text};
use crate::session::Session;
use crate::session::compact::Code;
use crate::session::fairness::{TOLERANCES_BPM, fairness};
use crate::session::readiness;
use crate::session::save::Replay;
use crate::trace::frame::Frame;
use crate::trace::svg;
use std::collections::HashMap;
use wasm_bindgen::prelude::*;
/// What a scenario file says, as JSON, for editing.
#[wasm_bindgen(js_name = scenarioJson)]
pub fn scenario_json(toml: &str) -> Result<String, JsValue> {
    Scenario::read(toml).map_err(|e| scenario_fail(&e))?;
    Ok(text::value_of(toml).unwrap_or_default().to_string())
}

/// A scenario given as JSON, as the text of a file.
#[wasm_bindgen(js_name = composeScenario)]
pub fn compose_scenario(scenario: &str) -> Result<String, JsValue> {
    compose::of_json(scenario).map_err(|e| scenario_fail(&e))
}

/// A course, as a file or as JSON, as it goes to students in a link.
#[wasm_bindgen(js_name = courseHanded)]
pub fn course_handed(text: &str) -> Result<String, JsValue> {
    Plan::read(text).map(|plan| plan.handed_out()).map_err(|e| scenario_fail(&e))
}

/// A course, as a file or as JSON, as the text of a file.
#[wasm_bindgen(js_name = courseFile)]
pub fn course_file(text: &str) -> Result<String, JsValue> {
    Plan::read(text).map(|plan| plan.written()).map_err(|e| scenario_fail(&e))
}

/// Whether a text is a course's and not a scenario's.
#[wasm_bindgen(js_name = isCourse)]
pub fn is_course(text: &str) -> bool {
    is_plan(text)
}

/// What is in a course's result, as JSON: `course`, the id that it tells, and `results`, each as the text of a result file; nothing
/// where it is none such, which its field `format` decides, wherever it stands.
#[wasm_bindgen(js_name = resultsIn)]
pub fn results_in(text: &str) -> Result<Option<String>, JsValue> {
    let bundle = bundle::of(text).transpose().map_err(|e| handin_fail(&e))?;
    Ok(bundle.map(|bundle| json!(bundle).to_string()))
}

/// How many of so many students with a right method each way of grading fails, as JSON. A window of 0 s is the
/// scenario's own.
#[wasm_bindgen(js_name = fairness)]
pub fn fairness_of(toml: &str, first: u32, students: u32, window_s: f64) -> Result<String, JsValue> {
    let window = Some(window_s).filter(|w| *w > 0.0);
    let found = fairness(toml, u64::from(first), students, window).map_err(|e| scenario_fail(&e))?;
    let mut told = json!(found);
    told["tolerances"] = json!(TOLERANCES_BPM);
    Ok(told.to_string())
}

/// Where brief, task, criteria and faults of a scenario contradict each other, as JSON: `[{code, args}…]`.
#[wasm_bindgen(js_name = contradictions)]
pub fn contradictions_of(toml: &str) -> Result<String, JsValue> {
    let scenario = Scenario::read(toml).map_err(|e| scenario_fail(&e))?;
    let found = readiness::contradictions(&scenario, toml);
    let told: Vec<_> =
        found.iter().map(|one| one.told()).map(|(code, args)| json!({"code": code, "args": args})).collect();
    Ok(json!(told).to_string())
}

/// The names of all kinds of question, as an instructor chooses from them.
#[wasm_bindgen(js_name = taskKinds)]
pub fn task_kinds() -> String {
    json!(KINDS).to_string()
}

/// A link as a picture, an SVG document; nothing if it is too long.
#[wasm_bindgen(js_name = qrSvg)]
pub fn qr_svg(link: &str) -> Option<String> {
    qr::svg(link)
}

/// What a code says of itself, as JSON.
#[wasm_bindgen(js_name = readCode)]
pub fn read_code(code: &str) -> Result<String, JsValue> {
    let code = Code::read(code).map_err(|e| handin_fail(&e.into()))?;
    Ok(json!({
        "scenario": hex(&code.scenario), "seed": code.seed.to_string(), "samples": code.samples,
        "outcome": code.outcome, "program": code.program, "about": code.about, "actions": code.log.len(),
    })
    .to_string())
}

/// Five seconds of each channel of a recording's files, and its unit, as JSON (see [`glance`]): of as many channels as can be read at
/// once.
#[wasm_bindgen(js_name = channelGlances)]
pub fn channel_glances(
    names: Vec<String>,
    contents: Vec<js_sys::Uint8Array>,
    rate_hz: Option<f64>,
) -> Result<String, JsValue> {
    let files: Vec<NamedFile> =
        names.into_iter().zip(contents).map(|(name, bytes)| (name, bytes.to_vec())).collect();
    let found = glance::of_files(&files, rate_hz).map_err(|e| fail("file_invalid", json!(e)))?;
    Ok(json!(found).to_string())
}

#[wasm_bindgen]
impl Lab {
    /// Opens a recording of a real pulse: one file, or the files of a WFDB record. `rate_hz` counts where the file has no
    /// times; `channel` is a channel's name or number from 1; the one that is a pulse by its name, else the first, if left out.
    #[wasm_bindgen(js_name = fromFiles)]
    pub fn from_files(
        names: Vec<String>,
        contents: Vec<js_sys::Uint8Array>,
        rate_hz: Option<f64>,
        channel: Option<String>,
    ) -> Result<Lab, JsValue> {
        let files: Vec<NamedFile> =
            names.into_iter().zip(contents).map(|(name, bytes)| (name, bytes.to_vec())).collect();
        let options = Options { rate_hz, channel: channel.as_deref() };
        let read = exchange::import(&files, &options).map_err(|e| fail("file_invalid", json!(e)))?;
        let recorded = read.recorded;
        let session = Session::of_annotated(&recorded.name, recorded.rate_hz, &recorded.values, &read.notes)
            .with_unit(&recorded.unit);
        Ok(Lab {
            channels: recorded.channels,
            channel: recorded.channel,
            volts: read.volts,
            ..Lab::of(session)
        })
    }

    /// A recording as a file: `edf`, or `wfdb`, whose files come stored as one `.zip`; for `csv` see [`Lab::recording_csv`]. `name` is
    /// the file's without an ending.
    #[wasm_bindgen(js_name = exportRecording)]
    pub fn export_recording(&self, kept: usize, format: &str, name: &str) -> Result<Vec<u8>, JsValue> {
        let kept = self.session.recordings().get(kept).ok_or_else(|| fail("no_recording", json!({})))?;
        let format = if format == "edf" { Format::Edf } else { Format::Wfdb };
        let (notes, volts) = (self.session.notes(kept), self.volts || self.session.chain().is_some());
        let out = Outgoing { name, samples: Samples::Recording(&kept.recording), volts, notes: &notes };
        let mut files = exchange::export(format, &out).map_err(|e| fail("file_invalid", json!(e)))?;
        if let [(_, bytes)] = &mut files[..] {
            return Ok(std::mem::take(bytes));
        }
        zip::store(&files).ok_or_else(|| fail("no_recording", json!({})))
    }

    /// The stretch of a recording that the trace shows, with cursors and marks, as SVG; `caption` stands in the drawing.
    #[wasm_bindgen(js_name = traceSvg)]
    pub fn trace_svg(&self, title: &str, caption: &str) -> Result<String, JsValue> {
        let kept = self.session.recording().ok_or_else(|| fail("no_recording", json!({})))?;
        let css = |v: f64| v / self.frame.dpr;
        let f = self.current();
        let frame = Frame {
            left: css(f.left),
            top: css(f.top),
            width: css(f.width).floor(),
            height: css(f.height).floor(),
            dpr: 1.0,
            ..f
        };
        let over =
            svg::Over { title, cursors: [kept.a, kept.b], marks: &kept.marks, plain: self.plain(), caption };
        Ok(svg::picture(&kept.recording, &frame, &self.theme, &over))
    }
}

/// The instructor's password as it travels.
#[wasm_bindgen(js_name = hashedWord)]
pub fn hashed_password(key: &str, password: &str) -> String {
    hashed(key, password)
}

/// What an instructor gives as set.
#[wasm_bindgen]
#[derive(Clone, Default)]
pub struct SetList(pub(super) Set);

#[wasm_bindgen]
impl SetList {
    /// Nothing so far.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Takes a scenario as set, given its text and where that came from; in the place of one with the same bench.
    pub fn put(&mut self, from: &str, toml: &str) -> Result<(), JsValue> {
        self.0.put(from, toml).map_err(|e| {
            let (code, args) = e.told();
            fail(code, args)
        })
    }
}

/// Something handed in, replayed piece by piece.
#[wasm_bindgen]
pub struct Regrade {
    handed: Handed,
    replay: Replay,
    set: Set,
}

#[wasm_bindgen]
impl Regrade {
    /// Begins with the text of a result file, or with a code, to be compared with what was set. `scenarios` is JSON: for
    /// the first eight bytes of a scenario's bench digest, in hexadecimal digits, its text.
    #[wasm_bindgen(constructor)]
    pub fn new(text: &str, scenarios: &str, set: &SetList) -> Result<Regrade, JsValue> {
        let set = set.0.clone();
        let handed = if text.trim_start().starts_with('{') {
            result::read(text)
        } else {
            let known: HashMap<String, String> = plain::from_json(scenarios).unwrap_or_default();
            Handed::of_code(text, &set, |code| {
                known.get(&hex(&code.scenario)).filter(|t| code.is_of(t)).cloned()
            })
        };
        let begun =
            handed.and_then(|handed| handed.begin(&set).map(|replay| Regrade { replay, handed, set }));
        begun.map_err(|e| handin_fail(&e))
    }

    /// Goes on for about so many samples; true when all is done.
    pub fn step(&mut self, samples: f64) -> Result<bool, JsValue> {
        self.replay
            .step(&self.handed.log, samples.max(1.0) as u64)
            .map_err(|e| handin_fail(&HandinError::Replay { found: e.to_string() }))
    }

    /// What came of it once it is done, as JSON.
    pub fn graded(&mut self) -> String {
        json!(Graded::of(&self.handed, &mut self.replay, &self.set)).to_string()
    }

    /// The text of its scenario.
    pub fn scenario(&self) -> String {
        self.handed.scenario.clone()
    }

    /// The replayed attempt as a lab.
    #[wasm_bindgen(js_name = intoLab)]
    pub fn into_lab(self) -> Lab {
        Lab::of(self.replay.into_session())
    }
}
