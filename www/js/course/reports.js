// @ts-check
// What a check found, as the course site's own reports show it: one interaction and one objective for each step of the verdict and for
// each misreading. The names of the data model are those of SCORM 1.2 and SCORM 2004, 4th edition; its least capacities are kept to
// (2004: 250 interactions, 100 objectives, 250 characters of a description; 1.2: 255 characters of a response).

import { t } from "../text.js";
/** @import { Lms } from './lms.js' */
/** @import { Check } from '../types/check' */
/** @import { View } from '../types/view' */

const MOST_INTERACTIONS = 250, MOST_OBJECTIVES = 100, MOST_LETTERS = 250;

/** @type {Record<string, [string, string]>} what a verdict is called: 1.2, 2004 */
const RESULT = { right: ["correct", "correct"], edge: ["correct", "correct"], note: ["neutral", "neutral"], wrong: ["wrong", "incorrect"], missing: ["wrong", "incorrect"] };

/**
 * Plain letters of a line.
 * @param {string} text
 */
const plain = (text) => text.normalize("NFKD").replace(/[^\x20-\x7e]/g, "").slice(0, MOST_LETTERS);

/**
 * Tells the site of a check.
 * @param {Lms} lms @param {Check} check @param {View["worksheet"]} worksheet
 */
export function reportCheck(lms, check, worksheet) {
  for (const { step, verdict, code } of check.steps) {
    const typed = /** @type {Record<string, { text: string } | undefined>} */ (worksheet)[step]?.text;
    const [old, now] = RESULT[verdict] ?? RESULT.note;
    const words = t(`debrief-step-${step}`);
    if (verdict !== "note") objective(lms, `step-${step}`, old === "correct", words);
    interaction(lms, `step-${step}`, plain(typed ? `${code}: ${typed}` : code), lms.old ? old : now, words);
  }
  const { misreading } = check;
  for (const id of known(lms)) if (id.startsWith("misreading-") && id !== `misreading-${misreading?.id}`) objective(lms, id, true, "");
  if (!misreading) return;
  const words = misreading.name ? t("course-own_misreading", { name: misreading.name.replaceAll("_", " ") }) : t(`class-misreading-${misreading.id}`);
  objective(lms, `misreading-${misreading.id}`, false, words);
  interaction(lms, `misreading-${misreading.id}`, misreading.id, lms.old ? "wrong" : "incorrect", words);
}

/** @param {Lms} lms @param {string} what */
const count = (lms, what) => Number(lms.ask(`cmi.${what}._count`)) || 0;
/**
 * The objectives that the site has, by their places.
 * @param {Lms} lms
 */
const known = (lms) => Array.from({ length: Math.min(MOST_OBJECTIVES, count(lms, "objectives")) }, (_, n) => lms.ask(`cmi.objectives.${n}.id`));

/**
 * Says whether an objective is reached, in place of what was said before.
 * @param {Lms} lms @param {string} id @param {boolean} reached @param {string} words
 */
function objective(lms, id, reached, words) {
  const all = known(lms);
  const n = all.includes(id) ? all.indexOf(id) : all.length;
  if (n >= MOST_OBJECTIVES) return;
  const at = `cmi.objectives.${n}`;
  if (n === all.length && !lms.tell(`${at}.id`, id)) return; // the site has no objectives
  if (lms.old) return void lms.tell(`${at}.status`, reached ? "passed" : "failed");
  if (words) lms.tell(`${at}.description`, words.slice(0, MOST_LETTERS));
  lms.tell(`${at}.completion_status`, "completed");
  lms.tell(`${at}.success_status`, reached ? "passed" : "failed");
}

/**
 * Writes down what was answered, after what was written down before.
 * @param {Lms} lms @param {string} id @param {string} answer @param {string} result @param {string} words
 */
function interaction(lms, id, answer, result, words) {
  const n = count(lms, "interactions");
  if (n >= MOST_INTERACTIONS) return;
  const at = `cmi.interactions.${n}`;
  if (!lms.tell(`${at}.id`, id)) return; // the site has no interactions
  const now = new Date();
  lms.tell(`${at}.type`, lms.old ? "fill-in" : "other");
  lms.tell(`${at}.objectives.0.id`, id);
  if (lms.old) lms.tell(`${at}.time`, now.toTimeString().slice(0, 8));
  else {
    lms.tell(`${at}.timestamp`, `${now.toISOString().slice(0, 22)}Z`); // a zone stands after a fraction only
    lms.tell(`${at}.description`, words.slice(0, MOST_LETTERS));
  }
  lms.tell(`${at}.${lms.old ? "student_response" : "learner_response"}`, answer);
  lms.tell(`${at}.result`, result);
}
