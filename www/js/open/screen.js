// @ts-check
// The screens for instructors: setting a bench for a class, what the class handed in, and what goes on paper.

import { byId } from "../dom.js";
import { calm, entitle, report, show } from "../frame.js";
import { closeLab, stand } from "../lab.js";
import { allScenarios } from "../scenarios.js";
import { bringTexts, t } from "../text.js";
/** @import { ScreenModule, ScreenName } from '../types/page' */
/** @import { Navigation } from '../navigation.js' */

/** @type {Record<ScreenName, () => Promise<ScreenModule>>} */
const SCREENS = { assign: () => import("../assign/index.js"), class: () => import("../class/index.js"), paper: () => import("../paper/index.js") };

let stood = ""; // the screen that stood here last: from it the browser's own Back leads there again

/**
 * Opens one; with a number, an attempt of the class, which is only looked at.
 * @param {Navigation} navigation @param {ScreenName} name @param {number | null} [look]
 */
export async function openScreen(navigation, name, look = null) {
  closeLab();
  calm("");
  show("loading");
  const [module] = await navigation.wait(Promise.all([SCREENS[name](), bringTexts("class"), bringTexts("hand")]));
  const bench = look === null ? null : await navigation.wait(module.looked?.(look) ?? Promise.resolve(null), (late) => late?.free());
  if (bench) {
    const from = stood;
    stood = "";
    stand(bench, { back: () => (from === name ? history.back() : (location.hash = `#${name}`)) });
    if (look !== null) calm(module.lookedTold?.(look) ?? "");
    return;
  }
  const section = byId(name);
  const root = /** @type {HTMLElement} */ (section.cloneNode(false)); // two that are on their way do not write into one another
  const made = await navigation.wait(module.showScreen(root, { scenarios: allScenarios(), report }), (late) => late.end());
  section.replaceWith(root);
  entitle(t(`${name}-title`));
  show(name, () => made.end());
  stood = name;
  if (made.comeBack?.()) return;
  root.querySelector("h1")?.focus({ preventScroll: true });
  scrollTo({ top: 0 });
}
