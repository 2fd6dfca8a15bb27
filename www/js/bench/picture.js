// @ts-check
// The table of a bench as it stands, for showing; nothing in it can be touched.

import { attr, flag, newId } from "../dom.js";
import { Table } from "./table.js";
/** @import { View } from '../types/view' */

/** @param {View} view @returns {SVGElement | null} null where there is no bench */
export function tablePicture({ bench, link, scenario }) {
  if (!bench) return null;
  const table = new Table(bench);
  if (scenario) table.region(scenario.power_line.volts);
  table.draw(bench);
  flag(table.svg, "is-seen", link.seen);
  ownNames(table.svg);
  return table.svg;
}

/** Of several pictures on a page each refers to its own gradient and clip: one in a hidden picture may not be painted. @param {SVGElement} svg */
function ownNames(svg) {
  for (const el of svg.querySelectorAll("defs > [id]")) {
    const own = newId(el.id);
    for (const name of ["fill", "clip-path"]) for (const user of svg.querySelectorAll(`[${name}="url(#${el.id})"]`)) attr(user, name, `url(#${own})`);
    attr(el, "id", own);
  }
}
