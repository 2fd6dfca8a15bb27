// @ts-check
// The left side of the workspace shows one thing at a time: the bench as it is drawn, its parts as a list, what is asked, what is
// wrong, the result. The trace stands beside it whatever is shown here.

import { attr, byId, h } from "./dom.js";
import { t } from "./text.js";
/** @import { SideView } from './types/page' */

/** @type {SideView[]} */
const VIEWS = ["brief", "bench", "list", "experiment", "name", "result"];

/** @type {Map<SideView, HTMLButtonElement>} */
const buttons = new Map();
/** @type {Set<SideView>} */
let offered = new Set();

/**
 * Makes the switch, once there are words.
 * @param {HTMLElement} root
 */
export function makeViews(root) {
  for (const view of VIEWS) buttons.set(view, h("button", { type: "button", class: "seg", data: { view }, onclick: () => showView(view) }, t(`view-${view}`)));
  root.replaceChildren(h("div", { class: "segs", role: "group", "aria-label": t("view-title") }, [...buttons.values()]), h("div", { class: "views-more", id: "views-more" }));
}

/**
 * Which of them there are now.
 * @param {Iterable<SideView>} views
 */
export function offerViews(views) {
  offered = new Set(views);
  for (const [view, button] of buttons) button.hidden = !offered.has(view);
}

/** @param {SideView} view */
export const addView = (view) => offerViews([...offered, view]);

/** Goes to the switch itself, at what is shown now. */
export const focusView = () => buttons.get(viewNow())?.focus({ preventScroll: true });

/** What is shown. */
export const viewNow = () => /** @type {SideView} */ (document.body.dataset.side ?? "bench");

/**
 * Shows one of them; what is not offered is left alone.
 * @param {SideView} view
 */
export function showView(view) {
  if (!offered.has(view)) return;
  document.body.dataset.side = view;
  for (const one of VIEWS) byId(one).hidden = one !== view;
  for (const [one, button] of buttons) attr(button, "aria-pressed", String(one === view));
  document.dispatchEvent(new CustomEvent("view-shown", { detail: view }));
}
