// @ts-check
// What past attempts show of each skill: one record an attempt, kept on this device, read by the core's skill map.

import { keep, recall } from "./store.js";
/** @import { Evidence, KeptEvidence } from './types/told' */

const KEY = "history";
const MOST = 500; // the oldest make room

/**
 * The kept records, oldest first.
 * @returns {KeptEvidence[]}
 */
export function pastEvidence() {
  const kept = recall(KEY);
  return Array.isArray(kept) ? kept : [];
}

/**
 * Keeps an attempt's evidence, in place of what was kept of the same attempt before; false when the device does not allow it.
 * @param {Evidence | null} record
 */
export function noteEvidence(record) {
  if (!record) return true;
  const others = pastEvidence().filter((one) => one.scenario !== record.scenario || one.seed !== record.seed);
  return keep(KEY, [...others, { ...record, at_ms: Date.now() }].slice(-MOST));
}

/**
 * Puts a whole history in place of what is kept (an empty one forgets it).
 * @param {KeptEvidence[]} records
 */
export const setEvidence = (records) => keep(KEY, records.slice(-MOST));
