//! For the page: what a student hands in, and whose try it is.

use super::{Lab, fail};
use crate::exchange::handin::{HandinError, result};
use crate::plain::{self, json};
use crate::scenario::digest::{bench_digest, hex, minimised};
use crate::session::compact::{About, Code};
use crate::session::seeds::seed;
use wasm_bindgen::prelude::*;

pub(super) fn handin_fail(error: &HandinError) -> JsValue {
    fail(error.code(), error.args())
}

fn about(text: &str) -> About {
    plain::from_json(text).unwrap_or_default()
}

/// The bench digest of a scenario, as hexadecimal digits.
#[wasm_bindgen(js_name = scenarioDigest)]
pub fn scenario_digest(toml: &str) -> String {
    hex(&bench_digest(toml))
}

/// A scenario's text without comments and blank lines, for a link.
#[wasm_bindgen(js_name = scenarioMinimised)]
pub fn scenario_minimised(toml: &str) -> String {
    minimised(toml)
}

/// The seed of a student's try at an assignment, in decimal digits.
#[wasm_bindgen(js_name = seedFor)]
pub fn seed_for(key: &str, student: &str, attempt: u32) -> String {
    seed(key, student, attempt).to_string()
}

#[wasm_bindgen]
impl Lab {
    /// The attempt as one line of text. `about` is JSON: `{"student", "try", "begun_s", "ended_s"}`, all optional.
    pub fn code(&self, about_json: &str) -> String {
        self.session.code(&about(about_json)).map(|c| c.write()).unwrap_or_default()
    }

    /// When the attempt began that was taken up from a code, s since 1970; 0 where that is not known.
    #[wasm_bindgen(js_name = begunSeconds)]
    pub fn begun_seconds(&self) -> f64 {
        self.begun_s as f64
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
        let begun_s = code.about.begun_s;
        let made = |session| Lab { begun_s, ..Lab::of(session) };
        code.replay(toml).map(made).map_err(|e| fail("restore_invalid", json!({"found": e.to_string()})))
    }
}
