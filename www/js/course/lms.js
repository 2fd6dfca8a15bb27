// @ts-check
// The course site's side of an attempt: finds its interface (SCORM 1.2 or 2004), and speaks with it. Every call can fail and
// costs nothing then: the device keeps the attempt too.

import { reportCheck } from "./reports.js";
/** @import { Check } from '../types/check' */
/** @import { View } from '../types/view' */

/** So many points of 100 pass: sixteen of the rubric's twenty. The package's manifest says the same (`src/exchange/package/manifest.rs`). */
export const MASTERY = 80;
const MOST_WINDOWS = 12; // how far the interface is looked for

/**
 * @typedef {{
 *   api: string, calls: Record<"begin" | "get" | "set" | "commit" | "end" | "error", string>,
 *   names: Record<"entry" | "student" | "raw" | "min" | "max" | "time" | "exit", string>, most: number,
 * }} Form
 * @typedef {Record<string, (...values: string[]) => unknown>} Api
 */

/** @type {Record<string, Form>} */
const FORMS = {
  scorm12: {
    api: "API", calls: { begin: "LMSInitialize", get: "LMSGetValue", set: "LMSSetValue", commit: "LMSCommit", end: "LMSFinish", error: "LMSGetLastError" },
    names: { entry: "cmi.core.entry", student: "cmi.core.student_id", raw: "cmi.core.score.raw", min: "cmi.core.score.min", max: "cmi.core.score.max", time: "cmi.core.session_time", exit: "cmi.core.exit" },
    most: 4096,
  },
  scorm2004: {
    api: "API_1484_11", calls: { begin: "Initialize", get: "GetValue", set: "SetValue", commit: "Commit", end: "Terminate", error: "GetLastError" },
    names: { entry: "cmi.entry", student: "cmi.learner_id", raw: "cmi.score.raw", min: "cmi.score.min", max: "cmi.score.max", time: "cmi.session_time", exit: "cmi.exit" },
    most: 64000,
  },
};

/**
 * The interface of a name: in this window's parents, then in the opener and its parents.
 * @param {string} name @param {Window} [from] @returns {Api | null}
 */
export function findApi(name, from = window) {
  /** @param {Window} start @returns {Api | null} */
  const climb = (start) => {
    for (let at = start, n = 0; at && n < MOST_WINDOWS; at = at.parent, n += 1) {
      try {
        const api = /** @type {Record<string, any>} */ (/** @type {unknown} */ (at))[name];
        if (api) return api;
      } catch { /* a window of another site */ }
      if (at.parent === at) return null;
    }
    return null;
  };
  return climb(from) ?? (from.top?.opener ? climb(from.top.opener) : null) ?? (from.opener ? climb(from.opener) : null);
}

/**
 * Hours, minutes and seconds of a session as 1.2 writes them (HHHH:MM:SS.SS) and as 2004 does (PT1H2M3.45S).
 * @param {string} standard @param {number} ms
 */
export function sessionTime(standard, ms) {
  const cs = Math.max(0, Math.round(ms / 10));
  const [hours, minutes, seconds] = [Math.min(9999, Math.floor(cs / 360000)), Math.floor(cs / 6000) % 60, (cs % 6000) / 100];
  if (standard === "scorm2004") return `PT${hours}H${minutes}M${seconds}S`;
  return `${String(hours).padStart(2, "0")}:${String(minutes).padStart(2, "0")}:${seconds.toFixed(2).padStart(5, "0")}`;
}

export class Lms {
  /** @type {Api} */
  #api;
  /**
   * Begins a session; null where there is no course site.
   * @param {string} standard
   */
  static begin(standard) {
    const form = FORMS[standard];
    const api = form && findApi(form.api);
    if (!api) return null;
    const made = new Lms(standard, form, api);
    return made.#begin() ? made : null;
  }
  /** @param {string} standard @param {Form} form @param {Api} api */
  constructor(standard, form, api) {
    this.standard = standard;
    this.form = form;
    this.began = Date.now();
    this.ended = false;
    this.student = this.launch = this.state = "";
    this.mastery = MASTERY;
    /** What a site of cmi5 has besides: where it all goes, where to go afterwards, a look without judgement. */
    this.host = this.home = "";
    this.looks = false;
    /** @type {() => unknown} */
    this.again = () => undefined;
    this.#api = api;
  }
  /** @param {keyof Form["calls"]} name @param {...string} values */
  #call(name, ...values) {
    try {
      return this.#api[this.form.calls[name]](...values);
    } catch {
      return "false";
    }
  }
  /** Whether it is SCORM 1.2. */
  get old() {
    return this.standard === "scorm12";
  }
  /**
   * A value that the site has; "" for none.
   * @param {string} name
   */
  ask(name) {
    return this.#get(name);
  }
  /**
   * Sets a value; false when the site refuses. judge() commits it.
   * @param {string} name @param {string | number} value
   */
  tell(name, value) {
    return !this.ended && this.#set(name, value);
  }
  /** @param {string} name */
  #get = (name) => String(this.#call("get", name) ?? "");
  /** @param {string} name @param {string | number} value */
  #set = (name, value) => String(this.#call("set", name, String(value))) === "true";

  #begin() {
    // A page that is loaded anew in the same session finds it begun (1.2: 101, 2004: 103).
    if (String(this.#call("begin", "")) !== "true" && !["101", "103"].includes(String(this.#call("error")))) return false;
    this.student = this.#get(this.form.names.student);
    this.launch = this.#get("cmi.launch_data");
    this.state = this.#get("cmi.suspend_data");
    // A course site that was never told a score may never show one. What an earlier session reached is left alone.
    if (this.#get(this.form.names.raw) === "") {
      this.#set(this.form.names.min, 0);
      this.#set(this.form.names.max, 100);
      this.#set(this.form.names.raw, 0);
      if (this.standard === "scorm2004") this.#set("cmi.score.scaled", 0);
    }
    if (!this.#concluded) this.#set(this.#status, "incomplete");
    this.#commit(); // a site that keeps nothing is told of with the first step
    return true;
  }
  get #status() {
    return this.standard === "scorm12" ? "cmi.core.lesson_status" : "cmi.completion_status";
  }
  get #concluded() {
    return ["passed", "completed", "failed"].includes(this.#get(this.#status));
  }
  #commit() {
    return String(this.#call("commit", "")) === "true";
  }

  /**
   * Whether a state fits: one line of printable ASCII, no longer than the standard allows.
   * @param {string} state
   */
  fits(state) {
    return /^[\x20-\x7e]*$/.test(state) && state.length <= this.form.most;
  }

  /**
   * Keeps a state; false when it does not fit or the site refuses.
   * @param {string} state
   */
  keep(state) {
    if (this.ended || !this.fits(state)) return false;
    return this.#set("cmi.suspend_data", state) && this.#commit();
  }

  /**
   * Tells what a check found, step by step.
   * @param {Check} check @param {View["worksheet"]} worksheet
   */
  report(check, worksheet) {
    reportCheck(this, check, worksheet);
  }

  /**
   * Tells what a check came to: 0 to 100, and whether it was passed. A better result of before stays.
   * @param {number} score @param {boolean} passed
   */
  judge(score, passed) {
    if (this.ended) return;
    const before = Number(this.#get(this.form.names.raw)) || 0;
    const had = this.standard === "scorm12" ? this.#get(this.#status) : this.#get("cmi.success_status");
    if (score > before) {
      this.#set(this.form.names.raw, score);
      if (this.standard === "scorm2004") this.#set("cmi.score.scaled", score / 100);
    }
    if (had !== "passed") {
      const word = passed ? "passed" : "failed";
      if (this.standard === "scorm12") this.#set(this.#status, word);
      else {
        this.#set("cmi.completion_status", "completed");
        this.#set("cmi.success_status", word);
      }
    }
    this.#commit();
  }

  /**
   * Ends the session; over: the attempt has ended, otherwise it is taken up again later.
   * @param {boolean} over
   */
  finish(over) {
    if (this.ended) return true;
    this.#set(this.form.names.time, sessionTime(this.standard, Date.now() - this.began));
    this.#set(this.form.names.exit, over ? (this.standard === "scorm12" ? "" : "normal") : "suspend");
    const kept = this.#commit();
    this.ended = true;
    return String(this.#call("end", "")) === "true" && kept;
  }
}
