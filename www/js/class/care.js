// @ts-check
// What is decided for one student: a waiver, another try, more time, a note.

import { asked } from "../ask.js";
import { composed, scenarioValue } from "../desk.js";
import { dialog as question, h, newId, prop, words } from "../dom.js";
import { copy } from "../hand/file.js";
import { linkOf } from "../hand/link.js";
import { t } from "../text.js";
import { button, Tick } from "../widgets.js";
import { state } from "./state.js";
import { momentOf, momentText } from "./terms.js";
/** @import { ClassLine } from '../types/told' */

const MOST_TRIES = 20, MOST_NOTE = 1000; // what the core keeps

/**
 * Asks what is decided for a student; true if something was.
 * @param {ClassLine} line @param {string} name
 */
export async function decide(line, name) {
  const dialog = question();
  const { care } = line;
  const [triesId, untilId, noteId] = ["tries", "until", "note"].map(newId);
  const waived = new Tick(t("class-care_waived"), () => {});
  waived.set(care.waived);
  /** @type {HTMLInputElement} */
  const tries = h("input", { id: triesId, class: "txt", type: "number", min: "0", max: MOST_TRIES, step: "1" });
  /** @type {HTMLInputElement} */
  const until = h("input", { id: untilId, class: "txt", type: "datetime-local" });
  /** @type {HTMLTextAreaElement} */
  const note = h("textarea", { id: noteId, class: "txt", rows: "3", maxlength: MOST_NOTE });
  prop(tries, "value", String(care.tries));
  prop(until, "value", momentText(care.until_s));
  prop(note, "value", care.note);
  let linked = 0; // tries that a link which was copied gives
  const said = h("p", { class: "quiet", role: "status" });
  const link = h("output", { class: "address", hidden: true });
  const given = state.course.given();
  const withLink = given.length === 1 && (scenarioValue(given[0][1]).assignment?.attempts ?? 0) > 0;
  /** The page of a student counts tries by the link: with more of them it is another link to the same bench. */
  const another = async () => {
    const value = scenarioValue(given[0][1]);
    if (!value.assignment) return;
    value.assignment.attempts = Math.min(99, (value.assignment.attempts ?? 0) + Math.max(1, Number(tries.value) || 0));
    if (!(Number(tries.value) >= 1)) tries.value = "1";
    // A link that is out gives the try: it is kept, whatever becomes of the rest of the form.
    linked = Math.max(1, Math.min(MOST_TRIES, Math.round(Number(tries.value))));
    words(link, await linkOf(composed(value)));
    link.hidden = false;
    words(said, (await copy(link.textContent ?? "", link)) ? t("class-care_link_copied") : t("hand-by_hand"));
  };
  const field = (/** @type {string} */ id, /** @type {string} */ key, /** @type {HTMLElement} */ control) => h("div", { class: "fld" }, h("label", { for: id }, t(key)), control);
  dialog.replaceChildren(h("form", { method: "dialog", class: "care", onsubmit: (event) => { event.preventDefault(); dialog.close("yes"); } },
    h("h2", { id: "ask-h" }, t("class-decide_for", { name })), waived.el, field(triesId, "class-care_tries", tries),
    withLink && h("div", { class: "row" }, button(t("class-care_link"), another)), link, said,
    field(untilId, "class-care_until", until), field(noteId, "class-care_note", note),
    h("div", { class: "row" }, h("button", { type: "submit", class: "btn btn-strong" }, t("class-care_keep")), h("button", { type: "button", class: "btn", onclick: () => dialog.close("no") }, t("class-care_leave")))));
  dialog.returnValue = "";
  await asked(dialog);
  if (dialog.returnValue !== "yes") {
    if (linked > care.tries) state.course.care(line.code, { ...care, tries: linked });
    return linked > care.tries;
  }
  state.course.care(line.code, { waived: waived.box.checked, tries: Math.max(0, Math.min(MOST_TRIES, Math.round(Number(tries.value) || 0))), until_s: momentOf(until.value), note: note.value });
  return true;
}
