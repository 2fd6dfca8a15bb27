// @ts-check
// A course as a student sees it: what it asks for, what is done, open, closed and due; and one result for all of it. Each part is an
// ordinary assignment with a link of its own; what is done there is kept as ever, and gathered here.

import { Bench, CoreError } from "../core.js";
import { h, newId, prop, say, words } from "../dom.js";
import { download } from "../download.js";
import { openJournal, recallAttempt } from "../store.js";
import { languageNow, num, t } from "../text.js";
import { tagOf } from "../who.js";
import { button } from "../widgets.js";
import { begunBy, seedAtTry, taskOf } from "./begin.js";
import { courseOf, rememberCourse } from "./course.js";
import { copy, plainName } from "./file.js";
import { MOST_COURSE_BYTES, packText, unpackText } from "./link.js";
/** @import { Course, CoursePart, KeptAttempt } from '../types/page' */

const MOST_PARTS = 20; // what the core takes
const FORMAT = "dicrotic-course-result";
const OF = 20;

/** @typedef {{ kept: KeptAttempt, tries: number }} Try */
/** @typedef {{ begun: number, checked: number, passed: boolean, points: number | null }} Stand */

/**
 * The course that a link carries. Rejects with words for what is wrong.
 * @param {string} address @returns {Promise<Course>}
 */
export async function readCourse(address) {
  /** @type {any} */
  let told;
  try {
    told = JSON.parse(await unpackText(address, MOST_COURSE_BYTES));
  } catch {
    throw new Error(t("hand-link_damaged"));
  }
  /** @param {unknown} value */
  const text = (value) => (typeof value === "string" ? value : "");
  const parts = told?.part;
  if (!Array.isArray(parts) || parts.length === 0 || parts.length > MOST_PARTS || !text(told?.course?.title)) throw new Error(t("hand-link_damaged"));
  /** @param {any} part @returns {Promise<CoursePart>} */
  const read = async (part) => {
    const task = taskOf(text(part?.scenario));
    return { task, address: await packText(task.toml), words: text(part.words), opens: moment(part.opens), due: moment(part.due) };
  };
  try {
    return { id: text(told.course.id), title: text(told.course.title), words: text(told.course.words), parts: await Promise.all(parts.map(read)) };
  } catch (error) {
    if (error instanceof CoreError) throw error;
    throw new Error(t("hand-link_damaged"), { cause: error });
  }
}

/** @param {unknown} value */
function moment(value) {
  const at = typeof value === "string" ? Date.parse(value) : NaN;
  return Number.isFinite(at) ? at : null;
}

/** @param {number} at */
const when = (at) => new Intl.DateTimeFormat(languageNow(), { dateStyle: "medium", timeStyle: "short" }).format(at);

export class CourseList {
  /** @param {HTMLElement} root @param {Course} course @param {string} address */
  constructor(root, course, address) {
    this.course = course;
    this.address = address;
    this.ended = false;
    this.count = 0; // of the looks at what is kept: a late one gives way
    const id = newId("student");
    /** @type {HTMLInputElement} */
    this.student = h("input", { id, class: "txt", autocomplete: "off", maxlength: "60", oninput: () => this.show() });
    this.student.value = courseOf(course.parts[0].address)?.student ?? "";
    this.list = h("ol", { class: "course-parts" });
    this.total = h("p", { class: "quiet course-total", role: "status" });
    this.said = h("p", { class: "quiet", role: "status" });
    this.save = button(t("hand-course_save"), () => this.handIn(), { kind: "btn-strong", pic: "save" });
    this.codes = button(t("hand-course_codes"), () => this.copyCodes());
    /** @type {HTMLTextAreaElement} */
    this.area = h("textarea", { class: "txt code", readonly: true, rows: "3", "aria-label": t("hand-course_code_list"), hidden: true });
    root.replaceChildren(
      h("div", { class: "wide-lead" }, h("h1", { id: "parts-h", tabindex: "-1" }, course.title), course.words && h("div", { class: "said" }, course.words.split("\n").map((line) => h("p", {}, line)))),
      h("div", { class: "fld course-who" }, h("label", { for: id }, t("hand-own_code")), this.student, h("p", { class: "quiet" }, t("hand-course_who"))),
      this.list, this.total,
      h("section", { class: "handin" }, h("h2", {}, t("hand-title")), h("p", { class: "quiet" }, t("hand-course_about")), h("div", { class: "row" }, this.save, this.codes), this.area, this.said));
    this.show();
    openJournal().then(() => this.show());
  }

  end() {
    this.ended = true;
  }

  /**
   * What the student who is typed in has done of a part on this device.
   * @param {CoursePart} part @returns {Try[]}
   */
  triesOf({ task }) {
    const student = this.student.value.trim(), { assignment } = task;
    if (!assignment) return [];
    return Array.from({ length: Math.min(99, begunBy(task.id, student)) }, (_, k) => k + 1).flatMap((tries) => {
      const kept = recallAttempt(task.id, seedAtTry(assignment, student, tries), tagOf(student));
      return kept ? [{ kept, tries }] : [];
    });
  }

  /** The list; what each part came to is looked up part by part, so that the page does not stand still. */
  async show() {
    const mine = (this.count += 1);
    rememberCourse({ address: this.address, title: this.course.title, student: this.student.value.trim(), parts: this.course.parts.map((part) => part.address) });
    const rows = this.course.parts.map((part) => this.row(part));
    this.list.replaceChildren(...rows.map(({ el }) => el));
    let done = 0, points = 0, checked = 0;
    prop(this.save, "disabled", true);
    prop(this.codes, "disabled", true);
    for (const [k, part] of this.course.parts.entries()) {
      await new Promise((go) => setTimeout(go));
      if (this.ended || mine !== this.count) return;
      const stand = standOf(this.triesOf(part));
      rows[k].tell(stand);
      done += Number(stand.passed);
      points += stand.points ?? 0;
      checked += stand.checked;
    }
    words(this.total, t("hand-course_total", { n: done, of: rows.length, points: num(points, 0), most: OF * rows.length }));
    prop(this.save, "disabled", checked === 0);
    prop(this.codes, "disabled", checked === 0);
    this.list.dataset.told = String(done);
  }

  /** @param {CoursePart} part */
  row({ task, address, words: more, opens, due }) {
    const now = Date.now();
    const state = h("span", { class: "course-state" }, t("hand-course_looking"));
    const dates = [
      opens !== null && (now < opens ? t("hand-course_opens", { when: when(opens) }) : t("hand-course_opened", { when: when(opens) })),
      due !== null && (now > due ? t("hand-course_was_due", { when: when(due) }) : t("hand-course_due", { when: when(due) })),
    ].filter((one) => typeof one === "string");
    const phase = opens !== null && now < opens ? "later" : due !== null && now > due ? "closed" : "open";
    const el = h("li", { class: "course-part", data: { phase } },
      h("div", { class: "course-part-head" }, h("h2", {}, task.title), h("span", { class: `course-phase is-${phase}` }, t(`hand-course_phase_${phase}`))),
      more && more.split("\n").map((line) => h("p", {}, line)), dates.length > 0 && h("p", { class: "quiet" }, dates.join(" ")),
      h("p", {}, state), h("div", { class: "row" }, h("a", { class: "btn", href: `#a=${address}`, "aria-label": t("hand-course_open_part", { title: task.title }) }, t("hand-course_open"))));
    /** @param {Stand} stand */
    const tell = ({ begun, checked, passed, points }) => {
      const key = passed ? "done" : checked > 0 ? "checked" : begun > 0 ? "begun" : "nothing";
      el.dataset.state = key;
      words(state, t(`hand-course_state_${key}`, { n: num(points ?? 0, 0), of: OF }));
    };
    return { el, tell };
  }

  /** What is handed in: every checked attempt of every part, again as a bench. calls take(bench, about) for each. @param {(bench: Bench, about: { student: string, try: number, begun_s: number, ended_s: number }) => string} take */
  gathered(take) {
    const student = this.student.value.trim();
    return this.course.parts.flatMap((part) => this.triesOf(part)).flatMap(({ kept, tries }) => {
      const bench = restored(kept);
      if (!bench) return [];
      const { check } = bench.view();
      const about = { student, try: tries, begun_s: Math.round(kept.begun / 1000), ended_s: Math.round(kept.at / 1000) };
      const made = check ? [take(bench, about)] : [];
      bench.free();
      return made;
    });
  }

  handIn() {
    const results = this.gathered((bench, about) => bench.result(about));
    // Each result stays as the core wrote it: its own checksum is over it.
    const text = `{"format":"${FORMAT}","version":1,"course":${JSON.stringify(this.course.id)},"results":[\n${results.join(",\n")}\n]}\n`;
    const name = [plainName(this.course.id), plainName(this.student.value, 24)].filter(Boolean).join("-");
    download(`${name || "course"}.dicrotic-course-result.json`, text);
    this.tell(t("hand-course_saved", { n: results.length }));
  }

  async copyCodes() {
    const codes = this.gathered((bench, about) => bench.code(about));
    this.area.hidden = false;
    this.area.value = codes.join("\n");
    this.tell((await copy(this.area.value, this.area)) ? t("hand-copied") : t("hand-by_hand"));
  }

  /** @param {string} text */
  tell(text) {
    words(this.said, text);
    say(text);
  }
}

/** @param {KeptAttempt} kept */
function restored({ saved }) {
  try {
    return Bench.restored(saved);
  } catch {
    return null; // of another version, or damaged: opening the part says so
  }
}

/**
 * What tries came to: the best of them.
 * @param {Try[]} tries @returns {Stand}
 */
function standOf(tries) {
  /** @type {Stand} */
  const stand = { begun: tries.length, checked: 0, passed: false, points: null };
  for (const { kept } of tries) {
    const bench = restored(kept);
    const check = bench?.view().check;
    bench?.free();
    if (!check) continue;
    stand.checked += 1;
    stand.passed ||= check.passed;
    stand.points = Math.max(stand.points ?? 0, check.rubric.total);
  }
  return stand;
}
