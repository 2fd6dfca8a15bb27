// @ts-check
// What a class handed in: taking it in, who is ready, what went wrong, looking at one attempt, showing a fault to all.

import { ClassBook, WhatWasSet } from "../desk.js";
import { h, prop } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { download } from "../download.js";
import { lookRoute } from "../route.js";
import { t } from "../text.js";
import { button, Choice, Tick } from "../widgets.js";
import { ShowFault } from "./faultshow.js";
import { Intake } from "./intake.js";
import { report } from "./report.js";
/** @import { Bench } from '../core.js' */
/** @import { FaultBook, ScenarioEntry, ScreenWays } from '../types/page' */
/** @import { Option } from '../widgets.js' */
/** @import { Given, Waiting } from './intake.js' */

/**
 * @typedef {{
 *   results: { file: string, waiting: Waiting, again: () => Bench }[], wrong: { file: string, told: string }[], place: { top: number, look: number } | null, book: ClassBook | null, given: Given, names: boolean, need: string,
 * }} ClassState
 */

/** @returns {Given} */
const nothingGiven = () => ({ set: new WhatWasSet(), titles: [] });

/** @type {ClassState} */
const state = { results: [], wrong: [], place: null, book: null, given: nothingGiven(), names: false, need: "1" }; // stays while the page is open, and nowhere else

/**
 * Fills the section; returns what is to be ended when it is left.
 * @param {HTMLElement} root @param {ScreenWays} ways
 */
export async function showScreen(root, { scenarios }) {
  await Promise.allSettled(scenarios.map((one) => one.load()));
  return new ClassScreen(root, scenarios, await faultWords());
}

/**
 * One attempt of the class as it was handed in; null where there is none of this number.
 * @param {number} k @returns {Promise<Bench | null>}
 */
export const looked = async (k) => state.results[k]?.again() ?? null;

class ClassScreen {
  /** @param {HTMLElement} root @param {ScenarioEntry[]} scenarios @param {FaultBook} faults */
  constructor(root, scenarios, faults) {
    this.root = root;
    this.faults = faults;
    state.book ??= new ClassBook();
    this.intake = new Intake({ scenarios, state, took: () => this.sumUp() });
    this.names = new Tick(t("class-names"), (on) => { state.names = on; this.sumUp(); });
    this.names.set(state.names);
    this.need = new Choice(t("class-need"), (n) => { state.need = n; this.sumUp(); });
    this.need.set([...[1, 2, 3].map((n) => /** @type {Option} */ ([String(n), t("class-need_of", { n })])), ["1r", t("class-need_rubric")], ["2r", t("class-need_rubric_twice")]], state.need);
    this.report = h("div", { class: "report" });
    this.saved = button(t("class-csv"), () => this.csv(), { pic: "save" });
    this.empty = button(t("class-empty"), () => this.forget(), { kind: "btn-plain" });
    this.ways = h("div", { class: "row class-ways", hidden: true }, this.need.el, this.names.el, this.saved, this.empty);
    this.show = new ShowFault(faults);
    root.replaceChildren(
      h("div", { class: "wide-lead" }, h("h1", { id: "class-h", tabindex: "-1" }, t("class-title")), h("p", { class: "lede" }, t("class-lede")), h("div", { class: "row" }, h("a", { class: "btn btn-plain", href: "#assign" }, t("class-set")))),
      this.intake.el, this.ways, this.report, this.show.el);
    this.sumUp();
  }

  sumUp() {
    const none = state.results.length === 0;
    prop(this.ways, "hidden", none);
    if (none || !state.book) return this.report.replaceChildren();
    const summary = state.book.summary({ benches: parseInt(state.need, 10), rubric: state.need.endsWith("r") });
    this.report.replaceChildren(...report(summary, state, this.faults, (k) => this.look(k)));
    this.report.dataset.students = String(summary.students.length);
    return undefined;
  }

  /**
   * Opens one attempt as it was handed in, at an address of its own: from there the browser's Back leads here again.
   * @param {number} k
   */
  look(k) {
    state.place = { top: scrollY, look: k };
    location.hash = lookRoute(k);
  }

  /** Back from an attempt: the list stands where it stood, with the focus on the button that was pressed. */
  comeBack() {
    const { place } = state;
    state.place = null;
    /** @type {HTMLElement | null | undefined} */
    const pressed = place && this.root.querySelector(`[data-look="${place.look}"]`);
    if (!place || !pressed) return false;
    pressed.focus({ preventScroll: true });
    scrollTo({ top: place.top });
    return true;
  }

  forget() {
    state.book?.free();
    Object.assign(state, { results: [], wrong: [], place: null, book: new ClassBook(), given: nothingGiven() });
    this.intake.reset();
    this.sumUp();
  }

  csv() {
    if (state.book) download("grades.csv", state.book.csv(), "text/csv");
  }

  end() {
    this.intake.end();
    this.show.end();
  }
}

