// @ts-check
// Questions in a dialog: whether to go on with a kept attempt; how fast a recording was sampled.

import { attr, dialog as question, h, newId, words } from "./dom.js";
import { agoText, t } from "./text.js";
/** @import { KeptAttempt, Kid } from './types/page' */

/**
 * Shows what was put into the page's dialog; resolves once it is closed, whoever closes it.
 * @param {HTMLDialogElement} dialog
 */
export function asked(dialog) {
  return /** @type {Promise<void>} */ (new Promise((done) => {
    const ended = new AbortController();
    dialog.addEventListener("close", () => {
      if (dialog.open) return; // told late of a question before this one
      ended.abort();
      done();
    }, { signal: ended.signal });
    dialog.showModal();
  }));
}

/** Takes away a question that still stands, when what it belongs to is left. */
export function closeQuestion() {
  if (question().open) question().close();
}

/**
 * A question with its answers as buttons, the first of them strong and in the focus; resolves to the word of the one that was pressed, ""
 * where none was (Escape).
 * @param {string} title @param {Kid[]} told @param {[word: string, label: string, kind?: string][]} answers
 */
export async function choose(title, told, answers) {
  const dialog = question();
  dialog.replaceChildren(h("div", {}, h("h2", { id: "ask-h" }, title), told, h("div", { class: "row" }, answers.map(([word, label, kind = ""], k) =>
    h("button", { type: "button", class: `btn ${k === 0 ? "btn-strong" : kind}`.trim(), autofocus: k === 0, onclick: () => dialog.close(word) }, label)))));
  dialog.returnValue = "";
  await asked(dialog);
  return dialog.returnValue;
}

/**
 * Asks; resolves true to resume, false to start afresh (also when the dialog is closed by Escape: nothing is lost yet).
 * @param {KeptAttempt} kept
 */
export const askResume = async (kept) => (await choose(t("resume-title"), [h("p", {}, t("resume-text", { when: agoText(kept.at) }))], [["resume", t("resume-yes")], ["fresh", t("resume-no")]])) !== "fresh";

/**
 * Asks before something that cannot be taken back. Escape is no.
 * @param {"close" | "reveal" | "remove_row"} what
 */
export const askWhether = async (what) => (await choose(t(`whether-${what}_title`), [h("p", {}, t(`whether-${what}_text`))], [["yes", t(`whether-${what}_yes`)], ["no", t(`whether-${what}_no`)]])) === "yes";

/**
 * Asks for the sampling rate of a recording that does not tell it; resolves to Hz, or null when the student gives up.
 * @param {string} file @param {{ low: number, high: number }} rates
 */
export async function askRate(file, { low, high }) {
  const dialog = question();
  const id = newId("rate"), problemId = newId("problem");
  const input = h("input", { id, class: "txt", inputmode: "decimal", autocomplete: "off", autofocus: true, "aria-describedby": problemId });
  const problem = h("p", { class: "problem", id: problemId, role: "status" });
  /** @type {number | null} */
  let found = null;
  /** @param {Event} event */
  const take = (event) => {
    event.preventDefault();
    const hz = Number(input.value.trim().replace(",", "."));
    if (hz >= low && hz <= high) {
      found = hz;
      dialog.close();
      return;
    }
    words(problem, t("rate-problem", { low, high }));
    attr(input, "aria-invalid", "true");
    input.focus();
  };
  dialog.replaceChildren(h("form", { method: "dialog", onsubmit: take },
    h("h2", { id: "ask-h" }, t("rate-title")), h("p", {}, t("rate-text", { file })),
    h("div", { class: "fld" }, h("label", { for: id }, t("rate-label")), input), problem,
    h("div", { class: "row" }, h("button", { type: "submit", class: "btn btn-strong" }, t("rate-yes")), h("button", { type: "button", class: "btn", onclick: () => dialog.close() }, t("rate-no")))));
  await asked(dialog);
  return found;
}
