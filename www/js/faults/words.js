// The catalogue of faults with its words. They are brought when they are first needed, and only once.

import { catalogue } from "../core.js";
import { languageNow } from "../text.js";

let coming = null;

/**
 * The catalogue: {faults: [{id, impression, confused_with, tests, name, cause, seen, test, remedy, model}],
 * impressions: [{id, name, faults}], of(id)}. Rejects when the words cannot be had; a later call tries anew.
 */
export function faultWords() {
  coming ??= bring().catch((error) => {
    coming = null;
    throw error;
  });
  return coming;
}

async function bring() {
  const path = `texts/faults.${languageNow()}.json`;
  const answer = await fetch(path);
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const texts = await answer.json();
  const faults = catalogue().map((fault) => ({ ...fault, ...(texts[fault.id] ?? { name: fault.id }) }));
  const ids = [...new Set(faults.map((fault) => fault.impression))];
  const impressions = ids.map((id) => ({ id, name: texts.impressions?.[id] ?? id, faults: faults.filter((fault) => fault.impression === id) }));
  return { faults, impressions, of: (id) => faults.find((fault) => fault.id === id) };
}
