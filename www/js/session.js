// @ts-check
// One attempt on the page: the lab, its last view, who wants to hear of changes, and keeping it on this device.

import { onlyLooks } from "./deeds.js";
import { inverseOf } from "./undo.js";
/** @import { Bench } from './core.js' */
/** @import { Action } from './types/action' */
/** @import { KeepsAttempt } from './types/page' */
/** @import { Args } from './types/names' */
/** @import { View } from './types/view' */

const SAVE_MS = 300;

/**
 * Tells for whoever looks from outside (a test, a style) that all that was done is kept: data-kept of the page is the number of
 * deeds that both copies on the device hold, or the word for what is in the way; there is none while a deed waits to be kept.
 * @param {string | number | null | undefined} state
 */
function tellKept(state) {
  if (state === null) delete document.documentElement.dataset.kept;
  else if (state !== undefined) document.documentElement.dataset.kept = String(state);
}

export class Session {
  /**
   * bench: a Bench of core.js; scenario: its id or null (a recording); seed: digits or null.
   * @param {Bench} bench @param {string | null} scenario @param {string | null} seed
   */
  constructor(bench, scenario, seed) {
    this.bench = bench;
    this.scenario = scenario;
    this.seed = seed;
    /** @type {Set<(view: View) => unknown>} */
    this.hears = new Set();
    /** @type {Set<(code: string, args: Args, action: Action) => unknown>} */
    this.hearsRefusal = new Set();
    /** @type {Set<(action: Action) => unknown>} */
    this.hearsDeed = new Set();
    this.revision = bench.revision;
    this.view = bench.view();
    /** @type {number | null} */
    this.saving = null;
    /** @type {string | null} */
    this.address = null; // the part of the link that an assignment came with
    /** @type {Promise<unknown> | null} */
    this.debriefed = null; // the debrief's further parts, once they are asked for
    /** @type {Action[]} */
    this.takesBack = []; // what takes each of the last deeds back, the last one last
    this.undoing = false;
    this.deeds = 0;
    this.begun = Date.now();
    /** @type {KeepsAttempt | null} */
    this.keeper = null; // keeps the attempt, on this device or in a course site
    this.ended = false; // whatever still comes for it finds nothing to belong to
    this.looksOnly = false; // somebody else's attempt, replayed: it can be looked at and not changed
  }

  /**
   * Calls tell(view) now and whenever the view has changed.
   * @param {(view: View) => unknown} tell
   */
  onView(tell) {
    this.hears.add(tell);
    tell(this.view);
  }

  /**
   * Calls tell(code, args, action) when the world refuses an action.
   * @param {(code: string, args: Args, action: Action) => unknown} tell
   */
  onRefusal(tell) {
    this.hearsRefusal.add(tell);
  }

  /**
   * Calls tell(action) after an action that was done.
   * @param {(action: Action) => unknown} tell
   */
  onDeed(tell) {
    this.hearsDeed.add(tell);
  }

  /**
   * Does an action; true when the world let it happen.
   * @param {Action} action
   */
  act(action) {
    if (this.looksOnly && !onlyLooks(action.do)) {
      this.hears.forEach((tell) => tell(this.view));
      this.hearsRefusal.forEach((tell) => tell("replayed", {}, action));
      return false;
    }
    const back = this.undoing ? null : inverseOf(action, this.view);
    const answer = this.bench.act(action);
    this.refresh();
    if (answer.ok) {
      if (back) this.takesBack.push(back);
      this.deeds += 1;
      tellKept(null);
      this.hearsDeed.forEach((tell) => tell(action));
      this.save();
    } else {
      this.hears.forEach((tell) => tell(this.view)); // a control that ran ahead goes back to what is so
      this.hearsRefusal.forEach((tell) => tell(answer.code, answer.args ?? {}, action));
    }
    return answer.ok;
  }

  /** Takes the last deed of the hand back, if it can be; that is a deed too. True when something was taken back. */
  undo() {
    const back = this.takesBack.pop();
    if (!back) return false;
    this.undoing = true;
    try {
      return this.act(back);
    } finally {
      this.undoing = false;
    }
  }

  /** Reads the view anew if the core says that it has changed. */
  refresh() {
    const revision = this.bench.revision;
    if (revision === this.revision) return;
    this.revision = revision;
    this.view = this.bench.view();
    this.hears.forEach((tell) => tell(this.view));
  }

  /** Keeps the attempt soon; many actions in a row are kept once. */
  save() {
    this.saving ??= setTimeout(() => this.saveNow(), SAVE_MS);
  }

  /** Keeps the attempt; a recording is not kept. */
  saveNow() {
    clearTimeout(this.saving ?? undefined);
    this.saving = null;
    if (!this.scenario || this.deeds === 0) return;
    const { deeds } = this;
    this.keeper?.keep({ at: Date.now(), deeds, begun: this.begun, over: Boolean(this.view.check?.over), saved: this.bench.save() }).then((state) => deeds === this.deeds && tellKept(state === "kept" ? deeds : state));
  }

  /**
   * Has the attempt kept from now on: by a Keeper of kept.js, or by a course site.
   * @param {KeepsAttempt} keeper
   */
  keepWith(keeper) {
    this.keeper = keeper;
    keeper.again = () => this.save();
  }

  /** Keeps it a last time, and lets go of it. */
  end() {
    this.ended = true;
    this.saveNow();
    this.keeper?.end();
    this.bench.free();
  }
}
