// @ts-check
// A page that was packed for one assignment opens that and nothing else: in a course site, or by itself.

import { Bench } from "../core.js";
import { byId } from "../dom.js";
import { calm, nothingComes, show } from "../frame.js";
import { closeLab, lab, stand } from "../lab.js";
import { packed } from "../packed.js";
import { newSeed } from "../route.js";
import { allScenarios, briefOf } from "../scenarios.js";
import { keptAttempts } from "../store.js";
import { bringTexts, t } from "../text.js";
import { openAssigned } from "./assigned.js";
import { openScenario } from "./scenario.js";
/** @import { Course, CourseTask } from '../course/index.js' */
/** @import { What } from '../lab.js' */
/** @import { Navigation } from '../navigation.js' */

/** @type {Course | null} */
let course = null; // the course site around this page

/**
 * Opens it, or comes back to it.
 * @param {Navigation} navigation
 */
export async function openPacked(navigation) {
  const there = lab();
  if (there) return there.comeBack();
  const [scenario] = allScenarios();
  await navigation.wait(scenario.load());
  const { assignment } = briefOf(scenario);
  const toml = /** @type {string} */ (scenario.toml);
  if (packed && packed.standard !== "alone") return openInCourse(navigation, packed.standard, { id: scenario.id, toml, assignment });
  const kept = keptAttempts().find((one) => one.scenario === scenario.id);
  if (!assignment) return openScenario(navigation, scenario.id, kept?.seed ?? newSeed());
  const { packText } = await navigation.wait(import("../hand/link.js"));
  return openAssigned(navigation, await navigation.wait(packText(toml)));
}

/** @param {Navigation} navigation @param {string} standard @param {CourseTask} task */
async function openInCourse(navigation, standard, task) {
  const [{ Course }] = await navigation.wait(Promise.all([import("../course/index.js"), bringTexts("course")]));
  const around = (course ??= new Course(standard, task));
  byId("course").replaceChildren(around.el);
  /** @param {string} text */
  const ended = (text) => {
    closeLab();
    show("loading");
    nothingComes();
    calm(text);
  };
  /** @param {Bench} bench @param {string} seed @param {number} tries @param {What} more */
  const begin = (bench, seed, tries, more) => stand(bench, {
    scenario: task.id, seed, ...more, follow: (session) => around.follow(session, tries, ended), again: () => beginTry(tries + 1),
  });
  /** @param {number} tries @param {string} [told] */
  const beginTry = (tries, told) => {
    const seed = around.seed(tries);
    begin(Bench.fresh(task.toml, seed), seed, tries, { told });
  };
  const { state } = around;
  around.state = null;
  if (!state) return beginTry(1);
  let bench;
  try {
    bench = Bench.fromCode(state.code, task.toml);
  } catch {
    return beginTry(state.tries + 1, t("course-other"));
  }
  return begin(bench, bench.view().seed, state.tries, { deeds: 1, begun: bench.begun ?? Date.now() });
}
