// @ts-check
// What is behind a door, in half a minute: the page itself in a frame, doing what it does there. It can be paused, gone through step
// by step, and closed; where motion is not wanted it stands still and is gone through.

import { attr, flag, h, prop, style, words } from "../dom.js";
import { icon } from "../icons.js";
import { watchRoute } from "../route.js";
import { bringTexts, t } from "../text.js";
import { relabel } from "../widgets.js";
import { fit } from "./frame.js";
import { TourFilm } from "./tour.js";
import { WorkedFilm } from "./worked.js";

const MOST_S = 30;
const AIR_PX = 20; // above and below the dialog, together
const still = matchMedia("(prefers-reduced-motion: reduce)");

/** @param {string} key @param {string} pic @param {() => unknown} onclick */
const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn", onclick }, icon(pic), h("span", { class: "word" }, t(key)));

/**
 * Shows the preview of a door. scenario: whose worked example it is; null for the instructor's screen. go: where one begins in earnest.
 * @param {string} door @param {string | null} scenario @param {HTMLElement} go
 */
export async function showGlimpse(door, scenario, go) {
  await bringTexts("glimpse");
  return new Glimpse(door, scenario, go);
}

class Glimpse {
  /** @param {string} door @param {string | null} scenario @param {HTMLElement} go */
  constructor(door, scenario, go) {
    const title = t("glimpse-title", { door: t(`way-${door}`) });
    /** @type {HTMLIFrameElement} */
    this.frame = h("iframe", { class: "glimpse-frame", title, tabindex: "-1", inert: true, src: `?preview${scenario === null ? "#assign" : watchRoute(scenario)}` });
    this.film = scenario === null ? new TourFilm(this.frame, still.matches) : new WorkedFilm(this.frame);
    this.box = h("div", { class: "glimpse-box", "aria-hidden": "true" }, this.frame);
    this.done = h("i", {});
    this.told = h("p", { class: "glimpse-told" });
    this.why = h("p", { class: "glimpse-why" });
    this.hold = tool("glimpse-hold", "hold", () => this.turn());
    this.next = tool("glimpse-next", "next", () => this.step());
    go.addEventListener("click", () => this.el.close());
    /** @type {HTMLDialogElement} */
    this.el = h("dialog", { class: "glimpse", "aria-labelledby": "glimpse-h" },
      h("div", { class: "glimpse-head" }, h("h2", { id: "glimpse-h" }, title), tool("glimpse-close", "cross", () => this.el.close())),
      this.box, h("div", { class: "glimpse-way", "aria-hidden": "true" }, this.done), h("div", { class: "glimpse-words", role: "status" }, this.told, this.why),
      h("div", { class: "row glimpse-tools" }, this.hold, this.next, go));
    this.running = !still.matches;
    this.began = false;
    this.seconds = 0;
    this.last = performance.now();
    const left = () => this.el.close();
    const sized = () => fit(this.box, this.el.scrollHeight - this.box.offsetHeight + AIR_PX);
    addEventListener("hashchange", left);
    addEventListener("resize", sized);
    this.el.addEventListener("close", () => {
      removeEventListener("hashchange", left);
      removeEventListener("resize", sized);
      this.el.remove();
    });
    fit(this.box, innerHeight); // as small as it can be, to see how high the rest is
    document.body.append(this.el);
    this.el.showModal();
    sized();
    this.hold.focus();
    this.follow(this.last);
  }

  /** Pause, go on, or once more. */
  turn() {
    if (this.film.ended) return this.again();
    this.running = !this.running;
    if (this.began) this.film.play(this.running);
  }

  again() {
    this.began = false;
    this.seconds = 0;
    this.running = !still.matches;
    this.frame.contentWindow?.location.reload();
  }

  step() {
    if (this.began && !this.film.ended) this.film.next();
  }

  /**
   * One frame of the browser: what the page in the frame has come to.
   * @param {number} now
   */
  follow(now) {
    if (!this.el.isConnected) return;
    const dt = (now - this.last) / 1000;
    this.last = now;
    if (this.began) {
      if (this.running) this.seconds += dt;
      for (let k = 0; this.seconds > MOST_S && !this.film.ended && k < 500; k += 1) this.film.next(); // a slow computer does not make it long
      this.show();
    } else if (this.film.ready) {
      this.began = true;
      this.film.begin();
      if (!this.running) this.film.play(false);
    }
    requestAnimationFrame((next) => this.follow(next));
  }

  show() {
    const { told, why, done } = this.film.told();
    const { ended } = this.film;
    words(this.told, told);
    words(this.why, ended ? "" : why);
    style(this.done, "--done", String(ended ? 1 : done));
    const [key, pic] = ended ? ["glimpse-again", "again"] : this.running ? ["glimpse-hold", "hold"] : ["glimpse-play", "play"];
    if (this.hold.dataset.now !== key) {
      attr(this.hold, "data-now", key);
      relabel(this.hold, t(key));
      this.hold.firstChild?.replaceWith(icon(pic));
    }
    prop(this.next, "disabled", ended);
    flag(this.el, "is-ended", ended);
  }
}
