// @ts-check
// On a small screen: one pane at a time, chosen at the foot of the screen; the strip docks above it on the other two.

import { attr, h } from "./dom.js";
import { t } from "./text.js";
/** @import { Pane } from './types/page' */

/** @type {Pane[]} */
const PANES = ["bench", "strip", "sheet"];

/** @type {HTMLButtonElement[]} */
let buttons = [];

/**
 * Makes the switch, once there are words.
 * @param {HTMLElement} nav
 */
export function makePanes(nav) {
  buttons = PANES.map((pane) => h("button", { type: "button", class: "pane-tab", data: { pane }, onclick: () => showPane(pane) }, t(`pane-${pane}`)));
  nav.replaceChildren(...buttons);
  nav.setAttribute("aria-label", t("pane-title"));
  document.addEventListener("pane", (event) => showPane(/** @type {CustomEvent<Pane>} */ (event).detail));
}

/** @param {Pane} pane */
export function showPane(pane) {
  document.body.dataset.pane = pane;
  for (const one of buttons) attr(one, "aria-current", one.dataset.pane === pane ? "true" : null);
  scrollTo({ top: 0 });
  document.dispatchEvent(new CustomEvent("pane-shown"));
}

/**
 * A recording has no bench.
 * @param {boolean} there
 */
export const offerBench = (there) => (buttons[0].hidden = !there);
