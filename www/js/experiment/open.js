// @ts-check
// Brings the experiment of a scenario with its words, when one is opened that has one.

import { bringTexts } from "../text.js";
import { scenarioWords } from "../scenarios.js";
/** @import { Session } from '../session.js' */

/** @param {HTMLElement} root @param {Session} session */
export async function openExperiment(root, session) {
  const [{ ExperimentPane }] = await Promise.all([import("./index.js"), bringTexts("experiment"), scenarioWords()]);
  if (!session.ended) new ExperimentPane(root, session);
}
