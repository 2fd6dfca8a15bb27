// @ts-check
// The table of a bench as it stands, for showing; nothing in it can be touched.

import { flag } from "../dom.js";
import { Table } from "./table.js";
/** @import { View } from '../types/view' */

/** @param {View} view @returns {SVGElement | null} null where there is no bench */
export function tablePicture({ bench, link, scenario }) {
  if (!bench) return null;
  const table = new Table(bench);
  if (scenario) table.region(scenario.power_line.volts);
  table.draw(bench);
  flag(table.svg, "is-seen", link.seen);
  return table.svg;
}
