// @ts-check
// A class: what was set, who is on the list, what came in, who is ready and who is missing, what to talk about, and what goes out.

import { attemptOf, Course } from "../desk.js";
import { CoreError } from "../core.js";
import { h, prop } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { download } from "../download.js";
import { calm } from "../frame.js";
import { chooseFiles } from "../hand/file.js";
import { lookRoute } from "../route.js";
import { bringTexts, t } from "../text.js";
import { button } from "../widgets.js";
import { ShowFault } from "./faultshow.js";
import { askForget } from "./given.js";
import { Intake } from "./intake.js";
import { Out } from "./out.js";
import { report } from "./report.js";
import { changed, forget, layDown, putCourse, saved, state, takeUp } from "./state.js";
import { Items } from "./items.js";
import { Students } from "./students.js";
import { TermsRow } from "./terms.js";
import { nameOf } from "./words.js";
/** @import { Bench } from '../core.js' */
/** @import { FaultBook, ScenarioEntry, ScreenWays } from '../types/page' */

/**
 * Fills the section; returns what is to be ended when it is left.
 * @param {HTMLElement} root @param {ScreenWays} ways
 */
export async function showScreen(root, { scenarios, report: tell }) {
  await Promise.all([takeUp(), bringTexts("study"), ...scenarios.map((one) => one.load().catch(() => ""))]);
  return new ClassScreen(root, scenarios, await faultWords(), tell);
}

/**
 * One attempt of the class as it was handed in; null where there is none of this number.
 * @param {number} k @returns {Promise<Bench | null>}
 */
export async function looked(k) {
  await takeUp();
  const source = state.course.source(k) ?? state.waiting[k];
  return source ? attemptOf(source) : null;
}

/**
 * Whose attempt is looked at, as its line calls them, and that nothing is changed by it.
 * @param {number} k
 */
export function lookedTold(k) {
  const { lines } = state.course.told();
  const line = lines.findIndex((one) => one.results.includes(k));
  return line < 0 ? t("class-looking") : t("class-looking_at", { name: nameOf(lines[line], line) });
}

class ClassScreen {
  /** @param {HTMLElement} root @param {ScenarioEntry[]} scenarios @param {FaultBook} faults @param {(error: unknown) => void} tell */
  constructor(root, scenarios, faults, tell) {
    this.root = root;
    this.scenarios = scenarios;
    this.faults = faults;
    this.report = tell;
    this.show = new ShowFault(faults);
    /** @type {ReturnType<ClassScreen["build"]> | null} */
    this.on = null;
    this.fill();
  }

  /** Fills the screen with the class that stands here. */
  fill() {
    this.on = null; // what comes in meanwhile is shown at the end
    this.on = this.build();
    this.root.replaceChildren(
      h("div", { class: "wide-lead" }, h("h1", { id: "class-h", tabindex: "-1" }, t("class-title")), h("p", { class: "lede" }, t("class-lede")),
        h("div", { class: "row" }, button(t("class-open"), () => chooseFiles(".json", async ([file]) => file && this.openClass(await file.text())), { pic: "open" }), h("a", { class: "btn btn-plain", href: "#assign" }, t("class-set")))),
      this.on.intake.el, this.on.results, this.show.el);
    this.sumUp();
  }

  build() {
    const overview = h("div", { class: "report" });
    const students = new Students({ faults: this.faults, look: (k) => this.look(k), altered: () => this.altered() });
    const items = new Items(this.faults);
    const out = new Out({ faults: this.faults });
    /** @type {Intake} */
    let intake;
    const terms = new TermsRow(() => this.altered(), () => intake.renamed());
    const files = h("div", { class: "row class-files" }, button(t("class-save"), () => this.save(), { kind: "btn-strong", pic: "save" }), button(t("class-csv"), () => download("grades.csv", state.course.csv(), "text/csv"), { pic: "save" }),
      button(t("class-print"), () => print()), button(t("class-empty"), () => this.forget(), { kind: "btn-plain" }));
    const results = h("div", { class: "class-results", hidden: true }, terms.el, overview, students.el, items.el, files, out.el);
    intake = new Intake({ scenarios: this.scenarios, faults: this.faults, took: () => this.sumUp(), openClass: (text) => this.openClass(text) });
    return { overview, students, items, out, results, intake };
  }

  /** What is under way for this screen is not wanted any more. */
  endParts() {
    this.on?.intake.end();
    this.on?.out.end();
  }

  altered() {
    changed();
    this.sumUp();
  }

  sumUp() {
    if (!this.on) return;
    const { overview, students, items, out, results } = this.on;
    const told = state.course.told();
    prop(results, "hidden", told.lines.length === 0);
    overview.replaceChildren(...report(told, this.faults, () => {
      students.show(told);
      students.el.scrollIntoView({ block: "start" });
    }));
    overview.dataset.students = String(told.lines.length);
    students.show(told);
    items.show();
    out.show(told);
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

  save() {
    download("class.dicrotic-class.json", state.course.save());
    saved();
  }

  /** @param {string} text */
  async openClass(text) {
    try {
      const course = Course.open(text);
      this.endParts();
      putCourse(course);
      state.waiting = course.waiting();
      calm("");
      this.fill();
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      this.report(error);
    }
  }

  async forget() {
    if (state.course.told().lines.length > 0 && !(await askForget(() => this.save()))) return;
    this.endParts();
    await forget();
    this.fill();
  }

  end() {
    this.endParts();
    this.show.end();
    if (state.unsaved && state.waiting.length + state.queue.length === 0) layDown();
  }
}
