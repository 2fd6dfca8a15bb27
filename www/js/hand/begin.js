// @ts-check
// A link's assignment: reading it, asking who the student is, and which try it is.

import { asked, askResume } from "../ask.js";
import { brief, CoreError, digestOf, seedOf } from "../core.js";
import { attr, dialog as question, h, newId, refill, words } from "../dom.js";
import { keep, recall } from "../device.js";
import { newSeed } from "../route.js";
import { openJournal, recallAttempt } from "../store.js";
import { t } from "../text.js";
import { beGuest, beWho, guest, mark, tagOf } from "../who.js";
import { button, Tick } from "../widgets.js";
import { courseOf } from "./course.js";
import { unpackText } from "./link.js";
/** @import { LinkTask } from '../types/page' */

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
    return taskOf(toml);
  } catch (error) {
    if (error instanceof CoreError) throw error;
    throw new Error(t("hand-link_damaged"), { cause: error });
  }
}

/**
 * The assignment that a scenario's text is.
 * @param {string} toml @returns {LinkTask}
 */
export function taskOf(toml) {
  const { title, assignment, worked } = brief(toml);
  return { id: `a-${digestOf(toml).slice(0, 16)}`, toml, title, assignment, worked };
}

/**
 * What the student typed in the course that a link belongs to, which stands in this tab; empty where there is none.
 * @param {string} address
 */
export const typedBefore = (address) => courseOf(address)?.student ?? "";

/**
 * The seed of a student's try.
 * @param {NonNullable<LinkTask["assignment"]>} assignment @param {string} student @param {number} n
 */
export const seedAtTry = ({ key, seeds }, student, n) => seedOf(key, seeds === "each" ? student : "", n);

/**
 * How many tries a student has begun on this device.
 * @param {string} id @param {string} student
 */
export const begunBy = (id, student) => Math.max(0, Math.floor(Number(recall(`tries:${id}${mark(tagOf(student))}`)) || 0));

/**
 * Asks for the student's code and which try; nobody's code stands there before it is typed, but before: that of a student who has
 * just worked here; resolves to {student, tries, seed}, to "watch" for the worked example, or to null when
 * they turn away.
 * @param {LinkTask} task @param {string} before @returns {Promise<{ student: string, tries: number, seed: string } | "watch" | null>}
 */
export async function whoAndWhich(task, before) {
  const { assignment } = task;
  if (!assignment) return { student: "", tries: 0, seed: await seedWithoutKey(task) };
  const each = assignment.seeds === "each";
  /** @param {string} student @param {number} n */
  const seedAt = (student, n) => seedAtTry(assignment, student, n);
  const dialog = question();
  const id = newId("student"), problemId = newId("problem");
  const input = h("input", { id, class: "txt", autocomplete: "off", autofocus: true, maxlength: "60", "aria-describedby": problemId });
  input.value = before;
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
    beWho(student);
    keep(`tries:${task.id}${mark()}`, Math.max(n, begunBy(task.id, student)));
    chosen = { student, tries: n, seed: seedAt(student, n) };
    dialog.close();
  };
  const shared = new Tick(t("hand-guest"), async (on) => {
    beGuest(on);
    await openJournal();
    show();
  });
  shared.set(guest());
  const show = () => {
    const student = input.value.trim();
    const begun = begunBy(task.id, student);
    const kept = begun > 0 && recallAttempt(task.id, seedAt(student, begun), tagOf(student));
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
    h("div", { class: "fld" }, h("label", { for: id }, t(each ? "hand-code_each" : "hand-code_same")), input), problem, shared.el, h("p", { class: "quiet" }, t("hand-guest_about")), ways));
  input.addEventListener("input", show);
  show();
  await asked(dialog);
  return chosen;
}

/**
 * An assignment without a key is the same bench for whoever comes back to it on this device and says so.
 * @param {LinkTask} task
 */
async function seedWithoutKey(task) {
  const key = `seed:${task.id}${mark()}`;
  const before = recall(key);
  const kept = typeof before === "string" && /^\d{1,20}$/.test(before) ? recallAttempt(task.id, before) : null;
  if (kept && (await askResume(kept))) return /** @type {string} */ (before);
  const seed = newSeed();
  keep(key, seed);
  return seed;
}
