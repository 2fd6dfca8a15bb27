// @ts-check
// What is said of a student, on the page and in the feedback.

import { coded, has, listed, num, t } from "../text.js";
import { state } from "./state.js";
/** @import { FaultBook } from '../types/page' */
/** @import { ClassLine, ClassTold, PartLine } from '../types/told' */

export const NONE = "–";
export const OF = 20;

/**
 * The words for a name of the core's; what an instructor looks for of their own has the name that they gave it.
 * @param {string} prefix @param {string} id
 */
export const named = (prefix, id) => (id.startsWith("own-") ? t("class-own_misreading", { name: id.slice(4).replaceAll("_", " ") }) : has(`${prefix}-${id}`) ? t(`${prefix}-${id}`) : id.replaceAll("_", " "));

/**
 * How a student is called: by name and code where they may be shown, else by the place of the line.
 * @param {ClassLine} line @param {number} k
 */
export function nameOf(line, k) {
  if (!state.view.names || !line.code) return t("class-student", { n: k + 1 });
  return line.name ? `${line.name} (${line.code})` : line.code;
}

/**
 * How others are called, by their codes.
 * @param {string[]} codes @param {ClassTold | null} told
 */
const others = (codes, told) => listed(codes.map((code) => {
  const k = told?.lines.findIndex((line) => line.code === code) ?? -1;
  return told && k >= 0 ? nameOf(told.lines[k], k) : code || t("class-nobody");
}));

/**
 * What keeps results from counting or from being read, and what is remarked on.
 * @param {ClassLine} line @param {ClassTold | null} told The class. @returns {string[]}
 */
export const remarksOf = (line, told) => [
  ...new Set(line.failed.map((k) => told?.failed[k]).map((one) => (one ? coded("error", one.why, one.args) : ""))),
  ...line.doubts.map((code) => named("class-doubt", code)), ...line.against.map((code) => named("class-against", code)),
  ...(line.copied.length > 0 ? [t("class-copied", { who: others(line.copied, told) })] : []), ...(line.alike.length > 0 ? [t("class-alike", { who: others(line.alike, told) })] : []), ...line.remarks.map((code) => named("class-remark", code)),
  ...(line.listed || !told?.listed ? [] : [t("class-unlisted")]),
].filter(Boolean);

/**
 * How a part of a course stands, with its points and what its dates say.
 * @param {PartLine} part
 */
export const partOf = ({ state, points, remarks }) => [
  named("class-state", state), ...(points === null ? [] : [t("class-part_points", { n: num(points, 0) })]), ...remarks.map((code) => t(`class-part_${code}`)),
].join(", ");

/**
 * What went wrong, in a few words; the feedback is made of the same, and says of the step what it is.
 * @param {ClassLine} line @param {FaultBook} faults @param {(step: string) => string} [firstWrong]
 */
export const wrongOf = (line, faults, firstWrong = (/** @type {string} */ step) => step) => [
  line.first_wrong && firstWrong(named("debrief-step", line.first_wrong)),
  line.trace.length > 0 && t("class-trace_was", { list: listed(line.trace.map((cause) => named("class-trace", cause))) }),
  line.misreadings.length > 0 && listed(line.misreadings.map((id) => named("class-misreading", id))),
  line.faults_left.length > 0 && t("class-left", { list: listed(line.faults_left.map((id) => faults.of(id)?.name ?? id)) }),
].filter((one) => typeof one === "string");

/** A group as it is called beside a name: a bare number or letter is said to be one. @param {string} group */
export const groupName = (group) => (/^[\p{L}\p{N}]{1,3}$/u.test(group) ? t("class-of_group", { name: group }) : group);

/** A text as a sentence. @param {string} text */
const sentence = (text) => `${text.charAt(0).toLocaleUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;

/**
 * The feedback to a student: where they stand, what went wrong, the instructor's note.
 * @param {ClassLine} line @param {FaultBook} faults @param {ClassTold} told
 */
export function feedbackOf(line, faults, told) {
  // Which fault is left is no hint for whoever has tries left; why something could not be read is.
  const wrong = [...line.failed.map((k) => told.failed[k]).map((one) => (one ? coded("error", one.why, one.args) : "")), ...line.against.map((code) => named("class-against", code)), ...wrongOf({ ...line, faults_left: [] }, faults, (step) => t("class-feedback_step", { step })), line.faults_left.length > 0 ? t("class-left_n", { n: line.faults_left.length }) : ""].filter(Boolean);
  const points = line.points === null ? "" : t("class-feedback_points", { n: num(line.points, 0), of: line.of });
  return [...[named("class-state", line.state), points, ...new Set(wrong)].filter(Boolean).map(sentence), line.care.note].filter(Boolean).join(" ");
}
