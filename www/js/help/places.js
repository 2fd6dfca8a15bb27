// @ts-check
// Where on the page an action is done: its pane, and what is to be ringed there.

/** @import { Action } from '../types/action' */
/** @import { Pane } from '../types/page' */

/** @type {Set<Action["do"]>} */
const BENCH = new Set(["rescan", "tap_pad", "ask_still", "ask_quiet", "ask_finger", "press_finger", "shade", "other_hand", "swap_lead", "rest_arm", "tell_instructor", "look_around", "manoeuvre", "wiggle", "strap_on", "strap_off", "strap", "pad_place", "pad_face", "hand_height"]);
/** @type {Set<Action["do"]>} */
const PAPER = new Set(["range", "time_base", "zero", "zero_clear", "invert", "shown"]);
/** @type {Set<Action["do"]>} */
const SETTINGS = new Set(["high_pass", "low_pass", "notch", "average", "input", "rate", "bits", "anti_alias", "scale"]);
/** @type {Set<Action["do"]>} */
const SHEET = new Set(["check", "reveal", "hint", "keep_window", "keep_clear"]);

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
  if (BENCH.has(deed)) return { pane: "bench", find: ".table .pad" };
  if (PAPER.has(deed)) return { pane: "strip", find: ".set-paper" };
  if (SETTINGS.has(deed)) return { pane: "strip", find: ".settings" };
  if (deed === "record" || deed === "stop") return { pane: "strip", find: ".btn-record" };
  if (action.do === "cursor") return { pane: "strip", find: `.cursor-${action.which}` };
  if (["mark", "unmark", "marks_clear", "open_take", "scroll", "show", "zoom", "zoom_out"].includes(deed)) return { pane: "strip", find: ".field" };
  if (action.do === "answer") return { pane: "sheet", find: `.blank[data-field="${action.field}"]` };
  if (deed === "name" || deed === "unname") return { pane: "sheet", find: ".naming" };
  if (SHEET.has(deed)) return { pane: "sheet", find: ".page .row .btn" };
  return { pane: null, find: null };
}
