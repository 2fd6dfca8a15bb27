// @ts-check
// A fault beside those that it is confused with: one screen of each, with the same heart, and the test that tells it apart.

import { asked } from "../ask.js";
import { dialog as question, h } from "../dom.js";
import { t } from "../text.js";
import { hasTrace, shot } from "./shots.js";
/** @import { FaultBook, FaultWords } from '../types/page' */

/** Shows them in the page's dialog. @param {FaultWords} fault @param {FaultBook["of"]} of */
export async function showAlike(fault, of) {
  const dialog = question();
  const all = [fault, ...fault.confused_with.map(of).filter((one) => one !== undefined)];
  /** All in one time base, on the range that their bench has: what differs is the fault. @param {FaultWords} one */
  const as = (one) => ({ shown_s: one.shown_s === null ? null : fault.shown_s ?? one.shown_s, shown_range_v: null, shown_fresh: fault.shown_fresh });
  const made = all.map((one) => ({ one, picture: hasTrace(one) ? shot(one, () => one.severity[1], () => t("atlas-with_short"), as(one)) : null }));
  dialog.classList.add("alike-ask");
  dialog.replaceChildren(h("div", { class: "alike-all" }, h("h2", { id: "ask-h" }, t("atlas-alike_title")), h("p", { class: "quiet" }, t("atlas-alike_about")),
    h("div", { class: "alike-shots" }, made.map(({ one, picture }) => h("section", { "aria-label": one.name }, h("h3", {}, one.name), picture ? picture.el : h("p", { class: "shot-none" }, t("atlas-paper")), h("p", {}, h("span", { class: "lbl" }, t("fault-test")), " ", one.test)))),
    h("div", { class: "row" }, h("button", { type: "button", class: "btn btn-strong", autofocus: true, onclick: () => dialog.close() }, t("atlas-alike_close")))));
  const closed = asked(dialog);
  for (const { picture } of made) picture?.draw();
  await closed;
  dialog.classList.remove("alike-ask");
}
