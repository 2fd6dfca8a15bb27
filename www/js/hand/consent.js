// @ts-check
// Whether a student's results may be used in a study of their class: asked before the first test of it, once for a student on a
// device. Whatever is answered, the bench opens; the answer goes into the attempt, so that it stands in the result.

import { asked } from "../ask.js";
import { keep, recall } from "../device.js";
import { dialog as question, h } from "../dom.js";
import { bringTexts, t } from "../text.js";
import { mark } from "../who.js";

/** What is said before the question, one thing each. */
const TOLD = ["about", "what", "free", "later", "seen"];

/**
 * The answer of whoever is at the device, asked for where there is none yet; null where they turned away without one.
 * @param {string} study @returns {Promise<boolean | null>}
 */
export async function askConsent(study) {
  const key = `consent:${encodeURIComponent(study)}${mark()}`;
  const before = recall(key);
  if (typeof before === "boolean") return before;
  await bringTexts("study");
  const dialog = question();
  /** @param {"yes" | "no"} word */
  const answer = (word) => h("button", { type: "button", class: "btn", onclick: () => dialog.close(word) }, t(`study-${word}`));
  // Neither answer is the strong one, and neither has the focus.
  dialog.replaceChildren(h("div", { class: "consent" }, h("h2", { id: "ask-h", tabindex: "-1", autofocus: true }, t("study-title")),
    h("div", { class: "said" }, TOLD.map((one) => h("p", {}, t(`study-${one}`)))), h("div", { class: "row" }, answer("yes"), answer("no"))));
  dialog.returnValue = "";
  await asked(dialog);
  const word = dialog.returnValue;
  if (word !== "yes" && word !== "no") return null;
  keep(key, word === "yes");
  return word === "yes";
}
