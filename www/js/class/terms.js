// @ts-check
// By what the class is judged: what makes ready, which attempt stands for a student, until when it may be handed in.

import { h, newId, prop } from "../dom.js";
import { t } from "../text.js";
import { Choice, Tick } from "../widgets.js";
import { state } from "./state.js";
/** @import { Option } from '../widgets.js' */

/**
 * A moment (s since 1970; 0 for none) as a field of the page has it, in the reader's own time; and back.
 * @param {number} s
 */
export function momentText(s) {
  if (!s) return "";
  const at = new Date(s * 1000);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
/** @param {string} text */
export const momentOf = (text) => Math.max(0, Math.round(new Date(text).getTime() / 1000) || 0);

export class TermsRow {
  /** @param {() => unknown} altered @param {() => unknown} named Whether names may be shown is otherwise than it was. */
  constructor(altered, named) {
    const terms = state.course.terms();
    const put = () => {
      state.course.terms(terms);
      altered();
    };
    const need = new Choice(t("class-need"), (n) => {
      terms.benches = parseInt(n, 10);
      terms.rubric = n.endsWith("r");
      put();
    });
    need.set([...[1, 2, 3].map((n) => /** @type {Option} */ ([String(n), t("class-need_of", { n })])), ["1r", t("class-need_rubric")], ["2r", t("class-need_rubric_twice")]], `${terms.benches}${terms.rubric ? "r" : ""}`);
    const pick = new Choice(t("class-pick"), (which) => {
      terms.pick = which === "last" ? "last" : "best";
      put();
    });
    pick.set([["best", t("class-pick_best")], ["last", t("class-pick_last")]], terms.pick);
    const id = newId("due");
    /** @type {HTMLInputElement} */
    const due = h("input", { id, class: "txt", type: "datetime-local", onchange: () => {
      terms.due_s = momentOf(due.value);
      put();
    } });
    prop(due, "value", momentText(terms.due_s));
    const names = new Tick(t("class-names"), (on) => {
      state.view.names = on;
      named();
      altered();
    });
    names.set(state.view.names);
    this.el = h("div", { class: "row class-ways" }, need.el, pick.el, h("div", { class: "fld" }, h("label", { for: id }, t("class-due")), due), names.el);
  }
}
