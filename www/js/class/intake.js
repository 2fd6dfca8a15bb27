// @ts-check
// Taking in result files and codes: each is replayed by the core in slices, so that the page goes on living.

import { brief, CoreError, digestOf } from "../core.js";
import { ClassBook, Replayed, WhatWasSet } from "../desk.js";
import { h, newId, prop, style, words } from "../dom.js";
import { chooseFiles } from "../hand/file.js";
import { unpackText } from "../hand/link.js";
import { listed, t } from "../text.js";
import { button } from "../widgets.js";
/** @import { ScenarioEntry } from '../types/page' */
/** @import { ClassState } from './index.js' */

const SLICE_SAMPLES = 65536; // some ten milliseconds
const SLICE_MS = 24; // how long the page may stand still
const MOST_FILE = 4 << 20;
const CODE = /\bD\d+\.[\w-]+/g; // of any form: which ones can be read the core says

/**
 * What waits to be taken in: a result file, or a code as it stands and as it is when its lines are joined; used: which of the two.
 * @typedef {{ file: string, text?: () => Promise<string>, code?: string, wrapped?: string, used?: string }} Waiting
 * @typedef {{ set: WhatWasSet, titles: string[] }} Given
 */

export class Intake {
  /**
   * state: what is filled: {book, results: [{file, again(): a bench}], given: what was set}; took(): something came in.
   * @param {{ scenarios: ScenarioEntry[], state: ClassState, took: () => unknown }} ways
   */
  constructor({ scenarios, state, took }) {
    this.scenarios = scenarios;
    this.state = state;
    this.took = took;
    /** @type {Waiting[]} */
    this.queue = [];
    this.done = 0;
    this.total = 0;
    /** @type {Record<string, string>} */
    this.known = {}; // scenarios by the beginning of their digest
    this.knewOwn = this.working = this.ended = false;
    const id = newId("codes");
    this.codes = h("textarea", { id, class: "txt code", rows: "3", spellcheck: "false", autocomplete: "off" });
    this.bar = h("span", { class: "fair-bar" });
    this.progress = h("div", { class: "fair-track intake-bar", hidden: true, "aria-hidden": "true" }, this.bar);
    this.status = h("p", { class: "quiet", role: "status" });
    this.given = h("p", { class: "quiet given", role: "status" });
    this.tellGiven();
    this.list = h("ul", { class: "intake-wrong" });
    for (const one of state.wrong) this.showWrong(one);
    /** @type {HTMLElement} */
    this.drop = h("div", { class: "drop", ondragover: (event) => { event.preventDefault(); this.drop.classList.add("is-over"); }, ondragleave: () => this.drop.classList.remove("is-over"), ondrop: (event) => this.dropped(event) },
      h("p", { class: "pencil" }, t("class-drop")), h("div", { class: "row" },
        button(t("class-choose"), () => chooseFiles(".json,.txt,.toml", (files) => this.files(files), true), { kind: "btn-strong", pic: "open" })));
    this.el = h("section", { class: "intake", "aria-label": t("class-intake") },
      h("div", { class: "row" }, button(t("class-given_open"), () => chooseFiles(".toml,.txt", (files) => this.files(files), true), { pic: "open" }), this.given), this.drop,
      h("div", { class: "fld" }, h("label", { for: id }, t("class-codes")), this.codes, h("div", { class: "row" }, button(t("class-take_codes"), () => this.paste()))),
      this.progress, this.status, this.list);
  }

  reset() {
    this.queue = [];
    this.done = 0;
    this.list.replaceChildren();
    words(this.status, "");
    this.tellGiven();
  }

  /** What results are compared with. */
  tellGiven() {
    const { titles } = this.state.given;
    words(this.given, titles.length > 0 ? t("class-given_is", { list: listed(titles) }) : t("class-given_none"));
    this.given.dataset.n = String(titles.length);
  }

  /**
   * Takes a scenario as what was set. All that came in is compared with it anew.
   * @param {string} from @param {string} toml
   */
  give(from, toml) {
    const { given } = this.state;
    try {
      given.set.add(from, toml);
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      return this.complain(from, error.message);
    }
    const { title } = brief(toml);
    if (!given.titles.includes(title)) given.titles.push(title);
    this.tellGiven();
    this.queue = [...this.state.results.map((one) => one.waiting), ...this.queue];
    this.state.results = [];
    this.state.book?.free();
    this.state.book = new ClassBook();
    this.done = 0;
    return undefined;
  }

  end() {
    this.ended = true;
  }

  /** @param {DragEvent} event */
  dropped(event) {
    event.preventDefault();
    this.drop.classList.remove("is-over");
    this.files([...(event.dataTransfer?.files ?? [])]);
  }

  /**
   * Result files, lists of codes, and scenario files that codes may belong to.
   * @param {File[]} files
   */
  async files(files) {
    /** @type {File[]} */
    const later = [];
    for (const file of files) {
      if (file.size > MOST_FILE) this.complain(file.name, t("class-too_large"));
      else if (file.name.endsWith(".toml")) this.give(file.name, await file.text());
      else if (file.name.endsWith(".txt")) later.push(file);
      else this.queue.push({ file: file.name, text: () => file.text() });
    }
    for (const file of later) {
      const text = await file.text();
      await this.takeLinks(text, file.name);
      if (!/#a=/.test(text) || text.search(CODE) >= 0) this.takeCodes(text, file.name);
    }
    this.work();
  }

  async paste() {
    const text = this.codes.value;
    await this.takeLinks(text, t("class-a_link"));
    if (this.takeCodes(text, t("class-pasted")) > 0 || /#a=/.test(text)) this.codes.value = "";
    else this.complain(t("class-pasted"), t("class-no_code"));
    this.work();
  }

  /**
   * Links in a text: what they carry was set.
   * @param {string} text @param {string} from
   */
  async takeLinks(text, from) {
    for (const [, packed] of text.matchAll(/#a=([\w-]+)/g)) {
      await unpackText(packed).then((toml) => this.give(from, toml), () => this.complain(from, t("hand-link_damaged")));
    }
  }

  /**
   * Codes in a text, one a line or wrapped by a mail program; how many.
   * @param {string} text @param {string} from
   */
  takeCodes(text, from) {
    const starts = [...text.matchAll(CODE)];
    starts.forEach((found, k) => {
      const whole = text.slice(found.index, starts[k + 1]?.index).replace(/\s+/g, "");
      this.queue.push({ file: t("class-code_of", { from, n: k + 1 }), code: found[0], wrapped: whole });
    });
    if (starts.length === 0 && from !== t("class-pasted")) this.complain(from, t("class-no_code"));
    return starts.length;
  }

  /** @param {string} toml */
  know(toml) {
    this.known[digestOf(toml).slice(0, 16)] = toml;
  }

  /** The scenarios of this page, once they are needed. */
  knowOwn() {
    if (this.knewOwn) return;
    this.knewOwn = true;
    for (const { toml } of this.scenarios) if (toml) this.know(toml);
  }

  /** @param {string} file @param {string} told */
  complain(file, told) {
    this.state.wrong.push({ file, told });
    this.showWrong({ file, told });
  }

  /** @param {{ file: string, told: string }} one */
  showWrong({ file, told }) {
    this.list.append(h("li", {}, h("b", {}, file), " ", told));
  }

  async work() {
    if (this.working) return;
    this.working = true;
    this.total = this.done + this.queue.length;
    let breath = performance.now();
    let unseen = 0;
    while (this.queue.length > 0 && !this.ended) {
      const one = /** @type {Waiting} */ (this.queue.shift());
      const { book } = this.state;
      try {
        const text = one.text ? await one.text() : null;
        if (one.code) this.knowOwn();
        const replayed = this.begin(one, text);
        while (!replayed.step(SLICE_SAMPLES)) {
          if (performance.now() - breath > SLICE_MS) {
            await new Promise((next) => setTimeout(next));
            breath = performance.now();
          }
        }
        if (this.state.book !== book) { // meanwhile something else was set
          replayed.free();
          this.queue.push(one);
          continue;
        }
        book?.add(one.file, replayed);
        const toml = replayed.scenario;
        this.know(toml);
        replayed.free();
        const source = text ?? one.used ?? "";
        this.state.results.push({ file: one.file, waiting: one, again: () => {
          const again = new Replayed(source, new WhatWasSet(), { [digestOf(toml).slice(0, 16)]: toml });
          while (!again.step(1e9));
          return again.intoBench();
        } });
      } catch (error) {
        if (!(error instanceof CoreError)) throw error;
        this.complain(one.file, error.message);
      }
      this.done += 1;
      unseen += 1;
      if (performance.now() - breath > SLICE_MS) {
        this.tell();
        await new Promise((next) => setTimeout(next));
        breath = performance.now();
      }
      if (unseen >= 200) { this.took(); unseen = 0; }
    }
    this.working = false;
    this.tell();
    if (!this.ended) this.took();
  }

  /**
   * Begins a replay; a code that is damaged as it stands may be whole across the line ends that a mail program put in.
   * @param {Waiting} one @param {string | null} text
   */
  begin(one, text) {
    const { set } = this.state.given;
    if (text !== null) return new Replayed(text, set);
    const { code = "", wrapped = "" } = one;
    one.used = code;
    try {
      return new Replayed(code, set, this.known);
    } catch (error) {
      if (wrapped === code) throw error;
      try {
        const replayed = new Replayed(wrapped, set, this.known);
        one.used = wrapped;
        return replayed;
      } catch (second) {
        throw second instanceof CoreError && second.code === "code" ? error : second; // whole when joined, and yet of no use: that says more
      }
    }
  }

  tell() {
    const total = this.done + this.queue.length;
    const busy = this.queue.length > 0;
    prop(this.progress, "hidden", !busy);
    style(this.bar, "width", `${((100 * this.done) / Math.max(1, total)).toFixed(1)}%`);
    words(this.status, busy ? t("class-busy", { n: this.done, of: total }) : t("class-came", { n: this.state.results.length, wrong: this.state.wrong.length }));
    this.el.dataset.busy = busy ? "1" : "";
  }
}
