// @ts-check
// What kind of question a scenario puts: the blanks it has, and what is asked in one line.

import { h } from "../dom.js";
import { has, num, t } from "../text.js";
/** @import { Args, Field } from '../types/names' */
/** @import { Criteria, Task, View } from '../types/view' */

/**
 * The task of a view; an opened recording is a window of one's own.
 * @param {View} view
 */
export const taskOf = ({ task }) => task;

/**
 * Every blank of a task, in order: those that must be filled, and those that may be.
 * @param {Task} task
 */
export const blanksOf = (task) => [...new Set([...task.fields, ...task.optional])];

/**
 * The key of a field's line: some kinds of question have a line of their own.
 * @param {Field} field @param {string} kind
 */
export function lineKey(field, kind) {
  const own = `sheet-line-${field}-${kind}`;
  return has(own) ? own : `sheet-line-${field}`;
}

/**
 * The key of what to do first: some kinds of question have words of their own.
 * @param {string} kind
 */
export function aboutKey(kind) {
  const own = `sheet-about_${kind}`;
  return has(own) ? own : "sheet-about";
}

/**
 * What is asked, in one line; null where the scenario says no more than its brief.
 * @param {Task} task @param {Criteria} [pass]
 */
export function taskLine(task, pass) {
  /** @type {Args} */
  const args = { need: num(pass?.window_s ?? 15) };
  for (const key of /** @type {const} */ (["seconds", "n", "longest_s", "within_s", "at_least_s"])) {
    const value = task[key];
    if (value !== undefined) args[key] = num(value, 1);
  }
  return h("p", { class: "task-line" }, h("span", { class: "lbl" }, t("task-asked")), " ", t(`task-${task.kind}`, args));
}
