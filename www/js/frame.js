// @ts-check
// The page's frame: one view at a time in its middle, its name in the title, and a place for words that everyone must see.

import { CoreError } from "./core.js";
import { byId as $, words } from "./dom.js";
import { sectionOf, SIDES } from "./sides.js";
import { t } from "./text.js";
/** @import { SideName, ViewName } from './types/page' */

/** @type {ViewName[]} */
const VIEWS = ["start", "lab", "parts", "assign", "class", "paper", ...new Set(/** @type {SideName[]} */ (Object.keys(SIDES)).map(sectionOf))];
/** @type {(() => unknown) | null} */
let endView = null;

/**
 * Shows a calm message above everything; no words, no message.
 * @param {string} text
 */
export function calm(text) {
  $("calm").hidden = !text;
  words($("calm"), text);
}

/**
 * Shows any error in words; the core's by its code.
 * @param {unknown} error
 */
export const report = (error) => calm(error instanceof CoreError ? error.message : t("error-page", { told: error instanceof Error ? error.message : String(error) }));

/**
 * Shows a view in place of the one before; "loading" stands for what is on its way. end(): called when the next one comes.
 * @param {ViewName} view @param {(() => unknown) | null} [end]
 */
export function show(view, end = null) {
  const ended = endView;
  endView = end;
  document.body.dataset.view = view;
  $("skeleton").hidden = view !== "loading";
  for (const one of VIEWS) $(one).hidden = view !== one;
  ended?.();
}

/**
 * Is this view on the page?
 * @param {ViewName} view
 */
export const shows = (view) => document.body.dataset.view === view;

/** What was on its way does not come: an empty page, with what is told above it. */
export function nothingComes() {
  $("skeleton").hidden = true;
}

/**
 * Names what stands on the page, in the title of the window; without a name it is the page's own.
 * @param {string} title
 */
export function entitle(title) {
  document.title = title ? t("where-title", { title }) : t("app-title");
}
