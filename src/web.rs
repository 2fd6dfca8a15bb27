//! The one place where WebAssembly meets the page: opaque handles in, small copyable results out. Texts never come
//! from here, only codes with arguments.

#[cfg(feature = "desk")]
mod bank;
#[cfg(feature = "desk")]
mod class;
#[cfg(feature = "desk")]
mod desk;
mod draw;
#[cfg(feature = "desk")]
mod fingertip;
mod hand;
#[cfg(feature = "desk")]
mod package;

use crate::assess::learner::{Learner, choose::Bench};
use crate::assess::skill;
use crate::exchange::{Samples, csv};
use crate::plain::{self, json};
use crate::scenario::{Scenario, ScenarioError};
use crate::session::save::RestoreError;
use crate::session::{Action, Session, guide, heard, save, view};
use crate::trace::axes::Theme;
use crate::trace::frame::Frame;
use crate::trace::listen::{Click, Listener};
use serde_json::Value;
use wasm_bindgen::prelude::*;

/// What is thrown at the page: a text, and nothing else throws one. An engine's own errors are objects.
fn fail(code: &str, args: Value) -> JsValue {
    JsValue::from_str(&json!({"code": code, "args": args}).to_string())
}

fn scenario_fail(error: &ScenarioError) -> JsValue {
    fail("scenario_invalid", json!(error))
}

/// What a scenario tells before it is begun, as JSON.
#[wasm_bindgen(js_name = scenarioBrief)]
pub fn scenario_brief(toml: &str) -> Result<String, JsValue> {
    let scenario = Scenario::read(toml).map_err(|e| scenario_fail(&e))?;
    Ok(view::brief(&scenario).to_string())
}

/// The catalogue of faults, for choosing names from, as JSON.
#[wasm_bindgen(js_name = faultCatalogue)]
pub fn fault_catalogue() -> String {
    view::catalogue().to_string()
}

/// The table of actions: for each its name, nature, lane and pane, as JSON.
#[wasm_bindgen(js_name = deedTable)]
pub fn deed_table() -> String {
    crate::deed::table::rows().to_string()
}

/// Whether a scenario has a worked example.
#[wasm_bindgen(js_name = hasWorked)]
pub fn has_worked(toml: &str) -> Result<bool, JsValue> {
    let scenario = Scenario::read(toml).map_err(|e| scenario_fail(&e))?;
    Ok(guide::shown(&scenario).is_some())
}

/// What a history of [`Lab::evidence`] records says, each with its `at_ms`.
fn learner(history: &str) -> Result<Learner, JsValue> {
    let records = skill::read(history).map_err(|e| fail("history_invalid", json!({"found": e})))?;
    Ok(Learner::of(&records))
}

/// The skill map at `now_ms` (ms since 1970) from a history of [`Lab::evidence`] records, each with its `at_ms`; JSON in and
/// out.
#[wasm_bindgen(js_name = skillMap)]
pub fn skill_map(history: &str, now_ms: f64) -> Result<String, JsValue> {
    Ok(json!(learner(history)?.map(now_ms)).to_string())
}

/// The learner's state after a history, as it stands in the notebook's file; JSON.
#[wasm_bindgen(js_name = learnerState)]
pub fn learner_state(history: &str) -> Result<String, JsValue> {
    Ok(learner(history)?.told().to_string())
}

/// The bench among `benches` (`[{id, level, skills, may_ask, worked}]`) that tells and teaches most at `now_ms`, with why; `null` when
/// nothing is wanting. JSON in and out.
#[wasm_bindgen(js_name = nextBench)]
pub fn next_bench(history: &str, benches: &str, now_ms: f64) -> Result<String, JsValue> {
    let listed: Vec<Value> =
        plain::from_json(benches).map_err(|e| fail("history_invalid", json!({"found": e.to_string()})))?;
    let benches: Vec<Bench> = listed.into_iter().filter_map(|b| plain::from_value(b).ok()).collect();
    Ok(json!(learner(history)?.next(&benches, now_ms)).to_string())
}

/// SHA-256 of what the recorder gives in `samples` samples of a scenario's bench under a seed, as hexadecimal digits.
#[wasm_bindgen]
pub fn fingerprint(toml: &str, seed: &str, samples: u32) -> Result<String, JsValue> {
    let seed = save::seed(seed).map_err(|e| fail("seed_invalid", json!({"found": e.to_string()})))?;
    heard::fingerprint(toml, seed, u64::from(samples)).map_err(|e| scenario_fail(&e))
}

/// The same of what the recorder gives in the scripted attempt of that number, from 0.
#[wasm_bindgen(js_name = fingerprintOfAttempt)]
pub fn fingerprint_of_attempt(toml: &str, number: u32) -> Result<String, JsValue> {
    heard::fingerprint_of_attempt(toml, number as usize).map_err(|e| scenario_fail(&e))
}

/// One attempt, or one opened recording, on the page.
#[wasm_bindgen]
pub struct Lab {
    session: Session,
    frame: Frame,
    theme: Theme,
    drawn: Option<(u64, Shown)>,
    clock_s: f64,
    begun_s: u64,
    channels: Vec<String>,
    /// Which of them was chosen.
    channel: String,
    /// The values of an opened recording are told in volts.
    #[cfg_attr(
        not(feature = "desk"),
        expect(dead_code, reason = "told in the files that only that core writes")
    )]
    volts: bool,
    listener: Option<Listener>,
    clicks: Vec<Click>,
    /// Where the work stood when it was last looked at, as JSON, and how often that has changed.
    steps: String,
    steps_changed: u32,
}

/// What the trace layer shows; when it changes everything is drawn again.
#[derive(Clone, Copy, PartialEq)]
struct Shown {
    live: bool,
    kept: usize,
    frame: Frame,
    rate_hz: f64,
    trace: bool,
    version: u32,
}

#[wasm_bindgen]
impl Lab {
    fn of(session: Session) -> Self {
        Self {
            session,
            frame: Frame::new(600.0, 300.0, 1.0),
            theme: Theme::default(),
            drawn: None,
            clock_s: 0.0,
            begun_s: 0,
            channels: Vec::new(),
            channel: String::new(),
            volts: false,
            listener: None,
            steps: String::new(),
            steps_changed: 0,
            clicks: Vec::new(),
        }
    }

    /// Begins an attempt at a scenario (the text of its file) with a seed in decimal digits.
    #[wasm_bindgen(constructor)]
    pub fn new(toml: &str, seed: &str) -> Result<Lab, JsValue> {
        let seed = save::seed(seed).map_err(|e| fail("seed_invalid", json!({"found": e.to_string()})))?;
        Session::new(toml, seed).map(Lab::of).map_err(|e| scenario_fail(&e))
    }

    /// Names of the channels among which an opened recording was chosen.
    pub fn channels(&self) -> Vec<String> {
        self.channels.clone()
    }

    /// Name of the channel that was chosen.
    pub fn channel(&self) -> String {
        self.channel.clone()
    }

    /// Begins the worked example of a scenario, on the seed of its script.
    pub fn worked(toml: &str) -> Result<Lab, JsValue> {
        let session = Session::worked(toml).map_err(|e| scenario_fail(&e))?;
        session.map(Lab::of).ok_or_else(|| fail("no_worked_example", json!({})))
    }

    /// Does the next step of the worked example and tells it as JSON; `null` at the end.
    #[wasm_bindgen(js_name = workedNext)]
    pub fn worked_next(&mut self) -> String {
        json!(self.session.worked_next()).to_string()
    }

    /// Whether this is a worked example.
    #[wasm_bindgen(js_name = isWorked)]
    pub fn is_worked(&self) -> bool {
        self.session.is_worked()
    }

    /// The peak of the shown recording nearest to `t` s, as the detector finds it, if one is near.
    pub fn snap(&mut self, t: f64) -> Option<f64> {
        self.session.snap_to(t)
    }

    /// What this attempt says of each skill, as JSON; `null` before a check.
    pub fn evidence(&self) -> String {
        json!(self.session.evidence().map(|e| e.told())).to_string()
    }

    /// SHA-256 of the check and the hint, as hexadecimal digits; empty before a check.
    #[wasm_bindgen(js_name = debriefHash)]
    pub fn debrief_hash(&self) -> String {
        self.session.debrief_hash()
    }

    /// Does a saved attempt again.
    pub fn restore(saved: &str) -> Result<Lab, JsValue> {
        Session::restore(saved).map(Lab::of).map_err(|e| match e {
            RestoreError::Version { found } => fail("kept_version", json!({"found": found})),
            e => fail("restore_invalid", json!({"found": e.to_string()})),
        })
    }

    /// The attempt as it can be stored.
    pub fn save(&self) -> String {
        self.session.save().unwrap_or_default()
    }

    /// `bench` or `recording`.
    pub fn kind(&self) -> String {
        if self.session.chain().is_some() { "bench" } else { "recording" }.into()
    }

    /// The seed in decimal digits.
    pub fn seed(&self) -> String {
        self.session.seed().to_string()
    }

    /// Lets `seconds` pass.
    pub fn advance(&mut self, seconds: f64) {
        self.session.advance(seconds);
        if seconds.is_finite() {
            self.clock_s += seconds.clamp(0.0, 0.25);
        }
    }

    /// Time since the start, s.
    pub fn clock(&self) -> f64 {
        self.session.chain().map_or(self.clock_s, |c| c.time_s())
    }

    /// Length of the recording that is being made, s.
    #[wasm_bindgen(js_name = recordedSeconds)]
    pub fn recorded_seconds(&self) -> f64 {
        self.session.recorded_s()
    }

    /// Does an action given as JSON; answers `{"ok":true}` or `{"ok":false,"code":...,"args":{...}}`.
    pub fn act(&mut self, action: &str) -> String {
        let read = plain::value(action)
            .map_err(|e| e.to_string())
            .and_then(|v| Action::from_value(v).map_err(|e| e.to_string()))
            .map_err(|e| json!({"ok": false, "code": "unknown", "args": {"what": e}}));
        let answer = match read {
            Ok(action) => match self.session.act(&action) {
                Ok(()) => json!({"ok": true}),
                Err(refusal) => {
                    let told = json!(refusal);
                    json!({"ok": false, "code": told["code"], "args": told["args"]})
                }
            },
            Err(answer) => answer,
        };
        answer.to_string()
    }

    /// Counts up whenever [`Lab::view`] would tell something new.
    pub fn revision(&self) -> f64 {
        self.session.revision() as f64
    }

    /// Everything that the page shows, as JSON.
    pub fn view(&self) -> String {
        self.session.view().to_string()
    }

    /// The log of actions, as JSON.
    pub fn log(&self) -> String {
        json!(self.session.log()).to_string()
    }

    /// What came of the live signal's hum since the last call, as a share of half the full-scale range, at
    /// [`Lab::sound_rate`] samples a second; the first call begins to listen. [`Lab::clicks`] belongs to it.
    pub fn hear(&mut self) -> Vec<f32> {
        let (_, top) = self.session.value_range();
        self.clicks.clear();
        let Some(live) = self.session.live() else { return Vec::new() };
        let heard = self.listener.get_or_insert_with(|| Listener::new(live)).hear(live, top);
        self.clicks = heard.clicks;
        heard.hum
    }

    /// Crests within the last [`Lab::hear`], oldest first, two numbers each: how long ago, s, and the height of the
    /// rise as a share of the full-scale range.
    pub fn clicks(&self) -> Vec<f64> {
        self.clicks.iter().flat_map(|c| [c.ago_s, c.height]).collect()
    }

    /// Samples a second of [`Lab::hear`].
    #[wasm_bindgen(js_name = soundRate)]
    pub fn sound_rate(&self) -> f64 {
        self.session.live().map_or(0.0, |live| live.rate_hz())
    }

    /// Stops listening; the next [`Lab::hear`] begins anew.
    pub fn deafen(&mut self) {
        self.listener = None;
    }

    /// Looks where the work stands; how often that has changed, so that a page asks for it only when it has.
    #[wasm_bindgen(js_name = stepsSeen)]
    pub fn steps_seen(&mut self) -> u32 {
        let told = self.session.told_steps().to_string();
        if told != self.steps {
            self.steps = told;
            self.steps_changed += 1;
        }
        self.steps_changed
    }

    /// Where the work stood when [`Lab::steps_seen`] looked last: `{steps: [{step, done}], at, next}`, JSON (see
    /// [`crate::session::steps`]).
    pub fn steps(&self) -> String {
        self.steps.clone()
    }

    /// What can be said of the visible stretch without counting, as JSON.
    pub fn summary(&self) -> String {
        json!(self.session.overview()).to_string()
    }

    /// A recording as a table of text: times, values, notes.
    #[wasm_bindgen(js_name = recordingCsv)]
    pub fn recording_csv(&self, kept: usize) -> Result<String, JsValue> {
        let kept = self.session.recordings().get(kept).ok_or_else(|| fail("no_recording", json!({})))?;
        let samples = Samples::Recording(&kept.recording);
        Ok(csv::write_with_notes(samples.rate_hz(), &samples.values(), &self.session.notes(kept)))
    }
}
