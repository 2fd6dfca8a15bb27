// @ts-check
// The pages of the notebook on this device: one a trial, under a key of its own, so that a full store loses one and not all.

import { keep, recall, forget, keysOf } from "../store.js";
/** @import { Session } from '../session.js' */
/** @import { NotebookPage } from '../types/page' */

const PAGE = "page:";
const MOST = 200; // then the oldest makes room

/**
 * A page by its id, or null.
 * @param {string} id @returns {NotebookPage | null}
 */
export const readPage = (id) => recall(PAGE + id);

/**
 * All pages, latest first; what cannot be read is left out.
 * @returns {NotebookPage[]}
 */
export function allPages() {
  return keysOf(PAGE).flatMap((id) => readPage(id) ?? []).filter((page) => Boolean(page.id) && Number.isFinite(page.at_ms)).sort((a, b) => b.at_ms - a.at_ms);
}

/**
 * Keeps a page; false when the device does not allow it.
 * @param {NotebookPage} page
 */
export function keepPage(page) {
  for (const old of allPages().slice(MOST)) forget(PAGE + old.id);
  return keep(PAGE + page.id, page);
}

/**
 * Takes a page out.
 * @param {string} id
 */
export const dropPage = (id) => forget(PAGE + id);

/**
 * The id of the page of a session: one an attempt, one a recording.
 * @param {Pick<Session, "scenario" | "seed" | "view">} session
 */
export const idOf = ({ scenario, seed, view }) => (scenario ? `${scenario}:${seed}` : `recording:${view.recording_name}`);
