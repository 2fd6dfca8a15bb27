// @ts-check
// The pages of the notebook on this device: one a trial, under a key of its own, so that a full store loses one and not all.

import { forget, keep, keysOf, layTextAside, recallOnly } from "../device.js";
import { mark } from "../who.js";
/** @import { Session } from '../session.js' */
/** @import { NotebookPage } from '../types/page' */

const MOST = 200; // then the oldest makes room
/** Where the pages of whoever is at the device stand. */
const PAGE = () => `page:${mark()}${mark() && "/"}`;

/** @param {unknown} value @returns {value is Record<string, any>} */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
/** What every part of the page relies on. @param {any} page @returns {page is NotebookPage} */
export function isPage(page) {
  return isObject(page) && typeof page.id === "string" && page.id !== "" && Number.isFinite(page.at_ms) && Math.abs(page.at_ms) < 8e15
    && isObject(page.check) && Array.isArray(page.check.steps) && isObject(page.read) && isObject(page.cursors) && Array.isArray(page.marks) && typeof page.note === "string";
}

/**
 * A page by its id, or null.
 * @param {string} id @returns {NotebookPage | null}
 */
export function readPage(id) {
  const page = recallOnly(PAGE() + id, isPage);
  const { take } = /** @type {any} */ (page) ?? {}; // what a page of an older version calls its recording
  return page && isObject(take) && !page.recording ? { ...page, recording: { recording: take.take, duration_s: take.duration_s, label: take.label } } : page;
}

/**
 * All pages of theirs, latest first; what cannot be read is laid aside.
 * @returns {NotebookPage[]}
 */
export function allPages() {
  return keysOf(PAGE()).filter((id) => mark() || !id.startsWith("@")).flatMap((id) => readPage(id) ?? []).sort((a, b) => b.at_ms - a.at_ms);
}

/**
 * Keeps a page; false when the device does not allow it.
 * @param {NotebookPage} page
 */
export function keepPage(page) {
  for (const old of allPages().slice(MOST)) forget(PAGE() + old.id);
  return keep(PAGE() + page.id, page);
}

/**
 * Takes a page out.
 * @param {string} id
 */
export const dropPage = (id) => forget(PAGE() + id);

/**
 * Lays a page aside that could not be shown after all.
 * @param {string} id
 */
export const layPageAside = (id) => layTextAside(PAGE() + id);

/**
 * The id of the page of a session: one an attempt, one for each window of a recording.
 * @param {Pick<Session, "scenario" | "seed" | "view">} session
 */
export const idOf = ({ scenario, seed, view }) => (scenario ? `${scenario}:${seed}` : `recording:${view.recording_name}${view.checks.window > 1 ? `:${view.checks.window}` : ""}`);
