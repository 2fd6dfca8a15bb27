// @ts-check
// An action of the log in words: what was done, with the names that the page has for parts, sockets and values.

import { has, num, t } from "../text.js";
import { hzText, msText, rangeText, spanText, timeText } from "../trace/units.js";
/** @import { Args } from '../types/names' */

const FILTERS = new Set(["high_pass", "low_pass", "notch"]);

/**
 * A sentence for an entry of the course: {do, args}. unit: of an opened recording's values.
 * @param {{ do: string, args?: Args }} entry @param {string} [unit]
 */
export function deedText({ do: deed, args = {} }, unit = "V") {
  const key = `deed-${deed}`;
  if (!has(key)) return t("deed-unknown", { deed });
  return t(key, shown(deed, args, unit));
}

/** What the subject was asked to do, with its numbers where it has any. @param {any} what */
function askedOf(what) {
  if (what?.paced_breathing) return t("asked_to-breathe", { n: num(what.paced_breathing.per_min, 1) });
  if (what?.exercise) return t("asked_to-exercise", { n: num(what.exercise.seconds / 60, 1) });
  return t(`ask-${what}`);
}

/** @param {string} deed @param {Record<string, any>} args @param {string} unit */
function shown(deed, args, unit) {
  /** @type {Record<string, any>} */
  const out = { ...args };
  if (args.end) out.end = t(`end-${args.end}`);
  if (args.socket) out.socket = t(`socket-${args.socket}`);
  if (deed === "look") out.place = t(`look-${args.at}`);
  if (args.part) out.part = t(`part-${args.part}`);
  if (deed === "switch") out.id = t(`switch-${args.id}`);
  if (deed === "consent") out.on = String(args.given);
  if ("on" in args) out.on = String(args.on);
  if ("plugged" in args) out.on = String(args.plugged);
  if (deed === "range") out.v = rangeText(args.v, unit);
  if (deed === "time_base") out.s = spanText(args.s);
  if (FILTERS.has(deed) || deed === "rate") out.hz = args.hz === null || args.hz === undefined ? t("value-off") : hzText(args.hz);
  if (deed === "average") out.ms = args.ms === null || args.ms === undefined ? t("value-off") : msText(args.ms);
  if (deed === "strap") out.percent = num(args.tightness * 100, 0);
  if (deed === "sensor_place") out.place = t(`strap-place-${args.place}`);
  if (deed === "sensor_side") out.face = t(`strap-face-${args.side}`);
  if (deed === "other_hand") out.on = t(`other-${args.on}`);
  if (deed === "manoeuvre") out.what = askedOf(args.what);
  if (deed === "let_pass") out.n = args.s / 60;
  if (deed === "answer") Object.assign(out, { field: t(`field-${args.field}`), text: args.text === "" ? "–" : args.text });
  if (deed === "cursor") out.which = String(args.which).toUpperCase();
  if (typeof args.t === "number") out.t = timeText(args.t);
  if (deed === "cursor" && typeof args.t !== "number") out.t = "–";
  if (typeof args.recording === "number") out.recording = args.recording + 1;
  if (deed === "show") out.mode = t(`strip-${args.mode}`);
  if (typeof args.from_s === "number") Object.assign(out, { from: timeText(args.from_s), to: timeText(args.to_s) });
  if (deed === "help") out.mode = t(`help-mode-${args.mode}`);
  if (deed === "name" || deed === "unname") out.fault = has(`entry-${args.fault}`) ? t(`entry-${args.fault}`) : String(args.fault).replaceAll("_", " ");
  return out;
}
