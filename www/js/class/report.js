// @ts-check
// The report on a class: who is ready, faults that stayed, misreadings, steps, skills, time. All counting is the core's.

import { h, style } from "../dom.js";
import { has, listed, num, t } from "../text.js";
import { button } from "../widgets.js";
/** @import { FaultBook, Kid } from '../types/page' */
/** @import { ClassSummary } from '../types/told' */
/** @import { ClassState } from './index.js' */

/** @param {string} prefix @param {string} id */
const named = (prefix, id) => (has(`${prefix}-${id}`) ? t(`${prefix}-${id}`) : id.replaceAll("_", " "));

const NONE = "–";

/** @typedef {[string, number, number]} Bar */

/**
 * The parts of a summary. state: {results, names}; look(k): opens the k-th result.
 * @param {ClassSummary} summary @param {ClassState} state @param {FaultBook} faults @param {(k: number) => unknown} look
 * @returns {Node[]}
 */
export function report(summary, state, faults, look) {
  /** @param {string} id */
  const faultName = (id) => faults.of(id)?.name ?? id;
  const ready = summary.students.filter((one) => one.ready).length;
  const tiles = h("dl", { class: "tiles" },
    tile(t("class-tile_ready"), t("class-of", { n: ready, of: summary.students.length })),
    summary.minutes && tile(t("class-tile_minutes"), t("class-minutes", { v: num(summary.minutes[1], 0) }), t("class-minutes_between", { low: num(summary.minutes[0], 0), high: num(summary.minutes[2], 0) })),
    tile(t("class-tile_results"), num(summary.results)), tile(t("class-tile_doubtful"), num(summary.doubtful)));
  const notes = [
    summary.not_compared > 0 && t("class-not_compared", { n: summary.not_compared }),
    ...summary.several.map(([name, n]) => t("class-several", { name, n })),
    summary.again > 0 && t("class-again", { n: summary.again }),
    summary.turned > 0 && t("class-turned", { n: summary.turned }),
  ].filter((note) => typeof note === "string");
  return [tiles, ...notes.map((note) => h("p", { class: "quiet class-note" }, note)), h("div", { class: "class-two" }, students(summary, state, faultName, look),
    h("div", { class: "class-side" },
      bars("faults", summary.faults.map(({ id, left, met }) => /** @type {Bar} */ ([faultName(id), left, met]))),
      bars("misreadings", summary.misreadings.map(([id, n]) => /** @type {Bar} */ ([named("class-misreading", id), n, summary.results]))),
      bars("steps", summary.steps.map(({ step, right, judged }) => /** @type {Bar} */ ([named("debrief-step", step), judged - right, judged]))),
      shares(summary.skills)))];
}

/** @param {string} label @param {string} value @param {string} [more] */
const tile = (label, value, more = "") => h("div", {}, h("dt", {}, label), h("dd", {}, value), more && h("dd", { class: "quiet" }, more));

/** @param {ClassSummary} summary @param {ClassState} state @param {(id: string) => string} faultName @param {(k: number) => unknown} look */
function students(summary, state, faultName, look) {
  const head = ["student", "ready", "passed", "score", "first", "left", "minutes", "look"].map((key) => h("th", { scope: "col", class: `c-${key}` }, t(`class-col_${key}`)));
  const rows = summary.students.map((one, k) => {
    const name = state.names && one.student ? one.student : t("class-student", { n: k + 1 });
    const remarks = [one.doubts.length > 0 && one.doubts.map((code) => named("class-doubt", code)).join(" "), ...one.against.map((code) => named("class-against", code)), one.copied && t("class-copied"), one.alike && t("class-alike"), ...one.remarks.map((code) => named("class-remark", code))].filter((remark) => typeof remark === "string");
    /** @param {string} key @param {...Kid} kids */
    const cell = (key, ...kids) => h("td", { class: `c-${key}${kids[0] === NONE ? " is-none" : ""}`, "data-label": t(`class-col_${key}`) }, kids);
    return h("tr", { class: one.ready ? "is-ready" : "is-not" },
      h("th", { scope: "row", class: "c-student" }, name, remarks.length > 0 && h("span", { class: "remarks" }, remarks.join(" "))),
      cell("ready", h("span", { class: "state" }, one.ready ? t("class-ready") : t("class-not_ready"))),
      cell("passed", t("class-of", { n: one.passes, of: one.results.length })),
      cell("score", one.score === null ? NONE : num(one.score, 0)),
      cell("first", one.first_wrong ? named("debrief-step", one.first_wrong) : NONE),
      cell("left", one.faults_left.length > 0 ? listed(one.faults_left.map(faultName)) : NONE),
      cell("minutes", num(one.minutes, 0)),
      cell("look", one.results.map((r, i) => button(one.results.length > 1 ? t("class-look_n", { n: i + 1 }) : t("class-look"), () => look(r), { kind: "btn-small", data: { look: r }, "aria-label": t("class-look_at", { name, n: i + 1 }) }))));
  });
  return h("section", { class: "students", "aria-labelledby": "students-h" }, h("h2", { id: "students-h" }, t("class-students")),
    h("table", {}, h("thead", {}, h("tr", {}, head)), h("tbody", {}, rows)));
}

/**
 * Counts as a heat map: the darker, the more.
 * @param {string} key @param {Bar[]} lines
 */
function bars(key, lines) {
  const shown = lines.filter(([, n, of]) => of > 0);
  if (shown.length === 0) return null;
  const id = `class-${key}-h`;
  return h("section", { class: `heat heat-${key}`, "aria-labelledby": id }, h("h2", { id }, t(`class-${key}`)), h("p", { class: "quiet" }, t(`class-${key}_about`)),
    h("ul", {}, shown.map(([name, n, of]) => {
      const row = h("li", {}, h("span", { class: "heat-name" }, name), h("span", { class: "heat-n" }, t("class-of", { n, of })));
      style(row, "--heat", (n / of).toFixed(3));
      return row;
    })));
}

/** @param {[string, number][]} skills */
function shares(skills) {
  if (skills.length === 0) return null;
  return h("section", { class: "heat", "aria-labelledby": "class-skills-h" }, h("h2", { id: "class-skills-h" }, t("class-skills")),
    h("ul", {}, skills.map(([id, share]) => {
      const row = h("li", {}, h("span", { class: "heat-name" }, named("class-skill", id)), h("span", { class: "heat-n" }, t("assign-percent", { v: num(share * 100, 0) })));
      style(row, "--heat", (1 - share).toFixed(3));
      return row;
    })));
}
