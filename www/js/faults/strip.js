// @ts-check
// A screen that stands still: a full one of a bench's live trace, made by the bench itself and drawn once.

import { h } from "../dom.js";
import { stripTheme } from "../theme.js";
/** @import { Bench } from '../core.js' */

const STEP_S = 0.25;
const MAX_DPR = 2;
const BEFORE_S = 20; // filters and strap are at rest by then
const LONG_S = 60; // on a screen of this length a link that comes and goes is shown
const SHORT_OF = 0.001; // of a screen: the last column is still of this sweep, and the stylus stands at the right edge

/**
 * Lets a bench run until its screen is full, and the one before it, so that filters and strap are at rest; fresh: its first screen. Returns
 * how often the computer lost the recorder meanwhile.
 * @param {Bench} bench @param {number | null} seconds time base; null leaves that of the bench @param {boolean} fresh
 */
export function fillScreen(bench, seconds, fresh = false) {
  if (seconds !== null) bench.act({ do: "time_base", s: seconds });
  const { time_base_s: screen } = bench.view().trace;
  const whole = fresh ? 0 : Math.ceil(BEFORE_S / screen) * screen;
  const from = bench.clock;
  const past = (from / screen) % 1; // a sweep begins where the clock is a whole number of screens
  const end = from + whole + (1 - past - SHORT_OF) * screen;
  let losses = 0;
  for (let seen = true; bench.clock < end - 1e-6;) {
    bench.advance(Math.min(STEP_S, end - bench.clock));
    const before = seen;
    if (screen >= LONG_S && bench.clock > end - screen) ({ seen } = bench.view().link);
    losses += Number(before && !seen);
  }
  return losses;
}

/**
 * Draws what a bench's screen shows into a canvas, in the size that this has on the page and in the theme that is on.
 * @param {Bench} bench @param {HTMLCanvasElement} canvas
 */
export function drawScreen(bench, canvas) {
  const { width, height } = canvas.getBoundingClientRect();
  if (width < 20 || height < 20) return;
  const dpr = Math.min(devicePixelRatio || 1, MAX_DPR);
  const over = h("canvas", {});
  for (const one of [canvas, over]) {
    one.width = Math.round(width * dpr);
    one.height = Math.round(height * dpr);
  }
  bench.setTheme(stripTheme());
  bench.setSize(over.width, over.height, dpr);
  bench.drawBase(canvas);
  bench.drawTrace(/** @type {CanvasRenderingContext2D} */ (over.getContext("2d")));
  canvas.getContext("2d")?.drawImage(over, 0, 0);
}
