// @ts-check
// A screen without a trace, to draw on or to paste one over: ten divisions of time, five of height, in print sizes.

import { h, s } from "../dom.js";

const ACROSS = 10, DOWN = 5, SIZE = 10;

/** The blank trace; label: what it is called. @param {string} label */
export function grid(label) {
  const [w, d] = [ACROSS * SIZE, DOWN * SIZE / 2];
  /** @param {number} n @param {(k: number) => string} line */
  const lines = (n, line) => Array.from({ length: n + 1 }, (_, k) => line(k)).join("");
  const across = lines(ACROSS, (k) => `M${k * SIZE} 0V${d}`), down = lines(DOWN, (k) => `M0 ${(k * SIZE) / 2}H${w}`);
  const fine = lines(ACROSS * 5, (k) => `M${(k * SIZE) / 5} 0V${d}`);
  return h("figure", { class: "paper-grid" },
    s("svg", { viewBox: `-.5 -.5 ${w + 1} ${d + 1}`, role: "img", "aria-label": label }, s("path", { class: "fine", d: fine }), s("path", { class: "main", d: across + down })),
    h("figcaption", {}, label));
}
