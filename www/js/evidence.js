// @ts-check
// What past attempts show of each skill: one record an attempt, kept on this device, read by the core's skill map.

import { keep, layTextAside, recallOnly } from "./device.js";
import { skillMap } from "./core.js";
import { mark } from "./who.js";
/** @import { Evidence, KeptEvidence } from './types/told' */

const key = () => `history${mark()}`; // of whoever is at the device
const MOST = 500; // the oldest make room

/** Whether the skill map can be made of a record. @param {any} one */
function fits(one) {
  if (typeof one?.scenario !== "string" || !Number.isFinite(one.at_ms) || Math.abs(one.at_ms) > 8e15 || typeof one.skills !== "object" || one.skills === null) return false;
  try {
    skillMap([one], Date.now());
    return true;
  } catch {
    return false;
  }
}
/** @param {unknown} value @returns {value is unknown[]} */
const isList = (value) => Array.isArray(value);

/**
 * The kept records, oldest first; those that cannot be used are laid aside.
 * @returns {KeptEvidence[]}
 */
export function pastEvidence() {
  const kept = recallOnly(key(), isList) ?? [];
  const good = /** @type {KeptEvidence[]} */ (kept.filter(fits));
  if (good.length < kept.length) {
    layTextAside(key(), JSON.stringify(kept.filter((one) => !fits(one))));
    keep(key(), good);
  }
  return good;
}

/**
 * Keeps an attempt's evidence, in place of what was kept of the same attempt before; false when the device does not allow it.
 * @param {Evidence | null} record
 */
export function noteEvidence(record) {
  if (!record) return true;
  const others = pastEvidence().filter((one) => one.scenario !== record.scenario || one.seed !== record.seed);
  return keep(key(), [...others, { ...record, at_ms: Date.now() }].slice(-MOST));
}

/**
 * Puts a whole history in place of what is kept (an empty one forgets it).
 * @param {KeptEvidence[]} records
 */
export const setEvidence = (records) => keep(key(), records.slice(-MOST));
