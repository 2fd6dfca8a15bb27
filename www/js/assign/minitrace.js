// @ts-check
// A trace that only shows: the drum's band with the core's two canvases.

import { h } from "../dom.js";
import { Canvases } from "../trace/canvas.js";
/** @import { Bench } from '../core.js' */

export class MiniTrace {
  /** @param {Bench} bench @param {number} [zoom] */
  constructor(bench, zoom = 1) {
    this.canvases = new Canvases(bench, () => {}, zoom);
    this.el = h("div", { class: "drum mini" }, h("div", { class: "trace-area" }, h("div", { class: "field" }, this.canvases.el)));
  }
  draw() {
    return this.canvases.draw();
  }
  end() {
    this.canvases.end();
  }
}
