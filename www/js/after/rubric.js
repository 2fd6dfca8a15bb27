// @ts-check
// The pre-lab rubric: each row with its points, each point with what it rests on; choosing that turns to the course of the attempt.

import { h, refill } from "../dom.js";
import { coded, listed, num, t } from "../text.js";
/** @import { RubricPoint, RubricRow } from '../types/check' */
/** @import { Trail } from './trail.js' */

/** @param {RubricRow} row */
const counts = ({ applies }) => applies !== false;

export class Rubric {
  /** @param {Trail} trail */
  constructor(trail) {
    this.trail = trail;
    this.el = h("section", { class: "rubric", "aria-labelledby": "rubric-h", hidden: true });
  }

  /** @param {import('../types/check').Rubric | null} rubric */
  show(rubric) {
    this.el.hidden = !rubric;
    if (!rubric) return;
    refill(this.el, rubric, () => [
      h("h3", { class: "debrief-h", id: "rubric-h" }, t("rubric-title")),
      !rubric.scored ? h("p", { class: "pencil" }, t("rubric-not_scored")) : h("p", { class: "rubric-total" }, h("b", {}, t("rubric-total", { got: num(rubric.total, 1), of: rubric.of })), " ", h("span", { class: "pencil" }, rubric.bar ? t(`rubric-bar_${rubric.bar}`, { list: listed(rubric.rows.filter(({ applies, got }) => applies && got === 0).map(({ row }) => t(`rubric-${row}`))) }) : t("rubric-ready"))),
      h("div", { class: "rubric-rows" }, rubric.rows.filter(counts).map((row) => this.row(row))),
      rubric.scored && !rubric.rows.every(counts) && h("p", { class: "quiet" }, t("rubric-left_out", { list: listed(rubric.rows.filter((row) => !counts(row)).map(({ row }) => t(`rubric-${row}`))) })),
    ]);
  }

  /** @param {RubricRow} one */
  row({ row, got, of, points }) {
    const full = got >= of;
    return h("details", { class: "rubric-row" },
      h("summary", {}, h("span", { class: "rubric-name" }, t(`rubric-${row}`)), h("span", { class: "rubric-pips", "aria-hidden": "true" }, Array.from({ length: Math.round(of) }, (_, i) => h("i", { class: i < Math.round(got) ? "is-got" : "" }))), h("span", { class: `rubric-got${full ? "" : " is-open"}` }, t("rubric-of", { got: num(got, 1), of }))),
      h("ul", { class: "rubric-points" }, points.map((point) => this.point(point))));
  }

  /** @param {RubricPoint} one */
  point({ code, got, at_s: at, log, evidence }) {
    const where = typeof log === "number" ? h("button", { type: "button", class: "btn btn-plain rubric-see", onclick: () => this.trail.turnTo(log) }, t("rubric-see")) : evidence && !got ? h("span", { class: "quiet" }, rests(evidence)) : null;
    return h("li", {}, h("span", { class: "glyph", "aria-hidden": "true" }, got ? "✓" : "○"), h("span", {}, h("span", { class: "vh" }, t(got ? "rubric-is_got" : "rubric-is_open")), coded("rubric-point", code)), where);
  }
}

/**
 * Where to see why a point was not given: at a step of the verdict or among the remarks on the process, by the name of its place in the result.
 * @param {string} code
 */
function rests(code) {
  const [first] = code.split("_");
  return t("rubric-rests", { on: code.startsWith("process") ? t("debrief-process") : coded("debrief-step", first) });
}
