// @ts-check
// Setting a bench for a class: what it is, how it looks, whether its grading is fair, and passing it on.

import { CoreError } from "../core.js";
import { composed, isCourseText, scenarioValue } from "../desk.js";
import { h, words } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { download } from "../download.js";
import { chooseFiles, plainName } from "../hand/file.js";
import { unpackText } from "../hand/link.js";
import { problemOf } from "../scenarios.js";
import { asideNote } from "../device/aside.js";
import { aside, keep, layTextAside, recall } from "../device.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { Agree } from "./agree.js";
import { CourseMaker } from "./course.js";
import { blank, sealed } from "./draft.js";
import { Fair } from "./fair.js";
import { Form } from "./form.js";
import { Out } from "./out.js";
import { packagePart } from "./package.js";
import { Preview } from "./preview.js";
import { markWrong } from "./wrong.js";
/** @import { FaultBook, ScenarioEntry, ScreenWays } from '../types/page' */
/** @import { ScenarioValue } from '../types/told' */

const SETTLE_MS = 250;

/**
 * Fills the section; returns what is to be ended when it is left.
 * @param {HTMLElement} root @param {ScreenWays} ways
 */
export async function showScreen(root, { scenarios }) {
  await Promise.all(scenarios.map((one) => one.load()));
  const faults = await faultWords();
  for (const one of scenarios) problemOf(one); // reads what each tells of itself
  const before = aside().length;
  const made = new Assign(root, scenarios, faults);
  const note = await asideNote(before);
  if (note) root.prepend(note);
  return made;
}

class Assign {
  /** @param {HTMLElement} root @param {ScenarioEntry[]} scenarios @param {FaultBook} faults */
  constructor(root, scenarios, faults) {
    this.root = root;
    this.scenarios = scenarios;
    this.due = 0;
    /** @type {string | null} */
    this.toml = null;
    /** @type {Promise<void> | undefined} */
    this.shown = undefined;
    this.problem = h("p", { class: "calm", role: "alert", hidden: true });
    this.note = h("p", { class: "quiet assign-note", role: "status" });
    this.form = new Form({ scenarios, faults, changed: () => this.changed(), pickBase: (id) => this.pickBase(id) });
    this.preview = new Preview();
    this.fair = new Fair();
    this.agree = new Agree({ faults, add: (fault) => this.form.add(fault) });
    this.course = new CourseMaker({ current: () => (this.workOut(), this.toml), addressOf: () => this.out.base });
    this.out = new Out({ saveFile: () => this.saveFile(), settle: () => this.settle() });
    this.pack = packagePart(() => (this.workOut(), this.toml === null ? null : { toml: this.toml, id: this.form.value().id ?? "" }));
    root.replaceChildren(
      h("div", { class: "wide-lead" }, h("h1", { id: "assign-h", tabindex: "-1" }, t("assign-title")), h("p", { class: "lede" }, t("assign-lede")),
        h("div", { class: "row" }, button(t("assign-load"), () => this.load(), { pic: "open" }), h("a", { class: "btn btn-plain", href: "#class" }, t("way-assign_class")), h("a", { class: "btn btn-plain", href: "fields.html", hreflang: "en" }, t("assign-all_fields")))),
      this.problem, this.note,
      h("div", { class: "assign-two" }, this.form.el, h("div", { class: "assign-side" }, this.preview.el, this.agree.el, this.fair.el)), this.out.el, this.course.el, this.pack.el);
    const kept = recall("assign");
    try {
      this.take(typeof kept?.id === "string" ? kept : blank());
      if (this.toml === null) throw new TypeError("a draft that no core reads");
    } catch { // what is kept is of no shape that can be shown
      layTextAside("assign");
      this.take(blank());
    }
  }

  end() {
    clearTimeout(this.due);
    this.preview.end();
    this.fair.end();
    this.course.end();
    this.root.replaceChildren();
  }

  /**
   * Shows a scenario (a value of the core) in the form, and works it out.
   * @param {ScenarioValue} scenario
   */
  take(scenario) {
    const { assignment } = scenario;
    words(this.note, "");
    this.form.show({ ...scenario, attempt: [], assignment: assignment ?? blank().assignment });
    this.workOut();
  }

  /** @param {string} id */
  pickBase(id) {
    const found = this.scenarios.find((one) => one.id === id);
    if (!found) return this.take(blank());
    // An id of its own: what is changed is no longer the page's scenario, whose words the page knows in other languages.
    const value = scenarioValue(found.toml ?? "");
    return this.take({ ...value, id: `own-${value.id}`.slice(0, 60) });
  }

  changed() {
    clearTimeout(this.due);
    this.due = setTimeout(() => this.workOut(), SETTLE_MS);
  }

  /** What was changed a moment ago is taken in now; whoever passes the bench on must not pass on the one before. */
  settle() {
    if (this.due) this.workOut();
    return this.shown;
  }

  /** Puts the form to the core: its text is what is shown, tried and passed on. */
  workOut() {
    clearTimeout(this.due);
    this.due = 0;
    const wrong = this.form.problem();
    if (wrong) return this.refuse(wrong);
    try {
      const scenario = this.form.value();
      this.toml = composed(sealed(scenario));
      keep("assign", scenario);
      this.complain("");
      this.pack.can(true);
      markWrong(this.form.el, null);
      this.preview.show(this.toml);
      this.fair.show(this.toml);
      this.agree.show(this.toml);
      this.shown = this.out.show(this.toml, scenario);
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      this.refuse(markWrong(this.form.el, error) || error.message);
    }
    return undefined;
  }

  /**
   * Nothing is passed on that is not what stands in the form.
   * @param {string} told
   */
  refuse(told) {
    this.toml = null;
    this.complain(t("assign-problem", { told }));
    this.pack.can(false);
    this.agree.show(null);
    this.out.show(null);
  }

  /** @param {string} text */
  complain(text) {
    this.problem.hidden = !text;
    words(this.problem, text);
  }

  saveFile() {
    this.workOut();
    if (this.toml) download(`${plainName(this.form.value().id ?? "") || "scenario"}.toml`, this.toml, "application/toml");
  }

  load() {
    chooseFiles(".toml,.txt,text/plain", async ([file]) => {
      if (!file) return;
      try {
        const text = await file.text();
        if (/#c=/.test(text) || isCourseText(text)) {
          this.course.el.open = true;
          return void (await this.course.addFiles([file]));
        }
        const packed = text.match(/#a=([\w-]+)/)?.[1];
        const value = scenarioValue(packed ? await unpackText(packed) : text);
        this.take(value);
        const scripts = value.attempt?.length ?? 0;
        if (scripts > 0) words(this.note, t("assign-scripts", { n: scripts, file: file.name }));
      } catch (error) {
        this.complain(t("assign-problem", { told: error instanceof Error ? error.message : String(error) }));
      }
    });
  }
}
