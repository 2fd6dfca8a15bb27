// @ts-check
// The class that stands in this tab: while the page is open it is here, and a copy lies in the browser's database under the tab's
// own number, so that a reload finds it again. A tab that is closed takes it along; to keep it there is the file.

import { Course } from "../desk.js";
import { CLASSES } from "../device.js";
import { guest } from "../who.js";
/** @import { Waiting } from './grader.js' */
/** @import { Source } from '../types/told' */

const STORE = "classes", TAB = "dicrotic:class-tab";
const SETTLE_MS = 800;

/** @typedef {{ top: number, look: number } | null} Place */

/** What is shown of the class, and how; about: those only in whose results something stands, such as `trace:hum`. */
export const freshView = () => ({ search: "", sort: "state", group: "", only: "", about: "", names: false, /** @type {Set<string>} */ ticked: new Set() });

/** The class, its view, where one was before an attempt was looked at, and whether there is something that no file holds. */
export const state = { course: new Course(), view: freshView(), place: /** @type {Place} */ (null), unsaved: false, restored: false, waiting: /** @type {Source[]} */ ([]), queue: /** @type {Waiting[]} */ ([]) };

/** @type {number | undefined} */
let due;

/** This tab's own number. */
function tab() {
  let id = sessionStorage.getItem(TAB);
  if (!id) sessionStorage.setItem(TAB, (id = crypto.randomUUID()));
  return id;
}

/** @returns {Promise<IDBDatabase>} */
const opened = () => new Promise((done, fail) => {
  const asked = indexedDB.open(CLASSES, 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
  asked.onsuccess = () => done(asked.result);
  asked.onerror = () => fail(asked.error);
});

/**
 * @template T @param {IDBTransactionMode} mode @param {(store: IDBObjectStore) => IDBRequest<T>} ask @returns {Promise<T>}
 */
async function within(mode, ask) {
  const base = await opened();
  try {
    return await new Promise((done, fail) => {
      const request = ask(base.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  } finally {
    base.close();
  }
}

/** Tells the browser to ask before a tab with something in it that no file holds is closed. @param {BeforeUnloadEvent} event */
function asks(event) {
  if (state.unsaved) event.preventDefault();
}

/** The class has changed: a copy is laid down in a moment, and closing the tab asks first. */
export function changed() {
  if (!state.unsaved) addEventListener("beforeunload", asks);
  state.unsaved = true;
  clearTimeout(due);
  due = setTimeout(layDown, SETTLE_MS);
}

/** Lays the copy down now; a device without storage has none, and a reload then begins anew. */
export async function layDown() {
  clearTimeout(due);
  if (guest()) return;
  try {
    await within("readwrite", (store) => store.put({ at: Date.now(), text: state.course.save() }, tab()));
    document.documentElement.dataset.classKept = String(Date.now());
  } catch { /* there is the file */ }
}

/** A file holds it now. */
export function saved() {
  state.unsaved = false;
  removeEventListener("beforeunload", asks);
}

/** Takes up this tab's copy, once; what of it waits to be graded stays in the class. Copies of tabs that are gone are swept away. */
export async function takeUp() {
  if (state.restored) return;
  state.restored = true;
  try {
    navigator.locks?.request(`${CLASSES}:${tab()}`, () => new Promise(() => {})); // held for as long as the page is there
    const held = new Set(((await navigator.locks?.query())?.held ?? []).map((lock) => lock.name));
    for (const key of await within("readonly", (store) => store.getAllKeys())) {
      if (key !== tab() && navigator.locks && !held.has(`${CLASSES}:${key}`)) await within("readwrite", (store) => store.delete(key));
    }
    const kept = await within("readonly", (store) => store.get(tab()));
    if (kept) {
      state.course = Course.open(kept.text);
      state.waiting = state.course.waiting();
      changed();
    }
  } catch { /* no storage, or a copy of another version */ }
}

/** Forgets the class, here and on the device. */
export async function forget() {
  clearTimeout(due);
  saved();
  state.course.free();
  Object.assign(state, { course: new Course(), view: freshView(), place: null, waiting: [], queue: [] });
  try {
    await within("readwrite", (store) => store.delete(tab()));
  } catch { /* there was none */ }
}

/**
 * Puts an opened class in the place of the one that stood here.
 * @param {Course} course
 */
export function putCourse(course) {
  state.course.free();
  Object.assign(state, { course, view: freshView(), place: null, waiting: [], queue: [] });
}
