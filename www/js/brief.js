// @ts-check
// What a lab says of itself: in the head its title and seed, beside the bench what is to be done.

import { byId, h } from "./dom.js";
import { inWords } from "./scenarios.js";
import { t } from "./text.js";
import { button } from "./widgets.js";
/** @import { View } from './types/view' */

/** @param {View} view */
const toldOf = (view) => (view.scenario ? inWords(view.scenario) : null);
/** @param {View} view */
const titleOf = (view) => toldOf(view)?.title ?? view.recording_name ?? "";

/**
 * Writes title and seed into the head, with the way back from a replay; the title.
 * @param {View} view @param {(() => unknown) | null} back
 */
export function whereabouts(view, back) {
  const title = titleOf(view);
  const seed = view.kind === "recording" ? "" : h("span", { class: "seed" }, t("where-seed", { v: view.seed }));
  byId("where").replaceChildren(h("b", {}, title), seed, back ? button(t("class-back"), back, { kind: "btn-back" }) : "");
  return title;
}

/**
 * The heading, the aim and the brief.
 * @param {View} view
 */
export function brief(view) {
  const { aim, brief: text } = toldOf(view) ?? { aim: t("recording-about"), brief: "" };
  return [h("h2", { id: "brief-h" }, titleOf(view)), h("p", { class: "aim" }, aim), text ? h("p", { class: "pencil" }, text) : ""];
}
