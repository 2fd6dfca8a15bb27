// @ts-check
// What the ways of measuring one's own pulse share: the choice of a length, a list of figures, a recording that is opened.

import { h } from "../dom.js";
import { openRecording } from "../open/recording.js";
import { fixed, num, t } from "../text.js";
import { Segments } from "../widgets.js";
/** @import { Kid } from '../types/page' */

/** Lengths to choose from, s. Common practice. */
export const LENGTHS_S = [15, 30, 60];

/** A choice of the length; `now` tells it. */
export class Length {
  /** @param {() => unknown} chosen */
  constructor(chosen) {
    this.now = 30;
    this.segs = new Segments(t("own-seconds"), (key) => {
      this.now = Number(key);
      this.show();
      chosen();
    });
    this.el = h("div", { class: "own-length" }, h("span", { class: "lbl", "aria-hidden": "true" }, t("own-seconds")), this.segs.el);
    this.show();
  }

  show() {
    this.segs.set(LENGTHS_S.map((s) => /** @type {const} */ ([String(s), t("own-seconds_one", { s })])), this.now);
  }

  /** @param {boolean} on */
  able(on) {
    for (const one of this.segs.el.children) /** @type {HTMLButtonElement} */ (one).disabled = !on;
  }
}

/**
 * Names and figures.
 * @param {(readonly [string, Kid] | false)[]} rows
 */
export const figures = (rows) => h("dl", { class: "own-figures" }, rows.map((row) => row && h("div", {}, h("dt", {}, row[0]), h("dd", {}, row[1]))));

/**
 * A heart rate for reading, with how far it may be off.
 * @param {number} rate @param {number | null} [off]
 */
export const rateText = (rate, off = null) => (off === null ? t("own-rate_plain", { rate: num(rate, 0) }) : t("own-rate_off", { rate: num(rate, 0), off: off < 1 ? fixed(Math.max(off, 0.1), 1) : num(off, 0) }));

/**
 * Opens what was measured as a recording like any other.
 * @param {string} csv @param {string} name
 */
export const openAs = (csv, name) => openRecording([new File([csv], `${name}.csv`, { type: "text/csv" })]);
