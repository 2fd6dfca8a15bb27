// @ts-check
// Which skill is next, and a scenario that calls for it: due ones first, then those that fail, then those that are new.

/** @import { KnownScenario } from '../types/page' */
/** @import { KeptEvidence, Standing } from '../types/told' */

/** @type {Record<Standing["state"], number>} */
const RANK = { due: 0, practising: 1, once: 2, new: 3, ready: 9 };

// Where each skill is met, from the plainest to the hardest: a kind of question, or how an id begins.
/** @type {Record<string, string[]>} */
const MEETS = {
  wiring: ["first-wiring", "whole-bench"],
  link: ["no-recorder", "first-wiring"],
  contact: ["small-pulse", "odd-wave", "first-wiring"],
  range: ["kind:read_range", "out-of-sight", "first-wiring"],
  time_base: ["out-of-sight", "thick-trace", "slow-waves"],
  hum: ["hum-on-the-trace", "thick-trace"],
  motion: ["loose-and-restless", "kind:clean_part", "spikes-and-gaps", "slow-waves"],
  recording: ["rest-pulse", "first-wiring"],
  window: ["kind:given_window", "kind:clean_part", "kind:irregular", "kind:after_exercise", "rest-pulse"],
  counting: ["rest-pulse", "kind:given_window", "kind:intervals"],
  arithmetic: ["kind:intervals", "kind:given_window", "rest-pulse"],
  uncertainty: ["kind:compare", "kind:irregular", "rest-pulse"],
};

/** The skills in the order of the work. */
export const SKILLS = Object.keys(MEETS);

/**
 * The skill to practise next, or null when all are ready. skills: of the map.
 * @param {Record<string, Standing>} skills
 */
export function nextSkill(skills) {
  const open = SKILLS.map((skill) => /** @type {[string, Standing]} */ ([skill, skills[skill]])).filter(([, { state }]) => RANK[state] < RANK.ready);
  /** @param {[string, Standing]} one */
  const worth = ([, { state, fails, passes }]) => RANK[state] * 1000 - (fails - passes);
  return open.sort((one, other) => worth(one) - worth(other))[0]?.[0] ?? null;
}

/**
 * A scenario for a skill: of those that call for it the one tried least, plainest first.
 * @param {string} skill @param {KnownScenario[]} scenarios @param {KeptEvidence[]} past
 */
export function scenarioFor(skill, scenarios, past) {
  /** @param {string} way */
  const fits = (way) => scenarios.filter(({ brief }) => (way.startsWith("kind:") ? brief.task?.kind === way.slice(5) : brief.id.startsWith(way)));
  const all = (MEETS[skill] ?? []).flatMap(fits);
  /** @param {KnownScenario} one */
  const tried = ({ brief }) => past.filter((one) => one.scenario === brief.id).length;
  return all.reduce((/** @type {KnownScenario | null} */ best, one) => (best === null || tried(one) < tried(best) ? one : best), null);
}
