// What the page keeps on this device. Storage may be switched off or full: then nothing is kept and nothing breaks.

const PREFIX = "dicrotic:";

/** Reads a kept value, or null. */
export function recall(key) {
  try {
    return JSON.parse(localStorage.getItem(PREFIX + key));
  } catch {
    return null;
  }
}

/** Keeps a value; false when the device does not allow it. */
export function keep(key, value) {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** Forgets a value. */
export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch { /* nothing was kept */ }
}

/** What follows a beginning in the kept keys; empty where storage is off. */
export function keysOf(beginning) {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX + beginning)).map((key) => key.slice(PREFIX.length + beginning.length));
  } catch {
    return [];
  }
}

const ATTEMPT = "attempt:";
const MOST_ATTEMPTS = 24; // older ones make room, so that the device's store does not fill up

/** The key under which an attempt is kept. */
export const attemptKey = (scenario, seed) => `${ATTEMPT}${scenario}:${seed}`;

/** The kept attempts, latest first: [{scenario, seed, at}]. */
export function keptAttempts() {
  return keysOf(ATTEMPT).map((key) => {
    const cut = key.lastIndexOf(":");
    return { scenario: key.slice(0, cut), seed: key.slice(cut + 1), at: Number(recall(ATTEMPT + key)?.at) || 0 };
  }).sort((a, b) => b.at - a.at);
}

/** Keeps an attempt, and forgets the oldest beyond MOST_ATTEMPTS. */
export function keepAttempt(scenario, seed, attempt) {
  for (const old of keptAttempts().slice(MOST_ATTEMPTS)) forget(attemptKey(old.scenario, old.seed));
  return keep(attemptKey(scenario, seed), attempt);
}
