// Scenario and seed in the address: #s=<id>&seed=<digits>, so that a reload or a link gives the same bench; a composed one as
// #a=<its packed text>; #assign and #class for instructors.

const SCREENS = ["assign", "class"];

/** The address's scenario, seed, card of the fault index ("" for its top), packed assignment and screen; each may be null. */
export function readRoute() {
  const parts = new URLSearchParams(location.hash.slice(1));
  const seed = parts.get("seed");
  return { scenario: parts.get("s"), seed: isSeed(seed) ? seed : null, faults: parts.get("faults"), assigned: parts.get("a"), screen: SCREENS.find((one) => parts.has(one)) ?? null };
}

const isSeed = (text) => /^\d{1,20}$/.test(text ?? "") && BigInt(text) < 1n << 64n;

/** Writes scenario and seed into the address without a new history entry. */
export function writeRoute(scenario, seed) {
  history.replaceState(null, "", `#s=${encodeURIComponent(scenario)}&seed=${seed}`);
}

/** The address of a scenario, with a seed or without. */
export const routeTo = (scenario, seed) => `#s=${encodeURIComponent(scenario)}${seed ? `&seed=${seed}` : ""}`;

/** A fresh seed: nine digits, short enough to read out to a neighbour. */
export function newSeed() {
  const [word] = crypto.getRandomValues(new Uint32Array(1));
  return String(100000000 + (word % 900000000));
}
