// The screens for instructors: setting a bench for a class, and what the class handed in.

import { calm, entitle, report, show } from "../frame.js";
import { closeLab, stand } from "../lab.js";
import { go } from "../navigation.js";
import { allScenarios } from "../scenarios.js";
import { bringTexts, t } from "../text.js";

const SCREENS = { assign: () => import("../assign/index.js"), class: () => import("../class/index.js") };

export async function openScreen(navigation, name) {
  closeLab();
  calm("");
  show("loading");
  const [{ showScreen }] = await navigation.wait(Promise.all([SCREENS[name](), bringTexts("class"), bringTexts("hand")]));
  const section = document.getElementById(name);
  const root = section.cloneNode(false); // two that are on their way do not write into one another
  const made = await navigation.wait(showScreen(root, { scenarios: allScenarios(), report, standStill }), (late) => late.end());
  section.replaceWith(root);
  entitle(t(`${name}-title`));
  show(name, () => made.end());
  root.querySelector("h1")?.focus({ preventScroll: true });

  /** Shows somebody's attempt, to be looked at. */
  function standStill(bench) {
    return go((next) => {
      next.write(`#${name}`);
      stand(bench, { back: () => go((then) => openScreen(then, name)) });
    });
  }
}
