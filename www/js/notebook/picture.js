// @ts-check
// The trace of a page: the outline of a stretch as text small enough to keep, and its drawing, sharp at any size.

import { h, s } from "../dom.js";
import { num, t } from "../text.js";
/** @import { Outline } from '../types/page' */

const COLUMNS = 420;
const LEVELS = 1295; // two digits to the base of 36
const WIDTH = 1000, HEIGHT = 220, TOP = 14, FOOT = 188;
const LONGEST_S = 900; // a longer recording is not read for a picture

/**
 * The outline of a recording's stretch: {from_s, to_s, line}, or null. csv: the recording as the core tells it.
 * @param {string} csv @param {number} from @param {number} to
 */
export function outline(csv, from, to) {
  const rows = csv.split("\n").filter((row) => /^[\d.-]/.test(row)); // neither head nor notes
  const [t0, t1] = [Number(rows[0]?.split(",")[0]), Number(rows.at(-1)?.split(",")[0])];
  if (!(t1 > t0) || t1 - t0 > LONGEST_S || !(to > from)) return null;
  /** @param {number} time */
  const at = (time) => Math.max(0, Math.min(rows.length - 1, Math.round(((time - t0) / (t1 - t0)) * (rows.length - 1))));
  const first = at(from), last = at(to);
  const n = Math.min(COLUMNS, last - first);
  if (n < 2) return null;
  const pairs = Array.from({ length: n }, (_, k) => {
    let low = Infinity, high = -Infinity;
    for (let i = first + Math.floor((k * (last - first)) / n); i <= first + Math.floor(((k + 1) * (last - first)) / n); i += 1) {
      const value = Number(rows[i].split(",")[1]);
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return [low, high];
  });
  const least = Math.min(...pairs.map(([low]) => low)), most = Math.max(...pairs.map(([, high]) => high));
  if (!Number.isFinite(least) || !Number.isFinite(most)) return null;
  /** @param {number} value */
  const digits = (value) => Math.round(((value - least) / (most - least || 1)) * LEVELS).toString(36).padStart(2, "0");
  return { from_s: from, to_s: to, line: pairs.map(([low, high]) => digits(low) + digits(high)).join("") };
}

/**
 * The drawing of a kept outline with cursors and marks; label: its name for those who do not see it.
 * @param {Outline} outline
 * @param {{ a: number | null, b: number | null, marks?: number[], beats?: number[], label: string }} over
 */
export function drawing({ from_s: from, to_s: to, line }, { a, b, marks = [], beats = [], label }) {
  const n = line.length / 4;
  /** @param {number} k */
  const value = (k) => Number.parseInt(line.slice(k, k + 2), 36) / LEVELS;
  /** @param {number} share */
  const y = (share) => (FOOT - 14 - share * (FOOT - TOP - 40)).toFixed(1);
  /** @param {number} k */
  const x = (k) => (((k + 0.5) / n) * WIDTH).toFixed(1);
  /** @param {number} which */
  const edge = (which) => Array.from({ length: n }, (_, k) => `${x(k)} ${y(value(4 * k + which))}`); // 0: the lower, 2: the upper
  const d = `M${edge(2).join("L")}L${edge(0).reverse().join("L")}Z`; // as broad as the line swings within a column
  /** @param {number} time */
  const place = (time) => ((time - from) / (to - from)) * WIDTH;
  /** @param {number} time */
  const at = (time) => place(time).toFixed(1);
  /** @param {number[]} times */
  const seen = (times) => times.filter((time) => time >= from && time <= to);
  const seconds = Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, k) => Math.ceil(from) + k);
  /** @param {number | null} time @param {string} name */
  const cursor = (time, name) => typeof time === "number" && [s("path", { class: `pic-cursor pic-${name}`, d: `M${at(time)} ${TOP}V${FOOT}` }), s("text", { class: "pic-name", x: at(time), y: TOP - 2, "text-anchor": "middle" }, name.toUpperCase())];
  return h("div", { class: "pic" }, s("svg", { viewBox: `-22 -14 ${WIDTH + 44} ${HEIGHT + 14}`, role: "img", "aria-label": label },
    typeof a === "number" && typeof b === "number" && s("rect", { class: "pic-window", x: at(Math.min(a, b)), y: TOP, width: Math.abs(place(b) - place(a)).toFixed(1), height: FOOT - TOP }),
    s("path", { class: "pic-line", d }),
    s("path", { class: "pic-marks", d: seen(marks).map((time) => `M${at(time)} ${TOP + 4}v12`).join("") }),
    s("path", { class: "pic-beats", d: seen(beats).map((time) => `M${at(time)} ${FOOT - 8}l4 8h-8Z`).join("") }),
    cursor(a, "a"), cursor(b, "b"),
    s("path", { class: "pic-chrono", d: `M0 ${FOOT + 4}H${WIDTH}${seconds.map((time) => `M${at(time)} ${FOOT + 4}v${time % 5 === 0 ? -11 : -6}`).join("")}` }),
    seconds.filter((time) => time % 5 === 0).map((time) => s("text", { class: "pic-time", x: at(time), y: FOOT + 22, "text-anchor": "middle" }, t("unit-s", { v: num(time) })))));
}
