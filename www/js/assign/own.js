// @ts-check
// The part of the form for what an instructor writes of their own: misreadings with a formula, and words for hints.

import { attr, h, newId, prop } from "../dom.js";
import { icon } from "../icons.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
/** @import { OwnHint, OwnMisreading, ScenarioValue } from '../types/told' */

const FIELDS = ["count", "seconds", "multiplier", "rate"];
const RUNGS = ["look", "locate", "rule", "worked"];
const STEPS = ["name", "trace", "window", "count", "seconds", "multiplier", "rate", "middle", "range", "amplitude", "uncertainty"];
const MOST = { misreading: 12, hint: 40 }; // what the core takes

export class Own {
  /** @param {() => unknown} changed */
  constructor(changed) {
    this.changed = changed;
    /** @type {ScenarioValue} */
    this.scenario = {};
    this.misreadings = h("ol", { class: "assign-own" });
    this.hints = h("ol", { class: "assign-own" });
    this.addMisreading = button(t("assign-own_add_misreading"), () => this.add("misreading", { name: this.freeName(), field: "count", formula: "2 * n_true", words: t("assign-own_words_first") }), { pic: "plus" });
    this.addHint = button(t("assign-own_add_hint"), () => this.add("hint", { ...this.freeHint(), words: t("assign-own_words_first") }), { pic: "plus" });
    this.el = h("div", {}, h("p", { class: "quiet" }, t("assign-own_about")), this.misreadings, this.addMisreading, h("p", { class: "quiet" }, t("assign-own_hints_about")), this.hints, this.addHint);
  }

  /** A name that no other misreading has. */
  freeName() {
    const taken = new Set((this.scenario.misreading ?? []).map((one) => one.name));
    for (let n = taken.size + 1; ; n += 1) if (!taken.has(`own_${n}`)) return `own_${n}`;
  }

  /** A step and a rung for which there are no words yet. */
  freeHint() {
    const taken = new Set((this.scenario.hint ?? []).map((one) => `${one.about} ${one.rung}`));
    const free = ["count", ...STEPS].flatMap((about) => RUNGS.map((rung) => ({ about, rung })));
    return free.find(({ about, rung }) => !taken.has(`${about} ${rung}`)) ?? free[0];
  }

  /** @param {"misreading" | "hint"} list @param {OwnMisreading | OwnHint} one */
  add(list, one) {
    /** @type {(OwnMisreading | OwnHint)[]} */
    const all = [...(this.scenario[list] ?? []), one];
    Object.assign(this.scenario, { [list]: all });
    this.show(this.scenario);
    this.changed();
    /** @type {HTMLElement | null | undefined} */
    const first = (list === "hint" ? this.hints : this.misreadings).lastElementChild?.querySelector("input, select");
    first?.focus();
  }

  /** @param {"misreading" | "hint"} list @param {number} k */
  take(list, k) {
    Object.assign(this.scenario, { [list]: (this.scenario[list] ?? []).filter((_, i) => i !== k) });
    this.show(this.scenario);
    this.changed();
    (list === "hint" ? this.addHint : this.addMisreading).focus();
  }

  /** @param {ScenarioValue} scenario */
  show(scenario) {
    this.scenario = scenario;
    const { misreading = [], hint = [] } = scenario;
    this.misreadings.replaceChildren(...misreading.map((one, k) => this.misreading(one, k)));
    this.hints.replaceChildren(...hint.map((one, k) => this.hint(one, k)));
    prop(this.addMisreading, "disabled", misreading.length >= MOST.misreading);
    prop(this.addHint, "disabled", hint.length >= MOST.hint);
  }

  /**
   * A labelled control.
   * @param {string} label @param {HTMLElement} control
   */
  field(label, control) {
    const id = newId("own");
    attr(control, "id", id);
    return h("div", { class: "fld" }, h("label", { for: id }, label), control);
  }

  /** @param {string} label @param {string} value @param {(text: string) => void} put @param {number} most @param {string} path */
  text(label, value, put, most, path) {
    /** @type {HTMLInputElement} */
    const input = h("input", { class: "txt", maxlength: most, autocomplete: "off", spellcheck: "false", data: { field: path }, oninput: () => { put(input.value); this.changed(); } });
    input.value = value;
    return this.field(label, input);
  }

  /** @param {string} value @param {(text: string) => void} put @param {string} path */
  words(value, put, path) {
    /** @type {HTMLTextAreaElement} */
    const area = h("textarea", { class: "txt", rows: 2, maxlength: 600, data: { field: path }, oninput: () => { put(area.value); this.changed(); } });
    area.value = value;
    return this.field(t("assign-own_words"), area);
  }

  /** @param {string} label @param {[string, string][]} options @param {string} value @param {(text: string) => void} put @param {string} path */
  choice(label, options, value, put, path) {
    /** @type {HTMLSelectElement} */
    const select = h("select", { data: { field: path }, onchange: () => { put(select.value); this.changed(); } }, (options.some(([key]) => key === value) ? options : [...options, /** @type {[string, string]} */ ([value, value])]).map(([key, words]) => h("option", { value: key }, words)));
    select.value = value;
    return this.field(label, select);
  }

  /** @param {"misreading" | "hint"} list @param {number} k @param {string} label */
  cross(list, k, label) {
    return h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": label, onclick: () => this.take(list, k) }, icon("cross"));
  }

  /** @param {OwnMisreading} one @param {number} k */
  misreading(one, k) {
    return h("li", { class: "own-row" },
      h("div", { class: "pair" }, this.text(t("assign-own_name"), one.name, (text) => (one.name = text.trim().toLowerCase().replace(/[^a-z0-9]+/g, "_")), 40, `misreading[${k}].name`),
        this.choice(t("assign-own_field"), FIELDS.map((field) => [field, t(`debrief-step-${field}`)]), one.field, (field) => (one.field = field), `misreading[${k}].field`)),
      h("div", { class: "pair" }, this.text(t("assign-own_formula"), one.formula, (text) => (one.formula = text), 120, `misreading[${k}].formula`),
        this.text(t("assign-own_tolerance"), one.tolerance === null || one.tolerance === undefined ? "" : String(one.tolerance), (text) => {
          const value = Number(text.trim().replace(",", "."));
          one.tolerance = text.trim() === "" ? null : Number.isFinite(value) ? value : -1; // the core says what may stand there
        }, 12, `misreading[${k}].tolerance`)),
      this.words(one.words, (text) => (one.words = text), `misreading[${k}].words`), this.cross("misreading", k, t("assign-own_recording", { name: one.name })));
  }

  /** @param {OwnHint} one @param {number} k */
  hint(one, k) {
    return h("li", { class: "own-row" },
      h("div", { class: "pair" }, this.choice(t("assign-own_step"), STEPS.map((step) => [step, t(`debrief-step-${step}`)]), one.about, (about) => (one.about = about), `hint[${k}].about`),
        this.choice(t("assign-own_rung"), RUNGS.map((rung) => [rung, t(`assign-own_rung_${rung}`)]), one.rung, (rung) => (one.rung = rung), `hint[${k}].rung`)),
      this.words(one.words, (text) => (one.words = text), `hint[${k}].words`), this.cross("hint", k, t("assign-own_recording", { name: t(`debrief-step-${one.about}`) })));
  }
}
