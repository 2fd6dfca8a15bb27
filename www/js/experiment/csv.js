// @ts-check
// The table as a file that a spreadsheet opens: one line a row, numbers with a point, columns with their units in the head.

/** @import { Experiment, Reading } from '../types/experiment' */

const HEAD = ["row", "condition", "recording", "a_s", "b_s", "since_start_s", "n", "t_s", "rate_per_min", "rate_u", "height_mv", "height_u", "swing_ms", "swing_u", "note"];

/**
 * A cell: quoted where it must be; a text that a spreadsheet would take for a formula gets an apostrophe.
 * @param {string | number | null} cell
 */
function cellOf(cell) {
  if (cell === null) return "";
  if (typeof cell === "number") return String(Number(cell.toPrecision(6)));
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** @param {Reading | null} reading @returns {(number | null)[]} */
const pair = (reading) => [reading?.value ?? null, reading?.u ?? null];

/** @param {Experiment} experiment */
export function csvOf({ rows }) {
  const lines = rows.map((row, i) => [i + 1, row.condition, row.recording + 1, row.a, row.b, row.since_s, row.count, row.seconds, ...pair(row.rate), ...pair(row.amplitude), ...pair(row.swing), row.note]);
  return [HEAD, ...lines].map((line) => line.map(cellOf).join(",")).join("\r\n") + "\r\n";
}
