// @ts-check
// Cursors A and B: sliders laid over the trace, moved by hand or by keys. A move is put to the core when it comes to rest.

import { attr, flag, h, style, words } from "../dom.js";
import { t } from "../text.js";
import { hundredths, timeText } from "./units.js";
/** @import { Act } from '../types/action' */
/** @import { Which } from '../types/names' */
/** @import { Geometry } from '../types/told' */

const SETTLE_MS = 260;
const TAP_PX = 4;
const PARKED = 0.06; // share of the screen from its edge to a cursor that waits
const FLAGS_PX = 150; // what two flags take that wait side by side
const FLAG_PX = 34, LETTER_PX = 8; // a flag with its letter alone, and each letter more: a little more than there is
const BOTH = /** @type {const} */ (["a", "b"]);

export class Cursors {
  /**
   * act(action); moved(times) is told of every move, at rest or not; markAt(t) marks a beat; tapped(clientX) is told of a
   * tap beside the flag that moved nothing: it was meant for the trace; dropped(t) gives where a dragged cursor comes to rest; apart: how
   * long a window is asked for, s.
   * @param {{ act: Act, moved: (times: { a: number | null, b: number | null }) => unknown, markAt: (time: number | null) => unknown, tapped: (clientX: number) => unknown, dropped: (time: number) => number, apart: number }} ways
   */
  constructor({ act, moved, markAt, tapped, dropped, apart }) {
    this.apart = apart;
    this.act = act;
    this.moved = moved;
    this.markAt = markAt;
    this.tapped = tapped;
    this.dropped = dropped;
    /** @type {{ a: number | null, b: number | null }} */
    this.times = { a: null, b: null };
    /** @type {Geometry | null} */
    this.geometry = null;
    this.duration = 0;
    /** @type {Which | null | undefined} */
    this.held = null;
    this.down = { x: 0, flag: false, moved: false };
    this.grip = 0;
    this.settling = { a: { timer: 0, due: false }, b: { timer: 0, due: false } }; // moved, and not yet put to the core
    this.window = h("div", { class: "window", hidden: true });
    this.handles = { a: this.handle("a"), b: this.handle("b") };
    this.el = h("div", { class: "cursors" }, this.window, this.handles.a, this.handles.b);
  }

  /** @param {Which} which */
  handle(which) {
    return h("div", {
      class: `cursor cursor-${which}`, role: "slider", tabindex: "0", "aria-label": t(`cursor-${which}`), "aria-valuemin": "0", "aria-orientation": "horizontal",
      onkeydown: (event) => this.key(which, event), onblur: () => this.settle(which),
      onpointerdown: (event) => this.take(which, event), onpointermove: (event) => this.drag(which, event), onpointerup: (event) => this.drop(which, event), onpointercancel: (event) => this.drop(which, event),
    }, h("span", { class: "cursor-flag", "aria-hidden": "true" }, which.toUpperCase(), h("small", { class: "cursor-says" })));
  }

  /**
   * Takes the core's cursors; a cursor in the hand keeps its place.
   * @param {{ a: number | null, b: number | null }} cursors @param {number} duration
   */
  show({ a, b }, duration) {
    this.duration = duration;
    for (const which of BOTH) {
      if (!this.settling[which].due && this.held !== which) this.times[which] = which === "a" ? a : b;
    }
    this.place();
  }

  /** @param {Which} which @param {number} time */
  set(which, time) {
    this.times[which] = Math.max(0, Math.min(this.duration, Math.round(time * 1000) / 1000));
    this.place();
    this.moved(this.times);
    const settle = this.settling[which];
    settle.due = true;
    clearTimeout(settle.timer);
    if (this.held !== which) settle.timer = setTimeout(() => this.settle(which), SETTLE_MS);
  }

  /**
   * Puts a moved cursor to the core.
   * @param {Which} which
   */
  settle(which) {
    const settle = this.settling[which];
    clearTimeout(settle.timer);
    if (!settle.due) return;
    settle.due = false;
    this.act({ do: "cursor", which, t: this.times[which] });
  }

  /**
   * Points at the cursor that a hint is about; null at none.
   * @param {Which | null} which
   */
  point(which) {
    for (const one of BOTH) flag(this.handles[one], "is-pointed", one === which);
  }

  /** Puts both to the core, before anything that reads them. */
  settleAll() {
    this.settle("a");
    this.settle("b");
  }

  /** @param {Which} which @param {PointerEvent} event */
  take(which, event) {
    if (event.button > 0) return;
    event.preventDefault();
    const el = this.handles[which];
    el.focus();
    el.setPointerCapture(event.pointerId);
    this.held = which;
    this.down = { x: event.clientX, flag: Boolean(/** @type {Element} */ (event.target).closest(".cursor-flag")), moved: false };
    this.grip = event.clientX - this.xOf(which) - this.el.getBoundingClientRect().left;
  }
  /** @param {Which} which @param {PointerEvent} event */
  drag(which, event) {
    if (this.held !== which || !this.geometry) return;
    if (!this.down.moved && Math.abs(event.clientX - this.down.x) < TAP_PX) return;
    this.down.moved = true;
    const { left, width, t0, t1 } = this.geometry;
    const x = event.clientX - this.grip - this.el.getBoundingClientRect().left;
    this.set(which, t0 + (Math.max(0, Math.min(width, x - left)) / width) * (t1 - t0));
  }
  /** @param {Which} which @param {PointerEvent} event */
  drop(which, event) {
    if (this.held !== which) return;
    this.held = null;
    if (this.down.moved) this.set(which, this.dropped(this.times[which] ?? 0));
    else if (this.down.flag && this.times[which] === null) this.set(which, this.parked(which)); // a tap on its flag sets it where it waits
    this.settle(which);
    if (event.type === "pointerup" && !this.down.moved && !this.down.flag) this.tapped(event.clientX);
  }

  /** @param {Which} which @param {KeyboardEvent} event */
  key(which, event) {
    if (!this.geometry) return;
    const { t0, t1, width } = this.geometry;
    const fine = Math.max(0.001, Math.round(((t1 - t0) / width) * 1000) / 1000); // one pixel's worth
    const coarse = (t1 - t0) / 20;
    const now = this.times[which] ?? this.parked(which);
    /** @type {Record<string, number>} */
    const places = {
      ArrowRight: now + (event.shiftKey ? 10 * fine : fine), ArrowUp: now + fine, ArrowLeft: now - (event.shiftKey ? 10 * fine : fine), ArrowDown: now - fine,
      PageUp: now + coarse, PageDown: now - coarse, Home: 0, End: this.duration,
    };
    const to = places[event.key];
    if (to !== undefined) this.set(which, to);
    else if (event.key === "m" || event.key === "M") this.markAt(now);
    else return;
    event.preventDefault();
    this.follow(which);
  }

  /**
   * Scrolls the recording so that a cursor moved by keys stays in sight.
   * @param {Which} which
   */
  follow(which) {
    if (!this.geometry) return;
    const { t0, t1 } = this.geometry;
    const time = this.times[which];
    if (time === null || (time >= t0 - 1e-6 && time <= t1 + 1e-6)) return;
    const span = t1 - t0;
    this.act({ do: "scroll", start_s: Math.max(0, Math.min(this.duration - span, time - span / 2)) });
  }

  /**
   * Where a cursor that is not placed yet waits to be taken: on the screen, as far from the other as is asked, and clear of it.
   * @param {Which} which
   */
  parked(which) {
    const { t0, t1, width } = /** @type {Geometry} */ (this.geometry);
    const a = t0 + PARKED * (t1 - t0);
    const flags = (FLAGS_PX / width) * (t1 - t0); // one flag must not lie over the other
    return which === "a" ? a : Math.min(a + Math.max(this.apart, flags), t1 - PARKED * (t1 - t0));
  }

  /** @param {Which} which */
  xOf(which) {
    if (!this.geometry) return 0;
    const { left, width, t0, t1 } = this.geometry;
    const time = this.times[which];
    return left + (((time ?? this.parked(which)) - t0) / (t1 - t0)) * width;
  }

  /** @param {Geometry | null} [geometry] */
  place(geometry = this.geometry) {
    this.geometry = geometry;
    if (!geometry) return;
    const { left, width, top, height } = geometry;
    style(this.el, "--top", `${top}px`);
    style(this.el, "--height", `${height}px`);
    for (const which of BOTH) {
      const el = this.handles[which], time = this.times[which], x = this.xOf(which);
      style(el, "--x", `${x.toFixed(1)}px`);
      flag(el, "is-parked", time === null);
      flag(el, "is-out", x < left - 1 || x > left + width + 1);
      attr(el, "aria-valuemax", this.duration.toFixed(3));
      attr(el, "aria-valuenow", (time ?? this.parked(which)).toFixed(3));
      attr(el, "aria-valuetext", time === null ? t("cursor-unplaced") : timeText(time));
      words(/** @type {Element} */ (el.querySelector(".cursor-says")), time === null ? t("cursor-drag") : hundredths(time));
    }
    // A's flag lies to the right of its line and B's to the left: where they would meet they say less, and then turn away from each other.
    const gap = this.xOf("b") - this.xOf("a");
    const wide = BOTH.reduce((sum, which) => sum + FLAG_PX + LETTER_PX * (this.handles[which].querySelector(".cursor-says")?.textContent?.length ?? 0), 0);
    flag(this.el, "is-tight", gap >= 0 && gap < wide);
    flag(this.el, "is-turned", gap >= 0 && gap < 2 * FLAG_PX);
    const both = this.times.a !== null && this.times.b !== null;
    this.window.hidden = !both;
    if (both) {
      const [x1, x2] = BOTH.map((which) => this.xOf(which)).map((x) => Math.max(left, Math.min(left + width, x))).sort((p, q) => p - q);
      style(this.window, "--x", `${x1.toFixed(1)}px`);
      style(this.window, "--w", `${(x2 - x1).toFixed(1)}px`);
    }
  }
}
