// @ts-check
// What a list calls a kept attempt, and where it is opened.

import { routeTo } from "../route.js";
import { briefOf, scenarioOf } from "../scenarios.js";
/** @import { KeptPlace } from '../types/page' */

/** @param {KeptPlace} place */
export function titleOf({ scenario, title }) {
  const known = scenarioOf(scenario);
  return (known?.toml ? briefOf(known).title : title) ?? scenario;
}

/** @param {KeptPlace} place */
export const addressOf = ({ scenario, seed, address }) => (address ? `#a=${address}` : routeTo(scenario, seed));
