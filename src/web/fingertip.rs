//! For the page: one's own pulse, from a camera or tapped by hand.

use crate::fingertip::{Camera, RATE_HZ, Reading, Taps, compare, taps};
use crate::plain::json;
use wasm_bindgen::prelude::*;

/// What is serialised, as an object of the page's.
fn object(told: &serde_json::Value) -> JsValue {
    js_sys::JSON::parse(&told.to_string()).unwrap_or(JsValue::NULL)
}

/// A camera on a fingertip.
#[wasm_bindgen]
#[derive(Default)]
pub struct FingertipCamera(Camera);

#[wasm_bindgen]
impl FingertipCamera {
    /// One that has seen nothing.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a frame: when it was taken, in seconds, and the mean colors of a region, 0 to 255. A frame whose time does not
    /// rise is ignored and counted.
    pub fn push(&mut self, t_s: f64, red: f64, green: f64, blue: f64) {
        self.0.push(t_s, [red, green, blue]);
    }

    /// What the last ten seconds say: `{frames, dropped, from_s, to_s, fps, quality, bpm, refused}`.
    pub fn state(&mut self) -> JsValue {
        object(&json!(self.0.state()))
    }

    /// The pulse of the last seconds, more blood up, about -1 to 1, at [`Self::rate_hz`].
    pub fn trace(&self, seconds: f64) -> Vec<f64> {
        self.0.trace(seconds).values
    }

    /// Samples a second of the pulse.
    #[wasm_bindgen(js_name = rate_hz)]
    pub fn rate_hz(&self) -> f64 {
        RATE_HZ
    }

    /// Consecutive windows from the first frame: `[{from_s, to_s, bpm, refused}...]`, one of the last two is null.
    pub fn windows(&self, window_s: f64) -> JsValue {
        let told = |w: &Reading| json!({"from_s": w.from_s, "to_s": w.to_s, "bpm": w.rate.ok(), "refused": w.rate.err()});
        object(&json!(self.0.windows(window_s).iter().map(told).collect::<Vec<_>>()))
    }

    /// One rate for all frames: `{from_s, to_s, bpm, uncertainty_bpm, refused, beats}`.
    pub fn whole(&self) -> JsValue {
        object(&json!(self.0.whole()))
    }

    /// Times of the beats, in seconds on the frames' clock, where they can be believed.
    pub fn beats(&self) -> Vec<f64> {
        self.0.beats()
    }

    /// The pulse as a table of text that opens as a recording.
    pub fn recording(&self) -> String {
        self.0.recording()
    }

    /// The frames as a table of text, `t_s,red,green,blue`.
    pub fn csv(&self) -> String {
        self.0.csv()
    }
}

/// A rhythm tapped by hand.
#[wasm_bindgen(js_name = Taps)]
#[derive(Default)]
pub struct TappedRhythm(Taps);

#[wasm_bindgen(js_class = Taps)]
impl TappedRhythm {
    /// One without taps.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a tap, at a time in seconds.
    pub fn tap(&mut self, t_s: f64) {
        self.0.tap(t_s);
    }

    /// Takes the last tap back.
    pub fn undo(&mut self) {
        self.0.undo();
    }

    /// What the taps from one time to another come to: `{n, rate_bpm, uncertainty_bpm, intervals_ms, mean_ms, sd_ms,
    /// missed, doubled}`; rates and means are null where there are too few taps.
    pub fn sum(&self, from_s: f64, to_s: f64) -> JsValue {
        object(&json!(self.0.sum(from_s, to_s)))
    }

    /// What a silent count comes to: `{rate_bpm, step_bpm}`; null where the time is not above zero.
    pub fn count(&self, n: u32, seconds: f64) -> JsValue {
        object(&json!(taps::count(n, seconds)))
    }
    /// The taps as a table of text that opens as a recording; nothing for fewer than two.
    pub fn recording(&self) -> Option<String> {
        self.0.recording()
    }
}

/// Two rates, each with how far it may be off: `{difference_bpm, within}`.
#[wasm_bindgen(js_name = compareRates)]
pub fn compare_rates(one: f64, one_off: f64, other: f64, other_off: f64) -> JsValue {
    object(&json!(compare(one, one_off, other, other_off)))
}
