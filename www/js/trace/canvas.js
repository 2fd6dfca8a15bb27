// @ts-check
// The two stacked canvases and their size: the base (axes and grid) is drawn when the geometry changes, the trace each frame.

import { h } from "../dom.js";
import { offTheme, onTheme, stripTheme } from "../theme.js";
/** @import { Bench } from '../core.js' */
/** @import { Geometry } from '../types/told' */

const MAX_DPR = 2; // more pixels than this cost time and cannot be seen in a trace

export class Canvases {
  /**
   * moved(geometry) is called when the plot box or its ranges have changed; zoom enlarges letters and lines, for a room.
   * @param {Bench} bench @param {(geometry: Geometry) => unknown} moved @param {number} [zoom]
   */
  constructor(bench, moved, zoom = 1) {
    this.zoom = zoom;
    this.bench = bench;
    this.moved = moved;
    this.base = h("canvas", { class: "layer", "aria-hidden": "true" });
    this.trace = h("canvas", { class: "layer", "aria-hidden": "true" });
    this.traceContext = /** @type {CanvasRenderingContext2D} */ (this.trace.getContext("2d"));
    this.el = h("div", { class: "layers" }, this.base, this.trace);
    /** @type {Geometry | null} */
    this.geometry = null;
    /** @type {Geometry | null} */
    this.drawnFor = null; // the geometry that the base shows
    this.sized = false;
    this.observer = new ResizeObserver((entries) => this.resize(entries[0].contentRect));
    this.observer.observe(this.el);
    this.retheme = () => {
      bench.setTheme(stripTheme());
      this.drawnFor = null;
    };
    onTheme(this.retheme);
    this.retheme();
  }

  /** @param {{ width: number, height: number }} box */
  resize({ width, height }) {
    if (width < 20 || height < 20) return;
    const dpr = Math.min(devicePixelRatio || 1, MAX_DPR);
    const w = Math.round(width * dpr), h = Math.round(height * dpr);
    if (this.sized && this.base.width === w && this.base.height === h) return;
    for (const canvas of [this.base, this.trace]) {
      canvas.width = w;
      canvas.height = h;
    }
    this.bench.setSize(w, h, dpr * this.zoom);
    this.sized = true;
    this.drawnFor = null;
    this.draw();
  }

  /** Draws what is due; true if the trace changed. */
  draw() {
    if (!this.sized) return false;
    this.geometry = this.bench.geometry();
    if (this.geometry !== this.drawnFor) {
      this.drawnFor = this.geometry;
      this.bench.drawBase(this.base);
      this.moved(this.geometry);
    }
    return this.bench.drawTrace(this.traceContext);
  }

  end() {
    this.observer.disconnect();
    offTheme(this.retheme);
  }
}
