// @ts-check
// Counting in silence against a time that is not shown: begin with zero on a beat, stop when told, and work out the heart rate.

import { attr, h, newId, prop, say, words } from "../dom.js";
import { num, t } from "../text.js";
import { button } from "../widgets.js";
import { wristDrawing } from "./drawing.js";
import { figures, Length, rateText } from "./parts.js";
/** @import { Measured } from './attempts.js' */

const MOST_BEATS = 400; // in a minute: more than any heart
const TONE = { hz: 660, s: 0.35 };

/** A short tone, and a shake of a phone: eyes may be shut. The device decides whether either comes. */
class Signal {
  constructor() {
    /** @type {AudioContext | undefined} */
    this.audio = undefined;
  }

  /** From a press, as browsers ask. */
  ready() {
    if (window.AudioContext) this.audio ??= new AudioContext();
    this.audio?.resume().catch(() => {});
  }

  give() {
    navigator.vibrate?.(200);
    const { audio } = this;
    if (audio?.state !== "running") return;
    const tone = new OscillatorNode(audio, { frequency: TONE.hz }), loud = new GainNode(audio, { gain: 0.3 });
    loud.gain.setTargetAtTime(0, audio.currentTime + TONE.s * 0.6, 0.05);
    tone.connect(loud).connect(audio.destination);
    tone.start();
    tone.stop(audio.currentTime + TONE.s);
  }

  end() {
    this.audio?.close().catch(() => {});
    this.audio = undefined;
  }
}

export class CountWay {
  /** @param {Promise<typeof import('../desk.js')>} core @param {(one: Measured) => unknown} measured */
  constructor(core, measured) {
    this.core = core;
    this.measured = measured;
    this.signal = new Signal();
    this.timer = 0;
    this.length = new Length(() => this.begin());
    const id = newId("own-count"), problem = newId("own-problem");
    this.input = h("input", { id, class: "txt own-n", inputmode: "numeric", autocomplete: "off", maxlength: "4", "aria-describedby": problem });
    this.problem = h("p", { class: "problem", id: problem, role: "status" });
    this.big = h("p", { class: "own-big" });
    this.start = button(t("own-count_start"), () => this.go(), { kind: "btn-strong own-press" });
    this.stop = button(t("own-count_leave"), () => this.begin(true));
    this.form = h("form", { class: "own-form", onsubmit: (event) => {
      event.preventDefault();
      this.take();
    } }, h("div", { class: "fld" }, h("label", { for: id }, t("own-count_n")), this.input), h("button", { type: "submit", class: "btn btn-strong" }, t("own-count_take")), this.problem);
    this.result = h("div", { class: "own-result", role: "status" });
    this.dark = h("div", { class: "own-dark" }, this.big, h("div", { class: "row" }, this.start, this.stop), this.form);
    this.el = h("div", { class: "own-two" },
      h("div", { class: "own-how" }, h("h2", {}, t("own-count_title")), h("figure", { class: "own-figure" }, wristDrawing()), h("p", {}, t("own-count_how")), h("p", {}, t("own-count_why"))),
      h("div", { class: "own-do" }, this.length.el, this.dark, h("div", { class: "own-outcome", data: { told: t("own-outcome") } }, this.result)));
    this.begin();
  }

  /** @param {boolean} [focus] */
  begin(focus = false) {
    this.show("ready");
    words(this.big, t("own-count_ready"));
    if (focus) this.start.focus();
  }

  /** @param {"ready" | "counting" | "over"} state */
  show(state) {
    clearTimeout(this.timer);
    this.el.dataset.state = state;
    prop(this.start, "hidden", state !== "ready");
    prop(this.stop, "hidden", state !== "counting");
    prop(this.form, "hidden", state !== "over");
    this.length.able(state !== "counting");
  }

  go() {
    this.signal.ready();
    this.result.replaceChildren();
    this.show("counting");
    words(this.big, t("own-count_on"));
    this.stop.focus();
    this.timer = setTimeout(() => this.ring(), this.length.now * 1000);
  }

  ring() {
    this.show("over");
    this.signal.give();
    words(this.big, t("own-count_over"));
    say(t("own-count_over"));
    this.input.value = "";
    words(this.problem, "");
    attr(this.input, "aria-invalid", null);
    this.input.focus();
  }

  async take() {
    const text = this.input.value.trim();
    const n = Number(text);
    const bad = !/^\d{1,3}$/.test(text) || n > MOST_BEATS;
    words(this.problem, bad ? t("own-count_bad", { most: MOST_BEATS }) : "");
    attr(this.input, "aria-invalid", bad ? "true" : null);
    if (bad) return this.input.focus();
    const seconds = this.length.now;
    const { silentCount } = await this.core;
    const counted = silentCount(n, seconds);
    if (!counted) return undefined;
    const { rate_bpm: rate, step_bpm: step } = counted;
    this.begin(true);
    this.result.replaceChildren(figures([[t("own-rate"), rateText(rate, step)]]), h("p", {}, t("own-count_rate", { n, s: seconds, multiplier: num(60 / seconds), rate: num(rate, 0), step: num(step, 0) })));
    this.measured({ way: "count", seconds, rate, off: step });
    return undefined;
  }

  /** What runs is broken off. */
  leave() {
    if (this.el.dataset.state === "counting") this.begin();
  }

  end() {
    this.show("ready");
    this.signal.end();
  }
}
