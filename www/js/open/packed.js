// A page that was packed for one assignment opens that and nothing else: in a course site, or by itself.

import { Bench } from "../core.js";
import { calm, nothingComes, show } from "../frame.js";
import { closeLab, lab, stand } from "../lab.js";
import { packed } from "../packed.js";
import { newSeed } from "../route.js";
import { allScenarios, briefOf } from "../scenarios.js";
import { keptAttempts } from "../store.js";
import { bringTexts, t } from "../text.js";
import { openAssigned } from "./assigned.js";
import { openScenario } from "./scenario.js";

let course = null; // the course site around this page

export async function openPacked(navigation) {
  const there = lab();
  if (there) return there.comeBack();
  const [scenario] = allScenarios();
  await navigation.wait(scenario.load());
  const { assignment } = briefOf(scenario);
  if (packed.standard !== "alone") return openInCourse(navigation, scenario, assignment);
  const kept = keptAttempts().find((one) => one.scenario === scenario.id);
  if (!assignment) return openScenario(navigation, scenario.id, kept?.seed ?? newSeed());
  const { packText } = await navigation.wait(import("../hand/link.js"));
  return openAssigned(navigation, await navigation.wait(packText(scenario.toml)));
}

async function openInCourse(navigation, scenario, assignment) {
  const [{ Course }] = await navigation.wait(Promise.all([import("../course/index.js"), bringTexts("course")]));
  course ??= new Course(packed.standard, { id: scenario.id, toml: scenario.toml, assignment });
  document.getElementById("course").replaceChildren(course.el);
  const ended = (text) => {
    closeLab();
    show("loading");
    nothingComes();
    calm(text);
  };
  const begin = (bench, seed, tries, more) => stand(bench, {
    scenario: scenario.id, seed, ...more, follow: (session) => course.follow(session, tries, ended), again: () => beginTry(tries + 1),
  });
  const beginTry = (tries, told) => {
    const seed = course.seed(tries);
    begin(Bench.fresh(scenario.toml, seed), seed, tries, { told });
  };
  const { state } = course;
  course.state = null;
  if (!state) return beginTry(1);
  let bench;
  try {
    bench = Bench.fromCode(state.code, scenario.toml);
  } catch {
    return beginTry(state.tries + 1, t("course-other"));
  }
  return begin(bench, bench.view().seed, state.tries, { deeds: 1 });
}
