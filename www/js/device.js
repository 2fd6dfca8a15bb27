// @ts-check
// The lowest layer of keeping: texts under keys, on this device or, for a guest, in this page alone. Every copy of the page has its
// own, by its address: two copies on one server share nothing. Storage may be switched off or full: then nothing is kept and nothing breaks.

import { packed } from "./packed.js";

/**
 * Where this copy of the page lies; a page that is one file by itself is told from its neighbours by its name.
 */
function place() {
  const { protocol, pathname } = location;
  return protocol === "file:" || packed?.standard === "alone" ? pathname : pathname.slice(0, pathname.lastIndexOf("/") + 1);
}

const copy = place() === "/" ? "" : `@${place()}`;
/** What the keys of this copy begin with. */
export const PREFIX = `dicrotic${copy}:`;
/** The name of this copy's database. */
export const DATABASE = `dicrotic${copy}`;

/** The name of this copy's database of classes, one a tab. */
export const CLASSES = `dicrotic${copy}-classes`;

/**
 * A text that holds for this tab, also when it is loaded anew; "" for none.
 * @param {string} name
 */
export function ofTab(name) {
  try {
    return sessionStorage.getItem(PREFIX + name) ?? "";
  } catch {
    return "";
  }
}

/**
 * Lets a text hold for this tab; "" takes it away.
 * @param {string} name @param {string} value
 */
export function toTab(name, value) {
  try {
    if (value) sessionStorage.setItem(PREFIX + name, value);
    else sessionStorage.removeItem(PREFIX + name);
  } catch { /* storage is off: it holds as long as the page */ }
}

/** @type {Map<string, string>} */
const page = new Map(); // what lives as long as this page
/** Kinds of keys that stay in the page, by how they begin. @type {(key: string) => boolean} */
let stays = () => false;

/**
 * From now on keys of a kind live in this page alone, and what lies on the device under them is not seen.
 * @param {(key: string) => boolean} kind
 */
export function keepInPage(kind) {
  stays = kind;
}

/**
 * Whether a key lives in this page alone.
 * @param {string} key
 */
export const livesInPage = (key) => stays(key);

/** Forgets what lives in this page alone. */
export const emptyPage = () => page.clear();

/**
 * The text of a key, or null; throws where storage is off.
 * @param {string} key
 */
export const readText = (key) => (stays(key) ? page.get(key) ?? null : localStorage.getItem(PREFIX + key));

/**
 * Puts a text; the name of what is in the way, or nothing.
 * @param {string} key @param {string} text
 */
export function put(key, text) {
  if (stays(key)) {
    page.set(key, text);
    return "";
  }
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
  page.delete(key);
  if (stays(key)) return;
  try {
    localStorage.removeItem(PREFIX + key);
  } catch { /* nothing was kept */ }
}

/** All keys, as far as they can be seen; none where storage is off. */
export function allKeys() {
  try {
    const there = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX)).map((key) => key.slice(PREFIX.length));
    return [...there.filter((key) => !stays(key)), ...page.keys()];
  } catch {
    return [...page.keys()];
  }
}

/**
 * What follows a beginning in the keys.
 * @param {string} beginning
 */
export const keysOf = (beginning) => allKeys().filter((key) => key.startsWith(beginning)).map((key) => key.slice(beginning.length));

/**
 * Reads a kept value, or null.
 * @param {string} key @returns {any}
 */
export function recall(key) {
  try {
    return JSON.parse(readText(key) ?? "null");
  } catch {
    return null;
  }
}

/**
 * Keeps a value; false when the device does not allow it.
 * @param {string} key @param {unknown} value
 */
export const keep = (key, value) => put(key, JSON.stringify(value)) === "";

// What cannot be read is laid aside as it stands, so that it is in nobody's way and nothing is thrown away.

const ASIDE = "aside:";

/**
 * Lays the text of a key aside, in place of what was laid aside under that name before.
 * @param {string} key @param {string | null | undefined} [text] what stands there, if the caller has it
 */
export function layTextAside(key, text) {
  try {
    const found = text ?? readText(key);
    if (found && put(ASIDE + key, found)) return; // no room: it stays where it is
  } catch { /* storage is off */ }
  forget(key);
}

/**
 * Reads a kept value that must be of a kind; what is not is laid aside, and null is what there is.
 * @template T @param {string} key @param {(value: unknown) => value is T} fits @returns {T | null}
 */
export function recallOnly(key, fits) {
  let text = null;
  try {
    text = readText(key);
    if (text === null) return null;
    const value = JSON.parse(text);
    if (fits(value)) return value;
  } catch { /* no such text, or storage is off */ }
  if (text !== null) layTextAside(key, text);
  return null;
}

/** What was laid aside: keys and texts. */
export const aside = () => keysOf(ASIDE).map((key) => ({ key, text: readText(ASIDE + key) ?? "" }));

/**
 * Forgets something that was laid aside.
 * @param {string} key
 */
export const forgetAside = (key) => forget(ASIDE + key);
