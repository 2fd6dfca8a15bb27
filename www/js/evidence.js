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
 * Keeps an attempt's evidence, in place of what was kept of the same attempt before; false when the device does not allow it. A
 * bench that is begun again stands beside its first attempt: the first one counts.
 * @param {Evidence | null} record
 */
export function noteEvidence(record) {
  if (!record) return true;
  const past = pastEvidence();
  const last = past.findLast((one) => one.scenario === record.scenario && one.seed === record.seed);
  const kept = { ...record, at_ms: last && goesOn(last, record) && last.over ? last.at_ms : Date.now() };
  return keep(key(), [...past.filter((one) => one !== last || !goesOn(last, record)), kept].slice(-MOST));
}

/**
 * Whether a record is of the attempt that another was of: another check, or the same one told again.
 * @param {KeptEvidence} last @param {Evidence} record
 */
function goesOn(last, record) {
  const same = record.tries === last.tries && record.passed === last.passed && record.mode === last.mode;
  return last.over ? same && record.over : record.tries > last.tries || same;
}

/**
 * Puts the records of a file among those that are kept; what is there already stays as it is. How many came, or null when the
 * device does not allow it.
 * @param {unknown[]} records
 */
export function takeEvidence(records) {
  const past = pastEvidence();
  /** @param {KeptEvidence} one */
  const there = (one) => past.some((other) => other.scenario === one.scenario && other.seed === one.seed && other.at_ms === one.at_ms);
  const come = /** @type {KeptEvidence[]} */ (records.filter(fits)).filter((one) => !there(one));
  return keep(key(), [...past, ...come].sort((a, b) => a.at_ms - b.at_ms).slice(-MOST)) ? come.length : null;
}

/**
 * Puts a whole history in place of what is kept (an empty one forgets it).
 * @param {KeptEvidence[]} records
 */
export const setEvidence = (records) => keep(key(), records.slice(-MOST));
