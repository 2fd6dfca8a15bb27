// @ts-check
// A small trace of one's own pulse: seconds along its foot, and either a wave or taps. It knows no physics; it draws what it is given.

import { h } from "../dom.js";
import { num } from "../text.js";
import { offTheme, onTheme, stripTheme } from "../theme.js";

const MOST_DPR = 2;
const FOOT_PX = 22;
const MOST_UP = 4; // beyond this it is a movement, which may leave the screen
const FOLLOW = 0.12;

/** @typedef {{ from: number, to: number, step: number, wave?: { values: ArrayLike<number>, end: number, rate: number }, taps?: readonly number[], now?: number | null }} Picture */

/** A tap's mark: seconds from the tap, and parts of the height; one wave with its peak at the tap, as in the recording that is made of it. */
const BEAT = Array.from({ length: 25 }, (_, k) => {
  const u = k / 4;
  return /** @type {const} */ ([(u - 1) / 10, u * Math.exp(1 - u)]);
});

export class Strip {
  constructor() {
    this.canvas = h("canvas", { class: "own-canvas", "aria-hidden": "true" });
    this.el = h("div", { class: "own-strip drum" }, h("div", { class: "trace-area" }, this.canvas));
    this.context = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d"));
    /** @type {Picture} */
    this.picture = { from: 0, to: 10, step: 1 };
    this.low = -1;
    this.high = 1;
    this.retheme = () => {
      this.theme = stripTheme();
      this.redraw();
    };
    this.theme = stripTheme();
    onTheme(this.retheme);
    this.observer = new ResizeObserver(() => this.resize());
    this.observer.observe(this.canvas);
  }

  resize() {
    const { clientWidth, clientHeight } = this.canvas;
    if (clientWidth < 20) return;
    this.dpr = Math.min(devicePixelRatio || 1, MOST_DPR);
    this.canvas.width = Math.round(clientWidth * this.dpr);
    this.canvas.height = Math.round(clientHeight * this.dpr);
    this.redraw();
  }

  /** @param {Picture} picture */
  draw(picture) {
    this.picture = picture;
    this.redraw();
  }

  redraw() {
    const { canvas, context: c, theme, picture, dpr } = this;
    if (!dpr) return;
    const wide = canvas.width / dpr, high = canvas.height / dpr, foot = high - FOOT_PX;
    const { from, to, step } = picture;
    /** @param {number} t */
    const x = (t) => ((t - from) / (to - from)) * wide;
    c.setTransform(dpr, 0, 0, dpr, 0, 0);
    c.fillStyle = theme.ground;
    c.fillRect(0, 0, wide, high);
    c.strokeStyle = theme.grid;
    c.fillStyle = theme.axis;
    c.lineWidth = 1;
    c.font = `12px ${theme.font}`;
    c.textAlign = "center";
    c.beginPath();
    for (let k = Math.ceil(from / step); k * step <= to + 1e-9; k += 1) {
      const at = Math.round(x(k * step)) + 0.5;
      c.moveTo(at, 0);
      c.lineTo(at, foot);
      const label = `${num(k * step, 0)} s`;
      if (k >= 0 && at > 16 && at < wide - 16) c.fillText(label, at, high - 6);
    }
    c.moveTo(0, foot + 0.5);
    c.lineTo(wide, foot + 0.5);
    c.stroke();
    c.strokeStyle = theme.ink;
    c.lineWidth = 1.8;
    c.lineJoin = "round";
    c.beginPath();
    if (picture.wave) this.wave(picture.wave, x, foot);
    if (picture.taps) this.taps(picture.taps, x, foot, wide, picture.now ?? to);
    c.stroke();
  }

  /**
   * A wave whose last value stands at `end`.
   * @param {NonNullable<Picture["wave"]>} wave @param {(t: number) => number} x @param {number} foot
   */
  wave({ values, end, rate }, x, foot) {
    const { context: c } = this;
    const first = end - (values.length - 1) / rate;
    // The height follows what is shown, slowly, so that neither a movement nor its end makes the trace jump.
    let low = -0.5, high = 0.5;
    for (let k = 0; k < values.length; k += 1) if (Math.abs(values[k]) < MOST_UP) [low, high] = [Math.min(low, values[k]), Math.max(high, values[k])];
    this.low += (low - this.low) * FOLLOW;
    this.high += (high - this.high) * FOLLOW;
    const scale = (foot * 0.8) / (this.high - this.low);
    let on = false;
    for (let k = 0; k < values.length; k += 1) {
      const v = values[k];
      if (!Number.isFinite(v)) {
        on = false;
        continue;
      }
      const y = Math.max(1, Math.min(foot, foot * 0.9 - (v - this.low) * scale));
      if (on) c.lineTo(x(first + k / rate), y);
      else c.moveTo(x(first + k / rate), y);
      on = true;
    }
  }

  /**
   * A wave at each tap; one that comes soon cuts the one before short. Nothing is drawn where the time has not come yet.
   * @param {readonly number[]} taps @param {(t: number) => number} x @param {number} foot @param {number} wide @param {number} now
   */
  taps(taps, x, foot, wide, now) {
    const { context: c } = this;
    const rest = foot * 0.86, tall = foot * 0.7;
    c.moveTo(0, rest);
    taps.forEach((tap, k) => {
      const next = (taps[k + 1] ?? Infinity) - 0.1;
      for (const [dt, up] of BEAT) if (tap + dt < next && (dt <= 0 || tap + dt <= now)) c.lineTo(x(tap + dt), rest - up * tall);
    });
    const last = taps.at(-1);
    if (last === undefined || now > last + 0.5) c.lineTo(Math.min(wide, x(now)), rest);
  }

  end() {
    this.observer.disconnect();
    offTheme(this.retheme);
  }
}
