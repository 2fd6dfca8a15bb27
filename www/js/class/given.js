// @ts-check
// What was set: each bench with what tells it from another, and a cross to take it back. A second bench under one name is asked about,
// because the results of either would count.

import { asked } from "../ask.js";
import { CoreError } from "../core.js";
import { dialog as question, h } from "../dom.js";
import { listed, num, t } from "../text.js";
import { button } from "../widgets.js";
import { state } from "./state.js";
/** @import { FaultBook } from '../types/page' */
/** @import { SetBench } from '../types/told' */

export class Given {
  /**
   * altered(): what is set is other than it was; complain(from, told): it could not be set.
   * @param {{ faults: FaultBook, altered: () => unknown, complain: (from: string, told: string) => unknown }} ways
   */
  constructor({ faults, altered, complain }) {
    this.faults = faults;
    this.altered = altered;
    this.complain = complain;
    this.said = h("p", { class: "quiet given-none" }, t("class-given_none"));
    this.list = h("ul", { class: "given-list", "aria-label": t("class-step_set") });
    this.el = h("div", { class: "given", role: "group", "aria-label": t("class-step_set") }, this.said, this.list);
    this.show();
  }

  show() {
    const all = state.course.setTold();
    this.said.hidden = all.length > 0;
    this.el.dataset.n = String(all.length);
    this.list.replaceChildren(...all.map((one) => h("li", { data: { bench: one.bench } },
      h("span", { class: "given-what" }, h("b", {}, one.title), " ", h("span", { class: "quiet" }, one.from), h("span", { class: "given-how" }, this.told(one)),
        one.rival && h("span", { class: "given-rival" }, t("class-given_rival"))),
      button(t("class-given_out"), () => this.takeBack(one), { kind: "btn-small btn-plain", "aria-label": t("class-given_out_of", { title: one.title, from: one.from }) }))));
  }

  /** What tells a bench from another: its faults, and how many tries there are. @param {SetBench} one */
  told({ faults, tries, of_course: part }) {
    const name = (/** @type {SetBench["faults"][number]} */ { id, severity }) => {
      const word = this.faults.of(id)?.name ?? id;
      return typeof severity === "number" ? t("class-given_severity", { fault: word, severity: num(severity, 1) }) : word;
    };
    return [faults.length > 0 ? t("class-given_faults", { list: listed(faults.map(name)) }) : t("class-given_faultless"), tries ? t("class-given_tries", { n: tries }) : "", part ? t("class-given_part") : ""].filter(Boolean).join(" ");
  }

  /** @param {SetBench} one */
  takeBack(one) {
    state.course.takeBack(one.bench);
    this.show();
    this.altered();
  }

  /**
   * Takes a scenario or a course as set; true if it was. All that came in is compared with it anew, and what changes is told.
   * @param {string} from @param {string} toml
   */
  async take(from, toml) {
    try {
      const rivals = state.course.rivals(toml);
      const answer = rivals.length > 0 ? await this.ask(rivals, from) : "add";
      if (answer !== "add" && answer !== "replace") return false;
      if (answer === "replace") for (const bench of rivals) state.course.takeBack(bench);
      state.course.give(from, toml);
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      this.complain(from, error.message);
      return false;
    }
    this.show();
    this.altered();
    return true;
  }

  /**
   * Asks what is to become of a bench whose name another one has.
   * @param {string[]} rivals @param {string} from
   */
  async ask(rivals, from) {
    const dialog = question();
    const known = state.course.setTold().filter((one) => rivals.includes(one.bench));
    const answer = (/** @type {string} */ word) => () => dialog.close(word);
    dialog.replaceChildren(h("h2", { id: "ask-h" }, t("class-rival_title", { title: known[0]?.title ?? "" })),
      h("p", {}, t("class-rival_text", { from })), h("ul", {}, known.map((one) => h("li", {}, h("b", {}, one.from), ": ", this.told(one)))),
      h("div", { class: "row" }, h("button", { type: "button", class: "btn btn-strong", autofocus: true, onclick: answer("replace") }, t("class-rival_replace")),
        h("button", { type: "button", class: "btn", onclick: answer("add") }, t("class-rival_add")), h("button", { type: "button", class: "btn btn-plain", onclick: answer("leave") }, t("class-rival_leave"))));
    dialog.returnValue = "";
    await asked(dialog);
    return dialog.returnValue;
  }
}

/**
 * Whether something that was dropped among results, and is none, is to be taken as what was set. Escape is no.
 * @param {string} file
 */
export async function askSet(file) {
  const dialog = question();
  dialog.replaceChildren(h("h2", { id: "ask-h" }, t("class-as_set_title")), h("p", {}, t("class-as_set_text", { file })),
    h("div", { class: "row" }, h("button", { type: "button", class: "btn btn-strong", autofocus: true, onclick: () => dialog.close("yes") }, t("class-as_set_yes")), h("button", { type: "button", class: "btn", onclick: () => dialog.close("no") }, t("class-as_set_no"))));
  dialog.returnValue = "";
  await asked(dialog);
  return dialog.returnValue === "yes";
}
