// @ts-check
// The preview of the instructor's screen: the screen itself, looked at part by part.

import { t } from "../text.js";

const EACH_S = 6;
const SHOWN = "thick-trace-a"; // a scenario with a fault, where there is one of this name
const PARTS = [".assign-faults", ".assign-side", ".fairness", ".out"];

export class TourFilm {
  /** @param {HTMLIFrameElement} frame @param {boolean} still */
  constructor(frame, still) {
    this.frame = frame;
    this.still = still;
    this.at = 0;
    this.on = false;
    this.since = 0;
  }

  get parts() {
    const { contentDocument } = this.frame;
    return PARTS.map((selector) => contentDocument?.querySelector(selector));
  }

  get ready() {
    return this.frame.contentDocument?.body?.dataset.view === "assign" && this.parts.every(Boolean);
  }

  get ended() {
    return this.at >= PARTS.length;
  }

  begin() {
    this.at = 0;
    const base = /** @type {HTMLSelectElement | null | undefined} */ (this.frame.contentDocument?.querySelector(".assign-form select"));
    if (base) base.value = SHOWN;
    base?.dispatchEvent(new Event("change"));
    this.play(!this.still);
    this.show();
  }

  /** @param {boolean} on */
  play(on) {
    this.on = on;
    this.since = performance.now();
  }

  /** The next part, and behind the last one the end. */
  next() {
    this.at += 1;
    this.since = performance.now();
    if (!this.ended) this.show();
  }

  show() {
    const { contentWindow } = this.frame;
    const top = this.parts[this.at]?.getBoundingClientRect().top ?? 0;
    contentWindow?.scrollBy({ top: top - 60, behavior: this.still ? "auto" : "smooth" });
  }

  told() {
    if (this.on && !this.ended && performance.now() - this.since > 1000 * EACH_S) this.next();
    const part = Math.min(this.at, PARTS.length - 1) + 1;
    return { told: t(`glimpse-assign-${part}`), why: "", done: this.at / PARTS.length };
  }
}
