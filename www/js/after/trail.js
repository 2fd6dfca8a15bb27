// @ts-check
// The course of an attempt on a line of its own under the trace: a scratch for each thing that was done, in lanes by kind. Choosing
// one tells what it was and when. The same as a list for those who read rather than look.

import { attr, flag, h, prop, refill, style, words } from "../dom.js";
import { icon } from "../icons.js";
import { t } from "../text.js";
import { clockText } from "../trace/units.js";
import { deedText } from "./deeds.js";
/** @import { Session } from '../session.js' */
/** @import { TracePane } from '../trace/index.js' */
/** @import { Check, CourseEntry } from '../types/check' */

/** @type {Record<CourseEntry["what"], string>} */
const LANES = { wiring: "bench", strap: "bench", table: "bench", poke: "bench", subject: "bench", settings: "settings", record: "record", measure: "measure", answer: "measure", check: "check", hint: "check", help: "check" };
const ORDER = ["bench", "settings", "record", "measure", "check"];
const LEAST_S = 1.5, PAUSE_S = 8; // scratches stand apart at least so far; a longer pause is drawn short

export class Trail {
  /** @param {Session} session @param {TracePane} trace */
  constructor(session, trace) {
    this.session = session;
    this.trace = trace;
    /** @type {CourseEntry[]} */
    this.course = [];
    this.wrong = -1; // where it went wrong first
    this.at = -1;
    this.ticks = h("div", { class: "trail-ticks", role: "listbox", "aria-orientation": "horizontal", "aria-label": t("trail-title"), onkeydown: (event) => this.key(event) });
    this.lanes = h("div", { class: "trail-lanes", "aria-hidden": "true" }, ORDER.map((lane) => h("span", { class: "trail-lane" }, t(`trail-lane-${lane}`))));
    this.told = h("p", { class: "pencil trail-told", role: "status" });
    /** @param {number} by @param {string} key @param {string} pic */
    const step = (by, key, pic) => h("button", { type: "button", class: "btn btn-round", "aria-label": t(key), title: t(key), onclick: () => this.select(this.at + by) }, icon(pic));
    this.before = step(-1, "trail-before", "left");
    this.next = step(1, "trail-next", "right");
    this.toWrong = h("button", { type: "button", class: "btn btn-plain", onclick: () => this.select(this.wrong) }, t("trail-to_wrong"));
    this.list = h("ol", { class: "trail-list" });
    this.el = h("section", { class: "trail", "aria-labelledby": "trail-h" },
      h("div", { class: "trail-head" }, h("h3", { id: "trail-h" }, t("trail-title")), this.toWrong),
      h("div", { class: "trail-drum" }, this.lanes, this.ticks),
      h("div", { class: "trail-foot" }, this.before, this.told, this.next),
      h("p", { class: "quiet" }, t("trail-hint")),
      h("details", { class: "trail-as_list" }, h("summary", {}, t("trail-list")), this.list));
  }

  /** @param {Check} check */
  show({ course = [] }) {
    this.course = course;
    const changed = refill(this.ticks, course, () => this.marks(course));
    if (!changed) return;
    this.wrong = course.findIndex((entry) => entry.wrong);
    this.toWrong.hidden = this.wrong < 0;
    this.list.replaceChildren(...course.map((entry, i) => h("li", { class: entry.wrong ? "is-wrong" : "" }, h("button", { type: "button", class: "trail-line", onclick: () => this.select(i) }, h("span", { class: "trail-when" }, clockText(entry.t_s)), h("span", {}, this.words(entry))))));
    this.at = -1;
    this.mark(this.wrong >= 0 ? this.wrong : course.length - 1, { quiet: true });
  }

  /**
   * A scratch for each entry: by time, but never on one another, and with long pauses drawn short.
   * @param {CourseEntry[]} course
   */
  marks(course) {
    /** @param {number} gap */
    const drawn = (gap) => Math.max(LEAST_S, gap <= PAUSE_S ? gap : PAUSE_S + 2 * Math.log2(gap / PAUSE_S));
    const places = [0];
    for (let i = 1; i < course.length; i += 1) places.push(places[i - 1] + drawn(course[i].t_s - course[i - 1].t_s));
    const end = Math.max(60, places[places.length - 1]); // a short course keeps the scale of its scratches
    return course.map((entry, i) => {
      const lane = LANES[entry.what] ?? "bench";
      const el = h("div", { class: `trail-tick trail-tick-${entry.what}${entry.wrong ? " is-wrong" : ""}`, role: "option", tabindex: "-1", "aria-selected": "false",
        "aria-label": `${clockText(entry.t_s)}, ${this.words(entry)}`, onclick: () => this.select(i, { focus: true }) });
      style(el, "--at", `${((places[i] / end) * 100).toFixed(2)}%`);
      style(el, "--lane", String(ORDER.indexOf(lane)));
      return el;
    });
  }

  /** @param {CourseEntry} entry */
  words(entry) {
    const text = deedText(entry, this.session.view.display?.unit);
    return [entry.times > 1 ? t("trail-times", { text, n: entry.times }) : text, entry.wrong && t("trail-wrong", { step: t(`debrief-step-${entry.wrong}`) })].filter(Boolean).join(" ");
  }

  /**
   * Chooses an entry by its place in the course.
   * @param {number} i @param {{ focus?: boolean }} [how]
   */
  select(i, { focus = false } = {}) {
    this.mark(Math.max(0, Math.min(this.course.length - 1, i)), {});
    const entry = this.course[this.at];
    if (focus) /** @type {HTMLElement | undefined} */ (this.ticks.children[this.at])?.focus();
    if (typeof entry.at_recording_s === "number" && entry.recording === this.session.view.trace.recording) {
      this.trace.bringToSight(entry.at_recording_s, entry.at_recording_s);
      this.trace.spots.set("deed", { from_s: entry.at_recording_s, to_s: entry.at_recording_s });
    } else this.trace.spots.set("deed", null);
  }

  /** @param {number} at @param {{ quiet?: boolean }} how */
  mark(at, { quiet = false }) {
    this.at = at;
    [...this.ticks.children].forEach((el, i) => {
      attr(el, "aria-selected", String(i === at));
      attr(el, "tabindex", i === at ? "0" : "-1");
      flag(el, "is-here", i === at);
    });
    prop(this.before, "disabled", at <= 0);
    prop(this.next, "disabled", at >= this.course.length - 1);
    const entry = this.course[at];
    if (entry) words(this.told, `${clockText(entry.t_s)}  ${this.words(entry)}`);
    if (quiet) attr(this.told, "role", null);
    else attr(this.told, "role", "status");
  }

  /**
   * Shows an entry by the number of its last action in the log, and brings the line into sight.
   * @param {number} log
   */
  turnTo(log) {
    let at = this.course.findIndex((entry) => entry.log >= log);
    if (at < 0) at = this.course.length - 1;
    document.dispatchEvent(new CustomEvent("pane", { detail: "trace" }));
    this.select(at, { focus: true });
    this.el.scrollIntoView({ block: "center" });
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    /** @type {Record<string, number>} */
    const places = { ArrowRight: this.at + 1, ArrowDown: this.at + 1, ArrowLeft: this.at - 1, ArrowUp: this.at - 1, Home: 0, End: this.course.length - 1, PageDown: this.at + 10, PageUp: this.at - 10 };
    const to = places[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.select(to, { focus: true });
  }
}
