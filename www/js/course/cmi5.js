// @ts-check
// The course site's side of an attempt where the site is one of cmi5: what lms.js is for SCORM, over the network. Whatever does not get
// through is kept on this device with its time, and sent again, until the site has it; what a visit could not send, the next one does.

import { forget, keep, recall } from "../device.js";
import { languageNow } from "../text.js";
import { tagOf } from "../who.js";
import { allowOnly, hostOf, keepVisit, LaunchError, readLaunch, Records, visitOf, wayBack } from "./launch.js";
import { MASTERY, sessionTime } from "./lms.js";
import { isDefined, note, notesOf, scoreOf, statementOf, uuid } from "./statements.js";
/** @import { Launch, Visit } from './launch.js' */
/** @import { Context, Note } from './statements.js' */
/** @import { Check } from '../types/check' */
/** @import { View } from '../types/view' */

const STATE = "dicrotic.attempt"; // the document that holds the attempt
const MOST = 1_000_000; // the longest code that can be read
const SOONEST_MS = 2000, LATEST_MS = 60_000; // when it is tried again
const SESSION = "https://w3id.org/xapi/cmi5/context/extensions/sessionid";

/**
 * What was told in this registration. due: a reading that did not pass has been judged, and nothing said of it: a visit may say one thing,
 * passed or failed, so that the second is left to its end. owed: the points of a pass that this visit could no longer tell; open: misreadings that stand.
 * @typedef {{ completed: boolean, passed: boolean, due: boolean, owed: number | null, best: number, open: string[] }} Told
 * mode: "Normal", or one in which nothing may be counted.
 * @typedef {{ contextTemplate: Context, launchMode: string, masteryScore?: number, returnURL?: string }} LaunchData
 */

/** @type {Told} */
const NOTHING = { completed: false, passed: false, due: false, owed: null, best: 0, open: [] };
/** @param {number} status */
const took = (status) => status >= 200 && status < 300;

/** @param {Note} one */
const isFailed = (one) => isDefined(one) && one.verb === "failed";

export class Cmi5 {
  /** @type {Records} */
  #records;
  /** @type {Note[]} */
  #out = [];
  /** @type {Promise<boolean>} */
  #current = Promise.resolve(true);
  /** @type {Promise<boolean> | null} */
  #next = null;
  #line = "";
  #stale = false; // the site's document is older than what is known here
  #saidFailed = false;
  #ending = false;
  #leaving = false;
  #failures = 0;
  /** @type {number | undefined} */
  #later;
  #sent = NOTHING; // what was told and has got through

  /** Begins a visit; null where no site opened this page. Rejects with a LaunchError when one did and it cannot begin. */
  static async begin() {
    const launch = readLaunch(location.search);
    if (!launch) return null;
    allowOnly(launch);
    const visit = await visitOf(launch);
    const records = new Records(launch, visit.token);
    const { status, value } = await records.state("LMS.LaunchData");
    if (status !== 200) throw new LaunchError(status === 0 ? "unreachable" : status === 401 || status === 403 ? "over" : "broken");
    if (!value?.contextTemplate?.extensions?.[SESSION]) throw new LaunchError("broken");
    const made = new Cmi5(launch, visit, records, value);
    await made.#begin(visit);
    return made;
  }

  /** @param {Launch} launch @param {Visit} visit @param {Records} records @param {LaunchData} data */
  constructor(launch, visit, records, data) {
    this.#records = records;
    this.launch = launch;
    this.visit = visit;
    this.data = data;
    this.student = launch.student;
    /** Where it all goes. */
    this.host = hostOf(launch);
    /** Whether the page was opened to be looked at: nothing is judged, and nothing kept. */
    this.looks = data.launchMode !== "Normal";
    /** Where to go afterwards; "" for nowhere. */
    this.home = wayBack(data.returnURL);
    this.state = "";
    this.ended = false;
    this.began = Date.now();
    this.out = `course-out:${launch.registration}:${tagOf(launch.student)}`;
    /** @type {Told} */
    this.told = NOTHING;
    /** Called when it is time to try again. @type {() => unknown} */
    this.again = () => undefined;
    addEventListener("pagehide", () => (this.#leaving = true), { capture: true });
    addEventListener("pageshow", () => (this.#leaving = false));
    addEventListener("online", () => this.#failures > 0 && this.again());
  }

  /** The points of 100 that pass: the site's own where it says them. */
  get mastery() {
    const { masteryScore } = this.data;
    return typeof masteryScore === "number" ? Math.round(masteryScore * 1e4) / 100 : MASTERY;
  }
  /** @returns {string} */
  get #session() {
    return this.data.contextTemplate.extensions[SESSION];
  }

  /** @param {Visit} visit */
  async #begin(visit) {
    await this.#prefer();
    const { status, value } = await this.#records.state(STATE);
    if (status !== 200 && status !== 404) throw new LaunchError(status === 0 ? "unreachable" : "broken");
    this.state = typeof value?.attempt === "string" ? value.attempt : "";
    this.#line = this.state;
    this.told = this.#sent = { ...NOTHING, ...value?.told };
    // The time of the first statement of a visit stands before all that is told in it, also what an earlier visit left.
    visit.began ??= { id: uuid(), at: new Date().toISOString() };
    keepVisit(visit);
    this.#takeUp();
    const { owed, passed } = this.told;
    if (owed !== null && !passed) this.#pass(owed);
    // The first statement is told only once in a visit: one whose answer was lost is sent again as it was.
    this.began = Date.parse(visit.began.at);
    const first = await this.#records.tell([this.#statement({ ...visit.began, verb: "initialized", part: "" })], false);
    if (!took(first) && first !== 409) throw new LaunchError(first === 0 ? "unreachable" : "over"); // 409: the site has it
    if (this.#out.length > 0) this.#flush();
  }

  /** The student's own language, if the page speaks it and was not told another; sound is off unless somebody presses for it. */
  async #prefer() {
    const wanted = String((await this.#records.preferences())?.languagePreference ?? "").toLowerCase().split(",").map((one) => one.trim().split("-")[0]);
    const known = (document.documentElement.dataset.languages ?? "").split(" ");
    const language = wanted.find((one) => known.includes(one));
    if (!language || recall("language") || language === languageNow()) return;
    const { speakInTab } = await import("../language.js");
    if (!speakInTab(language)) return;
    location.reload();
    await new Promise(() => {}); // until then
  }

  /** What an earlier visit of this registration could not send: said again in this one, with a time of this one: the site takes none from before its beginning. */
  #takeUp() {
    /** @type {{ session: string, notes: Note[], told: Told } | null} */
    const left = recall(this.out);
    if (!left) return;
    this.told = { ...this.told, ...left.told };
    if (left.session === this.#session) {
      this.#out = left.notes;
      this.#saidFailed = left.notes.some(isFailed);
      return;
    }
    // The beginning and the end of that visit are no longer to be told, nor its judgement at the end: that is due again.
    const whole = left.notes.filter((one) => !isFailed(one) && one.verb !== "terminated" && !one.refused);
    if (left.notes.some(isFailed)) this.told = { ...this.told, due: true };
    this.#out = whole.map((one) => ({ ...one, id: uuid(), at: new Date().toISOString() }));
  }

  /** @param {Note} one */
  #statement(one) {
    return statementOf(one, this.launch, this.data.contextTemplate, this.data.masteryScore ?? null);
  }

  /** @param {Note[]} notes */
  #say(...notes) {
    this.#out.push(...notes);
    this.#stale = true;
    this.#keepHere();
  }
  #keepHere() {
    if (this.#out.length > 0) keep(this.out, { session: this.#session, notes: this.#out, told: this.told });
    else forget(this.out);
  }
  #duration() {
    return sessionTime("scorm2004", Date.now() - this.began);
  }

  /**
   * Whether a state fits.
   * @param {string} state
   */
  fits(state) {
    return state.length <= MOST;
  }

  /**
   * Keeps a state; resolves to false when it does not fit or did not get through.
   * @param {string} state
   */
  async keep(state) {
    if (this.ended || this.looks || !this.fits(state)) return false;
    this.#line = state;
    this.#stale = true;
    if (this.#leaving) return took(await this.#records.putState(STATE, this.#document(), true));
    return this.#flush();
  }
  #document() {
    return { attempt: this.#line, told: this.#sent };
  }

  /**
   * Tells what a check found, step by step.
   * @param {Check} check @param {View["worksheet"]} worksheet
   */
  report(check, worksheet) {
    if (this.looks || this.ended) return;
    const notes = notesOf(check, worksheet, this.told.open);
    this.told = { ...this.told, open: check.misreading ? [check.misreading.id] : [] };
    this.#say(...notes);
  }

  /**
   * Tells what a check came to: 0 to 100, and whether it was passed. keep() sends it.
   * @param {number} points @param {boolean} passed
   */
  judge(points, passed) {
    if (this.looks || this.ended) return;
    const { told } = this;
    const duration = this.#duration();
    const notes = [note("scored", { part: "check", type: "assessment", result: { score: scoreOf(points) } })];
    if (!told.completed) notes.push(note("completed", { result: { completion: true, duration } }));
    const owed = passed && this.#saidFailed ? points : told.owed;
    this.told = { ...told, completed: true, owed, due: !passed && !told.passed && owed === null, best: Math.max(told.best, points) };
    this.#say(...notes);
    if (passed && !told.passed && owed === null) this.#pass(points);
  }
  /** @param {number} points */
  #pass(points) {
    this.told = { ...this.told, passed: true, due: false, owed: null };
    this.#say(note("passed", { result: { success: true, score: scoreOf(points), duration: this.#duration() } }));
  }

  /** Ends the visit; false when the site could not be told, and then it has not ended. */
  async finish() {
    if (this.ended) return true;
    const { told } = this;
    if (told.due && !this.looks) {
      // A score that would pass contradicts the word (section 9.3.5).
      const score = told.best < this.mastery ? { score: scoreOf(told.best) } : {};
      this.told = { ...told, due: false };
      this.#saidFailed = true;
      this.#say(note("failed", { result: { success: false, ...score, duration: this.#duration() } }));
    }
    if (!(await this.#flush())) return false;
    if (!this.#ending) this.#say(note("terminated", { result: { duration: this.#duration() } }));
    this.#ending = true;
    if (!(await this.#flush())) return false;
    this.ended = true;
    keepVisit({ ...this.visit, over: true });
    return true;
  }

  /** Sends what there is, after what is on its way; resolves to whether the site has all of it. */
  #flush() {
    this.#next ??= (async () => {
      await this.#current;
      this.#next = null;
      return (this.#current = this.#send());
    })();
    return this.#next;
  }

  async #send() {
    clearTimeout(this.#later);
    for (let left = this.#unsent(); left.length > 0; left = this.#unsent()) if (!(await this.#tell(left))) return this.#failed();
    this.#sent = this.told;
    // A site need not take a document once it was told of the end.
    if (this.#stale && !this.#ending && !this.looks) {
      const document = this.#document();
      this.#stale = false;
      if (!took(await this.#records.putState(STATE, document, this.#leaving))) {
        this.#stale = true;
        return this.#failed();
      }
    }
    this.#failures = 0;
    return true;
  }
  #failed() {
    this.#failures += 1;
    this.#later = setTimeout(() => this.again(), Math.min(LATEST_MS, SOONEST_MS * 2 ** (this.#failures - 1)));
    return false;
  }
  #unsent() {
    return this.#out.filter(({ refused }) => refused !== this.#session);
  }

  /**
   * Sends notes together; where the site does not want one of them, one by one. False when it cannot be reached now.
   * @param {Note[]} notes @returns {Promise<boolean>}
   */
  async #tell(notes) {
    const status = await this.#records.tell(notes.map((one) => this.#statement(one)), this.#leaving);
    const isRefused = status >= 400 && status < 500 && ![401, 408, 429].includes(status);
    if (isRefused && notes.length > 1) {
      for (const one of notes) if (!(await this.#tell([one]))) return false;
      return true;
    }
    if (!took(status) && !isRefused) return false;
    const [first] = notes;
    // A visit that the site has closed refuses all: what it refuses is kept for the next one, once. 409: the site has it.
    if (isRefused && status !== 409 && !(isDefined(first) && first.verb === "terminated")) first.refused = this.#session;
    else this.#out = this.#out.filter((one) => !notes.includes(one));
    this.#keepHere();
    return true;
  }
}
