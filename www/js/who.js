// @ts-check
// Whose work it is. A device may serve many: each kept thing belongs to somebody who typed a student ID, or to nobody by name. The
// ID itself is never kept, only what it makes (a number); who is at the device now holds for one tab. A guest leaves nothing.

import { seedOf } from "./core.js";
import { emptyPage, keep, keepInPage, ofTab, toTab } from "./device.js";

const WHO = "who", GUEST = "guest";
const isTag = /^\d{1,20}$/;

let now = isTag.test(ofTab(WHO)) ? ofTab(WHO) : "";
let isGuest = false;

/** Who is at the device: a number made from the student ID; "" without a name. */
export const who = () => now;
/** Whether nothing outlives this page. */
export const guest = () => isGuest;

/**
 * The number of a student ID, however it is typed; "" for none.
 * @param {string} student
 */
export const tagOf = (student) => (student.trim() ? seedOf("who", student, 0) : "");

/**
 * As much of an ID as lets its owner know it again and nobody else read it.
 * @param {string} student
 */
export function hintOf(student) {
  const letters = [...student.trim()];
  return `${letters.length > 3 ? letters[0] : ""}…`;
}

/**
 * From now on, in this tab, it is this student; "" for nobody by name.
 * @param {string} student
 */
export function beWho(student) {
  now = tagOf(student);
  toTab(WHO, now);
  if (now) keep(`owner:${now}`, hintOf(student));
}

/**
 * From now on nothing is kept on the device and nothing that lies there is seen; or no longer so.
 * @param {boolean} on
 */
export function beGuest(on) {
  isGuest = on;
  now = "";
  toTab(WHO, "");
  toTab(GUEST, on ? "1" : "");
  emptyPage();
  keepInPage(() => on);
}

/** Whether this page is only shown in a frame of the first screen (?preview): it looks as the reader chose, and keeps nothing. */
export const previewed = new URLSearchParams(location.search).get("preview") !== null;

/** A tab that was a guest's stays one; ?guest in the address makes it one. */
export function startAsAsked() {
  if (previewed) {
    keepInPage((key) => key !== "theme" && key !== "language");
    document.documentElement.dataset.preview = "";
    return;
  }
  if (ofTab(GUEST) || new URLSearchParams(location.search).get("guest") !== null) beGuest(true);
}

/** What stands behind a name in the keys of somebody's things. */
export const mark = (tag = now) => (tag ? `@${tag}` : "");

const FORMS = [/^attempt:[^:@]*(?:@(\d+))?:/, /^page:(?:@(\d+)\/)?/, /^history(?:@(\d+))?$/, /^(?:seed|tries|consent):[^@]*(?:@(\d+))?$/, /^owner:(\d+)$/, /^course:[^:]*:(\d*):/, /^course-tries:[^:]*:(\d*)$/, /^course-out:[^:]*:(\d*)$/];

/**
 * Whose a key is: a number, "" for nobody by name; null for what is nobody's work.
 * @param {string} key @returns {string | null}
 */
export function ownerOf(key) {
  if (key.startsWith("aside:")) return ownerOf(key.slice(6)) ?? ownerOf(`attempt:${key.slice(6)}`) ?? "";
  for (const form of FORMS) {
    const found = form.exec(key);
    if (found) return found[1] ?? "";
  }
  return null;
}
