// @ts-check
// A page that was packed for one assignment opens that and nothing else: in a course site, or by itself.

import { Bench } from "../core.js";
import { byId, h } from "../dom.js";
import { calm, nothingComes, show } from "../frame.js";
import { closeLab, lab, stand } from "../lab.js";
import { go } from "../navigation.js";
import { packed } from "../packed.js";
import { newSeed } from "../route.js";
import { allScenarios, briefOf } from "../scenarios.js";
import { keptAttempts } from "../store.js";
import { bringTexts, t } from "../text.js";
import { openAssigned } from "./assigned.js";
import { openScenario } from "./scenario.js";
/** @import { Course } from '../course/index.js' */
/** @import { What } from '../lab.js' */
/** @import { Navigation } from '../navigation.js' */

/** @type {Course | null} */
let course = null; // the course site around this page
let alone = false; // packed for a course site, and none is there

/**
 * Opens it, or comes back to it.
 * @param {Navigation} navigation
 */
export async function openPacked(navigation) {
  const there = lab();
  if (there) return there.comeBack();
  const [scenario] = allScenarios();
  await navigation.wait(scenario.load());
  const { assignment, title } = briefOf(scenario);
  const toml = /** @type {string} */ (scenario.toml);
  if (packed && packed.standard !== "alone" && !alone) {
    const [{ Course }, { beginSession }] = await navigation.wait(Promise.all([import("../course/index.js"), import("../course/begin.js"), bringTexts("course"), bringTexts("class")]));
    const lms = course?.lms ?? (await navigation.wait(beginSession(packed.standard)));
    if (typeof lms === "string") return nothingElse(title, lms);
    if (lms) return openInCourse(navigation, (course ??= new Course(lms, { id: scenario.id, title, toml, assignment })));
    alone = true; // no site around it: it is a page like others
  }
  const kept = keptAttempts().find((one) => one.scenario === scenario.id);
  if (assignment) {
    const { packText } = await navigation.wait(import("../hand/link.js"));
    await openAssigned(navigation, await navigation.wait(packText(toml)));
  } else await openScenario(navigation, scenario.id, kept?.seed ?? newSeed());
  if (alone) byId("course").replaceChildren(h("p", { class: "quiet", role: "status" }, t("course-none")));
}

/**
 * Leaves nothing on the page but what it was for, and words: a visit that has ended, or cannot begin.
 * @param {string} title @param {string} text
 */
function nothingElse(title, text) {
  closeLab();
  show("loading");
  nothingComes();
  byId("course").replaceChildren(h("h1", { class: "course-over" }, title));
  calm(text);
}

/** @param {Navigation} navigation @param {Course} around */
async function openInCourse(navigation, around) {
  const { mayBegin, mayGoOn } = await navigation.wait(import("../course/words.js"));
  const { task, most } = around;
  byId("course").replaceChildren(around.el);
  /** @param {string} text */
  const ended = (text) => nothingElse(task.title, text);
  /** @param {Bench} bench @param {string} seed @param {{ tries: number, heart: number }} which @param {What} more */
  const begin = (bench, seed, which, more) => stand(bench, {
    scenario: task.id, seed, ...more, keeper: around, follow: (session) => around.follow(session, which, ended),
    handOver: (root, session) => around.handOver(root, session), again: () => go((next) => beginTry(next, which.tries + 1, { away: true })),
  });
  /** @param {Navigation} next @param {number} tries @param {{ told?: string, away?: boolean }} how */
  async function beginTry(next, tries, { told, away = false }) {
    if (most !== null && tries > most) return calm(t("course-no_tries", { n: most }));
    const opening = task.assignment?.opening ?? "";
    const host = away ? "" : around.lms.host; // it was told before the first one
    if ((away || opening || host) && !(await next.wait(mayBegin({ title: task.title, opening: away ? "" : opening, n: tries, of: most, away, host })))) return undefined;
    const { heart, seed } = around.next();
    return void begin(Bench.fresh(task.toml, seed), seed, { tries, heart }, { told });
  }
  if (!around.state && !around.foreign) {
    const untaken = around.copies.untaken();
    if (untaken?.state && (await navigation.wait(mayGoOn(untaken.at)))) around.adopt(untaken.state);
  }
  const { state } = around;
  if (!state) return beginTry(navigation, 1, { told: around.foreign ? t("course-other") : "" });
  let bench;
  try {
    bench = Bench.fromCode(state.code, task.toml);
  } catch {
    return beginTry(navigation, 1, { told: t("course-other") });
  }
  return void begin(bench, bench.view().seed, state, { deeds: 1, begun: bench.begun ?? Date.now() });
}
