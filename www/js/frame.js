// The page's frame: one view at a time in its middle, its name in the title, and a place for words that everyone must see.

import { CoreError } from "./core.js";
import { words } from "./dom.js";
import { sectionOf, SIDES } from "./sides.js";
import { t } from "./text.js";

const $ = (id) => document.getElementById(id);
const VIEWS = ["start", "lab", "assign", "class", ...new Set(Object.keys(SIDES).map(sectionOf))];
let endView = null;

/** Shows a calm message above everything; no words, no message. */
export function calm(text) {
  $("calm").hidden = !text;
  words($("calm"), text);
}

/** Shows any error in words; the core's by its code. */
export const report = (error) => calm(error instanceof CoreError ? error.message : t("error-page", { told: error?.message ?? String(error) }));

/** Shows a view in place of the one before; "loading" stands for what is on its way. end(): called when the next one comes. */
export function show(view, end = null) {
  const ended = endView;
  endView = end;
  document.body.dataset.view = view;
  $("skeleton").hidden = view !== "loading";
  for (const one of VIEWS) $(one).hidden = view !== one;
  $("panes").hidden = view !== "lab";
  ended?.();
}

/** Is this view on the page? */
export const shows = (view) => document.body.dataset.view === view;

/** What was on its way does not come: an empty page, with what is told above it. */
export function nothingComes() {
  $("skeleton").hidden = true;
}

/** Names what stands on the page, in the title of the window; without a name it is the page's own. */
export function entitle(title) {
  document.title = title ? t("where-title", { title }) : t("app-title");
}
