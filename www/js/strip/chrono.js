// @ts-check
// The time line scratched under the trace: a level line with a flick at each second, a taller one at each fifth.

import { attr, s } from "../dom.js";
/** @import { Geometry } from '../types/told' */

const STEPS = [0.01, 0.1, 1, 10, 60];
const MAX_TICKS = 90;

export class Chrono {
  constructor() {
    this.path = s("path", { class: "chrono-line" });
    this.el = s("svg", { class: "chrono", "aria-hidden": "true", focusable: "false", height: 20 }, this.path);
  }

  /**
   * Draws the line for a time range over a box, in CSS px.
   * @param {Geometry} geometry
   */
  draw({ left, width, t0, t1 }) {
    const span = t1 - t0;
    if (!(span > 0) || !(width > 0)) return;
    const step = STEPS.find((one) => span / one <= MAX_TICKS) ?? 60;
    /** @param {number} t */
    const x = (t) => left + ((t - t0) / span) * width;
    /** @param {number} k */
    const wobble = (k) => ((k * 7919) % 13) / 13 - 0.5; // the same tick is always the same scratch
    let d = `M${left} 14`;
    for (let k = Math.ceil(t0 / step - 1e-9); k * step <= t1 + 1e-9; k += 1) {
      const at = x(k * step), tall = k % 5 === 0 ? 10 : 6;
      d += `L${(at - 2.2).toFixed(1)} ${(14 + wobble(k) * 0.8).toFixed(1)}L${at.toFixed(1)} ${(14 - tall - wobble(k + 3)).toFixed(1)}L${(at + 1.6).toFixed(1)} ${(14.6 + wobble(k + 1) * 0.8).toFixed(1)}`;
    }
    attr(this.path, "d", `${d}L${(left + width).toFixed(1)} 14`);
  }
}
