// @ts-check
// A notebook from a file: its pages and the attempts behind the skill map are put among those that are kept. What they come to is
// worked out again, so what the file says of that is not read.

import { takeEvidence } from "../evidence.js";
import { isPage, keepPage, readPage } from "./pages.js";

const FORMATS = ["dicrotic-notebook", "dicrotic-skills"];

/**
 * Takes the text of a file in: how many pages and attempts came, or why none did ("unknown", "full").
 * @param {string} text
 */
export function takeNotebook(text) {
  /** @type {any} */
  let file = null;
  try {
    file = JSON.parse(text);
  } catch {
    return "unknown";
  }
  if (!FORMATS.includes(file?.format)) return "unknown";
  /** @param {unknown} list @returns {unknown[]} */
  const listed = (list) => (Array.isArray(list) ? list : []);
  const pages = listed(file.pages).filter(isPage).filter((page) => !readPage(page.id));
  const kept = pages.every((page) => keepPage(page));
  const attempts = takeEvidence(listed(file.attempts));
  return kept && attempts !== null ? { pages: pages.length, attempts } : "full";
}
