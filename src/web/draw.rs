//! Drawing the trace into the page's canvases.

use super::{Lab, Shown, fail};
use crate::deed::MEASURES;
use crate::plain::{self, json};
use crate::trace::axes::{self, Theme};
use crate::trace::charts::{Look, table};
use crate::trace::columns::{self, Column};
use crate::trace::frame::Frame;
use plotters::prelude::IntoDrawingArea;
use plotters_canvas::CanvasBackend;
use serde_json::Value;
use wasm_bindgen::prelude::*;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, Path2d};

/// Free stretch in front of the stylus, CSS pixels.
const GAP: f64 = 14.0;
/// Width of the trace where it is widest, CSS pixels.
const STROKE: f64 = 1.6;

#[wasm_bindgen]
impl Lab {
    /// Colours and font of the trace, as JSON; what is missing or unreadable stays as it was.
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

    pub(super) fn current(&self) -> Frame {
        let base = self.session.time_base_s();
        let t0 = if self.session.shows_recording() { self.session.start_s() } else { 0.0 };
        let (v0, v1) = self.session.value_range();
        self.frame.showing(t0, t0 + base, v0, v1)
    }

    /// Whether the values are no voltages, as far as is known.
    pub(super) fn plain(&self) -> bool {
        self.session.chain().is_none() && self.session.unit() != "V"
    }

    fn shown(&self) -> Shown {
        let live = !self.session.shows_recording();
        let rate_hz = self.session.live().map_or(0.0, |l| l.rate_hz());
        let kept = self.session.shown_recording_number().unwrap_or(0);
        let trace = self.session.chain().is_none_or(|c| c.settings().shown);
        let version = self.session.shown_version();
        Shown { live, kept, frame: self.current(), rate_hz, trace, version }
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
        let live = self.session.live().filter(|_| !self.session.shows_recording())?;
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
        let plain = self.plain();
        let drawn = axes::draw(&backend.into_drawing_area(), &self.current(), &self.theme, plain);
        context.restore();
        drawn.map_err(|e| fail("drawing_failed", json!({"found": e.to_string()})))
    }

    /// Draws the chart of an experiment's table on a canvas with `dpr` device pixels a CSS pixel. `measure` is its name; `words` are
    /// JSON: `{unit, conditions}`. False, and nothing drawn, where there is no row yet.
    #[wasm_bindgen(js_name = drawTable)]
    pub fn draw_table(
        &self,
        canvas: HtmlCanvasElement,
        measure: &str,
        words: &str,
        dpr: f64,
    ) -> Result<bool, JsValue> {
        let measure = MEASURES.into_iter().find(|m| m.name() == measure);
        let Some(chart) = measure.and_then(|m| self.session.table_chart(m)) else { return Ok(false) };
        let given = plain::value(words).unwrap_or_default();
        let names: Vec<&str> = given["conditions"]
            .as_array()
            .map_or_else(Vec::new, |all| all.iter().filter_map(Value::as_str).collect());
        let words = table::Words { unit: given["unit"].as_str().unwrap_or_default(), conditions: &names };
        let dpr = if dpr.is_finite() { dpr.clamp(0.25, 8.0) } else { 1.0 };
        let look =
            Look { theme: self.theme.clone(), sheet: Some(self.theme.ground), ..Look::light().at(dpr) };
        let backend =
            CanvasBackend::with_canvas_object(canvas).ok_or_else(|| fail("no_canvas", json!({})))?;
        chart
            .draw(&backend.into_drawing_area(), &look, &words)
            .map_err(|e| fail("drawing_failed", json!({"found": e.to_string()})))?;
        Ok(true)
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
        self.draw_recording(context, &frame);
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

    fn draw_recording(&self, context: &CanvasRenderingContext2d, frame: &Frame) {
        clear(context, frame, frame.left, frame.width);
        let Some(kept) = self.session.recording() else { return };
        clip(context, frame);
        let Ok(path) = Path2d::new() else { return };
        let rate = kept.recording.rate_hz();
        if (frame.t1 - frame.t0) * rate < 1.5 * frame.width {
            // Fewer samples than columns: joined by straight lines.
            let from = kept.recording.sample_at(frame.t0).saturating_sub(1);
            let to = kept.recording.sample_at(frame.t1) + 2;
            for (k, v) in kept.recording.values(from, to).iter().enumerate() {
                path.line_to(frame.x((from + k) as f64 / rate), frame.y(*v));
            }
        } else {
            trace_columns(&path, frame, columns::of_recording(&kept.recording, frame).iter());
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
