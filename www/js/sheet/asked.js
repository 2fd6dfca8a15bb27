// @ts-check
// What the scenario asks of a reading, as a page beside the worksheet until the debrief takes its place.

import { h, prop, refill } from "../dom.js";
import { bringTexts, coded, num, t } from "../text.js";
/** @import { TaskKind } from '../types/names' */
/** @import { Criteria, Task, View } from '../types/view' */

/** The page for an opened recording: there is nothing to tune, and nothing known. */
export const askedOfRecording = () => page([t("asked-long"), t("asked-count"), t("asked-work"), t("asked-compared")]);

/** @param {string[]} lines */
const page = (lines) => h("div", { class: "asked" }, h("h3", { class: "debrief-h" }, t("asked-title")), h("ol", { class: "asked-list" }, lines.map((line) => h("li", {}, line))));

/**
 * The page for a scenario's criteria (shares as 0..1, times in s) and its kind of question.
 * @param {Criteria} criteria @param {Task} task
 */
export function askedPage({ record_s: record, window_s: window, fill_min: low, fill_max: high, hum_ratio: hum }, task) {
  if (task.kind === "name_fault") return page([t("asked-name_test"), t("asked-name_all"), t("asked-name_one")]);
  /** @param {number} share */
  const percent = (share) => num(share * 100, 0);
  const trace = [t("asked-fill", { low: percent(low), high: percent(high) }), t("asked-hum", { hum: percent(hum) }), t("asked-clip")];
  if (task.kind === "clean_stretch") return page([t("asked-window", { s: window }), t("asked-clean")]);
  if (task.kind === "read_range") return page([t("asked-range"), t("asked-foot_peak"), t("asked-amplitude")]);
  const long = t("asked-record", { s: record });
  /** @type {Partial<Record<TaskKind, string[]>>} */
  const kinds = {
    given_window: [t("asked-given", { s: num(task.seconds ?? 0, 1) }), t("asked-count"), t("asked-work")],
    intervals: [t("asked-intervals", { n: task.n }), t("asked-feature"), t("asked-intervals_work")],
    irregular: [t("asked-window", { s: num(task.at_least_s ?? 0, 1) }), t("asked-count"), t("asked-work")],
    after_exercise: [t("asked-short", { s: window, longest: num(task.longest_s ?? 0, 1) }), t("asked-within", { s: num(task.within_s ?? 0, 0) }), t("asked-count"), t("asked-work")],
    compare: [t("asked-two"), t("asked-count"), t("asked-uncertainty")],
  };
  return page([...trace, long, ...(kinds[task.kind] ?? [t("asked-window", { s: window }), t("asked-count"), t("asked-work")])]);
}

/** What this attempt is scored for, before it is checked: the rows of the rubric with their points. */
export class AskedPoints {
  constructor() {
    /** @type {View | null} */
    this.last = null;
    this.rows = h("div", { class: "asked-rows" });
    this.el = h("details", { class: "asked-points" }, h("summary", {}, t("asked-points")), h("p", { class: "quiet" }, t("asked-ready")), this.rows);
    bringTexts("points").then(() => this.last && this.show(this.last), () => prop(this.el, "hidden", true));
    this.el.addEventListener("toggle", () => this.last && this.show(this.last));
  }

  /** @param {View} view */
  show(view) {
    this.last = view;
    const rows = view.asked.filter(({ points }) => points.length > 0);
    prop(this.el, "hidden", rows.length === 0);
    if (!this.el.open) return;
    refill(this.rows, rows, () => rows.map(({ row, points }) => h("div", {}, h("h4", {}, t(`rubric-${row}`), " ", h("span", { class: "quiet" }, t("asked-row", { n: points.length }))), h("ul", {}, points.map((code) => h("li", {}, coded("rubric-point", code)))))));
  }
}
