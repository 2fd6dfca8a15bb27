// @ts-check
// What the scenario asks of a reading, as a page beside the worksheet until the debrief takes its place.

import { h, prop, refill } from "../dom.js";
import { bringTexts, coded, num, t } from "../text.js";
/** @import { Task, View } from '../types/view' */

/** The page for an opened recording: there is nothing to tune, and nothing known. */
export const askedOfRecording = () => page([t("asked-long"), t("asked-count"), t("asked-work"), t("asked-compared")]);

/** @param {string[]} lines */
const page = (lines) => h("div", { class: "asked" }, h("h3", { class: "debrief-h" }, t("asked-title")), h("ol", { class: "asked-list" }, lines.map((line) => h("li", {}, line))));

/**
 * The page for a scenario's question, as the core says what it needs.
 * @param {Task} task
 */
export const askedPage = (task) => page(askedOf(task));

/** The same as lines. @param {Task} task */
export const askedOf = ({ needs }) => needs.map(({ code, args }) => t(`asked-${code}`, shown(args)));

/** @param {Record<string, number>} args */
const shown = (args) => Object.fromEntries(Object.entries(args).map(([key, value]) => [key, num(value, 1)]));

/** What this attempt is scored for, before it is checked: the rows of the rubric with their points. */
export class AskedPoints {
  constructor() {
    /** @type {View | null} */
    this.last = null;
    this.rows = h("div", { class: "asked-rows" });
    this.el = h("details", { class: "asked-points" }, h("summary", {}, t("asked-points")), h("p", { class: "quiet" }, t("asked-ready")), this.rows);
    this.worded = false;
    bringTexts("points").then(() => {
      this.worded = true;
      if (this.last) this.show(this.last);
    }, () => prop(this.el, "hidden", true));
    this.el.addEventListener("toggle", () => this.last && this.show(this.last));
  }

  /** @param {View} view */
  show(view) {
    this.last = view;
    const rows = view.asked.filter(({ points }) => points.length > 0);
    prop(this.el, "hidden", rows.length === 0);
    if (!this.el.open || !this.worded) return; // who opens it at once waits for its words
    refill(this.rows, rows, () => rows.map(({ row, points }) => h("div", {}, h("h4", {}, t(`rubric-${row}`), " ", h("span", { class: "quiet" }, t("asked-row", { n: points.length }))), h("ul", {}, points.map((code) => h("li", {}, coded("rubric-point", code)))))));
  }
}
