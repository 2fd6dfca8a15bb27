// @ts-check
// What the page keeps on this device. Storage may be switched off or full: then nothing is kept and nothing breaks.

import { readAll, strike, writeDown } from "./journal.js";
/** @import { KeptAttempt, KeptPlace } from './types/page' */

const PREFIX = "dicrotic:";

/** @param {string} key */
const read = (key) => localStorage.getItem(PREFIX + key);

/**
 * Reads a kept value, or null.
 * @param {string} key @returns {any}
 */
export function recall(key) {
  try {
    return JSON.parse(read(key) ?? "null");
  } catch {
    return null;
  }
}

/**
 * Keeps a value; false when the device does not allow it.
 * @param {string} key @param {unknown} value
 */
export function keep(key, value) {
  return put(key, JSON.stringify(value)) === "";
}

/**
 * Puts a text; the name of what is in the way, or nothing.
 * @param {string} key @param {string} text
 */
function put(key, text) {
  try {
    localStorage.setItem(PREFIX + key, text);
    return "";
  } catch (error) {
    return error instanceof DOMException ? error.name : "Error";
  }
}

/**
 * Forgets a value.
 * @param {string} key
 */
export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch { /* nothing was kept */ }
}

/**
 * What follows a beginning in the kept keys; empty where storage is off.
 * @param {string} beginning
 */
export function keysOf(beginning) {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX + beginning)).map((key) => key.slice(PREFIX.length + beginning.length));
  } catch {
    return [];
  }
}

// Attempts are kept twice: here, and in the journal, of which a copy stands in memory.

const ATTEMPT = "attempt:", ASIDE = "aside:";
const MOST_ATTEMPTS = 24; // older ones make room, so that the device's store does not fill up
/** @type {Map<string, KeptAttempt>} */
let journal = new Map();

/** Reads the journal; to be awaited before an attempt is looked for. */
export async function openJournal() {
  journal = new Map();
  for (const [key, value] of await readAll()) if (isAttempt(value)) journal.set(key, value);
}

/** @param {unknown} value @returns {value is KeptAttempt} */
const isAttempt = (value) => typeof /** @type {Partial<KeptAttempt> | null | undefined} */ (value)?.saved === "string";
/** @param {KeptAttempt} attempt */
const timeOf = (attempt) => Number(attempt.at) || 0;

/**
 * The key under which an attempt is kept.
 * @param {string} scenario @param {string} seed
 */
export const attemptKey = (scenario, seed) => `${ATTEMPT}${scenario}:${seed}`;

/**
 * The copies of a kept attempt that can be read, newest first, and whether there is one that cannot.
 * @param {string} key
 */
export function copiesOf(key) {
  let damaged = false;
  /** @type {unknown} */
  let here = null;
  try {
    const text = read(key);
    here = recall(key);
    damaged = text !== null && !isAttempt(here);
  } catch { /* storage is off */ }
  const copies = [here, journal.get(key)].filter(isAttempt).sort((a, b) => timeOf(b) - timeOf(a));
  return { copies, damaged };
}

/**
 * A kept attempt, or null.
 * @param {string} scenario @param {string} seed
 */
export const recallAttempt = (scenario, seed) => copiesOf(attemptKey(scenario, seed)).copies[0] ?? null;

/**
 * The kept attempts, latest first: [{scenario, seed, at}].
 * @returns {KeptPlace[]}
 */
export function keptAttempts() {
  const there = [...journal.keys()].filter((key) => key.startsWith(ATTEMPT)).map((key) => key.slice(ATTEMPT.length));
  return [...new Set([...keysOf(ATTEMPT), ...there])].map((key) => {
    const cut = key.lastIndexOf(":");
    const [copy] = copiesOf(ATTEMPT + key).copies;
    return { scenario: key.slice(0, cut), seed: key.slice(cut + 1), at: copy ? timeOf(copy) : 0 };
  }).sort((a, b) => b.at - a.at);
}

/**
 * Keeps an attempt, and forgets the oldest beyond MOST_ATTEMPTS. Resolves to "kept", to "once" when one of the copies could not be made, or to "full" or "off" when neither could.
 * @param {string} scenario @param {string} seed @param {KeptAttempt} attempt @returns {Promise<"kept" | "once" | "full" | "off">}
 */
export async function keepAttempt(scenario, seed, attempt) {
  const key = attemptKey(scenario, seed);
  for (const old of keptAttempts().slice(MOST_ATTEMPTS)) forgetAttempt(old.scenario, old.seed);
  const trouble = put(key, JSON.stringify(attempt)); // at once: the page may be on its way out
  try {
    await writeDown(key, attempt);
    journal.set(key, attempt);
    return trouble ? "once" : "kept";
  } catch (error) {
    if (!trouble) return "once";
    return [trouble, error instanceof DOMException ? error.name : ""].includes("QuotaExceededError") ? "full" : "off";
  }
}

/**
 * Forgets an attempt.
 * @param {string} scenario @param {string} seed
 */
export function forgetAttempt(scenario, seed) {
  const key = attemptKey(scenario, seed);
  forget(key);
  journal.delete(key);
  strike(key);
}

/**
 * Lays what is kept of an attempt aside, so that a fresh one does not overwrite it; one for each attempt, the last.
 * @param {string} scenario @param {string} seed
 */
export function layAside(scenario, seed) {
  const key = attemptKey(scenario, seed);
  try {
    const text = read(key) ?? JSON.stringify(journal.get(key));
    if (text) put(ASIDE + key.slice(ATTEMPT.length), text);
  } catch { /* storage is off */ }
  forgetAttempt(scenario, seed);
}
