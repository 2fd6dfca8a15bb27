//! For the page: composing and handing out, handing in, grading a class.

use super::{Lab, fail, scenario_fail};
use crate::exchange::handin::class::{Need, sum_up};
use crate::exchange::handin::{Graded, Handed, HandinError, result, table};
use crate::exchange::qr;
use crate::plain::{self, json};
use crate::scenario::Scenario;
use crate::scenario::assignment::{digest, hex, minimised};
use crate::scenario::{compose, text};
use crate::session::compact::{About, Code};
use crate::session::fairness::{TOLERANCES_BPM, fairness};
use crate::session::save::Replay;
use crate::session::seeds::seed;
use std::collections::HashMap;
use wasm_bindgen::prelude::*;

fn handin_fail(error: &HandinError) -> JsValue {
    let told = json!(error);
    fail(told["code"].as_str().unwrap_or("handin"), told["args"].clone())
}

fn about(text: &str) -> About {
    plain::from_json(text).unwrap_or_default()
}

/// SHA-256 of a scenario's text without comments and blank lines, as hexadecimal digits.
#[wasm_bindgen(js_name = scenarioDigest)]
pub fn scenario_digest(toml: &str) -> String {
    hex(&digest(toml))
}

/// A scenario's text without comments and blank lines, for a link.
#[wasm_bindgen(js_name = scenarioMinimised)]
pub fn scenario_minimised(toml: &str) -> String {
    minimised(toml)
}

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

/// The seed of a student's try at an assignment, in decimal digits.
#[wasm_bindgen(js_name = seedFor)]
pub fn seed_for(key: &str, student: &str, attempt: u32) -> String {
    seed(key, student, attempt).to_string()
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

#[wasm_bindgen]
impl Lab {
    /// The attempt as one line of text. `about` is JSON: `{"student", "try", "begun_s", "ended_s"}`, all optional.
    pub fn code(&self, about_json: &str) -> String {
        self.session.code(&about(about_json)).map(|c| c.write()).unwrap_or_default()
    }

    /// The attempt as a result file. `about` as for [`Lab::code`].
    pub fn result(&self, about_json: &str) -> String {
        result::write(&self.session, &about(about_json)).unwrap_or_default()
    }

    /// Does the attempt of a code again, given its scenario's text.
    #[wasm_bindgen(js_name = fromCode)]
    pub fn from_code(code: &str, toml: &str) -> Result<Lab, JsValue> {
        let code = Code::read(code).map_err(|e| handin_fail(&e.into()))?;
        if !code.is_of(toml) {
            return Err(handin_fail(&HandinError::ScenarioMissing { digest: hex(&code.scenario) }));
        }
        code.replay(toml).map(Lab::of).map_err(|e| fail("restore_invalid", json!({"found": e.to_string()})))
    }
}

/// Something handed in, replayed piece by piece.
#[wasm_bindgen]
pub struct Regrade {
    handed: Handed,
    replay: Replay,
}

#[wasm_bindgen]
impl Regrade {
    /// Begins with the text of a result file, or with a code. `scenarios` is JSON: for the first eight bytes of a
    /// scenario's digest, in hexadecimal digits, its text.
    #[wasm_bindgen(constructor)]
    pub fn new(text: &str, scenarios: &str) -> Result<Regrade, JsValue> {
        let handed = if text.trim_start().starts_with('{') {
            result::read(text)
        } else {
            let known: HashMap<String, String> = plain::from_json(scenarios).unwrap_or_default();
            Handed::of_code(text, |code| known.get(&hex(&code.scenario)).filter(|t| code.is_of(t)).cloned())
        };
        let begun = handed.and_then(|handed| handed.begin().map(|replay| Regrade { replay, handed }));
        begun.map_err(|e| handin_fail(&e))
    }

    /// Goes on for about so many samples; true when all is done.
    pub fn step(&mut self, samples: f64) -> Result<bool, JsValue> {
        self.replay
            .step(&self.handed.log, samples.max(1.0) as u64)
            .map_err(|e| handin_fail(&HandinError::Replay { found: e.to_string() }))
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

/// What a class handed in, graded.
#[wasm_bindgen]
#[derive(Default)]
pub struct Book {
    files: Vec<String>,
    graded: Vec<Graded>,
}

#[wasm_bindgen]
impl Book {
    /// An empty one.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Writes down what came of a finished replay, under the name of its file.
    pub fn add(&mut self, file: &str, regrade: &Regrade) {
        self.files.push(file.into());
        self.graded.push(Graded::of(&regrade.handed, regrade.replay.session()));
    }

    /// All of it summed up, as JSON. A student is ready who passed on so many benches, or was ready on them by the
    /// rubric.
    pub fn summary(&self, benches: usize, rubric: bool) -> String {
        json!(sum_up(&self.graded, Need { benches, rubric })).to_string()
    }

    /// All of it as a table of text.
    pub fn csv(&self) -> String {
        let lines: String =
            self.files.iter().zip(&self.graded).map(|(f, g)| table::line(f, g) + "\n").collect();
        format!("{}\n{lines}", table::HEAD)
    }
}
