// @ts-check
// Where on the page an action is done: its pane, and what is to be ringed there.

import { paneOf } from "../deeds.js";
/** @import { Action } from '../types/action' */
/** @import { Pane } from '../types/page' */
/** @import { DeedPane } from '../types/told' */

/** @type {{ [pane in DeedPane]?: string }} */
const FINDS = { bench: ".table .pad", axes: ".set-paper", drawer: ".settings", strip: ".field", sheet: ".page .row .btn" };
/** @type {{ [pane in DeedPane]?: Pane }} */
const PANES = { bench: "bench", axes: "strip", drawer: "strip", strip: "strip", sheet: "sheet" }; // axes and settings stand in the strip's pane

/**
 * {pane, find}: the pane and a selector; no pane for an action that has no place.
 * @param {Action} action @returns {{ pane: Pane | null, find: string | null }}
 */
export function placeOf(action) {
  const { do: deed } = action;
  if (action.do === "plug" || action.do === "unplug" || action.do === "wiggle") return { pane: "bench", find: `.plug[data-end="${action.end}"]` };
  if (action.do === "switch") return { pane: "bench", find: `[data-press="switch:${action.id}"]` };
  if (action.do === "move") return { pane: "bench", find: `[data-drag="part:${action.part}"]` };
  if (deed === "charger") return { pane: "bench", find: '[data-drag="part:charger"]' };
  if (deed === "record" || deed === "stop") return { pane: "strip", find: ".btn-record" };
  if (action.do === "cursor") return { pane: "strip", find: `.cursor-${action.which}` };
  if (action.do === "answer") return { pane: "sheet", find: `.blank[data-field="${action.field}"]` };
  if (deed === "name" || deed === "unname") return { pane: "sheet", find: ".naming" };
  const pane = paneOf(deed);
  const find = pane && FINDS[pane];
  return find ? { pane: PANES[pane] ?? null, find } : { pane: null, find: null };
}
