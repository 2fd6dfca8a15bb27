// @ts-check
// The screens for instructors: setting a bench for a class, and what the class handed in.

import { byId } from "../dom.js";
import { calm, entitle, report, show } from "../frame.js";
import { closeLab, stand } from "../lab.js";
import { go } from "../navigation.js";
import { allScenarios } from "../scenarios.js";
import { bringTexts, t } from "../text.js";
/** @import { Bench } from '../core.js' */
/** @import { ScreenWays } from '../types/page' */
/** @import { Navigation } from '../navigation.js' */

/** @type {Record<"assign" | "class", () => Promise<{ showScreen(root: HTMLElement, ways: ScreenWays): Promise<{ end(): void }> }>>} */
const SCREENS = { assign: () => import("../assign/index.js"), class: () => import("../class/index.js") };

/**
 * Opens one.
 * @param {Navigation} navigation @param {"assign" | "class"} name
 */
export async function openScreen(navigation, name) {
  closeLab();
  calm("");
  show("loading");
  const [{ showScreen }] = await navigation.wait(Promise.all([SCREENS[name](), bringTexts("class"), bringTexts("hand")]));
  const section = byId(name);
  const root = /** @type {HTMLElement} */ (section.cloneNode(false)); // two that are on their way do not write into one another
  const made = await navigation.wait(showScreen(root, { scenarios: allScenarios(), report, standStill }), (late) => late.end());
  section.replaceWith(root);
  entitle(t(`${name}-title`));
  show(name, () => made.end());
  root.querySelector("h1")?.focus({ preventScroll: true });

  /**
   * Shows somebody's attempt, to be looked at.
   * @param {Bench} bench
   */
  function standStill(bench) {
    return go((next) => {
      next.write(`#${name}`);
      stand(bench, { back: () => go((then) => openScreen(then, name)) });
    });
  }
}
