// @ts-check
// Taking up a kept attempt, whatever has become of it; keeping the one that is under way; and saying in words what is kept.

import { Bench } from "./core.js";
import { PREFIX } from "./device.js";
import { attemptKey, copiesOf, keepAttempt, layAside } from "./store.js";
import { agoText, t } from "./text.js";
/** @import { KeptAttempt } from './types/page' */

const LOCK_MS = 400; // a page that is reloaded lets go of its attempt soon; another tab does not

/**
 * What is kept of an attempt: {bench, kept, told}, the newest copy that can be replayed, and words where something is amiss.
 * Without such a copy bench is missing; what is there is laid aside, not thrown away.
 * @param {string} scenario @param {string} seed
 * @returns {{ bench: Bench, kept: KeptAttempt, told: string } | { bench?: undefined, kept?: undefined, told: string }}
 */
export function takeUpKept(scenario, seed) {
  const key = attemptKey(scenario, seed);
  const { copies, damaged } = copiesOf(key);
  /** @type {Error | null} */
  let why = null;
  for (const [k, kept] of copies.entries()) {
    try {
      const bench = Bench.restored(kept.saved);
      return { bench, kept, told: damaged || k > 0 ? t("kept-mended", { when: agoText(kept.at) }) : "" };
    } catch (error) {
      why ??= /** @type {Error} */ (error);
    }
  }
  if (copies.length === 0 && !damaged) return { told: "" };
  layAside(key);
  return { told: why ? t("kept-unusable", { when: agoText(copies[0].at), told: why.message }) : t("kept-damaged") };
}

/** Keeps an attempt: one tab at a time, as soon as something is done; tell(words) says when that fails and when it is well again. */
export class Keeper {
  /** @type {((value?: unknown) => void) | undefined} */
  #until;
  /**
   * about: what a list of attempts says of it beside scenario and seed.
   * @param {string} scenario @param {string} seed @param {(text: string) => void} tell @param {Pick<KeptAttempt, "title" | "address" | "tries">} [about]
   */
  constructor(scenario, seed, tell, about = {}) {
    this.tell = tell;
    this.about = about;
    this.key = attemptKey(scenario, seed);
    this.ended = false;
    /** @type {(() => void) | null} */
    this.again = null; // what to do when it is worth another try
    /** @type {number | null} */
    this.last = null; // when it was kept last
    /** @type {boolean | undefined} */
    this.mine = undefined; // not known yet
    this.state = "kept";
    this.seen = this.#newest(); // how much was done when this page took it up
    this.#ask();
  }

  #newest() {
    return copiesOf(this.key).copies[0]?.deeds ?? 0;
  }

  async #ask() {
    const name = PREFIX + this.key;
    try {
      let free = false;
      // Whoever asks first has it; that answer comes when it comes, and until then nothing is kept.
      await navigator.locks.request(name, { ifAvailable: true }, (lock) => {
        free = Boolean(lock);
        return lock ? this.#hold() : undefined;
      });
      if (free || this.ended) return;
      const late = setTimeout(() => {
        this.mine = false;
        this.#say("elsewhere", t("kept-elsewhere"));
      }, LOCK_MS);
      await navigator.locks.request(name, () => {
        clearTimeout(late);
        return this.#hold();
      });
    } catch { // no locks, or a frame without rights of its own: nobody else is there either
      this.mine = true;
      this.again?.();
    }
  }

  /** It is this tab's, until it lets go. */
  #hold() {
    if (this.ended) return undefined;
    // What another tab did after this page took the attempt up is not overwritten.
    const waited = this.mine === false;
    this.mine = !(waited && this.#newest() > this.seen);
    if (!this.mine) this.#say("overtaken", t("kept-overtaken"));
    else if (waited) this.#say("kept", t("kept-again"));
    this.again?.();
    return new Promise((done) => (this.#until = done));
  }

  /**
   * Keeps {at, deeds, begun, saved}; again(): called when it is worth another try. Resolves to what keepAttempt says of it, to why
   * it is not this tab's to keep, or to nothing where nobody may be told any more.
   * @param {KeptAttempt} attempt
   */
  async keep(attempt) {
    if (!this.mine) return this.mine === false ? this.state : undefined;
    const state = await keepAttempt(this.key, { ...attempt, ...this.about });
    if (this.ended) return undefined;
    if (["kept", "once"].includes(state)) {
      this.last = attempt.at;
      this.#say("kept", this.state === "kept" ? "" : t("kept-again"));
    } else this.#say(state, t(`kept-${state}`, { when: this.last ? agoText(this.last) : t("kept-never") }));
    return state;
  }

  /** @param {string} state @param {string} text */
  #say(state, text) {
    const news = state !== this.state;
    this.state = state;
    if (text && news) this.tell(text);
  }

  /** Lets go, so that another tab may go on with it. */
  end() {
    this.ended = true;
    this.#until?.();
  }
}
