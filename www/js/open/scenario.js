// @ts-check
// Opening a scenario: a bench of one's own, fresh or taken up where it was left; and its worked example.

import { askResume } from "../ask.js";
import { Bench } from "../core.js";
import { byId } from "../dom.js";
import { show } from "../frame.js";
import { takeUpKept } from "../kept.js";
import { wiringOf } from "../help/rewire.js";
import { closeLab, lab, stand } from "../lab.js";
import { go } from "../navigation.js";
import { newSeed, routeTo } from "../route.js";
import { briefOf, scenarioOf } from "../scenarios.js";
import { askRoom } from "../room.js";
import { attemptKey, copiesOf, layAside } from "../store.js";
import { t } from "../text.js";
import { Nowhere } from "./nowhere.js";
/** @import { Navigation } from '../navigation.js' */
/** @import { Action } from '../types/action' */

/**
 * The text of a scenario of this page, once it is there and can be used.
 * @param {Navigation} navigation @param {string} id
 */
async function bring(navigation, id) {
  const scenario = scenarioOf(id);
  if (!scenario) throw new Nowhere(t("error-no_scenario", { id }));
  await navigation.wait(scenario.load());
  briefOf(scenario);
  return /** @type {string} */ (scenario.toml);
}

/**
 * Opens a scenario with a seed, resuming a kept attempt if the student wants it; with goOn they have said so already.
 * wiring: the deeds that connect it as it was connected before.
 * @param {Navigation} navigation @param {string} id @param {string} seed @param {boolean} [goOn] @param {Action[]} [wiring]
 */
export async function openScenario(navigation, id, seed, goOn = false, wiring = []) {
  const toml = await bring(navigation, id);
  navigation.write(routeTo(id, seed));
  const again = () => {
    const before = lab();
    const wired = before?.scenario === id ? wiringOf(before.session.view) : [];
    return go((next) => openScenario(next, id, newSeed(), false, wired.length > 0 ? wired : wiring));
  };
  const key = attemptKey(id, seed);
  const { copies: [kept], damaged } = copiesOf(key);
  /** @type {ReturnType<typeof takeUpKept>} */
  let found = { told: "" };
  if (kept || damaged) {
    closeLab();
    show("loading");
    if (!kept || goOn || (await navigation.wait(askResume(kept)))) found = takeUpKept(id, seed);
    else layAside(key); // whoever it was: nothing is thrown away for it
  }
  if (!found.bench) await navigation.wait(askRoom(key));
  const attempt = found.bench ? { deeds: found.kept.deeds ?? 1, begun: found.kept.begun } : {};
  stand(found.bench ?? Bench.fresh(toml, seed), { scenario: id, seed, again, told: found.told, wiring, ...attempt });
}

/**
 * Opens a scenario's worked example; after it, a bench of one's own, with the help that goes with having watched.
 * @param {Navigation} navigation @param {string} id
 */
export async function openWatched(navigation, id) {
  const toml = await bring(navigation, id);
  const nowYou = () => go(async (next) => {
    await openScenario(next, id, newSeed());
    lab()?.offer?.begin("shown");
    byId("main").focus();
  });
  stand(Bench.worked(toml), { watched: id, nowYou });
}
