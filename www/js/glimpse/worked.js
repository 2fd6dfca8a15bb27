// @ts-check
// The preview of a scenario: its worked example, played fast by the page's own narrator.

import { frameOf } from "./frame.js";

const DESK_PX = 1000; // from here bench and trace stand side by side in one window
const RESULT_PX = 20; // of the window stay above the result
const TIMES = 4; // as fast as it is played to someone who watches it whole

export class WorkedFilm {
  /** @param {HTMLIFrameElement} frame Holds the page with the example. */
  constructor(frame) {
    this.frame = frame;
    this.shown = false; // the result, at the end
  }

  /** @param {string} selector */
  find(selector) {
    return /** @type {HTMLElement | null} */ (this.frame.contentDocument?.querySelector(selector) ?? null);
  }

  /** @param {"pause" | "next"} name */
  press(name) {
    this.find(`[data-tool="narrator-${name}"]`)?.click();
  }

  get ready() {
    return this.find('[data-tool="narrator-next"]') !== null;
  }

  get ended() {
    return this.find('[data-tool="narrator-next"]')?.hidden === true;
  }

  /** Once it is ready; the narrator plays then by itself, except where motion is not wanted. */
  begin() {
    this.shown = false;
    frameOf(this.frame).dataset.speed = String(TIMES);
  }

  /** @param {boolean} on */
  play(on) {
    if (this.find('[data-tool="narrator-pause"]')?.dataset.on !== String(on)) this.press("pause");
  }

  /** The next step of the example. */
  next() {
    this.press("next");
  }

  /** What is done and why, in the narrator's words, and how much of all is done. */
  told() {
    const { contentWindow } = this.frame;
    if (this.ended && !this.shown) {
      this.shown = true;
      contentWindow?.scrollBy(0, (this.find("#result")?.getBoundingClientRect().top ?? 0) - RESULT_PX);
    }
    if (contentWindow && contentWindow.innerWidth >= DESK_PX && contentWindow.scrollY > 0) contentWindow.scrollTo(0, 0); // all that counts stands in sight there
    const text = (/** @type {string} */ selector) => this.find(selector)?.textContent ?? "";
    return { told: text(".narrator-deed"), why: text(".narrator-why"), done: Number(this.find(".narrator-way i")?.style.getPropertyValue("--done")) || 0 };
  }
}
