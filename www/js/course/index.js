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
import { Copies, newToken, readState, writeState } from "./state.js";
import { Over, tellWhatGoes } from "./words.js";
/** @import { Cmi5 } from './cmi5.js' */
/** @import { Lms } from './lms.js' */
/** @import { State } from './state.js' */
/** @import { Session } from '../session.js' */
/** @import { KeptAttempt } from '../types/page' */
/** @import { Assignment, View } from '../types/view' */

/** @typedef {{ id: string, title: string, toml: string, assignment: Assignment | null }} CourseTask */
/** @typedef {Lms | Cmi5} Site a session that has begun, in a site of either kind */

/** What stays on the device in a course site: safety copies, and how the page looks. All else lives in this page alone. */
const STAYS = /^(course:|course-tries:|course-out:|owner:|aside:|theme$|language$|explain$|brief$)/;

export class Course {
  /** @param {Site} lms @param {CourseTask} task */
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
    /** @type {Promise<boolean> | boolean} */
    this.asked = true; // whether it will have
    this.note = h("span", { class: "quiet", role: "status" });
    this.which = h("span", { class: "quiet" });
    this.done = button(t("course-finish"), () => this.finish(), { kind: "btn-strong" });
    const goes = lms.host !== "" && button(t("course-goes"), () => tellWhatGoes(lms.host), { kind: "btn-quiet" });
    this.el = h("div", { class: "course", role: "group", "aria-label": t("course-title") }, this.which, this.done, goes, this.note);
    lms.again = () => this.again?.();
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
    return passed ? points : Math.min(points, Math.max(0, Math.ceil(this.lms.mastery) - 1));
  }

  /** @param {Session} session @param {View} view */
  hear(session, view) {
    const { check } = view;
    if (!check || check.try === this.judged || session.view !== view || this.lms.ended) return;
    this.judged = check.try;
    this.points = Math.max(this.points, this.pointsOf(check));
    this.lms.report(check, view.worksheet);
    this.lms.judge(this.pointsOf(check), check.passed && this.pointsOf(check) >= this.lms.mastery);
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
    if (lms.looks) {
      words(this.note, t("course-looks"));
      return "off";
    }
    const code = session.bench.code(this.about(session));
    this.counter += 1;
    const state = writeState({ counter: this.counter, heart: this.heart, tries: this.tries, token, code });
    // At once, before the site is asked, which may take its time; and again once it is known that the site has it.
    let copy = this.copies.keep(token, state, this.taken, deeds);
    const asked = (this.asked = lms.keep(state));
    const whole = await asked;
    if (this.asked === asked) this.whole = whole;
    if (whole && !this.taken) {
      this.taken = true;
      copy = this.copies.keep(token, state, true, deeds);
    }
    const here = ["kept", "once"].includes(await copy);
    if (this.asked !== asked || this.session !== session) return whole || here ? "kept" : "off"; // the step after this one tells
    if (whole) words(this.note, t("course-kept"));
    else if (!lms.fits(state)) words(this.note, t(here ? "course-long" : "course-long_nowhere"));
    else words(this.note, t(here ? "course-refused" : "course-lost"));
    return whole || here ? "kept" : "off";
  }

  /** @param {Session} session */
  about(session) {
    return { student: this.lms.student, try: this.task.assignment ? this.heart : 0, begun_s: Math.round(session.begun / 1000), ended_s: Math.round(Date.now() / 1000) };
  }

  /**
   * Puts the end of the visit under the debrief.
   * @param {HTMLElement} root @param {Session} session
   */
  handOver(root, session) {
    const save = () => download(`${[this.task.id, plainName(this.lms.student, 24), session.view.seed].filter(Boolean).join("-")}.dicrotic-result.json`, session.bench.result(this.about(session)));
    new Over(root, session, { closing: this.task.assignment?.closing ?? "", mastery: this.lms.mastery, save, score: () => ({ points: this.points, left: this.most && this.most - this.tries }) });
  }

  async finish() {
    const { session, lms } = this;
    if (!session || lms.ended) return;
    prop(this.done, "disabled", true);
    session.saveNow();
    this.whole = await this.asked;
    const over = Boolean(session.view.over);
    const left = this.most !== null && this.tries < this.most;
    const kept = await lms.finish(over && !left);
    if (!lms.ended) {
      prop(this.done, "disabled", false);
      return void words(this.note, t("course-again"));
    }
    if (kept && this.whole) this.copies.forget(this.token); // nothing stays on a machine that others use
    this.ended(t(lms.looks ? "course-looked" : !kept ? "course-lost" : !over ? "course-suspended" : left ? "course-ended_left" : "course-ended"));
    if (lms.home) location.assign(lms.home);
  }
}
