// @ts-check
// Which scenario is next: the core chooses among those whose text is there.

import { nextBench } from "../core.js";
/** @import { KnownScenario } from '../types/page' */
/** @import { KeptEvidence } from '../types/told' */

/** The skills in the order of the work. */
export const SKILLS = ["wiring", "link", "contact", "range", "time_base", "hum", "motion", "recording", "window", "counting", "arithmetic", "uncertainty"];

/**
 * The proposal with its scenario, or null where nothing is wanting.
 * @param {KeptEvidence[]} past @param {KnownScenario[]} scenarios @param {number} now
 */
export function proposed(past, scenarios, now) {
  const next = nextBench(past, scenarios.map(({ brief: { id, level, skills, may_ask, worked } }) => ({ id, level, skills, may_ask, worked })), now);
  const scenario = next && scenarios.find(({ brief }) => brief.id === next.id);
  return scenario ? { ...next, scenario } : null;
}
