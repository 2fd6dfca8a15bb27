// @ts-check
// Where in a form something cannot be: the control whose field the core names is marked, and what is wrong stands under it.

import { attr, h } from "../dom.js";
import { t } from "../text.js";
/** @import { CoreError } from '../core.js' */

/**
 * Marks the control of the field that an error names (`data-field`), with what is wrong under it; takes away the mark before. What is wrong
 * with it, for whoever is elsewhere on the page, or nothing where no control has this field.
 * @param {HTMLElement} root @param {CoreError | null} error
 */
export function markWrong(root, error) {
  for (const old of root.querySelectorAll(".field-wrong")) {
    const control = root.querySelector(`[aria-describedby="${old.id}"]`);
    if (control) for (const name of ["aria-invalid", "aria-describedby"]) attr(control, name, null);
    old.remove();
  }
  const field = String(error?.args.field ?? "");
  const control = error && field ? root.querySelector(`[data-field="${CSS.escape(field)}"]`) : null;
  const part = /^part\[(\d+)\]/.exec(field);
  if (error && !control && part) return t("assign-wrong_part", { n: Number(part[1]) + 1, told: wordsOf(field, String(error.args.found ?? ""), String(error.args.expected ?? "")) });
  if (!error || !control) return "";
  const told = wordsOf(field, String(error.args.found ?? ""), String(error.args.expected ?? ""));
  const said = h("p", { class: "problem field-wrong", id: `${control.id}-wrong` }, told);
  control.after(said);
  const folded = control.closest("details");
  if (folded) folded.open = true;
  attr(control, "aria-invalid", "true");
  attr(control, "aria-describedby", said.id);
  const label = root.querySelector(`label[for="${control.id}"]`)?.textContent ?? "";
  return t("assign-wrong_in", { label, told });
}

/**
 * What is wrong with a field, in words of its own where there are any.
 * @param {string} field @param {string} found @param {string} expected
 */
function wordsOf(field, found, expected) {
  if (/\.formula$/.test(field)) return / a right answer meets /.test(found) ? t("assign-wrong_formula_right") : t("assign-wrong_formula", { found });
  if (/\.name$/.test(field)) return t("assign-wrong_name", { found });
  if (/^part\[\d+\]\.due$/.test(field)) return t("assign-wrong_due");
  return t("assign-wrong_here", { found, expected });
}
