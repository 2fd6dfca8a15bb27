// @ts-check
// The notebook as files: everything as JSON, a table as CSV.

import { learnerState } from "../core.js";
import { csvText } from "../csv.js";
/** @import { KeptEvidence } from '../types/told' */
/** @import { NotebookPage } from '../types/page' */

const READ = ["count", "seconds", "multiplier", "rate", "uncertainty", "middle", "range", "amplitude", "count_1", "seconds_1", "rate_1"];

/**
 * All pages as JSON text, with what is kept of each attempt for the skill map and what that comes to. The second version has the
 * latter two.
 * @param {NotebookPage[]} pages @param {KeptEvidence[]} attempts
 */
export const asJson = (pages, attempts) => JSON.stringify({ format: "dicrotic-notebook", version: 2, pages, attempts, learner: learnerState(attempts) }, null, 1);

/**
 * All pages as a table: one line a trial, times of day in UTC.
 * @param {NotebookPage[]} pages
 */
export function asCsv(pages) {
  const head = ["date_utc", "scenario", "title", "seed", "kind", "help", "recording_s", "window_s", ...READ, "band_low", "band_high", "passed", "tries", "hints", "first_open_step", "misreading", "rubric", "rubric_of", "true_rate_window", "true_rate_record", "label", "note"];
  const lines = pages.map((page) => [
    new Date(page.at_ms).toISOString(), page.scenario, page.title, page.seed, page.kind, page.mode, page.recording?.duration_s, page.cursors.interval_s, ...READ.map((field) => page.read[field]),
    page.check.band?.low, page.check.band?.high, page.check.passed, page.check.tries, page.check.hints, page.check.first_wrong, page.check.misreading, page.check.rubric?.total, page.check.rubric?.of, page.check.truth?.window, page.check.truth?.record, page.recording?.label, page.note,
  ]);
  return csvText([head, ...lines]);
}
