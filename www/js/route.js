// @ts-check
// Scenario and seed in the address: #s=<id>&seed=<digits>, so that a reload or a link gives the same bench; a composed one as
// #a=<its packed text>; a course of several as #c=<its packed text>; #assign, #class and
// #paper for instructors, and #class&look=<n> for one attempt of the class.

/** @import { Route, ScreenName, SideName } from './types/page' */

/** @type {SideName[]} */
const SIDES = ["faults", "skills", "notebook", "report", "words", "teach", "device", "own"];
/** @type {ScreenName[]} */
const SCREENS = ["assign", "class", "paper"];

/**
 * What the address asks for: a scenario and its seed, a worked example to watch, a packed assignment or course, an instructor's screen, or
 * a screen beside the bench with what is to be turned to there ("" for its top). Each may be null.
 * @returns {Route}
 */
export function readRoute() {
  const parts = new URLSearchParams(location.hash.slice(1));
  const seed = parts.get("seed");
  /** @type {<N extends string>(names: N[]) => N | null} */
  const named = (names) => names.find((one) => parts.has(one)) ?? null;
  const side = named(SIDES);
  return { scenario: parts.get("s"), seed: isSeed(seed) ? seed : null, watch: parts.get("watch"), assigned: parts.get("a"), course: parts.get("c"), screen: named(SCREENS), look: readPlace(parts.get("look")), side, turn: side && parts.get(side) };
}

/** @param {string | null} text */
const readPlace = (text) => (/^\d{1,6}$/.test(text ?? "") ? Number(text) : null);

/** @param {string | null} text */
const isSeed = (text) => /^\d{1,20}$/.test(text ?? "") && BigInt(text ?? "") < 1n << 64n;

/**
 * The address of a scenario, with a seed or without.
 * @param {string} scenario @param {string | null} [seed]
 */
export const routeTo = (scenario, seed) => `#s=${encodeURIComponent(scenario)}${seed ? `&seed=${seed}` : ""}`;

/**
 * The address of a scenario's worked example.
 * @param {string} scenario
 */
export const watchRoute = (scenario) => `#watch=${encodeURIComponent(scenario)}`;

/**
 * The address of one attempt of the class.
 * @param {number} k
 */
export const lookRoute = (k) => `#class&look=${k}`;

/** A fresh seed: nine digits, short enough to read out to a neighbour. */
export function newSeed() {
  const [word] = crypto.getRandomValues(new Uint32Array(1));
  return String(100000000 + (word % 900000000));
}
