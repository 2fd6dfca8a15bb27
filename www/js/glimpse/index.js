// @ts-check
// What happens behind a door, in half a minute: five pictures on the drum of the first screen, drawn one after the other. They can be
// held, gone through one by one, and closed; where motion is not wanted, all five are there at once.

import { attr, flag, h, prop, words } from "../dom.js";
import { icon } from "../icons.js";
import { bringTexts, t } from "../text.js";
import { SCENES } from "./scenes.js";
import { Stage } from "./stage.js";

const EACH_S = 6;
const still = matchMedia("(prefers-reduced-motion: reduce)");

/** @param {string} key @param {string} pic @param {() => unknown} onclick */
const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn btn-plain glimpse-btn", onclick, "aria-label": t(key), title: t(key) }, icon(pic));

/**
 * Opens the picture of a door ("rehearse", "check", "assign") in `place`; closed(): what then. The element, its focus set.
 * @param {HTMLElement} place @param {string} door @param {() => unknown} closed
 */
export async function showGlimpse(place, door, closed) {
  await bringTexts("glimpse");
  const glimpse = new Glimpse(door, closed);
  place.replaceChildren(glimpse.el);
  glimpse.begin();
  return glimpse;
}

class Glimpse {
  /** @param {string} door @param {() => unknown} closed */
  constructor(door, closed) {
    const scenes = SCENES[door];
    this.whole = scenes.length * EACH_S;
    this.stages = scenes.map((draw, k) => {
      const stage = new Stage(k * EACH_S);
      draw(stage);
      return stage;
    });
    this.animations = this.stages.flatMap((stage) => stage.animations);
    this.scenes = this.stages.map((stage, k) => h("li", { class: "glimpse-scene" }, stage.el, h("p", { class: "glimpse-told" }, t(`glimpse-${door}-${k + 1}`))));
    this.place = h("span", { class: "glimpse-place", "aria-hidden": "true" });
    this.hold = tool("glimpse-hold", "hold", () => (this.running ? this.pause() : this.play()));
    /** @param {number} by */
    const turn = (by) => () => this.to(Math.min(scenes.length - 1, Math.max(0, this.at + by)));
    this.el = h("div", { class: "glimpse", role: "group", "aria-label": t("glimpse-title", { door: t(`way-${door}`) }), onkeydown: (event) => event.key === "Escape" && this.close() },
      h("ol", { class: "glimpse-scenes" }, this.scenes),
      h("div", { class: "glimpse-tools" }, this.hold, tool("glimpse-back", "left", turn(-1)), this.place, tool("glimpse-on", "right", turn(1)),
        h("button", { type: "button", class: "btn btn-plain glimpse-btn glimpse-close", onclick: () => this.close() }, icon("cross"), h("span", { class: "word" }, t("glimpse-close")))));
    this.closed = closed;
    this.last = 0;
    this.seconds = 0;
    this.running = false;
  }

  get at() {
    return Math.min(this.scenes.length - 1, Math.floor(this.seconds / EACH_S));
  }

  begin() {
    this.show(); // so that it has its height
    this.hold.focus({ preventScroll: true });
    this.el.scrollIntoView({ block: "center", behavior: still.matches ? "auto" : "smooth" });
    if (!still.matches) return this.play();
    this.seconds = this.whole;
    return this.pause();
  }

  play() {
    if (this.seconds >= this.whole) this.seconds = 0;
    this.running = true;
    this.last = performance.now();
    this.frame(this.last);
  }

  pause() {
    this.running = false;
    this.show();
  }

  /**
   * To the end of a picture where nothing runs, to its beginning where it does.
   * @param {number} k
   */
  to(k) {
    this.seconds = this.running ? k * EACH_S : (k + 1) * EACH_S - 0.01;
    this.show();
  }

  /** @param {number} now */
  frame(now) {
    if (!this.running || !this.el.isConnected) return;
    this.seconds = Math.min(this.whole, this.seconds + (now - this.last) / 1000);
    this.last = now;
    if (this.seconds >= this.whole) this.running = false;
    this.show();
    requestAnimationFrame((next) => this.frame(next));
  }

  show() {
    for (const animation of this.animations) animation.currentTime = 1000 * this.seconds;
    this.scenes.forEach((scene, k) => {
      flag(scene, "is-on", k === this.at);
      flag(scene, "is-to-come", k > this.at);
    });
    const key = this.running ? "glimpse-hold" : this.seconds >= this.whole ? "glimpse-again" : "glimpse-play";
    if (this.hold.getAttribute("aria-label") !== t(key)) {
      attr(this.hold, "aria-label", t(key));
      prop(this.hold, "title", t(key));
      this.hold.replaceChildren(icon({ "glimpse-hold": "hold", "glimpse-again": "again", "glimpse-play": "play" }[key]));
    }
    words(this.place, t("glimpse-place", { n: this.at + 1, of: this.scenes.length }));
  }

  close() {
    this.running = false;
    this.closed();
  }
}
