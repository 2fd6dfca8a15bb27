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

/** The key under which an attempt is kept. */
export const attemptKey = (scenario, seed) => `attempt:${scenario}:${seed}`;
