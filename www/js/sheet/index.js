// @ts-check
// The worksheet: a notebook page with the blanks of the question that is put, a check, and beside it the debrief.

import { askWhether } from "../ask.js";
import { paneOf } from "../deeds.js";
import { flag, h, newId, prop, words } from "../dom.js";
import { t } from "../text.js";
import { timeText } from "../trace/units.js";
import { button, relabel } from "../widgets.js";
import { refusalText } from "../bench/index.js";
import { Naming } from "../faults/naming.js";
import { AskedPoints, askedOfRecording, askedPage } from "./asked.js";
import { Blank } from "./blank.js";
import { Debrief } from "./debrief.js";
import { asItStood, Earlier } from "./earlier.js";
import { FirstWindow } from "./first_window.js";
import { aboutKey, blanksOf, lineKey, taskLine, taskOf } from "./task.js";
/** @import { Session } from '../session.js' */
/** @import { Action } from '../types/action' */
/** @import { View } from '../types/view' */

/** What is refused beside its own control. @type {Set<Action["do"]>} */
const ELSEWHERE = new Set(["name", "predict", "conclude", "add_row", "row_note", "remove_row"]);

export class SheetPane {
  /**
   * places: the row of blanks, what is asked, the naming, the result. settle(): puts cursors still in the hand to the core; again(): opens
   * a new seed; judged(): a check was made, and the result is to be seen; another(): another window of an opened recording is read.
   * @param {{ row: HTMLElement, brief: HTMLElement, name: HTMLElement, result: HTMLElement }} places @param {Session} session
   * @param {{ settle: () => void, again: () => unknown, judged: () => unknown, another: () => unknown }} ways
   */
  constructor({ row, brief, name, result }, session, { settle, again, judged, another }) {
    this.session = session;
    this.judged = judged;
    this.settle = settle;
    this.recording = session.bench.kind === "recording";
    const task = (this.task = taskOf(session.view));
    /** @type {Blank[]} */
    this.blanks = blanksOf(task).map((field) => new Blank(field, lineKey(field, task.kind), session, { done: () => this.goOn(), optional: task.optional.includes(field) }));
    const naming = task.reads === "nothing";
    this.check = button("", () => this.judge(), { kind: "btn-strong" });
    this.reveal = button(t(this.recording ? "sheet-reveal_recording" : naming ? "sheet-reveal_faults" : "sheet-reveal"), () => this.doReveal());
    this.again = button(t("sheet-again"), again, { pic: "again" });
    // Beside the result, and in the place of the check when that is closed.
    this.others = this.recording ? [0, 1].map(() => button(t("sheet-another"), () => this.goOnTo(another))) : [];
    this.earlier = this.recording ? new Earlier() : null;
    this.note = h("p", { class: "pencil sheet-note", role: "status" });
    this.debrief = new Debrief(session.view);
    this.naming = session.view.scenario?.name_faults ? new Naming(session) : null;
    // Said beside what is asked: the time of the middle is reckoned from it.
    this.after = h("p", { class: "pencil measure-after", hidden: true });
    this.first = task.windows === 2 ? new FirstWindow(session, () => this.keepWindow()) : null;
    const criteria = session.view.scenario?.pass;
    this.asked = criteria ? askedPage(task) : askedOfRecording();
    this.points = criteria ? new AskedPoints() : null;
    if (this.points) this.asked.append(this.points.el);
    const doing = h("div", { class: "page-do" }, this.check, this.others[1], this.note);
    this.first?.el.append(doing); // with two windows it stands in the row of what is kept of them
    row.replaceChildren(h("div", { class: "page" }, h("h2", { id: "sheet-h", class: "vh" }, t("sheet-title")),
      h("div", { class: "page-asked" }, taskLine(task, criteria), this.howMiddle(), this.after), this.lines(), !this.first && doing));
    brief.append(h("p", { class: "quiet" }, t(this.recording ? "sheet-about_recording" : aboutKey(task.kind))), this.asked);
    name.replaceChildren(...(this.naming ? [this.naming.el] : []));
    result.replaceChildren(h("h2", { id: "result-h", class: "vh" }, t("view-result")), h("div", { class: "row result-ways" }, this.others[0], task.reads !== "stretch" && this.reveal), this.debrief.el);
    if (this.earlier) brief.append(this.earlier.el);
    this.ways = { before: brief.appendChild(h("div", { class: "row" })), after: /** @type {HTMLElement} */ (result.querySelector(".result-ways")) };
    session.onView((view) => this.show(view));
    session.onDeed((action) => action.do === "conclude" && words(this.note, "")); // the check waited for it
    session.onRefusal((code, args, action) => paneOf(action.do) === "sheet" && !ELSEWHERE.has(action.do) && words(this.note, this.recording && code === "attempt_over" ? t("sheet-window_over") : refusalText(code, args)));
  }

  /** Another window of an opened recording; the result of this one stays where it can be read. @param {() => unknown} another */
  goOnTo(another) {
    const { cursors } = this.session.view;
    const result = asItStood(this.debrief.el);
    words(this.note, "");
    if (!this.session.act({ do: "another_window" })) return;
    this.earlier?.keep(cursors, result);
    another();
  }

  /** The blanks; where two windows are compared, those of each under a head of its own. */
  lines() {
    if (this.blanks.length === 0) return null;
    /** @param {Blank[]} blanks @param {string} [labelled] */
    const list = (blanks, labelled) => h("ol", { class: "blanks", "aria-labelledby": labelled }, blanks.map((one) => one.el));
    if (!this.first) return list(this.blanks);
    /** @param {boolean} first */
    const of = (first) => this.blanks.filter(({ field }) => field.endsWith("_1") === first);
    /** @param {number} n @param {string} id */
    const head = (n, id) => h("h3", { class: "window-h", id }, t("sheet-window_n", { n }));
    const ids = [newId("window"), newId("window")];
    return h("div", { class: "two-windows" }, h("div", {}, head(1, ids[0]), list(of(true), ids[0])), h("div", {}, head(2, ids[1]), list(of(false), ids[1])), this.first.el);
  }

  /** After exercise: how to find the time of the middle. */
  howMiddle() {
    return this.task.fields.includes("middle") && h("details", { class: "how" }, h("summary", {}, t("sheet-middle_how")), h("p", { class: "quiet" }, t("sheet-middle_text")));
  }

  put() {
    this.settle();
    for (const blank of this.blanks) blank.put();
  }

  /**
   * From a blank with Enter: to the next that must be filled and is not, so that a check is never spent on half a reading; then to the way
   * to keep the first window, where there are two; then the check.
   */
  goOn() {
    this.put();
    const open = this.blanks.find(({ optional, input }) => !optional && input.value.trim() === "");
    if (this.first && !this.session.view.cursors.kept && !open?.field.endsWith("_1")) return this.first.keep.focus();
    return open ? open.input.focus() : this.judge();
  }

  keepWindow() {
    words(this.note, "");
    this.put();
    this.session.act({ do: "keep_window" });
  }

  /** The last check closes the attempt; that is asked first. */
  async judge() {
    words(this.note, "");
    this.put();
    const { checks } = this.session.view;
    if (!this.recording && checks.done + 1 === checks.most && !(await askWhether("close"))) return;
    if (this.session.ended) return;
    if (this.session.act({ do: "check" })) this.tellResult();
  }

  tellResult() {
    this.judged();
    this.debrief.focus();
  }

  async doReveal() {
    words(this.note, "");
    this.put();
    if (!this.recording && !(await askWhether("reveal"))) return undefined;
    if (!this.session.ended && this.session.act({ do: "reveal" })) this.tellResult();
    return undefined;
  }

  /** @param {View} view */
  show(view) {
    const over = Boolean(view.check?.over);
    for (const blank of this.blanks) blank.show(view);
    for (const one of [this.check, this.reveal]) prop(one, "disabled", over);
    flag(this.again, "btn-strong", over);
    this.others.forEach((one, i) => {
      one.hidden = i === 0 ? !view.check : !over;
      flag(one, "btn-strong", over);
    });
    this.check.hidden = this.recording && over;
    const named = this.naming && this.task.reads === "nothing";
    const which = { n: Math.min(view.checks.done + 1, view.checks.most), of: view.checks.most };
    relabel(this.check, over ? t(named ? "sheet-check_names_over" : "sheet-check_over") : t(named ? "sheet-check_names" : "sheet-check", which));
    const after = view.recordings.find((one) => one.recording === view.trace.recording)?.after_s;
    this.after.hidden = typeof after !== "number";
    if (typeof after === "number") words(this.after, t("measure-after", { s: timeText(after) }));
    this.points?.show(view);
    this.naming?.show(view);
    this.first?.show(view);
    this.debrief.show(view);
    this.reveal.hidden = !view.check; // the other rate is an answer to one's own
    const way = view.check ? this.ways.after : this.ways.before;
    if (!this.recording && this.again.parentElement !== way) way.append(this.again);
  }
}
