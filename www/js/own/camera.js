// @ts-check
// The pulse by the camera: what is said before it is asked for, what it sees in words, a recording that begins when the pulse can be
// read, and why not where it cannot. The camera goes off with the screen.

import { attr, h, prop, refill, say, style, words } from "../dom.js";
import { download } from "../download.js";
import { coded, num, t } from "../text.js";
import { button } from "../widgets.js";
import { framed, Lens, LensError } from "./lens.js";
import { figures, Length, openAs, rateText } from "./parts.js";
import { Strip } from "./strip.js";
/** @import { Measured } from './attempts.js' */
/** @import { Colour, LensFailure } from './lens.js' */
/** @import { PulseState } from '../types/told' */

const SHOWN_S = 8;
const LOOK_MS = 250; // how often the words are looked at
const DRAW_MS = 50;
const STEADY_S = 1.5; // so long a finger lies there before brightness is kept
const LOST_S = 3; // so long it is gone before the camera may choose again
const STALLED_MS = 2500;
const LONGEST_S = 180; // a light that nobody uses goes off
const LEAST_S = 5; // of a recording that is stopped early
const PART_S = 10;
const READ_S = 10; // of these the core reads a heart rate: the recording begins with them
const calmer = matchMedia("(prefers-reduced-motion: reduce)");

/** @typedef {"ready" | "asking" | "waiting" | "recording" | "done" | "failed"} State */
/** @typedef {"done" | "stopped" | "taken" | "hidden" | "long"} Ending */

export class CameraWay {
  /** @param {Promise<typeof import('../desk.js')>} core @param {(one: Measured) => unknown} measured */
  constructor(core, measured) {
    this.core = core;
    this.measured = measured;
    /** @type {Lens | null} */
    this.lens = null;
    /** @type {import('../desk.js').Fingertip | null} */
    this.live = null;
    /** @type {import('../desk.js').Fingertip | null} */
    this.kept = null;
    /** @type {Colour[]} */
    this.recent = []; // the last seconds
    /** @type {State} */
    this.state = "ready";
    this.timer = 0;
    this.opened = this.drawn = this.came = 0; // ms of the page's clock
    this.from = this.last = 0; // s of the camera's: where the recording begins, and the last picture
    this.finger = { there: false, since: 0, kept: false, spoilt: false };
    this.code = { now: "", next: "", since: 0 };
    this.strip = new Strip();
    this.length = new Length(() => this.show("ready"));
    this.about = h("div", { class: "own-about" }, h("h3", {}, t("own-camera_before")), h("ul", { class: "own-rules" }, ["choice", "numbers", "nothing", "off", "warm"].map((one) => h("li", {}, t(`own-camera_${one}`)))));
    this.swatch = h("span", { class: "own-swatch", "aria-hidden": "true" });
    this.quality = h("p", { class: "own-quality", role: "status" });
    this.now = h("p", { class: "own-now" });
    this.light = h("p", { class: "quiet" });
    this.time = h("p", { class: "own-told" });
    this.start = button(t("own-camera_start"), () => this.open(), { kind: "btn-strong own-press", pic: "record" });
    this.stop = button(t("own-stop"), () => this.finish("stopped"), { pic: "stop" });
    this.next = button(t("own-camera_other"), () => this.another());
    this.told = h("div", { class: "own-ended", role: "status" });
    this.result = h("div", { class: "own-result" });
    this.outcome = h("div", { class: "own-outcome", data: { told: t("own-outcome") } }, this.told, this.result);
    this.view = h("div", { class: "own-view" }, h("div", { class: "own-says" }, this.swatch, h("div", {}, this.quality, this.now)), this.strip.el, this.time, this.light);
    this.place = h("div", { class: "own-lens", "aria-hidden": "true" });
    this.el = h("div", { class: "own-two" },
      h("div", { class: "own-how" }, h("h2", {}, t("own-camera_title")), h("p", {}, t("own-camera_how")), h("p", {}, t("own-camera_lamp")), this.about),
      h("div", { class: "own-do" }, this.length.el, this.view, h("div", { class: "row own-keys" }, this.start, this.stop, this.next), this.outcome, this.place));
    this.hidden = () => document.visibilityState === "hidden" && this.finish("hidden");
    this.gone = () => this.off();
    document.addEventListener("visibilitychange", this.hidden);
    addEventListener("pagehide", this.gone);
    this.show("ready");
  }

  /** @param {State} state */
  show(state) {
    this.state = state;
    this.el.dataset.state = state;
    const on = state === "waiting" || state === "recording";
    prop(this.start, "hidden", on || state === "asking");
    prop(this.stop, "hidden", !on && state !== "asking");
    prop(this.next, "hidden", !(state === "waiting" && (this.lens?.others.length ?? 0) > 1));
    this.view.classList.toggle("is-recording", state === "recording");
    this.length.able(!on && state !== "asking");
    if (on) return;
    if (state !== "done") this.strip.draw({ from: -SHOWN_S, to: 0, step: 100 }); // what was read last stays to be seen
    style(this.swatch, "background-color", "transparent");
    words(this.quality, t(state === "asking" ? "own-camera_asking" : "own-camera_is_off"));
    for (const line of [this.now, this.light]) words(line, "");
    words(this.time, t("own-recorded_wait", { s: this.length.now }));
  }

  async open() {
    this.off();
    this.kept?.free();
    this.kept = null;
    this.result.replaceChildren();
    this.told.replaceChildren();
    this.show("asking");
    this.stop.focus({ preventScroll: true });
    /** @type {Lens} */
    const lens = new Lens({ coloured: (colour) => this.take(lens, colour), gone: () => this.lens === lens && this.finish("taken") });
    this.lens = lens;
    this.place.replaceChildren(lens.video);
    try {
      const { Fingertip } = await this.core;
      await lens.open();
      if (this.lens !== lens || lens.over) return;
      this.begin(new Fingertip());
    } catch (error) {
      if (this.lens !== lens) return lens.close();
      this.off();
      this.fail(error);
    }
  }

  /** @param {import('../desk.js').Fingertip} live */
  begin(live) {
    this.live = live;
    this.kept = null;
    this.opened = this.drawn = this.came = performance.now();
    this.from = this.last = 0;
    this.recent = [];
    this.finger = { there: false, since: 0, kept: false, spoilt: false };
    this.code = { now: "", next: "", since: 0 };
    this.told.replaceChildren();
    this.show("waiting");
    words(this.light, t(`own-light-${this.lens?.light ?? "none"}`));
    words(this.quality, t("own-quality-start"));
    this.view.scrollIntoView({ block: "nearest" });
    this.timer = setInterval(() => this.look(), LOOK_MS);
  }

  async another() {
    const { lens } = this;
    if (!lens) return;
    clearInterval(this.timer);
    this.live?.free();
    this.live = null;
    this.show("asking");
    this.stop.focus({ preventScroll: true });
    try {
      const { Fingertip } = await this.core;
      await lens.another();
      if (this.lens === lens && !lens.over) this.begin(new Fingertip());
    } catch (error) {
      this.off();
      this.fail(error);
    }
  }

  /** A picture's colour has come. @param {Lens} lens @param {Colour} colour */
  take(lens, { at_s, red, green, blue }) {
    if (this.lens !== lens || !this.live) return;
    this.came = performance.now();
    this.last = at_s;
    this.live.push(at_s, red, green, blue);
    style(this.swatch, "background-color", `rgb(${Math.round(red)} ${Math.round(green)} ${Math.round(blue)})`);
    this.recent.push({ at_s, red, green, blue });
    while (this.recent[0].at_s < at_s - READ_S) this.recent.shift();
    if (this.kept) {
      this.kept.push(at_s - this.from, red, green, blue);
      if (at_s - this.from >= this.length.now) return void this.finish("done");
    }
    const every = calmer.matches ? 1000 : DRAW_MS;
    if (this.came - this.drawn < every) return undefined;
    this.drawn = this.came;
    const end = Math.floor(at_s * 1000) / 1000;
    this.strip.draw({ from: end - SHOWN_S, to: end, step: 1, wave: { values: this.live.trace(SHOWN_S), end, rate: this.live.rate } });
    return undefined;
  }

  /** Puts into words what the camera sees, and begins the recording when the pulse can be read. */
  look() {
    const { live } = this;
    if (!live) return;
    const now = performance.now();
    if (now - this.came > STALLED_MS) {
      this.sayQuality("none");
      words(this.now, "");
      if (now - this.came > 4 * STALLED_MS) this.finish("taken");
      return;
    }
    const state = live.state();
    this.steady(state, now);
    this.sayQuality(state.quality);
    this.el.dataset.quality = state.quality;
    this.el.dataset.frames = String(state.frames);
    words(this.now, state.bpm === null ? (state.refused && state.quality === "good" ? coded("own-refused", state.refused) : "") : t("own-now", { rate: num(state.bpm, 0) }));
    attr(this.el, "data-bpm", state.bpm);
    if (!this.kept && state.quality === "good" && state.bpm !== null) this.record();
    words(this.time, this.kept ? t("own-recorded", { s: num(Math.floor(this.last - this.from), 0), of: this.length.now }) : t("own-recorded_wait", { s: this.length.now }));
    if (!this.kept && now - this.opened > LONGEST_S * 1000) this.finish("long");
  }

  async record() {
    const { Fingertip } = await this.core;
    if (this.kept || this.state !== "waiting") return;
    this.kept = new Fingertip();
    this.from = this.recent[0].at_s;
    for (const { at_s, red, green, blue } of this.recent) this.kept.push(at_s - this.from, red, green, blue);
    this.show("recording");
    say(t("own-recorded_on"));
  }

  /**
   * Words that change are said only once they have stood for a moment: a finger that settles would make a reader of the screen stammer.
   * @param {string} code
   */
  sayQuality(code) {
    const now = performance.now();
    if (code !== this.code.next) Object.assign(this.code, { next: code, since: now });
    if (code === this.code.now || now - this.code.since < 2 * LOOK_MS) return;
    this.code.now = code;
    words(this.quality, t(`own-quality-${code}`));
    this.quality.dataset.code = code;
  }

  /**
   * Keeps the camera's brightness while a finger lies on it; where that goes wrong it may choose for good.
   * @param {PulseState} state @param {number} now
   */
  steady(state, now) {
    const { finger } = this;
    const wrong = state.quality === "too_dark" || state.quality === "too_bright";
    const there = state.quality !== "no_finger" && !wrong;
    if (there !== finger.there) Object.assign(finger, { there, since: now });
    const stood_s = (now - finger.since) / 1000;
    if (there && !finger.kept && !finger.spoilt && stood_s > STEADY_S) {
      finger.kept = true;
      this.lens?.steady(true);
    } else if (!there && finger.kept && stood_s > LOST_S) {
      finger.kept = false;
      finger.spoilt = wrong;
      this.lens?.steady(false);
    }
  }

  /** The camera goes off, with whatever is under way. */
  off() {
    clearInterval(this.timer);
    this.lens?.close();
    this.lens = null;
    this.place.replaceChildren();
    this.live?.free();
    this.live = null;
  }

  /** @param {Ending} how */
  finish(how) {
    if (this.state === "asking") how = "stopped";
    else if (this.state !== "waiting" && this.state !== "recording") return;
    const { kept } = this;
    const seconds = this.last - this.from;
    const focused = this.el.contains(document.activeElement);
    this.off();
    this.show("done");
    this.told.replaceChildren(h("p", {}, t(`own-ended-${how}`)));
    if (kept && seconds >= LEAST_S) this.sumUp(kept);
    else {
      kept?.free();
      this.kept = null;
      if (how !== "hidden") this.told.append(h("p", {}, t("own-ended_nothing")));
    }
    if (focused) (this.result.querySelector("button") ?? this.start).focus({ preventScroll: true });
  }

  /** @param {import('../desk.js').Fingertip} kept */
  sumUp(kept) {
    const whole = kept.whole();
    const parts = kept.windows(PART_S);
    const seconds = whole.to_s - whole.from_s;
    this.result.replaceChildren(
      figures([
        [t("own-rate"), whole.bpm === null ? t("own-rate_none") : rateText(whole.bpm, whole.uncertainty_bpm)],
        ...parts.map((part) => /** @type {const} */ ([t("own-part", { from: num(part.from_s, 0), to: num(part.to_s, 0) }), part.bpm === null ? coded("own-refused", part.refused ?? "unknown") : rateText(part.bpm)])),
      ]),
      whole.bpm === null ? h("p", {}, coded("own-refused", whole.refused ?? "unknown")) : h("p", { class: "quiet" }, t("own-uneven")),
      h("div", { class: "row" },
        button(t("own-open"), () => openAs(kept.recording(), t("own-file_camera")), { kind: "btn-strong", pic: "live" }),
        button(t("own-colors"), () => download(`${t("own-file_camera")}-colors.csv`, kept.csv(), "text/csv"), { pic: "save" })));
    attr(this.el, "data-rate", whole.bpm);
    say(whole.bpm === null ? coded("own-refused", whole.refused ?? "unknown") : rateText(whole.bpm, whole.uncertainty_bpm));
    if (whole.bpm !== null) this.measured({ way: "camera", seconds, rate: whole.bpm, off: whole.uncertainty_bpm });
  }

  /** @param {unknown} error */
  fail(error) {
    /** @type {LensFailure} */
    const code = error instanceof LensError ? error.code : "failed";
    this.show("failed");
    this.el.dataset.why = code;
    const told = error instanceof Error ? error.message : String(error);
    // Without what a course site has put into the address: the other tab begins no second visit.
    const away = framed() && (code === "policy" || code === "denied");
    this.told.replaceChildren(h("p", {}, t(`own-fail-${code}`, { told })), away ? h("a", { class: "btn", href: `${location.href.split(/[?#]/)[0]}#own`, target: "_blank", rel: "noopener" }, t("own-fail_tab")) : h("p", {}, t("own-fail_else")));
    this.start.focus({ preventScroll: true });
  }

  /** Another way is turned to: the camera is not left on behind it. */
  leave() {
    this.finish("stopped");
  }

  end() {
    this.off();
    this.show("ready");
    document.removeEventListener("visibilitychange", this.hidden);
    removeEventListener("pagehide", this.gone);
    this.strip.end();
    this.kept?.free();
    this.kept = null;
  }
}
