// @ts-check
// Whose work lies on this device, and taking it away.

import { allKeys, CLASSES, forget, readText, recall } from "../device.js";
import { strikeAll } from "../journal.js";
import { copiesOf, everyAttempt, forgetAttempt, openJournal } from "../store.js";
import { beGuest, beWho, guest, ownerOf, who } from "../who.js";

/** @typedef {{ owner: string, hint: string, attempts: number, pages: number, at: number }} Owner */

/**
 * Everybody whose work lies here, latest first; owner "" is nobody by name.
 * @returns {Owner[]}
 */
export function owners() {
  /** @type {Map<string, Owner>} */
  const all = new Map();
  /** @param {string} owner */
  const of = (owner) => {
    const found = all.get(owner) ?? { owner, hint: String(recall(`owner:${owner}`) ?? "…").slice(0, 4), attempts: 0, pages: 0, at: 0 };
    all.set(owner, found);
    return found;
  };
  for (const { owner, at } of everyAttempt()) {
    const one = of(owner);
    one.attempts += 1;
    one.at = Math.max(one.at, at);
  }
  for (const key of allKeys()) {
    const owner = ownerOf(key);
    if (owner === null) continue;
    if (key.startsWith("page:")) of(owner).pages += 1;
    else if (key.startsWith("course:")) of(owner).attempts += 1;
    else if (key.startsWith("history") || key.startsWith("owner:")) of(owner);
    if (key.startsWith("course:")) of(owner).at = Math.max(of(owner).at, copiesOf(key).copies[0]?.at ?? 0);
  }
  return [...all.values()].sort((a, b) => b.at - a.at);
}

/** Takes away what belongs to whoever is at the device. */
export async function forgetMe() {
  const me = who();
  await Promise.all(everyAttempt().filter(({ owner }) => owner === me).map(({ key }) => forgetAttempt(key)));
  for (const key of allKeys()) if (ownerOf(key) === me) await forgetAttempt(key);
  beWho("");
}

/** Takes everything away, whoever it belongs to. */
export async function forgetAll() {
  await strikeAll();
  for (const key of allKeys()) forget(key);
  indexedDB.deleteDatabase(CLASSES);
  if (guest()) beGuest(true);
  else beWho("");
  await openJournal();
}

/**
 * The text of something that was laid aside, whole.
 * @param {string} key
 */
export const asideText = (key) => readText(`aside:${key}`) ?? "";
