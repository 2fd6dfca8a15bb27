// @ts-check
// Out again: rows for a gradebook, in columns called as the course site wants them, and the answer key.

import { brief, CoreError } from "../core.js";
import { h, newId, prop, style, words } from "../dom.js";
import { download } from "../download.js";
import { keep, recall } from "../device.js";
import { t } from "../text.js";
import { button, Choice, Tick } from "../widgets.js";
import { keyHead } from "../desk.js";
import { keyRows } from "./key.js";
import { state } from "./state.js";
import { shown } from "./students.js";
import { feedbackOf } from "./words.js";
/** @import { FaultBook } from '../types/page' */
/** @import { ClassTold, GradebookOrder } from '../types/told' */

const FIELDS = ["code", "name", "email", "group", "state", "ready", "points", "maximum", "percent", "tries", "minutes", "feedback", "empty"];
/** Whether a column can hold it: one of the fields, or the points of a part of the course. @param {unknown} field */
const holds = (field) => typeof field === "string" && (FIELDS.includes(field) || /^part_([1-9]|1\d|20)$/.test(field));
/** @param {string} field */
const fieldWords = (field) => (field.startsWith("part_") ? t("class-field_part", { n: field.slice(5) }) : t(`class-field_${field}`));
const FIRST = ["code", "name", "points", "maximum", "feedback"];
const MOST_COLUMNS = 40;

/** @returns {GradebookOrder} */
const usual = () => ({ columns: FIRST.map((field) => ({ title: t(`class-field_${field}`), field })), divides: ",", bom: false, maximum: 20, blank: false });

/**
 * The benches that were set, each by its title; of two with one title also by where they came from.
 * @param {[string, string][]} given @returns {[string, string][]}
 */
function titlesOf(given) {
  const titles = given.map(([, text]) => brief(text).title);
  return titles.map((title, k) => [String(k), titles.indexOf(title) === titles.lastIndexOf(title) ? title : t("class-answers_which", { title, from: given[k][0] })]);
}

export class Out {
  /** @param {{ faults: FaultBook }} ways */
  constructor({ faults }) {
    this.faults = faults;
    /** @type {ClassTold | null} */
    this.told = null;
    const kept = recall("gradebook");
    /** @type {GradebookOrder} */
    this.order = Array.isArray(kept?.columns) && kept.columns.every((/** @type {any} */ one) => typeof one?.title === "string" && holds(one?.field)) ? { ...usual(), ...kept } : usual();
    this.columns = h("ol", { class: "map-columns" });
    this.said = h("p", { class: "quiet", role: "status" });
    this.rows = new Choice(t("class-rows"), () => {});
    this.rows.set(["all", "shown", "ticked"].map((key) => [key, t(`class-rows_${key}`)]), "all");
    const divides = new Choice(t("class-divides"), (value) => this.put({ divides: value }));
    divides.set([[",", t("class-divides_comma")], [";", t("class-divides_semicolon")], ["\t", t("class-divides_tab")]], this.order.divides);
    const maximum = newId("maximum"), word = newId("word");
    /** @type {HTMLInputElement} */
    const most = h("input", { id: maximum, class: "txt", type: "number", min: "0.5", max: "1000", step: "any", oninput: () => this.put({ maximum: Number(most.value) }) });
    prop(most, "value", String(this.order.maximum));
    const bom = new Tick(t("class-bom"), (on) => this.put({ bom: on })), blank = new Tick(t("class-blank"), (on) => this.put({ blank: on }));
    bom.set(this.order.bom);
    blank.set(this.order.blank);
    this.which = new Choice(t("class-answers_of"), () => {});
    /** @type {HTMLInputElement} */
    this.word = h("input", { id: word, class: "txt", type: "password", autocomplete: "off" });
    this.saidKey = h("p", { class: "quiet", role: "status" });
    this.saveKey = button(t("class-answers_save"), () => this.answers(), { pic: "save" });
    this.stopKey = button(t("class-answers_stop"), () => this.making?.abort());
    this.keyBar = h("span", { class: "fair-bar" });
    this.keyWork = h("div", { class: "intake-work", hidden: true }, h("div", { class: "fair-track intake-bar", "aria-hidden": "true" }, this.keyBar), this.stopKey);
    /** @type {AbortController | null} */
    this.making = null;
    this.el = h("div", { class: "class-out" },
      h("details", {}, h("summary", {}, t("class-gradebook")), h("div", { class: "out-part" }, h("p", { class: "quiet" }, t("class-gradebook_about")), this.columns,
        h("div", { class: "row" }, button(t("class-column_add"), () => this.change([...this.order.columns, { title: "", field: "empty" }]))),
        h("div", { class: "row out-ways" }, this.rows.el, h("div", { class: "fld" }, h("label", { for: maximum }, t("class-maximum")), most), divides.el), bom.el, blank.el,
        h("div", { class: "row" }, button(t("class-gradebook_save"), () => this.gradebook(), { kind: "btn-strong", pic: "save" })), this.said)),
      h("details", {}, h("summary", {}, t("class-answers")), h("div", { class: "out-part" }, h("p", { class: "quiet" }, t("class-answers_about")), this.which.el,
        h("div", { class: "fld" }, h("label", { for: word }, t("class-answers_word")), this.word), h("div", { class: "row" }, this.saveKey), this.keyWork, this.saidKey)));
    this.showColumns();
  }

  /** @param {Partial<GradebookOrder>} more */
  put(more) {
    Object.assign(this.order, more);
    keep("gradebook", this.order);
  }

  /** @param {GradebookOrder["columns"]} columns */
  change(columns) {
    this.put({ columns: columns.slice(0, MOST_COLUMNS) });
    this.showColumns();
  }

  showColumns() {
    const { columns } = this.order;
    this.columns.replaceChildren(...columns.map((column, k) => {
      /** @type {HTMLInputElement} */
      const title = h("input", { class: "txt", maxlength: 120, autocomplete: "off", "aria-label": t("class-column_title", { n: k + 1 }), oninput: () => { column.title = title.value; this.put({}); } });
      prop(title, "value", column.title);
      /** @type {HTMLSelectElement} */
      const field = h("select", { "aria-label": t("class-column_field", { n: k + 1 }), onchange: () => { column.field = field.value; this.put({}); } }, [...new Set([...FIELDS, ...Array.from({ length: this.told?.course?.parts.length ?? 0 }, (_, i) => `part_${i + 1}`), column.field])].map((name) => h("option", { value: name }, fieldWords(name))));
      prop(field, "value", column.field);
      return h("li", {}, title, field, button(t("class-column_out"), () => this.change(columns.filter((_, i) => i !== k)), { kind: "btn-small btn-plain", "aria-label": t("class-column_out_of", { n: k + 1 }) }));
    }));
  }

  /** @param {ClassTold} told */
  show(told) {
    const parts = this.told?.course?.parts.length ?? 0;
    this.told = told;
    if ((told.course?.parts.length ?? 0) !== parts) this.showColumns();
    const given = state.course.given();
    this.which.set(titlesOf(given), this.which.select.value || "0");
    prop(this.which.el, "hidden", given.length < 2);
  }

  gradebook() {
    if (!this.told) return;
    const which = this.rows.select.value;
    const { told } = this;
    const all = told.lines;
    const lines = which === "shown" ? shown(this.told, this.faults).map(({ line }) => line) : which === "ticked" ? all.filter((line) => state.view.ticked.has(line.code)) : all;
    this.tried(this.said, () => {
      download("gradebook.csv", state.course.gradebook(lines.map((line) => line.code), lines.map((line) => feedbackOf(line, this.faults, told)), this.order), "text/csv");
      words(this.said, t("class-gradebook_saved", { n: lines.length }));
    });
  }

  async answers() {
    const given = state.course.given();
    if (given.length === 0) return words(this.saidKey, t("error-answers_no_assignment"));
    const [, toml] = given[Number(this.which.select.value) || 0] ?? given[0];
    const word = this.word.value, students = state.course.everybody();
    const { signal } = (this.making = new AbortController());
    /** @param {number} done */
    const moved = (done) => {
      style(this.keyBar, "width", `${((100 * done) / Math.max(1, students.length)).toFixed(1)}%`);
      words(this.saidKey, t("class-answers_made", { n: done, of: students.length }));
    };
    try {
      const head = keyHead(toml, word);
      this.work(true);
      moved(0);
      download("answer-key.csv", head + (await keyRows(toml, word, students, { moved, signal })), "text/csv");
      words(this.saidKey, t("class-answers_saved"));
    } catch (error) {
      if (signal.aborted) words(this.saidKey, t("class-answers_stopped"));
      else if (error instanceof CoreError) words(this.saidKey, error.message);
      else throw error;
    } finally {
      this.work(false);
    }
  }

  /** @param {boolean} on */
  work(on) {
    prop(this.saveKey, "disabled", on);
    prop(this.keyWork, "hidden", !on);
  }

  /** What is being made is not wanted any more. */
  end() {
    this.making?.abort();
  }

  /** @param {HTMLElement} said @param {() => void} make */
  tried(said, make) {
    try {
      make();
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      words(said, error.message);
    }
  }
}
