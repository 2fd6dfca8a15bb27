// @ts-check
// What was set: each bench with what tells it from another, and a cross to take it back. A second bench under one name is asked about,
// because the results of either would count.

import { choose } from "../ask.js";
import { CoreError } from "../core.js";
import { isCourseText, scenarioValue } from "../desk.js";
import { h } from "../dom.js";
import { listed, num, t } from "../text.js";
import { button } from "../widgets.js";
import { fileName } from "./names.js";
import { state } from "./state.js";
/** @import { FaultBook } from '../types/page' */
/** @import { SetBench } from '../types/told' */

/** What tells the bench of a scenario's text from another. @param {string} toml */
function ofText(toml) {
  const { fault = [], pool, assignment } = scenarioValue(toml);
  const drawn = (pool?.faults ?? []).map((id) => ({ id, severity: null }));
  return { faults: [...fault.map(({ name, severity }) => ({ id: name, severity: severity ?? null })), ...drawn], tries: assignment?.attempts ?? null, of_course: false };
}

export class Given {
  /**
   * altered(): what is set is other than it was.
   * @param {{ faults: FaultBook, altered: () => unknown }} ways
   */
  constructor({ faults, altered }) {
    this.faults = faults;
    this.altered = altered;
    /** @type {[from: string, told: string][]} */
    this.complaints = [];
    this.wrong = h("ul", { class: "intake-wrong given-wrong", role: "status", "aria-label": t("class-wrong_list") });
    this.said = h("p", { class: "quiet given-none" }, t("class-given_none"));
    this.list = h("ul", { class: "given-list", "aria-label": t("class-step_set") });
    this.el = h("div", { class: "given", role: "group", "aria-label": t("class-step_set") }, this.said, this.list, this.wrong);
    this.show();
  }

  /** Something that could not be set, told where it was opened. @param {string} from @param {string} told */
  complain(from, told) {
    this.complaints.push([from, told]);
    this.showComplaints();
  }

  /** What was complained of, with the files' names where those may be shown. */
  showComplaints() {
    this.wrong.replaceChildren(...this.complaints.map(([from, told], k) => h("li", {}, h("b", {}, fileName(from, k)), " ", told)));
  }

  /** What was told of something opened before is over. */
  fresh() {
    this.complaints = [];
    this.showComplaints();
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

  /** What tells a bench from another: its faults, and how many tries there are. @param {Pick<SetBench, "faults" | "tries" | "of_course">} one */
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
      const answer = rivals.length > 0 ? await this.ask(rivals, from, toml) : "add";
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
   * @param {string[]} rivals @param {string} from @param {string} toml
   */
  async ask(rivals, from, toml) {
    const known = state.course.setTold().filter((one) => rivals.includes(one.bench));
    return choose(t("class-rival_title", { title: known[0]?.title ?? "" }), [
      h("p", {}, t("class-rival_text", { from })), h("ul", {}, known.map((one) => h("li", {}, h("b", {}, one.from), ": ", this.told(one)))),
      !isCourseText(toml) && h("p", {}, h("b", {}, from), ": ", this.told(ofText(toml))),
    ], [["replace", t("class-rival_replace")], ["add", t("class-rival_add")], ["leave", t("class-rival_leave"), "btn-plain"]]);
  }
}

/**
 * Whether a class is to be forgotten, which cannot be taken back; it can be saved first. Escape is no.
 * @param {() => unknown} save
 */
export async function askForget(save) {
  const answer = await choose(t("class-forget_title"), [h("p", {}, t(state.unsaved ? "class-forget_unsaved" : "class-forget_saved"))],
    [["no", t("class-forget_no")], ...(state.unsaved ? [/** @type {[string, string]} */ (["save", t("class-save")])] : []), ["yes", t("class-forget_yes"), "btn-plain"]]);
  if (answer === "save") save();
  return answer === "yes";
}

/**
 * Whether something that was dropped among results, and is none, is to be taken as what was set. Escape is no.
 * @param {string} file
 */
export const askSet = async (file) => (await choose(t("class-as_set_title"), [h("p", {}, t("class-as_set_text", { file }))], [["yes", t("class-as_set_yes")], ["no", t("class-as_set_no")]])) === "yes";
