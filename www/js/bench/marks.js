// @ts-check
// Shorthands for drawing: an inked shape is a filled path, its outline, and a second, lighter pass of the stylus.

import { s } from "../dom.js";

/**
 * An outline drawn twice, as a hand does. draw(): a path each time it is called.
 * @param {() => string} draw @param {string} [fill]
 */
export const inked = (draw, fill = "body") => {
  const first = draw();
  return [s("path", { class: `fill-${fill}`, d: first }), s("path", { class: "ln", d: first }), s("path", { class: "ln ln-2", d: draw() })];
};

/** @param {string} d @param {string} [kind] */
export const stroke = (d, kind = "") => s("path", { class: `ln ${kind}`, d });

/**
 * Lettering on the table, at x, y; when the table is shown turned it stays upright and moves to tx, ty.
 * @param {string} text @param {number} x @param {number} y @param {string} [kind] @param {number} [tx] @param {number} [ty]
 */
export const label = (text, x, y, kind = "", tx = x, ty = y) =>
  s("text", { class: `letter ${kind}`, data: { x, y, tx, ty }, transform: `translate(${x} ${y})` }, text);
