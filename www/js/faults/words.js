// @ts-check
// The catalogue of faults with its words. They are brought when they are first needed, and only once.

import { catalogue } from "../core.js";
import { bringTexts, has, t } from "../text.js";
/** @import { FaultBook, FaultWords } from '../types/page' */

/** @type {FaultBook | null} */
let made = null;
// From "nothing works" to "it works and is misread".
const ORDER = ["no_recorder", "flat", "small", "cut", "fuzzy", "misshapen", "jumpy", "wandering", "crowded", "paper"];
const PARTS = /** @type {const} */ (["cause", "seen", "test", "remedy", "model"]);

/**
 * The catalogue: {faults: [{id, impression, confused_with, tests, name, cause, seen, test, remedy, model}],
 * impressions: [{id, name, faults}], of(id)}. Rejects when the words cannot be had; a later call tries anew.
 * @returns {Promise<FaultBook>}
 */
export async function faultWords() {
  await bringTexts("faults");
  made ??= make();
  return made;
}

function make() {
  const faults = catalogue().map((fault) => {
    const key = `entry-${fault.id}`;
    return /** @type {FaultWords} */ ({ ...fault, name: has(key) ? t(key) : fault.id, ...Object.fromEntries(PARTS.map((part) => [part, t(`${key}.${part}`)])) });
  });
  const used = new Set(faults.map((fault) => fault.impression));
  const ids = [...ORDER.filter((id) => used.has(id)), ...[...used].filter((id) => !ORDER.includes(id))];
  const impressions = ids.map((id) => ({ id, name: t(`impression-${id}`), faults: faults.filter((fault) => fault.impression === id) }));
  return { faults, impressions, of: (/** @type {string} */ id) => faults.find((fault) => fault.id === id) };
}
