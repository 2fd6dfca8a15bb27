// @ts-check
// Where on the page an action is done: what the left side shows for it, and what is to be ringed.

import { paneOf } from "../deeds.js";
/** @import { Action } from '../types/action' */
/** @import { SideView } from '../types/page' */
/** @import { DeedPane } from '../types/told' */

/** @type {{ [pane in DeedPane]?: string }} */
const FINDS = { bench: ".table .sensor", axes: ".range-at", drawer: ".path-line", trace: ".field", sheet: ".page-do .btn" };
/** @type {{ [pane in DeedPane]?: SideView | null }} */
const SIDES = { bench: "bench", axes: null, drawer: null, trace: null, sheet: null }; // those stand beside it whatever is shown

/**
 * {view, find}: what the left side has to show for it, null for whatever it shows, and a selector; nothing for an action that has no place.
 * @param {Action} action @returns {{ view: SideView | null, find: string | null }}
 */
export function placeOf(action) {
  const { do: deed } = action;
  if (action.do === "plug" || action.do === "unplug" || action.do === "wiggle") return { view: "bench", find: `.plug[data-end="${action.end}"]` };
  if (action.do === "switch") return { view: "bench", find: `[data-press="switch:${action.id}"]` };
  if (action.do === "move") return { view: "bench", find: `[data-drag="part:${action.part}"]` };
  if (deed === "charger") return { view: "bench", find: '[data-drag="part:charger"]' };
  if (deed === "record" || deed === "stop") return { view: null, find: ".btn-record" };
  if (deed === "time_base") return { view: null, find: ".time-at" };
  if (action.do === "cursor") return { view: null, find: `.cursor-${action.which}` };
  if (action.do === "answer") return { view: null, find: `.blank[data-field="${action.field}"]` };
  if (deed === "name" || deed === "unname") return { view: "name", find: ".naming" };
  if (deed === "predict") return { view: "experiment", find: ".experiment-form" };
  if (deed === "add_row" || deed === "row_note" || deed === "remove_row") return { view: "experiment", find: ".experiment-add" };
  if (deed === "conclude") return { view: "experiment", find: ".experiment-result" };
  const pane = paneOf(deed);
  return { view: (pane && SIDES[pane]) ?? null, find: (pane && FINDS[pane]) ?? null };
}
