// @ts-check
// The tip of the stylus on the live trace. It is moved by a transform alone, so that a frame costs no layout.

import { h } from "../dom.js";

export class Stylus {
  constructor() {
    this.tip = h("div", { class: "stylus-tip" });
    this.el = h("div", { class: "stylus", "aria-hidden": "true", hidden: true }, this.tip);
    this.at = "";
  }

  /**
   * Puts the tip at a place, [x, y] in CSS px of the field; nothing takes it off the paper.
   * @param {ArrayLike<number> | undefined} spot
   */
  place(spot) {
    const at = spot ? `translate(${spot[0].toFixed(1)}px, ${spot[1].toFixed(1)}px)` : "";
    if (at === this.at) return;
    if (!at || !this.at) this.el.hidden = !at;
    this.at = at;
    if (at) this.tip.style.transform = at;
  }
}
