// @ts-check
// Putting a course together: several assignments in order, with days and words, as one link or one file.

import { brief, CoreError } from "../core.js";
import { courseOut, isCourseText, scenarioValue } from "../desk.js";
import { keep, recall } from "../device.js";
import { h, newId, prop, words } from "../dom.js";
import { download } from "../download.js";
import { chooseFiles, copy, plainName } from "../hand/file.js";
import { MOST_COURSE_BYTES, packed, pageAddress, unpackText } from "../hand/link.js";
import { icon } from "../icons.js";
import { num, t } from "../text.js";
import { button } from "../widgets.js";
import { markWrong } from "./wrong.js";
/** @import { CourseValue, PartValue } from '../types/told' */

const MOST_PARTS = 20; // what the core takes
const SETTLE_MS = 250;
const DRAFT = "course-draft";

/** @returns {CourseValue} */
const empty = () => ({ course: { id: "", title: "", words: "" }, part: [] });

/**
 * Whether what was kept is a course in the making, of which each part can be read.
 * @param {any} kept @returns {kept is CourseValue}
 */
function isCourse(kept) {
  if (typeof kept?.course?.title !== "string" || !Array.isArray(kept.part) || kept.part.length > MOST_PARTS) return false;
  try {
    return kept.part.every((/** @type {any} */ one) => typeof one?.scenario === "string" && brief(one.scenario));
  } catch {
    return false;
  }
}

export class CourseMaker {
  /**
   * current(): the text of the bench that stands in the form, or null; addressOf(): where the page is for students.
   * @param {{ current: () => string | null, addressOf: () => string }} ways
   */
  constructor({ current, addressOf }) {
    this.current = current;
    this.addressOf = addressOf;
    this.count = 0; // of the links that were asked for: a late one gives way
    /** @type {CourseValue} */
    this.value = empty();
    /** @type {{ handed: string, file: string } | null} */
    this.out = null;
    /** @type {number | undefined} */
    this.due = undefined;
    const title = newId("course"), more = newId("course");
    /** @type {HTMLInputElement} */
    this.title = h("input", { id: title, class: "txt", maxlength: "80", autocomplete: "off", oninput: () => { this.value.course.title = this.title.value; this.changed(); } });
    /** @type {HTMLTextAreaElement} */
    this.words = h("textarea", { id: more, class: "txt", rows: 2, maxlength: "2000", oninput: () => { this.value.course.words = this.words.value; this.changed(); } });
    this.list = h("ol", { class: "assign-own course-making" });
    this.problem = h("p", { class: "problem", role: "status" });
    this.said = h("span", { class: "quiet", role: "status" });
    this.link = h("output", { class: "address", tabindex: "0", role: "group", "aria-label": t("assign-course_link") });
    this.length = h("p", { class: "quiet" });
    this.lacks = h("p", { class: "problem course-lacks", role: "status" });
    this.open = h("a", { class: "btn btn-plain" }, t("assign-as_student"));
    this.copies = button(t("assign-course_copy"), () => this.copy(), { kind: "btn-strong" });
    this.saves = button(t("assign-course_save"), () => this.saveFile(), { pic: "save" });
    this.anew = button(t("assign-course_anew"), () => { this.value = empty(); this.show(); this.title.focus(); }, { kind: "btn-plain" });
    this.el = h("details", { class: "course-maker" }, h("summary", {}, t("assign-course")), h("p", { class: "quiet" }, t("assign-course_about")),
      h("div", { class: "fld" }, h("label", { for: title }, t("assign-course_title")), this.title), h("div", { class: "fld" }, h("label", { for: more }, t("assign-course_words")), this.words),
      this.list,
      h("div", { class: "row" }, button(t("assign-course_add"), () => this.addCurrent(), { pic: "plus" }), button(t("assign-course_files"), () => chooseFiles(".toml,.txt,text/plain", (files) => this.addFiles(files), true), { pic: "open" }), this.anew),
      this.problem, this.lacks, h("div", {}, this.link, this.length), h("div", { class: "row" }, this.copies, this.open, this.saves, this.said));
    this.open.addEventListener("focus", () => this.due && this.workOut());
    const kept = recall(DRAFT);
    if (isCourse(kept)) this.value = kept;
    this.el.open = this.value.part.length > 0;
    this.show();
  }

  end() {
    clearTimeout(this.due);
    this.count += 1;
  }

  addCurrent() {
    const toml = this.current();
    if (toml) this.add(toml);
    else words(this.problem, t("assign-course_no_bench"));
  }

  /** @param {string} toml */
  add(toml) {
    if (this.value.part.length < MOST_PARTS) this.value.part.push({ opens: null, due: null, words: "", scenario: toml });
    this.show();
  }

  /**
   * Scenario files, texts with links in them, and course files, whose parts are added.
   * @param {File[]} files
   */
  async addFiles(files) {
    for (const file of files) {
      try {
        await this.take(await file.text());
      } catch (error) {
        this.show();
        return void words(this.problem, t("assign-course_bad_file", { file: file.name, told: error instanceof Error ? error.message : String(error) }));
      }
    }
    return this.show();
  }

  /**
   * Adds what is in a text; of a course all parts, and its title and words where there are none yet.
   * @param {string} text
   */
  async take(text) {
    const links = [...text.matchAll(/#([ac])=([\w-]+)/g)];
    if (links.length > 0) {
      for (const [, mark, carried] of links) await this.take(await unpackText(carried, mark === "c" ? MOST_COURSE_BYTES : undefined));
      return;
    }
    if (!isCourseText(text)) {
      scenarioValue(text); // throws with words where it is none
      this.value.part.push({ opens: null, due: null, words: "", scenario: text });
      return;
    }
    /** @type {CourseValue} */
    const { course, part } = JSON.parse(courseOut(text).handed);
    this.value.part.push(...part);
    if (!this.value.course.title) this.value.course = course;
  }

  /** Shows the list and works it out. */
  show() {
    this.value.part.splice(MOST_PARTS);
    const { course, part } = this.value;
    prop(this.title, "value", course.title);
    prop(this.words, "value", course.words ?? "");
    this.list.replaceChildren(...part.map((one, k) => this.row(one, k)));
    keep(DRAFT, this.value);
    this.workOut();
  }

  /** @param {string} label @param {HTMLElement} control */
  field(label, control) {
    control.id = newId("part");
    return h("div", { class: "fld" }, h("label", { for: control.id }, label), control);
  }

  /** @param {string} label @param {"opens" | "due"} key @param {PartValue} one @param {number} k */
  moment(label, key, one, k) {
    /** @type {HTMLInputElement} */
    const input = h("input", { class: "txt", type: "datetime-local", data: { field: `part[${k}].${key}` }, oninput: () => {
      one[key] = input.value ? new Date(input.value).toISOString().slice(0, 19) + "Z" : null;
      this.changed();
    } });
    input.value = local(one[key]);
    return this.field(label, input);
  }

  /** @param {PartValue} one @param {number} k */
  row(one, k) {
    const title = brief(one.scenario).title;
    /** @type {HTMLTextAreaElement} */
    const area = h("textarea", { class: "txt", rows: 1, maxlength: "2000", oninput: () => { one.words = area.value; this.changed(); } });
    area.value = one.words ?? "";
    /** @param {number} by */
    const move = (by) => {
      const { part } = this.value;
      [part[k], part[k + by]] = [part[k + by], part[k]];
      this.show();
    };
    return h("li", { class: "own-row" }, h("div", { class: "fault-row-head" }, h("b", {}, title),
        h("span", { class: "row" }, k > 0 && button(t("assign-course_up"), () => move(-1), { kind: "btn-small btn-plain", "aria-label": t("assign-course_up_of", { title }) }),
          h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": t("assign-own_recording", { name: title }), onclick: () => { this.value.part.splice(k, 1); this.show(); } }, icon("cross")))),
      h("div", { class: "pair" }, this.moment(t("assign-course_opens"), "opens", one, k), this.moment(t("assign-course_due"), "due", one, k)), this.field(t("assign-course_part_words"), area));
  }

  changed() {
    keep(DRAFT, this.value); // at once: the page may be left before it is worked out
    clearTimeout(this.due);
    this.due = setTimeout(() => this.workOut(), SETTLE_MS);
  }

  /** Puts the course to the core: what comes back is what is passed on. */
  async workOut() {
    clearTimeout(this.due);
    this.due = undefined;
    const mine = (this.count += 1);
    this.out = null;
    for (const one of [this.copies, this.saves]) prop(one, "disabled", true);
    words(this.link, "");
    words(this.length, "");
    words(this.problem, "");
    this.open.removeAttribute("href");
    prop(this.anew, "hidden", this.value.part.length === 0 && !this.value.course.title);
    markWrong(this.el, null);
    const { course, part } = this.value;
    const titles = part.map((one) => brief(one.scenario).title);
    const alike = titles.find((title, k) => titles.indexOf(title) < k);
    words(this.lacks, (part.length === 0) === !course.title.trim() ? (alike ? t("assign-course_alike", { title: alike }) : "") : part.length === 0 ? t("assign-course_no_part") : t("assign-course_no_title"));
    if (part.length === 0 || !course.title.trim()) return;
    course.id = plainName(course.title, 50) || "course";
    try {
      this.out = courseOut(JSON.stringify(this.value));
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      return void words(this.problem, t("assign-course_problem", { told: markWrong(this.el, error) || error.message }));
    }
    const carried = await packed(this.out.handed);
    if (mine !== this.count) return;
    words(this.link, `${this.addressOf() || pageAddress()}#c=${carried}`);
    words(this.length, t("assign-length", { n: num(this.link.textContent?.length ?? 0) }));
    this.open.href = `#c=${carried}`;
    for (const one of [this.copies, this.saves]) prop(one, "disabled", false);
  }

  /** What was changed a moment ago is taken in first: nobody passes on the course before. */
  saveFile() {
    this.workOut();
    if (this.out) download(`${this.value.course.id}.toml`, this.out.file, "application/toml");
  }

  async copy() {
    await this.workOut();
    words(this.said, (await copy(this.link.textContent ?? "", this.link)) ? t("hand-copied") : t("hand-by_hand"));
  }
}

/**
 * A moment as a field of the browser's wants it, in local time.
 * @param {string | null | undefined} moment
 */
function local(moment) {
  const at = moment ? Date.parse(moment) : NaN;
  if (!Number.isFinite(at)) return "";
  return new Date(at - new Date(at).getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
