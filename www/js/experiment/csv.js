// @ts-check
// The table as a file that a spreadsheet opens: one line a row, numbers with a point, columns with their units in the head.

import { csvText } from "../csv.js";
/** @import { Experiment, Reading } from '../types/experiment' */

const HEAD = ["row", "condition", "recording", "a_s", "b_s", "since_start_s", "n", "t_s", "rate_per_min", "rate_u", "height_mv", "height_u", "swing_ms", "swing_u", "note"];

/** As many digits as a measurement bears. @param {string | number | null} value */
const short = (value) => (typeof value === "number" ? Number(value.toPrecision(6)) : value);

/** @param {Reading | null} reading @returns {(number | null)[]} */
const pair = (reading) => [reading?.value ?? null, reading?.u ?? null];

/** @param {Experiment} experiment */
export function csvOf({ rows }) {
  const lines = rows.map((row, i) => [i + 1, row.condition, row.recording + 1, row.a, row.b, row.since_s, row.count, row.seconds, ...pair(row.rate), ...pair(row.amplitude), ...pair(row.swing), row.note]);
  return csvText([HEAD, ...lines.map((line) => line.map(short))]);
}
