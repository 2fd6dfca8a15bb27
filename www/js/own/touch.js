// @ts-check
// The pulse by touch: where it is felt, and a tap with each beat, by key or on the screen. The taps stand on a trace as they come.

import { h, prop, say, words } from "../dom.js";
import { num, t } from "../text.js";
import { button } from "../widgets.js";
import { neckDrawing, wristDrawing } from "./drawing.js";
import { figures, Length, openAs, rateText } from "./parts.js";
import { Strip } from "./strip.js";
/** @import { Measured } from './attempts.js' */

const SPACE = [" ", "Enter"];
const calmer = matchMedia("(prefers-reduced-motion: reduce)");
const FEWEST = 3; // taps: with two there is no spread, so nothing tells how far they may be off

export class TouchWay {
  /** @param {Promise<typeof import('../desk.js')>} core @param {(one: Measured) => unknown} measured */
  constructor(core, measured) {
    this.core = core;
    this.measured = measured;
    /** @type {import('../desk.js').TapRhythm | null} */
    this.rhythm = null;
    /** @type {number[]} */
    this.taps = []; // s from the first one
    this.began = 0; // when that was, ms of the page's clock
    this.running = false;
    this.ended = 0; // s from the first tap to where the trace ends
    this.strip = new Strip();
    this.length = new Length(() => this.clear());
    this.told = h("p", { class: "own-told" });
    this.word = h("span", { class: "word" }, t("own-tap"));
    // What happens is taken where it happens: a finger or a key that goes down, not a click that comes when it goes up.
    this.button = h("button", { type: "button", class: "btn btn-strong own-tap", "aria-describedby": "own-tap-told",
      onpointerdown: (event) => {
        if (event.button !== 0) return;
        this.pressed = event.timeStamp;
        this.tap(event.timeStamp);
      },
      onkeydown: (event) => {
        if (!SPACE.includes(event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        if (!event.repeat) this.tap(event.timeStamp);
      },
      onkeyup: (event) => event.key === " " && event.preventDefault(),
      onclick: (event) => event.detail === 0 && this.tap(event.timeStamp), // a reader of the screen presses without a pointer
    }, this.word);
    this.told.id = "own-tap-told";
    this.back = button(t("own-undo"), () => this.undo(), { pic: "undo" });
    this.stop = button(t("own-stop"), () => this.finish(), { pic: "stop" });
    this.result = h("div", { class: "own-result", role: "status" });
    this.el = h("div", { class: "own-two" },
      h("div", { class: "own-how" }, h("h2", {}, t("own-touch_title")),
        h("div", { class: "own-places" },
          h("figure", { class: "own-figure" }, wristDrawing(), h("figcaption", {}, h("b", {}, t("own-wrist")), " ", t("own-wrist.how"))),
          h("figure", { class: "own-figure" }, neckDrawing(), h("figcaption", {}, h("b", {}, t("own-neck")), " ", t("own-neck.how")))),
        h("ul", { class: "own-rules" }, ["fingers", "hand", "dizzy"].map((one) => h("li", {}, t(`own-touch_${one}`))))),
      h("div", { class: "own-do" }, this.length.el, this.strip.el, this.told, this.button, h("div", { class: "row own-keys" }, this.back, this.stop), h("div", { class: "own-outcome", data: { told: t("own-outcome") } }, this.result)));
    this.clear();
  }

  clear() {
    this.running = false;
    this.taps = [];
    this.ended = 0;
    this.rhythm?.free();
    this.rhythm = null;
    this.coming = this.core.then(({ TapRhythm }) => (this.rhythm = new TapRhythm()));
    this.coming.catch(() => {}); // told where it is waited for
    this.show();
  }

  show() {
    const { taps, running } = this;
    const seconds = this.length.now;
    this.el.dataset.state = running ? "tapping" : "ready";
    this.el.dataset.taps = String(taps.length);
    words(this.word, t(running ? "own-tap" : "own-tap_first"));
    prop(this.back, "hidden", !running);
    prop(this.stop, "hidden", !running);
    this.length.able(!running);
    const now = this.elapsed();
    words(this.told, running ? t("own-tap_count", { n: taps.length, s: num(Math.floor(now), 0), of: seconds }) : t("own-tap_starts", { s: seconds }));
    this.strip.draw({ from: -0.5, to: seconds + 0.5, step: seconds > 30 ? 10 : 5, taps, now: running ? now : this.ended });
  }

  elapsed() {
    return this.running ? Math.min((performance.now() - this.began) / 1000, this.length.now) : 0;
  }

  /** @param {number} at When, ms of the page's clock. */
  tap(at) {
    if (!this.running) {
      this.clear();
      this.result.replaceChildren();
      this.began = at;
      this.running = true;
      this.run();
    }
    const s = (at - this.began) / 1000;
    if (s > this.length.now) return;
    this.taps.push(s);
    this.show();
  }

  undo() {
    this.taps.pop();
    if (this.taps.length > 0) return this.show();
    this.running = false;
    this.clear();
    return this.button.focus();
  }

  /** Runs on while taps are waited for. */
  run() {
    const began = this.began;
    let second = 0;
    const step = () => {
      if (!this.running || this.began !== began) return;
      if (this.elapsed() >= this.length.now) return void this.finish();
      // Where motion is not wanted the trace goes on by seconds.
      if (!calmer.matches || Math.floor(this.elapsed()) !== second) this.show();
      second = Math.floor(this.elapsed());
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }

  async finish() {
    if (!this.running) return;
    this.ended = this.elapsed();
    this.running = false;
    this.show();
    const rhythm = await this.coming;
    if (!rhythm) return;
    for (const tap of this.taps) rhythm.tap(tap);
    const sum = rhythm.sum();
    if (sum.rate_bpm === null || sum.mean_ms === null || sum.n < FEWEST) {
      this.result.replaceChildren(h("p", {}, t("own-tap_few")));
      return;
    }
    const lasted = this.taps[this.taps.length - 1] - this.taps[0];
    this.result.replaceChildren(
      figures([
        [t("own-rate"), rateText(sum.rate_bpm, sum.uncertainty_bpm)],
        [t("own-tap_n"), t("own-tap_of", { n: sum.n, intervals: sum.n - 1, s: num(lasted, 1) })],
        [t("own-interval"), t("own-interval_ms", { ms: num(sum.mean_ms, 0), sd: num(sum.sd_ms ?? 0, 0) })],
      ]),
      h("p", {}, [t("own-off_why"), sum.missed > 0 && t("own-tap_missed", { n: sum.missed }), sum.doubled > 0 && t("own-tap_doubled", { n: sum.doubled })].filter(Boolean).join(" ")),
      h("p", { class: "quiet" }, t("own-uneven")),
      h("div", { class: "row" }, button(t("own-open"), () => this.open(rhythm), { kind: "btn-strong", pic: "live" })));
    say(rateText(sum.rate_bpm, sum.uncertainty_bpm));
    this.measured({ way: "touch", seconds: lasted, rate: sum.rate_bpm, off: sum.uncertainty_bpm });
  }

  /** @param {import('../desk.js').TapRhythm} rhythm */
  open(rhythm) {
    const csv = rhythm.recording();
    if (csv) openAs(csv, t("own-file_touch"));
  }

  /** What runs is broken off. */
  leave() {
    if (this.running) this.clear();
  }

  end() {
    this.running = false;
    this.strip.end();
    this.rhythm?.free();
    this.rhythm = null;
  }
}
