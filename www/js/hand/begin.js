// @ts-check
// A link's assignment: reading it, asking who the student is, and which try it is.

import { asked } from "../ask.js";
import { brief, CoreError, digestOf, seedOf } from "../core.js";
import { attr, dialog as question, h, newId, refill, words } from "../dom.js";
import { newSeed } from "../route.js";
import { keep, recall, recallAttempt } from "../store.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { unpackText } from "./link.js";
/** @import { Assignment } from '../types/view' */

/** @typedef {{ id: string, toml: string, title: string, assignment: Assignment | null, worked: boolean }} LinkTask */

/**
 * What a link carries: {id, toml, title, assignment, worked: whether its example may be watched}. Rejects with words for what is wrong.
 * @param {string} packed @returns {Promise<LinkTask>}
 */
export async function readAssigned(packed) {
  let toml;
  try {
    toml = await unpackText(packed);
  } catch {
    throw new Error(t("hand-link_damaged"));
  }
  try {
    const { title, assignment, worked } = brief(toml);
    return { id: `a-${digestOf(toml).slice(0, 16)}`, toml, title, assignment, worked };
  } catch (error) {
    if (error instanceof CoreError) throw error;
    throw new Error(t("hand-link_damaged"), { cause: error });
  }
}

/** @param {string} id @param {string} key @param {string} student */
const triesKey = (id, key, student) => `tries:${id}:${seedOf(key, student, 1)}`;

/**
 * Asks for the student's code and which try; resolves to {student, tries, seed}, to "watch" for the worked example, or to null when
 * they turn away.
 * @param {LinkTask} task @returns {Promise<{ student: string, tries: number, seed: string } | "watch" | null>}
 */
export async function whoAndWhich(task) {
  const { assignment } = task;
  if (!assignment) return { student: recall("student") ?? "", tries: 0, seed: recall(`seed:${task.id}`) ?? fresh(task) };
  const each = assignment.seeds === "each";
  /** @param {string} student */
  const triesOf = (student) => triesKey(task.id, assignment.key, student);
  /** @param {string} student @param {number} n */
  const seedAt = (student, n) => seedOf(assignment.key, each ? student : "", n);
  const dialog = question();
  const id = newId("student"), problemId = newId("problem");
  const input = h("input", { id, class: "txt", autocomplete: "off", autofocus: true, maxlength: "60", "aria-describedby": problemId });
  input.value = recall("student") ?? "";
  const problem = h("p", { class: "problem", id: problemId, role: "status" });
  const ways = h("div", { class: "row" });
  /** @type {{ student: string, tries: number, seed: string } | "watch" | null} */
  let chosen = null;
  /** @param {number} n */
  const go = (n) => {
    const student = input.value.trim();
    if (each && !student) {
      words(problem, t("hand-need_code"));
      attr(input, "aria-invalid", "true");
      input.focus();
      return;
    }
    keep("student", student);
    keep(triesOf(student), Math.max(n, recall(triesOf(student)) ?? 0));
    chosen = { student, tries: n, seed: seedAt(student, n) };
    dialog.close();
  };
  const show = () => {
    const student = input.value.trim();
    const begun = recall(triesOf(student)) ?? 0;
    const kept = begun > 0 && recallAttempt(task.id, seedAt(student, begun));
    const left = assignment.attempts ? assignment.attempts - begun : Infinity;
    refill(ways, [begun, Boolean(kept), left > 0], () => [
      begun > 0 && (kept || left <= 0) && button(t("hand-go_on", { n: begun }), () => go(begun), { kind: "btn-strong" }),
      left > 0 && button(assignment.attempts ? t("hand-begin_of", { n: begun + 1, of: assignment.attempts }) : t("hand-begin", { n: begun + 1 }), () => go(begun + 1), { kind: kept ? "" : "btn-strong" }),
      task.worked && button(t("hand-watch"), () => { chosen = "watch"; dialog.close(); }),
      button(t("hand-turn_away"), () => dialog.close(), { kind: "btn-plain" })]);
    words(problem, left <= 0 ? t("hand-no_tries") : "");
  };
  dialog.replaceChildren(h("form", { method: "dialog", class: "begin", onsubmit: (event) => { event.preventDefault(); /** @type {HTMLElement | null} */ (ways.querySelector(".btn-strong, .btn"))?.click(); } },
    h("h2", { id: "ask-h" }, task.title), assignment.opening && h("div", { class: "said" }, assignment.opening.split("\n").map((line) => h("p", {}, line))),
    h("div", { class: "fld" }, h("label", { for: id }, t(each ? "hand-code_each" : "hand-code_same")), input), problem, ways));
  input.addEventListener("input", show);
  show();
  await asked(dialog);
  return chosen;
}

/**
 * An assignment without a key is the same bench for whoever comes back to it on this device.
 * @param {LinkTask} task
 */
function fresh(task) {
  const seed = newSeed();
  keep(`seed:${task.id}`, seed);
  return seed;
}
