// @ts-check
// The counting windows of an opened recording that were read before this one, each with its result as it stood, folded.

import { h } from "../dom.js";
import { t } from "../text.js";
import { hundredths } from "../trace/units.js";
/** @import { View } from '../types/view' */

/** A result as it stood: what was to be pressed in it is of a window that is no more. @param {HTMLElement} result */
export function asItStood(result) {
  const copy = /** @type {HTMLElement} */ (result.cloneNode(true));
  copy.className = "debrief-earlier";
  for (const press of copy.querySelectorAll("button, a, [role=status]")) press.remove();
  for (const named of copy.querySelectorAll("[id], [aria-labelledby]")) for (const name of ["id", "aria-labelledby"]) named.removeAttribute(name);
  for (const name of ["role", "aria-label", "tabindex"]) copy.removeAttribute(name);
  return copy;
}

export class Earlier {
  constructor() {
    this.list = h("div", { class: "earlier-list" });
    this.el = h("section", { class: "earlier", "aria-label": t("earlier-title"), hidden: true }, h("h3", { class: "debrief-h" }, t("earlier-title")), this.list);
  }

  /**
   * Keeps the result of what lay between the cursors.
   * @param {View["cursors"]} cursors @param {HTMLElement} result
   */
  keep(cursors, result) {
    const at = (/** @type {number | null} */ time) => (time === null ? "–" : hundredths(time));
    this.list.append(h("details", {}, h("summary", {}, t("earlier-window", { n: this.list.childElementCount + 1, a: at(cursors.a), b: at(cursors.b) })), result));
    this.el.hidden = false;
  }
}
