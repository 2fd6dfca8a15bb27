// Scenario and seed in the address: #s=<id>&seed=<digits>, so that a reload or a link gives the same bench.

const SIDES = ["faults", "skills", "notebook", "report"];

/**
 * What the address asks for: a scenario and its seed, a worked example to watch, or a screen beside the bench with what is to
 * be turned to there ("" for its top). Each may be null.
 */
export function readRoute() {
  const parts = new URLSearchParams(location.hash.slice(1));
  const seed = parts.get("seed");
  const side = SIDES.find((name) => parts.has(name)) ?? null;
  return { scenario: parts.get("s"), seed: isSeed(seed) ? seed : null, watch: parts.get("watch"), side, turn: side && parts.get(side) };
}

const isSeed = (text) => /^\d{1,20}$/.test(text ?? "") && BigInt(text) < 1n << 64n;

/** Writes scenario and seed into the address without a new history entry. */
export function writeRoute(scenario, seed) {
  history.replaceState(null, "", `#s=${encodeURIComponent(scenario)}&seed=${seed}`);
}

/** The address of a scenario, with a seed or without. */
export const routeTo = (scenario, seed) => `#s=${encodeURIComponent(scenario)}${seed ? `&seed=${seed}` : ""}`;

/** The address of a scenario's worked example. */
export const watchRoute = (scenario) => `#watch=${encodeURIComponent(scenario)}`;

/** A fresh seed: nine digits, short enough to read out to a neighbour. */
export function newSeed() {
  const [word] = crypto.getRandomValues(new Uint32Array(1));
  return String(100000000 + (word % 900000000));
}
