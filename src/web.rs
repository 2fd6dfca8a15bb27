//! The one place where WebAssembly meets the page: opaque handles in, small copyable results out. Texts never come
//! from here, only codes with arguments.

#[cfg(feature = "desk")]
mod class;
#[cfg(feature = "desk")]
mod desk;
mod hand;

use crate::assess::skill;
use crate::exchange::{Samples, csv};
use crate::plain::{self, json};
use crate::scenario::{Scenario, ScenarioError};
use crate::session::save::RestoreError;
use crate::session::{Action, Session, guide, save, view};
use crate::strip::axes::{self, Theme};
use crate::strip::columns::{self, Column};
use crate::strip::frame::Frame;
use crate::strip::listen::{Click, Listener};
use plotters::prelude::IntoDrawingArea;
use plotters_canvas::CanvasBackend;
use serde_json::Value;
use wasm_bindgen::prelude::*;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, Path2d};

/// Free stretch in front of the stylus, CSS pixels.
const GAP: f64 = 14.0;
/// Width of the trace where it is widest, CSS pixels.
const STROKE: f64 = 1.6;

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

/// The skill map at `now_ms` (ms since 1970) from a history of [`Lab::evidence`] records, each with its `at_ms`; JSON in and
/// out.
#[wasm_bindgen(js_name = skillMap)]
pub fn skill_map(history: &str, now_ms: f64) -> Result<String, JsValue> {
    let records = skill::read(history).map_err(|e| fail("history_invalid", json!({"found": e})))?;
    Ok(json!(skill::map(&records, now_ms)).to_string())
}

/// SHA-256 of the first `samples` codes of a scenario under a seed, little-endian, as hexadecimal digits.
#[wasm_bindgen]
pub fn fingerprint(toml: &str, seed: &str, samples: u32) -> Result<String, JsValue> {
    let seed = save::seed(seed).map_err(|e| fail("seed_invalid", json!({"found": e.to_string()})))?;
    let scenario = Scenario::read(toml).map_err(|e| scenario_fail(&e))?;
    let config = scenario.config().map_err(|e| scenario_fail(&e))?;
    crate::chain::fingerprint(config, scenario.heart(toml, seed), u64::from(samples))
        .map_err(|e| fail("bad_value", json!({"field": e.field, "expected": e.expected})))
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
    /// The values of an opened recording are told in volts.
    #[cfg_attr(
        not(feature = "desk"),
        expect(dead_code, reason = "told in the files that only that core writes")
    )]
    volts: bool,
    listener: Option<Listener>,
    clicks: Vec<Click>,
}

/// What the trace layer shows; when it changes everything is drawn again.
#[derive(Clone, Copy, PartialEq)]
struct Shown {
    live: bool,
    take: usize,
    frame: Frame,
    rate_hz: f64,
    trace: bool,
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
            volts: false,
            listener: None,
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

    /// The peak of the shown take nearest to `t` s, as the detector finds it, if one is near.
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

    /// What can be said of the visible stretch without counting, as JSON.
    pub fn summary(&self) -> String {
        json!(self.session.overview()).to_string()
    }

    /// A take as a table of text: times, values, notes.
    #[wasm_bindgen(js_name = takeCsv)]
    pub fn take_csv(&self, take: usize) -> Result<String, JsValue> {
        let take = self.session.takes().get(take).ok_or_else(|| fail("no_take", json!({})))?;
        let samples = Samples::Recording(&take.recording);
        Ok(csv::write_with_notes(samples.rate_hz(), &samples.values(), &self.session.notes(take)))
    }

    /// Colours and font of the strip, as JSON; what is missing or unreadable stays as it was.
    #[wasm_bindgen(js_name = setTheme)]
    pub fn set_theme(&mut self, theme: &str) {
        let Ok(given) = plain::value(theme) else { return };
        let colour = |name: &str| given[name].as_str().and_then(Theme::colour);
        for (name, slot) in [
            ("ground", &mut self.theme.ground),
            ("grid", &mut self.theme.grid),
            ("axis", &mut self.theme.axis),
            ("ink", &mut self.theme.ink),
            ("accent", &mut self.theme.accent),
        ] {
            if let Some(colour) = colour(name) {
                *slot = colour;
            }
        }
        if let Some(font) = given["font"].as_str() {
            self.theme.font = font.into();
        }
        if let Some(decimal) = given["decimal"].as_str().and_then(|d| d.chars().next()) {
            self.theme.decimal = decimal;
        }
        self.drawn = None;
    }

    /// Size of the two canvases, device pixels.
    #[wasm_bindgen(js_name = setSize)]
    pub fn set_size(&mut self, width: f64, height: f64, dpr: f64) {
        let side = |v: f64| if v.is_finite() { v.clamp(1.0, 20_000.0) } else { 1.0 };
        let dpr = if dpr.is_finite() { dpr.clamp(0.25, 8.0) } else { 1.0 };
        self.frame = Frame::new(side(width), side(height), dpr);
        self.drawn = None;
    }

    fn current(&self) -> Frame {
        let base = self.session.time_base_s();
        let t0 = if self.session.shows_take() { self.session.start_s() } else { 0.0 };
        let (v0, v1) = self.session.value_range();
        self.frame.showing(t0, t0 + base, v0, v1)
    }

    fn shown(&self) -> Shown {
        let live = !self.session.shows_take();
        let rate_hz = self.session.live().map_or(0.0, |l| l.rate_hz());
        let take = self.session.shown_take_number().unwrap_or(0);
        let trace = self.session.chain().is_none_or(|c| c.settings().shown);
        Shown { live, take, frame: self.current(), rate_hz, trace }
    }

    /// The plot's place in the canvas and what it shows, eight numbers: left, top, width and height, CSS pixels; first
    /// and last time, s; lowest and highest value, V. Asked for in each frame.
    pub fn geometry(&self) -> Vec<f64> {
        let f = self.current();
        let css = |v: f64| v / f.dpr;
        vec![css(f.left), css(f.top), css(f.width), css(f.height), f.t0, f.t1, f.v0, f.v1]
    }

    /// Where the stylus is, x and y, CSS pixels; none when no live signal is drawn. Asked for in each frame.
    pub fn stylus(&self) -> Option<Vec<f64>> {
        let frame = self.current();
        let live = self.session.live().filter(|_| !self.session.shows_take())?;
        let seen = self.session.chain().is_some_and(|c| c.seen());
        let volts = live.total().checked_sub(1).and_then(|k| live.sample(k)).filter(|_| seen)?;
        let x = frame.left + frame.width * live.stylus(frame.t1 - frame.t0);
        let y = frame.y(f64::from(volts)).clamp(frame.top, frame.top + frame.height);
        Some(vec![x / frame.dpr, y / frame.dpr])
    }

    /// Draws grid, ticks and labels on the base layer. To be called after each change of [`Lab::geometry`].
    #[wasm_bindgen(js_name = drawBase)]
    pub fn draw_base(&self, canvas: HtmlCanvasElement) -> Result<(), JsValue> {
        let context: CanvasRenderingContext2d =
            canvas.get_context("2d")?.ok_or_else(|| fail("no_canvas", json!({})))?.dyn_into()?;
        context.clear_rect(0.0, 0.0, f64::from(canvas.width()), f64::from(canvas.height()));
        let backend =
            CanvasBackend::with_canvas_object(canvas).ok_or_else(|| fail("no_canvas", json!({})))?;
        // plotters draws on whole pixels; half a pixel more puts one-pixel lines on one pixel.
        context.save();
        context.translate(0.5, 0.5)?;
        let plain = self.session.chain().is_none();
        let drawn = axes::draw(&backend.into_drawing_area(), &self.current(), &self.theme, plain);
        context.restore();
        drawn.map_err(|e| fail("drawing_failed", json!({"found": e.to_string()})))
    }

    /// Draws on the trace layer: what is new of the live signal, or everything after a change. True if pixels
    /// changed.
    #[wasm_bindgen(js_name = drawTrace)]
    pub fn draw_trace(&mut self, context: &CanvasRenderingContext2d) -> bool {
        let shown = self.shown();
        let frame = shown.frame;
        let held = self.session.is_held();
        let afresh = self.drawn.is_none_or(|(_, before)| before != shown);
        context.set_stroke_style_str(&axes::hex(self.theme.ink));
        context.set_line_join("miter");
        if shown.live {
            let total = self.session.live().map_or(0, |l| l.total());
            let moved = self.drawn.is_none_or(|(before, _)| before != total);
            if !afresh && (held || !moved) {
                return false;
            }
            self.draw_live(context, &frame, afresh);
            self.drawn = Some((total, shown));
            return true;
        }
        if !afresh {
            return false;
        }
        self.draw_take(context, &frame);
        self.drawn = Some((0, shown));
        true
    }

    fn draw_live(&mut self, context: &CanvasRenderingContext2d, frame: &Frame, afresh: bool) {
        let hidden = self.session.chain().is_some_and(|c| !c.settings().shown);
        let Some(live) = self.session.live_mut() else { return };
        if afresh || hidden {
            live.redraw();
            clear(context, frame, frame.left, frame.width);
        }
        let fresh = live.fresh(frame);
        if hidden {
            return;
        }
        let gap = GAP * frame.dpr;
        // Wipe in front of the stylus, stretch by stretch, before anything is drawn.
        for stretch in fresh.chunk_by(|_, next| !next.lifted) {
            let (Some(first), Some(last)) = (stretch.first(), stretch.last()) else { continue };
            let from = first.column.x as f64 + if first.lifted && first.column.x > 0 { 1.0 } else { 0.0 };
            let to = (last.column.x as f64 + gap).min(frame.width);
            clear(context, frame, frame.left + from, (to - from).max(0.0));
        }
        clip(context, frame);
        let Ok(path) = Path2d::new() else { return };
        for stretch in fresh.chunk_by(|_, next| !next.lifted) {
            trace_columns(&path, frame, stretch.iter().map(|f| &f.column));
        }
        scratch(context, frame, &path);
        context.restore();
    }

    fn draw_take(&self, context: &CanvasRenderingContext2d, frame: &Frame) {
        clear(context, frame, frame.left, frame.width);
        let Some(take) = self.session.take() else { return };
        clip(context, frame);
        let Ok(path) = Path2d::new() else { return };
        let rate = take.recording.rate_hz();
        if (frame.t1 - frame.t0) * rate < 1.5 * frame.width {
            // Fewer samples than columns: joined by straight lines.
            let from = take.recording.sample_at(frame.t0).saturating_sub(1);
            let to = take.recording.sample_at(frame.t1) + 2;
            for (k, v) in take.recording.values(from, to).iter().enumerate() {
                path.line_to(frame.x((from + k) as f64 / rate), frame.y(*v));
            }
        } else {
            trace_columns(&path, frame, columns::of_recording(&take.recording, frame).iter());
        }
        scratch(context, frame, &path);
        context.restore();
    }
}

fn clear(context: &CanvasRenderingContext2d, frame: &Frame, x: f64, width: f64) {
    context.clear_rect(x, frame.top, width, frame.height);
}

/// Keeps strokes inside the plot; ended by `restore`.
fn clip(context: &CanvasRenderingContext2d, frame: &Frame) {
    context.save();
    context.begin_path();
    context.rect(frame.left, frame.top, frame.width, frame.height);
    context.clip();
}

/// Scratches a path as a stylus with a slanted tip would: hairlines side by side along a diagonal, so that the weight
/// varies with the direction. A hairline of one device pixel is drawn some twenty times as fast as a wider stroke.
fn scratch(context: &CanvasRenderingContext2d, frame: &Frame, path: &Path2d) {
    let spread = (STROKE * frame.dpr - 1.0).max(0.0);
    let lines = 1.0 + (spread / 0.7).ceil();
    context.set_line_width(1.0);
    let mut k = 0.0;
    while k < lines {
        let shift = if lines > 1.0 { spread * (k / (lines - 1.0) - 0.5) } else { 0.0 };
        context.save();
        if context.translate(shift, -shift).is_ok() {
            context.stroke_with_path(path);
        }
        context.restore();
        k += 1.0;
    }
}

/// One path through the columns: in at the first value, over lowest and highest, out at the last.
fn trace_columns<'a>(path: &Path2d, frame: &Frame, columns: impl Iterator<Item = &'a Column>) {
    let mut begun = false;
    for column in columns {
        let x = frame.left + column.x as f64 + 0.5;
        let y = |v: f32| frame.y(f64::from(v));
        if begun {
            path.line_to(x, y(column.first));
        } else {
            path.move_to(x, y(column.first));
            begun = true;
        }
        if column.min != column.max {
            // The nearer extreme first, so that the stroke does not double back over the whole column.
            let falling = column.last < column.first;
            let (near, far) = if falling { (column.max, column.min) } else { (column.min, column.max) };
            path.line_to(x, y(near));
            path.line_to(x, y(far));
            path.line_to(x, y(column.last));
        }
    }
}
