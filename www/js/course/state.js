// @ts-check
// What is kept of an attempt in a course site, as one line, and its safety copy on this device. The site's own attempt has a mark that
// is made when it begins: a copy of another attempt, of another item or of another version of the task is never taken for it.

import { keysOf, recall } from "../device.js";
import { copiesOf, forgetAttempt, keepTwice } from "../store.js";

/**
 * counter: grows with each step; heart: the number that the seed is made from; tries: which try in the site's attempt, from 1; token: the
 * mark of the site's attempt, "" in a line of an earlier version; code: the attempt's own code.
 * @typedef {{ counter: number, heart: number, tries: number, token: string, code: string }} State
 */

/**
 * A state out of its line; null for what is none.
 * @param {string | null | undefined} text @returns {State | null}
 */
export function readState(text) {
  const now = /^S2\.(\d{1,9})\.(\d{1,4})\.(\d{1,4})\.([a-z0-9]{1,16})\.(.+)$/.exec(text ?? "");
  if (now) return { counter: Number(now[1]), heart: Number(now[2]), tries: Number(now[3]), token: now[4], code: now[5] };
  const before = /^(\d{1,9})\.(\d{1,4})\.(D\d\..+)$/.exec(text ?? "");
  return before && { counter: Number(before[1]), heart: Number(before[2]), tries: Number(before[2]), token: "", code: before[3] };
}

/** @param {State} state */
export const writeState = ({ counter, heart, tries, token, code }) => `S2.${counter}.${heart}.${tries}.${token}.${code}`;

/** A mark for an attempt that begins. */
export function newToken() {
  const [word] = crypto.getRandomValues(new Uint32Array(1));
  return (word.toString(36) + Date.now().toString(36)).slice(0, 16);
}

/** The safety copies of one student's work at one task. */
export class Copies {
  /** @param {string} task the digest of its bench @param {string} owner */
  constructor(task, owner) {
    this.beginning = `course:${task}:${owner}:`;
    this.hearts = `course-tries:${task}:${owner}`;
  }
  /** @param {string} token */
  of(token) {
    return readState(copiesOf(this.beginning + token).copies[0]?.saved);
  }
  /**
   * Keeps a copy; taken: whether the site has ever taken a state of this attempt. Resolves to what keepTwice says.
   * @param {string} token @param {string} line @param {boolean} taken @param {number} deeds
   */
  keep(token, line, taken, deeds) {
    return keepTwice(this.beginning + token, { at: Date.now(), deeds, begun: 0, saved: line, taken });
  }
  /** @param {string} token */
  forget(token) {
    return forgetAttempt(this.beginning + token);
  }
  /** The latest copy of an attempt of which the site has never taken anything, and in which something was done; null if there is none. */
  untaken() {
    const found = keysOf(this.beginning).map((token) => copiesOf(this.beginning + token).copies[0]).filter((one) => one && one.taken === false && one.deeds > 0).sort((a, b) => b.at - a.at);
    return found.length > 0 ? { at: found[0].at, state: readState(found[0].saved) } : null;
  }
  /** The highest number of a heart that this student has met at this task on this device. */
  get met() {
    return Math.max(0, Math.floor(Number(recall(this.hearts)) || 0));
  }
}

