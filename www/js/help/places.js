// Where on the page an action is done: its pane, and what is to be ringed there.

import { paneOf } from "../deeds.js";

const FINDS = { bench: ".table .pad", axes: ".set-paper", drawer: ".settings", strip: ".field", sheet: ".page .row .btn" };
const PANES = { axes: "strip", drawer: "strip" }; // they stand in the strip's pane

/** {pane, find}: the pane and a selector; no pane for an action that has no place. */
export function placeOf(action) {
  const { do: deed } = action;
  if (deed === "plug" || deed === "unplug" || deed === "wiggle") return { pane: "bench", find: `.plug[data-end="${action.end}"]` };
  if (deed === "switch") return { pane: "bench", find: `[data-press="switch:${action.id}"]` };
  if (deed === "move") return { pane: "bench", find: `[data-drag="part:${action.part}"]` };
  if (deed === "charger") return { pane: "bench", find: '[data-drag="part:charger"]' };
  if (deed === "record" || deed === "stop") return { pane: "strip", find: ".btn-record" };
  if (deed === "cursor") return { pane: "strip", find: `.cursor-${action.which}` };
  if (deed === "answer") return { pane: "sheet", find: `.blank[data-field="${action.field}"]` };
  if (deed === "name" || deed === "unname") return { pane: "sheet", find: ".naming" };
  const pane = paneOf(deed);
  return FINDS[pane] ? { pane: PANES[pane] ?? pane, find: FINDS[pane] } : { pane: null, find: null };
}
