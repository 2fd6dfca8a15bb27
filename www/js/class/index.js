// What a class handed in: taking it in, who is ready, what went wrong, looking at one attempt, showing a fault to all.

import { gradesTable, summedUp } from "../core.js";
import { h, prop } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { download } from "../hand/file.js";
import { t } from "../text.js";
import { button, Choice, Tick } from "../widgets.js";
import { ShowFault } from "./faultshow.js";
import { Intake } from "./intake.js";
import { report } from "./report.js";

const state = { results: [], names: false, need: 1 }; // stays while the page is open, and nowhere else

/** Fills the section; returns what is to be ended when it is left. */
export async function showScreen(root, { scenarios, standStill }) {
  await Promise.allSettled(scenarios.map((one) => one.load()));
  return new ClassScreen(root, scenarios, await faultWords(), standStill);
}

class ClassScreen {
  constructor(root, scenarios, faults, standStill) {
    Object.assign(this, { faults, standStill });
    this.intake = new Intake({ scenarios, results: state.results, took: () => this.sumUp() });
    this.names = new Tick(t("class-names"), (on) => { state.names = on; this.sumUp(); });
    this.names.set(state.names);
    this.need = new Choice(t("class-need"), (n) => { state.need = Number(n); this.sumUp(); });
    this.need.set([1, 2, 3].map((n) => [n, t("class-need_of", { n })]), state.need);
    this.report = h("div", { class: "report" });
    this.saved = button(t("class-csv"), () => this.csv(), { pic: "save" });
    this.empty = button(t("class-empty"), () => { state.results.length = 0; this.intake.reset(); this.sumUp(); }, { kind: "btn-plain" });
    this.ways = h("div", { class: "row class-ways", hidden: true }, this.need.el, this.names.el, this.saved, this.empty);
    this.show = new ShowFault(faults);
    root.replaceChildren(
      h("div", { class: "wide-lead" }, h("h1", { id: "class-h", tabindex: "-1" }, t("class-title")), h("p", { class: "lede" }, t("class-lede")), h("div", { class: "row" }, h("a", { class: "btn btn-plain", href: "#assign" }, t("class-set")))),
      this.intake.el, this.ways, this.report, this.show.el);
    this.sumUp();
  }

  sumUp() {
    const graded = state.results.map((one) => one.graded);
    prop(this.ways, "hidden", graded.length === 0);
    if (graded.length === 0) return this.report.replaceChildren();
    const summary = summedUp(graded, state.need);
    this.report.replaceChildren(...report(summary, state, this.faults, (k) => this.look(k)));
    this.report.dataset.students = summary.students.length;
    return undefined;
  }

  /** Opens one attempt as it was handed in. */
  look(k) {
    const { again } = state.results[k];
    this.standStill(again());
  }

  csv() {
    download("grades.csv", gradesTable(state.results.map((one) => one.file), state.results.map((one) => one.graded)), "text/csv");
  }

  end() {
    this.intake.end();
    this.show.end();
  }
}

