// @ts-check
// An assignment in a course site: which attempt is taken up, and keeping it, first on this device, then with the site.

import { h, prop, words } from "../dom.js";
import { seedOf } from "../core.js";
import { newSeed } from "../route.js";
import { keep, recall } from "../store.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { Lms } from "./lms.js";
/** @import { Session } from '../session.js' */
/** @import { Assignment, View } from '../types/view' */

/**
 * @typedef {{ counter: number, tries: number, code: string }} State
 * @typedef {{ id: string, toml: string, assignment: Assignment | null }} CourseTask
 */

/**
 * A state: a counter, the number of the try, and the attempt's own code. null for what is none.
 * @param {string | null | undefined} text
 */
export function readState(text) {
  const found = /^(\d{1,9})\.(\d{1,4})\.(D\d+\..*)$/.exec(text ?? "");
  return found && { counter: Number(found[1]), tries: Number(found[2]), code: found[3] };
}
/** @param {State} state */
const writeState = ({ counter, tries, code }) => `${counter}.${tries}.${code}`;

export class Course {
  /**
   * standard: as packed; task: {id, toml, assignment, passes}.
   * @param {string} standard @param {CourseTask} task
   */
  constructor(standard, task) {
    this.lms = Lms.begin(standard);
    this.task = task;
    /** @type {Session | null} */
    this.session = null;
    this.tries = 0;
    this.judged = 0;
    /** @type {(text: string) => unknown} */
    this.ended = () => undefined;
    this.key = `course:${task.id}:${this.lms?.student ?? ""}`;
    const here = readState(recall(this.key));
    const there = readState(this.lms?.state);
    // The newer of both, by its counter: a session that was cut off has told the site less than this device.
    /** @type {State | null} */
    this.state = !there || (here && here.counter > there.counter) ? here : there;
    this.counter = Math.max(here?.counter ?? 0, there?.counter ?? 0);
    this.note = h("span", { class: "quiet", role: "status" });
    this.done = button(t("course-finish"), () => this.finish(), { kind: "btn-strong" });
    this.el = h("div", { class: "course", role: "group", "aria-label": t("course-title") }, this.lms ? this.done : "", this.note);
    if (!this.lms) words(this.note, t("course-none"));
  }

  /**
   * The seed of a try: the assignment's own, from the student's code at the course site; else a fresh one.
   * @param {number} tries
   */
  seed(tries) {
    const { assignment } = this.task;
    return assignment ? seedOf(assignment.key, assignment.seeds === "each" ? (this.lms?.student ?? "") : "", tries) : newSeed();
  }

  /**
   * Follows a session from now on. ended(): clears the page after the finish.
   * @param {Session} session @param {number} tries @param {(text: string) => unknown} ended
   */
  follow(session, tries, ended) {
    this.session = session;
    this.tries = tries;
    this.ended = ended;
    this.judged = session.view.check?.try ?? 0;
    session.alsoKeep = () => this.save();
    session.onView((view) => this.hear(session, view));
  }

  /** @param {Session} session @param {View} view */
  hear(session, view) {
    if (!view.check || view.check.try === this.judged || session.view !== view) return;
    this.judged = view.check.try;
    const { total, of } = view.check.rubric;
    this.lms?.judge(Math.round((100 * total) / of), view.check.passed);
    this.save();
  }

  save() {
    const { session } = this;
    if (!session || this.lms?.ended) return;
    const code = session.bench.code({ student: "", try: this.tries, begun_s: Math.round(session.begun / 1000), ended_s: Math.round(Date.now() / 1000) });
    this.counter += 1;
    const state = writeState({ counter: this.counter, tries: this.tries, code });
    const here = keep(this.key, state); // first: it cannot be lost on the way
    if (!this.lms) return;
    if (!this.lms.fits(state)) words(this.note, t(here ? "course-long" : "course-long_nowhere"));
    else if (this.lms.keep(state)) words(this.note, t("course-kept"));
    else words(this.note, t(here ? "course-refused" : "course-lost"));
  }

  finish() {
    const { session, lms } = this;
    if (!session || !lms) return;
    session.saveNow();
    const over = Boolean(session.view.over);
    const kept = lms.finish(over);
    prop(this.done, "disabled", true);
    this.ended(t(kept ? (over ? "course-ended" : "course-suspended") : "course-lost"));
  }
}
