// @ts-check
// Whether the grading is fair: many students with a right method, tried by the core a few at a time, and what share each way of
// grading would fail.

import { fairnessOf } from "../desk.js";
import { h, style, words } from "../dom.js";
import { num, t } from "../text.js";
/** @import { Fairness } from '../types/told' */

const STUDENTS = 400;
const SLICE = 8;
const AFTER_MS = 700;
const SHOWN_BPM = [2, 3, 4, 6];

export class Fair {
  constructor() {
    this.run = 0; // counts the scenarios that were shown: a run that is not the last ends
    /** @type {string | null} */
    this.toml = null;
    /** @type {Map<string | number, { bar: HTMLElement, value: HTMLElement }>} */
    this.rows = new Map();
    this.list = h("ul", { class: "fair" });
    for (const key of ["own", "exact", ...SHOWN_BPM]) this.list.append(this.row(key));
    this.note = h("p", { class: "quiet", role: "status" });
    this.el = h("section", { class: "fairness", "aria-labelledby": "fair-h" }, h("h2", { id: "fair-h" }, t("assign-fair")), h("p", { class: "quiet" }, t("assign-fair_about")), this.list, this.note);
  }

  /** @param {string | number} key */
  row(key) {
    const bar = h("span", { class: "fair-bar" }), value = h("output", { class: "fair-value" });
    const label = typeof key === "number" ? t("assign-fair_mean", { v: key }) : t(`assign-fair_${key}`);
    this.rows.set(key, { bar, value });
    return h("li", { class: `fair-row${key === "own" ? " is-ours" : ""}` }, h("span", { class: "fair-name" }, label), h("span", { class: "fair-track", "aria-hidden": "true" }, bar), value);
  }

  /**
   * Tries a scenario's text after a while without changes.
   * @param {string} toml
   */
  show(toml) {
    if (toml === this.toml) return;
    this.toml = toml;
    this.run += 1;
    clearTimeout(this.due);
    this.list.classList.add("is-stale");
    this.due = setTimeout(() => this.tryAll(toml, this.run), AFTER_MS);
  }

  /** @param {string} toml @param {number} run */
  async tryAll(toml, run) {
    /** @type {Fairness} */
    const sum = { students: 0, without: 0, own_window: 0, exact_count: 0, record_mean: [], tolerances: [] };
    while (sum.students < STUDENTS) {
      const part = fairnessOf(toml, 1 + sum.students, SLICE);
      if (part.students === 0) return;
      for (const name of /** @type {const} */ (["students", "without", "own_window", "exact_count"])) sum[name] += part[name];
      part.record_mean.forEach((n, k) => (sum.record_mean[k] = (sum.record_mean[k] ?? 0) + n));
      sum.tolerances = part.tolerances;
      if (sum.students % (SLICE * 5) === 0 || sum.students >= STUDENTS) this.tell(sum);
      await new Promise((next) => setTimeout(next)); // the page stays alive
      if (run !== this.run) return;
    }
  }

  /** @param {Fairness} sum */
  tell(sum) {
    this.list.classList.remove("is-stale");
    const of = sum.students - sum.without;
    /** @param {string | number} key @param {number} n */
    const put = (key, n) => {
      const share = of > 0 ? n / of : 0;
      const row = this.rows.get(key);
      if (!row) return;
      const { bar, value } = row;
      style(bar, "width", `${(share * 100).toFixed(1)}%`);
      words(value, of > 0 ? t("assign-percent", { v: num(share * 100, share < 0.1 ? 1 : 0) }) : "–");
    };
    put("own", sum.own_window);
    put("exact", sum.exact_count);
    for (const bpm of SHOWN_BPM) put(bpm, sum.record_mean[sum.tolerances.indexOf(bpm)] ?? 0);
    words(this.note, sum.without > 0 ? t("assign-fair_without", { n: sum.without, of: sum.students }) : t("assign-fair_done", { n: sum.students }));
    this.el.dataset.students = String(sum.students);
  }

  end() {
    clearTimeout(this.due);
    this.run += 1;
  }
}
