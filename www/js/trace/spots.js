// @ts-check
// What is laid on the trace without being the student's own marking: the first window as a ghost, the stretch a hint points to,
// the place where another window of the debrief begins.

import { flag, h, style } from "../dom.js";
import { t } from "../text.js";
/** @import { Spot } from '../types/page' */
/** @import { Geometry } from '../types/told' */

export class Spots {
  constructor() {
    /** @type {Map<string, { el: HTMLElement, spot: Spot }>} */
    this.boxes = new Map();
    this.el = h("div", { class: "spots", "aria-hidden": "true" });
    /** @type {Geometry | null} */
    this.geometry = null;
  }

  /**
   * Lays a spot of a kind ("kept", "hint", "other") from one time to another; null takes it away.
   * @param {string} kind @param {Spot | null} spot
   */
  set(kind, spot) {
    const there = this.boxes.get(kind);
    if (!spot) {
      there?.el.remove();
      this.boxes.delete(kind);
      return;
    }
    const el = there?.el ?? this.el.appendChild(h("div", { class: `spot spot-${kind}` }, h("span", { class: "spot-name" }, t(`spot-${kind}`))));
    this.boxes.set(kind, { el, spot });
    this.place();
  }

  /** @param {Geometry | null} [geometry] */
  place(geometry = this.geometry) {
    this.geometry = geometry;
    if (!geometry) return;
    const { left, width, top, height, t0, t1 } = geometry;
    /** @param {number} time */
    const x = (time) => left + (Math.max(0, Math.min(1, (time - t0) / (t1 - t0)))) * width;
    for (const { el, spot } of this.boxes.values()) {
      const from = Math.min(spot.from_s, spot.to_s), to = Math.max(spot.from_s, spot.to_s);
      el.hidden = to < t0 || from > t1;
      style(el, "--x", `${x(from).toFixed(1)}px`);
      style(el, "--w", `${Math.max(2, x(to) - x(from)).toFixed(1)}px`);
      style(el, "--top", `${top}px`);
      style(el, "--height", `${height}px`);
      flag(el, "is-cut-left", from < t0);
      flag(el, "is-cut-right", to > t1);
    }
  }
}
