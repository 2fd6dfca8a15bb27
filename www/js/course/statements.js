// @ts-check
// What happened, as statements of xAPI 1.0.3 under the rules of cmi5 (Quartz, 1st edition, section 9): some that cmi5 defines, and some
// of the bench's own that it allows beside them. They are kept as notes until the site has them: what belongs to a visit is added when
// they are sent.

import { languageNow, t } from "../text.js";
/** @import { Launch } from './launch.js' */
/** @import { Check } from '../types/check' */
/** @import { View } from '../types/view' */

const VERBS = "http://adlnet.gov/expapi/verbs/", TYPES = "http://adlnet.gov/expapi/activities/", CMI5 = "https://w3id.org/xapi/cmi5/context/";
/** What cmi5 defines, the words of the end last. */
const DEFINED = ["initialized", "completed", "passed", "failed", "terminated"];

/**
 * at: when it happened; part: of the unit, "" for all of it; type, name: what that part is; refused: the visit in which the site would
 * not take it.
 * @typedef {{ id: string, at: string, verb: string, part: string, type?: string, name?: Record<string, string>, result?: Result, refused?: string }} Note
 * @typedef {{ score?: { scaled: number, raw: number, min: 0, max: 100 }, success?: boolean, completion?: boolean, duration?: string, response?: string }} Result
 * @typedef {Record<string, any>} Context
 */

/** A UUID of version 4; a page over a bare connection has no function for it. */
export function uuid() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("").replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

/**
 * A note of now.
 * @param {string} verb @param {Partial<Note>} [more] @returns {Note}
 */
export const note = (verb, more = {}) => ({ id: uuid(), at: new Date().toISOString(), verb, part: "", ...more });

/** Whether cmi5 has rules for it. @param {Note} one */
export const isDefined = ({ verb, part }) => part === "" && DEFINED.includes(verb);

/** @param {number} points of 100 */
export const scoreOf = (points) => /** @type {const} */ ({ scaled: points / 100, raw: points, min: 0, max: 100 });

/** @param {unknown} list */
const listOf = (list) => (Array.isArray(list) ? list : list ? [list] : []);

/**
 * The statement of a note. template: the context that the site gave for this visit; mastery: the score that passes, where the site says it.
 * @param {Note} note @param {Launch} launch @param {Context} template @param {number | null} mastery
 */
export function statementOf(note, launch, template, mastery) {
  const { id, at, verb, part, type, name, result } = note;
  const context = structuredClone(template);
  context.registration = launch.registration;
  if (isDefined(note)) {
    const judged = ["passed", "failed"].includes(verb);
    const categories = [{ id: `${CMI5}categories/cmi5` }, ...(judged || verb === "completed" ? [{ id: `${CMI5}categories/moveon` }] : [])];
    context.contextActivities = { ...context.contextActivities, category: [...listOf(context.contextActivities?.category), ...categories] };
    if (judged && mastery !== null) context.extensions = { ...context.extensions, [`${CMI5}extensions/masteryscore`]: mastery };
  }
  const definition = type && { definition: { type: TYPES + type, ...(name && { name }), ...(type === "cmi.interaction" && { interactionType: "other" }) } };
  return {
    id, timestamp: at, actor: JSON.parse(launch.actor), verb: { id: VERBS + verb, display: { en: verb } },
    object: { objectType: "Activity", id: part ? `${launch.activity}/${part}` : launch.activity, ...definition },
    ...(result && { result }), context,
  };
}

/** @type {Record<string, boolean | undefined>} */
const REACHED = { right: true, edge: true, wrong: false, missing: false };

/**
 * Notes of a check: each step with what was typed, the misreading that explains it, and those of before that are gone.
 * @param {Check} check @param {View["worksheet"]} worksheet @param {string[]} open misreadings that stood before
 */
export function notesOf(check, worksheet, open) {
  const named = (/** @type {string} */ words) => ({ [languageNow()]: words });
  const steps = check.steps.map(({ step, verdict, code }) => {
    const typed = /** @type {Record<string, { text: string } | undefined>} */ (worksheet)[step]?.text;
    const success = REACHED[verdict];
    const result = { response: typed ? `${code}: ${typed}` : code, ...(success !== undefined && { success }) };
    return note("answered", { part: `step-${step}`, type: "cmi.interaction", name: named(t(`debrief-step-${step}`)), result });
  });
  /** @param {string} id @param {string} verb @param {boolean} success */
  const about = (id, verb, success) => note(verb, { part: `misreading-${id}`, type: "objective", name: named(t(`class-misreading-${id}`)), result: { success } });
  const now = check.misreading?.id;
  const gone = open.filter((id) => id !== now).map((id) => about(id, "mastered", true));
  return [...steps, ...gone, ...(now ? [about(now, "experienced", false)] : [])];
}
