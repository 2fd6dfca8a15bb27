// @ts-check
// Taking in: what was set, the list of students, result files and codes. Grading is done beside the page, see grader.js.

import { CoreError, digestOf } from "../core.js";
import { partResults } from "../desk.js";
import { h, newId, prop, style, words } from "../dom.js";
import { chooseFiles } from "../hand/file.js";
import { MOST_COURSE_BYTES, unpackText } from "../hand/link.js";
import { coded, t } from "../text.js";
import { button } from "../widgets.js";
import { askSet, Given } from "./given.js";
import { Grader } from "./grader.js";
import { fileName, hidesSome } from "./names.js";
import { changed, state } from "./state.js";
/** @import { FaultBook, ScenarioEntry } from '../types/page' */
/** @import { Source } from '../types/told' */
/** @import { Waiting } from './grader.js' */
/** @import { Args } from '../types/names' */
/** @typedef {{ code: string, args: Args }} RosterWrong */

const MOST_FILE = 4 << 20, MOST_COURSE_FILE = 16 << 20;
const SHOW_EVERY_MS = 1500; // while it is at work: to show a class takes a processor away from grading it
const CODE = /\bD\d+\.[\w-]+/g; // of any form: which ones can be read the core says

export class Intake {
  /**
   * took(): something came in, or is otherwise than it was.
   * @param {{ scenarios: ScenarioEntry[], faults: FaultBook, took: () => unknown, openClass: (text: string) => unknown }} ways
   */
  constructor({ scenarios, faults, took, openClass }) {
    this.scenarios = scenarios;
    this.took = took;
    this.openClass = openClass;
    this.knewOwn = this.ended = false;
    this.shown = 0;
    /** @type {RosterWrong[]} */
    this.rosterErrors = [];
    this.rosterTaken = 0;
    /** @type {[file: string, told: string][]} */
    this.said = []; // what is wrong with what was opened here, beside the results of the class
    this.grader = new Grader({
      took: (source, graded) => state.course.take(source, graded),
      refused: (source, code, args) => state.course.refuse(source.text === " " ? { file: source.file } : source, code, args),
      moved: () => this.tell(),
    });
    this.bar = h("span", { class: "fair-bar" });
    this.progress = h("div", { class: "fair-track intake-bar", "aria-hidden": "true" }, this.bar);
    this.stop = button(t("class-cancel"), () => this.cancel());
    this.work = h("div", { class: "intake-work", hidden: true }, this.progress, this.stop);
    this.status = h("p", { class: "quiet", role: "status" });
    this.given = new Given({ faults, altered: () => this.setAnew() });
    this.wrong = h("ul", { class: "intake-wrong", tabindex: "0", "aria-label": t("class-wrong_list") });
    /** @type {HTMLElement} */
    this.drop = h("div", { class: "drop", ondragover: (event) => { event.preventDefault(); this.drop.classList.add("is-over"); }, ondragleave: () => this.drop.classList.remove("is-over"), ondrop: (event) => this.dropped(event) },
      h("p", { class: "pencil" }, t("class-drop")), h("div", { class: "row" },
        button(t("class-choose"), () => chooseFiles(".json,.txt,.toml", (files) => this.files(files), true), { kind: "btn-strong", pic: "open" })));
    const codes = this.box("codes", "class-codes", "class-take_codes", (text) => this.paste(text));
    this.rosterSaid = h("p", { class: "quiet roster-said", role: "status" });
    this.rosterWrong = h("ul", { class: "intake-wrong roster-wrong", tabindex: "0", "aria-label": t("class-roster_wrong") });
    this.forgetList = button(t("class-roster_forget"), () => { state.course.forgetRoster(); this.listed(); this.altered(); }, { kind: "btn-plain" });
    const roster = this.box("roster", "class-roster_paste", "class-roster_take", (text) => this.roster(text));
    this.el = h("section", { class: "intake", "aria-label": t("class-intake") },
      h("div", { class: "intake-step" }, h("h2", {}, t("class-step_set")), this.given.el, h("div", { class: "row" }, button(t("class-given_open"), () => chooseFiles(".toml,.txt", (files) => this.setFiles(files), true), { pic: "open" })),
        h("details", {}, h("summary", {}, t("class-given_or")), this.box("link", "class-given_link", "class-given_recording", (text) => this.setLinks(text))),
        h("h2", {}, t("class-step_roster")), this.rosterSaid, h("div", { class: "row" }, button(t("class-roster_open"), () => chooseFiles(".csv,.txt,.tsv,text/csv,text/plain", async ([file]) => file && this.roster(await file.text())), { pic: "open" }), this.forgetList), this.rosterWrong,
        h("details", {}, h("summary", {}, t("class-roster_or")), roster)),
      h("div", { class: "intake-step" }, h("h2", {}, t("class-step_results")), this.drop, h("details", { class: "codes-box" }, h("summary", {}, t("class-codes_or")), codes)),
      h("div", { class: "intake-wide" }, this.work, this.status, this.wrong));
    this.listed();
    this.grader.give(state.course.given());
    this.take(state.waiting.splice(0), state.queue.splice(0));
  }

  /**
   * A box to paste into, with its button.
   * @param {string} stem @param {string} label @param {string} action @param {(text: string) => unknown} take
   */
  box(stem, label, action, take) {
    const id = newId(stem);
    /** @type {HTMLTextAreaElement} */
    const area = h("textarea", { id, class: "txt code", rows: "3", spellcheck: "false", autocomplete: "off" });
    return h("div", { class: "fld" }, h("label", { for: id }, t(label)), area, h("div", { class: "row" }, button(t(action), async () => { if (await take(area.value)) area.value = ""; })));
  }

  end() {
    state.queue.push(...[...this.grader.running.values()].map(({ one }) => one), ...this.grader.queue); // whoever comes back goes on
    this.ended = true;
    this.grader.cancel();
  }

  cancel() {
    const left = this.grader.cancel();
    this.took();
    words(this.status, t("class-cancelled", { n: left }));
  }

  /** @param {Source[]} sources @param {Waiting[]} [more] */
  take(sources, more = []) {
    /** @type {Waiting[]} */
    const all = [...sources.map((source) => ({ file: source.file, source })), ...more];
    if (all.some((one) => one.source?.code || one.joined)) this.knowOwn();
    if (all.length > 0) this.grader.add(all);
    else this.tell();
  }

  /** The scenarios of this page, once codes need them. */
  knowOwn() {
    if (this.knewOwn) return;
    this.knewOwn = true;
    this.grader.know(Object.fromEntries(this.scenarios.flatMap(({ toml }) => (toml ? [[digestOf(toml).slice(0, 16), toml]] : []))));
  }

  /** How many stand on the list. */
  listed() {
    const n = state.course.told().listed;
    words(this.rosterSaid, n > 0 ? t("class-roster_is", { n }) : t("class-roster_none"));
    prop(this.forgetList, "hidden", n === 0);
  }

  altered() {
    changed();
    this.took();
  }

  /**
   * Takes a list of students; true if all of it was taken. Lines that are wrong are left out and told.
   * @param {string} text
   */
  roster(text) {
    const { taken, wrong } = state.course.roster(text);
    this.rosterErrors = wrong;
    this.rosterTaken = taken;
    this.showRosterErrors();
    if (taken > 0) {
      this.altered();
      this.listed();
    }
    return wrong.length === 0;
  }

  /** What is wrong with the list; the ID of a student in it is told where IDs are shown, and the line's number always. */
  showRosterErrors() {
    const wrong = this.rosterErrors;
    const why = (/** @type {RosterWrong} */ { code, args }) => coded("class-roster-wrong", code === "twice" && !state.view.names ? "twice_hidden" : code, args);
    this.rosterWrong.replaceChildren(...(this.rosterTaken > 0 && wrong.length > 0 ? [h("li", {}, h("b", {}, t("class-roster_left_out", { n: wrong.length })))] : []), ...wrong.map((one) => h("li", {}, why(one))));
  }

  /** Whether names may be shown is otherwise than it was. */
  renamed() {
    this.given.showComplaints();
    this.showRosterErrors();
    this.showWrong();
  }

  /** What is set is other than it was: all that came in is compared with it. */
  setAnew() {
    this.grader.give(state.course.given());
    this.take(state.course.waiting());
    this.altered();
  }

  /** @param {DragEvent} event */
  dropped(event) {
    event.preventDefault();
    this.drop.classList.remove("is-over");
    this.files([...(event.dataTransfer?.files ?? [])]);
  }

  /**
   * Files of what was set: scenarios, courses, links to them. What was handed in is no such thing.
   * @param {File[]} files
   */
  async setFiles(files) {
    this.given.fresh();
    for (const file of files) {
      const text = file.size > MOST_COURSE_FILE ? "" : await file.text();
      if (!text) this.given.complain(file.name, t("class-too_large"));
      else if (/#[ac]=/.test(text) && !/\.toml$/i.test(file.name)) await this.links(file.name, text);
      else if (/^\s*\{/.test(text) && /"dicrotic-(course-)?result"/.test(text)) this.given.complain(file.name, t("class-set_is_result"));
      else await this.given.take(file.name, text);
    }
  }

  /** Links that were handed out; true if each could be read. @param {string} text */
  async setLinks(text) {
    this.given.fresh();
    if (/#[ac]=/.test(text)) await this.links(t("class-pasted"), text);
    else this.given.complain(t("class-pasted"), t("class-given_no_link"));
    return this.given.wrong.childElementCount === 0;
  }

  /**
   * What came in: result files, lists of codes, a saved class. What is set by mistake here is asked about first.
   * @param {File[]} files
   */
  async files(files) {
    this.fresh();
    /** @type {Waiting[]} */
    const later = [];
    for (const file of files) {
      if (/\.dicrotic-class\.json$/i.test(file.name)) {
        await this.openClass(await file.text());
      } else if (file.size > MOST_FILE && !(/\.dicrotic-course-result\.json$/i.test(file.name) && file.size <= MOST_COURSE_FILE)) {
        this.complain(file.name, t("class-too_large"));
      } else if (/\.toml$/i.test(file.name)) {
        if (await askSet(file.name)) await this.given.take(file.name, await file.text());
        else this.complain(file.name, t("class-not_a_result"));
      } else if (/\.txt$/i.test(file.name)) {
        later.push(...(await this.codes(file.name, await file.text())));
      } else if ((await file.slice(0, 400).text()).includes('"dicrotic-course-result"')) {
        later.push(...this.parts(file.name, await file.text()));
      } else {
        later.push({ file: file.name, read: async () => ({ file: file.name, text: await file.text() }) });
      }
    }
    this.take([], later);
  }

  /**
   * The results in the one file of a course.
   * @param {string} file @param {string} text @returns {Waiting[]}
   */
  parts(file, text) {
    try {
      const { course, results } = partResults(text) ?? { course: "", results: [] };
      return results.map((one, k) => {
        const name = t("class-result_of", { from: file, n: k + 1 });
        return { file: name, source: { file: name, text: one, within: { file, course } } };
      });
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      this.complain(file, error.message);
      return [];
    }
  }

  /** @param {string} text */
  async paste(text) {
    this.fresh();
    this.take([], await this.codes(t("class-pasted"), text));
    return true;
  }

  /**
   * What the links in a text carry is what was set.
   * @param {string} from @param {string} text @param {string} [name] what is set is told to come from
   */
  async links(from, text, name = t("class-link_in", { from })) {
    for (const [, mark, packed] of text.matchAll(/#([ac])=([\w-]+)/g)) {
      /** @type {string} */
      let set;
      try {
        set = await unpackText(packed, mark === "c" ? MOST_COURSE_BYTES : undefined);
      } catch {
        this.given.complain(from, t("hand-link_damaged"));
        continue;
      }
      await this.given.take(name, set);
    }
  }

  /**
   * Codes with whatever stands around them; a link beside them tells what was set.
   * @param {string} from @param {string} text @returns {Promise<Waiting[]>}
   */
  async codes(from, text) {
    const pasted = from === t("class-pasted");
    await this.links(pasted ? from : t("class-link_beside"), text, pasted ? undefined : t("class-link_beside")); // a file of results may be called after a student
    // Mail programs fold lines and put signs before them: what begins after a code may be the rest of it.
    const plain = text.replace(/^[> \t]+/gm, "");
    const starts = [...plain.matchAll(CODE)];
    if (starts.length === 0 && !/#[ac]=/.test(text)) this.complain(from, t("class-no_code"));
    return starts.map((start, k) => {
      const rest = plain.slice(start.index, starts[k + 1]?.index ?? plain.length);
      const joined = rest.match(/^[\w.-]+(?:\r?\n[\w-]+(?=\r?\n|$))*/)?.[0].replace(/\s/g, "") ?? start[0];
      const file = t("class-code_of", { from, n: k + 1 });
      return { file, source: { file, code: start[0] }, joined };
    });
  }

  /** What was told of files that were opened before is over. */
  fresh() {
    this.said = [];
    this.showWrong();
  }

  /** @param {string} file @param {string} told */
  complain(file, told) {
    this.said.push([file, told]);
    this.showWrong();
  }

  /** Shows how far it is; the class is shown now and then while it comes in, and at the end. */
  tell() {
    if (this.ended) return;
    const { busy, done, total } = this.grader;
    prop(this.work, "hidden", !busy);
    style(this.bar, "width", `${((100 * done) / Math.max(1, total)).toFixed(1)}%`);
    if (busy) words(this.status, t("class-busy", { n: done, of: total }));
    const now = performance.now();
    if (!busy || now - this.shown > SHOW_EVERY_MS) {
      // A copy is laid down of what is whole: half of a class would come back from it.
      if (total > 0 && busy) this.took();
      else if (total > 0) this.altered();
      this.shown = performance.now();
    }
    if (!busy) this.summedUp();
    this.el && (this.el.dataset.busy = busy ? "1" : "");
  }

  /** All that could not be used, by its reason, and how much came in. */
  summedUp() {
    const { results, again, failed } = state.course.told();
    words(this.status, results + again + failed.length > 0 ? t("class-came", { n: results + again, wrong: failed.length }) : "");
    this.showWrong();
  }

  /** Each file that could not be used, under its reason; by its name where that may be shown. */
  showWrong() {
    /** @type {Map<string, Set<string>>} */
    const by = new Map();
    for (const [file, told] of this.said) by.set(told, (by.get(told) ?? new Set()).add(file));
    for (const { file, why, args } of state.course.told().failed) {
      const reason = coded("error", why, args);
      by.set(reason, (by.get(reason) ?? new Set()).add(file));
    }
    const files = [...new Set([...by.values()].flatMap((some) => [...some]))];
    const name = (/** @type {string} */ file) => h("li", {}, h("b", {}, fileName(file, files.indexOf(file))));
    this.wrong.replaceChildren(...(hidesSome(files) ? [h("li", { class: "names-hidden" }, t("class-files_hidden"))] : []), ...[...by].map(([reason, some]) => h("li", {}, reason, h("ul", {}, [...some].map(name)))));
  }
}
