// What is laid on the strip without being the student's own marking: the first window as a ghost, the stretch a hint points to,
// the place where another window of the debrief begins.

import { flag, h, style, words } from "../dom.js";
import { t } from "../text.js";

export class Spots {
  constructor() {
    this.boxes = new Map();
    this.el = h("div", { class: "spots", "aria-hidden": "true" });
    this.geometry = null;
  }

  /** Lays a spot of a kind ("kept", "hint", "other") from one time to another; null takes it away. */
  set(kind, spot) {
    const there = this.boxes.get(kind);
    if (!spot) {
      there?.el.remove();
      this.boxes.delete(kind);
      return;
    }
    const box = there ?? { el: this.el.appendChild(h("div", { class: `spot spot-${kind}` }, h("span", { class: "spot-name" }))) };
    box.spot = spot;
    this.boxes.set(kind, box);
    words(box.el.firstChild, t(`spot-${kind}`));
    this.place();
  }

  place(geometry = this.geometry) {
    this.geometry = geometry;
    if (!geometry) return;
    const { left, width, top, height, t0, t1 } = geometry;
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
