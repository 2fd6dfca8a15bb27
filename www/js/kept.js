// Taking up a kept attempt, whatever has become of it; keeping the one that is under way; and saying in words what is kept.

import { Bench } from "./core.js";
import { attemptKey, copiesOf, keepAttempt, layAside } from "./store.js";
import { agoText, t } from "./text.js";

const LOCK_MS = 300; // a page that is reloaded lets go of its attempt at once; another tab does not

/**
 * What is kept of an attempt: {bench, kept, told}, the newest copy that can be replayed, and words where something is amiss.
 * Without such a copy bench is missing; what is there is laid aside, not thrown away.
 */
export function takeUpKept(scenario, seed) {
  const { copies, damaged } = copiesOf(attemptKey(scenario, seed));
  let why = null;
  for (const [k, kept] of copies.entries()) {
    try {
      const bench = Bench.restored(kept.saved);
      return { bench, kept, told: damaged || k > 0 ? t("kept-mended", { when: agoText(kept.at) }) : "" };
    } catch (error) {
      why ??= error;
    }
  }
  if (copies.length === 0 && !damaged) return { told: "" };
  layAside(scenario, seed);
  return { told: why ? t("kept-unusable", { when: agoText(copies[0].at), told: why.message }) : t("kept-damaged") };
}

/** Keeps an attempt: one tab at a time, as soon as something is done; tell(words) says when that fails and when it is well again. */
export class Keeper {
  #until;
  constructor(scenario, seed, tell) {
    Object.assign(this, { scenario, seed, tell });
    this.key = attemptKey(scenario, seed);
    this.mine = undefined; // not known yet
    this.state = "kept";
    this.seen = this.#newest(); // how far the kept attempt was when this page took it up
    this.#ask();
  }

  #newest() {
    return copiesOf(this.key).copies[0]?.at ?? 0;
  }

  #ask() {
    if (!navigator.locks) {
      this.mine = true;
      return;
    }
    const late = setTimeout(() => {
      this.mine = false;
      this.#say("elsewhere", t("kept-elsewhere"));
    }, LOCK_MS);
    navigator.locks.request(`dicrotic:${this.key}`, () => {
      clearTimeout(late);
      if (this.ended) return undefined;
      // The other tab is closed. What it did after this page took the attempt up is not overwritten.
      const overtaken = this.mine === false && this.#newest() > this.seen;
      this.mine = !overtaken;
      if (overtaken) this.#say("overtaken", t("kept-overtaken"));
      else this.again?.();
      return new Promise((done) => (this.#until = done));
    }).catch(() => {
      clearTimeout(late); // a frame without rights of its own: nobody else is there either
      this.mine = true;
    });
  }

  /** Keeps {at, deeds, begun, saved}; again(): called when it is worth another try. */
  async keep(attempt) {
    if (!this.mine) return;
    const state = await keepAttempt(this.scenario, this.seed, attempt);
    if (this.ended) return;
    if (state === "kept") {
      this.last = attempt.at;
      this.#say(state, this.state === "kept" ? "" : t("kept-again"));
    } else this.#say(state, t(`kept-${state}`, { when: this.last ? agoText(this.last) : t("kept-never") }));
  }

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
