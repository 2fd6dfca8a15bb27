// @ts-check
// The attempts that are kept: whose they are, how many, and both copies of each. See device.js for where.

import { forget, keysOf, put, readText, recall } from "./device.js";
import { readAll, strike, writeDown } from "./journal.js";
import { mark, who } from "./who.js";
/** @import { KeptAttempt, KeptPlace } from './types/page' */

// Attempts are kept twice: here, and in the journal, of which a copy stands in memory.

const ATTEMPT = "attempt:";
/** So many are kept on a device; then somebody is asked, and nobody's work makes room by itself. */
export const MOST_ATTEMPTS = 24;
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
 * The key under which an attempt is kept, of whoever is at the device or of another.
 * @param {string} scenario @param {string} seed @param {string} [owner]
 */
export const attemptKey = (scenario, seed, owner = who()) => `${ATTEMPT}${scenario}${mark(owner)}:${seed}`;

/**
 * The copies of a kept attempt that can be read, newest first, and whether there is one that cannot.
 * @param {string} key
 */
export function copiesOf(key) {
  let damaged = false;
  /** @type {unknown} */
  let here = null;
  try {
    const text = readText(key);
    here = recall(key);
    damaged = text !== null && !isAttempt(here);
  } catch { /* storage is off */ }
  const copies = [here, journal.get(key)].filter(isAttempt).sort((a, b) => timeOf(b) - timeOf(a));
  return { copies, damaged };
}

/**
 * A kept attempt, or null.
 * @param {string} scenario @param {string} seed @param {string} [owner]
 */
export const recallAttempt = (scenario, seed, owner) => copiesOf(attemptKey(scenario, seed, owner)).copies[0] ?? null;

/** Every kept attempt of everybody, latest first. @returns {KeptPlace[]} */
export function everyAttempt() {
  const there = [...journal.keys()].filter((key) => key.startsWith(ATTEMPT)).map((key) => key.slice(ATTEMPT.length));
  return [...new Set([...keysOf(ATTEMPT), ...there])].map((name) => {
    const cut = name.lastIndexOf(":");
    const [scenario, owner = ""] = name.slice(0, cut).split("@");
    const [copy] = copiesOf(ATTEMPT + name).copies;
    /** @param {unknown} value */
    const text = (value) => (typeof value === "string" ? value : undefined);
    return { key: ATTEMPT + name, scenario, seed: name.slice(cut + 1), owner, at: copy ? timeOf(copy) : 0, title: text(copy?.title), address: text(copy?.address), tries: Number(copy?.tries) || 0, over: copy?.over === true };
  }).sort((a, b) => b.at - a.at);
}

/** Those of whoever is at the device now. */
export const keptAttempts = () => everyAttempt().filter(({ owner }) => owner === who());

/**
 * Whether an attempt may be kept: one that is, or one more.
 * @param {string} key
 */
export const roomFor = (key) => copiesOf(key).copies.length > 0 || everyAttempt().length < MOST_ATTEMPTS;

/**
 * Keeps an attempt. Resolves to "kept", to "once" when one of the copies could not be made, to "full" or "off" when neither could,
 * or to "crowded" when so many are kept that somebody must be asked first.
 * @param {string} key @param {KeptAttempt} attempt @returns {Promise<"kept" | "once" | "full" | "off" | "crowded">}
 */
export const keepAttempt = async (key, attempt) => (roomFor(key) ? keepTwice(key, attempt) : "crowded");

/**
 * Keeps an attempt under any key, here and in the journal.
 * @param {string} key @param {KeptAttempt} attempt @returns {Promise<"kept" | "once" | "full" | "off">}
 */
export async function keepTwice(key, attempt) {
  const trouble = put(key, JSON.stringify(attempt)); // at once: the page may be on its way out
  const before = journal.get(key);
  journal.set(key, attempt);
  try {
    await writeDown(key, attempt);
    return trouble ? "once" : "kept";
  } catch (error) {
    if (before) journal.set(key, before);
    else journal.delete(key);
    if (!trouble) return "once";
    return [trouble, error instanceof DOMException ? error.name : ""].includes("QuotaExceededError") ? "full" : "off";
  }
}

/**
 * Forgets an attempt.
 * @param {string} key
 */
export function forgetAttempt(key) {
  forget(key);
  journal.delete(key);
  return strike(key);
}

/**
 * Lays what is kept of an attempt aside, so that a fresh one does not overwrite it; one for each attempt, the last.
 * @param {string} key
 */
export function layAside(key) {
  try {
    const text = readText(key) ?? JSON.stringify(journal.get(key));
    if (text) put(`aside:${key.slice(ATTEMPT.length)}`, text);
  } catch { /* storage is off */ }
  return forgetAttempt(key);
}
