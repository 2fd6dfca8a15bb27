// @ts-check
// An assignment in a course site: which attempt is taken up, and keeping it with the site. The site's word counts; what lies on this
// device is a safety copy, of the same student, task and attempt of the site, for a last step that the site did not take.

import { digestOf, seedOf } from "../core.js";
import { keep, keepInPage } from "../device.js";
import { byId, h, prop, words } from "../dom.js";
import { download } from "../download.js";
import { plainName } from "../hand/file.js";
import { newSeed } from "../route.js";
import { t } from "../text.js";
import { beWho, tagOf } from "../who.js";
import { button } from "../widgets.js";
import { MASTERY } from "./lms.js";
import { reportCheck } from "./reports.js";
import { Copies, newToken, readState, writeState } from "./state.js";
import { Over } from "./words.js";
/** @import { Lms } from './lms.js' */
/** @import { State } from './state.js' */
/** @import { Session } from '../session.js' */
/** @import { KeptAttempt } from '../types/page' */
/** @import { Assignment, View } from '../types/view' */

/** @typedef {{ id: string, title: string, toml: string, assignment: Assignment | null }} CourseTask */

/** What stays on the device in a course site: safety copies, and how the page looks. All else lives in this page alone. */
const STAYS = /^(course:|course-tries:|owner:|aside:|theme$|language$|explain$|brief$)/;

export class Course {
  /** @param {Lms} lms a session that has begun @param {CourseTask} task */
  constructor(lms, task) {
    this.lms = lms;
    this.task = task;
    /** @type {Session | null} */
    this.session = null;
    /** @type {(() => void) | null} */
    this.again = null;
    this.tries = this.heart = this.judged = this.points = 0;
    /** @type {(text: string) => unknown} */
    this.ended = () => undefined;
    byId("device-link").hidden = true; // here it is the site that knows who works
    keepInPage((key) => !STAYS.test(key));
    beWho(lms.student);
    this.copies = new Copies(digestOf(task.toml).slice(0, 16), tagOf(lms.student));
    const there = readState(lms.state);
    /** What the site keeps is of no use to this version. */
    this.foreign = lms.state !== "" && !there;
    const here = there?.token ? this.copies.of(there.token) : null;
    // Of one attempt the newer: a session that was cut off has told the site less than this device.
    /** @type {State | null} */
    this.state = there && here && here.counter > there.counter ? here : there;
    this.token = there?.token || newToken();
    this.counter = this.state?.counter ?? 0;
    this.taken = there !== null;
    this.whole = true; // whether the site has all of the last step
    this.note = h("span", { class: "quiet", role: "status" });
    this.which = h("span", { class: "quiet" });
    this.done = button(t("course-finish"), () => this.finish(), { kind: "btn-strong" });
    this.el = h("div", { class: "course", role: "group", "aria-label": t("course-title") }, this.which, this.done, this.note);
  }

  /** How many tries there are in each attempt of the site; null for any number. */
  get most() {
    return this.task.assignment?.attempts ?? null;
  }

  /**
   * Takes a copy up that the site never took anything of.
   * @param {State} state
   */
  adopt(state) {
    this.state = state;
    this.token = state.token;
    this.counter = state.counter;
  }

  /**
   * The seed of the next heart: the assignment's own, from the student's ID at the course site; else a fresh one. A heart that this
   * student has met at this task on this device does not come again.
   */
  next() {
    const { assignment } = this.task;
    const heart = Math.max(this.heart, this.state?.heart ?? 0, this.copies.met) + 1;
    const seed = assignment ? seedOf(assignment.key, assignment.seeds === "each" ? this.lms.student : "", heart) : newSeed();
    return { heart, seed };
  }

  /**
   * Follows a session from now on. ended(text): clears the page after the finish.
   * @param {Session} session @param {{ tries: number, heart: number }} which @param {(text: string) => unknown} ended
   */
  follow(session, { tries, heart }, ended) {
    this.session = session;
    this.ended = ended;
    Object.assign(this, { tries, heart });
    this.judged = session.view.check?.try ?? 0;
    this.points = session.view.check ? this.pointsOf(session.view.check) : 0;
    keep(this.copies.hearts, Math.max(heart, this.copies.met));
    words(this.which, this.most ? t("course-which", { n: tries, of: this.most }) : "");
    this.write(session.deeds); // from the first moment the site knows which attempt this is
    session.onView((view) => this.hear(session, view));
  }

  /**
   * Points of 100. A reading with a step that does not hold stays under what passes, so that the site's own rule says what the debrief says.
   * @param {NonNullable<View["check"]>} check
   */
  pointsOf({ rubric: { total, of }, passed }) {
    const points = Math.round((100 * total) / of);
    return passed ? points : Math.min(points, MASTERY - 1);
  }

  /** @param {Session} session @param {View} view */
  hear(session, view) {
    const { check } = view;
    if (!check || check.try === this.judged || session.view !== view || this.lms.ended) return;
    this.judged = check.try;
    this.points = Math.max(this.points, this.pointsOf(check));
    reportCheck(this.lms, check, view.worksheet);
    this.lms.judge(this.pointsOf(check), check.passed && this.pointsOf(check) >= MASTERY);
    this.write(session.deeds);
  }

  /**
   * Keeps the attempt, as a session asks for it: "kept", or the word for what is in the way.
   * @param {KeptAttempt} attempt
   */
  keep({ deeds }) {
    return this.write(deeds);
  }

  end() {
    this.session = null;
  }

  /** @param {number} deeds */
  async write(deeds) {
    const { session, lms, token } = this;
    if (!session || lms.ended) return undefined;
    const code = session.bench.code(this.about(session));
    this.counter += 1;
    const state = writeState({ counter: this.counter, heart: this.heart, tries: this.tries, token, code });
    // At once, before the site is asked, which may take its time; and again once it is known that the site has it.
    let copy = this.copies.keep(token, state, this.taken, deeds);
    this.whole = lms.keep(state);
    if (this.whole && !this.taken) {
      this.taken = true;
      copy = this.copies.keep(token, state, true, deeds);
    }
    const here = ["kept", "once"].includes(await copy);
    if (this.whole) words(this.note, t("course-kept"));
    else if (!lms.fits(state)) words(this.note, t(here ? "course-long" : "course-long_nowhere"));
    else words(this.note, t(here ? "course-refused" : "course-lost"));
    return this.whole || here ? "kept" : "off";
  }

  /** @param {Session} session */
  about(session) {
    return { student: this.lms.student.slice(0, 60), try: this.task.assignment ? this.heart : 0, begun_s: Math.round(session.begun / 1000), ended_s: Math.round(Date.now() / 1000) };
  }

  /**
   * Puts the end of the visit under the debrief.
   * @param {HTMLElement} root @param {Session} session
   */
  handOver(root, session) {
    const save = () => download(`${[this.task.id, plainName(this.lms.student, 24), session.view.seed].filter(Boolean).join("-")}.dicrotic-result.json`, session.bench.result(this.about(session)));
    new Over(root, session, { closing: this.task.assignment?.closing ?? "", mastery: MASTERY, save, score: () => ({ points: this.points, left: this.most && this.most - this.tries }) });
  }

  finish() {
    const { session, lms } = this;
    if (!session || lms.ended) return;
    session.saveNow();
    const over = Boolean(session.view.over);
    const left = this.most !== null && this.tries < this.most;
    const kept = lms.finish(over && !left);
    if (kept && this.whole) this.copies.forget(this.token); // nothing stays on a machine that others use
    prop(this.done, "disabled", true);
    this.ended(t(!kept ? "course-lost" : !over ? "course-suspended" : left ? "course-ended_left" : "course-ended"));
  }
}
