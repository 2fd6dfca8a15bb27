// Shorthands for drawing: an inked shape is a filled path, its outline, and a second, lighter pass of the stylus.

import { s } from "../dom.js";

/** An outline drawn twice, as a hand does. draw(): a path each time it is called. */
export const inked = (draw, fill = "body") => {
  const first = draw();
  return [s("path", { class: `fill-${fill}`, d: first }), s("path", { class: "ln", d: first }), s("path", { class: "ln ln-2", d: draw() })];
};

export const stroke = (d, kind = "") => s("path", { class: `ln ${kind}`, d });

/** Lettering on the table; it stays upright when the table is shown turned. */
export const label = (text, x, y, kind = "") =>
  s("text", { class: `letter ${kind}`, x: 0, y: 0, data: { x, y }, transform: `translate(${x} ${y})` }, text);

/** Turns all lettering in a group upright for a table shown turned by `deg`. */
export function upright(root, deg) {
  for (const el of root.querySelectorAll(".letter")) {
    el.setAttribute("transform", `translate(${el.dataset.x} ${el.dataset.y}) rotate(${-deg})`);
  }
}
