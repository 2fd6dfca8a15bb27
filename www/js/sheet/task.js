// What kind of question a scenario puts: the blanks it has, and what is asked in one line.

import { h } from "../dom.js";
import { has, num, t } from "../text.js";

const OWN_WINDOW = { kind: "own_window", fields: ["count", "seconds", "multiplier", "rate"], optional: [] };

/** The task of a view; an opened recording is a window of one's own. */
export const taskOf = ({ task }) => task ?? OWN_WINDOW;

/** Every blank of a task, in order: those that must be filled, and those that may be. */
export const blanksOf = (task) => [...new Set([...task.fields, ...task.optional])];

/** The key of a field's line: some kinds of question have a line of their own. */
export function lineKey(field, kind) {
  const own = `sheet-line-${field}-${kind}`;
  return has(own) ? own : `sheet-line-${field}`;
}

/** What is asked, in one line; null where the scenario says no more than its brief. */
export function taskLine(task, pass) {
  if (task === OWN_WINDOW) return null;
  const args = { need: num(pass?.window_s ?? 15) };
  for (const key of ["seconds", "n", "longest_s", "within_s", "at_least_s"]) if (key in task) args[key] = num(task[key], 1);
  return h("p", { class: "task-line" }, h("span", { class: "lbl" }, t("task-asked")), " ", t(`task-${task.kind}`, args));
}
