// @ts-check
// The bench that an instructor is setting: how it begins, and how it leaves the page.

import { composed, wordHash } from "../desk.js";
import { newSeed } from "../route.js";
import { t } from "../text.js";
/** @import { ScenarioValue } from '../types/told' */

/**
 * A bench without anything wrong, to begin with.
 * @returns {ScenarioValue}
 */
export const blank = () => ({
  id: "our-own-bench", level: 2, title: t("assign-blank_title"), aim: t("assign-blank_aim"), brief: t("assign-blank_brief"), help: "alone",
  subject: { restlessness: 0.3 }, recorder: { range_v: 0.1 }, fault: [], name_faults: false, pass: {},
  assignment: { key: `key-${newSeed()}`, seeds: "each", attempts: 2, opening: "", closing: "" },
});

/**
 * A scenario as it leaves this page: with the hash of the instructor's word in its place.
 * @param {ScenarioValue} scenario @returns {ScenarioValue}
 */
export function sealed(scenario) {
  const { assignment } = scenario;
  composed(scenario); // a word that cannot be one is refused before it is a hash
  return assignment?.password ? { ...scenario, assignment: { ...assignment, password: wordHash(assignment.key, assignment.password) } } : scenario;
}
