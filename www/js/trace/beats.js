// @ts-check
// Beat marks: small numbered ticks over the trace, placed and taken away by a tap. After the debrief, the true beats below.

import { h, refill, s } from "../dom.js";
/** @import { Geometry } from '../types/told' */

const NEAR_PX = 14;
const NEAR_S = 0.25; // on a long screen marks stand closer than a finger is broad: the next beat must not be taken for this one

export class Beats {
  constructor() {
    this.ticks = s("g", { class: "beat-ticks" });
    this.truth = s("g", { class: "beat-truth" });
    this.svg = s("svg", { class: "beats", "aria-hidden": "true", focusable: "false", width: "100%", height: "100%" }, this.truth, this.ticks);
    this.el = h("div", { class: "beats-box" }, this.svg);
    /** @type {Geometry | null} */
    this.geometry = null;
    /** @type {number[]} */
    this.marks = [];
    /** @type {number[]} */
    this.true = [];
  }

  /** @param {number[]} marks @param {number[]} [trueBeats] */
  show(marks, trueBeats) {
    this.marks = marks;
    this.true = trueBeats ?? [];
    this.place();
  }

  /** @param {Geometry | null} [geometry] */
  place(geometry = this.geometry) {
    if (!geometry) return;
    this.geometry = geometry;
    const { left, width, top, height, t0, t1 } = geometry;
    /** @param {number[]} times */
    const seen = (times) => times.filter((time) => time >= t0 && time <= t1).map((time) => left + ((time - t0) / (t1 - t0)) * width);
    const before = this.marks.filter((time) => time < t0).length, xs = seen(this.marks);
    refill(this.ticks, [xs, top, before], () => xs.flatMap((x, k) => [s("path", { d: `M${(x - 3).toFixed(1)} ${top + 30}L${(x + 0.4).toFixed(1)} ${top + 15}l2.200 -3.500` }),
      s("text", { x: x.toFixed(1), y: top + 10, class: "beat-number" }, String(before + k + 1))]));
    const foot = top + height;
    refill(this.truth, [seen(this.true), foot], () => seen(this.true).map((x) => s("path", { d: `M${x.toFixed(1)} ${foot - 9}l4.500 8h-9Z` })));
  }

  /**
   * The mark within a finger's breadth of x (CSS px) and NEAR_S, or null.
   * @param {number} x
   */
  near(x) {
    if (!this.geometry) return null;
    const { left, width, t0, t1 } = this.geometry;
    const reach = Math.min(NEAR_S, (NEAR_PX / width) * (t1 - t0));
    const time = t0 + ((x - left) / width) * (t1 - t0);
    /** @param {number} mark */
    const far = (mark) => Math.abs(mark - time);
    const nearest = this.marks.reduce((/** @type {number | null} */ best, mark) => (best === null || far(mark) < far(best) ? mark : best), null);
    return nearest !== null && far(nearest) <= reach ? nearest : null;
  }
}
