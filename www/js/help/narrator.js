// @ts-check
// The worked example plays itself on the real bench: the core does the next step, the narrator says what and why, at a reader's pace.

import { deedText } from "../after/deeds.js";
import { attr, flag, h, prop, style, words } from "../dom.js";
import { icon } from "../icons.js";
import { bringTexts, coded, t } from "../text.js";
import { clockText } from "../trace/units.js";
import { relabel } from "../widgets.js";
import { showView } from "../views.js";
import { placeOf } from "./places.js";
/** @import { Session } from '../session.js' */
/** @import { SheetPane } from '../sheet/index.js' */
/** @import { TracePane } from '../trace/index.js' */
/** @import { Action } from '../types/action' */
/** @import { WorkedStep } from '../types/told' */

const MOST_STEP_S = 0.25;
const READ_S = 1.4, READ_S_PER_LETTER = 0.045, BRIEF_S = 0.8; // a sentence takes time; a step like the one before takes less
const SPEEDS = [1, 3, 8];
const STILL = matchMedia("(prefers-reduced-motion: reduce)");

/**
 * Brings what the narrator needs, and makes one. stop(): leaves the example for a try of one's own.
 * @param {HTMLElement} root @param {Session} session @param {NarratorWays} ways
 */
export async function makeNarrator(root, session, ways) {
  await Promise.all(["worked", "stages", "after", "faults"].map(bringTexts));
  return new Narrator(root, session, ways);
}

/** @typedef {{ trace: TracePane, sheet: SheetPane, stop: () => unknown }} NarratorWays */

class Narrator {
  /** @param {HTMLElement} root @param {Session} session @param {NarratorWays} ways */
  constructor(root, session, { trace, sheet, stop }) {
    this.root = root;
    this.session = session;
    this.trace = trace;
    this.sheet = sheet;
    this.ended = false;
    /** @type {Element | null} */
    this.pointed = null; // what is ringed
    this.playing = !STILL.matches;
    this.speed = 0;
    this.wait = 0;
    this.dwell = 1.2;
    /** @type {string | null} */
    this.code = null;
    /** @type {number | null} */
    this.of = null;
    this.deed = h("p", { class: "narrator-deed" });
    this.why = h("p", { class: "pencil narrator-why" });
    this.told = h("div", { class: "narrator-told", role: "status" }, this.deed, this.why);
    this.done = h("i", {});
    this.way = h("div", { class: "narrator-way", "aria-hidden": "true" }, this.done);
    /** @param {string} key @param {string} pic @param {() => unknown} onclick */
    const tool = (key, pic, onclick) => h("button", { type: "button", class: "btn", data: { tool: key }, onclick }, icon(pic), h("span", { class: "word" }, t(key)));
    this.pause = tool("narrator-pause", "hold", () => this.turn(!this.playing));
    this.step = tool("narrator-next", "next", () => this.forward());
    this.faster = tool("narrator-faster", "faster", () => this.setSpeed((this.speed + 1) % SPEEDS.length));
    this.leave = tool("narrator-stop", "again", stop);
    root.replaceChildren(this.told, h("div", { class: "row narrator-row" }, this.pause, this.step, this.faster, this.leave), this.way);
    attr(root, "aria-label", t("narrator-title"));
    root.hidden = false;
    words(this.deed, t("narrator-begin"));
    this.turn(this.playing);
  }

  /** @param {boolean} on */
  turn(on) {
    this.playing = on;
    attr(this.pause, "data-on", String(on));
    relabel(this.pause, t(on ? "narrator-pause" : "narrator-go_on"));
    this.pause.firstChild?.replaceWith(icon(on ? "hold" : "play"));
    if (on) this.trace.startLoop();
  }

  /** @param {number} speed */
  setSpeed(speed) {
    this.speed = speed;
    relabel(this.faster, speed === 0 ? t("narrator-faster") : t("narrator-speed", { n: SPEEDS[speed] }));
  }

  /**
   * One frame of the page.
   * @param {number} dt
   */
  frame(dt) {
    if (!this.playing || this.ended) return;
    let left = dt * SPEEDS[this.speed];
    if (this.wait > 0) {
      this.wait -= left;
      for (; left > 0; left -= MOST_STEP_S) this.session.bench.advance(Math.min(left, MOST_STEP_S));
      words(this.deed, t("worked-waiting", { s: clockText(Math.max(0, this.wait)) }));
      if (this.wait <= 0) this.forward();
    } else if ((this.dwell -= left) <= 0) this.forward();
  }

  /** The next step; what was missing of a wait is run by the core. */
  forward() {
    if (this.ended) return;
    const next = this.session.bench.workedNext();
    this.session.refresh();
    if (!next) return this.end();
    this.of ??= next.remaining + 1;
    style(this.done, "--done", String(1 - next.remaining / this.of));
    this.tell(next);
    this.wait = next.action ? 0 : (next.wait_s ?? 0);
    const same = next.code === this.code;
    this.code = next.code;
    this.dwell = same ? BRIEF_S : READ_S + READ_S_PER_LETTER * this.why.textContent.length;
    return undefined;
  }

  /** @param {WorkedStep} step */
  tell({ action, code, args, wait_s: wait }) {
    words(this.deed, action ? deedText({ do: action.do, args: { ...action } }) : t("worked-waiting", { s: clockText(wait ?? 0) }));
    if (action || !this.why.textContent) words(this.why, coded("worked", code, args)); // a wait goes on with what was told
    if (action) this.point(action);
  }

  /**
   * Brings the place of an action into sight and rings it.
   * @param {Action} action
   */
  point(action) {
    const { view, find } = placeOf(action);
    if (view) showView(view);
    const el = find ? document.querySelector(find) : null;
    if (this.pointed) flag(this.pointed, "is-told", false);
    this.pointed = el;
    if (!el) return;
    flag(el, "is-told", true);
    const box = el.getBoundingClientRect(), top = this.root.getBoundingClientRect().bottom;
    if (box.top < top || box.bottom > innerHeight - 20) {
      el.scrollIntoView({ block: "center", behavior: STILL.matches ? "auto" : "smooth" });
    }
  }

  end() {
    this.ended = true;
    if (this.pointed) flag(this.pointed, "is-told", false);
    for (const one of [this.pause, this.step, this.faster]) one.hidden = true;
    words(this.deed, t("narrator-ended"));
    words(this.why, t("narrator-ended_why"));
    relabel(this.leave, t("narrator-now_you"));
    flag(this.leave, "btn-strong", true);
    style(this.done, "--done", "1");
    prop(this.root, "hidden", false);
    showView("result");
  }
}
