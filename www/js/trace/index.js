// @ts-check
// The trace: live, held or a recording; Record above it, range and time base on its own axes, measuring and the signal's path under it.

import { CoreError } from "../core.js";
import { paneOf } from "../deeds.js";
import { attr, flag, h, prop, say, words } from "../dom.js";
import { download } from "../download.js";
import { icon } from "../icons.js";
import { refusalText } from "../bench/index.js";
import { bringTexts, coded, t } from "../text.js";
import { inWords } from "../scenarios.js";
import { Sound } from "../sound.js";
import { button, relabel, Segments } from "../widgets.js";
import { Beats } from "./beats.js";
import { Canvases } from "./canvas.js";
import { Cursors } from "./cursors.js";
import { Measure } from "./measure.js";
import { picture, saveRow } from "./save.js";
import { Settings } from "./settings.js";
import { Stylus } from "./stylus.js";
import { Spots } from "./spots.js";
import { summaryText } from "./summary.js";
import { clockText, spanText, timeText } from "./units.js";
/** @import { Loop } from '../loop.js' */
/** @import { Session } from '../session.js' */
/** @import { Action } from '../types/action' */
/** @import { DeedPane, Geometry } from '../types/told' */
/** @import { View } from '../types/view' */

const HARDLY_S = 0.5; // so little beyond the screen is no reason for a way to scroll
const TAP_PX = 6;
const SHORT = 44; // characters that have room beside the time base: they stand in the place of the words there, so that the trace keeps its height
const SCROLL_EVERY_MS = 90;

export class TracePane {
  /** @param {HTMLElement} root @param {Session} session @param {Loop} loop */
  constructor(root, session, loop) {
    this.root = root;
    this.session = session;
    this.loop = loop;
    /** @type {{ x: number, start: number, panned: boolean } | null} */
    this.pressed = null;
    /** @type {number | null} */
    this.scrolling = null;
    this.scrollDue = 0;
    /** @param {Action} action */
    const act = (action) => session.act(action);
    const live = session.bench.kind !== "recording";
    this.canvases = new Canvases(session.bench, (geometry) => this.moved(geometry));
    this.stylus = new Stylus();
    this.beats = new Beats();
    this.spots = new Spots();
    this.cursors = new Cursors({ act, moved: (times) => this.measure.times(times), markAt: (time) => this.markAt(time), tapped: (clientX) => this.tap(clientX), dropped: (time) => this.snapped(time), apart: session.view.task.seconds ?? session.view.scenario?.pass.window_s ?? 15 });
    this.asShown = h("p", { class: "quiet", hidden: true });
    this.measure = new Measure({ act, cursors: this.cursors, markAt: (time) => this.markAt(time), saves: h("div", {}, saveRow((...as) => this.saveRecording(...as), (kind) => this.savePicture(kind)), this.asShown), zoom: (closer) => this.zoom(closer), turnSnap: (on) => act({ do: "snap", on }), undo: () => session.undo(), heights: session.view.task.reads === "heights" });
    this.settings = new Settings(act, { recorder: live });

    this.asked = recordedFor(session.view);
    /** @type {number | null} */
    this.until = null; // a recording that stops by itself is then so long, s
    /** @type {HTMLElement | null} */
    this.inSight = null; // of the modes, the one that was brought into sight
    this.modesHad = 0;
    this.modes = new Segments(t("strip-modes"), (key) => this.pickMode(key));
    this.record = button("", () => act({ do: session.view.recording.on ? "stop" : "record" }), { kind: "btn-record" });
    this.recordFor = button(t("strip-record_for", { s: this.asked }), () => this.recordAsked(), { kind: "btn-record btn-record-for", data: { short: spanText(this.asked) } });
    this.elapsed = h("span", { class: "elapsed", "aria-hidden": "true" });
    this.note = h("p", { class: "strip-note pencil", role: "status" });
    this.summary = button(t("summary-ask"), () => this.tell(summaryText(session.bench.summary())), { kind: "btn-plain btn-sign", pic: "lines", title: t("summary-ask") });

    this.sound = new Sound(session.bench);
    this.listen = button(t("strip-listen"), () => this.toggleSound(), { kind: "btn-plain btn-sign strip-listen", pic: "sound", title: t("strip-listen"), "aria-pressed": "false" });

    this.marginLeft = h("p", { class: "pencil" });
    this.footLeft = h("p", { class: "pencil pen-at" });
    this.footRight = h("p", { class: "pencil" });
    this.field = h("div", { class: "field", onpointerdown: (event) => this.press(event), onpointermove: (event) => this.pan(event), onpointerup: (event) => this.lift(event), onpointercancel: () => (this.pressed = null) },
      this.canvases.el, this.spots.el, this.stylus.el, this.beats.el, this.cursors.el);
    this.startButton = h("button", { type: "button", class: "btn btn-strong start-strip", hidden: true, onclick: () => this.startLoop() }, icon("live"), h("span", { class: "word" }, t("strip-start")));
    this.back = h("button", { type: "button", class: "btn btn-round", "aria-label": t("strip-back"), onclick: () => this.scrollBy(-0.5) }, icon("left"));
    this.forth = h("button", { type: "button", class: "btn btn-round", "aria-label": t("strip-forth"), onclick: () => this.scrollBy(0.5) }, icon("right"));
    /** @type {HTMLInputElement} */
    this.scroll = h("input", { type: "range", "aria-label": t("strip-scroll"), min: "0", step: "0.05", oninput: () => this.scrollTo(Number(this.scroll.value)) });
    this.scroller = h("div", { class: "scroller" }, this.back, this.scroll, this.forth);

    this.drum = h("div", { class: "drum" },
      h("div", { class: "margin margin-top" }, this.settings.values, this.marginLeft, this.scroller, h("div", { class: "margin-ways" }, this.summary, live && this.listen)),
      h("div", { class: "trace-area" }, this.field, this.startButton),
      this.note, h("div", { class: "margin margin-foot" }, h("div", { class: "foot-says" }, this.footLeft, this.footRight), this.settings.time.el));
    this.trail = h("div", { class: "trail-place", hidden: true }); // filled after a check, see after/

    root.replaceChildren(
      h("h2", { id: "strip-h", class: "vh" }, t("strip-title")),
      h("div", { class: "strip-head" }, live && h("div", { class: "recorder" }, this.record, this.recordFor, this.elapsed), this.modes.el),
      this.drum, h("div", { class: "under" }, this.measure.el), this.settings.path.el);

    session.onView((view) => this.show(view));
    session.onRefusal((code, args, action) => TRACE_PANES.has(paneOf(action.do)) && this.tell(refusalText(code, args)));
    session.onDeed((action) => this.did(action));
    if (live && matchMedia("(prefers-reduced-motion: reduce)").matches) {
      loop.running = false;
      this.startButton.hidden = false;
    }
  }

  /** One frame: draws what is due; true if the trace changed. */
  frame() {
    const changed = this.canvases.draw();
    this.sound.frame(this.loop.running && this.session.view.trace.mode === "live");
    const { recording, trace, recorder } = this.session.view;
    this.stylus.place(trace.mode === "live" && recorder?.shown !== false ? this.session.bench.stylus() : undefined);
    if (recording.on) {
      const seconds = this.session.bench.recordedSeconds;
      words(this.elapsed, this.until ? t("strip-elapsed_of", { s: clockText(seconds), all: clockText(this.until) }) : clockText(seconds));
      if (this.until && seconds >= this.until) this.session.act({ do: "stop" });
    } else this.until = null;
    if (trace.mode !== "recording") words(this.footLeft, t("strip-pen_at", { s: timeText(Math.floor(this.session.bench.clock * 10) / 10) }));
    return changed;
  }

  /**
   * Lays everything over the plot box where it belongs.
   * @param {Geometry} geometry
   */
  moved(geometry) {
    this.beats.place(geometry);
    this.spots.place(geometry);
    this.cursors.place(geometry);
  }

  /** Records as long as the task needs, and stops by itself. */
  recordAsked() {
    const here = document.activeElement === this.recordFor;
    if (!this.session.act({ do: "record" })) return;
    this.until = this.asked;
    if (here) this.record.focus({ preventScroll: true }); // this button is gone while that one stops
    this.startLoop();
  }

  toggleSound() {
    if (!this.sound.toggle()) return this.tell(t("strip-listen_none"));
    attr(this.listen, "aria-pressed", String(this.sound.on));
    return this.tell(t(this.sound.on ? "strip-listen_on" : "strip-listen_off"));
  }

  startLoop() {
    this.loop.running = true;
    this.startButton.hidden = true;
  }

  get duration() {
    const { trace, recordings } = this.session.view;
    return recordings.find((one) => one.recording === trace.recording)?.duration_s ?? 0;
  }

  /** What is shown stays in sight among its likes, however many they are. */
  bringMode() {
    const row = this.modes.el, on = /** @type {HTMLElement | null} */ (row.querySelector('[aria-pressed="true"]'));
    if (!on || on === this.inSight && row.children.length === this.modesHad) return;
    [this.inSight, this.modesHad] = [on, row.children.length];
    const [from, to] = [on.offsetLeft - row.offsetLeft, on.offsetLeft - row.offsetLeft + on.offsetWidth];
    if (from < row.scrollLeft || to > row.scrollLeft + row.clientWidth) row.scrollLeft = Math.max(0, to - row.clientWidth + 4);
  }

  /** @param {View} view */
  show(view) {
    const { trace, recordings, recording } = view;
    const title = view.scenario ? inWords(view.scenario).title : view.recording_name;
    const measuring = trace.mode === "recording";
    const shownRecording = trace.recording ?? 0;
    /** @type {[string, string, (string | null)?, string?][]} */
    const options = view.kind === "recording" ? [] : [["live", t("strip-live"), "live"], ["paused", t("strip-paused"), "hold"]];
    this.modes.set([...options, ...recordings.map((one) => /** @type {[string, string, null, string]} */ ([`recording:${one.recording}`, t("strip-take", { v: one.recording + 1, s: Math.round(one.duration_s) }), null, t("strip-take_short", { v: one.recording + 1 })]))], measuring ? `recording:${shownRecording}` : trace.mode);
    this.bringMode();

    relabel(this.record, t(recording.on ? "strip-stop" : "strip-record"));
    flag(this.record, "is-on", recording.on);
    this.elapsed.hidden = !recording.on;
    this.recordFor.hidden = recording.on;

    flag(this.root, "is-measuring", measuring);
    flag(this.root, "is-recording", recording.on);
    for (const el of [this.measure.el, this.cursors.el, this.beats.el, this.spots.el]) el.hidden = !measuring;
    this.scroller.hidden = !measuring || this.duration <= trace.time_base_s + HARDLY_S;
    this.modes.el.hidden = view.kind === "recording"; // there is nothing else to show
    const ways = Settings.waysOf(view.display);
    this.asShown.hidden = !ways;
    words(this.asShown, ways && t("save-as_shown", { ways }));
    words(this.marginLeft, view.kind === "recording" ? (ways ? t("shown-margin", { title, ways }) : (title ?? "")) : measuring ? t("strip-margin_take", { v: shownRecording + 1, title }) : t(`strip-margin_${trace.mode}`, { title }));
    words(this.footRight, recording.on ? t("strip-margin_recording") : measuring ? t("strip-margin_measure") : "");
    if (measuring) {
      this.cursors.show(view.cursors, this.duration);
      this.beats.show(view.marks, view.check?.truth?.beat_times);
      this.measure.show(view);
      this.showSpots(view);
      const span = trace.time_base_s;
      const last = Math.max(0, this.duration - span);
      prop(this.scroll, "max", String(last));
      if (!this.scrolling) prop(this.scroll, "value", String(trace.start_s));
      attr(this.scroll, "aria-valuetext", t("strip-scroll_value", { from: timeText(trace.start_s), to: timeText(Math.min(this.duration, trace.start_s + span)) }));
      attr(this.back, "aria-disabled", trace.start_s <= 0 ? "true" : null);
      attr(this.forth, "aria-disabled", trace.start_s >= last - 1e-6 ? "true" : null);
      words(this.footLeft, t("strip-foot_recording", { from: timeText(trace.start_s), to: timeText(Math.min(this.duration, trace.start_s + span)), all: timeText(this.duration) }));
    }
    this.settings.show(view);
  }

  /**
   * The first window of a comparison as a ghost, and where the last hint points.
   * @param {View} view
   */
  showSpots({ cursors, trace, hint }) {
    const { kept } = cursors;
    this.spots.set("kept", kept && kept.recording === trace.recording ? { from_s: kept.a, to_s: kept.b } : null);
    const place = hint?.locate;
    this.spots.set("hint", typeof place?.from_s === "number" && typeof place.to_s === "number" ? { from_s: place.from_s, to_s: place.to_s } : null);
    this.cursors.point(place?.cursor ?? null);
  }

  /**
   * Shows a stretch of the open recording, scrolled so that it lies in the middle, unless it is in sight already.
   * @param {number} from @param {number} to
   */
  bringToSight(from, to) {
    const { start_s: start, time_base_s: span, mode } = this.session.view.trace;
    if (mode !== "recording" || (from >= start && to <= start + span)) return;
    this.scrollTo((from + to) / 2 - span / 2);
  }

  /**
   * Goes to a stretch of the open recording, wherever on the page one is, and marks it until something else is done.
   * @param {number} from @param {number} to
   */
  showPlace(from, to) {
    this.bringToSight(from, to);
    this.spots.set("hint", { from_s: from, to_s: to });
    this.root.scrollIntoView({ block: "nearest" });
  }

  /**
   * Shows the stretch between the cursors, with a little room about it, or leaves that again.
   * @param {boolean} closer
   */
  zoom(closer) {
    this.cursors.settleAll();
    if (!closer) return this.session.act({ do: "zoom_out" });
    const { a, b } = this.session.view.cursors;
    if (a === null || b === null) return this.tell(t("cursor-place_first"));
    const room = 0.04 * Math.abs(b - a);
    /** @param {number} time */
    const at = (time) => Math.round(Math.max(0, Math.min(this.duration, time)) * 1000) / 1000;
    return this.session.act({ do: "zoom", from_s: at(Math.min(a, b) - room), to_s: at(Math.max(a, b) + room) });
  }

  /**
   * A time, or the nearest peak where the student has that help on.
   * @param {number} time
   */
  snapped(time) {
    if (!this.session.view.snap) return time;
    const peak = this.session.bench.snap(time);
    return peak === undefined ? time : Math.round(peak * 1000) / 1000;
  }

  /** @param {string} key */
  pickMode(key) {
    if (key === "live" || key === "paused") this.session.act({ do: "show", mode: key });
    else this.session.act({ do: "open_recording", recording: Number(key.slice(10)) });
  }

  /** @param {Action} action */
  did(action) {
    if (action.do === "record") this.tell(t("strip-recording"));
    if (action.do === "stop") {
      const last = this.session.view.recordings.at(-1);
      if (last) this.tell(t("strip-kept", { v: last.recording + 1 }));
    }
    if (action.do === "mark") say(t("marks-made", { s: timeText(action.t) }));
    if (action.do === "unmark") say(t("marks-gone"));
    if (["open_recording", "show", "zoom", "zoom_out"].includes(action.do)) this.tell("");
    if (action.do === "show") this.startLoop();
  }

  /** @param {string} text */
  tell(text) {
    if (this.note.textContent === text && text) this.note.textContent = "";
    words(this.note, text);
    flag(this.drum, "is-telling", text && text.length <= SHORT);
  }

  // scrolling

  /** @param {number} screens */
  scrollBy(screens) {
    this.scrollTo(this.session.view.trace.start_s + screens * this.session.view.trace.time_base_s);
  }

  /**
   * Scrolls, at most every SCROLL_EVERY_MS, ending where the hand ended.
   * @param {number} start
   */
  scrollTo(start) {
    const last = Math.max(0, this.duration - this.session.view.trace.time_base_s);
    this.scrollDue = Math.max(0, Math.min(last, start));
    this.scrolling ??= setTimeout(() => {
      this.scrolling = null;
      if (this.scrollDue !== this.session.view.trace.start_s) this.session.act({ do: "scroll", start_s: this.scrollDue });
    }, this.pressed || document.activeElement === this.scroll ? SCROLL_EVERY_MS : 0);
  }

  // taps and drags on the field of an opened take

  /** @param {PointerEvent} event */
  press(event) {
    if (this.session.view.trace.mode !== "recording" || event.button > 0 || /** @type {Element} */ (event.target).closest(".cursor")) return;
    this.pressed = { x: event.clientX, start: this.session.view.trace.start_s, panned: false };
    this.field.setPointerCapture(event.pointerId);
  }
  /** @param {PointerEvent} event */
  pan(event) {
    const { pressed } = this;
    const { geometry } = this.canvases;
    if (!pressed || !geometry) return;
    const dx = event.clientX - pressed.x;
    if (!pressed.panned && Math.abs(dx) < TAP_PX) return;
    pressed.panned = true;
    const { width, t0, t1 } = geometry;
    this.scrollTo(pressed.start - (dx / width) * (t1 - t0));
  }
  /** @param {PointerEvent} event */
  lift(event) {
    const pressed = this.pressed;
    this.pressed = null;
    if (!pressed || pressed.panned) return;
    this.tap(event.clientX);
  }

  /**
   * A tap on the open recording: marks a beat there, or takes away the mark that is near.
   * @param {number} clientX
   */
  tap(clientX) {
    const x = clientX - this.field.getBoundingClientRect().left;
    const { geometry } = this.canvases;
    if (!geometry) return;
    const { left, width, t0, t1 } = geometry;
    if (x < left || x > left + width) return;
    const near = this.beats.near(x);
    if (near !== null) this.session.act({ do: "unmark", t: near });
    else this.session.act({ do: "mark", t: this.snapped(Math.round((t0 + ((x - left) / width) * (t1 - t0)) * 1000) / 1000) });
  }

  /**
   * Marks a beat at a time, or takes away the mark that stands there.
   * @param {number | null} time
   */
  markAt(time) {
    if (time === null) return this.tell(t("cursor-place_first"));
    const at = this.snapped(time);
    const there = this.session.view.marks.find((mark) => Math.abs(mark - at) < 0.02);
    this.session.act(there === undefined ? { do: "mark", t: at } : { do: "unmark", t: there });
  }

  /**
   * Saves the open recording in a form of file.
   * @param {string} format @param {string} ending @param {string} type
   */
  async saveRecording(format, ending, type) {
    const kept = this.session.view.trace.recording ?? 0;
    const name = t("take-file", { v: kept + 1 });
    this.cursors.settleAll();
    try {
      const { bench } = this.session;
      const file = format === "csv" ? bench.recordingCsv(kept) : (await import("../desk.js")).recordingFile(bench, kept, format, name);
      download(`${name}.${ending}`, /** @type {BlobPart} */ (file), type);
    } catch (error) {
      if (!(error instanceof Error)) throw error;
      const inWords = () => (error instanceof CoreError ? coded("error", error.code, error.args) : error.message);
      bringTexts("files").then(() => this.tell(inWords()), () => this.tell(error.message));
    }
  }

  /**
   * Saves what the trace shows as a picture.
   * @param {"png" | "svg"} kind
   */
  async savePicture(kind) {
    this.cursors.settleAll();
    const { trace: { recording }, cursors, marks, display } = this.session.view;
    const ways = Settings.waysOf(display);
    const caption = ways && t("shown-caption", { ways });
    const name = `${t("strip-file", { v: (recording ?? 0) + 1 })}.${kind}`;
    if (kind === "svg") return download(name, (await import("../desk.js")).traceSvg(this.session.bench, this.marginLeft.textContent, caption), "image/svg+xml");
    const { base, trace: line, geometry } = this.canvases;
    if (!geometry) return undefined;
    return download(name, await picture({ canvases: [base, line], geometry, cursors, marks, caption }), "image/png");
  }

  end() {
    if (this.sound.on) this.sound.end();
    this.measure.end();
    this.settings.path.end();
    this.canvases.end();
  }
}

/** @type {Set<DeedPane | null>} */
const TRACE_PANES = new Set(["axes", "drawer", "trace"]);

/**
 * How long a recording has to be for what is asked, with room to choose a window in it, s.
 * @param {View} view
 */
function recordedFor({ scenario, task }) {
  const least = Math.max(scenario?.pass.record_s ?? 15, scenario?.pass.window_s ?? 15, task.seconds ?? 0, task.at_least_s ?? 0);
  return 5 * Math.ceil((least + 4) / 5);
}
