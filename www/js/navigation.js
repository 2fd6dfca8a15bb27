// @ts-check
// One navigation at a time. Whatever is opened goes through here, and each step that waits asks afterwards whether it is still
// wanted: a file, a module or an answer that comes late never lands on a page that has gone on to something else.

import { closeQuestion } from "./ask.js";
import { nothingComes, report } from "./frame.js";

/** Thrown where a navigation finds that it is over; told to nobody. */
export class Left extends Error {}

/** Where the page is on its way to, or has come to. */
export class Navigation {
  #over = false;
  #address = location.href;

  /** @param {boolean} instead Whether it stands in place of one that had not come to its end. */
  constructor(instead) {
    this.instead = instead;
    this.done = false;
  }

  /** Over when another has begun, or when the address has changed and the page has not been told of it yet. */
  get over() {
    return this.#over || location.href !== this.#address;
  }

  end() {
    this.#over = true;
  }

  /**
   * What a promise gives, if it is still wanted then; else `release` may put it away, and everything ends here.
   * @template T @param {Promise<T>} coming @param {(late: T) => unknown} [release] @returns {Promise<T>}
   */
  async wait(coming, release) {
    let got;
    try {
      got = await coming;
    } catch (error) {
      throw this.over ? new Left() : error;
    }
    if (!this.over) return got;
    release?.(got);
    throw new Left();
  }

  /**
   * Puts another address in place of the present one, without a new entry in the browser's history.
   * @param {string} address
   */
  write(address) {
    history.replaceState(null, "", address);
    this.#address = location.href;
  }
}

/** @typedef {(navigation: Navigation) => unknown} Opens */

/** @type {Navigation | null} */
let now = null;
/** @type {Opens | null} */
let followed = null;

/**
 * Begins a navigation and ends the one before, with the question that it may have put. open(navigation) does the opening.
 * @param {Opens} open
 */
export async function go(open) {
  const mine = new Navigation(now !== null && !now.done);
  now?.end();
  now = mine;
  closeQuestion();
  try {
    await open(mine);
  } catch (error) {
    if (mine.over || error instanceof Left) return;
    nothingComes();
    report(error);
  } finally {
    mine.done = true;
  }
}

/**
 * From now on an address is opened by open(navigation): at once, and whenever it changes. Resolves when the first is open.
 * @param {Opens} open
 */
export function followAddress(open) {
  followed = open;
  addEventListener("hashchange", () => go(open));
  return go(open);
}

/** Goes on to where the address says, after a navigation that came to nothing in place of one that was under way. */
export const goOn = () => go(/** @type {Opens} */ (followed));

/**
 * Puts an address in place of the present one and opens it.
 * @param {string} address
 */
export function goTo(address) {
  history.replaceState(null, "", address);
  return go(/** @type {Opens} */ (followed));
}
